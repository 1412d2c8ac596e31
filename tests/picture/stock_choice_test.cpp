#include "picture/stock_choice.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <numeric>
#include <set>
#include <thread>

#include "oracle/choice_oracle.hpp"
#include "pictures.hpp"

namespace evencount::picture {
namespace {

/// What every choice must be, whatever the effort.
void expect_admissible(std::span<const colour::Rgb> cells, std::span<const StockColour> stock, int count,
                       const StockChoice& choice) {
  ASSERT_EQ(choice.bead_of_cell.size(), cells.size());
  EXPECT_TRUE(std::is_sorted(choice.chosen.begin(), choice.chosen.end()));
  const std::set<int> chosen(choice.chosen.begin(), choice.chosen.end());
  EXPECT_EQ(chosen.size(), choice.chosen.size());
  EXPECT_LE(static_cast<int>(chosen.size()), count);
  std::map<int, int> used;
  std::vector<double> differences;
  for (std::size_t cell = 0; cell < cells.size(); ++cell) {
    const int bead = choice.bead_of_cell[cell];
    EXPECT_TRUE(chosen.contains(bead));
    ++used[bead];
    differences.push_back(oracle::difference(cells[cell], stock[static_cast<std::size_t>(bead)].colour));
  }
  for (std::size_t i = 0; i < stock.size(); ++i) {
    const int bead = static_cast<int>(i);
    if (stock[i].rule == StockRule::required) {
      EXPECT_TRUE(chosen.contains(bead)) << i;
    }
    if (stock[i].rule == StockRule::forbidden) {
      EXPECT_FALSE(chosen.contains(bead)) << i;
    }
    if (stock[i].at_most) {
      EXPECT_LE(used[bead], *stock[i].at_most) << i;
    }
  }
  const auto size = static_cast<double>(differences.size());
  EXPECT_NEAR(choice.mean, std::accumulate(differences.begin(), differences.end(), 0.0) / size, 1e-9);
  std::sort(differences.begin(), differences.end());
  EXPECT_NEAR(choice.percentile_95, differences[static_cast<std::size_t>(std::ceil(0.95 * size - 1e-9)) - 1],
              1e-9);
  EXPECT_LE(choice.bound, choice.mean);
}

struct Trial {
  std::vector<colour::Rgb> cells;
  std::vector<StockColour> stock;
  int count;
};

/// `limited` of ten stock colours have a limit.
Trial random_trial(unsigned seed, int most_cells, int ruled, int limited) {
  Random random(seed);
  Trial trial;
  trial.count = 1 + pick(random, 4);
  trial.cells = random_cells(random, 3 + pick(random, most_cells - 2));
  trial.stock =
      random_stock(random, 4 + pick(random, 7), ruled, limited, static_cast<int>(trial.cells.size()));
  return trial;
}

/// Trying everything agrees: on the least mean, or on there being no choice at all.
/// Returns how many branches it took.
int expect_least(const Trial& trial, const ChoiceOptions& options = {}) {
  const double least = oracle::least_mean(trial.cells, trial.stock, trial.count);
  const Result<StockChoice> choice = choose_stock(trial.cells, trial.stock, trial.count, options);
  if (least == std::numeric_limits<double>::infinity()) {
    EXPECT_FALSE(choice.ok());
    return 0;
  }
  EXPECT_TRUE(choice.ok());
  if (!choice) return 0;
  expect_admissible(trial.cells, trial.stock, trial.count, *choice);
  EXPECT_LE(choice->bound, least + 1e-12);
  EXPECT_GE(choice->mean, least - 1e-12);
  if (options.effort.prove) {
    EXPECT_TRUE(choice->optimal);
    EXPECT_LE(choice->mean - choice->bound, 1e-5);
  }
  return choice->nodes;
}

TEST(StockChoice, IsTheIntegerOptimum) {
  for (unsigned seed = 1; seed <= 50; ++seed) {
    SCOPED_TRACE(seed);
    expect_least(random_trial(seed, 40, 0, 0));
  }
}

TEST(StockChoice, IsTheIntegerOptimumWithRequiredAndForbidden) {
  for (unsigned seed = 101; seed <= 150; ++seed) {
    SCOPED_TRACE(seed);
    expect_least(random_trial(seed, 30, 3, 0));
  }
}

TEST(StockChoice, IsTheIntegerOptimumWithLimits) {
  for (unsigned seed = 201; seed <= 300; ++seed) {
    SCOPED_TRACE(seed);
    expect_least(random_trial(seed, 7, 1, 6));
  }
}

// Small pictures seldom leave anything open at the root: hardly any ascent there, and branching has to do it.
TEST(StockChoice, IsTheIntegerOptimumByBranching) {
  ChoiceOptions options;
  options.effort.dual_rounds = 2;
  options.effort.swaps = 0;
  int nodes = 0;
  for (unsigned seed = 301; seed <= 400; ++seed) {
    SCOPED_TRACE(seed);
    const bool limited = seed % 2 == 0;
    nodes += expect_least(random_trial(seed, limited ? 7 : 40, 1, limited ? 6 : 0), options);
  }
  EXPECT_GT(nodes, 30);
}

// However early the work is broken off, the bound holds.
TEST(StockChoice, BoundHoldsWithLittleEffort) {
  for (unsigned seed = 401; seed <= 480; ++seed) {
    SCOPED_TRACE(seed);
    ChoiceOptions options;
    options.effort = {.prove = false,
                      .swaps = static_cast<int>(seed % 3),
                      .dual_rounds = static_cast<int>(seed % 7),
                      .nodes = 0};
    expect_least(random_trial(seed, 8, 2, static_cast<int>(seed % 2) * 5), options);
  }
}

TEST(StockChoice, TheSameForAnyNumberOfThreads) {
  Random random(7);
  const auto cells = random_cells(random, 700);
  for (const int limited : {0, 8}) {
    const auto stock = random_stock(random, 100, 0, limited, 300);
    const StockChoice alone = choose_stock(cells, stock, 8).value();
    ChoiceOptions backwards, threads;
    backwards.run_jobs = [](int count, const std::function<void(int)>& job) {
      for (int i = count; i-- > 0;) job(i);
    };
    threads.run_jobs = [](int count, const std::function<void(int)>& job) {
      std::thread other([&] {
        for (int i = 1; i < count; i += 2) job(i);
      });
      for (int i = 0; i < count; i += 2) job(i);
      other.join();
    };
    EXPECT_EQ(choose_stock(cells, stock, 8, backwards).value(), alone);
    EXPECT_EQ(choose_stock(cells, stock, 8, threads).value(), alone);
    expect_admissible(cells, stock, 8, alone);
  }
}

TEST(StockChoice, OrderDoesNotMatter) {
  Random random(8);
  auto cells = random_cells(random, 300);
  auto stock = random_stock(random, 60, 1, 3, 150);
  for (StockColour& one : stock)
    if (one.rule == StockRule::required) one.rule = StockRule::free;
  const StockChoice before = choose_stock(cells, stock, 6).value();
  ASSERT_TRUE(before.optimal);
  for (std::size_t i = cells.size(); i > 1; --i)
    std::swap(cells[i - 1], cells[static_cast<std::size_t>(pick(random, static_cast<int>(i)))]);
  std::reverse(stock.begin(), stock.end());
  const StockChoice after = choose_stock(cells, stock, 6).value();
  EXPECT_NEAR(after.mean, before.mean, 1e-5);
  EXPECT_NEAR(after.bound, before.bound, 1e-5);
}

TEST(StockChoice, EveryCellTakesTheNearestChosen) {
  Random random(9);
  const auto cells = random_cells(random, 500);
  auto stock = random_stock(random, 80, 0, 0, 0);
  stock[50] = stock[20], stock[51] = stock[21];
  stock[20].rule = stock[50].rule = StockRule::required;  // equally near: the first of the two
  const StockChoice choice = choose_stock(cells, stock, 7).value();
  for (std::size_t cell = 0; cell < cells.size(); ++cell) {
    std::pair<double, int> nearest{1e300, 0};
    for (const int bead : choice.chosen)
      nearest = std::min(
          nearest, {oracle::difference(cells[cell], stock[static_cast<std::size_t>(bead)].colour), bead});
    EXPECT_EQ(choice.bead_of_cell[cell], nearest.second);
  }
  EXPECT_EQ(std::count(choice.bead_of_cell.begin(), choice.bead_of_cell.end(), 50), 0);
}

TEST(StockChoice, ErrorAgainstCount) {
  Random random(10);
  for (const int limited : {0, 4}) {
    const auto cells = random_cells(random, 400);
    const auto stock = random_stock(random, 70, 0, limited, 300);
    const auto choices = error_against_count(cells, stock, 2, 20).value();
    ASSERT_EQ(choices.size(), 19u);
    for (std::size_t i = 0; i < choices.size(); ++i) {
      EXPECT_EQ(choices[i].count, static_cast<int>(i) + 2);
      expect_admissible(cells, stock, choices[i].count, choices[i].choice);
      if (i > 0) {
        EXPECT_LE(choices[i].choice.mean, choices[i - 1].choice.mean);
        EXPECT_LE(choices[i].choice.bound, choices[i - 1].choice.bound);
      }
    }
    for (const int count : {2, 9}) {
      const StockChoice single = choose_stock(cells, stock, count).value();
      const StockChoice& among = choices[static_cast<std::size_t>(count - 2)].choice;
      EXPECT_LE(among.bound, single.mean);
      EXPECT_LE(single.bound, among.mean);
    }
  }
}

TEST(StockChoice, CountsThatCannotBeAreLeftOut) {
  const std::vector<colour::Rgb> cells(10, colour::Rgb{200, 30, 30});
  const std::vector<StockColour> stock(5, StockColour{{200, 0, 0}, StockRule::free, 4});
  const auto choices = error_against_count(cells, stock, 1, 5).value();
  ASSERT_EQ(choices.size(), 3u);
  EXPECT_EQ(choices.front().count, 3);
  EXPECT_EQ(error_against_count(cells, stock, 1, 2).problem().code, ProblemCode::too_few_beads);
}

TEST(StockChoice, MoreColoursThanThereAre) {
  const std::vector<colour::Rgb> cells{{0, 0, 0}, {255, 255, 255}, {255, 0, 0}};
  const std::vector<StockColour> stock{{{0, 0, 0}}, {{250, 0, 0}}, {{255, 255, 255}}, {{0, 0, 0}}};
  const StockChoice choice = choose_stock(cells, stock, 9).value();
  EXPECT_EQ(choice.bead_of_cell, (std::vector<int>{0, 2, 1}));
  EXPECT_TRUE(choice.optimal);
  const std::vector<StockColour> one{{{9, 9, 9}}};
  EXPECT_EQ(choose_stock(cells, one, 1).value().bead_of_cell, (std::vector<int>{0, 0, 0}));
}

TEST(StockChoice, Problems) {
  const std::vector<colour::Rgb> cells{{1, 2, 3}, {4, 5, 6}};
  const std::vector<StockColour> stock{{{0, 0, 0}}, {{9, 9, 9}}};
  const auto code = [&](std::span<const colour::Rgb> c, std::vector<StockColour> s, int count) {
    return choose_stock(c, s, count).problem().code;
  };
  EXPECT_EQ(code(cells, stock, 0), ProblemCode::out_of_range);
  EXPECT_EQ(code({}, stock, 2), ProblemCode::out_of_range);
  EXPECT_EQ(code(cells, {{{0, 0, 0}, StockRule::free, -1}}, 1), ProblemCode::out_of_range);
  EXPECT_EQ(code(cells, {{{0, 0, 0}, StockRule::required}, {{9, 9, 9}, StockRule::required}}, 1),
            ProblemCode::out_of_range);
  EXPECT_EQ(code(cells, {}, 1), ProblemCode::too_few_beads);
  EXPECT_EQ(code(cells, {{{0, 0, 0}, StockRule::forbidden}}, 1), ProblemCode::too_few_beads);
  EXPECT_EQ(code(cells, {{{0, 0, 0}, StockRule::free, 1}, {{9, 9, 9}, StockRule::free, 0}}, 2),
            ProblemCode::too_few_beads);
  EXPECT_EQ(error_against_count(cells, stock, 3, 2).problem().code, ProblemCode::out_of_range);
}

TEST(StockChoice, APictureAndAStockAreLargeTogetherOnlyUpToALimit) {
  const std::vector<colour::Rgb> cells(1'000'000, {1, 2, 3});
  std::vector<StockColour> stock;
  for (int i = 0; i < most_compared / 1'000'000; ++i)
    stock.push_back({{static_cast<std::uint8_t>(i % 256), static_cast<std::uint8_t>(i / 256), 9}});
  EXPECT_TRUE(choose_stock(cells, stock, 2).ok());
  stock.push_back({{7, 7, 7}});
  const auto refused = choose_stock(cells, stock, 2);
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(message(refused.problem()), "stock: found 501 colours for 1000000 cells, expected at most 500 for so many");
}

}  // namespace
}  // namespace evencount::picture
