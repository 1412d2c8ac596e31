#include "wording/row_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>

namespace evencount::wording {
namespace {

using weave::Act;

/// What a row strings in order, a decrease for each place that stays empty.
struct Item {
  weave::Bead bead = chart::no_bead;  ///< none for a decrease
  bool begins_unit = false;
};

int beads_in(const weave::Plan& plan, std::size_t row) {
  return static_cast<int>(weave::beads_of(plan, plan.rows[row]).size());
}

/// How many places a round has: one for each bead of the round that it hangs on.
int places_of(const weave::Plan& plan, std::size_t row) {
  const bool on_ring = row == 1 || (plan.rows[row].on_back && !plan.rows[row - 1].on_back);
  return on_ring ? beads_in(plan, 0) / 2 : beads_in(plan, row - 1);
}

/// In a round the needle passes one bead after each it strings; every further pass stands for a place without a bead.
std::vector<Item> items_of_round(const weave::Plan& plan, std::size_t index, int places) {
  const weave::Row& row = plan.rows[index];
  std::vector<Item> items;
  int passes = 1;
  for (std::size_t i = row.first_stitch; i < row.end_stitch; ++i) {
    const weave::Stitch& stitch = plan.stitches[i];
    if (stitch.act == Act::pass) ++passes;
    if (stitch.act != Act::pick_up) continue;
    for (; passes > 1; --passes) items.push_back({});
    items.push_back({stitch.bead});
    passes = 0;
  }
  items.resize(std::max(items.size(), static_cast<std::size_t>(places)));
  return items;
}

std::vector<Item> items_of(const weave::Plan& plan, std::size_t index) {
  const weave::Row& row = plan.rows[index];
  if (row.kind == weave::RowKind::round && plan.lattice.rise == 0 && index > 0)
    if (const int places = places_of(plan, index); places > beads_in(plan, index))
      return items_of_round(plan, index, places);
  const bool units = plan.lattice.holes == weave::Holes::round_squares;
  std::vector<Item> items;
  bool in_unit = false;
  for (std::size_t i = row.first_stitch; i < row.end_stitch; ++i) {
    const weave::Stitch& stitch = plan.stitches[i];
    if (stitch.act == Act::pick_up) items.push_back({stitch.bead, units && !in_unit && !items.empty()});
    in_unit = stitch.act == Act::pick_up;
  }
  return items;
}

}  // namespace

std::vector<RunText> runs_of(const weave::Plan& plan, std::size_t row, std::span<const std::string> letters,
                             std::string_view decrease_sign) {
  const std::vector<Item> items = items_of(plan, row);
  std::vector<RunText> runs;
  for (std::size_t first = 0; first < items.size();) {
    std::size_t end = first + 1;
    const bool decrease = items[first].bead == chart::no_bead;
    while (!decrease && end < items.size() && items[end].bead == items[first].bead && !items[end].begins_unit) ++end;
    assert(decrease || items[first].bead < letters.size());
    runs.push_back({decrease ? std::string(decrease_sign) : fmt::format("({}){}", end - first, letters[items[first].bead]),
                    items[first].begins_unit});
    first = end;
  }
  return runs;
}

std::string joined(std::span<const RunText> runs) {
  std::string text;
  for (const RunText& run : runs) {
    if (!text.empty()) text += run.begins_unit ? "; " : ", ";
    text += run.text;
  }
  return text;
}

std::string folded(std::span<const RunText> runs) {
  struct Fold {
    std::size_t first = 0, period = 0, times = 0;
    [[nodiscard]] std::size_t saved() const { return period * (times - 1); }
  } best{0, 1, 1};
  constexpr std::size_t longest_period = 32;  // more runs than that are no pattern to remember
  for (std::size_t period = 1; period <= std::min(longest_period, runs.size() / 2); ++period) {
    std::size_t alike = 0;  // runs in a row that equal the one a period before
    for (std::size_t i = period; i < runs.size(); ++i) {
      alike = runs[i].text == runs[i - period].text && (runs[i].begins_unit == runs[i - period].begins_unit || i == period)
                  ? alike + 1
                  : 0;
      const Fold fold{i + 1 - alike - period, period, alike / period + 1};
      if (fold.saved() > best.saved() && alike % period == 0) best = fold;
    }
  }
  if (best.saved() < 2) return joined(runs);
  const std::size_t end = best.first + best.period * best.times;
  std::string text = joined(runs.first(best.first));
  if (!text.empty()) text += runs[best.first].begins_unit ? "; " : ", ";
  text += fmt::format("*{}* × {}", joined(runs.subspan(best.first, best.period)), best.times);
  if (end < runs.size()) text += (runs[end].begins_unit ? "; " : ", ") + joined(runs.subspan(end));
  return text;
}

}  // namespace evencount::wording
