#include "render/crew.hpp"

#include <gtest/gtest.h>

#include <atomic>
#include <new>
#include <vector>

namespace evencount::render {
namespace {

TEST(Crew, EveryJobIsDoneOnce) {
  for (const int threads : {1, 2, 5})
    for (const int count : {0, 1, 3, 500}) {
      std::vector<std::atomic<int>> done(static_cast<std::size_t>(count));
      EXPECT_TRUE(share_out(
          threads, count, [&](int i) { ++done[static_cast<std::size_t>(i)]; }, [] { return true; }));
      for (const auto& times : done) EXPECT_EQ(times, 1);
    }
}

TEST(Crew, StopsWhenTold) {
  int done = 0;
  EXPECT_FALSE(share_out(
      1, 100, [&](int) { ++done; }, [&] { return done < 7; }));
  EXPECT_EQ(done, 7);
  EXPECT_EQ(threads_for(3), 3);
  EXPECT_GE(threads_for(0), 1);
}

TEST(Crew, WhatAJobThrowsComesOut) {
  for (const int threads : {1, 2, 5})
    for (const int bad : {0, 7, 49})
      EXPECT_THROW(share_out(
                       threads, 50,
                       [&](int i) {
                         if (i == bad) throw std::bad_alloc();
                       },
                       nullptr),
                   std::bad_alloc);
}

}  // namespace
}  // namespace evencount::render
