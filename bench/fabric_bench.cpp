// How long fabric takes to settle. The cost of a round goes with the number of beads (items are beads x rounds); larger shaken pieces need
// a few more rounds, as the most stubborn spot decides. Targets: 600 shaken beads under 50 ms, a bezel of 126 drawn over its stone under 300 ms.

#include <benchmark/benchmark.h>

#include <algorithm>
#include <random>
#include <vector>

#include "fabric/relax.hpp"
#include "form/bezel.hpp"
#include "weave/technique.hpp"

namespace {

using namespace evencount;
using namespace evencount::fabric;

struct Piece {
  weave::Plan plan;
  std::vector<bead::Size> sizes{bead::find_size("cylinder-11").value()};
  bead::Gauge gauge = bead::default_gauge(sizes.front(), bead::threads().front());
};

Piece flat(int columns, int edge) {
  return {weave::make_plan("peyote-even-count", chart::Chart::make(columns, edge).value(), {}).value()};
}

Piece tube(int columns, int edge) {
  return {weave::make_plan("tubular-even-count", chart::Chart::make(columns, edge).value(),
                           {weave::Closure::round})
              .value()};
}

Fabric shaken(Fabric fabric) {
  std::mt19937 random(1);
  const auto any = [&] { return 0.3 * static_cast<double>(random()) / 4294967295.0 - 0.15; };
  for (SettledBead& bead : fabric.beads) {
    const double x = any(), y = any(), z = any();
    bead.shape.middle = bead.shape.middle + Vec3{x, y, z};
    bead.shape.axis = unit(bead.shape.axis + Vec3{z, x, y});
  }
  return fabric;
}

void relax_and_count(benchmark::State& state, const Fabric& start) {
  Residual residual;
  for (auto _ : state) residual = relax(start, {}).residual;
  state.SetItemsProcessed(state.iterations() * residual.rounds *
                          static_cast<std::int64_t>(start.beads.size()));
  state.counters["beads"] = static_cast<double>(start.beads.size());
  state.counters["rounds"] = residual.rounds;
  state.counters["worst"] = std::max(residual.worst_overlap, residual.worst_link);
}

void settle_flat_piece(benchmark::State& state) {
  const Piece piece = flat(static_cast<int>(state.range(0)), static_cast<int>(3 * state.range(0) / 2));
  for (auto _ : state) benchmark::DoNotOptimize(settle_flat(piece.plan, piece.sizes, piece.gauge));
}
BENCHMARK(settle_flat_piece)->Arg(20)->Arg(40)->Arg(80)->Unit(benchmark::kMillisecond);

void relax_shaken_flat_piece(benchmark::State& state) {
  const Piece piece = flat(static_cast<int>(state.range(0)), static_cast<int>(3 * state.range(0) / 2));
  relax_and_count(state, shaken(settle_flat(piece.plan, piece.sizes, piece.gauge).value()));
}
BENCHMARK(relax_shaken_flat_piece)->Arg(20)->Arg(40)->Arg(80)->Unit(benchmark::kMillisecond);

void relax_shaken_tube(benchmark::State& state) {
  const Piece piece = tube(24, static_cast<int>(state.range(0)));
  relax_and_count(state, shaken(settle_round(piece.plan, piece.sizes, piece.gauge, {}).value()));
}
BENCHMARK(relax_shaken_tube)->Arg(20)->Arg(80)->Arg(320)->Unit(benchmark::kMillisecond);

void draw_a_bezel_over_its_stone(benchmark::State& state) {
  const bead::Size wall = bead::find_size("cylinder-11").value(),
                   drawn_in = bead::find_size("round-15").value();
  const bead::Gauge gauge = bead::default_gauge(wall, bead::threads().front());
  SetStone set{form::parse_stone("stone:14,girdle=0.5,dome=2.2,back=2.3").value(), {}};
  const form::Bezel laid =
      form::bezel({.stone = set.stone,
                   .bead = wall,
                   .gauge = gauge,
                   .draw_in = {{drawn_in, bead::default_gauge(drawn_in, bead::threads().front())}}})
          .value();
  set.rounds = laid.rounds;
  const int rounds = laid.wall_rounds + laid.front_rounds + laid.back_rounds;
  auto chart = chart::Chart::make(laid.ring_beads, (rounds + 1) / 2, chart::no_bead).value();
  for (int along = 0; along < rounds; ++along)
    for (int column = along % 2; column < laid.ring_beads; column += 2) {
      const int above_ring = along - laid.back_rounds;
      chart.set({column, along / 2}, above_ring < 0 || above_ring >= laid.wall_rounds ? 1 : 0);
    }
  const auto plan =
      weave::make_plan("peyote-bezel", chart, {weave::Closure::round, laid.back_rounds}).value();
  const std::vector<bead::Size> sizes{wall, drawn_in};
  for (auto _ : state) benchmark::DoNotOptimize(settle(plan, sizes, gauge, set));
}
BENCHMARK(draw_a_bezel_over_its_stone)->Unit(benchmark::kMillisecond);

}  // namespace
