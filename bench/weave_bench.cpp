// A large panel: from chart to plan, replay, words, thread and counts, and its words read back.
//
// Reference in the same run: a plain copy of the panel's cells, one by one, the least that any pass over them can do.
// Beads per second must not fall with size: every part is linear.

#include <benchmark/benchmark.h>
#include <sys/resource.h>

#include "samples.hpp"
#include "weave/replay.hpp"
#include "weave/technique.hpp"
#include "weave/thread_path.hpp"
#include "wording/reader.hpp"
#include "wording/words.hpp"

namespace evencount {
namespace {

using bench::random_chart, bench::twelve_letters;

double peak_mb() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024;
}

/// Everything that is read off a plan before anything is drawn.
std::size_t work_out(const chart::Chart& chart, std::string_view technique) {
  const auto plan = weave::make_plan(technique, chart, {weave::Closure::open}).value();
  const auto made = weave::replay(plan).value();
  const auto words = wording::to_text(wording::write_words(plan, twelve_letters(), "Panel"));
  const bead::Size size = bead::find_size("cylinder-11").value();
  const bead::Thread thread = bead::threads().front();
  // A row of 400 beads of square stitch takes more than the usual length.
  const weave::ThreadHabits habits{.working_length = centimetres(400)};
  const auto use = weave::thread_use(plan, size, bead::default_gauge(size, thread), thread, habits).value();
  return words.size() + use.lengths.size() + weave::count_beads(plan).size() + made.cells().size();
}

void panel_of(benchmark::State& state, std::string_view technique) {
  const chart::Chart chart = random_chart(static_cast<int>(state.range(0)), static_cast<int>(state.range(1)));
  for (auto _ : state) benchmark::DoNotOptimize(work_out(chart, technique));
  state.SetItemsProcessed(static_cast<std::int64_t>(state.iterations() * chart.cells().size()));
  state.counters["peak_MB"] = peak_mb();
}

void copy_cells(benchmark::State& state) {
  const chart::Chart chart = random_chart(static_cast<int>(state.range(0)), static_cast<int>(state.range(1)));
  for (auto _ : state) {
    auto copy = chart::Chart::make(chart.columns(), chart.edge()).value();
    for (int step = 0; step < chart.edge(); ++step)
      for (int column = 0; column < chart.columns(); ++column)
        copy.set({column, step}, chart.at({column, step}));
    benchmark::DoNotOptimize(copy);
  }
  state.SetItemsProcessed(static_cast<std::int64_t>(state.iterations() * chart.cells().size()));
}

void read_words_of(benchmark::State& state) {
  const chart::Chart chart = random_chart(static_cast<int>(state.range(0)), static_cast<int>(state.range(1)));
  const auto plan = weave::make_plan("peyote-even-count", chart, {weave::Closure::open}).value();
  const std::string text = wording::to_text(wording::write_words(plan, twelve_letters(), "Panel"));
  for (auto _ : state) benchmark::DoNotOptimize(wording::read_words(text).value().size());
  state.SetItemsProcessed(static_cast<std::int64_t>(state.iterations() * chart.cells().size()));
}

void sizes(benchmark::internal::Benchmark* bench) {
  bench->Args({100, 150})->Args({200, 300})->Args({400, 600})->Unit(benchmark::kMillisecond);
}

BENCHMARK(copy_cells)->Apply(sizes);
BENCHMARK(read_words_of)->Apply(sizes);
BENCHMARK_CAPTURE(panel_of, peyote, "peyote-even-count")->Apply(sizes);
BENCHMARK_CAPTURE(panel_of, two_drop, "two-drop-even-count")->Apply(sizes);
BENCHMARK_CAPTURE(panel_of, loom, "loom")->Apply(sizes);
BENCHMARK_CAPTURE(panel_of, square, "square")->Apply(sizes);

}  // namespace
}  // namespace evencount
