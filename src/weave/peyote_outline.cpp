#include "weave/peyote_outline.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace evencount::weave {
namespace {

using chart::Cell;
using chart::Chart;
using chart::no_bead;

Problem wrong_cell(Cell cell, std::string found, std::string expected) {
  return {ProblemCode::wrong_size, fmt::format("column {}, step {}", cell.column, cell.step), std::move(found),
          std::move(expected)};
}

Problem only_whole_rows(Cell cell) {
  return wrong_cell(cell, "an empty cell",
                    "a bead in every cell (only a whole last row may be left out; peyote-shaped has other outlines)");
}

/// Reads a chart as rows of groups.
class OutlineReader {
 public:
  OutlineReader(const Chart& chart, int drop) : chart_(chart), drop_(drop), groups_(chart.columns() / drop) {}

  Result<PeyoteOutline> run() const {
    PeyoteOutline outline;
    outline.groups = groups_;
    for (int row = 0; row < 2 * chart_.edge(); ++row) {
      const auto span = span_of(row);
      if (!span) return span.problem();
      const bool ended = !outline.rows.empty() && outline.end() < row;
      if (!*span) continue;
      if (ended) return wrong_cell(cell(0, row), "a row without beads", "beads in every row up to the last");
      if (outline.rows.empty())
        outline.begin = row;
      else if (const auto joined = check_ends(outline.rows.back(), **span, row); !joined)
        return joined.problem();
      outline.rows.push_back(**span);
    }
    if (const auto trimmed = check_trimmed(outline); !trimmed) return trimmed.problem();
    return outline;
  }

 private:
  [[nodiscard]] Cell cell(int group, int row) const {
    return {std::min(group * drop_, chart_.columns() - 1), row / 2};
  }

  /// Whether a group holds beads; all its columns or none.
  [[nodiscard]] Result<bool> filled(int group, int row) const {
    const Cell first = cell(group, row);
    const bool any = chart_.at(first) != no_bead;
    for (int i = 1; i < drop_; ++i)
      if ((chart_.at({first.column + i, first.step}) != no_bead) != any)
        return wrong_cell({first.column + i, first.step}, any ? "an empty cell" : "a bead alone",
                          fmt::format("all {} beads of a stitch or none", drop_));
    return any;
  }

  [[nodiscard]] Result<std::optional<GroupSpan>> span_of(int row) const {
    std::optional<GroupSpan> span;
    for (int group = row % 2; group < groups_; group += 2) {
      const auto any = filled(group, row);
      if (!any) return any.problem();
      if (!*any) continue;
      if (!span)
        span = GroupSpan{group, group};
      else if (group != span->last + 2)
        return wrong_cell(cell(group - 2, row), "an empty cell", "a bead in every cell between the ends of a row");
      else
        span->last = group;
    }
    return span;
  }

  [[nodiscard]] Result<Done> check_ends(GroupSpan before, GroupSpan span, int row) const {
    const auto apart = [](int a, int b) { return a > b ? a - b : b - a; };
    if (apart(before.first, span.first) != 1)
      return wrong_cell(cell(span.first, row), "a row that begins there",
                        "one stitch further out or in than the row before");
    if (apart(before.last, span.last) != 1)
      return wrong_cell(cell(span.last, row), "a row that ends there",
                        "one stitch further out or in than the row before");
    return Done{};
  }

  [[nodiscard]] Result<Done> check_trimmed(const PeyoteOutline& outline) const {
    if (outline.rows.size() < 2)
      return Problem{ProblemCode::wrong_size, "edge", fmt::format("{} rows with beads", outline.rows.size()),
                     "at least 2 rows"};
    int first = groups_, last = -1;
    for (const GroupSpan& span : outline.rows) {
      first = std::min(first, span.first);
      last = std::max(last, span.last);
    }
    if (first > 0) return wrong_cell({0, 0}, "an empty column at the edge", "a bead in the first column");
    if (last < groups_ - 1)
      return wrong_cell({chart_.columns() - 1, 0}, "an empty column at the edge", "a bead in the last column");
    if (outline.begin > 1) return wrong_cell({0, 0}, "an empty step at the beginning", "a bead in step 0");
    if (outline.end() < 2 * chart_.edge() - 1)
      return wrong_cell({0, chart_.edge() - 1}, "an empty step at the end", "a bead in the last step");
    return Done{};
  }

  const Chart& chart_;
  int drop_;
  int groups_;
};

}  // namespace

Result<PeyoteOutline> outline_of(const Chart& chart, int drop) {
  return OutlineReader(chart, drop).run();
}

Result<Done> check_rectangular(const Chart& chart, int drop) {
  const int last_step = chart.edge() - 1;
  const auto in_last_row = [&](Cell cell) {
    return cell.step == last_step && last_step > 0 && (cell.column / drop) % 2 == 1;
  };
  std::optional<Cell> left_out;
  bool last_row_holds_beads = false;
  for (int step = 0; step <= last_step; ++step)
    for (int column = 0; column < chart.columns(); ++column) {
      const Cell cell{column, step};
      const bool empty = chart.at(cell) == no_bead;
      if (!empty && in_last_row(cell)) last_row_holds_beads = true;
      if (!empty) continue;
      if (!in_last_row(cell)) return only_whole_rows(cell);
      if (!left_out) left_out = cell;
    }
  if (left_out && last_row_holds_beads) return only_whole_rows(*left_out);
  return Done{};
}

}  // namespace evencount::weave
