#pragma once
/// What differs between two projects: small, and good for going either way.
///
/// Charts are compared cell by cell, everything else as JSON values (of the project's JSON without its cells). Beads are positions in
/// the legend, so that a patch needs no letters.
///
/// Properties (tests/project/patch_test.cpp):
///  (1) *apply(a, diff(a, b)) == b, and *apply(b, inverse(diff(a, b))) == a
///  (2) diff(a, a) is empty, and inverse(inverse(p)) == p
///  (3) *parse_patch(to_json(p)) == p
///  (4) a patch is refused by a project that is not as it was before in what the patch changes
///  (5) for independent(p, q) both orders of applying them give the same project, where both can be applied

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "project/project.hpp"

namespace evencount::project {

/// Cells in a row, step after step, that were one bead and became another. `first` counts the cells before it.
struct CellRun {
  int first = 0;
  int count = 1;
  chart::Bead before = chart::no_bead;
  chart::Bead after = chart::no_bead;
  bool operator==(const CellRun&) const = default;
};

/// The cells that changed in a chart that kept its size.
struct BandCells {
  int band = 0;               ///< its position
  std::vector<CellRun> runs;  ///< in order, apart from each other
  bool operator==(const BandCells&) const = default;
};

/// A band as it is in a patch.
struct WholeBand {
  std::string outline;  ///< its JSON without cells
  chart::Chart chart;
  bool operator==(const WholeBand&) const = default;
};

/// Bands that came, went or changed their size: those from `at` on that were there, and those that are.
struct BandsChange {
  int at = 0;
  int of = 0;  ///< how many bands the project had
  std::vector<WholeBand> before, after;
  bool operator==(const BandsChange&) const = default;
};

/// A value of the project's JSON, by its JSON pointer (RFC 6901); nothing where it is left out.
struct ValueChange {
  std::string pointer;
  std::optional<std::string> before, after;  ///< JSON text on one line
  bool operator==(const ValueChange&) const = default;
};

/// Where the number of bands changes, there is one BandsChange and nothing else of bands.
struct Patch {
  std::vector<BandsChange> bands;
  std::vector<BandCells> cells;
  std::vector<ValueChange> values;
  [[nodiscard]] bool empty() const { return bands.empty() && cells.empty() && values.empty(); }
  bool operator==(const Patch&) const = default;
};

[[nodiscard]] Patch diff(const Project& before, const Project& after);

/// Errors: out_of_date (the project is not the one that was changed, naming the place), those of parse_project.
[[nodiscard]] Result<Project> apply(const Project& project, const Patch& patch);

[[nodiscard]] Patch inverse(const Patch& patch);

/// Whether two patches of one project change different things. A legend whose entries come, go or change their places or letters goes
/// with nothing that draws.
[[nodiscard]] bool independent(const Patch& one, const Patch& other);

/// One line: {"bands": [{"at", "of", "before", "after"}], "cells": [{"band", "runs"}], "values": [{"at", "before", "after"}]}; lists that are
/// empty and values that are not there are left out. Runs are four numbers each, in one list: first, count, before, after. A band is its
/// JSON, `cells` being pairs of numbers in one list: how many, of which bead. An empty cell is -1.
[[nodiscard]] std::string to_json(const Patch& patch);
/// Errors: those of parse_project that concern the text; out_of_range (runs that overlap, sizes beyond their limits).
[[nodiscard]] Result<Patch> parse_patch(std::string_view text);

}  // namespace evencount::project
