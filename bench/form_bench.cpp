// How long closing a ring and fitting a band take. Targets: closing_range of 24 beads on a lens well under 0.1 ms, a fit under 1 ms.

#include <benchmark/benchmark.h>

#include <array>

#include "form/closure.hpp"
#include "form/fit.hpp"

namespace {

using namespace evencount;
using namespace evencount::form;

constexpr std::array notations{"lens:17x5x9", "round:12x20", "oval:18x13x5",
                               "bar:20x4x10", "ring:54",     "lens:30x2x9"};

FitRequest request(const char* notation, const bead::Size& bead, Use use) {
  return {*parse_form(notation), bead, bead::default_gauge(bead, bead::threads()[0]), use};
}

void closing_range_of_24(benchmark::State& state) {
  const char* notation = notations[static_cast<std::size_t>(state.range(0))];
  state.SetLabel(notation);
  const ConvexCurve curve = offset(*section(*parse_form(notation)), millimetres(0.8));
  for (auto _ : state) benchmark::DoNotOptimize(closing_range(curve, 24));
}
BENCHMARK(closing_range_of_24)->DenseRange(0, notations.size() - 1);

void fit_one(benchmark::State& state) {
  const char* notation = notations[static_cast<std::size_t>(state.range(0))];
  state.SetLabel(notation);
  const FitRequest wanted = request(notation, *bead::find_size("cylinder-11"), Use::fixed);
  for (auto _ : state) benchmark::DoNotOptimize(fit(wanted));
}
BENCHMARK(fit_one)->DenseRange(0, notations.size() - 1);

// A table of lens-shaped forms in every bead: what a maker of many sizes asks for. The count is forms x beads.
void fit_table(benchmark::State& state) {
  const auto forms = state.range(0);
  for (auto _ : state) {
    for (std::int64_t i = 0; i < forms; ++i) {
      Form form = *parse_form("lens:17x5x9");
      form.width = millimetres(14 + 0.01 * static_cast<double>(i % 1000));
      for (const bead::Size& bead : bead::sizes())
        benchmark::DoNotOptimize(
            fit({form, bead, bead::default_gauge(bead, bead::threads()[0]), Use::sliding}));
    }
  }
  state.SetItemsProcessed(state.iterations() * forms * static_cast<std::int64_t>(bead::sizes().size()));
}
BENCHMARK(fit_table)->Arg(1000)->Unit(benchmark::kMillisecond);

}  // namespace
