#pragma once
/// Threads for the rooms that can share their work but start none: hand one of these over as a `RunJobs`.
///
/// Property (tests/app/worker_threads_test.cpp): every job of a call is run exactly once before the call returns, for any number of
/// threads and jobs, call after call.

#include <condition_variable>
#include <functional>
#include <mutex>
#include <thread>
#include <vector>

namespace evencount::app {

class WorkerThreads {
 public:
  /// `threads` in all, the caller's own among them; fewer than 2 start none.
  explicit WorkerThreads(int threads) {
    for (int i = 1; i < threads; ++i) others_.emplace_back([this] { serve(); });
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
      job(mine);
      lock.lock();
      if (--left_ == 0) done_.notify_all();
    }
  }

  std::mutex mutex_;
  std::condition_variable work_, done_;
  const std::function<void(int)>* job_ = nullptr;
  int next_ = 0, count_ = 0, left_ = 0;
  bool closing_ = false;
  std::vector<std::thread> others_;
};

}  // namespace evencount::app
