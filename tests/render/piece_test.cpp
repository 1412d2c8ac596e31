#include "render/piece.hpp"

#include <gtest/gtest.h>

#include <map>
#include <set>

#include "examples.hpp"
#include "fabric/fabric.hpp"

namespace evencount::render {
namespace {

using testing_support::example;

constexpr const char* techniques[]{"brick",
                                   "herringbone",
                                   "loom",
                                   "peyote-bezel",
                                   "peyote-even-count",
                                   "peyote-odd-count",
                                   "right-angle",
                                   "square",
                                   "tubular-even-count",
                                   "two-drop-even-count"};

/// The lowest point of everything.
double lowest(const Scene& scene) {
  double low = 1e30;
  for (const Placed& solid : scene.solids)
    for (const Vec3 p : scene.meshes[solid.mesh].points) low = std::min(low, solid.placement.point(p).z);
  for (const Strand& strand : scene.strands)
    for (const Vec3 p : strand.points) low = std::min(low, p.z - strand.radius_mm);
  return low;
}

void expect_in_picture(const Scene& scene, double aspect) {
  double off = 0;
  for (const Placed& solid : scene.solids) {
    if (solid.placement.x == Vec3{}) continue;
    const PicturePoint p = pixel_of(scene.camera, aspect, solid.placement.origin);
    off = std::max({off, -p.x, p.x - 1, -p.y, p.y - 1});
  }
  EXPECT_LE(off, 0);
}

// (1), (3), (4)
TEST(Piece, EveryTechniqueLiesOnTheTable) {
  for (const char* name : techniques) {
    project::Project project = example(std::string("techniques/") + name);
    for (bead::Size& size : project.beads) size.scatter = 0;
    const std::string band = project.bands.front().name;
    const auto scene = scene_of(project, {.band = band, .aspect = 1.5});
    ASSERT_TRUE(scene) << name << " " << message(scene.problem());
    const auto plan = project::plan_of(project.bands.front()).value();
    const auto counts = weave::count_beads(plan);
    std::size_t beads = 0;
    for (const int count : counts) beads += static_cast<std::size_t>(count);
    const bool holds_a_stone = project.bands.front().begin_at > 0;
    EXPECT_EQ(scene->solids.size(), beads + (holds_a_stone ? 1 : 0)) << name;
    EXPECT_NEAR(lowest(*scene), 0, 0.05) << name;
    expect_in_picture(*scene, 1.5);
    std::map<std::uint32_t, int> by_surface;
    for (const Placed& solid : scene->solids) ++by_surface[solid.surface];
    std::multiset<int> asked, placed;
    for (const int count : counts)
      if (count > 0) asked.insert(count);
    if (holds_a_stone) asked.insert(1);
    for (const auto& [surface, count] : by_surface) placed.insert(count);
    EXPECT_EQ(asked, placed) << name;
    EXPECT_FALSE(scene->strands.empty()) << name;
  }
}

// (2)
TEST(Piece, BeadsScatterAsTheirToleranceSays) {
  project::Project project = example("techniques/peyote-even-count");
  const SceneChoice choice{.band = project.bands.front().name};
  const Scene scattered = scene_of(project, choice).value();
  double sum = 0, squares = 0;
  const auto count = static_cast<double>(scattered.solids.size());
  for (const Placed& solid : scattered.solids) {
    const double size = norm(solid.placement.z);
    sum += size / count, squares += size * size / count;
  }
  const double deviation = std::sqrt(squares - sum * sum), tolerance = project.beads.front().scatter;
  EXPECT_NEAR(sum, 1, 4 * tolerance / std::sqrt(count));
  EXPECT_NEAR(deviation, tolerance, 0.3 * tolerance);
  for (bead::Size& size : project.beads) size.scatter = 0;
  const Scene even = scene_of(project, choice).value();
  for (const Placed& solid : even.solids) EXPECT_NEAR(norm(solid.placement.z), 1, 1e-12);
}

TEST(Piece, TheSameSeedTheSameScene) {
  const project::Project project = example("techniques/right-angle");
  SceneChoice choice{.band = project.bands.front().name};
  const Scene a = scene_of(project, choice).value(), b = scene_of(project, choice).value();
  choice.seed = 2;
  const Scene c = scene_of(project, choice).value();
  int different = 0;
  for (std::size_t i = 0; i < a.solids.size(); ++i) {
    EXPECT_EQ(a.solids[i].placement.origin, b.solids[i].placement.origin);
    different += a.solids[i].placement.origin != c.solids[i].placement.origin;
  }
  EXPECT_GT(different, static_cast<int>(a.solids.size()) - 5);
}

/// The bezel's sampler with the tube's beside it, as a bail is.
project::Project bezel_and_tube() {
  project::Project project = example("techniques/peyote-bezel");
  project.bands.push_back(example("techniques/tubular-even-count").bands.front());
  project.bands.back().name = "Bail";
  return project;
}

std::size_t beads_of(const project::Project& project) {
  std::size_t beads = 0;
  for (const project::Band& band : project.bands) {
    const auto counts = weave::count_beads(project::plan_of(band).value());
    for (const int count : counts) beads += static_cast<std::size_t>(count);
  }
  return beads;
}

// (5)
TEST(Piece, AGivenStoneIsForBezels) {
  project::Project project = bezel_and_tube();
  const auto plain = scene_of(project, {});
  ASSERT_TRUE(plain) << message(plain.problem());
  EXPECT_EQ(plain->solids.size(), beads_of(project) + 1);
  const form::Stone stone = form::parse_stone("stone:8,girdle=0.5,dome=2.2,back=flat").value();
  const auto with_stone = scene_of(project, {.stone = stone});
  ASSERT_TRUE(with_stone) << message(with_stone.problem());
  EXPECT_EQ(with_stone->solids.size(), beads_of(project) + 1);
  // Without its back it is a bezel still, by its front.
  project::Band& bezel = project.bands.front();
  const chart::Chart whole = bezel.chart;
  bezel.chart = chart::Chart::make(whole.columns(), whole.edge() - 1).value(), bezel.begin_at = 0;
  for (int column = 0; column < whole.columns(); ++column)
    for (int step = 1; step < whole.edge(); ++step)
      bezel.chart.set({column, step - 1}, whole.at({column, step}));
  const auto by_front = scene_of(project, {.stone = stone});
  ASSERT_TRUE(by_front) << message(by_front.problem());
  EXPECT_EQ(by_front->solids.size(), beads_of(project) + 1);
  // A ring that nothing could be set in is no hindrance.
  project.bands.back() = example("techniques/tubular-odd-count").bands.front();
  project.bands.back().name = "Bail";
  const auto with_ring = scene_of(project, {.stone = stone});
  ASSERT_TRUE(with_ring) << message(with_ring.problem());
  EXPECT_EQ(with_ring->solids.size(), beads_of(project) + 1);
  EXPECT_EQ(scene_of(project, {.band = "Bail", .stone = stone}).problem().code, ProblemCode::out_of_range);
}

// (5)
TEST(Piece, AStoneIsNotForWhatHasItsOwnForm) {
  project::Project project = example("techniques/tubular-even-count");
  project.forms.push_back({.id = "rod", .name = "rod", .form = form::parse_form("round:4x20").value()});
  project.bands.front().form = "rod";
  const form::Stone oval = form::parse_stone("stone:18x13,dome=5,back=flat").value();
  const auto scene = scene_of(project, {.stone = oval});
  ASSERT_TRUE(scene) << message(scene.problem());
  EXPECT_EQ(scene->solids.size(), beads_of(project) + 1);  // the rod
}

TEST(Piece, BothDemosInEveryView) {
  for (const char* name : {"moonwatch", "moonwatch-necklace"})
    for (const View view : {View::table, View::flat, View::worn}) {
      const project::Project project = example(name);
      const auto scene = scene_of(project, {.view = view, .aspect = 0.7});
      if (view == View::worn && project.strand->worn == strand::Worn::length) {
        EXPECT_EQ(scene.problem().code, ProblemCode::out_of_range);
        continue;
      }
      ASSERT_TRUE(scene) << message(scene.problem());
      std::size_t beads = 0;
      for (const project::Band& band : project.bands)
        beads += static_cast<std::size_t>(band.chart.columns() * band.chart.edge());
      EXPECT_GT(scene->solids.size(), beads);
      EXPECT_NEAR(lowest(*scene), 0, 0.05);
      if (view != View::worn) expect_in_picture(*scene, 0.7);
    }
}

TEST(Piece, SaysWhatCannotBeShown) {
  project::Project project = example("moonwatch");
  EXPECT_EQ(scene_of(project, {.band = "Nowhere"}).problem().code, ProblemCode::unknown_name);
  EXPECT_EQ(scene_of(project, {.band = "Full moon", .view = View::worn}).problem().code,
            ProblemCode::out_of_range);
  EXPECT_EQ(scene_of(project, {.size = "XXS"}).problem().code, ProblemCode::unknown_name);
  project.strand.reset();
  EXPECT_TRUE(scene_of(project, {}));  // all bands, side by side
  project.bands.clear();
  EXPECT_EQ(scene_of(project, {}).problem().code, ProblemCode::missing_field);
  for (const View view : {View::table, View::flat, View::worn})
    EXPECT_EQ(parse_view(view_name(view)).value(), view);
  EXPECT_FALSE(parse_view("above"));
}

}  // namespace
}  // namespace evencount::render
