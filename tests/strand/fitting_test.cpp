#include "strand/fitting.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "layouts.hpp"

namespace evencount::strand {
namespace {

Wearer wrist(double mm) {
  return {"", Worn::wrist, millimetres(mm), ordinary_ease};
}

/// (1) to (3), and that the counts make the length.
void expect_sound(const Strung& strung, const StrandFit& fit) {
  EXPECT_NEAR(static_cast<double>(strung_length_um(strung, fit.best.counts)) / 1000, fit.best.length.mm(),
              1e-9);
  EXPECT_NEAR((fit.wanted + fit.best.error).mm(), fit.best.length.mm(), 1e-9);
  if (fit.closes) {
    EXPECT_LE(std::abs(fit.best.error.mm()), fit.tolerance.mm() + 1e-9);
    EXPECT_TRUE(fit.changes.empty());
  } else {
    EXPECT_FALSE(fit.changes.empty());
  }
  if (fit.girth_by_chain) {
    EXPECT_LE(*fit.girth_by_chain, fit.girth_by_formula);
  }
  if (fit.shorter) {
    EXPECT_LE(fit.shorter->length, fit.wanted + millimetres(1e-9));
  }
  if (fit.longer) {
    EXPECT_GE(fit.longer->length, fit.wanted - millimetres(1e-9));
  }
}

TEST(Fitting, DemosCloseOnEveryWristOrSayWhy) {
  for (const std::string& text : {bracelet_text, necklace_text}) {
    const Strung strung = strung_of(text);
    int closed = 0;
    for (int mm = 140; mm <= 210; mm += 5) {
      const auto fit = fit_strand(strung, {.wearer = wrist(mm)});
      ASSERT_TRUE(fit) << message(fit.problem());
      expect_sound(strung, *fit);
      closed += fit->closes;
      if (!fit->closes) {
        EXPECT_EQ(fit->changes[0].remedy, Remedy::one_sided);
      }
    }
    EXPECT_EQ(closed, text == bracelet_text ? 15 : 10) << text;  // the necklace's halves change together
  }
}

TEST(Fitting, NecklaceInItsSizes) {
  const Strung strung = strung_of(necklace_text);
  const auto fits = fit_sizes(strung, necklace_sizes());
  ASSERT_TRUE(fits);
  for (const StrandFit& fit : *fits) {
    expect_sound(strung, fit);
    EXPECT_FALSE(fit.girth_by_chain);
    // Both halves change together, by two beads' widths: what is left can be half of that, twice the tolerance.
    EXPECT_LE(std::abs(fit.best.error.mm()), 2.3 + 1e-9);
  }
}

TEST(Fitting, TheFirstKindOfChangeCloses) {
  const Strung strung = strung_of(necklace_text);
  int mended = 0;
  for (int mm = 300; mm < 460; mm += 7) {
    const auto fit = fit_strand(strung, {.wearer = {"", Worn::length, millimetres(mm), {}}});
    ASSERT_TRUE(fit);
    if (fit->closes) continue;
    ASSERT_EQ(fit->changes[0].remedy, Remedy::one_sided);
    const Strung changed = strung_of(std::string(necklace_text) + ", round-8");
    const auto again = fit_strand(changed, {.wearer = fit->wearer});
    EXPECT_TRUE(again->closes) << mm;
    ++mended;
  }
  EXPECT_GT(mended, 5);
}

TEST(Fitting, SaysHowManyMoreAreNeeded) {
  Strung strung =
      strung_of("cords 1 of elastic 0.8mm on hand round-8 60 string 4 tube-band, fill with round-8");
  const auto few = fit_strand(strung, {.wearer = {"", Worn::length, millimetres(270), {}}});
  ASSERT_TRUE(few);
  expect_sound(strung, *few);
  EXPECT_FALSE(few->closes);
  EXPECT_FALSE(few->longer);
  ASSERT_EQ(few->changes[0].remedy, Remedy::more_on_hand);
  EXPECT_EQ(few->changes[0].count, 23);  // 83 x 2.3 + 80 = 270.9
  strung.on_hand[0].second += 23;
  EXPECT_TRUE(fit_strand(strung, {.wearer = few->wearer})->closes);
  strung.on_hand[0].second = 5;
  strung.groups[0].from = 10;
  const auto none = fit_strand(strung, {.wearer = few->wearer});
  ASSERT_TRUE(none);
  EXPECT_FALSE(none->closes);
  EXPECT_FALSE(none->shorter || none->longer);
  EXPECT_EQ(none->best.error, none->best.length - none->wanted);
  EXPECT_EQ(none->changes[0].remedy, Remedy::more_on_hand);
}

TEST(Fitting, SaysWhichLimitsAndWhatToTakeAway) {
  Strung strung = strung_of("cords 1 of elastic 0.8mm string 4 tube-band, fill gap with round-8 to 20");
  auto fit = fit_strand(strung, {.wearer = {"", Worn::length, millimetres(270), {}}});
  ASSERT_FALSE(fit->closes);
  EXPECT_EQ(fit->changes[0], (Change{Remedy::other_limits, "gap", 83, {}}));
  strung = strung_of("cords 1 of elastic 0.8mm string 6 tube-band, fill gap with round-8");
  fit = fit_strand(strung, {.wearer = {"", Worn::length, millimetres(100), {}}});
  ASSERT_FALSE(fit->closes);
  EXPECT_EQ(fit->changes[0], (Change{Remedy::take_away, "", 0, millimetres(20)}));
  fit =
      fit_strand(strung, {.wearer = {"", Worn::length, millimetres(121), {}}, .tolerance = millimetres(0.5)});
  EXPECT_EQ(fit->changes[0], (Change{Remedy::finer_bead, "gap", 1, millimetres(1)}));
  for (const Change& change : fit->changes) EXPECT_FALSE(describe(change).empty());
}

TEST(Fitting, WithoutRunsHalfAMillimetreIsNear) {
  const auto fit = fit_strand(strung_of("cords 1 of elastic 0.8mm string 10 tube-band"),
                              {.wearer = {"", Worn::length, millimetres(200.4), {}}});
  ASSERT_TRUE(fit);
  EXPECT_EQ(fit->tolerance, millimetres(0.5));
  EXPECT_TRUE(fit->closes);
}

// What rigid parts lose with one count asks for another, which loses what asks for the first: it ends all the same, within a bead.
TEST(Fitting, CountsThatGoBackAndForthEnd) {
  const Strung strung = strung_of("cords 1 of elastic 0.8mm bead big 14mm string big, fill with big");
  const auto fit = fit_strand(strung, {.wearer = {"", Worn::wrist, millimetres(136.4), millimetres(5)},
                                       .allow_for_chain = true});
  ASSERT_TRUE(fit);
  EXPECT_LE(std::abs(fit->best.error.mm()), 14);
}

// What is too long even without its runs says by how much, whatever else would help.
TEST(Fitting, WhatIsTooLongSaysByHowMuch) {
  const Strung strung = strung_of("cords 1 of elastic 0.8mm string 10 tube-band, fill gap with round-8");
  int too_long = 0, with_ease = 0;
  for (int mm = 120; mm < 160; ++mm) {
    const auto fit = fit_strand(strung, {.wearer = wrist(mm), .tolerance = millimetres(0.1)});
    ASSERT_TRUE(fit);
    const bool expected = fit->wanted < millimetres(200);
    const auto found = std::find_if(fit->changes.begin(), fit->changes.end(),
                                    [](const Change& c) { return c.remedy == Remedy::take_away; });
    ASSERT_EQ(found != fit->changes.end(), expected) << mm;
    if (!expected) continue;
    ++too_long;
    EXPECT_NEAR(found->length.mm(), 200 - fit->wanted.mm(), 1e-3);
    with_ease += fit->changes.back().remedy == Remedy::other_ease;
  }
  EXPECT_GT(too_long, 5);
  EXPECT_GT(with_ease, 2);
}

TEST(Fitting, EveryChangeIsSaid) {
  const auto said = [](Remedy remedy, int count, double mm) {
    return describe({remedy, "gap", count, millimetres(mm)});
  };
  EXPECT_EQ(said(Remedy::more_on_hand, 23, 0), "have 23 more of gap on hand");
  EXPECT_EQ(said(Remedy::other_limits, 83, 0), "let gap have 83 units in all");
  EXPECT_EQ(said(Remedy::one_sided, 1, 0), "string one more of gap in one half only");
  EXPECT_EQ(said(Remedy::finer_bead, 1, 1.5), "string a spacer 1.5 mm wide into gap");
  EXPECT_EQ(said(Remedy::finer_bead, 2, 1.5), "string a spacer 1.5 mm wide into gap in each half");
  EXPECT_EQ(said(Remedy::take_away, 0, 20), "take away 20 mm of what is fixed");
  EXPECT_EQ(said(Remedy::take_away, 0, -20), "string 20 mm more of what is fixed");
  EXPECT_EQ(said(Remedy::other_ease, 0, 4), "allow 4 mm more ease");
  EXPECT_EQ(said(Remedy::other_ease, 0, -4), "allow 4 mm less ease");
}

// A finished length is a length: no chain lies round anything.
TEST(Fitting, AFinishedLengthAllowsForNoChain) {
  const Strung strung = strung_of(necklace_text);
  const Wearer wearer{"", Worn::length, millimetres(450), {}};
  const auto plain = fit_strand(strung, {.wearer = wearer});
  const auto allowed = fit_strand(strung, {.wearer = wearer, .allow_for_chain = true});
  ASSERT_TRUE(plain && allowed);
  EXPECT_FALSE(allowed->girth_by_chain);
  EXPECT_EQ(allowed->best.counts, plain->best.counts);
}

TEST(Fitting, OffersNoEaseThatNobodyWears) {
  const Strung strung = strung_of("cords 1 of elastic 0.8mm string 10 tube-band");
  const auto far = fit_strand(strung, {.wearer = wrist(120)});
  EXPECT_EQ(far->changes.back(), (Change{Remedy::take_away, "", 0, far->best.error}));
  const auto near = fit_strand(strung, {.wearer = wrist(147)});
  ASSERT_FALSE(near->closes);
  EXPECT_LT(std::abs(near->best.error.mm()), 20);
  EXPECT_EQ(near->changes.back().remedy == Remedy::other_ease,
            (near->wearer.ease + near->best.error) >= Length{} &&
                near->wearer.ease + near->best.error <= loose_ease);
  const auto short_one = fit_strand(strung, {.wearer = {"", Worn::length, millimetres(260), {}}});
  EXPECT_EQ(describe(short_one->changes[0]), "string 60 mm more of what is fixed");
}

TEST(Fitting, AllowsForTheChain) {
  const Strung strung = strung_of("cords 1 of elastic 0.8mm string between with round-11 (7 tube-band)");
  const auto plain_fit = fit_strand(strung, {.wearer = wrist(190)});
  const auto allowed = fit_strand(strung, {.wearer = wrist(190), .allow_for_chain = true});
  ASSERT_TRUE(plain_fit && allowed && plain_fit->girth_by_chain && allowed->girth_by_chain);
  EXPECT_LT(*plain_fit->girth_by_chain, millimetres(207));  // seven straight tubes lose a lot
  EXPECT_NEAR(allowed->girth_by_chain->mm(), 210, 3);
}

TEST(Fitting, ExtendersLetOut) {
  const Strung strung = strung_of(
      "cords 1 of wire 0.5mm extender tail 12mm chain 40mm crimp c 2mm close with tail string c, fill with "
      "round-8, c");
  const auto fit = fit_strand(strung, {.wearer = {"", Worn::length, millimetres(180), {}}});
  EXPECT_NEAR((fit->worn_up_to - fit->best.length).mm(), 40, 1e-9);
}

}  // namespace
}  // namespace evencount::strand
