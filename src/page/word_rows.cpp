#include "page/word_rows.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "base/text.hpp"

namespace evencount::page {
namespace {

using namespace drawing;

constexpr Style row_label{{TextRole::label_bold, 9.5}, WordRows::leading_mm, ink::accent},
    row_beads{{TextRole::label, 10}, WordRows::leading_mm};
constexpr Style row_count{{TextRole::label, 8}, WordRows::leading_mm, ink::quiet};
// The count stands close behind the beads: further off, a reader of the page's text would take the counts for a column.
constexpr double tick_mm = 2.5, after_tick_mm = 2.2, before_count_mm = 1.5;

/// The widths of runs, each measured once: a large panel has a hundred thousand runs of a few kinds.
class RunWidths {
 public:
  explicit RunWidths(const Typesetter& typesetter) : typesetter_(typesetter) {}

  double operator()(std::string_view run) {
    const auto found = widths_.find(run);
    if (found != widths_.end()) return found->second;
    return widths_.emplace(std::string(run), typesetter_.width_mm(row_beads.face, run)).first->second;
  }

 private:
  const Typesetter& typesetter_;
  std::map<std::string, double, std::less<>> widths_;
};

/// Beads in lines of at most `room_mm`, broken after commas.
std::vector<std::string> broken_after_commas(RunWidths& width_of, const std::string& beads, double room_mm) {
  constexpr double kerning_mm = 0.4;  // what a line may be wider than its runs together, with room to spare
  const double comma_mm = width_of(","), between_mm = width_of(", ");
  std::vector<std::string> lines(1);
  double taken = 0;
  for (const std::string_view part : split(beads, ',')) {
    const std::string_view run = trim(part);
    const double run_mm = width_of(run);
    if (lines.back().empty()) {
      lines.back() = run;
      taken = run_mm;
    } else if (taken + between_mm + run_mm + comma_mm + kerning_mm <= room_mm) {
      lines.back() += ", ";
      lines.back() += run;
      taken += between_mm + run_mm;
    } else {
      lines.back() += ",";
      lines.emplace_back(run);
      taken = run_mm;
    }
  }
  return lines;
}

}  // namespace

WordRows::WordRows(const Typesetter& typesetter, const language::Language& language,
                   std::span<const wording::WordLine> words, double most_width_mm) {
  double count_mm = 0;
  RunWidths width_of(typesetter);
  for (const wording::WordLine& word : words) {
    label_width_mm_ =
        std::max(label_width_mm_, typesetter.width_mm(row_label.face, wording::ended(word.label, language)));
    count_mm = std::max(count_mm, typesetter.width_mm(row_count.face, fmt::format("{}", word.count)));
  }
  count_mm += before_count_mm;
  space_mm_ = typesetter.width_mm(row_beads.face, " ") + 0.2;
  const double before_mm = tick_mm + after_tick_mm + label_width_mm_ + space_mm_;
  for (const wording::WordLine& word : words) {
    rows_.push_back(
        {wording::ended(word.label, language),
         broken_after_commas(width_of, word.beads, most_width_mm - before_mm - count_mm),
         fmt::format("{}", word.count)});
    for (const std::string& line : rows_.back().lines)
      width_mm_ = std::max(width_mm_, before_mm + typesetter.width_mm(row_beads.face, line) + count_mm);
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
  const double top = flow.y(), column_mm = (room_mm + gutter_mm) / columns;
  const std::size_t page = flow.page();
  std::size_t next = first;
  for (int column = 0; column < columns; ++column) {
    flow.move_to(top);
    const std::size_t stop = filled(next, end, 1, lines);
    for (; next < stop; ++next) put_row(flow, rows_[next], left_mm + column * column_mm);
    if (next == end) break;
  }
  // A row that is longer than a page, which stands alone, has ended on another one.
  if (flow.page() == page) flow.move_to(top + lines * leading_mm);
}

void WordRows::put_row(Flow& flow, const SetRow& row, double left_mm) const {
  constexpr double drop_mm = 3.4;
  flow.need(leading_mm - 0.01);
  flow.put(Rectangle{.corner = {left_mm, flow.y() + drop_mm - 2.32},
                     .width_mm = tick_mm,
                     .height_mm = tick_mm,
                     .radius_mm = 0.4,
                     .stroke = Stroke{ink::quiet, 0.2}});
  flow.open(Part::paragraph);
  const double label_end = left_mm + tick_mm + after_tick_mm + label_width_mm_, beads_left = label_end + space_mm_;
  flow.put_text(row_label, row.label, {label_end, flow.y() + drop_mm}, Align::right);
  std::size_t page = flow.page();
  for (const std::string& line : row.lines) {
    flow.need(leading_mm - 0.01);  // whoever puts rows has seen that they fit, but for one that is longer than a page
    if (flow.page() != page) flow.open(Part::paragraph);
    page = flow.page();
    flow.put_text(row_beads, line, {beads_left, flow.y() + drop_mm});
    flow.skip(leading_mm);
  }
  flow.put_text(row_count, row.count,
                {beads_left + flow.typesetter().width_mm(row_beads.face, row.lines.back()) + before_count_mm,
                 flow.y() - leading_mm + drop_mm});
  flow.close();
}

}  // namespace evencount::page
