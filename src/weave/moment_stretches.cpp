#include "weave/moment_stretches.hpp"

#include <algorithm>

namespace evencount::weave {
namespace {

/// A margin on both sides and at least `least` in all, within low to high.
void widen(int& first, int& end, int margin, int least, int low, int high) {
  low = std::min(low, first), high = std::max(high, end);
  first = std::max(low, first - margin);
  end = std::min(high, end + margin);
  while (end - first < least && (first > low || end < high)) {
    if (first > low) --first;
    if (end - first < least && end < high) ++end;
  }
}

}  // namespace

Stretches::Stretches(const Plan& plan) : plan_(plan) {
  for (std::size_t row = 0; row < plan.rows.size(); ++row) groups_.push_back(groups_of(row));
}

std::size_t Stretches::after_bead_before(std::size_t i) const {
  while (i > 0 && !goes_through(stitch(i - 1).act)) --i;
  return i;
}

std::vector<Group> Stretches::groups_of(std::size_t place) const {
  const Row& row = plan_.rows[place];
  const std::size_t end =
      place + 1 < plan_.rows.size() ? plan_.rows[place + 1].first_stitch : plan_.stitches.size();
  std::vector<Group> groups;
  Group group{.first = after_bead_before(row.first_stitch)};
  bool stringing = false;
  for (std::size_t i = row.first_stitch; i < end; ++i) {
    if (stitch(i).act == Act::pick_up) {
      if (!stringing && group.strung > 0) {
        group.end = after_bead_before(i);
        groups.push_back(group);
        group = {.first = group.end};
      }
      ++group.strung;
    }
    if (goes_through(stitch(i).act)) stringing = stitch(i).act == Act::pick_up;
  }
  group.end = after_bead_before(end);
  if (group.strung > 0) groups.push_back(group);
  return groups;
}

std::size_t Stretches::after_last_strung(const Group& group) const {
  std::size_t i = group.end;
  while (i > group.first && stitch(i - 1).act != Act::pick_up) --i;
  return i;
}

bool Stretches::turns(std::size_t first, std::size_t end, Turn turn) const {
  return std::any_of(plan_.stitches.begin() + static_cast<std::ptrdiff_t>(first),
                     plan_.stitches.begin() + static_cast<std::ptrdiff_t>(end),
                     [&](const Stitch& one) { return one.act == Act::turn && one.turn == turn; });
}

int Stretches::beads_in(std::size_t first, std::size_t end) const {
  int count = 0;
  for (std::size_t i = first; i < end; ++i) count += goes_through(stitch(i).act) ? 1 : 0;
  return count;
}

std::size_t Stretches::shown_end(std::size_t first, std::size_t end, int most) const {
  int all = 0;
  std::size_t shown = first;
  for (std::size_t i = first; i < end;) {
    std::size_t next = i + 1;
    if (goes_through(stitch(i).act)) {
      while (next < end && stitch(next).act == stitch(i).act) ++next;
      const int run = static_cast<int>(next - i);
      if (run > longest_run) return all + shown_of_run <= most ? i + shown_of_run : shown;
      all += run;
      if (all > most) return shown;
      shown = next;
    }
    i = next;
  }
  return shown;
}

Window Stretches::window_of(const Moment& moment) const {
  const Lattice& lattice = plan_.lattice;
  const auto shown = visits(plan_, lead_in(plan_, moment), moment.end_stitch, moment.at_seam);
  Window beads{1'000'000, -1'000'000, 1'000'000, -1'000'000};
  for (const Visit& visit : shown) {
    if (visit.stitch < moment.first_stitch && moment.at_seam) continue;  // of the other end, perhaps
    const Cell cell = unrolled_cell(lattice, visit.middle);
    beads.first_column = std::min(beads.first_column, cell.column);
    beads.end_column = std::max(beads.end_column, cell.column + 1);
    beads.first_step = std::min(beads.first_step, cell.step);
    beads.end_step = std::max(beads.end_step, cell.step + 1);
  }
  const int unit = lattice.holes == Holes::round_squares ? 2 : 1;
  const int low = moment.at_seam ? lattice.edge / 2 : lattice.rise > 0 ? -1 : 0;
  const int high = moment.at_seam ? lattice.edge + lattice.edge / 2 : lattice.edge;
  Window window = beads;
  widen(window.first_step, window.end_step, unit, 3 * unit, low, high);
  if (lattice.round)
    widen(window.first_column, window.end_column, unit, 6, window.end_column - lattice.columns,
          window.first_column + lattice.columns);
  else
    widen(window.first_column, window.end_column, unit, lattice.columns <= 8 ? 8 : 6, 0, lattice.columns);
  return window;
}

}  // namespace evencount::weave
