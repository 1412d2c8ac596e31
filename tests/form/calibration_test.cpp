#include "form/calibration.hpp"

#include <gtest/gtest.h>

namespace evencount::form {
namespace {

const bead::Size cylinder = *bead::find_size("cylinder-11");

TEST(Calibration, FitAtTheGaugeGivesTheVerdictBack) {
  for (const char* form : {"lens:17x5x9", "round:12x20", "oval:18x13x5", "bar:20x4x10", "ring:54"}) {
    for (const Use use : {Use::fixed, Use::sliding}) {
      Length before;
      for (const Verdict verdict : {Verdict::tight, Verdict::snug, Verdict::easy}) {
        if (use == Use::sliding && verdict == Verdict::tight) continue;
        const FinishedPiece piece{*parse_form(form), cylinder, 25, verdict, use};
        const auto gauge = gauge_from_finished(piece);
        ASSERT_TRUE(gauge.ok()) << form << message(gauge.problem());
        EXPECT_GT(gauge->edge, before) << form;
        before = gauge->edge;
        EXPECT_GT(gauge->uncertainty, 0.002);
        EXPECT_LT(gauge->uncertainty, 0.02);
        const auto fitted = fit({piece.form, cylinder, {millimetres(1.35), gauge->edge, ""}, use, 6});
        ASSERT_TRUE(fitted.ok());
        const auto same = std::find_if(fitted->candidates.begin(), fitted->candidates.end(),
                                       [](const FitCandidate& c) { return c.edge == 25; });
        ASSERT_NE(same, fitted->candidates.end()) << form;
        EXPECT_EQ(same->verdict, verdict) << form << use_name(use);
      }
    }
  }
}

// On a circle the chord is d sin(pi / n); snug for a fixed band is from -1.5 to +1 % of strain.
TEST(Calibration, CircleByHand) {
  const double chord = (12 + 1.6) * std::sin(std::numbers::pi / 26);
  const auto gauge = gauge_from_finished({*parse_form("round:12x20"), cylinder, 26, Verdict::snug});
  EXPECT_NEAR(gauge->edge.mm(), (chord / 1.01 + chord / 0.985) / 2, 1e-6);
  EXPECT_NEAR(gauge->uncertainty, (1 / 0.985 - 1 / 1.01) / (1 / 0.985 + 1 / 1.01) * 2 / std::sqrt(12), 1e-6);
}

TEST(Calibration, WordsComeBack) {
  for (const char* text : {"lens:17x5x9 took 24, snug", "lens:17x5x9,tip=0.5 took 25, easy, sliding"}) {
    const auto piece = parse_finished(text, cylinder);
    ASSERT_TRUE(piece.ok()) << message(piece.problem());
    EXPECT_EQ(to_notation(*piece), text);
    EXPECT_EQ(gauge_from_finished(*piece)->source, text);
  }
  for (const char* bad :
       {"", "lens:17x5x9", "lens:17x5x9 took", "lens:17x5x9 took 24", "lens:17x5x9 took 24, nice",
        "lens:17x5x9 took x, snug", "lens:17x5x9 took 24, snug, glued", "lens:17x5x9 took -1, snug",
        "lens:17x5x9 took 0, snug", "lens:17x5x9 took 100001, snug"})
    EXPECT_EQ(parse_finished(bad, cylinder).problem().code, ProblemCode::bad_text) << bad;
  EXPECT_TRUE(parse_finished("lens:17x5x9 took 1, snug", cylinder).ok());
  EXPECT_TRUE(parse_finished("lens:17x5x9 took 100000, snug", cylinder).ok());
}

TEST(Calibration, WhatSaysNothingIsRefused) {
  const auto code = [](int edge, Verdict verdict, Use use) {
    return gauge_from_finished({*parse_form("lens:17x5x9"), cylinder, edge, verdict, use}).problem().code;
  };
  EXPECT_EQ(code(24, Verdict::too_tight, Use::fixed), ProblemCode::out_of_range);
  EXPECT_EQ(code(24, Verdict::too_loose, Use::fixed), ProblemCode::out_of_range);
  EXPECT_EQ(code(24, Verdict::tight, Use::sliding), ProblemCode::out_of_range);
  EXPECT_EQ(code(2, Verdict::snug, Use::fixed), ProblemCode::too_few_beads);
  EXPECT_EQ(code(2000, Verdict::snug, Use::fixed), ProblemCode::out_of_range);  // 0.02 mm a bead
}

// A swatch and two pieces of one hand, combined, lead to a fit that is surer than each alone.
TEST(Calibration, PiecesAndSwatchTogether) {
  std::vector<bead::GaugeEvidence> measured{
      bead::evidence_of(*bead::parse_swatch("12 columns = 16.1 mm, 20 along the edge = 33.4 mm"))};
  for (const char* text : {"lens:17x5x9 took 24, snug", "round:12x20 took 26, snug"})
    measured.push_back(*gauge_from_finished(*parse_finished(text, cylinder)));
  const auto together = bead::combine(measured);
  ASSERT_TRUE(together.ok());
  EXPECT_TRUE(together->agree) << together->warning;
  for (const auto& one : measured) {
    EXPECT_LT(together->uncertainty, one.uncertainty);
    EXPECT_NE(together->source.find(one.source), std::string::npos);
  }
  const auto gauge = bead::with_edge(bead::default_gauge(cylinder, bead::threads()[0]), *together);
  FitRequest request{*parse_form("oval:18x13x5"), cylinder, gauge};
  const auto sure = fit(request);
  request.gauge.uncertainty = 0.03;
  const auto unsure = fit(request);
  ASSERT_TRUE(sure && unsure);
  EXPECT_EQ(sure->edge, unsure->edge);
  EXPECT_GT(std::abs(sure->candidates[0].chance - 0.5), std::abs(unsure->candidates[0].chance - 0.5));
}

}  // namespace
}  // namespace evencount::form
