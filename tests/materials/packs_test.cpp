#include "materials/packs.hpp"

#include <gtest/gtest.h>

#include <random>

#include "oracle/packs_oracle.hpp"

namespace evencount::materials {
namespace {

PackOffer offer(std::int64_t amount, std::optional<std::int64_t> minor = {},
                const std::string& currency = "EUR") {
  PackOffer made;
  made.amount = amount;
  if (minor) made.price = Money{*minor, currency};
  return made;
}

/// 0 to below `n`. Not std::uniform_int_distribution, whose numbers differ between libraries.
std::int64_t below(std::mt19937& random, std::int64_t n) {
  return static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(n));
}

struct Case {
  std::int64_t need = 0;
  std::vector<PackOffer> offers;
};

Case small_case(std::mt19937& random) {
  Case made{1 + below(random, 110), {}};
  const bool priced = below(random, 4) > 0, close = below(random, 3) == 0;
  for (std::int64_t i = 1 + below(random, 6); i > 0; --i) {
    const std::int64_t amount = 2 + below(random, 25);
    // Free ones, dear ones, and many of nearly the same value.
    const std::int64_t price = close ? 3 * amount + below(random, 3) : below(random, 40);
    made.offers.push_back(priced ? offer(amount, price) : offer(amount));
  }
  return made;
}

oracle::Bought counted(const PackChoice& choice, const std::vector<PackOffer>& offers) {
  oracle::Bought bought;
  for (const PackCount& count : choice.packs) {
    const PackOffer& taken = offers[count.offer];
    bought.cost += count.packs * (taken.price ? taken.price->minor : taken.amount);
    bought.amount += count.packs * taken.amount;
    bought.packs += count.packs;
    bought.positions += count.packs * static_cast<std::int64_t>(count.offer);
  }
  return bought;
}

void expect_covered_with_none_to_spare(const PackChoice& choice, const Case& made) {
  const oracle::Bought bought = counted(choice, made.offers);
  EXPECT_EQ(choice.bought, bought.amount);
  EXPECT_EQ(choice.left_over, bought.amount - made.need);
  EXPECT_GE(choice.left_over, 0);
  for (std::size_t i = 1; i < choice.packs.size(); ++i)
    EXPECT_LT(choice.packs[i - 1].offer, choice.packs[i].offer) << "by position, each once";
  for (const PackCount& count : choice.packs) {
    EXPECT_GT(count.packs, 0);
    EXPECT_LT(choice.bought - made.offers[count.offer].amount, made.need) << "a pack to spare";
  }
}

TEST(packs, cover_the_need_and_are_the_cheapest_of_all_sets) {
  std::mt19937 random(1608);
  for (int round = 0; round < 600; ++round) {
    const Case made = small_case(random);
    SCOPED_TRACE(round);
    const auto choice = cheapest_packs(made.need, made.offers);
    ASSERT_TRUE(choice.ok()) << message(choice.problem());
    EXPECT_TRUE(choice->proved);
    expect_covered_with_none_to_spare(*choice, made);
    std::vector<oracle::Offer> offers;
    for (const PackOffer& one : made.offers)
      offers.push_back({one.amount, one.price ? one.price->minor : one.amount});
    const oracle::Bought best = oracle::cheapest(offers, made.need), found = counted(*choice, made.offers);
    EXPECT_EQ(std::tie(found.cost, found.amount, found.packs, found.positions),
              std::tie(best.cost, best.amount, best.packs, best.positions));
    EXPECT_EQ(choice->cost.has_value(), made.offers[0].price.has_value());
    if (choice->cost) {
      EXPECT_EQ(choice->cost->minor, best.cost);
    }
  }
}

TEST(packs, a_greater_need_never_costs_less) {
  std::mt19937 random(7);
  for (int round = 0; round < 60; ++round) {
    Case made = small_case(random);
    if (!made.offers[0].price) continue;
    std::int64_t before = 0;
    for (made.need = 0; made.need < 120; ++made.need) {
      const auto choice = cheapest_packs(made.need, made.offers);
      ASSERT_TRUE(choice.ok());
      EXPECT_GE(choice->cost->minor, before);
      before = choice->cost->minor;
    }
  }
}

TEST(packs, scaling_amounts_and_prices_changes_no_choice) {
  std::mt19937 random(11);
  for (int round = 0; round < 200; ++round) {
    const Case made = small_case(random);
    const std::int64_t k = 2 + below(random, 5000);
    Case larger = made, dearer = made;
    larger.need *= k;
    for (PackOffer& one : larger.offers) one.amount *= k;
    for (PackOffer& one : dearer.offers)
      if (one.price) one.price->minor *= k;
    const auto choice = cheapest_packs(made.need, made.offers);
    const auto of_larger = cheapest_packs(larger.need, larger.offers);
    const auto of_dearer = cheapest_packs(dearer.need, dearer.offers);
    EXPECT_EQ(of_larger->packs, choice->packs);
    EXPECT_EQ(of_larger->left_over, k * choice->left_over);
    EXPECT_EQ(of_dearer->packs, choice->packs);
    if (choice->cost) {
      EXPECT_EQ(of_dearer->cost->minor, k * choice->cost->minor);
    }
  }
}

// Needs that the oracle can't reach: of 30 packs other than the best value, which holds 30, some hold a multiple of 30 together and give
// way to it, so that an optimum has at most 29 others of at most 26. Beyond that only packs of the best value are added.
TEST(packs, beyond_a_few_packs_only_the_best_value_is_added) {
  std::mt19937 random(23);
  for (int round = 0; round < 150; ++round) {
    Case made = small_case(random);
    made.offers.push_back(offer(30, made.offers[0].price ? std::optional<std::int64_t>(1) : std::nullopt));
    for (PackOffer& one : made.offers)
      if (one.price) one.price->minor = std::max<std::int64_t>(1, one.price->minor);
    made.need += 29 * 26;
    const auto base = cheapest_packs(made.need, made.offers);
    Case larger = made;
    larger.need += 30'000;
    const auto choice = cheapest_packs(larger.need, larger.offers);
    ASSERT_TRUE(base.ok() && choice.ok());
    oracle::Bought expected = counted(*base, made.offers);
    const oracle::Bought found = counted(*choice, larger.offers);
    expected.amount += 30'000;
    EXPECT_EQ(found.amount, expected.amount);
    EXPECT_EQ(found.packs, expected.packs + 1000);
    EXPECT_EQ(found.cost, expected.cost + (base->cost ? 1000 : 30'000));
  }
}

TEST(packs, hundreds_of_kilograms_from_a_dozen_offers) {
  std::mt19937 random(5);
  for (int round = 0; round < 40; ++round) {
    Case made{100'000'000 + below(random, 400'000'000), {}};
    for (int i = 0; i < 14; ++i) {
      const std::int64_t amount =
          10 * (500 + below(random, 100'000));  // 5 g to 1 kg, by the hundredth of a gram
      made.offers.push_back(offer(amount, amount / 100 + below(random, 50)));
    }
    const auto choice = cheapest_packs(made.need, made.offers);
    ASSERT_TRUE(choice.ok());
    EXPECT_TRUE(choice->proved);
    expect_covered_with_none_to_spare(*choice, made);
    // No set is cheaper than the best price for a milligram.
    double best_value = 1e9;
    for (const PackOffer& one : made.offers)
      best_value =
          std::min(best_value, static_cast<double>(one.price->minor) / static_cast<double>(one.amount));
    EXPECT_GE(static_cast<double>(choice->cost->minor), best_value * static_cast<double>(made.need) - 1);
  }
}

TEST(packs, what_a_designer_would_buy) {
  const std::vector<PackOffer> offers{offer(5'000, 320), offer(10'000, 590), offer(50'000, 2'450),
                                      offer(250'000, 11'000)};
  const auto packs_for = [&](std::int64_t need) { return cheapest_packs(need, offers)->packs; };
  EXPECT_EQ(packs_for(15'100), (std::vector<PackCount>{{1, 2}}));          // 20 g in tens, not 10 + 5 + 5
  EXPECT_EQ(packs_for(14'900), (std::vector<PackCount>{{0, 1}, {1, 1}}));  // 15 g
  EXPECT_EQ(packs_for(46'000),
            (std::vector<PackCount>{{2, 1}}));  // a fifty costs less than four tens and a bit
  EXPECT_EQ(packs_for(230'000), (std::vector<PackCount>{{3, 1}}));  // four fifties and three tens cost 115.70
  EXPECT_EQ(packs_for(260'000), (std::vector<PackCount>{{1, 1}, {3, 1}}));
}

TEST(packs, ties_leave_the_least_then_take_the_fewest_then_the_first) {
  const auto of = [](std::int64_t need, const std::vector<PackOffer>& offers) {
    return cheapest_packs(need, offers)->packs;
  };
  EXPECT_EQ(of(4, {offer(10, 3), offer(5, 3)}), (std::vector<PackCount>{{1, 1}}));
  EXPECT_EQ(of(10, {offer(5, 3), offer(10, 6)}), (std::vector<PackCount>{{1, 1}}));
  EXPECT_EQ(of(10, {offer(5, 3), offer(5, 3)}), (std::vector<PackCount>{{0, 2}}));
  // Without prices the amount stands for them.
  EXPECT_EQ(of(12'000, {offer(1'000'000), offer(10'000), offer(5'000)}),
            (std::vector<PackCount>{{1, 1}, {2, 1}}));
  const auto unpriced = cheapest_packs(12, std::vector{offer(10), offer(5)});
  EXPECT_EQ(unpriced->cost, std::nullopt);
  EXPECT_EQ(unpriced->left_over, 3);
  // An offer without a price is not taken for a free one.
  EXPECT_EQ(of(12, {offer(12), offer(10, 700)}), (std::vector<PackCount>{{1, 2}}));
}

TEST(packs, free_packs_and_no_need) {
  const auto choice = cheapest_packs(12, std::vector{offer(5, 0), offer(12, 1)});
  EXPECT_EQ(choice->packs, (std::vector<PackCount>{{0, 3}}));
  EXPECT_EQ(choice->cost, (Money{0, "EUR"}));
  const auto nothing = cheapest_packs(0, std::vector{offer(5, 320)});
  EXPECT_TRUE(nothing->packs.empty());
  EXPECT_EQ(nothing->cost, (Money{0, "EUR"}));
}

// Amounts in milligrams without a common measure and without prices: the one case that may be cut off.
TEST(packs, what_is_cut_off_covers_the_need_and_says_so) {
  Case made{777'777'777'777, {}};
  const std::vector<std::int64_t> amounts{999'999'999'989, 99'999'999'977, 9'999'999'967, 1'000'000'007,
                                          100'000'007};
  for (const std::int64_t amount : amounts) made.offers.push_back(offer(amount, amount));
  const auto choice = cheapest_packs(made.need, made.offers);
  ASSERT_TRUE(choice.ok());
  EXPECT_FALSE(choice->proved);
  expect_covered_with_none_to_spare(*choice, made);
}

TEST(packs, what_makes_no_sense_is_refused) {
  const auto refused = [](std::int64_t need, const std::vector<PackOffer>& offers, ProblemCode code,
                          std::string_view where) {
    const auto choice = cheapest_packs(need, offers);
    ASSERT_FALSE(choice.ok());
    EXPECT_EQ(choice.problem().code, code);
    EXPECT_EQ(choice.problem().where, where);
  };
  refused(-1, {offer(1, 1)}, ProblemCode::out_of_range, "need");
  refused(most_amount + 1, {offer(1, 1)}, ProblemCode::out_of_range, "need");
  refused(1, {}, ProblemCode::missing_field, "packs");
  refused(1, {offer(1, 1), offer(0, 1)}, ProblemCode::out_of_range, "pack 2");
  refused(1, {offer(1, -1)}, ProblemCode::out_of_range, "pack 1");
  refused(1, {offer(1, 1), offer(2, 1, "CHF")}, ProblemCode::bad_usage, "pack 2");
  refused(most_amount, {offer(1, most_pack_price)}, ProblemCode::out_of_range, "packs");
}

TEST(packs, offers_of_one_currency) {
  const std::vector<PackOffer> offers{offer(5), offer(5, 300, "CHF"), offer(5, 320), offer(9, 500, "CHF")};
  EXPECT_EQ(offers_in(offers, "EUR"), (std::vector<std::size_t>{2}));
  EXPECT_EQ(offers_in(offers, "CHF"), (std::vector<std::size_t>{1, 3}));
  EXPECT_EQ(offers_in(offers, "SEK"), (std::vector<std::size_t>{1, 3}));
  EXPECT_EQ(offers_in(std::vector{offer(5), offer(7)}, "EUR"), (std::vector<std::size_t>{0, 1}));
  EXPECT_TRUE(offers_in({}, "EUR").empty());
}

}  // namespace
}  // namespace evencount::materials
