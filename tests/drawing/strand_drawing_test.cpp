#include "drawing/strand_drawing.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "project/case_file.hpp"
#include "project/json.hpp"
#include "project/strand.hpp"

namespace evencount::drawing {
namespace {

struct Demo {
  project::Project project;
  strand::Strung strung;
  strand::StrandFit fit;
  strand::TwoCords curve;
};

Demo demo(const std::string& name, std::size_t size) {
  const auto project = project::parse_project(
      testing::read_file(EVENCOUNT_SOURCE_DIR "/examples/" + name + ".evencount.json"));
  const auto strung = project::strung_of(*project);
  const auto fit = strand::fit_strand(*strung, {.wearer = project::wearers_of(*project->strand)[size]});
  return {*project, *strung, *fit,
          *strand::two_cords(*strung, fit->best.counts, project::lean_of(*project->strand))};
}

void expect_on_sheet(const Drawing& drawing) {
  const Bounds bounds = bounds_of(drawing);
  EXPECT_GE(bounds.left_mm, 0);
  EXPECT_GE(bounds.top_mm, 0);
  EXPECT_LE(bounds.right_mm, drawing.width.mm());
  EXPECT_LE(bounds.bottom_mm, drawing.height.mm());
}

TEST(StrandDrawing, FlatIsToScale) {
  const Demo one = demo("moonwatch", 2);
  const Drawing flat =
      strand_flat(one.project, one.strung, one.fit, one.curve, {.longest_row = millimetres(1000)});
  expect_on_sheet(flat);
  const double strung_mm = one.fit.best.length.mm() - 14;  // the clasp
  const Bounds bounds = bounds_of(flat);
  EXPECT_NEAR(bounds.right_mm - bounds.left_mm, strung_mm, 1);  // strokes stand out a little
  const Drawing rows =
      strand_flat(one.project, one.strung, one.fit, one.curve, {.longest_row = millimetres(90)});
  expect_on_sheet(rows);
  EXPECT_GT(rows.height, 2 * flat.height - millimetres(30));
  EXPECT_LE(bounds_of(rows).right_mm - bounds_of(rows).left_mm, 91);
}

TEST(StrandDrawing, WornHasItsLinks) {
  const Demo one = demo("moonwatch", 2);
  const auto worn = strand_worn(one.project, one.strung, one.fit);
  ASSERT_TRUE(worn);
  expect_on_sheet(*worn);
  const auto links = strand::links_of(one.strung, one.fit.best.counts);
  std::size_t bodies = 0;
  for (const Mark& mark : worn->marks)
    if (const auto* path = std::get_if<Path>(&mark)) bodies += path->closed && path->fill;
  EXPECT_EQ(bodies, links.size() + 1);  // and the wrist
  const Bounds bounds = bounds_of(*worn);
  const double around = one.fit.best.length.mm();
  EXPECT_LT(bounds.right_mm - bounds.left_mm, around / 2);
  EXPECT_GT(bounds.right_mm - bounds.left_mm, around / 3.5);
}

TEST(StrandDrawing, ANecklaceLiesInARingAndShowsItsExtras) {
  const Demo one = demo("moonwatch-necklace", 2);
  const auto ring = strand_worn(one.project, one.strung, one.fit);
  ASSERT_TRUE(ring);
  expect_on_sheet(*ring);
  EXPECT_GT(ring->height, millimetres(450 / 3.2));
  const Drawing flat = strand_flat(one.project, one.strung, one.fit, one.curve);
  int signs = 0;
  for (const Mark& mark : flat.marks)
    if (const auto* text = std::get_if<Text>(&mark)) signs += text->text.starts_with('+');
  EXPECT_EQ(signs, static_cast<int>(one.curve.extras.size()));
  EXPECT_GT(signs, 0);
}

}  // namespace
}  // namespace evencount::drawing
