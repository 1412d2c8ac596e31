#include "strand/placing.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "strand/layouts.hpp"

namespace evencount::strand {
namespace {

double dot(Place3 a, Place3 b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

struct Fitted {
  Strung strung;
  StrandFit fit;
  TwoCords curve;
};

Fitted fitted(const std::string& text, const Wearer& wearer, double lean) {
  const Strung strung = strung_of(text);
  const auto fit = fit_strand(strung, {.wearer = wearer});
  EXPECT_TRUE(fit);
  return {strung, *fit, *two_cords(strung, fit->best.counts, lean)};
}

const Wearer wrist{"M", Worn::wrist, millimetres(165), millimetres(20)};
const Wearer long_one{"45 cm", Worn::length, millimetres(450), {}};

void expect_sound(const Fitted& one, const PlacedStrand& placed) {
  std::vector<std::int64_t> count(one.strung.elements.size(), 0),
      used = use_of(one.strung, one.fit.best.counts);
  for (const OuterExtra& extra : one.curve.extras)
    used[static_cast<std::size_t>(extra.element)] += extra.count;
  for (const PlacedThing& thing : placed.things) {
    ++count[static_cast<std::size_t>(thing.element)];
    EXPECT_NEAR(dot(thing.along, thing.along), 1, 1e-9);
    EXPECT_NEAR(dot(thing.outwards, thing.outwards), 1, 1e-9);
    EXPECT_NEAR(dot(thing.along, thing.outwards), 0, 1e-9);
  }
  EXPECT_EQ(count, used);
  EXPECT_EQ(placed.cords.size(), static_cast<std::size_t>(one.strung.cords));
}

TEST(Placing, FlatLiesInARow) {
  const Fitted one = fitted(bracelet_text, wrist, bracelet_lean);
  const PlacedStrand flat = placed_flat(one.strung, one.fit, one.curve);
  expect_sound(one, flat);
  double inner = 0, before = 1e9;
  for (const PlacedThing& thing : flat.things) {
    if (thing.cord == 2) continue;
    inner += thing.length.mm();
    EXPECT_LT(thing.middle.x, before);  // from left to right is along -x
    before = thing.middle.x;
    EXPECT_GE(thing.middle.z, 0);  // the inner cord above
  }
  EXPECT_NEAR(inner, one.fit.best.length.mm(), 1e-3);
}

TEST(Placing, OnAWristTheMiddleIsInFrontAndFacesLookOutwards) {
  const Fitted one = fitted(bracelet_text, wrist, bracelet_lean);
  const auto worn = placed_worn(one.strung, one.fit, one.curve, bracelet_lean);
  ASSERT_TRUE(worn);
  expect_sound(one, *worn);
  EXPECT_LT(worn->things.back().middle.y, -15);  // the clasp at the back
  for (const PlacedThing& thing : worn->things) {
    EXPECT_GT(dot(thing.middle, thing.outwards), 0);
    EXPECT_NEAR(thing.outwards.z, 0, 1e-9);
  }
  // The two cords run side by side and are equally long.
  const auto length = [](const std::vector<Place3>& line) {
    double sum = 0;
    for (std::size_t i = 1; i < line.size(); ++i)
      sum += std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y, line[i].z - line[i - 1].z);
    return sum;
  };
  EXPECT_NEAR(length(worn->cords[0]), length(worn->cords[1]), 1e-9);
}

TEST(Placing, AFinishedLengthHangsInARing) {
  const Fitted one = fitted(necklace_text, long_one, necklace_lean);
  ASSERT_FALSE(one.curve.extras.empty());
  const auto worn = placed_worn(one.strung, one.fit, one.curve, necklace_lean);
  ASSERT_TRUE(worn);
  expect_sound(one, *worn);
  const double radius = one.fit.best.length.mm() / (2 * std::numbers::pi);
  int on_outer = 0;
  for (const PlacedThing& thing : worn->things) {
    const double from = std::hypot(thing.middle.x, thing.middle.z);
    if (thing.cord == 0) {
      EXPECT_NEAR(from, radius, 1e-6);
    }
    if (thing.cord == 2) {
      EXPECT_GE(from, radius - 1e-3);
      ++on_outer;
    }
    EXPECT_NEAR(thing.outwards.y, std::cos(necklace_lean * std::numbers::pi / 180), 1e-9);
  }
  EXPECT_GT(on_outer, 0);
  EXPECT_NEAR(worn->things.back().middle.z, radius, 1e-6);  // the closing above
  const auto seen_from_front = [&](const PlacedThing& thing) { return thing.middle.z < -radius + 1; };
  EXPECT_TRUE(std::any_of(worn->things.begin(), worn->things.end(), seen_from_front));
}

TEST(Placing, OneCordThatBecomesTwo) {
  const Fitted one = fitted(R"(cords 2 of braided 0.6mm
    joiner y 6mm holes 2 apart 9.6mm hole 1.2mm
    clasp hook 15mm hole 2mm
    close with hook
    string fill sides with round-8, y, fill inner with round-8, moon, fill inner with round-8, y, fill sides with round-8)",
                            wrist, bracelet_lean);
  const auto worn = placed_worn(one.strung, one.fit, one.curve, bracelet_lean);
  ASSERT_TRUE(worn);
  expect_sound(one, *worn);
  EXPECT_GT(worn->cords[0].size(), worn->cords[1].size());
}

}  // namespace
}  // namespace evencount::strand
