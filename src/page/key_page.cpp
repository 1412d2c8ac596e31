#include <fmt/format.h>

#include <algorithm>

#include "language/texts.hpp"
#include "page/alternative.hpp"
#include "page/band_chart.hpp"

namespace evencount::page {
namespace {

using namespace drawing;
using language::Texts;

/// The band in coarse blocks, each in the colour of the bead in its middle: enough to find one's way by.
void put_miniature(Flow& flow, const Subject& subject, const BandSheet& sheet, Point at, double width_mm,
                   double height_mm) {
  constexpr int most_blocks = 60;  // either way
  const chart::Chart& chart = sheet.band->chart;
  const int across = std::min(most_blocks, chart.columns()), down = std::min(most_blocks, chart.edge());
  flow.open(Part::figure, alternative_of_chart(subject.project, *sheet.band, sheet.plan, subject.language));
  for (int row = 0; row < down; ++row)
    for (int column = 0; column < across; ++column) {
      const int middle_column = (2 * column + 1) * chart.columns() / (2 * across);
      const int middle_step = (2 * row + 1) * chart.edge() / (2 * down);
      const chart::Bead bead = chart.at({middle_column, middle_step});
      if (bead == chart::no_bead || bead >= subject.project.legend.size()) continue;
      const colour::Rgb colour = subject.options.signs == CellSigns::symbols ? ink::white
                                                                             : subject.project.legend[bead].colour;
      flow.put(Rectangle{.corner = {at.x_mm + column * width_mm / across, at.y_mm + row * height_mm / down},
                         .width_mm = width_mm / across,
                         .height_mm = height_mm / down,
                         .fill = colour::mix(colour, ink::white, 0.35)});
    }
  flow.close();
}

/// Whether a part of the miniature has room for its number, and for its page and the marks as well.
bool has_number(double width_mm, double height_mm) {
  return width_mm >= 7 && height_mm >= 5;
}
bool is_roomy(double width_mm, double height_mm) {
  return width_mm >= 16 && height_mm >= 11;
}

}  // namespace

void put_meeting_mark(Flow& flow, int number, Point centre) {
  constexpr double radius_mm = 2.3;
  flow.put(Circle{.centre = centre, .radius_mm = radius_mm, .fill = ink::white, .stroke = Stroke{ink::accent, 0.35}});
  flow.put(Text{.at = {centre.x_mm, centre.y_mm + 1.0},
                .role = TextRole::label_bold,
                .size_pt = 8,
                .align = Align::centre,
                .ink = ink::accent,
                .text = fmt::format("{}", number),
                .in_picture = true});
}

KeyPage put_key_page(Flow& flow, const Subject& subject, const BandSheet& sheet, const PartsGrid& grid) {
  const language::Language& language = subject.language;
  put_heading(flow, language.text(&Texts::key_page), style::subheading, 6);
  flow.paragraph(style::body,
                 language.say(&Texts::key_page_text, {{"parts", grid.count()}, {"rows", overlap_cells}}), flow.left(),
                 flow.width());
  flow.skip(5);
  const weave::Box extent = weave::extent(sheet.plan.lattice);
  const double wide = extent.width * sheet.gauge.column.mm(), high = extent.height * sheet.gauge.edge.mm();
  constexpr double least_part_mm = 16;  // room for a part's number and page
  const double most_high = flow.room() - 8;
  const double scale = std::min(flow.width() / wide, most_high / high);
  // A long narrow chart is widened so that what stands in its parts has room.
  const double width = std::min(flow.width(), std::max(scale * wide, least_part_mm * static_cast<double>(grid.across.size())));
  const double height = std::min(most_high, std::max(scale * high, 11.0 * static_cast<double>(grid.down.size())));
  const Point at{flow.left() + (flow.width() - width) / 2, flow.y()};
  put_miniature(flow, subject, sheet, at, width, height);
  const auto x_of = [&](int column) { return at.x_mm + width * column / sheet.plan.lattice.columns; };
  const auto y_of = [&](int step) { return at.y_mm + height * step / sheet.plan.lattice.edge; };
  KeyPage key;
  int part = 0;
  for (std::size_t row = 0; row < grid.down.size(); ++row)
    for (std::size_t column = 0; column < grid.across.size(); ++column) {
      const Span &columns = grid.across[column], &steps = grid.down[row];
      const double left = x_of(columns.first), right = x_of(columns.end), top = y_of(steps.first), foot = y_of(steps.end);
      flow.put(Rectangle{.corner = {left, top}, .width_mm = right - left, .height_mm = foot - top,
                         .stroke = Stroke{ink::accent, 0.4}});
      ++part;
      if (!has_number(right - left, foot - top)) {
        key.numbers.push_back({});
        continue;
      }
      // Room for "12: page 34" where the part has it; the page is filled in when it is known.
      const double middle_x = (left + right) / 2, middle_y = (top + foot) / 2;
      const double room = is_roomy(right - left, foot - top) ? std::min(right - left - 1.5, 30.0) : 6.0;
      flow.put(Rectangle{.corner = {middle_x - room / 2, middle_y - 2.4}, .width_mm = room, .height_mm = 4.8,
                         .radius_mm = 0.8, .fill = ink::white});
      if (is_roomy(right - left, foot - top))
        key.numbers.push_back({flow.page(), flow.sheet().marks.size(), room - 1});
      else
        key.numbers.push_back({});
      flow.put(Text{.at = {middle_x, middle_y + 1.0}, .role = TextRole::label, .size_pt = 8, .align = Align::centre,
                    .ink = ink::text, .text = fmt::format("{}", part)});
    }
  for (std::size_t row = 0; row < grid.down.size(); ++row)
    for (std::size_t column = 0; column < grid.across.size(); ++column) {
      const Span &columns = grid.across[column], &steps = grid.down[row];
      const double part_width = x_of(columns.end) - x_of(columns.first), part_height = y_of(steps.end) - y_of(steps.first);
      if (!is_roomy(part_width, part_height)) continue;
      const double quarter_y = y_of(steps.first) + (y_of(steps.end) - y_of(steps.first)) / 5;
      const double quarter_x = x_of(columns.first) + (x_of(columns.end) - x_of(columns.first)) / 5;
      if (column + 1 < grid.across.size())
        put_meeting_mark(flow, mark_to_the_right(grid, row, column), {x_of(columns.end), quarter_y});
      if (row + 1 < grid.down.size())
        put_meeting_mark(flow, mark_below(grid, row, column), {quarter_x, y_of(steps.end)});
    }
  flow.skip(height + 4);
  return key;
}

}  // namespace evencount::page
