#include "materials/supplies.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <cstdlib>
#include <limits>

namespace evencount::materials {
namespace {

// The same cases in every run.
const int seeded = setenv("RC_PARAMS", "seed=1108 max_success=300", 0);

BeadNeed need(std::int64_t count, double per_gram) {
  return {"A", "ink", "11/0 cylinder bead", count, per_gram, {}, {}};
}

BeadNeed packed(std::int64_t count, double per_gram, double pack_grams, std::int64_t minor) {
  BeadNeed n = need(count, per_gram);
  n.pack_mass = grams(pack_grams);
  n.pack_price = Money{minor, "EUR"};
  return n;
}

std::int64_t tenths_of(Mass mass) {
  return std::llround(10 * mass.grams());
}

RC_GTEST_PROP(supplies, counts_scale_with_the_kits, ()) {
  const int count = *rc::gen::inRange(1, 100'000);
  const int kits = *rc::gen::inRange(1, 1'000);
  const auto one = bead_supplies({need(count, 195)}, 1, 0.1);
  const auto many = bead_supplies({need(count, 195)}, kits, 0.1);
  RC_ASSERT(one.ok() && many.ok());
  RC_ASSERT(one->beads[0].count == count);
  RC_ASSERT(many->beads[0].count == std::int64_t{kits} * count);
  RC_ASSERT(tenths_of(many->beads[0].mass) <= kits * tenths_of(one->beads[0].mass));
}

// In whole numbers: beads per gram and the share added are whole hundredths, so that the weight can be compared
// without rounding.
RC_GTEST_PROP(supplies, the_mass_covers_and_a_tenth_less_does_not, ()) {
  const std::int64_t count = *rc::gen::inRange<std::int64_t>(1, 1'000'000);
  const std::int64_t per_gram = *rc::gen::inRange<std::int64_t>(1, 400);
  const std::int64_t percent = *rc::gen::inRange<std::int64_t>(0, 101);
  const auto supplies =
      bead_supplies({need(count, static_cast<double>(per_gram))}, 1, static_cast<double>(percent) / 100);
  RC_ASSERT(supplies.ok());
  const std::int64_t tenths = tenths_of(supplies->beads[0].mass);
  RC_ASSERT(supplies->beads[0].mass == grams(static_cast<double>(tenths) / 10));
  // tenths / 10 grams * per_gram beads to the gram >= count * (100 + percent) / 100
  RC_ASSERT(10 * tenths * per_gram >= count * (100 + percent));
  RC_ASSERT(10 * (tenths - 1) * per_gram < count * (100 + percent));
}

RC_GTEST_PROP(supplies, packs_cover_and_one_fewer_does_not, ()) {
  const std::int64_t count = *rc::gen::inRange<std::int64_t>(1, 1'000'000);
  const std::int64_t pack_mg = *rc::gen::inRange<std::int64_t>(1, 100'000);
  const std::int64_t price = *rc::gen::inRange<std::int64_t>(0, 100'000);
  const auto supplies =
      bead_supplies({packed(count, 195, static_cast<double>(pack_mg) / 1000, price)}, 3, 0.1);
  RC_ASSERT(supplies.ok());
  const BeadSupply& bead = supplies->beads[0];
  const std::int64_t mass_mg = 100 * tenths_of(bead.mass);
  RC_ASSERT(*bead.packs * pack_mg >= mass_mg);
  RC_ASSERT((*bead.packs - 1) * pack_mg < mass_mg);
  RC_ASSERT(bead.cost->minor == *bead.packs * price);
  RC_ASSERT(supplies->total == bead.cost);
}

RC_GTEST_PROP(supplies, nothing_is_lost_between_needs_and_supplies, ()) {
  const auto counts = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 50));
  std::vector<BeadNeed> needs;
  std::int64_t sum = 0;
  for (const int count : counts) {
    needs.push_back(need(count, 112));
    sum += count;
  }
  const auto supplies = bead_supplies(needs, 7, 0);
  RC_ASSERT(supplies.ok());
  std::int64_t supplied = 0;
  for (const BeadSupply& bead : supplies->beads) {
    RC_ASSERT(bead.count > 0);
    supplied += bead.count;
  }
  RC_ASSERT(supplied == 7 * sum);
}

TEST(supplies, weights_that_come_out_even_stay_even) {
  // 100 beads and a tenth more are 110: 1.0 g at 110 to the gram, although 1.1 is no binary fraction.
  EXPECT_EQ(tenths_of(bead_supplies({need(100, 110)}, 1, 0.1)->beads[0].mass), 10);
  // 300 and a tenth more, at 100 to the gram, come to 33.00000000000001 tenths in binary.
  EXPECT_EQ(tenths_of(bead_supplies({need(300, 100)}, 1, 0.1)->beads[0].mass), 33);
  EXPECT_EQ(tenths_of(bead_supplies({need(101, 110)}, 1, 0.1)->beads[0].mass), 11);
  EXPECT_EQ(tenths_of(bead_supplies({need(1, 195)}, 1, 0)->beads[0].mass), 1);
  // Three packs of 0.7 g are 2.1 g, although 3 * 0.7 < 2.1 in binary.
  EXPECT_EQ(bead_supplies({packed(210, 100, 0.7, 5)}, 1, 0)->beads[0].packs, 3);
}

RC_GTEST_PROP(supplies, weights_that_come_out_even_stay_even_however_great, ()) {
  const std::int64_t tenths = *rc::gen::inRange<std::int64_t>(1, 10'000'000);
  const std::int64_t k = *rc::gen::inRange<std::int64_t>(1, 37);
  // So many times k beads and a tenth more, at 11 k to the gram.
  const auto mass = weigh({{tenths * k, static_cast<double>(11 * k), 0.1}});
  RC_ASSERT(mass.ok());
  RC_ASSERT(tenths_of(*mass) == tenths);
}

TEST(supplies, portions_are_rounded_once_together) {
  // 20 beads are 0.1026 g and 0.2 g when rounded; twice as many in two projects are 0.3 g, not 0.4.
  EXPECT_EQ(tenths_of(*weigh({{20, 195, 0}})), 2);
  EXPECT_EQ(tenths_of(*weigh({{20, 195, 0}, {20, 195, 0}})), 3);
  EXPECT_EQ(tenths_of(*weigh({{100, 110, 0.1}, {50, 100, 0}})), 15);
  EXPECT_EQ(tenths_of(*weigh({})), 0);
  EXPECT_EQ(weigh({{1, 0, 0}}).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(weigh({{1, 195, 1.5}}).problem().code, ProblemCode::out_of_range);
}

TEST(supplies, an_allowance_in_whole_beads_covers) {
  EXPECT_EQ(with_allowance(100, 0.1), 110);  // although 1.1 is no binary fraction
  EXPECT_EQ(with_allowance(101, 0.1), 112);
  EXPECT_EQ(with_allowance(0, 0.1), 0);
}

TEST(supplies, a_bead_that_is_not_used_is_left_out) {
  BeadNeed unused = need(0, 195);
  unused.letter = "B";
  const auto supplies = bead_supplies({unused, packed(10, 195, 5, 450)}, 2, 0.1);
  ASSERT_TRUE(supplies.ok());
  ASSERT_EQ(supplies->beads.size(), 1u);
  EXPECT_EQ(supplies->beads[0].letter, "A");
  EXPECT_EQ(supplies->total, (Money{450, "EUR"}));
  const auto none = bead_supplies({unused}, 2, 0.1);
  EXPECT_TRUE(none->beads.empty());
  EXPECT_EQ(none->total, std::nullopt);
}

TEST(supplies, the_total_needs_every_cost_in_one_currency) {
  BeadNeed other = packed(10, 195, 5, 450);
  other.pack_price->currency = "CHF";
  EXPECT_EQ(bead_supplies({packed(10, 195, 5, 450), other}, 1, 0)->total, std::nullopt);
  EXPECT_EQ(bead_supplies({packed(10, 195, 5, 450), need(1, 195)}, 1, 0)->total, std::nullopt);
  EXPECT_EQ(bead_supplies({packed(10, 195, 5, 450), packed(2000, 195, 5, 450)}, 1, 0)->total,
            (Money{450 + 3 * 450, "EUR"}));
}

TEST(supplies, a_refusal_says_what_was_found_and_expected) {
  const auto said = [](const BeadNeed& n, int kits = 1, double allowance = 0) {
    const auto supplies = bead_supplies({n}, kits, allowance);
    return supplies ? std::string("nothing") : message(supplies.problem());
  };
  EXPECT_EQ(said(need(-1, 195)), "bead A: found -1 beads, expected from 0 to 1000000000000");
  EXPECT_EQ(said(need(most_beads_a_piece + 1, 195)),
            "bead A: found 1000000000001 beads, expected from 0 to 1000000000000");
  EXPECT_EQ(said(need(most_beads_a_piece, 1000)), "nothing");  // exactly the heaviest
  EXPECT_EQ(said(need(1, 0)), "bead A: found 0 beads per gram, expected a number above 0");
  EXPECT_EQ(said(need(1, -1.23456789)), "bead A: found -1.234568 beads per gram, expected a number above 0");
  EXPECT_EQ(said(packed(1, 195, 0.00045678912, 1)), "bead A: found a pack of 0.000457 g, expected a pack of at least 0.001 g");
  EXPECT_EQ(said(packed(1, 195, 0.001, 0)), "nothing");
  EXPECT_EQ(said(packed(1, 195, 1e9, 1)), "nothing");
  EXPECT_EQ(said(packed(1, 195, 2e9, 1)), "bead A: found a pack of 2000000000 g, expected a pack of at least 0.001 g");
  EXPECT_EQ(said(packed(1, 195, 1, -5)), "bead A: found a pack at -0.05 EUR, expected a price of 0 or more");
  EXPECT_EQ(said(packed(1'000'000, 1, 1, std::int64_t{1} << 50)),
            "bead A: found 1000000 packs at 11258999068426.24 EUR, expected a cost that can be written down");
  EXPECT_EQ(said(need(1, 195), 0), "kits: found 0, expected from 1 to 100000");
  EXPECT_EQ(said(need(1, 195), 100'001), "kits: found 100001, expected from 1 to 100000");
  EXPECT_EQ(said(need(1, 195), 1, 1.00000051), "allowance: found 1.000001, expected from 0 to 1");
  EXPECT_EQ(message(weigh({{-1, 1.23456789, 0.12345678}}).problem()),
            "found -1 beads, 1.234568 per gram, a share of 0.123457, expected counts from 0, a weight above 0 and an allowance from 0 to 1");
  EXPECT_EQ(message(weigh({{most_beads_a_piece, 999, 0}}).problem()),
            "found 1001001001 g, expected at most a thousand tonnes of one bead");
  BeadNeed dear = packed(1, 195, 1, std::numeric_limits<std::int64_t>::max());
  EXPECT_EQ(message(bead_supplies({dear, dear}, 1, 0).problem()),
            "total: found more than can be written down, expected a smaller sum");
}

TEST(supplies, what_makes_no_sense_is_out_of_range) {
  const double nan = std::nan("");
  const auto refuses = [](const BeadNeed& n, int kits, double allowance, std::string_view where) {
    const auto supplies = bead_supplies({n}, kits, allowance);
    ASSERT_FALSE(supplies.ok());
    EXPECT_EQ(supplies.problem().code, ProblemCode::out_of_range);
    EXPECT_EQ(supplies.problem().where, where);
  };
  refuses(need(1, 195), 0, 0.1, "kits");
  refuses(need(1, 195), most_kits + 1, 0.1, "kits");
  refuses(need(1, 195), 1, -0.1, "allowance");
  refuses(need(1, 195), 1, 1.01, "allowance");
  refuses(need(1, 195), 1, nan, "allowance");
  refuses(need(-1, 195), 1, 0.1, "bead A");
  refuses(need(1, 0), 1, 0.1, "bead A");
  refuses(need(1, nan), 1, 0.1, "bead A");
  refuses(need(1, 1e-300), 1, 0.1, "bead A");
  refuses(packed(1, 195, 0, 1), 1, 0.1, "bead A");
  refuses(packed(1, 195, nan, 1), 1, 0.1, "bead A");
  refuses(packed(1, 195, 1, -1), 1, 0.1, "bead A");
  refuses(packed(1'000'000, 195, 0.001, std::int64_t{1} << 60), 1, 0.1, "bead A");
  EXPECT_TRUE(bead_supplies({need(1, 195)}, most_kits, 1).ok());
}

}  // namespace
}  // namespace evencount::materials
