#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>

#include "base/text.hpp"
#include "drawing/band_drawing.hpp"
#include "drawing/stitched_cells.hpp"
#include "drawing/symbols.hpp"

namespace evencount::drawing {
namespace {

constexpr double mm_per_pt = 25.4 / 72;  // exact, by the definition of the PostScript point
constexpr double smallest_cell_mm = 0.5;
constexpr double largest_cell_mm = 100;  // a sheet of paper holds two; sizes far beyond it are no numbers that a drawing can carry
constexpr double letter_share = 0.86;             ///< of a cell's width that its letter may take
constexpr double letter_share_of_row = 0.66, letter_share_of_height = 0.9;  ///< of a row's height, and of the bead's own
constexpr colour::Rgb outline{0x8d, 0x90, 0x8e};  // stands out from black and from white cells
constexpr colour::Rgb number_ink{0x4a, 0x52, 0x55};
constexpr colour::Rgb guide_ink{0x1d, 0x4e, 0x5f};

/// Widest figure and dash of the label font in em, from its metrics; letters by `letter_em`.
constexpr double figure_em = 0.58;

/// The width of capital letters of a bold sans, generously, in em.
double letter_em(std::string_view letters) {
  double em = 0;
  for (const char letter : letters) em += letter == 'W' ? 1.05 : letter == 'M' ? 0.93 : 0.78;
  return std::max(em, 0.78);
}

/// Where things are on the sheet of one chart, or of a part of it.
struct Layout {
  weave::Lattice lattice;
  int first_step = 0, end_step = 0, first_column = 0, end_column = 0;
  double cell_width_mm = 0, cell_height_mm = 0;
  double number_pt = 0, gutter_mm = 0, margin_mm = 0;

