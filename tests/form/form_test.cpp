#include "form/form.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

#include "form/ring_size.hpp"

namespace evencount::form {
namespace {

TEST(Form, NotationReadsBack) {
  for (const char* text :
       {"lens:17x5x9", "round:12x20", "oval:18x13x5", "bar:20x4x10", "ring:54", "lens:0.5x0.5x0.5",
        "ring:2000", "ring:0.5", "lens:16.25x5.125x9.0625", "dome:20x6x10", "dome:20x10x10,edge=0.5",
        "bangle:66x12", "wrist:165", "wrist:54.4111", "lens:17x5x9,tip=0.5,holes=6.5,hole=1.5",
        "oval:18x13x5,hole=1", "bar:20x4x10,holes=12"}) {
    const auto form = parse_form(text);
    ASSERT_TRUE(form.ok()) << text << message(form.problem());
    EXPECT_EQ(to_notation(*form), text);
    EXPECT_EQ(*parse_form(to_notation(*form)), *form);
    EXPECT_TRUE(section(*form).ok());
  }
}

TEST(Form, SectionHasTheSizesOfTheForm) {
  for (const char* text : {"lens:17x5x9", "round:12x20", "oval:13x18x5", "bar:20x4x10", "ring:54",
                           "bangle:66x12", "wrist:165", "lens:17x5x9,tip=1"}) {
    const auto form = parse_form(text);
    const Box box = section(*form)->box();
    EXPECT_NEAR(box.high.x_mm - box.low.x_mm, form->width.mm(), 1e-9) << text;
    EXPECT_NEAR(box.high.y_mm - box.low.y_mm, form->thickness.mm(), 1e-9) << text;
    EXPECT_EQ(section(*form)->at({0, 0}).at.y_mm, 0) << text;
  }
}

TEST(Form, NoFormWithoutASoundSize) {
  Form form = *parse_form("lens:17x5x9");
  form.width = millimetres(std::numeric_limits<double>::quiet_NaN());
  EXPECT_EQ(section(form).problem().code, ProblemCode::out_of_range);
  form.width = millimetres(std::numeric_limits<double>::infinity());
  EXPECT_EQ(section(form).problem().code, ProblemCode::out_of_range);
}

TEST(Form, AnyTextIsReadOrRefused) {
  // Every text near a notation: no crash, and what is accepted reads back.
  for (const std::string seed :
       {"lens:17x5x9", "lens:17x5x9,tip=0.5,holes=6.5,hole=1.5", "ring:us7", "wrist:165"})
    for (std::size_t at = 0; at < seed.size(); ++at) {
      for (int c = 0; c < 256; ++c) {
        std::string text = seed;
        text[at] = static_cast<char>(c);
        if (const auto form = parse_form(text); form) {
          EXPECT_EQ(*parse_form(to_notation(*form)), *form) << text;
        }
      }
    }
}

TEST(RingSize, UsSizes) {
  EXPECT_EQ(us_inner_diameter(-1).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(us_inner_diameter(std::nan("")).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(us_ring(7)->kind, FormKind::ring);
  EXPECT_EQ(to_notation(*us_ring(7)), "ring:54.4111");
}

TEST(Form, WhateverParsesReadsBack) {
  for (const char* text : {"ring:us7", "ring:US 6.5", "ring:17.3mm", "ring:0.68in", "wrist:6.5in",
                           "lens:43/64inx5x9", "bangle:2 5/8inx12"}) {
    const auto form = parse_form(text);
    if (!form) continue;  // mixed fractions are for parse_length to read or refuse
    EXPECT_EQ(*parse_form(to_notation(*form)), *form) << text << " " << to_notation(*form);
  }
  for (double size = 0; size <= 16; size += 0.25) {
    EXPECT_EQ(*parse_form(to_notation(*us_ring(size))), *us_ring(size)) << size;
    EXPECT_EQ(*parse_form("ring:us" + std::to_string(size)), *us_ring(size)) << size;
  }
}

TEST(Form, DomeIsASegmentOfACircle) {
  const auto curve = *section(*parse_form("dome:20x6x10"));
  const Box box = curve.box();
  EXPECT_NEAR(box.high.x_mm, 10, 1e-9);
  EXPECT_NEAR(box.high.y_mm, 3, 1e-9);
  EXPECT_NEAR(box.low.y_mm, -3, 1e-9);
  // radius (10^2 + 6^2) / 12, half angle atan2(10, radius - 6)
  const double radius = 136.0 / 12, half = std::atan2(10.0, radius - 6);
  EXPECT_NEAR(curve.perimeter().mm(), 20 + 2 * half * radius, 1e-9);
  // Half a circle, its edges rounded: still as wide and as high, and shorter round.
  const auto rounded = *section(*parse_form("dome:20x10x10,edge=1"));
  EXPECT_NEAR(rounded.box().high.x_mm - rounded.box().low.x_mm, 20, 1e-9);
  EXPECT_NEAR(rounded.box().high.y_mm - rounded.box().low.y_mm, 10, 1e-9);
  EXPECT_LT(rounded.perimeter(), section(*parse_form("dome:20x10x10"))->perimeter());
  EXPECT_NEAR(section(*parse_form("dome:20x10x10"))->perimeter().mm(), 20 + 10 * std::numbers::pi, 1e-9);
  EXPECT_NEAR(curve.at({0, 0}).at.x_mm, 0, 1e-9);  // begins at its top
  EXPECT_NEAR(curve.at({0, 0}).at.y_mm, 3, 1e-9);
}

TEST(Form, WristHasItsCircumferenceAndRatio) {
  const auto form = *parse_form("wrist:165");
  EXPECT_NEAR(section(form)->perimeter().mm(), 165, 1e-8);
  EXPECT_NEAR(form.width / form.thickness, wrist_ratio, 1e-12);
  EXPECT_FALSE(form.length_along_holes.has_value());
}

TEST(Form, HolesLieInsideTheSection) {
  const auto code = [](const char* text) {
    const auto form = parse_form(text);
    return form ? std::string("sound") : std::string(problem_kind(form.problem().code).name);
  };
  EXPECT_EQ(code("lens:17x5x9,holes=6.5,hole=1.5"), "sound");
  EXPECT_EQ(code("lens:17x5x9,holes=1.5,hole=1.5"), "out_of_range");  // touch
  EXPECT_EQ(code("lens:17x5x9,holes=17"), "out_of_range");            // on the tip
  EXPECT_EQ(code("lens:17x5x9,holes=30"), "out_of_range");
  EXPECT_EQ(code("lens:17x5x9,holes=15,hole=1.5"), "out_of_range");  // too near the tip
  EXPECT_EQ(code("lens:17x5x9,hole=5"), "out_of_range");             // as thick as the bead
  EXPECT_EQ(code("lens:17x5x9,hole=4.9"), "sound");
  // In a bar the room is a stadium: the distance to the side is 2 mm along the whole middle line.
  EXPECT_EQ(code("bar:20x4x10,holes=16,hole=3.9"), "sound");
  EXPECT_EQ(code("bar:20x4x10,holes=16.3,hole=3.9"), "out_of_range");
  EXPECT_EQ(hole_centres(*parse_form("bar:20x4x10,holes=16")), (std::vector<Point>{{-8, 0}, {8, 0}}));
  EXPECT_EQ(hole_centres(*parse_form("bar:20x4x10,hole=1")), (std::vector<Point>{{0, 0}}));
  EXPECT_TRUE(hole_centres(*parse_form("bar:20x4x10")).empty());
  Form form = *parse_form("ring:54");
  form.hole = millimetres(1);
  EXPECT_EQ(check(form).problem().code, ProblemCode::out_of_range);
}

}  // namespace
}  // namespace evencount::form
