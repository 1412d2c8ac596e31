#pragma once
/// Threads for the rooms that can share their work but start none: hand one of these over as a `RunJobs`.
///
/// Property (tests/app/worker_threads_test.cpp): every job of a call is run exactly once before the call returns, for any number of
/// threads and jobs, call after call. What a job throws comes out of the call, when all others are done; fewer threads than asked for,
/// where the system gives no more, make the work slower and nothing else.

#include <condition_variable>
#include <exception>
#include <functional>
#include <mutex>
#include <system_error>
#include <thread>
#include <utility>
#include <vector>

namespace evencount::app {

class WorkerThreads {
 public:
  /// `threads` in all, the caller's own among them; fewer than 2 start none.
  explicit WorkerThreads(int threads) {
    try {
      for (int i = 1; i < threads; ++i) others_.emplace_back([this] { serve(); });
    } catch (const std::system_error&) {  // no more threads: those that there are do it
    }
  }
  ~WorkerThreads() {
    {
      const std::lock_guard lock(mutex_);
      closing_ = true;
    }
    work_.notify_all();
    for (std::thread& other : others_) other.join();
  }
  WorkerThreads(const WorkerThreads&) = delete;
  WorkerThreads& operator=(const WorkerThreads&) = delete;

  /// job(0), …, job(count - 1), shared among the threads. One call at a time.
  void run(int count, const std::function<void(int)>& job) {
    std::unique_lock lock(mutex_);
    job_ = &job, next_ = 0, count_ = count, left_ = count;
    work_.notify_all();
    take_jobs(lock);
    done_.wait(lock, [this] { return left_ == 0; });
    job_ = nullptr;
    if (const auto thrown = std::exchange(thrown_, nullptr)) std::rethrow_exception(thrown);
  }

 private:
  void serve() {
    std::unique_lock lock(mutex_);
    while (!closing_) {
      take_jobs(lock);
      work_.wait(lock, [this] { return closing_ || next_ < count_; });
    }
  }

  void take_jobs(std::unique_lock<std::mutex>& lock) {
    while (next_ < count_) {
      const int mine = next_++;
      const std::function<void(int)>& job = *job_;
      lock.unlock();
      std::exception_ptr thrown;
      try {
        job(mine);
      } catch (...) {
        thrown = std::current_exception();
      }
      lock.lock();
      if (thrown && !thrown_) thrown_ = thrown;
      if (--left_ == 0) done_.notify_all();
    }
  }

  std::mutex mutex_;
  std::condition_variable work_, done_;
  const std::function<void(int)>* job_ = nullptr;
  int next_ = 0, count_ = 0, left_ = 0;
  std::exception_ptr thrown_;  ///< the first of the call
  bool closing_ = false;
  std::vector<std::thread> others_;
};

}  // namespace evencount::app
