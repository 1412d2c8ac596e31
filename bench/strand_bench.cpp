// How long counting the runs of a strand takes. Target: 200 elements with 12 flexible runs under 50 ms. Beside a general solver:
// bench/promises (glpsol, on the random problems of tests/strand/print_run_programs.cpp).

#include <benchmark/benchmark.h>

#include <string>

#include "strand/chain_round.hpp"
#include "strand/fitting.hpp"
#include "strand/resting.hpp"

namespace {

using namespace evencount;
using namespace evencount::strand;

Strung strung_of(const std::string& text) {
  const auto layout = parse_layout(text, {});
  return *lay_strung(*layout, {});
}

/// Beads on one cord with a run after every 16 of them: each in a spacer of its own width, or all in one.
std::string long_layout(bool own_spacers, bool limited, int runs) {
  std::string text = "cords 1 of wire 0.5mm bead b 3.13mm bead c 4.07mm ";
  std::string list;
  for (int run = 0; run < runs; ++run) {
    const std::string name = own_spacers ? "s" + std::to_string(run) : "s0";
    if (own_spacers || run == 0) text += "bead " + name + " " + std::to_string(1.51 + 0.17 * run) + "mm ";
    if (limited && own_spacers) text += "on hand " + name + " 7 ";
    list += "8 (b, c), fill " + (own_spacers ? "" : "r" + std::to_string(run)) + " with " + name + ", ";
  }
  if (limited && !own_spacers) text += "on hand s0 " + std::to_string(6 * runs - 2) + " ";
  return text + "string " + list + "8 b";
}

void count_runs(benchmark::State& state) {
  const bool own = state.range(0) != 0, limited = state.range(1) != 0;
  const int runs = static_cast<int>(state.range(2));
  const Strung strung = strung_of(long_layout(own, limited, runs));
  const RunProblem problem = run_problem(strung, fixed_um(strung) + 213'457 * runs / 12);
  state.SetLabel(std::to_string(runs) + (own ? " runs, each in its own spacer" : " runs of one spacer") +
                 (limited ? ", few on hand" : ""));
  for (auto _ : state) benchmark::DoNotOptimize(solve_runs(problem));
  state.counters["elements"] = static_cast<double>(pieces_of(strung, Counts(strung.runs.size(), 0)).size());
}
BENCHMARK(count_runs)->ArgsProduct({{0, 1}, {0, 1}, {3, 6, 12}})->Unit(benchmark::kMillisecond);

// Two kinds of units that share beads of which there are too few: the search over what each may take.
void count_runs_that_share_beads(benchmark::State& state) {
  const Strung strung = strung_of(
      "cords 1 of wire 0.5mm bead s 1.51mm bead b 3.13mm bead c 4.07mm on hand s 60 on hand b 40 string fill "
      "x with s, 20 c, "
      "fill y with (s, b), 20 c, fill z with (b, s, c), 20 c, fill v with (s, c), 20 c");
  const RunProblem problem = run_problem(strung, fixed_um(strung) + 313'457);
  for (auto _ : state) benchmark::DoNotOptimize(solve_runs(problem));
}
BENCHMARK(count_runs_that_share_beads)->Unit(benchmark::kMillisecond);

void chain_of_rigid_links(benchmark::State& state) {
  std::vector<Length> links;
  for (int i = 0; i < 60; ++i) links.push_back(millimetres(i % 8 == 0 ? 9 : 2.3));
  for (auto _ : state) benchmark::DoNotOptimize(chain_round(links, millimetres(8.2), 1.4));
}
BENCHMARK(chain_of_rigid_links)->Unit(benchmark::kMillisecond);

/// Thick and thin in turn, as they come on a long necklace; beside a copy of them.
std::vector<Resting> things(std::int64_t count) {
  std::vector<Resting> row;
  for (std::int64_t i = 0; i < count; ++i) {
    const auto begin = 3.0 * static_cast<double>(i);
    row.push_back({begin, begin + 3, i % 16 == 0 ? 4.0 : 1.5, false});
  }
  return row;
}

void resting_on_a_table(benchmark::State& state) {
  const auto row = things(state.range(0));
  for (auto _ : state) benchmark::DoNotOptimize(resting_heights(row, row.back().end_mm, true));
}
BENCHMARK(resting_on_a_table)->Arg(100)->Arg(1000)->Arg(10'000);

void copy_of_things(benchmark::State& state) {
  const auto row = things(state.range(0));
  for (auto _ : state) {
    auto copy = row;
    benchmark::DoNotOptimize(copy.data());
  }
}
BENCHMARK(copy_of_things)->Arg(100)->Arg(1000)->Arg(10'000);

}  // namespace
