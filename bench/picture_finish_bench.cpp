// Finishing whole pictures, 12 beads of a stock of 2,000, on the pictures of tests/cases/picture: mixing for viewing distance, and
// smoothing.
//
// Targets: at viewing distance CIEDE2000 below 3.69 (coffee) and 2.61 (flat) at 60 x 80, below the given chart's on every picture; at
// least 70 % of the beads that stand alone joined for at most 1 % more CIEDE2000.
//
// Counters: view and own, mean CIEDE2000 at viewing distance and between a cell and its bead, before and after; alone, beads that stand
// alone, and borders, touching cells with different beads, before and after.

#include <benchmark/benchmark.h>

#include "picture/diffusion.hpp"
#include "picture/finish.hpp"
#include "picture/smoothing.hpp"
#include "picture/viewing.hpp"

namespace evencount::picture {
namespace {

constexpr std::array pictures{"portrait", "coffee", "flat"};

/// Arguments: picture, size (0 or 1), drop.
Beaded beaded(benchmark::State& state) {
  const char* picture = pictures[static_cast<std::size_t>(state.range(0))];
  const bool large = state.range(1) != 0;
  state.SetLabel(std::string(picture) + (large ? " 120x160" : " 60x80"));
  return load_beaded(picture, large ? 120 : 60, large ? 160 : 80, {static_cast<int>(state.range(2))});
}

void diffusion(benchmark::State& state) {
  const Beaded one = beaded(state);
  DiffusionOptions options;
  options.closeness = 0.01 * static_cast<double>(state.range(3));
  options.rounds = static_cast<int>(state.range(4));
  Diffusion result;
  for (auto _ : state) result = diffuse(one.lattice, one.cells, one.stock, one.choice, options).value();
  state.counters["view_before"] = result.viewing_before, state.counters["view_after"] = result.viewing_after;
  state.counters["own_before"] = result.mean_before, state.counters["own_after"] = result.mean_after;
  state.counters["changed"] = result.changed;
}

void smoothing(benchmark::State& state) {
  const Beaded one = beaded(state);
  SmoothingOptions options;
  options.strength = 0.01 * static_cast<double>(state.range(3));
  options.most_loss = 0.0001 * static_cast<double>(state.range(4));
  Smoothing result;
  for (auto _ : state) result = smooth(one.lattice, one.cells, one.stock, one.choice, options).value();
  state.counters["own_more_percent"] = 100 * (result.mean_after / result.mean_before - 1);
  state.counters["alone_before"] = result.isolated_before,
  state.counters["alone_after"] = result.isolated_after;
  state.counters["joined_percent"] =
      100.0 * (result.isolated_before - result.isolated_after) / result.isolated_before;
  state.counters["borders_before"] = result.borders_before,
  state.counters["borders_after"] = result.borders_after;
  state.counters["changed"] = result.changed;
}

void viewing(benchmark::State& state) {
  const Beaded one = beaded(state);
  const auto chart = charted(one, one.choice.bead_of_cell);
  for (auto _ : state)
    benchmark::DoNotOptimize(viewing_difference(one.lattice, one.cells, chart).value().mean);
}

void for_pictures(benchmark::internal::Benchmark* bench, const std::vector<std::pair<int, int>>& settings,
                  const std::vector<int>& drops) {
  for (const auto& [first, second] : settings)
    for (const int drop : drops)
      for (int size = 0; size < 2; ++size)
        for (int which = 0; which < 3; ++which) bench->Args({which, size, drop, first, second});
}

void diffusion_settings(benchmark::internal::Benchmark* bench) {
  bench->ArgNames({"", "", "drop", "closeness_percent", "rounds"})->Unit(benchmark::kMillisecond);
  for_pictures(bench, {{30, 8}}, {0, 1});
  for_pictures(bench, {{0, 8}, {10, 8}, {100, 8}, {30, 0}}, {1});
}

void smoothing_settings(benchmark::internal::Benchmark* bench) {
  bench->ArgNames({"", "", "drop", "strength_percent", "loss_in_10000"})->Unit(benchmark::kMillisecond);
  for_pictures(bench,
               {{25, 100},
                {0, 50},
                {0, 100},
                {0, 200},
                {0, 500},
                {50, 100},
                {25, 0},
                {100, 0},
                {200, 0},
                {400, 0},
                {800, 0}},
               {1});
}

BENCHMARK(viewing)
    ->ArgNames({"", "", "drop"})
    ->Unit(benchmark::kMillisecond)
    ->Args({0, 0, 1})
    ->Args({0, 1, 1});
BENCHMARK(diffusion)->Apply(diffusion_settings);
BENCHMARK(smoothing)->Apply(smoothing_settings);

}  // namespace
}  // namespace evencount::picture
