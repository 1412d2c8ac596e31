// Writing and reading share no code, so that each vouches for the other.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "random_chart.hpp"
#include "weave/technique.hpp"
#include "wording/reader.hpp"
#include "wording/words.hpp"

namespace evencount::wording {
namespace {

using namespace testing_support;

weave::Plan plan_of(const chart::Chart& chart, weave::Closure closure = weave::Closure::open) {
  return weave::make_plan(weave::flat_peyote_for(chart.columns()).id, chart, {closure}).value();
}

void expect_round_trip(const RandomChart& made, weave::Closure closure) {
  const auto letters = legend_of(made.beads);
  const auto plan = plan_of(made.chart, closure);
  const auto read =
      read_words(to_text(write_words(plan, letters, "Band 3: red & blue")), {.legend = letters});
  ASSERT_TRUE(read) << message(read.problem());
  ASSERT_EQ(read->size(), 1u);
  const ReadBand& band = read->front();
  EXPECT_EQ(band.chart, made.chart);
  EXPECT_EQ(band.name, "Band 3: red & blue");
  EXPECT_EQ(band.letters, letters);
  EXPECT_EQ(band.closure, closure);
  EXPECT_EQ(band.rows, weave::row_count(plan));
  EXPECT_EQ(band.technique, plan.technique);
  EXPECT_EQ(band.first_travel, plan.rows.front().travel);
}

TEST(RoundTrip, TwoThousandRandomCharts) {
  Random random(20240611);
  for (int i = 0; i < 2000 && !HasFailure(); ++i)
    expect_round_trip(random_chart(random, 40, i % 10 == 0 ? 200 : 30, 30), weave::Closure::open);
}

TEST(RoundTrip, ZippedBands) {
  Random random(7);
  for (int i = 0; i < 300 && !HasFailure(); ++i) {
    RandomChart made = random_chart(random, 12, 40, 5);
    if (made.chart.edge() < 3 || made.chart.cells().back() == chart::no_bead ||
        made.chart.at({1, made.chart.edge() - 1}) == chart::no_bead)
      continue;
    expect_round_trip(made, weave::Closure::zip);
  }
}

TEST(RoundTrip, WithoutALegendTheLettersThatOccurAreNumbered) {
  auto chart = chart::Chart::make(4, 2, 3).value();
  chart.set({0, 0}, 27);
  const auto read = read_words(to_text(write_words(plan_of(chart), legend_of(30), "")));
  ASSERT_TRUE(read) << message(read.problem());
  EXPECT_EQ(read->front().letters, (std::vector<std::string>{"D", "AB"}));
  EXPECT_EQ(read->front().chart.at({0, 0}), 1);
  EXPECT_EQ(read->front().chart.at({1, 0}), 0);
}

RC_GTEST_PROP(RoundTripProperty, AnyCellsComeBack, ()) {
  const int columns = *rc::gen::inRange(2, 40), edge = *rc::gen::inRange(1, 40);
  const auto cells = *rc::gen::container<std::vector<int>>(static_cast<std::size_t>(columns) * edge,
                                                           rc::gen::inRange(0, 30));
  auto chart = chart::Chart::make(columns, edge).value();
  for (int i = 0; i < columns * edge; ++i)
    chart.set({i % columns, i / columns}, static_cast<chart::Bead>(cells[i]));
  const auto letters = legend_of(30);
  const auto read = read_words(to_text(write_words(plan_of(chart), letters, "x")), {.legend = letters});
  RC_ASSERT(read.ok());
  RC_ASSERT(read->front().chart == chart);
}

}  // namespace
}  // namespace evencount::wording
