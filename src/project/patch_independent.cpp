#include <fmt/format.h>

#include <algorithm>

#include "project/patch.hpp"
#include "project/pointer.hpp"

namespace evencount::project {
namespace {

/// Whether the positions of the legend's entries may mean something else afterwards.
bool moves_legend(const Patch& patch) {
  return std::any_of(patch.values.begin(), patch.values.end(), [](const ValueChange& change) {
    const bool within = change.pointer.starts_with("/legend/");
    return change.pointer == "/legend" ||
           (within && (change.pointer.ends_with("/letter") || change.pointer.ends_with("/bead")));
  });
}

bool draws(const Patch& patch) {
  return !patch.cells.empty() || !patch.bands.empty();
}

bool moves_bands(const Patch& patch) {
  return std::any_of(patch.bands.begin(), patch.bands.end(),
                     [](const BandsChange& change) { return change.before.size() != change.after.size(); });
}

bool touches_bands(const Patch& patch) {
  return draws(patch) || std::any_of(patch.values.begin(), patch.values.end(), [](const ValueChange& change) {
           return json::pointers_meet(change.pointer, "/bands");
         });
}

bool touches_band(const Patch& patch, int band) {
  const std::string pointer = fmt::format("/bands/{}", band);
  return std::any_of(patch.bands.begin(), patch.bands.end(),
                     [&](const BandsChange& change) { return change.at == band; }) ||
         std::any_of(patch.cells.begin(), patch.cells.end(),
                     [&](const BandCells& cells) { return cells.band == band; }) ||
         std::any_of(patch.values.begin(), patch.values.end(),
                     [&](const ValueChange& change) { return json::pointers_meet(change.pointer, pointer); });
}

bool runs_meet(const std::vector<CellRun>& one, const std::vector<CellRun>& other) {
  for (auto a = one.begin(), b = other.begin(); a != one.end() && b != other.end();) {
    if (a->first < b->first + b->count && b->first < a->first + a->count) return true;
    a->first < b->first ? ++a : ++b;
  }
  return false;
}

bool cells_meet(const Patch& one, const Patch& other) {
  for (const BandCells& a : one.cells)
    for (const BandCells& b : other.cells)
      if (a.band == b.band && runs_meet(a.runs, b.runs)) return true;
  return false;
}

bool values_meet(const Patch& one, const Patch& other) {
  for (const ValueChange& a : one.values)
    for (const ValueChange& b : other.values)
      if (json::pointers_meet(a.pointer, b.pointer)) return true;
  return false;
}

/// Whether a band that `one` replaces as a whole is touched by the other.
bool whole_bands_meet(const Patch& one, const Patch& other) {
  return std::any_of(one.bands.begin(), one.bands.end(),
                     [&](const BandsChange& change) { return touches_band(other, change.at); });
}

}  // namespace

bool independent(const Patch& one, const Patch& other) {
  if ((moves_legend(one) && draws(other)) || (moves_legend(other) && draws(one))) return false;
  if ((moves_bands(one) && touches_bands(other)) || (moves_bands(other) && touches_bands(one))) return false;
  return !whole_bands_meet(one, other) && !whole_bands_meet(other, one) && !cells_meet(one, other) &&
         !values_meet(one, other);
}

}  // namespace evencount::project
