#pragma once
/// Beads counted by letter in several ways that must agree. Private to this room.

#include <cstdint>
#include <map>
#include <string>

#include "page/sections.hpp"

namespace evencount::page {

using Counts = std::map<std::string, std::int64_t, std::less<>>;

/// In the words of a chart's rows, as they are printed.
[[nodiscard]] Counts counts_in_words(const wording::WordChart& words);
/// Off a plan.
[[nodiscard]] Counts counts_in_plan(const project::Project& project, const weave::Plan& plan);
/// In the cells of a chart.
[[nodiscard]] Counts counts_in_chart(const project::Project& project, const chart::Chart& chart);
/// On the supply list.
[[nodiscard]] Counts counts_of_supplies(const project::SupplyList& supplies);

void add(Counts& all, const Counts& more, std::int64_t times);

}  // namespace evencount::page
