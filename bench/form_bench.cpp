// How long closing a ring and fitting a band take. Targets: closing_range of 24 beads on a lens well under 0.1 ms, a fit under 1 ms, 10,000
// forms in 12 beads (fit_forms_in_twelve_beads) under 5 s.
//
// References in the same run: one closing chord of a lens by the tests' slow walk (chord_by_oracle); a circle's chords for as many beads
// as a fit looks at, by the closed form (chords_of_a_circle).

#include <benchmark/benchmark.h>

#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "form/closure.hpp"
#include "form/fit.hpp"
#include "form/outline.hpp"
#include "oracle/form_closing_oracle.hpp"

namespace {

using namespace evencount;
using namespace evencount::form;

constexpr std::array notations{"lens:17x5x9", "round:12x20", "oval:18x13x5", "bar:20x4x10",
                               "ring:54",     "lens:30x2x9", "dome:20x6x10", "wrist:165"};

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

// Lens, round, oval, bar and dome in equal parts, sizes spread over what the trade sells.
std::vector<Form> mixed_forms(int count) {
  constexpr std::array kinds{FormKind::lens, FormKind::round, FormKind::oval, FormKind::bar, FormKind::dome};
  std::vector<Form> forms;
  for (int i = 0; i < count; ++i) {
    const FormKind kind = kinds[static_cast<std::size_t>(i) % kinds.size()];
    const Length width = millimetres(12 + 0.001 * (i % 10007)), thickness = millimetres(4 + 0.01 * (i % 97));
    forms.push_back({kind, width, kind == FormKind::round ? width : thickness, millimetres(15 + i % 7)});
  }
  return forms;
}

// Eight sizes of beads on one thread, the four cylinders on another too.
std::vector<std::pair<bead::Size, bead::Gauge>> twelve_beads() {
  std::vector<std::pair<bead::Size, bead::Gauge>> beads;
  for (std::size_t i = 0; i < 12; ++i) {
    const bead::Size& size = bead::sizes()[i % bead::sizes().size()];
    beads.emplace_back(size, bead::default_gauge(size, bead::threads()[i / bead::sizes().size()]));
  }
  return beads;
}

void fit_forms_in_twelve_beads(benchmark::State& state) {
  const auto forms = mixed_forms(static_cast<int>(state.range(0)));
  const auto beads = twelve_beads();
  std::int64_t fitted = 0, closing = 0;
  for (auto _ : state) {
    for (const Form& form : forms) {
      for (const auto& [size, gauge] : beads) {
        const auto one = fit({form, size, gauge, Use::fixed});
        fitted += one.ok();
        closing += one && closes(one->verdict);
      }
    }
  }
  state.SetItemsProcessed(fitted);
  state.counters["fitted"] = static_cast<double>(fitted);
  state.counters["closing"] = static_cast<double>(closing);
}
BENCHMARK(fit_forms_in_twelve_beads)
    ->Arg(100)
    ->Arg(1000)
    ->Arg(10'000)
    ->Iterations(1)
    ->Unit(benchmark::kMillisecond);

void chord_by_oracle(benchmark::State& state) {
  const auto loop =
      oracle::by_distance([](oracle::Dot p) { return oracle::distance_to_lens(p, 17, 5); }, 0.8, 20);
  for (auto _ : state) benchmark::DoNotOptimize(oracle::closing_chord(loop, 24, 0.3));
}
BENCHMARK(chord_by_oracle)->Unit(benchmark::kMillisecond);

void chords_of_a_circle(benchmark::State& state) {
  double radius = 12.8;
  for (auto _ : state)
    for (int n = 44; n < 53; ++n) {
      benchmark::DoNotOptimize(radius);
      benchmark::DoNotOptimize(2 * radius * std::sin(std::numbers::pi / n));
    }
}
BENCHMARK(chords_of_a_circle);

void fit_outline(benchmark::State& state) {
  std::vector<Point> points;
  for (const Point p : sample(*section(*parse_form("oval:22x9x10")), millimetres(0.005))) points.push_back(p);
  state.SetLabel(std::to_string(points.size()) + " points");
  FitRequest wanted = request("oval:22x9x10", *bead::find_size("cylinder-11"), Use::fixed);
  wanted.form = *form_from_outline("oval", points, millimetres(10));
  for (auto _ : state) benchmark::DoNotOptimize(fit(wanted));
}
BENCHMARK(fit_outline);

}  // namespace
