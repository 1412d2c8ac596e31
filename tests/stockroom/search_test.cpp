#include "stockroom/search.hpp"

#include <gtest/gtest.h>

#include "colour/difference.hpp"
#include "stockroom/random_stock.hpp"

namespace evencount::stockroom {
namespace {

using namespace evencount::materials;

std::vector<std::string> codes(const std::vector<materials::StockedItem>& items) {
  std::vector<std::string> all;
  for (const materials::StockedItem& held : items) all.push_back(held.item.code);
  return all;
}

TEST(Search, EveryWordMustStandSomewhere) {
  materials::StockedItem night{{.code = "N-1",
                  .name = "Night blue",
                  .what = BeadStock{"cylinder-11", bead::Finish::matte, {}, {}},
                  .packs = {},
                  .note = ""},
                 {}};
  night.item.packs.push_back(
      {.amount = 5000, .price = {}, .supplier = "The bead barrow", .order_code = "X77", .address = ""});
  const materials::StockedItem clasp{{.code = "K-1",
                        .name = "slide clasp",
                        .what = FindingStock{"clasp"},
                        .packs = {},
                        .note = "two-strand, blue"},
                       {}};
  const std::vector<materials::StockedItem> items{night, clasp};
  const auto found = [&](std::vector<std::string> words) { return codes(with_words(items, words)); };
  EXPECT_EQ(found({}), (std::vector<std::string>{"N-1", "K-1"}));
  EXPECT_EQ(found({"BLUE"}), (std::vector<std::string>{"N-1", "K-1"}));
  EXPECT_EQ(found({"blue", "matte"}), std::vector<std::string>{"N-1"});
  EXPECT_EQ(found({"barrow", "x77", "cylinder"}), std::vector<std::string>{"N-1"});
  EXPECT_EQ(found({"clasp", "strand"}), std::vector<std::string>{"K-1"});
  EXPECT_TRUE(found({"blue", "red"}).empty());
}

TEST(Search, TheNearestAreTheSmallestDifferences) {
  std::mt19937 random(17);
  const auto items = evencount::testing::random_stock(random, StockKind::beads, 300);
  for (int round = 0; round < 20; ++round) {
    const colour::Rgb wanted{static_cast<std::uint8_t>(random() % 256),
                             static_cast<std::uint8_t>(random() % 256),
                             static_cast<std::uint8_t>(random() % 256)};
    const auto near = nearest(items, wanted, 10);
    ASSERT_EQ(near.size(), 10u);
    for (std::size_t i = 1; i < near.size(); ++i) EXPECT_LE(near[i - 1].difference, near[i].difference);
    std::size_t nearer = 0;
    for (const materials::StockedItem& held : items)
      if (const auto own = colour_of(held.item))
        nearer +=
            colour::ciede2000(colour::to_lab_d65(wanted), colour::to_lab_d65(*own)) < near.back().difference;
    EXPECT_LE(nearer, 9u);
  }
  EXPECT_TRUE(nearest({}, {}, 10).empty());
}

}  // namespace
}  // namespace evencount::stockroom
