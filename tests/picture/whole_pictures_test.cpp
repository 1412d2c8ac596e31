// Whole pictures: the figures of docs/algorithms/picture_choice.md.

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "oracle/choice_oracle.hpp"
#include "pictures.hpp"

namespace evencount::picture {
namespace {

const std::string cases = EVENCOUNT_CASES_DIR "/picture/";

/// The K beads that most cells have as their nearest of the whole stock.
double mean_of_the_most_wanted(const std::vector<colour::Rgb>& cells, const std::vector<StockColour>& stock,
                               int count) {
  std::vector<colour::LabD65> labs;
  for (const StockColour& one : stock) labs.push_back(colour::to_lab_d65(one.colour));
  const colour::LabColumns<colour::White::d65> columns(labs);
  std::vector<int> wanted(stock.size(), 0), order(stock.size());
  std::vector<float> row(stock.size());
  for (const colour::Rgb cell : cells) {
    colour::ciede2000(colour::to_lab_d65(cell), columns, row);
    ++wanted[static_cast<std::size_t>(std::min_element(row.begin(), row.end()) - row.begin())];
  }
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
    return wanted[static_cast<std::size_t>(a)] > wanted[static_cast<std::size_t>(b)];
  });
  order.resize(static_cast<std::size_t>(count));
  return oracle::mean_of(cells, stock, order);
}

struct Known {
  const char* picture;
  double mean;         // of twelve colours, by an earlier search of another make, rounded to 0.01
  double most_wanted;  // the same, of the twelve that most cells would pick
};

TEST(WholePictures, TwelveColoursAreProvedBest) {
  const auto stock = load_stock(cases + "stock2000.txt");
  ASSERT_EQ(stock.size(), 2000u);
  for (const Known& known :
       {Known{"portrait", 5.83, 7.76}, Known{"coffee", 4.19, 4.68}, Known{"flat", 3.22, 3.27}}) {
    SCOPED_TRACE(known.picture);
    const auto cells = load_ppm(cases + known.picture + ".60x80.ppm");
    ASSERT_EQ(cells.size(), 4800u);
    const StockChoice choice = choose_stock(cells, stock, 12).value();
    EXPECT_LE(choice.mean, known.mean + 0.005);
    EXPECT_GE(choice.mean, known.mean - 0.015);  // the earlier search was within 0.24 % of the optimum
    EXPECT_TRUE(choice.optimal);
    EXPECT_LE(choice.mean - choice.bound, 1e-5);
    EXPECT_EQ(choice.chosen.size(), 12u);
    EXPECT_NEAR(mean_of_the_most_wanted(cells, stock, 12), known.most_wanted, 0.005);
  }
}

TEST(WholePictures, AQuickChoiceIsNearTheBest) {
  const auto stock = load_stock(cases + "stock2000.txt");
  ChoiceOptions quick;
  quick.effort.prove = false;
  const StockChoice choice = choose_stock(load_ppm(cases + "coffee.60x80.ppm"), stock, 12, quick).value();
  EXPECT_LE(choice.mean, 4.19 * 1.005);
  EXPECT_LE(choice.bound, 4.19 + 0.005);
  EXPECT_GE(choice.bound, 4.19 * 0.98);
}

TEST(WholePictures, WithWhatIsOnHand) {
  auto stock = load_stock(cases + "stock2000.txt");
  Random random(3);
  for (StockColour& one : stock) one.at_most = 200 + pick(random, 1500);
  const auto cells = load_ppm(cases + "coffee.60x80.ppm");
  ChoiceOptions options;
  options.effort.nodes = 40;
  const StockChoice choice = choose_stock(cells, stock, 12, options).value();
  std::vector<int> used(stock.size(), 0);
  for (const int bead : choice.bead_of_cell) ++used[static_cast<std::size_t>(bead)];
  for (std::size_t i = 0; i < stock.size(); ++i) EXPECT_LE(used[i], *stock[i].at_most);
  EXPECT_GE(choice.mean, 4.19);
  EXPECT_LE(choice.mean - choice.bound, 0.01 * choice.mean);
}

}  // namespace
}  // namespace evencount::picture
