#pragma once
/// The rows of a word chart as they stand on a page: a box to tick, the label, the beads, their number. Private to this room.

#include <span>

#include "page/flow.hpp"
#include "wording/words.hpp"

namespace evencount::page {

struct SetRow {
  std::string label;               ///< "Row 3 (R):"
  std::vector<std::string> lines;  ///< its beads; a line ends after a comma
  std::string count;               ///< of its beads
};

class WordRows {
 public:
  static constexpr double leading_mm = 4.9, gutter_mm = 9;

  /// Rows no wider than `most_width_mm`; rows that are wider break after a comma.
  WordRows(const Typesetter& typesetter, const language::Language& language, std::span<const wording::WordLine> words,
           double most_width_mm);

  [[nodiscard]] std::span<const SetRow> rows() const { return rows_; }
  /// The widest row, tick box and label included.
  [[nodiscard]] double width_mm() const { return width_mm_; }
  [[nodiscard]] bool any_broken() const;

  /// How many columns of rows fit beside each other.
  [[nodiscard]] int columns_in(double room_mm) const;
  /// How many of the rows from `first` on fit in `columns` columns of `height_mm`. No row is split; 0 for one that is too long.
  [[nodiscard]] std::size_t fitting(std::size_t first, int columns, double height_mm) const;
  /// Sets rows first to end in columns as even as they come, from the cursor down; the cursor ends below the longest. They
  /// must fit, but for a single row: without room for a line it begins on a new page, and one that is longer than a page goes on over the
  /// next ones.
  void put(Flow& flow, std::size_t first, std::size_t end, int columns, double left_mm, double room_mm) const;

 private:
  [[nodiscard]] std::size_t filled(std::size_t first, std::size_t end, int columns, int lines) const;
  void put_row(Flow& flow, const SetRow& row, double left_mm) const;

  std::vector<SetRow> rows_;
  double label_width_mm_ = 0, space_mm_ = 0, width_mm_ = 0;
};

}  // namespace evencount::page
