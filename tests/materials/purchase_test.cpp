#include "materials/purchase.hpp"

#include <gtest/gtest.h>

#include <random>

namespace evencount::materials {
namespace {

PackOffer offer(std::int64_t amount, std::optional<std::int64_t> minor = {},
                const std::string& currency = "EUR") {
  PackOffer made;
  made.amount = amount;
  if (minor) made.price = Money{*minor, currency};
  return made;
}

TEST(purchase, what_is_there_and_what_is_bought_is_what_is_used_and_what_is_left) {
  std::mt19937 random(90);
  for (int round = 0; round < 400; ++round) {
    const auto needed = static_cast<std::int64_t>(random() % 5000),
               on_hand = static_cast<std::int64_t>(random() % 6000) - 500;
    std::vector<PackOffer> offers;
    for (std::size_t i = random() % 4; i > 0; --i)
      offers.push_back(
          offer(1 + random() % 900, random() % 3 == 0 ? std::optional<std::int64_t>() : random() % 999));
    const auto result = purchase(needed, on_hand, offers, "EUR");
    ASSERT_TRUE(result.ok()) << message(result.problem());
    EXPECT_EQ(result->on_hand, std::max<std::int64_t>(0, on_hand));
    EXPECT_EQ(result->on_hand + result->bought + result->still_missing, needed + result->left_over);
    EXPECT_TRUE(result->still_missing == 0 || result->left_over == 0);
    EXPECT_EQ(result->missing == 0, result->on_hand >= needed);
    if (result->missing == 0) {
      EXPECT_EQ(result->bought, 0);
      EXPECT_EQ(result->cost, (Money{0, "EUR"}));
    }
    std::int64_t bought = 0;
    for (const BoughtPack& pack : result->packs) bought += pack.packs * pack.offer.amount;
    EXPECT_EQ(bought, result->bought);
    if (on_hand <= 0 && result->rate) {
      EXPECT_EQ(result->rate->cost, *result->cost);
      EXPECT_EQ(result->rate->amount, result->bought);
    }
  }
}

TEST(purchase, is_of_the_packs_in_the_wanted_currency) {
  const std::vector<PackOffer> offers{offer(5, 100, "CHF"), offer(5, 320), offer(5)};
  EXPECT_EQ(purchase(7, 0, offers, "EUR")->cost, (Money{640, "EUR"}));
  EXPECT_EQ(purchase(7, 0, offers, "CHF")->cost, (Money{200, "CHF"}));
  EXPECT_EQ(purchase(7, 0, offers, "SEK")->cost, (Money{200, "CHF"}));
}

TEST(purchase, what_nobody_sells_stays_missing_and_what_has_no_price_has_no_cost) {
  const auto unsold = purchase(70, 20, {}, "EUR");
  EXPECT_EQ(unsold->still_missing, 50);
  EXPECT_EQ(unsold->cost, std::nullopt);
  EXPECT_EQ(unsold->rate, std::nullopt);
  const auto unpriced = purchase(70, 20, std::vector{offer(30)}, "EUR");
  EXPECT_EQ(unpriced->packs, (std::vector<BoughtPack>{{offer(30), 2}}));
  EXPECT_EQ(unpriced->cost, std::nullopt);
  EXPECT_EQ(unpriced->left_over, 10);
}

TEST(purchase, what_is_not_needed_has_no_rate) {
  for (std::int64_t needed = 0; needed <= 12; ++needed) {
    const auto result = purchase(needed, 3, std::vector{offer(5, 300), offer(7)}, "EUR");
    ASSERT_EQ(result->rate.has_value(), needed > 0) << needed;
    const PackRate fives{{300 * ((needed + 4) / 5), "EUR"}, 5 * ((needed + 4) / 5)};
    EXPECT_EQ(result->rate.value_or(fives), fives);
    EXPECT_EQ(purchase(needed, 3, std::vector{offer(7)}, "EUR")->rate, std::nullopt);
  }
}

TEST(purchase, a_thing_on_hand_is_worth_what_it_would_cost) {
  const auto result = purchase(70, 100, std::vector{offer(50, 300)}, "EUR");
  EXPECT_EQ(result->cost, (Money{0, "EUR"}));
  EXPECT_EQ(result->rate, (PackRate{{600, "EUR"}, 100}));
  EXPECT_EQ(purchase(1, 0, std::vector{offer(1, 5)}, "EUR")->rate, (PackRate{{5, "EUR"}, 1}));
}

}  // namespace
}  // namespace evencount::materials
