#include "project/band_size.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace evencount::project {
namespace {

TEST(band_size, the_nearest_number_of_columns_that_a_technique_makes) {
  for (const weave::Technique& technique : weave::techniques())
    for (double wanted = 0.2; wanted < 30; wanted += 0.37) {
      const auto nearest = nearest_columns(technique, wanted, 9);
      ASSERT_TRUE(nearest.has_value()) << technique.id;
      EXPECT_TRUE(technique.check_size(*nearest, 9).ok());
      // By trying all of them.
      for (int columns = 1; columns < 60; ++columns)
        if (technique.check_size(columns, 9)) {
          EXPECT_LE(std::abs(*nearest - wanted), std::abs(columns - wanted)) << technique.id;
        }
      const auto edge = nearest_edge(technique, *nearest, wanted);
      ASSERT_TRUE(edge.has_value());
      EXPECT_TRUE(technique.check_size(*nearest, *edge).ok());
    }
}

TEST(band_size, parities) {
  EXPECT_EQ(parity_of(*weave::find_technique("peyote-even-count"), 20), form::Parity::even);
  EXPECT_EQ(parity_of(*weave::find_technique("peyote-odd-count"), 20), form::Parity::odd);
  EXPECT_EQ(parity_of(*weave::find_technique("two-drop-even-count"), 20), form::Parity::even);
  EXPECT_EQ(parity_of(*weave::find_technique("square"), 20), form::Parity::any);
}

}  // namespace
}  // namespace evencount::project
