#pragma once
/// Threads that share numbered jobs. The caller's thread works too, and is the only one that watches.
///
/// Property (tests/render/crew_test.cpp): every job is done exactly once, unless the watch said stop; then no further one begins. What a job
/// throws comes out of the call when all threads have ended. Where the system gives fewer threads than asked for, those there are do it.

#include <functional>

namespace evencount::render {

/// job(0) to job(count - 1) on so many threads. `after` is called on the caller's thread after each job that it did itself; false stops
/// all. Returns whether all were done.
bool share_out(int threads, int count, const std::function<void(int)>& job,
               const std::function<bool()>& after);

/// `asked`, or as many as the machine runs at once for 0; at least 1.
[[nodiscard]] int threads_for(int asked);

}  // namespace evencount::render
