#include "picture/limited_assignment.hpp"

#include <gtest/gtest.h>

#include <numeric>

#include "oracle/choice_oracle.hpp"
#include "pictures.hpp"

namespace evencount::picture {
namespace {

Candidates all_of(const Stock& stock) {
  Candidates chosen(stock.index.size());
  std::iota(chosen.begin(), chosen.end(), 0);
  return chosen;
}

TEST(LimitedAssignment, IsTheCheapestWayToShareOut) {
  const RunJobs run = run_one_by_one;
  int tight = 0;
  for (unsigned seed = 1; seed <= 200; ++seed) {
    SCOPED_TRACE(seed);
    Random random(seed);
    const auto cells = random_cells(random, 2 + pick(random, 7));
    const auto given = random_stock(random, 2 + pick(random, 3), 0, 8, static_cast<int>(cells.size()));
    const Stock stock = sort_stock(given);
    ChoiceModel model(merge_equal_cells(cells), stock, run);
    const auto result = assign(model, all_of(stock));
    std::vector<int> chosen = stock.index;
    const double least = oracle::mean_of(cells, given, chosen);
    ASSERT_EQ(result.has_value(), least < 1e300);
    if (!result) continue;
    EXPECT_NEAR(result->total / static_cast<double>(cells.size()), least, 1e-5);
    tight += result->shares.empty() ? 0 : 1;
  }
  EXPECT_GT(tight, 50);
}

// Too many cells to try everything: no bead is overfull, every cell has one, and no single move or exchange of two cells gains.
TEST(LimitedAssignment, NothingIsGainedByMovingOrExchanging) {
  const RunJobs run = run_one_by_one;
  Random random(5);
  const auto cells = random_cells(random, 400);
  auto given = random_stock(random, 9, 0, 0, 0);
  for (StockColour& one : given) one.at_most = 35 + pick(random, 25);
  const Stock stock = sort_stock(given);
  ChoiceModel model(merge_equal_cells(cells), stock, run);
  const Assignment result = assign(model, all_of(stock)).value();
  std::vector<double> load(9, 0), served(model.spots().weight.size(), 0);
  for (const auto& [spot, place, count] : result.shares) {
    EXPECT_GT(count, 0);
    load[static_cast<std::size_t>(place)] += count;
    served[static_cast<std::size_t>(spot)] += count;
  }
  EXPECT_EQ(served, model.spots().weight);
  for (std::size_t place = 0; place < 9; ++place) EXPECT_LE(load[place], stock.most_cells[place]);
  const auto cost = [&](int spot, int place) {
    return static_cast<double>(model.column(place)[static_cast<std::size_t>(spot)]);
  };
  for (const Share& a : result.shares) {
    for (int place = 0; place < 9; ++place)
      if (load[static_cast<std::size_t>(place)] < stock.most_cells[static_cast<std::size_t>(place)]) {
        EXPECT_GE(cost(a.spot, place), cost(a.spot, a.place) - 1e-6);
      }
    for (const Share& b : result.shares)
      EXPECT_GE(cost(a.spot, b.place) + cost(b.spot, a.place),
                cost(a.spot, a.place) + cost(b.spot, b.place) - 1e-6);
  }
  // Prices explain the shares: with them, every cell has the nearest bead.
  for (const Share& a : result.shares)
    EXPECT_NEAR(cost(a.spot, a.place) + result.price[static_cast<std::size_t>(a.place)],
                result.near[static_cast<std::size_t>(a.spot)], 1e-6);
}

}  // namespace
}  // namespace evencount::picture
