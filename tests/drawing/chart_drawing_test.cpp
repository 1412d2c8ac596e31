#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>

#include "chart/letters.hpp"
#include "drawing/band_drawing.hpp"
#include "drawing/sample.hpp"
#include "drawing/symbols.hpp"

namespace evencount::drawing {
namespace {

struct Drawn {
  project::Project project;
  weave::Plan plan;
  Drawing chart;
};

Drawn draw(int columns, int edge, const ChartStyle& style = {}, bool last_row_empty = false) {
  Drawn drawn{sample_project(columns, edge, last_row_empty), {}, {}};
  drawn.plan = *project::plan_of(drawn.project.bands[0]);
  drawn.chart = *chart_drawing(drawn.project, drawn.project.bands[0], drawn.plan, style);
  return drawn;
}

std::map<std::string, Text> numbers_of(const Drawing& chart) {
  std::map<std::string, Text> numbers;
  for (const Text& text : all_of_kind<Text>(chart))
    if (text.align != Align::centre) numbers[text.text] = text;
  return numbers;
}

TEST(ChartDrawing, HasOneCellForEachBeadInTheLegendsColours) {
  const Drawn drawn = draw(6, 5);
  const auto cells = all_of_kind<Rectangle>(drawn.chart);
  ASSERT_EQ(cells.size(), 30u);
  const auto dark = std::count_if(cells.begin(), cells.end(), [&](const Rectangle& cell) {
    return cell.fill == drawn.project.legend[0].colour;
  });
  EXPECT_EQ(dark, 18);  // steps 0, 2 and 4
}

TEST(ChartDrawing, LeavesOutAnEmptyLastRow) {
  EXPECT_EQ(all_of_kind<Rectangle>(draw(6, 5, {}, true).chart).size(), 27u);
}

TEST(ChartDrawing, OddColumnsLieHalfACellLowerAndColumnZeroLeft) {
  const auto cells = all_of_kind<Rectangle>(draw(2, 3, {.cell_width = millimetres(5)}).chart);
  double even_top = 1e9, odd_top = 1e9, even_left = 0, odd_left = 0;
  const double middle = draw(2, 3, {.cell_width = millimetres(5)}).chart.width.mm() / 2;
  for (const Rectangle& cell : cells) {
    const bool even = cell.corner.x_mm + 2.5 < middle;
    (even ? even_top : odd_top) = std::min(even ? even_top : odd_top, cell.corner.y_mm);
    (even ? even_left : odd_left) = cell.corner.x_mm;
  }
  EXPECT_NEAR(odd_top - even_top, cells[0].height_mm / 2, 1e-9);
  EXPECT_NEAR(odd_left - even_left, 5, 1e-9);
  EXPECT_NEAR(even_top, chart_margin(draw(2, 3).plan).mm(), 1e-9);
}

TEST(ChartDrawing, CellsHaveTheGaugesProportion) {
  Drawn drawn = draw(4, 3);
  drawn.project.bands[0].gauge = bead::Gauge{millimetres(1.4), millimetres(1.75), "measured"};
  const auto chart = chart_drawing(drawn.project, drawn.project.bands[0], drawn.plan, {});
  const auto cell = all_of_kind<Rectangle>(*chart).front();
  EXPECT_NEAR(cell.height_mm / cell.width_mm, 1.25, 1e-12);
  EXPECT_NEAR(chart->height.mm(), 2 * chart_margin(drawn.plan).mm() + 3.5 * cell.height_mm, 1e-9);
}

TEST(ChartDrawing, NumbersStandWhereTheRowsStart) {
  for (const int columns : {6, 7}) {
    const Drawn drawn = draw(columns, 8);
    const auto numbers = numbers_of(drawn.chart);
    ASSERT_EQ(numbers.size(), 15u);  // rows 1 and 2 share one
    EXPECT_EQ(numbers.at("1–2").align, Align::left);
    for (const weave::Row& row : drawn.plan.rows) {
      if (row.kind != weave::RowKind::row || row.first_number != row.last_number) continue;
      const Text& number = numbers.at(std::to_string(row.first_number));
      const bool on_left = number.at.x_mm < drawn.chart.width.mm() / 2;
      EXPECT_EQ(on_left, row.travel == weave::Travel::right) << "row " << row.first_number;
    }
  }
}

TEST(ChartDrawing, ANumberIsLevelWithItsRow) {
  const Drawn drawn = draw(6, 8);
  const auto numbers = numbers_of(drawn.chart);
  const double cell = all_of_kind<Rectangle>(drawn.chart).front().height_mm;
  EXPECT_NEAR(numbers.at("5").at.y_mm - numbers.at("3").at.y_mm, cell, 1e-9);
  EXPECT_NEAR(numbers.at("4").at.y_mm - numbers.at("3").at.y_mm, cell / 2, 1e-9);
}

TEST(ChartDrawing, SmallCellsHaveFewerNumbersOfReadableSize) {
  const Drawn drawn = draw(6, 100, {.cell_width = millimetres(0.8)});
  const auto numbers = numbers_of(drawn.chart);
  EXPECT_EQ(numbers.size(), 41u);  // 1-2 and every fifth of 200
  for (const auto& [text, number] : numbers) EXPECT_GE(number.size_pt, smallest_number_pt);
}

/// A chart of so many colours, each cell's chosen by chance.
Drawn draw_at_random(int colours, const ChartStyle& style) {
  constexpr int columns = 9, edge = 14;
  std::mt19937 random(static_cast<std::uint32_t>(colours));
  Drawn drawn{sample_project(columns, edge), {}, {}};
  drawn.project.legend.clear();
  for (int i = 0; i < colours; ++i) {
    const auto channel = [&] { return static_cast<std::uint8_t>(random()); };
    drawn.project.legend.push_back(
        {.letter = chart::letter_name(i), .name = "one", .colour = {channel(), channel(), channel()}, .bead = "cylinder-11"});
  }
  project::Band& band = drawn.project.bands[0];
  for (int step = 0; step < edge; ++step)
    for (int column = 0; column < columns; ++column)
      band.chart.set({column, step}, static_cast<chart::Bead>(random() % static_cast<std::uint32_t>(colours)));
  drawn.plan = *project::plan_of(band);
  drawn.chart = *chart_drawing(drawn.project, band, drawn.plan, style);
  return drawn;
}

/// Where a cell's box begins, reckoned from the extent alone: odd columns lie half a cell lower.
Point corner_of(const ChartExtent& extent, chart::Cell cell) {
  const double along = cell.step + (cell.column % 2 == 1 ? 0.5 : 0.0);
  return {extent.left.mm() + cell.column * extent.cell_width.mm(), extent.top.mm() + along * extent.cell_height.mm()};
}

bool near(Point a, Point b) {
  return std::abs(a.x_mm - b.x_mm) < 1e-6 && std::abs(a.y_mm - b.y_mm) < 1e-6;
}

TEST(ChartDrawing, EveryCellHasTheColourAndTheSignOfItsOwnBead) {
  for (const CellSigns signs : {CellSigns::letters, CellSigns::symbols})
    for (const int colours : {2, 7, 40}) {
      const ChartStyle style{.signs = signs, .cell_width = millimetres(6)};
      const Drawn drawn = draw_at_random(colours, style);
      const project::Band& band = drawn.project.bands[0];
      const ChartExtent extent = *chart_extent(drawn.project, band, drawn.plan, style);
      const auto boxes = all_of_kind<Rectangle>(drawn.chart);
      const auto texts = all_of_kind<Text>(drawn.chart);
      for (int step = 0; step < band.chart.edge(); ++step)
        for (int column = 0; column < band.chart.columns(); ++column) {
          const chart::Bead bead = band.chart.at({column, step});
          const bool by_symbol = signs == CellSigns::symbols && bead < symbol_count;
          const Point corner = corner_of(extent, {column, step});
          const Point centre{corner.x_mm + extent.cell_width.mm() / 2, corner.y_mm + extent.cell_height.mm() / 2};
          const auto here = [&](const Rectangle& box) { return box.stroke && near(box.corner, corner); };
          ASSERT_EQ(std::count_if(boxes.begin(), boxes.end(), here), 1) << column << ", " << step;
          const Rectangle& box = *std::find_if(boxes.begin(), boxes.end(), here);
          EXPECT_EQ(*box.fill, signs == CellSigns::symbols ? (colour::Rgb{255, 255, 255}) : drawn.project.legend[bead].colour);
          std::vector<std::string> letters;
          for (const Text& text : texts)
            if (text.align == Align::centre && std::abs(text.at.x_mm - centre.x_mm) < 1e-6 && text.at.y_mm > corner.y_mm &&
                text.at.y_mm < corner.y_mm + extent.cell_height.mm())
              letters.push_back(text.text);
          EXPECT_EQ(letters, by_symbol ? std::vector<std::string>{} : std::vector{drawn.project.legend[bead].letter});
          if (!by_symbol) continue;
          const double side = 0.72 * std::min(extent.cell_width.mm(), extent.cell_height.mm());
          for (const Mark& mark : symbol_marks(bead, centre, side)) {
            const auto same = [&](const Mark& one) {
              const Bounds a = bounds_of({{}, {}, {one}}), b = bounds_of({{}, {}, {mark}});
              return one.index() == mark.index() && near({a.left_mm, a.top_mm}, {b.left_mm, b.top_mm}) &&
                     near({a.right_mm, a.bottom_mm}, {b.right_mm, b.bottom_mm});
            };
            EXPECT_TRUE(std::any_of(drawn.chart.marks.begin(), drawn.chart.marks.end(), same)) << column << ", " << step << ": " << bead;
          }
        }
    }
}

TEST(ChartDrawing, LettersStandOutOnTheirGround) {
  const Drawn drawn = draw(4, 2, {.signs = CellSigns::letters});
  for (const Text& text : all_of_kind<Text>(drawn.chart)) {
    EXPECT_TRUE(text.in_picture);
    if (text.text == "A") {
      EXPECT_EQ(text.ink, (colour::Rgb{255, 255, 255}));
    }
    if (text.text == "B") {
      EXPECT_EQ(text.ink, (colour::Rgb{0, 0, 0}));
    }
  }
}

TEST(ChartDrawing, SymbolsNeedNoColour) {
  const Drawn drawn = draw(4, 2, {.signs = CellSigns::symbols});
  for (const Rectangle& box : all_of_kind<Rectangle>(drawn.chart)) EXPECT_EQ(*box.fill, (colour::Rgb{255, 255, 255}));
  const auto circles = all_of_kind<Circle>(drawn.chart);
  EXPECT_FALSE(circles.empty());
  for (const Circle& circle : circles) EXPECT_EQ(circle.fill ? *circle.fill : circle.stroke->ink, colour::Rgb{});
  EXPECT_GT(drawn.chart.marks.size(), draw(4, 2, {}).chart.marks.size());
  EXPECT_EQ(parse_signs("symbols").value(), CellSigns::symbols);
  EXPECT_FALSE(parse_signs("stars"));
}

TEST(ChartDrawing, PartsMakeUpTheWhole) {
  const std::size_t whole = all_of_kind<Rectangle>(draw(7, 9).chart).size();
  std::size_t parts = 0;
  for (const auto& [step, end] : {std::pair{0, 4}, std::pair{4, 9}})
    for (const auto& [column, end_column] : {std::pair{0, 3}, std::pair{3, 7}})
      parts +=
          all_of_kind<Rectangle>(
              draw(7, 9,
                   {.first_step = step, .end_step = end, .first_column = column, .end_column = end_column})
                  .chart)
              .size();
  EXPECT_EQ(parts, whole);
}

TEST(ChartDrawing, APartBeginsAtItsOwnTop) {
  const Drawn part = draw(6, 20, {.first_step = 12, .end_step = 16});
  EXPECT_NEAR(bounds_of(part.chart).top_mm, chart_margin(part.plan).mm(), 0.1);
  const auto numbers = numbers_of(part.chart);
  EXPECT_EQ(numbers.size(), 8u);
  EXPECT_TRUE(numbers.contains("25") && numbers.contains("32") && !numbers.contains("33"));
}

TEST(ChartDrawing, AllMarksLieOnTheSheet) {
  for (const int columns : {2, 3, 8}) {
    const Drawing chart = draw(columns, 30).chart;
    const Bounds box = bounds_of(chart);
    EXPECT_GE(box.left_mm, 0);
    EXPECT_GE(box.top_mm, 0);
    EXPECT_LE(box.right_mm, chart.width.mm());
    EXPECT_LE(box.bottom_mm, chart.height.mm());
  }
}

TEST(ChartDrawing, RefusesWhatIsNotThere) {
  const Drawn drawn = draw(6, 5);
  const auto& band = drawn.project.bands[0];
  for (const ChartStyle& style :
       {ChartStyle{.cell_width = millimetres(0.4)}, ChartStyle{.cell_width = millimetres(101)},
        ChartStyle{.cell_width = millimetres(1e300)}, ChartStyle{.first_step = 5}, ChartStyle{.end_step = 6},
        ChartStyle{.first_column = -1}, ChartStyle{.first_column = 2, .end_column = 2}}) {
    const auto chart = chart_drawing(drawn.project, band, drawn.plan, style);
    ASSERT_FALSE(chart.ok());
    EXPECT_EQ(chart.problem().code, ProblemCode::out_of_range);
    EXPECT_NE(chart.problem().where.find("Stripe"), std::string::npos);
  }
}

}  // namespace
}  // namespace evencount::drawing
