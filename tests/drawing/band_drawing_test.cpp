#include "drawing/band_drawing.hpp"

#include <gtest/gtest.h>

#include "drawing/sample.hpp"

namespace evencount::drawing {
namespace {

Drawing draw(const project::Project& project, const BandLook& look = {}) {
  return band_drawing(project, project.bands[0], *project::plan_of(project.bands[0]), look);
}

/// A barrel is the rectangle of a bead's true size; its shading lies inside it.
std::size_t barrels_of(const Drawing& drawing, double length_mm, double diameter_mm) {
  std::size_t count = 0;
  for (const Rectangle& mark : all_of_kind<Rectangle>(drawing))
    count += std::abs(mark.width_mm - length_mm) < 1e-9 && std::abs(mark.height_mm - diameter_mm) < 1e-9;
  return count;
}

TEST(BandDrawing, HasTheBandsTrueSize) {
  const project::Project project = sample_project(6, 24);
  const bead::Gauge gauge = project::gauge_of(project, project.bands[0]);
  const Drawing band = draw(project);
  EXPECT_NEAR(band.width.mm(), 6 * gauge.column.mm(), 1e-9);
  EXPECT_NEAR(band.height.mm(), 24.5 * gauge.edge.mm(), 1e-9);
}

TEST(BandDrawing, ShowsEveryBeadAtItsSize) {
  EXPECT_EQ(barrels_of(draw(sample_project(6, 24)), 1.3, 1.6), 144u);
  EXPECT_EQ(barrels_of(draw(sample_project(6, 24, true)), 1.3, 1.6), 141u);
  EXPECT_EQ(barrels_of(draw(sample_project(6, 24), {.most_steps = 10}), 1.3, 1.6), 60u);
}

TEST(BandDrawing, StaysOnItsSheet) {
  for (const auto& size : bead::sizes()) {
    project::Project project = sample_project(7, 9);
    project.beads = {size};
    project.bands[0].bead = size.id;
    for (auto& entry : project.legend) entry.bead = size.id;
    const Drawing band = draw(project);
    const Bounds box = bounds_of(band);
    EXPECT_GE(box.left_mm, 0) << size.id;
    EXPECT_GE(box.top_mm, 0) << size.id;
    EXPECT_LE(box.right_mm, band.width.mm()) << size.id;
    EXPECT_LE(box.bottom_mm, band.height.mm()) << size.id;
  }
}

TEST(BandDrawing, FinishesLookDifferent) {
  project::Project project = sample_project(2, 3);
  std::vector<Drawing> seen;
  for (const bead::Finish finish : bead::finishes) {
    for (auto& entry : project.legend) entry.finish = finish;
    const Drawing band = draw(project);
    for (const Drawing& other : seen) EXPECT_NE(band, other);
    seen.push_back(band);
  }
}

TEST(BandDrawing, SmallBeadsAreDrawnWithFewerStrips) {
  const project::Project project = sample_project(4, 5);
  const Drawing plain = draw(project, {.fine = false});
  EXPECT_EQ(plain.marks.size(), 3u * 20);
  EXPECT_EQ(barrels_of(plain, 1.3, 1.6), 20u);
  EXPECT_EQ(draw(project).marks.size(), 5u * 20);
}

TEST(BandDrawing, MatteHasNoHighlight) {
  project::Project project = sample_project(2, 3);
  const std::size_t shiny = draw(project).marks.size();
  for (auto& entry : project.legend) entry.finish = bead::Finish::matte;
  EXPECT_EQ(draw(project).marks.size(), shiny - 6);
}

}  // namespace
}  // namespace evencount::drawing