  [[nodiscard]] bool shows(weave::Cell cell) const {
    return cell.step >= first_step && cell.step < end_step && cell.column >= first_column &&
           cell.column < end_column;
  }
  [[nodiscard]] Rectangle box(weave::Cell cell) const {
    const weave::Box box = weave::box_of(lattice, cell);
    return {.corner = {gutter_mm + (box.across - weave::pitches(lattice, first_column)) * cell_width_mm,
                       margin_mm + (box.along - weave::pitches(lattice, first_step)) * cell_height_mm},
            .width_mm = box.width * cell_width_mm,
            .height_mm = box.height * cell_height_mm};
  }
  [[nodiscard]] weave::Box part() const {
    weave::Lattice cut = lattice;
    cut.edge = end_step - first_step;
    weave::Box part = weave::extent(cut);
    part.width += weave::pitches(lattice, end_column - first_column) - weave::pitches(lattice, lattice.columns);
    return part;
  }
  [[nodiscard]] double width_mm() const { return 2 * gutter_mm + part().width * cell_width_mm; }
  [[nodiscard]] double height_mm() const { return 2 * margin_mm + part().height * cell_height_mm; }
};

/// Whether the rows run along the edge, as those of brick stitch do.
bool rows_run_along(const weave::Plan& plan) {
  return !plan.rows.empty() && weave::axis_of(plan.rows.front().travel) == weave::Axis::along;
}

Result<Done> check_part(std::string_view what, int first, int end, int size) {
  if (first >= 0 && first < end && end <= size) return Done{};
  return Problem{ProblemCode::out_of_range, std::string(what), fmt::format("{} to {}", first, end),
                 fmt::format("a part of 0 to {}", size)};
}

Result<Layout> lay_out(const project::Project& project, const project::Band& band, const weave::Plan& plan,
                       const ChartStyle& style) {
  if (!(style.cell_width.mm() >= smallest_cell_mm && style.cell_width.mm() <= largest_cell_mm))
    return Problem{ProblemCode::out_of_range, "cell width", fmt::format("{:.6g} mm", style.cell_width.mm()),
                   fmt::format("{} to {} mm", smallest_cell_mm, largest_cell_mm)};
  Layout layout{.lattice = plan.lattice,
                .first_step = style.first_step,
                .end_step = style.end_step.value_or(plan.lattice.edge),
                .first_column = style.first_column,
                .end_column = style.end_column.value_or(plan.lattice.columns),
                .cell_width_mm = style.cell_width.mm()};
  if (auto ok = check_part("steps", layout.first_step, layout.end_step, plan.lattice.edge); !ok)
    return ok.problem();
  if (auto ok = check_part("columns", layout.first_column, layout.end_column, plan.lattice.columns); !ok)
    return ok.problem();
  const bead::Gauge gauge = project::gauge_of(project, band);
  layout.cell_height_mm = layout.cell_width_mm * (gauge.edge / gauge.column);
  layout.number_pt = std::clamp(0.42 * layout.cell_height_mm / mm_per_pt, smallest_number_pt, 9.0);
  const auto digits = std::max<std::size_t>(3, fmt::format("{}", weave::row_count(plan)).size());
  layout.margin_mm = chart_margin(plan).mm();
  layout.gutter_mm = static_cast<double>(digits) * figure_em * layout.number_pt * mm_per_pt + 1.6;
  return layout;
}

void draw_letter(Drawing& drawing, const Layout& layout, const Rectangle& box, const std::string& letter, colour::Rgb ink) {
  if (letter.empty()) return;
  const double em_mm =
      std::min({letter_share_of_row * layout.cell_height_mm, letter_share_of_height * box.height_mm,
                letter_share * box.width_mm / letter_em(letter), 3.6});
  constexpr double half_capital_em = 0.36;  // capitals of the label font are 0.72 em high
  drawing.marks.push_back(Text{.at = {box.corner.x_mm + box.width_mm / 2,
                                      box.corner.y_mm + box.height_mm / 2 + half_capital_em * em_mm},
                               .role = TextRole::label,
                               .size_pt = em_mm / mm_per_pt,
                               .align = Align::centre,
                               .ink = ink,
                               .text = letter,
                               .in_picture = true});
}

/// Whether another part of the chart has the cell as its own.
bool is_pale(const ChartStyle& style, weave::Cell cell) {
  return (style.pale_from_step && cell.step >= *style.pale_from_step) ||
         (style.pale_from_column && cell.column >= *style.pale_from_column) ||
         (style.pale_before_column && cell.column < *style.pale_before_column);
}

/// A cell's bead as it is drawn: its box, and the ink of what stands on it.
struct DrawnCell {
  Rectangle box;
  chart::Bead bead = chart::no_bead;
  colour::Rgb ink;
};

DrawnCell drawn_cell(const Layout& layout, const project::Project& project, const StitchedCell& stitched, const ChartStyle& style) {
  constexpr colour::Rgb white{255, 255, 255}, black{0, 0, 0};
  constexpr double paleness = 0.62;  // by eye: plainly another tone, the letters still legible
  const bool symbols = style.signs == CellSigns::symbols, pale = is_pale(style, stitched.cell);
  DrawnCell drawn{.box = layout.box(stitched.cell), .bead = stitched.bead};
  drawn.box.fill = symbols ? white : colour_of(project, stitched.bead);
  if (pale) drawn.box.fill = colour::mix(*drawn.box.fill, white, paleness);
  drawn.box.stroke = Stroke{outline, 0.12};
  const bool by_symbol = symbols && stitched.bead < symbol_count;
  drawn.ink = !by_symbol ? colour::ink_on(*drawn.box.fill) : pale ? colour::mix(black, white, 0.5) : black;
  return drawn;
}

void draw_sign(Drawing& drawing, const Layout& layout, const project::Project& project, const DrawnCell& cell, CellSigns signs) {
  constexpr double symbol_share = 0.72;  // of the smaller side
  const Rectangle& box = cell.box;
  if (signs == CellSigns::symbols && cell.bead < symbol_count) {
    const Point centre{box.corner.x_mm + box.width_mm / 2, box.corner.y_mm + box.height_mm / 2};
    for (Mark& mark : symbol_marks(cell.bead, centre, symbol_share * std::min(box.width_mm, box.height_mm), cell.ink))
      drawing.marks.push_back(std::move(mark));
  } else if (signs != CellSigns::none) {
    draw_letter(drawing, layout, box, letter_of(project, cell.bead), cell.ink);
  }
}

/// The boxes of one colour after the other, and then what stands on them: marks that look alike and follow each other are painted as one.
void draw_cells(Drawing& drawing, const Layout& layout, const project::Project& project, const weave::Plan& plan,
                const ChartStyle& style) {
  std::vector<DrawnCell> cells;
  for (const StitchedCell& stitched : all_cells(plan))
    if (layout.shows(stitched.cell)) cells.push_back(drawn_cell(layout, project, stitched, style));
  const auto look = [](const DrawnCell& cell) {
    const colour::Rgb fill = *cell.box.fill;
    return std::tuple(cell.bead, fill.red, fill.green, fill.blue);
  };
  std::stable_sort(cells.begin(), cells.end(), [&](const DrawnCell& a, const DrawnCell& b) { return look(a) < look(b); });
  for (const DrawnCell& cell : cells) drawing.marks.push_back(cell.box);
  for (const DrawnCell& cell : cells) draw_sign(drawing, layout, project, cell, style.signs);
}

/// Every how many rows a number fits. Numbers alternate sides, so an odd interval spreads wider than an even
/// one.
int number_interval(const Layout& layout, bool along) {
  const double needed_mm = (along ? 2.6 * figure_em : 1.15) * layout.number_pt * mm_per_pt;
  constexpr std::array intervals{1, 5, 20, 50, 100, 500, 1'000, 5'000};
  for (const int interval : intervals) {
    const double cells_apart = interval % 2 == 1 ? interval : interval / 2.0;
    if (cells_apart * (along ? layout.cell_width_mm : layout.cell_height_mm) >= needed_mm) return interval;
  }
  return intervals.back();
}

/// Where a row's beads lie that the sheet shows.
struct RowPlace {
  double x_mm = 0, y_mm = 0;  ///< their middle
  int shown = 0;
};

RowPlace place_of(const Layout& layout, const weave::Plan& plan, const weave::Row& row) {
  RowPlace place;
  for (const StitchedCell& stitched : cells_between(plan, row.first_stitch, row.end_stitch)) {
    if (!layout.shows(stitched.cell)) continue;
    const Rectangle box = layout.box(stitched.cell);
    place.x_mm += box.corner.x_mm + box.width_mm / 2;
    place.y_mm += box.corner.y_mm + box.height_mm / 2;
    ++place.shown;
  }
  if (place.shown > 0) {
    place.x_mm /= place.shown;
    place.y_mm /= place.shown;
  }
  return place;
}

/// Beside the row, at the side where it starts; rows that run along the edge are numbered above or below.
void draw_number(Drawing& drawing, const Layout& layout, const weave::Plan& plan, const weave::Row& row,
                 int interval) {
  const bool together = row.first_number != row.last_number;
  const bool along = weave::axis_of(row.travel) == weave::Axis::along;
  if (!weave::has_beads(row.kind) || (!together && row.first_number % interval != 0)) return;
  const RowPlace place = place_of(layout, plan, row);
  if (place.shown == 0) return;
  const bool from_start = row.travel == weave::Travel::right || row.travel == weave::Travel::forth;
  const bool tenth = row.last_number % 10 == 0;
  const double half_figure_mm = 0.36 * layout.number_pt * mm_per_pt;
  constexpr double gap_mm = 0.9;
  const Point at =
      along ? Point{place.x_mm, from_start ? layout.margin_mm - gap_mm
                                           : layout.height_mm() - layout.margin_mm + gap_mm + 2 * half_figure_mm}
            : Point{from_start ? layout.gutter_mm - gap_mm : layout.width_mm() - layout.gutter_mm + gap_mm,
                    place.y_mm + half_figure_mm};
  drawing.marks.push_back(
      Text{.at = at,
           .role = tenth ? TextRole::label_bold : TextRole::label,
           .size_pt = layout.number_pt,
           .align = along ? Align::centre : from_start ? Align::right : Align::left,
           .ink = tenth ? guide_ink : number_ink,
           .text = together ? fmt::format("{}–{}", row.first_number, row.last_number)
                            : fmt::format("{}", row.first_number),
           .in_picture = true});
}

/// A stepped line below the cells of a tenth row, so that the eye finds its place again.
void draw_guide(Drawing& drawing, const Layout& layout, const weave::Plan& plan, const weave::Row& row) {
  const bool along = weave::axis_of(row.travel) == weave::Axis::along;
  if (!weave::has_beads(row.kind) || along || row.last_number % 10 != 0 ||
      layout.lattice.holes == weave::Holes::round_squares)
    return;
  const auto cells = cells_between(plan, row.first_stitch, row.end_stitch);
  if (cells.empty()) return;
  const int step = cells.front().cell.step;
  if (step < layout.first_step || step >= layout.end_step) return;
  Path guide{.stroke = Stroke{guide_ink, 0.35}};
  const auto [leftmost, rightmost] = std::minmax_element(
      cells.begin(), cells.end(), [](const auto& a, const auto& b) { return a.cell.column < b.cell.column; });
  // Beside the row's own beads lies at most one column of the rows next to it.
  const int first = std::max(layout.first_column, leftmost->cell.column - plan.lattice.drop);
  const int end = std::min(layout.end_column, rightmost->cell.column + plan.lattice.drop + 1);
  for (int column = first; column < end; ++column) {
    const Rectangle box = layout.box({column, step});
    const double foot_mm = box.corner.y_mm + box.height_mm;
    guide.points.push_back({box.corner.x_mm, foot_mm});
    guide.points.push_back({box.corner.x_mm + box.width_mm, foot_mm});
  }
  drawing.marks.push_back(std::move(guide));
}

}  // namespace

Result<CellSigns> parse_signs(std::string_view name) {
  if (name == "none") return CellSigns::none;
  if (name == "letters") return CellSigns::letters;
  if (name == "symbols") return CellSigns::symbols;
  return Problem{ProblemCode::unknown_name, "signs", quote(name), "none, letters or symbols"};
}

Length chart_margin(const weave::Plan& plan) {
  constexpr Length plain = millimetres(1), with_numbers = millimetres(5);
  return rows_run_along(plan) ? with_numbers : plain;
}

Length narrowest_lettered_cell(const project::Project& project, const weave::Lattice& lattice, const bead::Gauge& gauge) {
  double widest_em = letter_em("A");
  for (const project::LegendEntry& entry : project.legend)
    widest_em = std::max(widest_em, letter_em(entry.letter));
  const double narrowest = lattice.holes == weave::Holes::round_squares ? weave::side_thickness : 1.0;
  const double em_mm = smallest_letter_pt * mm_per_pt;
  const double for_width_mm = widest_em * em_mm / letter_share / narrowest;
  const double for_height_mm = em_mm / std::min(letter_share_of_row, letter_share_of_height * narrowest) / (gauge.edge / gauge.column);
  return millimetres(std::max(for_width_mm, for_height_mm));
}

Result<ChartExtent> chart_extent(const project::Project& project, const project::Band& band,
                                 const weave::Plan& plan, const ChartStyle& style) {
  const auto layout = lay_out(project, band, plan, style);
  if (!layout) return layout.problem().within("band " + band.name);
  return ChartExtent{millimetres(layout->width_mm()),      millimetres(layout->height_mm()),
                     millimetres(layout->gutter_mm),       millimetres(layout->margin_mm),
                     millimetres(layout->cell_width_mm),   millimetres(layout->cell_height_mm)};
}

Result<Drawing> chart_drawing(const project::Project& project, const project::Band& band,
                              const weave::Plan& plan, const ChartStyle& style) {
  const auto layout = lay_out(project, band, plan, style);
  if (!layout) return layout.problem().within("band " + band.name);
  Drawing drawing{millimetres(layout->width_mm()), millimetres(layout->height_mm()), {}};
  draw_cells(drawing, *layout, project, plan, style);
  const bool along = rows_run_along(plan);
  const int interval = number_interval(*layout, along);
  for (const weave::Row& row : plan.rows) {
    draw_guide(drawing, *layout, plan, row);
    draw_number(drawing, *layout, plan, row, interval);
  }
  return drawing;
}

}  // namespace evencount::drawing
