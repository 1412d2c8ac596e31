#pragma once
/// A layout with its names looked up and its repeats, halves and runs laid out: what lies on the cords, in order.
///
/// Properties (tests/strand/strung_test.cpp):
///  (1) strung_length_um(s, counts) == fixed_um(s) + the sum over runs of count x places x unit length
///  (2) the pieces of a mirrored layout, read from its other end, are the same
///  (3) beads of an element in pieces_of == fixed_use + the sum over runs of count x places x their unit's

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "strand/layout.hpp"
#include "strand/run_counts.hpp"

namespace evencount::strand {

/// One thing on the cords.
struct Piece {
  int element = 0;    ///< index in Strung::elements
  int cords = 1;      ///< how many cords run here
  bool both = false;  ///< one-hole: a single one on both cords together, not one on each
  bool operator==(const Piece&) const = default;
};

/// Runs that are to be as equal as possible: one unit, one pair of limits.
struct Group {
  std::string name;  ///< as the layout calls it, or "run 3" for one without a name
  std::vector<Piece> unit;
  int from = 0;
  int to = most_units;
  bool operator==(const Group&) const = default;
};

struct Run {
  int group = 0;
  int places = 1;  ///< 2: in both halves of a mirror, with the same count
  bool operator==(const Run&) const = default;
};

/// A fixed piece, or a run.
struct Step {
  int run = -1;         ///< index in Strung::runs; -1 for a piece
  Piece piece;          ///< of a fixed one
  bool turned = false;  ///< a run in the second half of a mirror: its unit from the other end
  bool operator==(const Step&) const = default;
};

struct Strung {
  std::vector<Element> elements;
  int cords = 1;
  Cord cord;
  int closing = -1;  ///< index of the element that closes it; -1: knotted end to end
  std::vector<Step> steps;
  std::vector<Group> groups;
  std::vector<Run> runs;                     ///< in order of their first place
  std::vector<std::pair<int, int>> on_hand;  ///< element, how many there are in all
};

/// Looks up the names of a layout that parse_layout gave. `catalogue` as there.
/// With joiners the strand begins on one cord and each joiner changes between one and two.
/// Errors: unknown_name (a name that this catalogue hasn't); out_of_range (a joiner in a strand of one cord,
/// an odd number of joiners,
/// `both` where one cord runs or on an element of two holes).
[[nodiscard]] Result<Strung> lay_strung(const Layout& layout, std::span<const Element> catalogue);

/// Beads that a piece is: 2 where one lies on each of two cords.
[[nodiscard]] int beads_of(const Strung& strung, const Piece& piece);

/// How often one cord, or both together, go through one hole of it when nothing is turned back: 2 for `both`,
/// a joiner's single side
/// and a one-hole clasp of two cords.
[[nodiscard]] int passes_of(const Strung& strung, const Piece& piece);

/// The elements of a list, for length_um.
[[nodiscard]] std::vector<const Element*> elements_of(const Strung& strung, std::span<const Piece> pieces);

/// Counts, one a run.
using Counts = std::vector<int>;

/// Everything on the cords from the first to the last, the closing left out. `counts` has one entry a run,
/// none below 0.
[[nodiscard]] std::vector<Piece> pieces_of(const Strung& strung, const Counts& counts);

/// The fixed stretches and the closing. Caps and covers take in what stands beside them in a fixed stretch or
/// in a unit, never
/// across the end of a run, so that every unit makes a run longer by the same.
[[nodiscard]] std::int64_t fixed_um(const Strung& strung);
[[nodiscard]] std::int64_t unit_um(const Strung& strung, const Group& group);
/// The whole way round: everything strung and the closing, an extender hooked in its first link.
[[nodiscard]] std::int64_t strung_length_um(const Strung& strung, const Counts& counts);

/// Where each piece of pieces_of begins, in micrometres from the first one, by the same rule about runs; last
/// where they end.
[[nodiscard]] std::vector<std::int64_t> piece_starts_um(const Strung& strung, const Counts& counts);

/// How many beads of each element the fixed pieces and the closing take, and what a unit takes.
[[nodiscard]] std::vector<std::int64_t> fixed_use(const Strung& strung);
[[nodiscard]] std::vector<std::int64_t> unit_use(const Strung& strung, const Group& group);
/// All beads of each element.
[[nodiscard]] std::vector<std::int64_t> use_of(const Strung& strung, const Counts& counts);

/// The problem of counting the runs so that the whole way round is `length_um`. Limits of beads that are short
/// already are kept,
/// below zero. counts[group][run] are the group's runs in the order of Strung::runs.
[[nodiscard]] RunProblem run_problem(const Strung& strung, std::int64_t length_um);
/// The counts of that problem's answer, one a run.
[[nodiscard]] Counts counts_of(const Strung& strung, const RunCounts& answer);

}  // namespace evencount::strand
