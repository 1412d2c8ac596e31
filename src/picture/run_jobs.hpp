#pragma once
/// Work that may be shared among threads, by a caller who has some: this room starts none.

#include <functional>

namespace evencount::picture {

/// Calls job(0), job(1), … job(count - 1) in any order, at once or one by one, and returns when all are done.
/// Jobs write to places of their own and are summed in the order of their numbers, so that a result is the same to the
/// bit for any number of threads.
using RunJobs = std::function<void(int count, const std::function<void(int)>& job)>;

/// One by one.
inline void run_one_by_one(int count, const std::function<void(int)>& job) {
  for (int i = 0; i < count; ++i) job(i);
}

}  // namespace evencount::picture
