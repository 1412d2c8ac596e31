#include "bead/thread.hpp"

#include <gtest/gtest.h>

namespace evencount::bead {
namespace {

TEST(Thread, EveryThreadIsWhole) {
  for (const Thread& thread : threads()) {
    EXPECT_TRUE(thread.diameter > millimetres(0.05) && thread.diameter < millimetres(0.5)) << thread.id;
    EXPECT_FALSE(thread.name.empty());
    EXPECT_FALSE(thread.source.empty());
    EXPECT_EQ(find_thread(thread.id).value(), thread);
  }
  EXPECT_EQ(find_thread("yarn").problem().code, ProblemCode::unknown_name);
}

// Needle by bead: 10/0 #11, 11/0 #12, 15/0 #13-15; published, and common practice.
TEST(Thread, NeedleSuitsTheBead) {
  const auto needle = [](std::string_view id) { return needle_for(find_size(id).value().hole).name; };
  EXPECT_EQ(needle("cylinder-10"), "#11");
  EXPECT_EQ(needle("cylinder-11"), "#12");
  EXPECT_EQ(needle("round-11"), "#12");
  EXPECT_EQ(needle("cylinder-15"), "#13");
  EXPECT_EQ(needle("round-15"), "#13");
  for (const Size& size : sizes()) EXPECT_LT(needle_for(size.hole).diameter, size.hole) << size.id;
}

TEST(Passes, FitWhileThereIsRoomForTheNeedle) {
  for (double hole_mm = 0.3; hole_mm < 2; hole_mm += 0.05) {
    for (const double thread_mm : {0.10, 0.15, 0.20, 0.28}) {
      for (const double needle_mm : {0.36, 0.40, 0.46}) {
        const int passes =
            passes_that_fit(millimetres(hole_mm), millimetres(thread_mm), millimetres(needle_mm));
        const auto fits = [&](int threads) {
          return threads * thread_mm * thread_mm + needle_mm * needle_mm <= 0.7 * hole_mm * hole_mm + 1e-9;
        };
        // Pass k + 1 goes in beside k threads.
        EXPECT_TRUE(passes == 0 || fits(passes - 1)) << hole_mm << " " << thread_mm;
        EXPECT_TRUE(passes == 100 || !fits(passes)) << hole_mm << " " << thread_mm;
      }
    }
  }
}

// Fewer than 5 passes for small beads is the published advice:
// oliviabijouterie.fr/blog/2021/11/14/les-rocailles-comment-choisir-ses-perles-et-pour-quelles-creations.
TEST(Passes, ThickThreadInA11CylinderFourTimes) {
  const Length hole = find_size("cylinder-11").value().hole;
  EXPECT_EQ(passes_that_fit(hole, find_thread("nylon-d").value().diameter, needle_for(hole).diameter), 4);
}

TEST(Passes, StayWithinTheirLimits) {
  EXPECT_EQ(passes_that_fit(millimetres(0.3), millimetres(0.2), millimetres(0.4)), 0);
  EXPECT_EQ(passes_that_fit(millimetres(50), millimetres(0.01), millimetres(0.4)), 100);
  EXPECT_EQ(passes_that_fit(millimetres(0.8), millimetres(0), millimetres(0.4)), 0);
  EXPECT_EQ(passes_that_fit(millimetres(0.8), millimetres(1e-200), millimetres(0.4)), 100);
}

}  // namespace
}  // namespace evencount::bead
