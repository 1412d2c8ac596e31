#include "drawing/marks.hpp"

#include <gtest/gtest.h>

namespace evencount::drawing {
namespace {

Drawing four_marks() {
  return {millimetres(20),
          millimetres(10),
          {Rectangle{.corner = {1, 2}, .width_mm = 3, .height_mm = 4, .fill = colour::Rgb{1, 2, 3}},
           Path{.points = {{5, 1}, {12, 8}}, .stroke = Stroke{{}, 0.5}},
           Circle{.centre = {15, 5}, .radius_mm = 2, .stroke = Stroke{{}, 1}},
           Text{.at = {2, 9}, .size_pt = 8, .text = "x"}}};
}

TEST(Marks, BoundsHoldStrokesButNoTexts) {
  const Bounds box = bounds_of(four_marks());
  EXPECT_DOUBLE_EQ(box.left_mm, 1);
  EXPECT_DOUBLE_EQ(box.top_mm, 0.75);
  EXPECT_DOUBLE_EQ(box.right_mm, 17.5);
  EXPECT_DOUBLE_EQ(box.bottom_mm, 8.25);
}

TEST(Marks, BoundsOfNothingAreZero) {
  const Bounds box = bounds_of({millimetres(5), millimetres(5), {Text{.at = {3, 3}, .text = "x"}}});
  EXPECT_EQ(box.left_mm, 0);
  EXPECT_EQ(box.bottom_mm, 0);
}

TEST(Marks, PlacingAtTheOriginChangesNothing) {
  Drawing whole{millimetres(20), millimetres(10), {}};
  place(whole, four_marks(), {0, 0});
  EXPECT_EQ(whole, four_marks());
}

TEST(Marks, PlacingScalesEverything) {
  Drawing whole{millimetres(100), millimetres(100), {}};
  place(whole, four_marks(), {10, 20}, 2);
  const Bounds box = bounds_of(whole);
  EXPECT_DOUBLE_EQ(box.left_mm, 12);
  EXPECT_DOUBLE_EQ(box.top_mm, 21.5);
  EXPECT_DOUBLE_EQ(box.right_mm, 45);
  EXPECT_DOUBLE_EQ(box.bottom_mm, 36.5);
  EXPECT_DOUBLE_EQ(std::get<Text>(whole.marks[3]).size_pt, 16);
}

TEST(Marks, APictureIsPlacedAndTurnedWithItsPixels) {
  const auto pixels = std::make_shared<const Pixels>(Pixels{3, 2, {1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4, 5, 5, 5, 6, 6, 6}});
  const Drawing sheet{millimetres(20), millimetres(10), {Picture{.corner = {1, 2}, .width_mm = 6, .height_mm = 4, .pixels = pixels}}};
  const Bounds box = bounds_of(sheet);
  EXPECT_EQ((Point{box.left_mm, box.top_mm}), (Point{1, 2}));
  EXPECT_EQ((Point{box.right_mm, box.bottom_mm}), (Point{7, 6}));
  Drawing whole{millimetres(100), millimetres(100), {}};
  place(whole, sheet, {10, 20}, 2);
  EXPECT_EQ(std::get<Picture>(whole.marks[0]), (Picture{.corner = {12, 24}, .width_mm = 12, .height_mm = 8, .pixels = pixels}));
  Drawing turned = turned_left(sheet);
  const auto& picture = std::get<Picture>(turned.marks[0]);
  EXPECT_EQ(picture.corner, (Point{2, 13}));
  EXPECT_EQ(picture.width_mm, 4);
  EXPECT_EQ(picture.height_mm, 6);
  // What was its right column is its top row.
  EXPECT_EQ(*picture.pixels, (Pixels{2, 3, {3, 3, 3, 6, 6, 6, 2, 2, 2, 5, 5, 5, 1, 1, 1, 4, 4, 4}}));
  for (int i = 0; i < 3; ++i) turned = turned_left(turned);
  EXPECT_EQ(*std::get<Picture>(turned.marks[0]).pixels, *pixels);
  EXPECT_EQ(std::get<Picture>(turned.marks[0]).corner, (Point{1, 2}));
}

TEST(Marks, FourQuarterTurnsGiveTheDrawingBack) {
  Drawing turned = four_marks();
  turned = turned_left(turned);
  EXPECT_EQ(turned.width, millimetres(10));
  // The circle on the right of the sheet has come to its top.
  EXPECT_EQ(std::get<Circle>(turned.marks[2]).centre, (Point{5, 5}));
  EXPECT_EQ(std::get<Rectangle>(turned.marks[0]).corner, (Point{2, 16}));
  for (int i = 0; i < 3; ++i) turned = turned_left(turned);
  EXPECT_EQ(turned, four_marks());
}

}  // namespace
}  // namespace evencount::drawing
