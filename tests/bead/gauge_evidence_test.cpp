#include "bead/gauge_evidence.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

namespace evencount::bead {
namespace {

GaugeEvidence measured(double edge_mm, double uncertainty, std::string source = "a piece") {
  return {millimetres(edge_mm), uncertainty, std::move(source)};
}

TEST(GaugeEvidence, OneIsItself) {
  const std::vector one{measured(1.66, 0.01, "a swatch")};
  const auto combined = *combine(one);
  EXPECT_NEAR(combined.edge.mm(), 1.66, 1e-12);
  EXPECT_NEAR(combined.uncertainty, 0.01, 1e-12);
  EXPECT_TRUE(combined.agree);
  EXPECT_EQ(combined.source, "a swatch");
  EXPECT_EQ(combined.warning, "");
}

// By hand: weights 1 / 0.01^2 and 1 / 0.03^2 in millimetres.
TEST(GaugeEvidence, WeightsByTheInverseOfTheVariance) {
  const std::vector two{measured(1.60, 0.01 / 1.60), measured(1.64, 0.03 / 1.64)};
  const auto combined = *combine(two);
  EXPECT_NEAR(combined.edge.mm(), (9 * 1.60 + 1 * 1.64) / 10, 1e-12);
  EXPECT_NEAR(combined.uncertainty * combined.edge.mm(), 0.03 / std::sqrt(10.0), 1e-12);
  EXPECT_NEAR(combined.chi_square, std::pow(0.004 / 0.01, 2) + std::pow(0.036 / 0.03, 2), 1e-9);
  EXPECT_TRUE(combined.agree);
  const std::vector swapped{two[1], two[0]};
  EXPECT_NEAR(combine(swapped)->edge / combined.edge, 1, 1e-12);
  EXPECT_EQ(combined.source, "a piece; a piece");
}

TEST(GaugeEvidence, AgreementMakesItSurer) {
  for (const int count : {2, 5, 9}) {
    const std::vector<GaugeEvidence> many(static_cast<std::size_t>(count), measured(1.66, 0.012));
    EXPECT_NEAR(combine(many)->uncertainty, 0.012 / std::sqrt(count), 1e-12);
  }
}

TEST(GaugeEvidence, DisagreementIsSaid) {
  const std::vector three{measured(1.66, 0.01, "a swatch"), measured(1.67, 0.01, "one band"),
                          measured(1.80, 0.01, "another band")};
  const auto combined = *combine(three);
  EXPECT_FALSE(combined.agree);
  EXPECT_GT(combined.uncertainty, 0.01);  // no surer than one of them
  EXPECT_NE(combined.warning.find("another band (1.8 mm, give or take 1 %)"), std::string::npos)
      << combined.warning;
  EXPECT_EQ(combined.source, "a swatch; one band; another band");
}

TEST(GaugeEvidence, SoundMeasurementsAgreeAndHoldTheTruth) {
  std::mt19937_64 random(5);
  const auto share = [&] { return (static_cast<double>(random() >> 11) + 0.5) * 0x1p-53; };
  const auto normal = [&] {
    return std::sqrt(-2 * std::log(share())) * std::cos(2 * std::numbers::pi * share());
  };
  const int draws = 4000;
  int held = 0, agreed = 0;
  for (int i = 0; i < draws; ++i) {
    std::vector<GaugeEvidence> some;
    for (const double uncertainty : {0.005, 0.01, 0.02, 0.012})
      some.push_back(measured(1.66 * (1 + uncertainty * normal()), uncertainty));
    const auto combined = *combine(some);
    agreed += combined.agree;
    held += std::abs(combined.edge.mm() - 1.66) <= 2 * combined.uncertainty * combined.edge.mm();
  }
  EXPECT_NEAR(1.0 * agreed / draws, 0.95, 0.015);
  EXPECT_NEAR(1.0 * held / draws, 0.955, 0.015);
}

TEST(GaugeEvidence, UnsoundIsRefused) {
  EXPECT_EQ(combine({}).problem().code, ProblemCode::missing_field);
  for (const auto& bad : {measured(0.1, 0.01), measured(std::nan(""), 0.01), measured(1.66, 0),
                          measured(1.66, -1), measured(1.66, 1.1), measured(1.66, std::nan(""))}) {
    const std::vector some{measured(1.66, 0.01), bad};
    EXPECT_EQ(combine(some).problem().code, ProblemCode::out_of_range);
  }
}

TEST(GaugeEvidence, FromAndToAGauge) {
  const Gauge gauge = default_gauge(*find_size("cylinder-11"), threads()[0]);
  EXPECT_EQ(evidence_of(gauge).uncertainty, default_uncertainty);
  const Gauge swatch = *parse_swatch("12 columns = 16.1 mm, 20 along the edge = 33.4 mm");
  const std::vector some{evidence_of(gauge), evidence_of(swatch)};
  const auto combined = *combine(some);
  const Gauge merged = with_edge(gauge, combined);
  EXPECT_EQ(merged.column, gauge.column);
  EXPECT_EQ(merged.edge, combined.edge);
  EXPECT_EQ(merged.uncertainty, combined.uncertainty);
  EXPECT_EQ(merged.source, gauge.source + "; " + swatch.source);
}

}  // namespace
}  // namespace evencount::bead
