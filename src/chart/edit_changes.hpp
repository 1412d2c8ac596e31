#pragma once
/// Comparing a chart with what became of it. Internal to the room.

#include "chart/edit.hpp"

namespace evencount::chart {

/// The edit that leads from one chart to the other.
[[nodiscard]] inline Edit edited(const Chart& before, Chart after) {
  if (before.columns() != after.columns() || before.edge() != after.edge()) return {std::move(after), {}, before};
  Edit edit{std::move(after), {}, {}};
  for (int step = 0; step < before.edge(); ++step)
    for (int column = 0; column < before.columns(); ++column)
      if (const Cell cell{column, step}; before.at(cell) != edit.chart.at(cell))
        edit.changes.push_back({cell, before.at(cell), edit.chart.at(cell)});
  return edit;
}

[[nodiscard]] Problem outside(const Chart& chart, Cell cell);

}  // namespace evencount::chart
