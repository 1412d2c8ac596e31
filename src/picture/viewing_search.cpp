#include "picture/viewing_search.hpp"

#include <algorithm>

#include "colour/difference.hpp"

namespace evencount::picture {
namespace {

constexpr int tries =
    3;  // of the chosen beads; tried: all of them gain less than 0.5 % more and take three times as long
constexpr double least_gain = 1e-6;  // of the sum of CIEDE2000; less is rounding

using colour::Linear;

void add(Linear& to, double share, const Linear& light) {
  to.red += share * light.red, to.green += share * light.green, to.blue += share * light.blue;
}

Linear difference_of(const Linear& a, const Linear& b) {
  return {a.red - b.red, a.green - b.green, a.blue - b.blue};
}

}  // namespace

Target::Target(const Viewing& view, std::span<const colour::Rgb> cells) : viewing(view) {
  for (const colour::Rgb cell : cells) light.push_back(colour::to_linear(cell));
  seen = viewing.blurred(light);
  for (const Linear& one : seen) labs.push_back(colour::to_lab_d65(one));
}

std::vector<Linear> seen_of(const Viewing& viewing, const Beading& beading) {
  std::vector<Linear> light;
  light.reserve(static_cast<std::size_t>(beading.cells()));
  for (int cell = 0; cell < beading.cells(); ++cell)
    light.push_back(colour::to_linear(beading.colour(beading.at(cell))));
  return viewing.blurred(light);
}

double viewing_mean(const Target& target, const Beading& beading) {
  const std::vector<Linear> seen = seen_of(target.viewing, beading);
  double sum = 0;
  for (std::size_t cell = 0; cell < seen.size(); ++cell)
    sum += colour::ciede2000(target.labs[cell], colour::to_lab_d65(seen[cell]));
  return sum / beading.cells();
}

ViewingSearch::ViewingSearch(const Target& target, Beading start, double closeness)
    : target_(target),
      beading_(std::move(start)),
      closeness_(closeness),
      seen_(seen_of(target.viewing, beading_)) {
  if (beading_.is_limited()) neighbours_.emplace(target.viewing.lattice());
  for (int place = 0; place < beading_.places(); ++place)
    bead_light_.push_back(colour::to_linear(beading_.colour(place)));
  for (int cell = 0; cell < beading_.cells(); ++cell)
    difference_.push_back(difference_at(cell, seen_[static_cast<std::size_t>(cell)]));
  due_.assign(seen_.size(), true);
  is_touched_.assign(seen_.size(), false);
  by_.assign(seen_.size(), Linear{});
}

double ViewingSearch::difference_at(int cell, const Linear& seen) const {
  return colour::ciede2000(target_.labs[static_cast<std::size_t>(cell)], colour::to_lab_d65(seen));
}

void ViewingSearch::improve(int rounds) {
  bool changed = true;
  for (int round = 0; round < rounds && changed; ++round) {
    changed = false;
    for (int cell = 0; cell < beading_.cells(); ++cell) {
      if (!due_[static_cast<std::size_t>(cell)]) continue;
      due_[static_cast<std::size_t>(cell)] = false;
      changed |= improve_cell(cell);
    }
  }
}

bool ViewingSearch::improve_cell(int cell) {
  if (beading_.is_pinned(cell)) return false;
  Move best{.gain = least_gain};
  for (const int place : promising(cell)) {
    Move move{.first = {cell, place}};
    move.gain = gain_of(move);
    if (move.gain > best.gain) best = move;
  }
  if (neighbours_ && best.first.cell < 0) best = best_exchange(cell);
  if (best.first.cell < 0) return false;
  make(best);
  return true;
}

/// The few beads that would bring the light round a cell nearest to what it should be, judged at the cell alone. What the cell shows to its
/// neighbours comes back with the weight `back`, so a bead that is `off` changes the mean error near by back * off, and some
/// 1 / back cells feel it.
std::vector<int> ViewingSearch::promising(int cell) const {
  const Viewing& viewing = target_.viewing;
  Linear error;
  double back = 0;
  viewing.visit_near(cell, [&](int other, double weight) {
    const double share = weight * viewing.scale(other);
    add(error, share,
        difference_of(seen_[static_cast<std::size_t>(other)], target_.seen[static_cast<std::size_t>(other)]));
    back += share * share;
  });
  const Linear& had = bead_light_[static_cast<std::size_t>(beading_.at(cell))];
  std::vector<std::pair<double, int>> guesses;
  for (int place = 0; place < beading_.places(); ++place) {
    if (place == beading_.at(cell) || beading_.room(place) <= 0) continue;
    Linear seen = target_.seen[static_cast<std::size_t>(cell)];
    add(seen, 1, error);
    add(seen, back, difference_of(bead_light_[static_cast<std::size_t>(place)], had));
    guesses.push_back(
        {difference_at(cell, seen) / back + closeness_ * beading_.difference(cell, place), place});
  }
  const auto few = std::min<std::size_t>(guesses.size(), tries);
  std::partial_sort(guesses.begin(), guesses.begin() + static_cast<std::ptrdiff_t>(few), guesses.end());
  std::vector<int> places;
  for (std::size_t i = 0; i < few; ++i) places.push_back(guesses[i].second);
  return places;
}

/// Where beads are short, two cells that touch may still change theirs for each other.
ViewingSearch::Move ViewingSearch::best_exchange(int cell) {
  Move best{.gain = least_gain};
  for (const int other : neighbours_->of(cell)) {
    if (beading_.is_pinned(other) || beading_.at(other) == beading_.at(cell)) continue;
    Move move{{cell, beading_.at(other)}, {other, beading_.at(cell)}};
    move.gain = gain_of(move);
    if (move.gain > best.gain) best = move;
  }
  return best;
}

/// Notes what a change does to the cells that show it.
void ViewingSearch::spread(const Change& change) {
  if (change.cell < 0) return;
  const Linear by = difference_of(bead_light_[static_cast<std::size_t>(change.place)],
                                  bead_light_[static_cast<std::size_t>(beading_.at(change.cell))]);
  target_.viewing.visit_near(change.cell, [&](int other, double weight) {
    const auto o = static_cast<std::size_t>(other);
    if (!is_touched_[o]) is_touched_[o] = true, touched_.push_back(other), by_[o] = Linear{};
    add(by_[o], weight * target_.viewing.scale(other), by);
  });
}

double ViewingSearch::gain_of(const Move& move) {
  spread(move.first), spread(move.second);
  double gain = 0;
  for (const int cell : touched_) {
    const auto c = static_cast<std::size_t>(cell);
    Linear seen = seen_[c];
    add(seen, 1, by_[c]);
    gain += difference_[c] - difference_at(cell, seen);
    is_touched_[c] = false;
  }
  touched_.clear();
  for (const Change& change : {move.first, move.second})
    if (change.cell >= 0)
      gain +=
          closeness_ * (beading_.difference(change.cell) - beading_.difference(change.cell, change.place));
  return gain;
}

void ViewingSearch::make(const Move& move) {
  spread(move.first), spread(move.second);
  for (const int cell : touched_) {
    const auto c = static_cast<std::size_t>(cell);
    add(seen_[c], 1, by_[c]);
    difference_[c] = difference_at(cell, seen_[c]);
    is_touched_[c] = false, due_[c] = true;
  }
  touched_.clear();
  for (const Change& change : {move.first, move.second})
    if (change.cell >= 0) beading_.set(change.cell, change.place);
}

}  // namespace evencount::picture
