#include "picture/choice_model.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "colour/lab.hpp"
#include "pictures.hpp"

namespace evencount::picture {
namespace {

TEST(ChoiceModel, LightnessAloneNeverExceedsTheWhole) {
  Random random(1);
  for (int i = 0; i < 200'000; ++i) {
    const auto any = [&] {
      return colour::to_lab_d65(colour::Rgb{static_cast<std::uint8_t>(random()),
                                            static_cast<std::uint8_t>(random()),
                                            static_cast<std::uint8_t>(random())});
    };
    const colour::LabD65 a = any(), b = any();
    ASSERT_LE(lightness_difference(a.lightness, b.lightness), colour::ciede2000(a, b) + 1e-12);
  }
}

TEST(ChoiceModel, LightnessDifferenceGrowsBothWays) {
  for (int from = 0; from <= 1000; from += 7)
    for (int to = 0; to < 1000; ++to) {
      const double near = lightness_difference(from / 10.0, to / 10.0),
                   next = lightness_difference(from / 10.0, (to + 1) / 10.0);
      if (to >= from)
        ASSERT_LT(near, next);
      else
        ASSERT_GT(near, next);
    }
}

TEST(ChoiceModel, ListsAllThatIsWithinReachAndNothingElse) {
  Random random(2);
  const Stock stock = sort_stock(random_stock(random, 400, 1, 2, 10));
  const RunJobs run = run_one_by_one;
  ChoiceModel model(merge_equal_cells(random_cells(random, 700)), stock, run);
  std::vector<double> reach;
  for (int spot = 0; spot < model.spots().size(); ++spot) reach.push_back(pick(random, 40));
  const NearList list = model.list_near(reach);
  int spot = 0, listed = 0;
  for (std::size_t p = 0; p < list.parts.size(); ++p)
    for (std::size_t row = 0; row + 1 < list.near[p].start.size(); ++row, ++spot) {
      std::vector<std::uint32_t> expected;
      for (int c = 0; c < stock.size(); ++c) {
        const float d = model.column(c)[static_cast<std::size_t>(spot)];
        ASSERT_EQ(d,
                  static_cast<float>(colour::ciede2000(model.spots().colours[static_cast<std::size_t>(spot)],
                                                       stock.colours[static_cast<std::size_t>(c)])));
        if (d < reach[static_cast<std::size_t>(spot)]) expected.push_back(static_cast<std::uint32_t>(c));
      }
      const NearPart& near = list.near[p];
      const std::vector<std::uint32_t> found(
          near.candidate.begin() + static_cast<std::ptrdiff_t>(near.start[row]),
          near.candidate.begin() + static_cast<std::ptrdiff_t>(near.start[row + 1]));
      ASSERT_EQ(found, expected);
      listed += static_cast<int>(found.size());
    }
  EXPECT_EQ(spot, model.spots().size());
  EXPECT_GT(listed, 1000);

  NearList thinned = list;
  std::vector<bool> keep;
  for (int c = 0; c < stock.size(); ++c) keep.push_back(c % 3 == 0);
  keep_only(thinned, keep, model);
  for (std::size_t p = 0; p < list.parts.size(); ++p) {
    std::vector<std::uint32_t> kept;
    std::copy_if(list.near[p].candidate.begin(), list.near[p].candidate.end(), std::back_inserter(kept),
                 [](std::uint32_t c) { return c % 3 == 0; });
    EXPECT_EQ(thinned.near[p].candidate, kept);
    EXPECT_EQ(thinned.near[p].difference.size(), kept.size());
    EXPECT_EQ(thinned.near[p].start.back(), kept.size());
  }
}

TEST(ChoiceModel, EqualCellsAreOneSpot) {
  const std::vector<colour::Rgb> cells{{9, 0, 0}, {0, 0, 9}, {9, 0, 0}, {0, 9, 0}, {9, 0, 0}};
  const Spots spots = merge_equal_cells(cells);
  EXPECT_EQ(spots.size(), 3);
  EXPECT_EQ(spots.cells, 5);
  for (std::size_t i = 0; i < cells.size(); ++i)
    EXPECT_EQ(spots.colours[static_cast<std::size_t>(spots.spot_of_cell[i])], colour::to_lab_d65(cells[i]));
  EXPECT_EQ(spots.weight[static_cast<std::size_t>(spots.spot_of_cell[0])], 3);
}

TEST(ChoiceModel, ASketchKeepsTheCells) {
  Random random(3);
  const Spots spots = merge_equal_cells(random_cells(random, 3000));
  for (const int most : {1, 50, 400, 100'000}) {
    const Spots sketch = merge_near_spots(spots, most);
    EXPECT_LE(sketch.size(), most);
    ASSERT_EQ(sketch.spot_of_cell.size(), spots.weight.size());
    std::vector<double> weight(sketch.weight.size(), 0);
    for (std::size_t i = 0; i < spots.weight.size(); ++i)
      weight[static_cast<std::size_t>(sketch.spot_of_cell[i])] += spots.weight[i];
    EXPECT_EQ(weight, sketch.weight);
    EXPECT_EQ(std::accumulate(weight.begin(), weight.end(), 0.0), 3000);
  }
}

TEST(ChoiceModel, NeedlessColoursAreLeftOut) {
  const colour::Rgb red{200, 0, 0}, blue{0, 0, 200};
  const std::vector<StockColour> stock{{red, StockRule::free, 5},
                                       {red},
                                       {red},
                                       {red, StockRule::required},
                                       {blue, StockRule::free, 5},
                                       {blue, StockRule::free, 7},
                                       {{0, 99, 0}, StockRule::forbidden}};
  const Stock sorted = sort_stock(stock);
  EXPECT_EQ(sorted.index, (std::vector<int>{4, 5, 3}));  // in order of lightness
  EXPECT_EQ(sorted.required, (std::vector<bool>{false, false, true}));
  EXPECT_EQ(sorted.most_cells, (std::vector<double>{5, 7, without_limit}));
  EXPECT_TRUE(sorted.limited);
}

TEST(ChoiceModel, PartsCoverAllSpots) {
  for (const int spots : {0, 1, 63, 64, 200, 5000}) {
    int end = 0;
    for (const Part part : parts_of(spots)) {
      EXPECT_EQ(part.begin, end);
      end = part.end;
    }
    EXPECT_EQ(end, spots);
  }
}

}  // namespace
}  // namespace evencount::picture
