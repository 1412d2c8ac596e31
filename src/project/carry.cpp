#include "project/carry.hpp"

#include <fmt/format.h>

#include <array>
#include <map>

#include "base/text.hpp"
#include "project/carry_resample.hpp"

namespace evencount::project {
namespace {

constexpr std::array<std::string_view, 3> carry_names{"resample", "repeat", "centre"};
constexpr std::array<std::string_view, 3> reason_names{"area", "line", "fresh"};

Result<Drawn> draw(const chart::Chart& chart, const Frame& from, const Frame& to, Carry method,
                   const CarryOptions& options) {
  switch (method) {
    case Carry::resample:
      return resample(chart, from, to, options.keep_lines);
    case Carry::repeat:
      return repeat(chart, from, to);
    case Carry::centre:
      return centre(chart, from, to, options.border.value_or(most_common(chart)));
  }
  return resample(chart, from, to, options.keep_lines);
}

/// Every new bead that differs from its source, and the old ones that are nobody's.
void list_changes(const chart::Chart& old, const std::vector<char>& by_line, Carried& carried) {
  std::vector<char> used(old.cells().size(), 0);
  std::size_t at = 0;
  for (int step = 0; step < carried.chart.edge(); ++step)
    for (int column = 0; column < carried.chart.columns(); ++column, ++at) {
      const chart::Cell cell{column, step};
      const auto source = carried.source[at];
      if (source) used[static_cast<std::size_t>(source->step * old.columns() + source->column)] = 1;
      const chart::Bead before = source ? old.at(*source) : chart::no_bead, after = carried.chart.at(cell);
      if (before == after) continue;
      const ChangeReason reason = !source                                ? ChangeReason::fresh
                                  : !by_line.empty() && by_line[at] != 0 ? ChangeReason::line
                                                                         : ChangeReason::area;
      carried.changes.push_back({cell, before, after, reason});
    }
  for (std::size_t i = 0; i < used.size(); ++i)
    if (used[i] == 0 && old.cells()[i] != chart::no_bead) ++carried.left_out;
}

}  // namespace

std::string_view carry_name(Carry carry) {
  return carry_names[static_cast<std::size_t>(carry)];
}

Result<Carry> parse_carry(std::string_view name) {
  for (std::size_t i = 0; i < carry_names.size(); ++i)
    if (carry_names[i] == name) return static_cast<Carry>(i);
  return Problem{ProblemCode::unknown_name, "carry", quote(name), "resample, repeat or centre"};
}

std::string_view reason_name(ChangeReason reason) {
  return reason_names[static_cast<std::size_t>(reason)];
}

chart::Bead most_common(const chart::Chart& chart) {
  std::map<chart::Bead, int> counts;
  for (const chart::Bead bead : chart.cells())
    if (bead != chart::no_bead) ++counts[bead];
  chart::Bead best = chart::no_bead;
  int most = 0;
  for (const auto& [bead, count] : counts)
    if (count > most) best = bead, most = count;
  return best;
}

Result<Carried> carry(const chart::Chart& chart, const Piece& from, const Piece& to,
                      const CarryOptions& options) {
  if (chart.columns() != from.lattice.columns || chart.edge() != from.lattice.edge)
    return Problem{ProblemCode::wrong_size, "chart",
                   fmt::format("{} x {} cells", chart.columns(), chart.edge()),
                   fmt::format("{} x {}, as its lattice has", from.lattice.columns, from.lattice.edge)};
  const Frame old = frame_of(chart, from);
  const bool shifted = to.lattice.drop > 0 && to.lattice.columns > to.lattice.drop && to.lattice.edge > 1;
  const Frame fresh{to.lattice, weave::closes_round_edge(to.closure), old.half_last_step && shifted};
  Carried carried;
  const bool same = old.lattice == fresh.lattice && old.edge_round == fresh.edge_round;
  carried.method = options.method.value_or(!same && goes_on_in_period(chart, old, fresh) ? Carry::repeat
                                                                                         : Carry::resample);
  // Nothing to choose: the drawing as it is.
  auto drawn =
      same ? centre(chart, old, fresh, chart::no_bead) : draw(chart, old, fresh, carried.method, options);
  if (!drawn) return drawn.problem();
  carried.chart = std::move(drawn->chart);
  carried.source = std::move(drawn->source);
  carried.lost = std::move(drawn->lost);
  carried.period_across = drawn->period_across;
  carried.period_along = drawn->period_along;
  list_changes(chart, drawn->by_line, carried);
  return carried;
}

chart::Chart plain(const chart::Chart& old, const Carried& carried) {
  chart::Chart chart = carried.chart;
  std::size_t at = 0;
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column, ++at)
      chart.set({column, step}, carried.source[at] ? old.at(*carried.source[at]) : chart::no_bead);
  return chart;
}

}  // namespace evencount::project
