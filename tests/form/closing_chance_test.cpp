// The closed form of the chance against rings that are drawn bead by bead.

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <random>

#include "form/closure.hpp"
#include "form/fit.hpp"

namespace evencount::form {
namespace {

// The engine's numbers are the same on every compiler, std::normal_distribution's are not: Box and Muller's method.
class Normal {
 public:
  explicit Normal(std::uint64_t seed) : random_(seed) {}

  double operator()() {
    if (has_second_) return has_second_ = false, second_;
    const double radius = std::sqrt(-2 * std::log(open_share())), angle = 2 * std::numbers::pi * open_share();
    second_ = radius * std::sin(angle);
    has_second_ = true;
    return radius * std::cos(angle);
  }

 private:
  double open_share() { return (static_cast<double>(random_() >> 11) + 0.5) * 0x1p-53; }  // above 0, below 1
  std::mt19937_64 random_;
  double second_ = 0;
  bool has_second_ = false;
};

// The mean bead of a ring, as a share of its nominal size: a lot is drawn, then every bead from it.
double drawn_mean(const bead::Size& bead, int edge, Normal& normal) {
  const double lot = 1 + bead.lot_shift * normal();
  double sum = 0;
  for (int k = 0; k < edge; ++k) sum += lot + bead.scatter * normal();
  return sum / edge;
}

TEST(ClosingChance, NormalDrawsAreNormal) {
  Normal normal(1);
  double sum = 0, squares = 0;
  const int draws = 100000;
  int within = 0;
  for (int i = 0; i < draws; ++i) {
    const double x = normal();
    sum += x, squares += x * x, within += std::abs(x) < 1;
  }
  EXPECT_NEAR(sum / draws, 0, 0.01);
  EXPECT_NEAR(squares / draws, 1, 0.015);
  EXPECT_NEAR(1.0 * within / draws, 0.6827, 0.005);
}

TEST(ClosingChance, AgainstDrawnBeads) {
  const int draws = 20000;
  int settings = 0, beyond_two = 0;
  for (const char* id : {"cylinder-11", "round-11"}) {
    const bead::Size bead = *bead::find_size(id);
    for (const Use use : {Use::fixed, Use::sliding}) {
      for (const double uncertainty : {0.0, 0.012}) {
        for (const double over : {-0.02, -0.004, 0.005, 0.015}) {  // past the limit
          const int edge = 14 + 3 * (settings % 5);
          const double strain = limits(use).closes + over, share = 0.08 + 0.03 * (settings % 4);
          Normal normal(1000 + static_cast<std::uint64_t>(settings));
          int closed = 0;
          for (int i = 0; i < draws; ++i) {
            const double mean = drawn_mean(bead, edge, normal), pitch = mean * (1 + uncertainty * normal());
            closed += (1 + strain) * ((1 - share) + share * mean) / pitch - 1 <= limits(use).closes;
          }
          const double chance = closing_chance(strain, edge, share, bead, use, uncertainty);
          const double error = std::sqrt(std::max(chance * (1 - chance), 1e-4) / draws);
          EXPECT_NEAR(1.0 * closed / draws, chance, 3.5 * error)
              << id << " " << use_name(use) << " " << strain << " " << uncertainty;
          beyond_two += std::abs(1.0 * closed / draws - chance) > 2 * error;
          ++settings;
        }
      }
    }
  }
  EXPECT_GE(settings, 20);
  EXPECT_LE(beyond_two, 5);  // of 32, where 1 or 2 are to be expected
}

// The part of the way round that grows with the beads, by real rings: each draw closes a ring of its own mean bead.
TEST(ClosingChance, AgainstRingsOfDrawnBeads) {
  const bead::Size bead = *bead::find_size("round-11");
  const int draws = 2000;
  for (const char* notation : {"lens:17x5x9", "round:12x20", "bar:20x4x10"}) {
    const ConvexCurve section_curve = *section(*parse_form(notation));
    const auto gauge = bead::default_gauge(bead, bead::threads()[0]);
    const auto fitted = fit({*parse_form(notation), bead, gauge, Use::sliding, 4});
    ASSERT_TRUE(fitted.ok());
    for (const FitCandidate& candidate : fitted->candidates) {
      if (candidate.chance < 0.02 || candidate.chance > 0.98) continue;
      Normal normal(77);
      int closed = 0;
      for (int i = 0; i < draws; ++i) {
        const double mean = drawn_mean(bead, candidate.edge, normal);
        const auto range = closing_range(offset(section_curve, mean * bead.diameter / 2), candidate.edge);
        closed += range->largest / (mean * gauge.edge) - 1 <= sliding_limits.closes;
      }
      const double error = std::sqrt(candidate.chance * (1 - candidate.chance) / draws);
      EXPECT_NEAR(1.0 * closed / draws, candidate.chance, 3 * error + 0.01) << notation << candidate.edge;
    }
  }
}

TEST(ClosingChance, WithoutScatterItIsCertain) {
  auto exact = *bead::find_size("round-11");
  exact.scatter = exact.lot_shift = 0;
  EXPECT_EQ(closing_chance(0.039, 24, 0.12, exact, Use::fixed), 1);
  EXPECT_EQ(closing_chance(0.041, 24, 0.12, exact, Use::fixed), 0);
  EXPECT_NEAR(closing_chance(0.04, 24, 0.12, exact, Use::fixed, 0.01), 0.5, 1e-12);
}

}  // namespace
}  // namespace evencount::form
