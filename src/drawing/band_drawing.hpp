#pragma once
/// A band as a person looks at it: the working chart, and the band in its colours.

#include <optional>
#include <string_view>

#include "drawing/marks.hpp"
#include "project/project.hpp"
#include "weave/plan.hpp"

namespace evencount::drawing {

/// What stands in a chart's cells.
enum class CellSigns {
  none,     ///< colour alone
  letters,  ///< the legend's letters on the beads' colours
  symbols,  ///< symbols (symbols.hpp) in black on white, to print without colour
};

/// "none", "letters" or "symbols". Errors: unknown_name.
[[nodiscard]] Result<CellSigns> parse_signs(std::string_view name);

struct ChartStyle {
  CellSigns signs = CellSigns::none;
  Length cell_width = millimetres(4);  ///< of one column; the height follows from the gauge
  int first_step = 0;  ///< part of a long band: steps first_step up to, not including, end_step
  std::optional<int> end_step;
  int first_column = 0;  ///< part of a wide band, likewise
  std::optional<int> end_column;
  /// Cells from this step, or this column, on are pale: another part of the chart has them again.
  std::optional<int> pale_from_step, pale_from_column, pale_before_column;
};

/// Where the cells of a chart lie on its sheet.
struct ChartExtent {
  Length width, height;             ///< of the sheet
  Length left, top;                 ///< of the cells
  Length cell_width, cell_height;
  bool operator==(const ChartExtent&) const = default;
};
/// The sheet that chart_drawing would give, without drawing it. Errors: those of chart_drawing.
[[nodiscard]] Result<ChartExtent> chart_extent(const project::Project& project, const project::Band& band,
                                               const weave::Plan& plan, const ChartStyle& style = {});

/// Blank above and below the cells of a chart: its height is 2 chart_margin + the extent of its steps * cell height. Numbers of rows
/// that run along the edge stand in it.
[[nodiscard]] Length chart_margin(const weave::Plan& plan);
/// Of the numbers beside the rows; where they do not fit at this size, only every 5th, 20th … row has one.
inline constexpr double smallest_number_pt = 8;

/// Of the signs in the cells.
inline constexpr double smallest_letter_pt = 8;

/// The narrowest column in whose beads, at that gauge, the longest letter of the legend is still smallest_letter_pt high.
[[nodiscard]] Length narrowest_lettered_cell(const project::Project& project, const weave::Lattice& lattice,
                                             const bead::Gauge& gauge);

/// The chart of a band, step 0 at the top and column 0 on the left, cells in the gauge's proportion, row
/// numbers at the side where each row starts. It is drawn from the plan: cells, beads and numbers all come
/// off its rows. Rows 1 and 2, strung together, share a number. A stepped line follows every tenth row.
/// Properties (tests/drawing/chart_drawing_test.cpp): (1) as many cells as the plan picks up beads, in the
/// legend's colours; (2) odd columns lie half a cell lower; (3) each row's number stands at the side where the
/// row starts. Errors: out_of_range (a cell under 0.5 mm or over 100 mm, steps or columns outside the band).
[[nodiscard]] Result<Drawing> chart_drawing(const project::Project& project, const project::Band& band,
                                            const weave::Plan& plan, const ChartStyle& style = {});

/// How a band is shown that is drawn as it looks.
struct BandLook {
  std::optional<int> most_steps;  ///< of a long band no more
  bool fine = true;  ///< with the shade at a bead's foot and its reflection, which beads of a millimetre don't need
};

/// The band flat and to true size, each bead as a small shaded barrel in its colour and finish.
[[nodiscard]] Drawing band_drawing(const project::Project& project, const project::Band& band,
                                   const weave::Plan& plan, const BandLook& look = {});

}  // namespace evencount::drawing
