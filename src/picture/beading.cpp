#include "picture/beading.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "colour/difference.hpp"

namespace evencount::picture {
namespace {

Problem wrong_number(std::string_view what, std::size_t found, int expected) {
  return {ProblemCode::wrong_size, std::string(what), fmt::format("{}", found),
          fmt::format("{}, one for each cell of the lattice", expected)};
}

}  // namespace

RuleCheck check_rules(std::span<const StockColour> stock, std::span<const int> chosen,
                      std::span<const int> bead_of_cell) {
  std::vector<int> used(stock.size(), 0);
  for (const int bead : bead_of_cell) ++used[static_cast<std::size_t>(bead)];
  RuleCheck check;
  for (std::size_t bead = 0; bead < stock.size(); ++bead)
    if (stock[bead].at_most && used[bead] > *stock[bead].at_most)
      check.over_limit.push_back(static_cast<int>(bead));
  for (const int bead : chosen)
    if (stock[static_cast<std::size_t>(bead)].rule == StockRule::required &&
        used[static_cast<std::size_t>(bead)] == 0)
      check.required_unused.push_back(bead);
  return check;
}

Result<Beading> Beading::make(const CellLattice& lattice, std::span<const colour::Rgb> cells,
                              std::span<const StockColour> stock, const StockChoice& choice) {
  if (const Result<Done> sound = check_lattice(lattice); !sound) return sound.problem();
  const auto size = static_cast<std::size_t>(lattice.cells());
  if (cells.size() != size) return wrong_number("picture: colours", cells.size(), lattice.cells());
  if (choice.bead_of_cell.size() != size)
    return wrong_number("choice: beads of cells", choice.bead_of_cell.size(), lattice.cells());

  Beading beading;
  std::vector<int> place_of_bead(stock.size(), -1);
  for (const int bead : choice.chosen) {
    if (bead < 0 || bead >= static_cast<int>(stock.size()))
      return Problem{ProblemCode::out_of_range, "choice: chosen", fmt::format("bead {}", bead),
                     fmt::format("one of the stock's {}", stock.size())};
    const StockColour& one = stock[static_cast<std::size_t>(bead)];
    place_of_bead[static_cast<std::size_t>(bead)] = beading.places();
    beading.chosen_.push_back(bead);
    beading.colours_.push_back(one.colour);
    beading.labs_.push_back(colour::to_lab_d65(one.colour));
    beading.most_.push_back(one.at_most.value_or(std::numeric_limits<int>::max()));
    beading.used_.push_back(0);
    beading.limited_ |= one.at_most.has_value();
  }
  for (const int bead : choice.bead_of_cell) {
    const bool known = bead >= 0 && bead < static_cast<int>(stock.size());
    const int place = known ? place_of_bead[static_cast<std::size_t>(bead)] : -1;
    if (place < 0)
      return Problem{ProblemCode::out_of_range, fmt::format("choice: cell {}", beading.place_.size()),
                     fmt::format("bead {}", bead), "one of the chosen"};
    beading.place_.push_back(place);
    ++beading.used_[static_cast<std::size_t>(place)];
  }
  for (int place = 0; place < beading.places(); ++place)
    if (beading.room(place) < 0) {
      const auto p = static_cast<std::size_t>(place);
      return Problem{ProblemCode::out_of_range, fmt::format("choice: bead {}", choice.chosen[p]),
                     fmt::format("{} cells", beading.used_[p]), fmt::format("at most {}", beading.most_[p])};
    }
  beading.fill_differences(cells);
  beading.pin_required(stock);
  return beading;
}

void Beading::fill_differences(std::span<const colour::Rgb> cells) {
  const colour::LabColumns<colour::White::d65> beads(labs_);
  differences_.resize(cells.size() * chosen_.size());
  for (std::size_t cell = 0; cell < cells.size(); ++cell)
    colour::ciede2000(colour::to_lab_d65(cells[cell]), beads,
                      std::span(differences_).subspan(cell * chosen_.size(), chosen_.size()));
}

void Beading::pin_required(std::span<const StockColour> stock) {
  pinned_.assign(place_.size(), false);
  for (int place = 0; place < places(); ++place) {
    if (stock[static_cast<std::size_t>(chosen_[static_cast<std::size_t>(place)])].rule != StockRule::required)
      continue;
    int dearest = -1;
    double most = -std::numeric_limits<double>::infinity();
    for (int cell = 0; cell < cells(); ++cell) {
      if (at(cell) != place) continue;
      double other = std::numeric_limits<double>::max();
      for (int k = 0; k < places(); ++k)
        if (k != place) other = std::min(other, difference(cell, k));
      if (other - difference(cell) > most) most = other - difference(cell), dearest = cell;
    }
    if (dearest >= 0) pinned_[static_cast<std::size_t>(dearest)] = true;
  }
}

double Beading::mean() const {
  double sum = 0;
  for (int cell = 0; cell < cells(); ++cell) sum += difference(cell);
  return sum / cells();
}

int Beading::changes(const Beading& other) const {
  int count = 0;
  for (int cell = 0; cell < cells(); ++cell) count += at(cell) != other.at(cell);
  return count;
}

std::vector<int> Beading::bead_of_cell() const {
  std::vector<int> beads;
  beads.reserve(place_.size());
  for (const int place : place_) beads.push_back(chosen_[static_cast<std::size_t>(place)]);
  return beads;
}

}  // namespace evencount::picture
