// How long colour differences take. Target: the matrix of 5,000 colours against a stock of 2,000 (ciede2000_matrix) under 0.2 s; the
// textbook form takes 1.7 s and is here to compare.

#include <benchmark/benchmark.h>

#include <random>
#include <string>
#include <vector>

#include "colour/difference.hpp"
#include "colour/difference_rows.hpp"
#include "oracle/ciede2000_oracle.hpp"

namespace {

using namespace evencount;
using namespace evencount::colour;

std::vector<Rgb> random_colours(std::size_t count, std::uint32_t seed) {
  std::mt19937 random(seed);
  const auto byte = [&] { return static_cast<std::uint8_t>(random() >> 24); };
  std::vector<Rgb> colours;
  while (colours.size() < count) colours.push_back({byte(), byte(), byte()});
  return colours;
}

template <typename To, typename Convert>
std::vector<To> converted(const std::vector<Rgb>& colours, Convert convert) {
  std::vector<To> values;
  for (const Rgb colour : colours) values.push_back(convert(colour));
  return values;
}

std::vector<LabD65> random_labs(std::size_t count, std::uint32_t seed) {
  return converted<LabD65>(random_colours(count, seed), [](Rgb colour) { return to_lab_d65(colour); });
}

void count_pairs(benchmark::State& state, std::size_t pairs) {
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(pairs));
}

void ciede2000_textbook(benchmark::State& state) {
  const auto stock = random_labs(2000, 1), cells = random_labs(1, 2);
  for (auto _ : state)
    for (const LabD65& to : stock)
      benchmark::DoNotOptimize(
          oracle::ciede2000({cells[0].lightness, cells[0].a, cells[0].b}, {to.lightness, to.a, to.b}));
  count_pairs(state, stock.size());
}
BENCHMARK(ciede2000_textbook);

void ciede2000_one_by_one(benchmark::State& state) {
  const auto stock = random_labs(2000, 1), cells = random_labs(1, 2);
  for (auto _ : state)
    for (const LabD65& to : stock) benchmark::DoNotOptimize(ciede2000(cells[0], to));
  count_pairs(state, stock.size());
}
BENCHMARK(ciede2000_one_by_one);

// Every width that this processor has.
void ciede2000_row(benchmark::State& state) {
  const RowFill& row = row_fills()[static_cast<std::size_t>(state.range(0))];
  state.SetLabel(std::string(row.name));
  if (!row.runs_here()) return state.SkipWithError("not on this processor");
  const LabColumns<White::d65> to(random_labs(2000, 1)), from(random_labs(1, 2));
  const LabPoint point{from.lightness[0], from.a[0], from.b[0], from.chroma[0]};
  std::vector<float> differences(to.size());
  for (auto _ : state) {
    row.fill(point, {to.lightness.data(), to.a.data(), to.b.data(), to.chroma.data()}, differences.data(),
             differences.size());
    benchmark::DoNotOptimize(differences.data());
  }
  count_pairs(state, differences.size());
}
BENCHMARK(ciede2000_row)->DenseRange(0, static_cast<int>(row_fills().size()) - 1);

void ciede2000_matrix(benchmark::State& state) {
  const auto stock = random_labs(2000, 1), cells = random_labs(5000, 2);
  const LabColumns<White::d65> columns(stock);
  std::vector<float> matrix(cells.size() * stock.size());
  for (auto _ : state) {
    for (std::size_t i = 0; i < cells.size(); ++i)
      ciede2000(cells[i], columns, std::span(matrix).subspan(i * stock.size(), stock.size()));
    benchmark::DoNotOptimize(matrix.data());
  }
  count_pairs(state, matrix.size());
}
BENCHMARK(ciede2000_matrix)->Unit(benchmark::kMillisecond);

void oklab_matrix(benchmark::State& state) {
  const auto to = [](Rgb colour) { return to_oklab(colour); };
  const auto stock = converted<Oklab>(random_colours(2000, 1), to),
             cells = converted<Oklab>(random_colours(5000, 2), to);
  std::vector<float> matrix(cells.size() * stock.size());
  for (auto _ : state) {
    for (std::size_t i = 0; i < cells.size(); ++i)
      for (std::size_t j = 0; j < stock.size(); ++j)
        matrix[i * stock.size() + j] = static_cast<float>(oklab_distance(cells[i], stock[j]));
    benchmark::DoNotOptimize(matrix.data());
  }
  count_pairs(state, matrix.size());
}
BENCHMARK(oklab_matrix)->Unit(benchmark::kMillisecond);

// A photograph of 480,000 pixels to Lab, and to OKLab.
void rgb_to_lab(benchmark::State& state) {
  const auto pixels = random_colours(480'000, 3);
  for (auto _ : state)
    for (const Rgb pixel : pixels) benchmark::DoNotOptimize(to_lab_d65(pixel));
  count_pairs(state, pixels.size());
}
BENCHMARK(rgb_to_lab)->Unit(benchmark::kMillisecond);

void rgb_to_oklab(benchmark::State& state) {
  const auto pixels = random_colours(480'000, 3);
  for (auto _ : state)
    for (const Rgb pixel : pixels) benchmark::DoNotOptimize(to_oklab(pixel));
  count_pairs(state, pixels.size());
}
BENCHMARK(rgb_to_oklab)->Unit(benchmark::kMillisecond);

void linear_to_rgb(benchmark::State& state) {
  const auto lights =
      converted<Linear>(random_colours(480'000, 3), [](Rgb colour) { return to_linear(colour); });
  for (auto _ : state)
    for (const Linear light : lights) benchmark::DoNotOptimize(to_rgb(light));
  count_pairs(state, lights.size());
}
BENCHMARK(linear_to_rgb)->Unit(benchmark::kMillisecond);

}  // namespace
