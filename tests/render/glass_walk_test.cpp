#include "render/glass_walk.hpp"

#include <gtest/gtest.h>

namespace evencount::render {
namespace {

const GlassBead bead;

// (1), (2)
TEST(GlassWalk, AbsorptionIsFoundAgain) {
  for (const bool lined : {false, true}) {
    const auto ways = glass_ways(bead, lined, 1024);
    double last = 2;
    for (const double absorbed : {0.0, 0.05, 0.3, 1.0, 3.0}) {
      const double colour = shown(ways, absorbed, 0.5);
      EXPECT_LT(colour, last);
      last = colour;
      if (!lined && absorbed > 0 && absorbed <= 1) {
        EXPECT_NEAR(absorption_for(ways, grey(shown(ways, absorbed, 1))).g, absorbed, 1e-3 * absorbed);
      }
      if (lined && absorbed >= 0.3 && absorbed <= 1) {
        EXPECT_NEAR(lining_for(ways, grey(shown(ways, 0, absorbed))).g, absorbed, 1e-3);
      }
    }
  }
}

// (3)
TEST(GlassWalk, ClearGlassAndWhitePaintAreWhite) {
  GlassBead on_white = bead;
  on_white.paper = 1;
  for (const bool lined : {false, true}) {
    EXPECT_DOUBLE_EQ(shown(glass_ways(on_white, lined, 256), 0, 1), 1);
    const double on_paper = shown(glass_ways(bead, lined, 1024), 0, 1);
    EXPECT_GT(on_paper, 0.7);  // light comes down to the paper about once
    EXPECT_LT(on_paper, 0.9);
  }
}

TEST(GlassWalk, TheLiningIsMostOfWhatIsSeen) {
  const auto ways = glass_ways(bead, true, 2048);
  double on_lining = 0;
  for (const GlassWay& way : ways)
    on_lining += (way.off_lining > 0 ? 1.0 : 0.0) / static_cast<double>(ways.size());
  // A hole of half the diameter is enlarged by the glass to 1.5 x half of it: about three quarters of the view, square on, and more by
  // what goes on to the next bead.
  EXPECT_GT(on_lining, 0.7);
  EXPECT_LT(on_lining, 0.99);
}

}  // namespace
}  // namespace evencount::render
