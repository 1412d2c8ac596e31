#pragma once
/// What the rows of a technique mean: how many beads one takes, which way it may go, what its label may say, and in the end
/// which cell each of its beads goes to.
///
/// These are the reader's own: it looks nothing up in the techniques that make plans. One file a family
/// (reader_rows_peyote.cpp and so on); a new technique is one entry there. Whoever finds rows on a page or checks a band asks
/// here and knows no technique by name.
///
/// Properties (tests/wording/techniques_test.cpp): the words of any chart, written after the rules of its technique, give the
/// chart; no two beads of a band go to one cell.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "wording/reader_row.hpp"

namespace evencount::wording::reader {

/// What is known when a row's length is asked for; anything but the row may still be unknown.
struct RowQuestion {
  const FoundRow& row;
  int number = 1;                    ///< of its last row; another than the row's own when it is worked again
  std::optional<int> columns;        ///< of the chart: stated, or as the first row shows
  std::optional<int> edge;           ///< as stated
  const FoundRow* before = nullptr;  ///< the row before, when all of it has been read
};

/// One row of a whole band.
struct WholeRow {
  const FoundRow* row = nullptr;
  int line = 0;  ///< where the words ask for it
};

/// A band without gaps: rows[number - 1], rows that are worked again included. Rows strung together are there once for each.
struct WholeBand {
  std::vector<WholeRow> rows;

  [[nodiscard]] int count() const { return static_cast<int>(rows.size()); }
  [[nodiscard]] const FoundRow& row(int number) const {
    return *rows[static_cast<std::size_t>(number) - 1].row;
  }
  /// "line 12, row 14", or "line 20, row 22 (row 14 again)".
  [[nodiscard]] std::string place(int number) const;
};

/// The size of a band's chart.
struct Extent {
  int columns = 0;
  int edge = 0;
  int begin_at = 0;  ///< as in weave::Making
};

struct RowRules {
  std::string_view id;
  std::string_view name;  ///< as the facts give it, in small letters
  std::span<const weave::Closure> closures;

  bool first_two_together = true;  ///< rows 1 and 2 are strung together, in one line
  bool rounds = false;
  bool alternates = true;  ///< each row goes the other way than the one before; else all go the same way
  weave::Axis axis = weave::Axis::across;
  bool marked = false;  ///< labels may say how a row begins and ends
  bool back = false;    ///< rounds may lie on the back, and may have decreases
  bool units = false;   ///< semicolons part units
  /// For flat peyote, which is known as odd or even count by its columns: which of them this is.
  std::optional<bool> odd_count;

  int most_places = chart::most_columns;  ///< in one row
  int most_rows = 2 * chart::most_edge;

  /// What the first row's number of beads should have been; empty when it is right.
  std::string_view (*expected_first)(int beads);

  /// How many columns a first row of so many beads shows; nothing when it doesn't.
  std::optional<int> (*columns_shown)(int beads);

  /// How many beads and decreases the row takes; nothing when that can't be known yet.
  std::optional<int> (*places)(const RowQuestion&);

  /// How many it can hold at most where `places` does not say; nothing when that isn't known either.
  std::optional<int> (*most)(const RowQuestion&);

  /// The size of the chart of a band whose rows have the right lengths.
  Result<Extent> (*extent)(const WholeBand&);

  /// Puts each bead in its cell; all others are empty.
  Result<Done> (*lay)(const WholeBand&, const Extent&, const BeadOfLetter&, chart::Chart&);
};

[[nodiscard]] std::span<const RowRules> peyote_rules();  ///< flat, two-drop, shaped
[[nodiscard]] std::span<const RowRules> round_rules();   ///< tubular, bezel
[[nodiscard]] std::span<const RowRules> brick_rules();
[[nodiscard]] std::span<const RowRules> square_rules();  ///< square stitch, loom work, herringbone
[[nodiscard]] std::span<const RowRules> unit_rules();    ///< right-angle weave

/// The rules of every technique; they live as long as the program.
[[nodiscard]] std::span<const RowRules* const> all_rules();

/// Errors: unknown_name (the message lists the ids).
[[nodiscard]] Result<const RowRules*> find_rules(std::string_view id);

/// The rules of rows whose technique nobody names: flat peyote, odd count or even count.
[[nodiscard]] const RowRules& flat_rules(bool odd_count);

/// For techniques whose first row is as wide as the chart.
[[nodiscard]] std::optional<int> as_many_columns(int beads);

/// For techniques whose rows have a length of their own.
[[nodiscard]] std::optional<int> no_limit(const RowQuestion&);

}  // namespace evencount::wording::reader
