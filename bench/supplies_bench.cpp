// The supply list of a collection: 6 to 24 bands in 3 projects of 12 beads, 500 kits, a stock of 200 beads in a dozen packs each. Target: 24
// bands under 100 ms.
//
// Reference in the same run: the collection's plans alone, which every list must make. Packs alone: a dozen offers, needs from grams to
// hundreds of kilograms; the time must not grow with the need.

#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <random>

#include "chart/letters.hpp"
#include "project/supply_list_cost.hpp"
#include "project/supply_list_kits.hpp"

namespace evencount {
namespace {

std::vector<materials::PackOffer> a_dozen_offers(std::mt19937& random) {
  std::vector<materials::PackOffer> offers;
  for (const std::int64_t g : {5, 7, 10, 20, 25, 28, 50, 100, 113, 250, 500, 1000})
    offers.push_back({1000 * g + (g % 10 == 8 ? 350 : 0),
                      Money{50 * g + static_cast<std::int64_t>(random() % 200)}, "", "", ""});
  return offers;
}

std::vector<project::Project> collection(int bands) {
  std::mt19937 random(24);
  std::vector<project::Project> projects(3);
  int bead = 0;
  for (project::Project& made : projects) {
    made.title = fmt::format("Design {}", bead);
    made.beads = {*bead::find_size("cylinder-11")};
    made.thread = bead::threads().front();
    for (int i = 0; i < 12; ++i, ++bead) {
      project::LegendEntry entry;
      entry.letter = chart::letter_name(i);
      entry.name = fmt::format("bead {}", bead % 20);  // 16 of them in two projects
      entry.colour = {static_cast<std::uint8_t>(12 * (bead % 20)), 90, 120};
      entry.bead = "cylinder-11";
      made.legend.push_back(std::move(entry));
    }
    for (int i = 0; i < bands / 3; ++i) {
      project::Band band;
      band.name = fmt::format("Band {}", i);
      band.technique = "peyote-even-count";
      band.bead = "cylinder-11";
      band.chart = *chart::Chart::make(8, 28);
      for (int step = 0; step < 28; ++step)
        for (int column = 0; column < 8; ++column)
          band.chart.set({column, step}, static_cast<chart::Bead>(random() % 12));
      made.bands.push_back(std::move(band));
    }
  }
  return projects;
}

std::vector<materials::StockedItem> stock() {
  std::mt19937 random(200);
  std::vector<materials::StockedItem> items;
  for (int i = 0; i < 200; ++i) {
    materials::StockedItem stocked;
    stocked.item.code = fmt::format("C-{}", i);
    stocked.item.name = fmt::format("bead {}", i);
    stocked.item.what = materials::BeadStock{
        "cylinder-11", bead::Finish::opaque, colour::Rgb{static_cast<std::uint8_t>(i), 90, 120}, {}};
    stocked.item.packs = a_dozen_offers(random);
    stocked.level.on_hand = static_cast<std::int64_t>(random() % 100'000);
    items.push_back(std::move(stocked));
  }
  return items;
}

void list_of_bands(benchmark::State& state) {
  const auto projects = collection(static_cast<int>(state.range(0)));
  const auto owned = stock();
  const project::SupplyRequest request{.kits = static_cast<int>(state.range(1)), .stock = owned};
  for (auto _ : state)
    benchmark::DoNotOptimize(project::collection_supplies(projects, request).value().total);
}

void list_cost_and_kits_of_bands(benchmark::State& state) {
  const auto projects = collection(static_cast<int>(state.range(0)));
  const auto owned = stock();
  const project::SupplyRequest request{
      .kits = static_cast<int>(state.range(1)), .stock = owned, .in_bags = true};
  for (auto _ : state) {
    const auto list = project::collection_supplies(projects, request).value();
    benchmark::DoNotOptimize(
        materials::cost_sheet(project::piece_use(projects, list).value(), {}).value().cost);
    for (const project::Project& one : projects)
      benchmark::DoNotOptimize(project::kit_of(one).value().bags.size());
  }
}

void plans_of_bands(benchmark::State& state) {
  const auto projects = collection(static_cast<int>(state.range(0)));
  for (auto _ : state)
    for (const project::Project& one : projects)
      for (const project::Band& band : one.bands)
        benchmark::DoNotOptimize(project::plan_of(band).value().stitches.size());
}

void packs_of_a_dozen(benchmark::State& state) {
  std::mt19937 random(12);
  const auto offers = a_dozen_offers(random);
  for (auto _ : state)
    benchmark::DoNotOptimize(
        materials::cheapest_packs(state.range(0) + static_cast<std::int64_t>(random() % 1000), offers)
            .value()
            .bought);
}

/// What no shop asks: a dozen amounts at random, to so many milligrams, that all cost the same a milligram.
void packs_that_all_tie(benchmark::State& state) {
  std::mt19937 random(3);
  const std::int64_t step = state.range(0);
  std::int64_t cut_off = 0;
  for (auto _ : state) {
    std::vector<materials::PackOffer> offers(12);
    for (materials::PackOffer& offer : offers)
      offer.amount =
          step *
          (5000 / step + static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(1'000'000 / step)));
    cut_off += !materials::cheapest_packs(300'000'000, offers).value().proved;
  }
  state.counters["cut_off"] = static_cast<double>(cut_off);
}

BENCHMARK(list_of_bands)->ArgsProduct({{6, 12, 24}, {1, 500}})->Unit(benchmark::kMillisecond);
BENCHMARK(list_cost_and_kits_of_bands)->Args({24, 500})->Unit(benchmark::kMillisecond);
BENCHMARK(plans_of_bands)->Arg(6)->Arg(12)->Arg(24)->Unit(benchmark::kMillisecond);
BENCHMARK(packs_that_all_tie)->Arg(100)->Arg(10)->Arg(1)->Iterations(20)->Unit(benchmark::kMillisecond);
BENCHMARK(packs_of_a_dozen)
    ->Arg(3'000)
    ->Arg(300'000)
    ->Arg(30'000'000)
    ->Arg(500'000'000)
    ->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace evencount
