/// A table of 50,000 lines into an empty stockroom, into one that has it already, and out again.

#include <benchmark/benchmark.h>
#include <fmt/format.h>
#include <stdlib.h>

#include <filesystem>
#include <random>

#include "stockroom/stock_table.hpp"
#include "stockroom/stockroom.hpp"

namespace {

using namespace evencount::stockroom;

constexpr int items = 40'000;  // every fourth has a second pack on a line of its own

std::string big_table() {
  std::mt19937 random(1);
  std::string text =
      "code,name,size,finish,colour,beads_per_gram,counted_g,note,pack_g,price,currency,supplier,order_code,address\r\n";
  for (int i = 0; i < items; ++i) {
    text += fmt::format(
        "B-{0:05},\"night, deep {0}\",cylinder-11,matte,#{1:06x},195,{2}.{3:03},row {0},5,3.40,EUR,harbour shop,hs{0},"
        "https://harbour-shop.example/{0}\r\n",
        i, random() % (1 << 24), random() % 50, random() % 1000);
    if (i % 4 == 0) text += fmt::format("B-{:05},,,,,,,,50,{}.95,EUR,market stall,,\r\n", i, random() % 100);
  }
  return text;
}

std::string new_folder() {
  std::string pattern = (std::filesystem::temp_directory_path() / "evencount-bench-XXXXXX").string();
  return ::mkdtemp(pattern.data());
}

void import_anew(benchmark::State& state) {
  const std::string text = big_table();
  for (auto round : state) {
    const std::string folder = new_folder();
    {
      Stockroom stock = *Stockroom::open(folder + "/stock.sqlite");
      if (!stock.import_table(*read_csv(text), {}, Time{})->written) state.SkipWithError("not imported");
    }
    state.PauseTiming();
    std::filesystem::remove_all(folder);
    state.ResumeTiming();
  }
}
BENCHMARK(import_anew)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime()->UseRealTime();

void import_again_and_export(benchmark::State& state) {
  const std::string text = big_table(), folder = new_folder();
  Stockroom stock = *Stockroom::open(folder + "/stock.sqlite");
  static_cast<void>(stock.import_table(*read_csv(text), {}, Time{}).ok());
  for (auto round : state) {
    const auto report = stock.import_table(*read_csv(text), {}, Time{});
    if (report->count(ImportEffect::unchanged) != static_cast<std::size_t>(items)) state.SkipWithError("changed");
    benchmark::DoNotOptimize(write_table(*stock.items(), report->kind));
  }
  std::filesystem::remove_all(folder);
}
BENCHMARK(import_again_and_export)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
