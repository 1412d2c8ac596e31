// What the engine draws on charts drawn by lot: src/band/engine-answers.json, which the page's previews are held against. From studio/:
//   g++ -std=c++20 -I../src tools/engine_answers.cpp ../src/chart/*.cpp ../src/base/*.cpp -lfmt -o engine_answers
//   ./engine_answers > src/band/engine-answers.json

#include <fmt/core.h>
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <array>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "chart/edit.hpp"

using namespace evencount::chart;

namespace {

struct Drawing {
  std::string_view kind;
  bool filled;
};
constexpr std::array drawings{Drawing{"line", false},    Drawing{"rectangle", true}, Drawing{"rectangle", false},
                              Drawing{"ellipse", true}, Drawing{"ellipse", false},  Drawing{"fill", false}};
constexpr Bead fresh = 5;  // in no chart

evencount::Result<Edit> drawn(const Chart& chart, const Grid& grid, const Drawing& drawing, Stretch stretch) {
  if (drawing.kind == "line") return draw_line(chart, grid, stretch, fresh);
  if (drawing.kind == "rectangle") return draw_rectangle(chart, grid, stretch, fresh, drawing.filled);
  if (drawing.kind == "ellipse") return draw_ellipse(chart, grid, stretch, fresh, drawing.filled);
  return flood_fill(chart, grid, stretch.from, fresh);
}

}  // namespace

int main() {
  std::mt19937 random(20240611);
  const auto pick = [&](int from, int to) {
    return from + static_cast<int>(random() % static_cast<unsigned>(to - from + 1));
  };
  fmt::print("[\n");
  constexpr int count = 120;
  for (int i = 0; i < count; ++i) {
    const int columns = pick(1, 13), edge = pick(1, 15);
    const int drop = pick(0, 2);
    const Grid grid{drop, pick(0, 1) == 1, false};
    Chart chart = Chart::make(columns, edge, 0).value();
    std::string cells;
    for (int step = 0; step < edge; ++step)
      for (int column = 0; column < columns; ++column) {
        const int roll = pick(0, 19);
        const Bead bead = roll == 0 ? no_bead : static_cast<Bead>(roll < 13 ? 0 : 1);
        chart.set({column, step}, bead);
        cells += bead == no_bead ? '.' : static_cast<char>('A' + bead);
      }
    Stretch stretch;
    stretch.from.column = pick(0, columns - 1);
    stretch.from.step = pick(0, edge - 1);
    stretch.to.column = pick(0, columns - 1);
    stretch.to.step = pick(0, edge - 1);
    const Drawing& drawing = drawings.at(static_cast<std::size_t>(pick(0, 5)));
    const Edit edit = drawn(chart, grid, drawing, stretch).value();
    std::vector<int> changed;
    for (const CellChange& change : edit.changes) changed.push_back(change.cell.step * columns + change.cell.column);
    std::vector<std::string> names;
    for (const Symmetry symmetry : symmetries(chart, grid)) names.push_back(fmt::format("\"{}\"", symmetry_name(symmetry)));
    fmt::print(
        R"(  {{ "columns": {}, "edge": {}, "drop": {}, "round": {}, "cells": "{}", "kind": "{}", "filled": {}, "from": [{}, {}], )"
        R"("to": [{}, {}], "changed": "{}", "symmetries": [{}] }}{})"
        "\n",
        columns, edge, grid.drop, grid.edge_round, cells, drawing.kind, drawing.filled, stretch.from.column,
        stretch.from.step, stretch.to.column, stretch.to.step, fmt::join(changed, " "), fmt::join(names, ", "),
        i + 1 < count ? "," : "");
  }
  fmt::print("]\n");
}
