#include "render/set_stone.hpp"

#include <gtest/gtest.h>

#include "examples.hpp"
#include "fabric/obstacle.hpp"

namespace evencount::render {
namespace {

project::Project sampler(const std::string& name) {
  return testing_support::example("techniques/" + name);
}

std::vector<bead::Size> sizes_of(const project::Project& project) {
  std::vector<bead::Size> sizes;
  for (const project::LegendEntry& entry : project.legend)
    sizes.push_back(*project::find_bead(project, entry.bead));
  return sizes;
}

/// The sampler's project with the bezel that form::bezel lays round a stone, its drawn-in rounds of 15/0.
project::Project bezel_of(const std::string& notation) {
  project::Project project = sampler("peyote-bezel");
  project.beads.push_back(*bead::find_size("round-15"));
  project.legend[1].bead = "round-15";
  const bead::Size wall = *project::find_bead(project, "cylinder-11"), small = project.beads.back();
  const form::Bezel laid = form::bezel({.stone = form::parse_stone(notation).value(),
                                        .bead = wall,
                                        .gauge = bead::default_gauge(wall, project.thread),
                                        .draw_in = {{small, bead::default_gauge(small, project.thread)}}})
                               .value();
  project::Band& band = project.bands.front();
  const int rounds = laid.wall_rounds + laid.front_rounds + laid.back_rounds;
  band.begin_at = laid.back_rounds;
  band.chart = chart::Chart::make(laid.ring_beads, (rounds + 1) / 2).value();
  for (int column = 0; column < laid.ring_beads; ++column)
    for (int step = 0; step < (rounds + 1) / 2; ++step) {
      const int along = 2 * step + column % 2, above = along - laid.back_rounds;
      const bool wall_round = above >= 0 && above < laid.wall_rounds;
      band.chart.set({column, step}, along >= rounds ? chart::no_bead : chart::Bead(wall_round ? 0 : 1));
    }
  return project;
}

// (1)
TEST(SetStone, ABezelIsFilledByTheStoneItWasMadeFor) {
  for (const char* notation : {"stone:14,girdle=0.5,dome=2.2,back=2.3", "stone:12,girdle=0.5,dome=2,back=2.1",
                               "stone:18,girdle=1,dome=5,back=flat"}) {
    const project::Project project = bezel_of(notation);
    const auto set = set_stone(project, project.bands.front(), sizes_of(project), std::nullopt);
    ASSERT_TRUE(set) << message(set.problem());
    ASSERT_TRUE(*set);
    const double asked = form::parse_stone(notation).value().width.mm(), found = (*set)->stone.width.mm();
    EXPECT_NEAR(found, asked, 0.03 * asked) << notation;
    EXPECT_TRUE(form::check_stone((*set)->stone));
  }
}

// (2)
TEST(SetStone, NoBeadLiesInIt) {
  std::vector<project::Project> projects{sampler("peyote-bezel"),
                                         bezel_of("stone:14,girdle=0.5,dome=2.2,back=2.3")};
  for (const project::Project& project : projects)
    for (const bool given : {false, true}) {
      const project::Band& band = project.bands.front();
      const auto sizes = sizes_of(project);
      auto set = set_stone(project, band, sizes, std::nullopt).value().value();
      if (given) {
        set.stone.back = form::BackShape::pointed, set.stone.back_depth = millimetres(2);
        set = set_stone(project, band, sizes, set.stone).value().value();
        EXPECT_EQ(set.stone.back_depth, millimetres(2));
      }
      const auto fabric =
          fabric::settle(project::plan_of(band).value(), sizes, project::gauge_of(project, band), set);
      ASSERT_TRUE(fabric) << message(fabric.problem());
      const auto stone = fabric::obstacle_of(set.stone).value();
      double over_front = 0;
      for (const fabric::SettledBead& bead : fabric->beads) {
        const double radius = bead.shape.radius_mm;
        EXPECT_GE(stone(bead.shape.middle).distance_mm, 0.9 * radius) << given;
        const double inside =
            set.stone.width.mm() / 2 + radius - std::hypot(bead.shape.middle.x, bead.shape.middle.y);
        if (bead.shape.middle.z > 0) over_front = std::max(over_front, inside);
      }
      if (project.beads.size() > 1) {
        EXPECT_GT(over_front, 0);  // its small beads lie over the stone's edge
      }
    }
}

// (3)
TEST(SetStone, TheSolidIsTheStone) {
  for (const char* notation : {"stone:14,girdle=0.5,dome=2.2,back=2.3", "stone:18,dome=5,back=flat"}) {
    const form::Stone stone = form::parse_stone(notation).value();
    const Mesh mesh = stone_mesh(stone);
    double widest = 0, top = 0, bottom = 0;
    const auto surface = fabric::obstacle_of(stone).value();
    for (const Vec3 p : mesh.points) {
      widest = std::max(widest, std::hypot(p.x, p.y)), top = std::max(top, p.z),
      bottom = std::min(bottom, p.z);
      EXPECT_NEAR(surface(p).distance_mm, 0, 1e-3) << notation;
    }
    EXPECT_NEAR(2 * widest, stone.width.mm(), 1e-9);
    EXPECT_NEAR(top, stone.girdle.mm() / 2 + stone.dome.mm(), 1e-9);
    EXPECT_NEAR(-bottom, stone.girdle.mm() / 2 + stone.back_depth.mm(), 1e-9);
    // Cap, girdle and cone by closed form.
    const double pi = 3.141592653589793, r = stone.width.mm() / 2, h = stone.dome.mm();
    const double volume = pi * h * (3 * r * r + h * h) / 6 + pi * r * r * stone.girdle.mm() +
                          pi * r * r * stone.back_depth.mm() / 3;
    EXPECT_NEAR(volume_of(mesh), volume, 4e-3 * volume);
  }
}

// (4)
TEST(SetStone, ABezelIsDrawnInAndATubeIsNot) {
  for (const char* name : {"tubular-even-count", "tubular-odd-count"}) {
    const project::Project tube = sampler(name);
    EXPECT_FALSE(is_drawn_in(tube.bands.front(), sizes_of(tube))) << name;
  }
  for (const char* name : {"peyote-even-count", "brick"}) {
    const project::Project flat = sampler(name);
    EXPECT_FALSE(is_drawn_in(flat.bands.front(), sizes_of(flat))) << name;
  }
  project::Project bezel = bezel_of("stone:14,girdle=0.5,dome=2.2,back=2.3");
  EXPECT_TRUE(is_drawn_in(bezel.bands.front(), sizes_of(bezel)));
  // Its back left away it is still one by its front; then only a wall, whatever colours are in it.
  project::Band& band = bezel.bands.front();
  const auto keep_rows = [&](int first, int end) {
    const chart::Chart before = band.chart;
    band.chart = chart::Chart::make(before.columns(), (end - first + 1) / 2).value();
    for (int column = 0; column < before.columns(); ++column)
      for (int row = column % 2; row < end - first; row += 2)
        band.chart.set({column, row / 2}, before.at({column, (row + first) / 2}));
  };
  const int first = band.begin_at + band.begin_at % 2;
  keep_rows(first, 2 * band.chart.edge()), band.begin_at = 0;
  EXPECT_TRUE(is_drawn_in(band, sizes_of(bezel)));
  int wall = 2;
  while (band.chart.at({wall % 2, wall / 2}) == 0) ++wall;
  keep_rows(0, wall - wall % 2);
  EXPECT_FALSE(is_drawn_in(band, sizes_of(bezel)));
  for (int column = 0; column < band.chart.columns(); column += 3) band.chart.set({column, 0}, 2);
  EXPECT_FALSE(is_drawn_in(band, sizes_of(bezel)));
}

// A wall goes round a stone that is given, though nothing holds it there.
TEST(SetStone, ATubeTakesTheStoneThatItIsGiven) {
  const project::Project tube = sampler("tubular-even-count"), odd = sampler("tubular-odd-count");
  const form::Stone stone = form::parse_stone("stone:8,girdle=0.5,dome=2.2,back=flat").value();
  const auto set = set_stone(tube, tube.bands.front(), sizes_of(tube), stone);
  ASSERT_TRUE(set) << message(set.problem());
  ASSERT_TRUE(*set);
  EXPECT_EQ((*set)->stone, stone);
  EXPECT_EQ(set_stone(odd, odd.bands.front(), sizes_of(odd), stone).problem().code,
            ProblemCode::out_of_range);
}

TEST(SetStone, TubesHoldNone) {
  const project::Project tube = sampler("tubular-even-count"), flat = sampler("brick");
  EXPECT_FALSE(set_stone(tube, tube.bands.front(), sizes_of(tube), std::nullopt).value());
  EXPECT_FALSE(set_stone(flat, flat.bands.front(), sizes_of(flat), std::nullopt).value());
  const project::Project bezel = sampler("peyote-bezel");
  const form::Stone oval = form::parse_stone("stone:18x13,dome=5,back=flat").value();
  EXPECT_EQ(set_stone(bezel, bezel.bands.front(), sizes_of(bezel), oval).problem().code,
            ProblemCode::out_of_range);
}

}  // namespace
}  // namespace evencount::render
