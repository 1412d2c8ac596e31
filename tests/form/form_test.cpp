#include "form/form.hpp"

#include <gtest/gtest.h>

#include <limits>

#include "form/ring_size.hpp"

namespace evencount::form {
namespace {

TEST(Form, NotationReadsBack) {
  for (const char* text : {"lens:17x5x9", "round:12x20", "oval:18x13x5", "bar:20x4x10", "ring:54",
                           "lens:0.5x0.5x0.5", "ring:2000", "ring:0.5", "lens:16.25x5.125x9.0625"}) {
    const auto form = parse_form(text);
    ASSERT_TRUE(form.ok()) << text << message(form.problem());
    EXPECT_EQ(to_notation(*form), text);
    EXPECT_EQ(*parse_form(to_notation(*form)), *form);
    EXPECT_TRUE(section(*form).ok());
  }
}

TEST(Form, SectionHasTheSizesOfTheForm) {
  for (const char* text : {"lens:17x5x9", "round:12x20", "oval:13x18x5", "bar:20x4x10", "ring:54"}) {
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
  const std::string seed = "lens:17x5x9";
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

}  // namespace
}  // namespace evencount::form
