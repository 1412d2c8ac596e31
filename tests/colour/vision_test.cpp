#include "colour/vision.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "random_colour.hpp"
#include "table.hpp"

namespace evencount::colour {
namespace {

constexpr Deficiency deficiencies[] = {Deficiency::protan, Deficiency::deutan, Deficiency::tritan};

// "protanomaly" and "protan" alike.
Deficiency deficiency_of(const TableRow& row) {
  for (const Deficiency deficiency : deficiencies)
    if (row.text("type").substr(0, 4) == deficiency_name(deficiency).substr(0, 4)) return deficiency;
  ADD_FAILURE() << row.place;
  return {};
}

Matrix matrix_of(const TableRow& row) {
  Matrix matrix{};
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t j = 0; j < 3; ++j) matrix[i][j] = row.number(fmt::format("m{}{}", i, j));
  return matrix;
}

void expect_near(const Matrix& is, const Matrix& expected, double tolerance, const std::string& place) {
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t j = 0; j < 3; ++j)
      EXPECT_NEAR(is[i][j], expected[i][j], tolerance) << place << " " << i << j;
}

struct Simulation {
  ColourVision vision;
  double grey_error;  // of white: what the printed figures' rounding leaves
};

std::vector<Simulation> all_simulations() {
  std::vector<Simulation> simulations;
  for (const Deficiency deficiency : deficiencies) {
    for (int twentieth = 0; twentieth <= 20; ++twentieth)
      simulations.push_back({*machado_vision(deficiency, twentieth / 20.0), 2e-6});
    simulations.push_back({brettel_vision(deficiency), 1.1e-5});
    if (deficiency != Deficiency::tritan) simulations.push_back({*vienot_vision(deficiency), 1e-15});
  }
  return simulations;
}

TEST(Vision, MachadosTable) {
  for (const TableRow& row : read_table("cvd_machado2009.csv", 33)) {
    const auto vision = machado_vision(deficiency_of(row), row.number("severity"));
    ASSERT_TRUE(vision.ok()) << row.place;
    expect_near(vision->above, matrix_of(row), 1e-15, row.place);
    EXPECT_EQ(vision->above, vision->below) << row.place;
  }
}

TEST(Vision, MachadoIsLinearBetweenTheTenths) {
  for (const Deficiency deficiency : deficiencies) {
    for (int tenth = 0; tenth < 10; ++tenth) {
      const Matrix low = machado_vision(deficiency, tenth / 10.0)->above;
      const Matrix high = machado_vision(deficiency, (tenth + 1) / 10.0)->above;
      for (const double share : {0.25, 0.5, 0.9}) {
        const Matrix between = machado_vision(deficiency, (tenth + share) / 10)->above;
        for (std::size_t i = 0; i < 3; ++i)
          for (std::size_t j = 0; j < 3; ++j)
            EXPECT_NEAR(between[i][j], low[i][j] + share * (high[i][j] - low[i][j]), 1e-14);
      }
    }
  }
}

TEST(Vision, SeverityHasARange) {
  for (const double bad : {-0.01, 1.01, std::nan(""), HUGE_VAL})
    EXPECT_EQ(machado_vision(Deficiency::deutan, bad).problem().code, ProblemCode::out_of_range) << bad;
}

TEST(Vision, CommonVisionChangesNothing) {
  std::mt19937 random(9'001);
  for (const Deficiency deficiency : deficiencies) {
    const ColourVision common = *machado_vision(deficiency, 0);
    for (int i = 0; i < 1'000; ++i) {
      const Linear light = random_linear(random);
      ASSERT_EQ(seen(common, light), light);
      const Rgb colour = random_rgb(random);
      ASSERT_EQ(seen(common, colour), colour);
    }
  }
}

// The published rows for protan and deutan; the row for tritan is published with a warning not to use it, and is refused. The last three
// rows are the paper's own steps: going by them, with the paper's screen, keeps what the cone that is missing would have told apart.
TEST(Vision, VienotsMatrices) {
  const auto rows = read_table("cvd_vienot1999.csv", 6);
  for (std::size_t i = 0; i < 2; ++i)
    expect_near(vienot_vision(deficiency_of(rows[i]))->above, matrix_of(rows[i]), 0, rows[i].place);
  EXPECT_EQ(vienot_vision(deficiency_of(rows[2])).problem().code, ProblemCode::out_of_range);

  const Matrix to_cones = matrix_of(rows[3]);
  for (std::size_t i = 0; i < 2; ++i) {
    const Matrix papers = inverse(to_cones) * matrix_of(rows[4 + i]) * to_cones;
    // Another screen's primaries: the same picture, not the same figures.
    expect_near(vienot_vision(deficiency_of(rows[i]))->above, papers, 0.02, rows[4 + i].place);
  }
}

TEST(Vision, BrettelsHalves) {
  const auto rows = read_table("cvd_brettel1997.csv", 6);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const ColourVision vision = brettel_vision(deficiency_of(rows[i]));
    expect_near(i % 2 == 0 ? vision.above : vision.below, matrix_of(rows[i]), 0, rows[i].place);
    for (std::size_t j = 0; j < 3; ++j)
      EXPECT_EQ(vision.normal[j], rows[i].number(fmt::format("n{}", j))) << rows[i].place;
  }
}

