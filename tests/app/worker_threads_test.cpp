#include "app/worker_threads.hpp"

#include <gtest/gtest.h>

#include <atomic>

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

}  // namespace
}  // namespace evencount::app
