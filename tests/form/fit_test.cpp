#include "form/fit.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace evencount::form {
namespace {

FitRequest request(const char* form, const char* bead = "cylinder-11", Use use = Use::fixed) {
  const auto size = *bead::find_size(bead);
  return {*parse_form(form), size, bead::default_gauge(size, bead::threads()[0]), use};
}

constexpr std::array forms{"lens:17x5x9",  "lens:16x5x9", "lens:19.5x5x11.5", "round:12x20",
                           "oval:18x13x5", "bar:20x4x10", "ring:54",          "round:0.5x20"};

TEST(Fit, CandidatesAreInOrderAndWithoutGaps) {
  for (const char* form : forms) {
    for (const bead::Size& bead : bead::sizes()) {
      for (const Use use : {Use::fixed, Use::sliding}) {
        const auto fitted =
            fit({*parse_form(form), bead, bead::default_gauge(bead, bead::threads()[0]), use, 4});
        ASSERT_TRUE(fitted.ok()) << form << bead.id << message(fitted.problem());
        auto list = fitted->candidates;
        ASSERT_FALSE(list.empty());
        EXPECT_EQ(list.front().edge, fitted->edge);
        EXPECT_TRUE(
            std::is_partitioned(list.begin(), list.end(), [](const auto& c) { return closes(c.verdict); }));
        std::sort(list.begin(), list.end(), [](const auto& a, const auto& b) { return a.edge < b.edge; });
        for (std::size_t i = 0; i < list.size(); ++i) {
          const FitCandidate& c = list[i];
          EXPECT_EQ(c.rows, 2 * c.edge);
          EXPECT_LE(c.smallest_strain, c.largest_strain);
          EXPECT_EQ(c.verdict, judge(c.strain, use));
          EXPECT_NEAR(c.slack.mm(), -c.strain * c.edge * fitted->gauge.edge.mm(), 1e-9);
          if (use == Use::sliding) {
            EXPECT_EQ(c.strain, c.largest_strain);
          } else {
            EXPECT_LE(std::abs(c.strain), std::min(std::abs(c.smallest_strain), std::abs(c.largest_strain)));
          }
          if (i == 0) continue;
          EXPECT_EQ(c.edge, list[i - 1].edge + 1);
          EXPECT_LT(c.smallest_strain, list[i - 1].smallest_strain);
          EXPECT_LT(c.largest_strain, list[i - 1].largest_strain);
          EXPECT_GE(c.chance, list[i - 1].chance);
        }
        // Unless a side is full, the list reaches from a ring that is too tight to one that is too loose.
        if (list.size() <= most_candidates_aside) {
          EXPECT_TRUE(list.front().verdict == Verdict::too_tight || list.front().edge == fewest_beads_round)
              << form << bead.id;
          EXPECT_EQ(list.back().verdict, Verdict::too_loose) << form << bead.id;
        }
      }
    }
  }
}

// A bead more or less hardly changes a large form: both sides are full before one is past closing.
TEST(Fit, ListsAtMostSoManyOnEachSide) {
  const auto fitted = fit(request("round:160x20", "cylinder-11", Use::fixed));
  ASSERT_TRUE(fitted.ok());
  EXPECT_EQ(fitted->candidates.size(), 2u * most_candidates_aside + 1);
}

TEST(Fit, NothingClosingIsStillAnAnswer) {
  // Four 6/0 beads more or less are steps of many percent: find a tube between two of them.
  auto wanted = request("round:2.5x20", "round-6", Use::sliding);
  bool seen = false;
  for (double d = 2; d < 4; d += 0.1) {
    wanted.form.width = wanted.form.thickness = millimetres(d);
    const auto fitted = fit(wanted);
    ASSERT_TRUE(fitted.ok());
    if (closes(fitted->verdict)) continue;
    seen = true;
    EXPECT_GE(fitted->candidates.size(), 3u);
    for (const FitCandidate& c : fitted->candidates) EXPECT_FALSE(closes(c.verdict));
  }
  EXPECT_TRUE(seen);
}

TEST(Fit, ScalesWithEverything) {
  auto small = request("lens:17x5x9");
  auto large = small;
  large.form.width = 3 * small.form.width;
  large.form.thickness = 3 * small.form.thickness;
  large.form.length_along_holes = 3 * *small.form.length_along_holes;
  large.bead.diameter = 3 * small.bead.diameter;
  large.gauge.column = 3 * small.gauge.column;
  large.gauge.edge = 3 * small.gauge.edge;
  large.least_reveal = 3 * small.least_reveal;
  const auto a = fit(small), b = fit(large);
  EXPECT_EQ(a->columns, b->columns);
  EXPECT_EQ(a->edge, b->edge);
  EXPECT_NEAR(a->candidates[1].strain, b->candidates[1].strain, 1e-7);
  EXPECT_NEAR(3 * a->candidates[1].slack.mm(), b->candidates[1].slack.mm(), 1e-5);
}

TEST(Fit, Columns) {
  auto wanted = request("lens:17x5x9");
  EXPECT_EQ(fit(wanted)->columns, 6);
  EXPECT_NEAR(fit(wanted)->reveal->mm(), (9 - 6 * 1.35) / 2, 1e-12);
  wanted.parity = Parity::odd;
  EXPECT_EQ(fit(wanted)->columns, 5);
  wanted.columns = 8;
  EXPECT_EQ(fit(wanted)->columns, 8);
  EXPECT_LT(*fit(wanted)->reveal, Length{});
  wanted.columns = 0;
  EXPECT_EQ(fit(wanted).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(fit(request("ring:54"))->columns, columns_without_length);
  EXPECT_FALSE(fit(request("ring:54"))->reveal.has_value());
  auto narrow = request("lens:17x5x3");
  EXPECT_EQ(fit(narrow).problem().code, ProblemCode::out_of_range);  // 2 x 1.35 + 2 x 0.2 = 3.1 mm
  narrow.least_reveal = millimetres(0.15);
  EXPECT_EQ(fit(narrow)->columns, 2);
}

TEST(Fit, RefusesUnsoundRequests) {
  auto wanted = request("lens:17x5x9");
  const auto code_after = [&](auto change) {
    auto changed = wanted;
    change(changed);
    const auto fitted = fit(changed);
    return fitted ? std::string("fitted") : std::string(problem_kind(fitted.problem().code).name);
  };
  const Length nan = millimetres(std::nan(""));
  EXPECT_EQ(code_after([&](FitRequest& r) { r.gauge.edge = nan; }), "out_of_range");
  EXPECT_EQ(code_after([&](FitRequest& r) { r.gauge.edge = Length{}; }), "out_of_range");
  EXPECT_EQ(code_after([&](FitRequest& r) { r.gauge.edge = millimetres(1e-9); }), "out_of_range");
  EXPECT_EQ(code_after([&](FitRequest& r) { r.bead.diameter = -1.0 * r.bead.diameter; }), "out_of_range");
  EXPECT_EQ(code_after([&](FitRequest& r) { r.least_reveal = nan; }), "out_of_range");
  EXPECT_EQ(code_after([&](FitRequest& r) { r.forms_together = 0; }), "out_of_range");
  EXPECT_EQ(code_after([&](FitRequest& r) { r.form.width = nan; }), "out_of_range");
  EXPECT_EQ(code_after([&](FitRequest& r) { r.gauge.edge = millimetres(40); }), "too_few_beads");
}

TEST(Fit, JudgesAtItsLimits) {
  EXPECT_EQ(judge(0.0401, Use::fixed), Verdict::too_tight);
  EXPECT_EQ(judge(0.04, Use::fixed), Verdict::tight);
  EXPECT_EQ(judge(0.01, Use::fixed), Verdict::snug);
  EXPECT_EQ(judge(-0.0151, Use::fixed), Verdict::easy);
  EXPECT_EQ(judge(-0.0401, Use::fixed), Verdict::too_loose);
  EXPECT_EQ(judge(0.0051, Use::sliding), Verdict::too_tight);
  EXPECT_EQ(judge(0.005, Use::sliding), Verdict::snug);
  EXPECT_EQ(judge(-0.02, Use::sliding), Verdict::easy);
  EXPECT_EQ(*parse_use("sliding"), Use::sliding);
  EXPECT_EQ(parse_use("glued").problem().code, ProblemCode::unknown_name);
}

TEST(Fit, SewnBandsTakeAnyNumberOfRowsAndColumns) {
  const bead::Size bead = *bead::find_size("cylinder-11");
  for (const auto& gauge :
       {bead::square_gauge(bead, bead::threads()[0]), bead::brick_gauge(bead, bead::threads()[0])}) {
    FitRequest wanted{*parse_form("lens:19.5x5x11.5"), bead, gauge};
    wanted.ends = Ends::sewn;
    wanted.parity = Parity::any;
    const auto fitted = fit(wanted);
    ASSERT_TRUE(fitted.ok());
    EXPECT_EQ(fitted->columns, 7);  // 7 x 1.40 + 2 x 0.2 = 10.2 mm; 8 would take 11.6 mm
    EXPECT_EQ(fitted->rows, fitted->edge);
    EXPECT_EQ(fitted->ends, Ends::sewn);
    for (const FitCandidate& c : fitted->candidates) EXPECT_EQ(c.rows, c.edge);
    wanted.ends = Ends::zipped;
    EXPECT_EQ(fit(wanted)->rows, 2 * fitted->edge);
    EXPECT_EQ(fit(wanted)->edge, fitted->edge);  // the seam doesn't change the ring
  }
  FitRequest narrow{*parse_form("lens:17x5x1.9"), bead, bead::default_gauge(bead, bead::threads()[0])};
  EXPECT_FALSE(fit(narrow).ok());
  narrow.parity = Parity::any;
  EXPECT_EQ(fit(narrow)->columns, 1);
}

TEST(Fit, UnsureGaugeMakesTheChanceLessSure) {
  auto wanted = request("lens:17x5x9");
  const auto sure = fit(wanted);
  wanted.gauge.uncertainty = 0.02;
  const auto unsure = fit(wanted);
  for (std::size_t i = 0; i < sure->candidates.size(); ++i) {
    const FitCandidate &a = sure->candidates[i], &b = unsure->candidates[i];
    EXPECT_EQ(a.strain, b.strain);
    EXPECT_GE(std::abs(a.chance - 0.5) + 1e-12, std::abs(b.chance - 0.5));
  }
  for (const double bad : {-0.1, 1.5, std::nan("")}) {
    wanted.gauge.uncertainty = bad;
    EXPECT_EQ(fit(wanted).problem().code, ProblemCode::out_of_range);
  }
}

// The table of docs/algorithms/fit.md.
TEST(Fit, RounderTipsMakeALongerWayRound) {
  double before = -1;
  for (const char* form :
       {"lens:17x5x9", "lens:17x5x9,tip=0.25", "lens:17x5x9,tip=0.5", "lens:17x5x9,tip=1"}) {
    const auto fitted = fit(request(form));
    const auto at25 = std::find_if(fitted->candidates.begin(), fitted->candidates.end(),
                                   [](const FitCandidate& c) { return c.edge == 25; });
    ASSERT_NE(at25, fitted->candidates.end()) << form;
    EXPECT_GT(at25->smallest_strain, before) << form;
    before = at25->smallest_strain;
  }
  EXPECT_EQ(fit(request("lens:17x5x9,tip=0.5"))->edge, 25);
}

}  // namespace
}  // namespace evencount::form
