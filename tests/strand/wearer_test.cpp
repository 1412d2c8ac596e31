#include "strand/wearer.hpp"

#include <gtest/gtest.h>

#include <numbers>

namespace evencount::strand {
namespace {

Wearer wrist(double mm, double ease_mm) {
  return {"", Worn::wrist, millimetres(mm), millimetres(ease_mm)};
}

// Bracelet length = wrist + ease + pi x thickness: common practice ("Bracelet Length versus Wrist Size",
// jewelsinfiber.blogspot.com/2016/05/bracelet-length-versus-wrist-size.html; "Calculating length of metal for bangles",
// orchid.ganoksin.com/t/calculating-length-of-metal-for-bangles/49084); the figures are ours.
TEST(Wearer, BraceletFormula) {
  const auto length = length_for({"", Worn::wrist, inches(7), inches(0.5)}, millimetres(5));
  ASSERT_TRUE(length);
  EXPECT_NEAR(length->inches(), 8.12, 0.005);
}

// "Bracelet Size to Wrist Size", sizelist.com/jewelry/bracelet-size-wrist/: a wrist of 17 cm with an ordinary ease of 2 cm, 19 cm.
TEST(Wearer, OrdinaryEase) {
  EXPECT_EQ(length_for(wrist(170, ordinary_ease.mm()), {}).value(), centimetres(19));
  EXPECT_LT(snug_ease, ordinary_ease);
  EXPECT_LT(ordinary_ease, loose_ease);
}

TEST(Wearer, EachMillimetreCounts) {
  const Length length = length_for(wrist(170, 15), millimetres(6)).value();
  EXPECT_NEAR((length_for(wrist(171, 15), millimetres(6)).value() - length).mm(), 1, 1e-9);
  EXPECT_NEAR((length_for(wrist(170, 16), millimetres(6)).value() - length).mm(), 1, 1e-9);
  EXPECT_NEAR((length_for(wrist(170, 15), millimetres(7)).value() - length).mm(), std::numbers::pi, 1e-9);
  EXPECT_NEAR(inside_of(length, millimetres(6)).mm(), 185, 1e-9);
  EXPECT_EQ(length_for({"", Worn::length, millimetres(450), {}}, millimetres(8)).value(), millimetres(450));
}

TEST(Wearer, RefusesWhatNobodyWears) {
  for (const auto& [measure, ease, thickness] : {std::tuple{49.0, 10.0, 5.0},
                                                 {2001.0, 10.0, 5.0},
                                                 {170.0, -1.0, 5.0},
                                                 {170.0, 201.0, 5.0},
                                                 {170.0, 10.0, -1.0}}) {
    const auto length = length_for(wrist(measure, ease), millimetres(thickness));
    ASSERT_FALSE(length);
    EXPECT_EQ(length.problem().code, ProblemCode::out_of_range);
  }
}

TEST(Wearer, TablesGrow) {
  for (const auto table : {wrist_sizes(), necklace_sizes()})
    for (std::size_t i = 1; i < table.size(); ++i) EXPECT_LT(table[i - 1].measure, table[i].measure);
  for (const Worn worn : {Worn::wrist, Worn::neck, Worn::length})
    EXPECT_EQ(parse_worn(worn_name(worn)).value(), worn);
  EXPECT_FALSE(parse_worn("ankle"));
}

}  // namespace
}  // namespace evencount::strand
