// Whole booklets, laid out, written and read back: a piece, collections of 6 to 24 bands, panels of 15,000 to 60,000 beads.
//
// Reference in the same run: the same finished pages to PDF and nothing else (bare_pdf), which is cairo's part.

#include <benchmark/benchmark.h>

#include "page/booklet.hpp"
#include "samples.hpp"

namespace evencount::page {
namespace {

using bench::project_of;

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

void bare_pdf(benchmark::State& state, const project::Project& project) {
  const Booklet booklet = print_booklet(project).value().booklet;
  for (auto _ : state) benchmark::DoNotOptimize(to_pdf(booklet.pages, booklet.info).value().size());
}

project::Project bands_of(const benchmark::State& state) {
  return project_of(static_cast<int>(state.range(0)), 12, 60, 10);
}

project::Project panel_of(const benchmark::State& state) {
  return project_of(1, 200, static_cast<int>(state.range(0)) / 200, 12);
}

void collection_of(benchmark::State& state) {
  print(state, bands_of(state));
}
void bare_collection_of(benchmark::State& state) {
  bare_pdf(state, bands_of(state));
}
void long_collection_of_24(benchmark::State& state) {
  print(state, project_of(24, 12, 110, 10));
}
void panel(benchmark::State& state) {
  print(state, panel_of(state));
}
void bare_panel(benchmark::State& state) {
  bare_pdf(state, panel_of(state));
}
void one_band(benchmark::State& state) {
  print(state, project_of(1, 6, 24, 5));
}

void bands(benchmark::internal::Benchmark* bench) {
  bench->Arg(6)->Arg(12)->Arg(24)->Unit(benchmark::kMillisecond);
}
void beads(benchmark::internal::Benchmark* bench) {
  bench->Arg(15'000)->Arg(30'000)->Arg(60'000)->Unit(benchmark::kMillisecond);
}

BENCHMARK(one_band)->Unit(benchmark::kMillisecond);
BENCHMARK(collection_of)->Apply(bands);
BENCHMARK(bare_collection_of)->Apply(bands);
BENCHMARK(long_collection_of_24)->Unit(benchmark::kMillisecond);
BENCHMARK(panel)->Apply(beads);
BENCHMARK(bare_panel)->Apply(beads);

}  // namespace
}  // namespace evencount::page
