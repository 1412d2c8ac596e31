#include "strand/two_cords.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "layouts.hpp"
#include "strand/fitting.hpp"

namespace evencount::strand {
namespace {

using std::numbers::pi;

Strung necklace(int bands) {
  return strung_of("cords 2 of braided 0.6mm string fill sides with round-8, between gaps with round-8 (" +
                   std::to_string(bands) + " \"Big moon\"), fill sides with round-8");
}

TEST(TwoCords, ExtrasKeepUpWithTheCurve) {
  for (const int bands : {2, 5, 6, 9}) {
    const Strung strung = necklace(bands);
    for (const int gap : {1, 3, 6}) {
      Counts counts(strung.runs.size(), gap);
      counts.front() = counts.back() = 40;
      const auto curve = two_cords(strung, counts, necklace_lean);
      ASSERT_TRUE(curve);
      const double loop = static_cast<double>(strung_length_um(strung, counts)) / 1000;
      const double pitch = 11.5 + gap * 2.3, each = 11.7 * 2 * pi * pitch / loop * std::cos(30 * pi / 180);
      EXPECT_NEAR(curve->needed.mm(), (bands - 1) * each, 1e-6);
      // Every gap's own count, in order; from the middle each sum stays within half a bead.
      std::vector<int> given(static_cast<std::size_t>(bands - 1), 0);
      const auto pieces = pieces_of(strung, counts);
      int band = -1;
      std::vector<int> band_of(pieces.size(), -1);
      for (std::size_t i = 0; i < pieces.size(); ++i)
        if (strung.elements[static_cast<std::size_t>(pieces[i].element)].kind == ElementKind::form)
          band_of[i] = ++band;
      for (const OuterExtra& extra : curve->extras)
        given[static_cast<std::size_t>(band_of[static_cast<std::size_t>(extra.after)])] = extra.count;
      double sum = 0, needed = 0;
      const int middle = (bands - 1) / 2;
      for (int g = middle; g < bands - 1; ++g) {
        const bool halved = (bands - 1) % 2 == 1 && g == middle;
        sum += given[static_cast<std::size_t>(g)] * (halved ? 0.5 : 1);
        needed += each * (halved ? 0.5 : 1);
        EXPECT_LE(std::abs(sum * 2.3 - needed), 1.15 + 1e-9) << bands << " " << gap << " " << g;
      }
      for (std::size_t g = 0; g < given.size(); ++g) EXPECT_EQ(given[g], given[given.size() - 1 - g]);
    }
  }
}

// Where no bead lies between two bands there is none that the outer cord could have more of.
// Gaps of different lengths, the longest in the middle: each takes what its own turn needs.
TEST(TwoCords, UnequalGapsTakeTheirOwn) {
  const Strung strung = necklace(6);
  const Counts counts{40, 2, 4, 20, 4, 2, 40};
  ASSERT_EQ(counts.size(), strung.runs.size());
  const auto curve = two_cords(strung, counts, necklace_lean);
  ASSERT_TRUE(curve);
  const double loop = static_cast<double>(strung_length_um(strung, counts)) / 1000;
  const auto needed = [&](int beads) {
    return 11.7 * 2 * pi * (11.5 + beads * 2.3) / loop * std::cos(30 * pi / 180);
  };
  const OuterExtra* longest = nullptr;
  for (const OuterExtra& extra : curve->extras)
    if (!longest || extra.count > longest->count) longest = &extra;
  ASSERT_TRUE(longest);
  EXPECT_NEAR(longest->needed.mm(), needed(20), 1e-6);
  EXPECT_EQ(longest->count, std::lround(needed(20) / 2.3));
}

TEST(TwoCords, WithoutBeadsBetweenThereAreNoExtras) {
  const Strung strung = strung_of("cords 2 of braided 0.6mm string 5 \"Big moon\", fill sides with round-8");
  const auto curve = two_cords(strung, {60}, necklace_lean);
  ASSERT_TRUE(curve);
  EXPECT_GT(curve->needed, millimetres(5));
  EXPECT_TRUE(curve->extras.empty());
}

TEST(TwoCords, BraceletsNeedNone) {
  const Strung strung = strung_of(bracelet_text);
  const Counts counts(strung.runs.size(), 12);
  const auto curve = two_cords(strung, counts, bracelet_lean);
  ASSERT_TRUE(curve);
  EXPECT_TRUE(curve->extras.empty());
  EXPECT_EQ(curve->needed, Length{});
  EXPECT_EQ(curve->lean_without, 90);
  EXPECT_EQ(curve->faces.size(), 8u);
  for (const Drape& drape : curve->faces) EXPECT_EQ(drape.hanging, Hanging::held);
  // Laid flat, all the way round: the clasp holds the cords apart too.
  const auto flat = two_cords(strung, counts, 0);
  EXPECT_NEAR(flat->needed.mm(), 2 * pi * 9.6, 1e-6);
  EXPECT_LT(*flat->lean_with, 20);
  EXPECT_EQ(*flat->lean_without, 90);
}

TEST(TwoCords, LeanReadsBack) {
  for (double lean = 0; lean <= 90; lean += 7.5)
    EXPECT_NEAR(lean_of(millimetres(11.7 * 1.3 * std::cos(lean * pi / 180)), millimetres(11.7), 1.3), lean,
                1e-5);
  EXPECT_FALSE(two_cords(necklace(3), Counts(4, 1), 91));
  EXPECT_FALSE(two_cords(necklace(3), Counts(4, 1), std::nan("")));
}

TEST(TwoCords, FacesHang) {
  const auto hanging = [](const std::string& text) {
    return two_cords(strung_of(text), {}, 90)->faces[0].hanging;
  };
  EXPECT_EQ(hanging("cords 1 of wire 0.5mm string tube-band"), Hanging::turns);
  EXPECT_EQ(hanging("cords 1 of wire 0.5mm string moon"), Hanging::flips);
  EXPECT_EQ(hanging("cords 2 of wire 0.5mm string moon"), Hanging::held);
  EXPECT_EQ(hanging("cords 2 of wire 0.5mm string both tube-band"), Hanging::flips);
}

}  // namespace
}  // namespace evencount::strand
