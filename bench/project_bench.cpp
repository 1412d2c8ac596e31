// A project from JSON and back, and the same design in other beads: a band of 100 x 150, 200 x 300 and 400 x 600 beads.
//
// References in the same run: the JSON library alone on the same text (json_alone), a plain copy of that text (copy_text), the plan of the
// band (plan_alone), which every resized band must have made.

#include <benchmark/benchmark.h>

#include <nlohmann/json.hpp>

#include "project/json.hpp"
#include "project/resize.hpp"
#include "samples.hpp"

namespace evencount {
namespace {

project::Project sample(const benchmark::State& state) {
  return bench::project_of(1, static_cast<int>(state.range(0)), static_cast<int>(state.range(1)), 12);
}

/// Beads at random, so that the rows' runs are as many as they can be.
project::Project busy_sample(const benchmark::State& state) {
  auto project = sample(state);
  project.bands.front().chart =
      bench::random_chart(static_cast<int>(state.range(0)), static_cast<int>(state.range(1)));
  return project;
}

void read_project(benchmark::State& state) {
  const std::string text = project::to_json(busy_sample(state));
  for (auto _ : state) benchmark::DoNotOptimize(project::parse_project(text).value().bands.size());
  state.SetBytesProcessed(static_cast<std::int64_t>(state.iterations() * text.size()));
}

void json_alone(benchmark::State& state) {
  const std::string text = project::to_json(busy_sample(state));
  for (auto _ : state) benchmark::DoNotOptimize(nlohmann::json::parse(text).size());
  state.SetBytesProcessed(static_cast<std::int64_t>(state.iterations() * text.size()));
}

void write_project(benchmark::State& state) {
  const auto project = busy_sample(state);
  for (auto _ : state) benchmark::DoNotOptimize(project::to_json(project).size());
}

void copy_text(benchmark::State& state) {
  const std::string text = project::to_json(busy_sample(state));
  for (auto _ : state) {
    std::string copy = text;
    benchmark::DoNotOptimize(copy.data());
    benchmark::ClobberMemory();
  }
}

void resize_project(benchmark::State& state) {
  const auto project = sample(state);
  const project::ResizeRequest request{.beads = {{"", "cylinder-10"}}};
  for (auto _ : state) benchmark::DoNotOptimize(project::resize(project, request).value().bands.size());
}

void plan_alone(benchmark::State& state) {
  const auto project = sample(state);
  for (auto _ : state)
    benchmark::DoNotOptimize(project::plan_of(project.bands.front()).value().stitches.size());
}

void sizes(benchmark::internal::Benchmark* bench) {
  bench->Args({100, 150})->Args({200, 300})->Args({400, 600})->Unit(benchmark::kMillisecond);
}

BENCHMARK(read_project)->Apply(sizes);
BENCHMARK(json_alone)->Apply(sizes);
BENCHMARK(write_project)->Apply(sizes);
BENCHMARK(copy_text)->Apply(sizes);
BENCHMARK(resize_project)->Apply(sizes);
BENCHMARK(plan_alone)->Apply(sizes);

}  // namespace
}  // namespace evencount
