#include "chart/runs.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "chart/letters.hpp"

namespace evencount::chart {
namespace {

const std::vector<std::string> letters{"A", "B", "AA"};

TEST(Runs, AreAsLongAsTheyCanBe) {
  const std::vector<Bead> beads{0, 0, 1, 0, no_bead, no_bead};
  const auto runs = to_runs(beads);
  EXPECT_EQ(runs, (std::vector<chart::Run>{{2, 0}, {1, 1}, {1, 0}, {2, no_bead}}));
  EXPECT_EQ(to_text(runs, letters), "2A 1B 1A 2.");
  EXPECT_EQ(to_text(to_runs({}), letters), "");
}

TEST(Runs, AreReadBack) {
  EXPECT_EQ(parse_runs("2A 1AA", letters, 3).value(), (std::vector<Bead>{0, 0, 2}));
  EXPECT_EQ(parse_runs(" 2A  1. ", letters, 3).value(), (std::vector<Bead>{0, 0, no_bead}));
  EXPECT_EQ(parse_runs("1A 1A", letters, 2).value(), (std::vector<Bead>{0, 0}));
}

TEST(Runs, WhatDoesNotFitIsRefused) {
  const auto code = [](std::string_view text) { return parse_runs(text, letters, 3).problem().code; };
  for (const char* bad : {"A 2A", "3", "0A 3A", "-1A", "99999999999999999999A", "1001A", "A3"})
    EXPECT_EQ(code(bad), ProblemCode::bad_text) << bad;
  EXPECT_EQ(code("3C"), ProblemCode::unknown_name);
  EXPECT_EQ(code("3a"), ProblemCode::unknown_name);
  EXPECT_EQ(code("2,A"), ProblemCode::unknown_name);
  for (const char* wrong : {"", "2A", "4A", "2A 2B", "1000A 1000A"})
    EXPECT_EQ(code(wrong), ProblemCode::wrong_size);
}

RC_GTEST_PROP(RunsProperty, BeadsComeBack, ()) {
  std::vector<std::string> legend;
  for (int i = 0; i < 40; ++i) legend.push_back(letter_name(i));
  auto beads = *rc::gen::container<std::vector<Bead>>(
      rc::gen::oneOf(rc::gen::inRange<Bead>(0, 3), rc::gen::inRange<Bead>(0, 40), rc::gen::just(no_bead)));
  const auto runs = to_runs(beads);
  for (std::size_t i = 1; i < runs.size(); ++i) RC_ASSERT(runs[i].bead != runs[i - 1].bead);
  RC_ASSERT(parse_runs(to_text(runs, legend), legend, static_cast<int>(beads.size())).value() == beads);
}

}  // namespace
}  // namespace evencount::chart
