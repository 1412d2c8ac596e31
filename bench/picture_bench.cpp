// Choosing the beads of whole pictures: 12 of a random stock of 2,000, on the pictures of tests/cases/picture.
//
// Targets: mean CIEDE2000 at most 0.1 % above the proved bound and no worse than 5.83 (portrait), 4.19 (coffee) and 3.22 (flat) at
// 60 x 80; at 120 x 160 with the proof under 3 s, quickly (no proof, a looser bound) under 0.6 s, on two cores.
//
// Counters: mean and percentile_95 of the choice, bound, gap_percent between mean and bound, nodes of branch and bound.
// Reference in the same run: the whole matrix of differences, which the choice does not need in full (all_differences).

#include <benchmark/benchmark.h>
#include <sys/resource.h>

#include <thread>

#include "app/worker_threads.hpp"
#include "colour/difference.hpp"
#include "picture/pictures.hpp"
#include "picture/stock_choice.hpp"

namespace evencount::picture {
namespace {

const std::string cases = EVENCOUNT_CASES_DIR "/picture/";
constexpr std::array pictures{"portrait", "coffee", "flat"};
constexpr std::array sizes{"60x80", "120x160"};

std::vector<colour::Rgb> picture(const benchmark::State& state) {
  return load_ppm(cases + pictures[static_cast<std::size_t>(state.range(0))] + "." +
                  sizes[static_cast<std::size_t>(state.range(1))] + ".ppm");
}

void label(benchmark::State& state) {
  state.SetLabel(std::string(pictures[static_cast<std::size_t>(state.range(0))]) + " " +
                 sizes[static_cast<std::size_t>(state.range(1))]);
}

void count(benchmark::State& state, const StockChoice& choice) {
  state.counters["mean"] = choice.mean;
  state.counters["percentile_95"] = choice.percentile_95;
  state.counters["bound"] = choice.bound;
  state.counters["gap_percent"] = 100 * (choice.mean - choice.bound) / choice.mean;
  state.counters["nodes"] = choice.nodes;
  label(state);
}

struct OnThreads {
  explicit OnThreads(int threads) : workers(threads) {
    options.run_jobs = [this](int count, const std::function<void(int)>& job) { workers.run(count, job); };
  }
  app::WorkerThreads workers;
  ChoiceOptions options;
};

void choose(benchmark::State& state, bool prove, int on_hand) {
  const auto cells = picture(state);
  auto stock = load_stock(cases + "stock2000.txt");
  // Every colour for one cell in so many at most: the most wanted run short.
  if (on_hand > 0)
    for (StockColour& one : stock) one.at_most = static_cast<int>(cells.size()) / on_hand;
  OnThreads on(static_cast<int>(state.range(2)));
  on.options.effort.prove = prove;
  StockChoice choice;
  for (auto _ : state) choice = choose_stock(cells, stock, 12, on.options).value();
  count(state, choice);
}

void proved(benchmark::State& state) {
  choose(state, true, 0);
}
void quickly(benchmark::State& state) {
  choose(state, false, 0);
}
void on_hand_a_fifth(benchmark::State& state) {
  choose(state, true, 5);
}

/// 2 to 20 colours.
void against_count(benchmark::State& state) {
  const auto cells = picture(state);
  const auto stock = load_stock(cases + "stock2000.txt");
  OnThreads on(static_cast<int>(state.range(2)));
  std::vector<CountedChoice> choices;
  for (auto _ : state) choices = error_against_count(cells, stock, 2, 20, on.options).value();
  double worst = 0;
  for (const auto& [number, choice] : choices) {
    worst = std::max(worst, 100 * (choice.mean - choice.bound) / choice.mean);
    state.counters[(number < 10 ? "mean_0" : "mean_") + std::to_string(number)] = choice.mean;
  }
  state.counters["worst_gap_percent"] = worst;
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  state.counters["peak_MB"] = static_cast<double>(usage.ru_maxrss) / 1024;
  label(state);
}

void all_differences(benchmark::State& state) {
  const auto cells = picture(state);
  std::vector<colour::LabD65> labs;
  for (const StockColour& one : load_stock(cases + "stock2000.txt"))
    labs.push_back(colour::to_lab_d65(one.colour));
  const colour::LabColumns<colour::White::d65> stock(labs);
  std::vector<float> row(labs.size());
  for (auto _ : state)
    for (const colour::Rgb cell : cells) {
      colour::ciede2000(colour::to_lab_d65(cell), stock, row);
      benchmark::DoNotOptimize(row.data());
    }
  label(state);
}

void on_two_threads(benchmark::internal::Benchmark* bench) {
  bench->ArgNames({"", "", "threads"})->Unit(benchmark::kMillisecond)->UseRealTime()->MeasureProcessCPUTime();
  for (int size = 0; size < 2; ++size)
    for (int which = 0; which < 3; ++which) bench->Args({which, size, 2});
}

BENCHMARK(all_differences)->ArgNames({"", ""})->Unit(benchmark::kMillisecond)->Args({0, 0})->Args({0, 1});
BENCHMARK(proved)->Apply(on_two_threads)->Args({0, 1, 1});
BENCHMARK(quickly)->Apply(on_two_threads)->Args({0, 1, 1});
BENCHMARK(on_hand_a_fifth)->Apply(on_two_threads);
BENCHMARK(against_count)->Apply(on_two_threads)->Iterations(1);

}  // namespace
}  // namespace evencount::picture
