#include "strand/cord.hpp"

#include <gtest/gtest.h>

#include <numeric>

#include "layouts.hpp"
#include "strand/cutting.hpp"
#include "strand/fitting.hpp"

namespace evencount::strand {
namespace {

// "How to String Beads with Beading Wire", thesprucecraftsaj.pages.dev/posts/how-to-string-beads-with-beading-wire: a 16 in necklace with
// a 0.75 in clasp has 15.25 in strung and takes 25.25 in of wire.
TEST(Cord, SixteenInchNecklaceOnWire) {
  const Strung strung = strung_of(
      "cords 1 of wire 0.5mm clasp toggle 0.75in crimp tube 2mm bead quarter 0.25in close with toggle "
      "string tube, fill with quarter, tube");
  const auto fit = fit_strand(strung, {.wearer = {"16 in", Worn::length, inches(16), {}}});
  ASSERT_TRUE(fit);
  EXPECT_TRUE(fit->closes);
  const auto cut = cords_to_cut(strung, fit->best.counts);
  ASSERT_TRUE(cut);
  ASSERT_EQ(cut->size(), 1u);
  EXPECT_NEAR((*cut)[0].length.strung.inches(), 15.25, fit->tolerance.inches());
  EXPECT_EQ(cord_to_cut({CordKind::wire, millimetres(0.5)}, inches(15.25), EndFinish::crimped)->cut,
            inches(25.25));
}

TEST(Cord, CutIsStrungAndAllowances) {
  for (const CordKind kind : {CordKind::elastic, CordKind::wire, CordKind::braided, CordKind::leather})
    for (const EndFinish finish : {EndFinish::crimped, EndFinish::knotted})
      for (const int knots : {0, 3}) {
        const Cord cord{kind, millimetres(0.8)};
        const auto length = cord_to_cut(cord, millimetres(190), finish, knots);
        ASSERT_TRUE(length);
        double sum = 190;
        for (const Allowance& allowance : length->allowances) {
          EXPECT_FALSE(allowance.source.empty());
          sum += allowance.count * allowance.each.mm();
        }
        EXPECT_NEAR(length->cut.mm(), sum, 1e-9);
        EXPECT_NEAR(cord_to_cut(cord, millimetres(200), finish, knots)->cut.mm(), sum + 10, 1e-9);
        EXPECT_EQ(find_cord_kind(cord_kind_name(kind)), kind);
      }
}

// Published: at least 4 cm of tail at each end of elastic.
TEST(Cord, ElasticHasItsTails) {
  const auto length =
      cord_to_cut({CordKind::elastic, millimetres(0.8)}, millimetres(190), EndFinish::knotted);
  EXPECT_GE(length->cut, millimetres(190 + 2 * 40));
  EXPECT_LE(length->cut, millimetres(190 + 2 * 40 + 20));
}

// Braided: 20 cm at each end, common practice, no source; leather: 10 cm, from memory.
TEST(Cord, OtherCordsHaveTheirTails) {
  for (const auto& [kind, tail_mm] : {std::pair{CordKind::braided, 200.0}, {CordKind::leather, 100.0}}) {
    const auto length = cord_to_cut({kind, millimetres(0.8)}, millimetres(190), EndFinish::knotted);
    const auto tails = std::find_if(length->allowances.begin(), length->allowances.end(),
                                    [](const Allowance& a) { return a.what == "tails"; });
    ASSERT_NE(tails, length->allowances.end());
    EXPECT_EQ(tails->count, 2);
    EXPECT_EQ(tails->each, millimetres(tail_mm));
  }
}

TEST(Cord, StretchesBetweenJoiners) {
  const Strung strung = strung_of(
      "cords 2 of braided 0.5mm joiner fork 6mm clasp hook 10mm bead a 5mm knot k 1.5mm close with hook "
      "string 4 a, fork, 3 a, k, 3 a, fork, 4 a");
  const auto cut = cords_to_cut(strung, {}, millimetres(4));
  ASSERT_TRUE(cut);
  ASSERT_EQ(cut->size(), 4u);  // one, two, one
  EXPECT_EQ((*cut)[0].length.strung, millimetres(20));
  EXPECT_EQ((*cut)[1].length.strung, millimetres(31.5));
  EXPECT_EQ((*cut)[2].length.strung, millimetres(35.5));
  EXPECT_EQ((*cut)[2].cord, 2);
  const auto& allowances = (*cut)[1].length.allowances;
  EXPECT_EQ(
      std::accumulate(allowances.begin(), allowances.end(), 0,
                      [](int sum, const Allowance& a) { return sum + (a.what == "knots" ? a.count : 0); }),
      3);
}

TEST(Cord, Refuses) {
  EXPECT_FALSE(cord_to_cut({}, {}, EndFinish::knotted));
  EXPECT_FALSE(cord_to_cut({CordKind::wire, {}}, millimetres(100), EndFinish::knotted));
  EXPECT_FALSE(cord_to_cut({CordKind::wire, millimetres(11)}, millimetres(100), EndFinish::knotted));
  EXPECT_FALSE(cord_to_cut({}, millimetres(100), EndFinish::knotted, -1));
}

}  // namespace
}  // namespace evencount::strand
