#pragma once
/// Pieces for the tests of this room: every technique at a size, a bezel, and fabrics that are turned, mirrored or shaken.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <random>
#include <string>
#include <vector>

#include "fabric/relax.hpp"
#include "weave/technique.hpp"

namespace evencount::fabric::testing_support {

struct Piece {
  std::string name;
  weave::Plan plan;
  std::vector<bead::Size> sizes;
  bead::Gauge gauge;
};

inline bead::Size size_of(const char* id) {
  return bead::find_size(id).value();
}

/// Which bead stands in a cell; no_bead: none.
using Filling = std::function<chart::Bead(Cell)>;
inline chart::Bead one_bead(Cell) {
  return 0;
}

inline Piece piece_of(const weave::Technique& technique, int columns, int edge, std::vector<bead::Size> sizes,
                      weave::Making making, const Filling& filling = one_bead) {
  auto chart = chart::Chart::make(columns, edge, chart::no_bead).value();
  const weave::Lattice lattice = technique.lattice(columns, edge);
  for (int step = 0; step < edge; ++step)
    for (int column = 0; column < columns; ++column)
      if (lattice.holds_bead({column, step})) chart.set({column, step}, filling({column, step}));
  auto plan = weave::make_plan(technique.id, chart, making);
  EXPECT_TRUE(plan.ok()) << technique.id << ": " << (plan.ok() ? "" : message(plan.problem()));
  bead::Gauge gauge = technique.gauge(sizes.front(), bead::threads().front());
  return {std::string(technique.id), plan.value(), std::move(sizes), std::move(gauge)};
}

/// The technique's largest piece up to that size; open where it can be.
inline Piece piece_of(const weave::Technique& technique, int most_columns, int most_edge,
                      const bead::Size& size) {
  int columns = most_columns, edge = most_edge;
  while (edge > 1 && !technique.check_size(columns, edge).ok())
    if (--columns < 1) columns = most_columns, --edge;
  const bool can_be_open = std::find(technique.closures.begin(), technique.closures.end(),
                                     weave::Closure::open) != technique.closures.end();
  return piece_of(technique, columns, edge, {size},
                  {can_be_open ? weave::Closure::open : technique.closures.front()});
}

inline Piece piece_of(const char* technique, int columns, int edge, std::vector<bead::Size> sizes,
                      weave::Making making, const Filling& filling = one_bead) {
  return piece_of(weave::find_technique(technique).value(), columns, edge, std::move(sizes), making, filling);
}

inline Piece flat_peyote(int columns, int edge) {
  return piece_of(weave::flat_peyote_for(columns).id.data(), columns, edge, {size_of("cylinder-11")}, {});
}

inline Piece tube(int columns, int edge) {
  return piece_of("tubular-even-count", columns, edge, {size_of("cylinder-11")}, {weave::Closure::round});
}

/// A diamond of shaped peyote: row after row one bead wider to both sides, then narrower. `half` beads a side.
inline Piece diamond(int half) {
  const int columns = 2 * half - 1, rows = 2 * half - 1;
  return piece_of("peyote-shaped", columns, half, {size_of("cylinder-11")}, {}, [&](Cell cell) {
    const int row = 2 * cell.step + cell.column % 2;
    const int reach = std::min(row, rows - 1 - row) + 1;
    return std::abs(cell.column - (half - 1)) < reach ? chart::Bead{0} : chart::no_bead;
  });
}

/// A peyote bezel round a stone of 14 mm: a wall of 11/0 cylinders, rounds of 15/0 on both sides.
struct SetBezel {
  Piece piece;
  SetStone stone;
};

inline SetBezel bezel() {
  const bead::Size wall = size_of("cylinder-11"), drawn_in = size_of("round-15");
  const bead::Thread& thread = bead::threads().front();
  SetStone set{form::parse_stone("stone:14,girdle=0.5,dome=2.2,back=2.3").value(), {}};
  const form::Bezel laid = form::bezel({.stone = set.stone,
                                        .bead = wall,
                                        .gauge = bead::default_gauge(wall, thread),
                                        .draw_in = {{drawn_in, bead::default_gauge(drawn_in, thread)}}})
                               .value();
  set.rounds = laid.rounds;
  const int rounds = laid.wall_rounds + laid.front_rounds + laid.back_rounds;
  Piece piece = piece_of("peyote-bezel", laid.ring_beads, (rounds + 1) / 2, {wall, drawn_in},
                         {weave::Closure::round, laid.back_rounds}, [&](Cell cell) {
                           const int along = 2 * cell.step + cell.column % 2;
                           if (along >= rounds) return chart::no_bead;
                           const int above_ring = along - laid.back_rounds;
                           return chart::Bead(above_ring < 0 || above_ring >= laid.wall_rounds ? 1 : 0);
                         });
  return {std::move(piece), std::move(set)};
}

/// A ring of 36 whose rounds hold 18, 15 from the fourth and 12 from the sixth: where a bead is left out there is no place for one
/// in the next round either, one column further on.
inline Piece ring_of_fewer() {
  return piece_of("peyote-bezel", 36, 4, {size_of("cylinder-11")}, {weave::Closure::round}, [](Cell cell) {
    const int round = 2 * cell.step + cell.column % 2;
    const int slanting = (cell.column - round + 48) % 12;
    const bool left_out = (round >= 3 && slanting == 10) || (round >= 5 && slanting == 4);
    return left_out ? chart::no_bead : chart::Bead{0};
  });
}

using Random = std::mt19937;

inline double spread(Random& random, double most) {
  return most * (2.0 * static_cast<double>(random()) / static_cast<double>(Random::max()) - 1);
}

/// Every bead moved by up to `most_mm` along each axis and tilted by about as many radians.
inline Fabric shaken(Fabric fabric, unsigned seed, double most_mm) {
  Random random(seed);
  const auto any = [&] {
    const double x = spread(random, most_mm), y = spread(random, most_mm);
    return Vec3{x, y, spread(random, most_mm)};
  };
  for (SettledBead& bead : fabric.beads) {
    bead.shape.middle = bead.shape.middle + any();
    bead.shape.axis = unit(bead.shape.axis + any());
  }
  return fabric;
}

using Move = std::function<Vec3(Vec3)>;

/// The fabric after a rotation or mirroring about the origin.
inline Fabric moved(Fabric fabric, const Move& move) {
  for (SettledBead& bead : fabric.beads) {
    bead.shape.middle = move(bead.shape.middle);
    bead.shape.axis = move(bead.shape.axis);
  }
  return fabric;
}

/// A turn about a slanting axis.
inline Vec3 turned(Vec3 p) {
  const auto about = [](double a, double b, double angle) {
    return std::pair(std::cos(angle) * a - std::sin(angle) * b, std::sin(angle) * a + std::cos(angle) * b);
  };
  std::tie(p.x, p.y) = about(p.x, p.y, 0.7);
  std::tie(p.y, p.z) = about(p.y, p.z, -1.1);
  return p;
}
inline Vec3 mirrored(Vec3 p) {
  return {-p.x, p.y, p.z};
}

/// The largest distance between the same bead's middles in two fabrics.
inline double farthest_mm(const Fabric& a, const Fabric& b) {
  double farthest = 0;
  for (std::size_t i = 0; i < a.beads.size(); ++i)
    farthest = std::max(farthest, norm(a.beads[i].shape.middle - b.beads[i].shape.middle));
  return farthest;
}

inline void print_residual(const std::string& what, const Fabric& fabric) {
  const Residual& r = fabric.residual;
  fmt::print("{:<44} {:>5} beads  overlap {:6.3f} %  link {:6.3f} %  in the form {:6.4f} mm  {:>4} rounds\n",
             what, fabric.beads.size(), 100 * r.worst_overlap, 100 * r.worst_link, r.worst_inside_form_mm,
             r.rounds);
}

}  // namespace evencount::fabric::testing_support
