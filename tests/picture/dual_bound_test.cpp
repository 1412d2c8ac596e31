#include "picture/dual_bound.hpp"

#include <gtest/gtest.h>

#include "oracle/choice_oracle.hpp"
#include "pictures.hpp"

namespace evencount::picture {
namespace {

struct Setting {
  std::vector<colour::Rgb> cells;
  std::vector<StockColour> given;
  Stock stock;
  double least;  // total of the best choice, by trying everything; in differences rounded to float
};

Setting random_setting(unsigned seed, int count, int limited) {
  Random random(seed);
  Setting s;
  s.cells = random_cells(random, limited > 0 ? 7 : 30);
  s.given = random_stock(random, 9, 0, limited, 5);
  s.stock = sort_stock(s.given);
  s.least = oracle::least_mean(s.cells, s.given, count) * static_cast<double>(s.cells.size());
  return s;
}

double total_of(ChoiceModel& model, const Candidates& chosen) {
  const auto assignment = assign(model, chosen);
  return assignment ? assignment->total : 1e300;
}

// Whatever the multipliers: random ones, not the fruit of any ascent.
TEST(DualBound, HoldsForAnyMultipliers) {
  const RunJobs run = run_one_by_one;
  for (unsigned seed = 1; seed <= 200; ++seed) {
    SCOPED_TRACE(seed);
    const int count = 1 + static_cast<int>(seed % 3);
    const Setting s = random_setting(seed, count, seed % 2 == 0 ? 6 : 0);
    if (s.least > 1e300) continue;
    ChoiceModel model(merge_equal_cells(s.cells), s.stock, run);
    Random random(seed + 1000);
    std::vector<double> u;
    for (int spot = 0; spot < model.spots().size(); ++spot) u.push_back(pick(random, 60));
    NearList list = model.list_near(u);
    Branch branch{std::vector<Fate>(s.stock.index.size(), Fate::open), u};
    ascend(model, list, count, branch, 1e6, [](const Candidates&) { return 1e6; }, {1, 0, 0});
    EXPECT_LE(branch.bound, s.least * (1 + 1e-6));
  }
}

// Fates are only decided against choices that are no better than the one known: the best one stays in the branch.
TEST(DualBound, FixingKeepsTheBest) {
  const RunJobs run = run_one_by_one;
  int fixed = 0;
  for (unsigned seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE(seed);
    const int count = 2 + static_cast<int>(seed % 2);
    const Setting s = random_setting(seed, count, seed % 2 == 0 ? 5 : 0);
    if (s.least > 1e300) continue;
    ChoiceModel model(merge_equal_cells(s.cells), s.stock, run);
    // Every set, so that the best is known by the same arithmetic.
    double best = 1e300;
    Candidates best_set;
    for (unsigned set = 1; set < 1u << s.stock.index.size(); ++set) {
      Candidates chosen;
      for (int c = 0; c < s.stock.size(); ++c)
        if (set >> c & 1u) chosen.push_back(c);
      if (static_cast<int>(chosen.size()) != std::min(count, s.stock.size())) continue;
      if (const double total = total_of(model, chosen); total < best) best = total, best_set = chosen;
    }
    if (best >= 1e300) continue;
    const double upper = best * (1 + 1e-9);
    NearList list = model.list_near(std::vector<double>(model.spots().weight.size(), farther_than_any));
    const Assignment start = assign(model, best_set).value();
    Branch branch{std::vector<Fate>(s.stock.index.size(), Fate::open), first_multipliers(start, list)};
    ascend(model, list, count, branch, upper, [&](const Candidates&) { return upper; }, {200, 0, 0});
    EXPECT_LE(branch.bound, upper);
    for (const int c : best_set) EXPECT_NE(branch.fates[static_cast<std::size_t>(c)], Fate::out);
    for (int c = 0; c < s.stock.size(); ++c) {
      if (branch.fates[static_cast<std::size_t>(c)] == Fate::in) {
        EXPECT_TRUE(std::count(best_set.begin(), best_set.end(), c)) << c;
      }
      fixed += branch.fates[static_cast<std::size_t>(c)] == Fate::open ? 0 : 1;
    }
  }
  EXPECT_GT(fixed, 100);
}

}  // namespace
}  // namespace evencount::picture
