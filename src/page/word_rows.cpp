#include "page/word_rows.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"

namespace evencount::page {
namespace {

using namespace drawing;

constexpr Style row_label{{TextRole::label_bold, 9.5}, WordRows::leading_mm, ink::accent},
    row_beads{{TextRole::label, 10}, WordRows::leading_mm};
constexpr double tick_mm = 2.5, after_tick_mm = 2.2;

/// Beads in lines of at most `room_mm`, broken after commas.
std::vector<std::string> broken_after_commas(const Typesetter& typesetter, const std::string& beads,
                                             double room_mm) {
  if (typesetter.width_mm(row_beads.face, beads) <= room_mm) return {beads};
  std::vector<std::string> lines(1);
  for (const std::string_view part : split(beads, ',')) {
    const std::string run(trim(part));
    const std::string longer = lines.back().empty() ? run : lines.back() + ", " + run;
    if (lines.back().empty() || typesetter.width_mm(row_beads.face, longer + ",") <= room_mm) {
      lines.back() = longer;
    } else {
      lines.back() += ",";
      lines.push_back(run);
    }
  }
  return lines;
}

}  // namespace

WordRows::WordRows(const Typesetter& typesetter, std::span<const wording::WordLine> words,
                   double most_width_mm) {
  for (const wording::WordLine& word : words)
    label_width_mm_ = std::max(label_width_mm_, typesetter.width_mm(row_label.face, word.label + ":"));
  space_mm_ = typesetter.width_mm(row_beads.face, " ") + 0.2;
  const double before_mm = tick_mm + after_tick_mm + label_width_mm_ + space_mm_;
  for (const wording::WordLine& word : words) {
    rows_.push_back(
        {word.label + ":", broken_after_commas(typesetter, word.beads, most_width_mm - before_mm)});
    for (const std::string& line : rows_.back().lines)
      width_mm_ = std::max(width_mm_, before_mm + typesetter.width_mm(row_beads.face, line));
  }
}

bool WordRows::any_broken() const {
  return std::any_of(rows_.begin(), rows_.end(), [](const SetRow& row) { return row.lines.size() > 1; });
}

int WordRows::columns_in(double room_mm) const {
  return std::clamp(static_cast<int>((room_mm + gutter_mm) / (width_mm_ + gutter_mm)), 1, 3);
}

/// One past the last row that `columns` columns of `lines` lines hold.
std::size_t WordRows::filled(std::size_t first, std::size_t end, int columns, int lines) const {
  std::size_t next = first;
  for (int column = 0; column < columns; ++column)
    for (int used = 0; next < end && used + static_cast<int>(rows_[next].lines.size()) <= lines; ++next)
      used += static_cast<int>(rows_[next].lines.size());
  return next;
}

std::size_t WordRows::fitting(std::size_t first, int columns, double height_mm) const {
  return filled(first, rows_.size(), columns, static_cast<int>(height_mm / leading_mm + 1e-6)) - first;
}

void WordRows::put(Flow& flow, std::size_t first, std::size_t end, int columns, double left_mm,
                   double room_mm) const {
  int lines = 1;
  while (filled(first, end, columns, lines) < end) ++lines;
  const double top = flow.y();
  const double column_mm = (room_mm + gutter_mm) / columns;
  std::size_t next = first;
  for (int column = 0; column < columns; ++column) {
    flow.move_to(top);
    const std::size_t stop = filled(next, end, 1, lines);
    for (; next < stop; ++next) put_row(flow, rows_[next], left_mm + column * column_mm);
  }
  flow.move_to(top + lines * leading_mm);
}

void WordRows::put_row(Flow& flow, const SetRow& row, double left_mm) const {
  const double baseline = flow.y() + 3.4;
  flow.put(Rectangle{.corner = {left_mm, baseline - 2.32},
                     .width_mm = tick_mm,
                     .height_mm = tick_mm,
                     .radius_mm = 0.4,
                     .stroke = Stroke{ink::quiet, 0.2}});
  const double label_end = left_mm + tick_mm + after_tick_mm + label_width_mm_;
  flow.put_text(row_label, row.label, {label_end, baseline}, Align::right);
  for (std::size_t i = 0; i < row.lines.size(); ++i)
    flow.put_text(row_beads, row.lines[i],
                  {label_end + space_mm_, baseline + static_cast<double>(i) * leading_mm});
  flow.skip(leading_mm * static_cast<double>(row.lines.size()));
}

}  // namespace evencount::page