TEST(Vision, WorkedColours) {
  for (const TableRow& row : read_table("cvd_worked_computed.csv", 132)) {
    const Deficiency deficiency = deficiency_of(row);
    const auto& model = row.text("model");
    const ColourVision vision = model == "machado2009"  ? *machado_vision(deficiency, row.number("severity"))
                                : model == "vienot1999" ? *vienot_vision(deficiency)
                                                        : brettel_vision(deficiency);
    const auto byte = [&](const char* heading) { return static_cast<std::uint8_t>(row.number(heading)); };
    const Rgb colour{byte("R8"), byte("G8"), byte("B8")};
    const Encoded is = to_encoded(seen(vision, to_linear(colour)));
    const auto shown = [](double channel) { return 255 * std::clamp(channel, 0.0, 1.0); };
    EXPECT_NEAR(shown(is.red), row.number("simR"), 6e-4) << row.place;
    EXPECT_NEAR(shown(is.green), row.number("simG"), 6e-4) << row.place;
    EXPECT_NEAR(shown(is.blue), row.number("simB"), 6e-4) << row.place;
    EXPECT_EQ(seen(vision, colour), to_rgb(is)) << row.place;
  }
}

TEST(Vision, GreysStayGrey) {
  for (const auto& [vision, grey_error] : all_simulations()) {
    for (int value = 0; value < 256; ++value) {
      EXPECT_EQ(seen(vision, grey_rgb(value)), grey_rgb(value));
      const Linear grey = to_linear(grey_rgb(value)), is = seen(vision, grey);
      EXPECT_NEAR(is.red, grey.red, grey_error);
      EXPECT_NEAR(is.green, grey.green, grey_error);
      EXPECT_NEAR(is.blue, grey.blue, grey_error);
    }
  }
}

TEST(Vision, TwiceTheLightIsSeenAsTwiceTheLight) {
  std::mt19937 random(9'002);
  for (const auto& [vision, grey_error] : all_simulations()) {
    EXPECT_EQ(seen(vision, Linear{}), Linear{});
    for (int i = 0; i < 100; ++i) {
      const Linear light = random_linear(random), is = seen(vision, light);
      EXPECT_EQ(seen(vision, Linear{2 * light.red, 2 * light.green, 2 * light.blue}),
                (Linear{2 * is.red, 2 * is.green, 2 * is.blue}));
    }
  }
}

// What a dichromat can't tell apart he can't tell apart again.
TEST(Vision, ADichromatsColoursAreSeenAsTheyAre) {
  std::mt19937 random(9'003);
  for (const Deficiency deficiency : deficiencies) {
    std::vector<ColourVision> visions{brettel_vision(deficiency)};
    if (deficiency != Deficiency::tritan) visions.push_back(*vienot_vision(deficiency));
    for (const ColourVision& vision : visions) {
      for (int i = 0; i < 2'000; ++i) {
        const Linear once = seen(vision, random_linear(random, 0, 1)), twice = seen(vision, once);
        ASSERT_NEAR(twice.red, once.red, 2e-3);
        ASSERT_NEAR(twice.green, once.green, 2e-3);
        ASSERT_NEAR(twice.blue, once.blue, 2e-3);
      }
    }
  }
}

// Going over the plane between Brettel's halves is no step.
TEST(Vision, BrettelsHalvesMeet) {
  std::mt19937 random(9'004);
  for (const Deficiency deficiency : deficiencies) {
    const ColourVision vision = brettel_vision(deficiency);
    const Triple& n = vision.normal;
    for (int i = 0; i < 1'000; ++i) {
      const double red = random_between(random, 0, 1), blue = random_between(random, 0, 1);
      const Triple on_plane{red, -(n[0] * red + n[2] * blue) / n[1], blue};
      const Triple above = vision.above * on_plane, below = vision.below * on_plane;
      for (std::size_t j = 0; j < 3; ++j) ASSERT_NEAR(above[j], below[j], 5e-3);
    }
  }
}

}  // namespace
}  // namespace evencount::colour
