// Whole booklets, laid out, written and read back: a piece, a collection of 24 bands, a panel of 60,000 beads.

#include <benchmark/benchmark.h>

#include <fmt/format.h>

#include <random>

#include "bead/thread.hpp"
#include "chart/letters.hpp"
#include "page/booklet.hpp"

namespace evencount::page {
namespace {

project::Project project_of(int bands, int columns, int edge, int colours) {
  std::mt19937 random(7);
  project::Project project{.title = "Bench", .beads = {*bead::find_size("cylinder-11")}, .thread = bead::threads().front()};
  for (int i = 0; i < colours; ++i)
    project.legend.push_back({.letter = chart::letter_name(i), .name = fmt::format("colour {}", i),
                              .colour = {static_cast<std::uint8_t>(random()), static_cast<std::uint8_t>(random()),
                                         static_cast<std::uint8_t>(random())},
                              .bead = "cylinder-11"});
  for (int i = 0; i < bands; ++i) {
    chart::Chart chart = *chart::Chart::make(columns, edge);
    for (int step = 0; step < edge; ++step)
      for (int column = 0; column < columns; ++column)
        chart.set({column, step}, static_cast<chart::Bead>((column / 3 + step / 2 + i) % colours));
    project.bands.push_back({.name = fmt::format("Band {}", i + 1), .technique = "peyote-even-count", .bead = "cylinder-11",
                             .closure = weave::Closure::open, .chart = std::move(chart)});
  }
  return project;
}

void print(benchmark::State& state, const project::Project& project) {
  std::size_t pages = 0, bytes = 0;
  for (auto _ : state) {
    const auto printed = print_booklet(project);
    if (!printed) state.SkipWithError(message(printed.problem()).c_str());
    if (!printed) return;
    pages = printed->booklet.pages.size();
    bytes = printed->pdf.size();
  }
  state.counters["pages"] = static_cast<double>(pages);
  state.counters["MB"] = static_cast<double>(bytes) / 1e6;
}

void collection_of_24(benchmark::State& state) {
  print(state, project_of(24, 12, 60, 10));
}
void long_collection_of_24(benchmark::State& state) {
  print(state, project_of(24, 12, 110, 10));
}
void panel_of_60000(benchmark::State& state) {
  print(state, project_of(1, 200, 300, 12));
}
void one_band(benchmark::State& state) {
  print(state, project_of(1, 6, 24, 5));
}

BENCHMARK(one_band)->Unit(benchmark::kMillisecond);
BENCHMARK(collection_of_24)->Unit(benchmark::kMillisecond);
BENCHMARK(long_collection_of_24)->Unit(benchmark::kMillisecond);
BENCHMARK(panel_of_60000)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace evencount::page
