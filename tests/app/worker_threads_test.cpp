#include "app/worker_threads.hpp"

#include <gtest/gtest.h>

#include <atomic>
#include <new>

namespace evencount::app {
namespace {

TEST(WorkerThreads, EveryJobOnce) {
  for (const int threads : {0, 1, 2, 5}) {
    WorkerThreads workers(threads);
    for (int call = 0; call < 300; ++call) {
      const int count = call % 9;
      std::vector<int> runs(static_cast<std::size_t>(count), 0);
      std::atomic<int> all = 0;
      workers.run(count, [&](int job) {
        ++runs[static_cast<std::size_t>(job)];
        ++all;
      });
      ASSERT_EQ(all, count);
      ASSERT_EQ(runs, std::vector<int>(static_cast<std::size_t>(count), 1));
    }
  }
}

TEST(WorkerThreads, WhatAJobThrowsComesOutOfTheCall) {
  WorkerThreads workers(3);
  for (int call = 0; call < 100; ++call) {
    std::atomic<int> done = 0;
    EXPECT_THROW(workers.run(7,
                             [&](int job) {
                               ++done;
                               if (job == call % 7) throw std::bad_alloc();
                             }),
                 std::bad_alloc);
    EXPECT_EQ(done, 7);
    workers.run(2, [&](int) { ++done; });
    EXPECT_EQ(done, 9) << "and the next is as if nothing had been";
  }
}

}  // namespace
}  // namespace evencount::app
