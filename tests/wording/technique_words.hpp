#pragma once
/// Word charts of random pieces in every technique, written row by row straight from their cells: no plan is asked, and nothing of
/// the reader or the writer is used.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "random_chart.hpp"
#include "weave/plan.hpp"

namespace evencount::wording::testing_support {

inline constexpr int decreased = -1;  ///< in place of a bead: "dec"

/// A row's beads in the order of stringing.
struct PieceRow {
  int first = 1, last = 1;
  char direction = 'R';
  std::string marks;  ///< ", increase at the end"
  std::vector<int> beads;
  std::vector<std::size_t> unit_ends;  ///< in `beads`, for right-angle weave; the last one is their number
};

struct Piece {
  std::string technique;
  std::string facts;  ///< the sentence
  chart::Chart chart;
  weave::Closure closure = weave::Closure::open;
  int begin_at = 0;
  int letters = 1;
  bool rounds = false;
  bool alternates = true;
  std::vector<PieceRow> rows;
};

/// The ids of all techniques that can be written here.
[[nodiscard]] const std::vector<std::string>& piece_techniques();

[[nodiscard]] Piece random_piece(Random& random, std::string_view technique);

/// How a piece's rows are spelled.
struct Spelling {
  bool fold_lists = false;  ///< *(2)A, (1)B* × 6
  bool fold_rows = false;   ///< Rows 13–28: work rows 5–12 twice
  int runs = 0;             ///< 0: (2)A, 1: 2A, 2: A2, 3: 2 x A
  int times = 0;            ///< 0: × 6, 1: x 6, 2: 6 times
  bool short_runs = false;  ///< runs shorter than they could be
};

[[nodiscard]] Spelling random_spelling(Random& random);

struct SpelledLine {
  std::string label;  ///< "Row 3 (R)"
  std::string beads;
  int count = 0;
};

[[nodiscard]] std::vector<SpelledLine> spelled_lines(Random& random, const Piece& piece,
                                                     const Spelling& spelling);

}  // namespace evencount::wording::testing_support
