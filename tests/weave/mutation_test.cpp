// Replay must notice the faults that change what the needle does. Every technique's own tests do the same with its plans.

#include <gtest/gtest.h>

#include "faults.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

TEST(Mutation, ReplayNoticesFaults) {
  Random random(77);
  const FaultCount count = count_faults(random, 40000, [](Random& r) {
    const Band band = random_band(r, 8, 8);
    return Piece{plan_of(band), band.chart};
  });
  for (const int made : count.made) EXPECT_GT(made, 300);
  print_faults("flat peyote", count);
  RecordProperty("caught", FaultCount::sum(count.noticed));
  EXPECT_GE(count.rate(), 0.99);
}

}  // namespace
}  // namespace evencount::weave
