#pragma once
/// Long work, one piece at a time on a thread of its own: pictures, booklets.
///
/// Properties (tests/app/studio/jobs_test.cpp):
///  (1) work is done in the order in which it was started
///  (2) work that is called off before it begins never begins, and one that looks (`cancelled`) ends early
///  (3) the results of the last `most_kept` pieces of work are there, and no others; of larger ones fewer, so that all together are at
///      most `most_bytes`, but the last always

#include <atomic>
#include <condition_variable>
#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

#include "base/result.hpp"

namespace evencount::app::studio {

enum class JobState { waiting, running, done, failed, cancelled };
[[nodiscard]] std::string_view state_name(JobState state);

/// One thing that came of it: a PDF, a preview.
struct JobPart {
  std::string type;
  std::string bytes;
};

struct JobResult {
  std::string summary;  ///< JSON on one line
  std::map<std::string, JobPart> parts;
};

struct JobView {
  std::string id, kind, project;
  JobState state = JobState::waiting;
  double progress = 0;  ///< 0 to 1
  std::string step;     ///< what is being done
  int shown = 0;        ///< how often what there is so far has been shown
  std::optional<Problem> problem;
  std::shared_ptr<const JobResult> result;  ///< while it runs: what has been shown of it, if anything
};

class Jobs;

/// What work sees of itself.
class JobControl {
 public:
  [[nodiscard]] bool cancelled() const { return cancelled_; }
  void progress(double share, const std::string& step);
  /// What there is so far, to be looked at while the work goes on; the work's result takes its place.
  void show(JobResult so_far);

 private:
  friend class Jobs;
  JobControl(Jobs& jobs, std::string id) : jobs_(jobs), id_(std::move(id)) {}
  Jobs& jobs_;
  std::string id_;
  std::atomic<bool> cancelled_ = false;
};

using JobWork = std::function<Result<JobResult>(JobControl&)>;

class Jobs {
 public:
  static constexpr std::size_t most_waiting = 16;  ///< more than a person starts and waits for
  static constexpr std::size_t most_kept = 16;
  static constexpr std::size_t most_bytes = std::size_t{512} << 20;  ///< of results: some of the largest pictures

  explicit Jobs(std::function<void(const JobView&)> listener, std::size_t most_result_bytes = most_bytes);
  /// Calls off what runs and waits for it.
  ~Jobs();
  Jobs(const Jobs&) = delete;
  Jobs& operator=(const Jobs&) = delete;

  /// The id. Errors: too_many.
  [[nodiscard]] Result<std::string> start(const std::string& kind, const std::string& project, JobWork work);
  /// Errors: not_found.
  [[nodiscard]] Result<JobView> view(const std::string& id) const;
  [[nodiscard]] std::vector<JobView> all() const;
  /// Errors: not_found. Work that is over stays as it is.
  [[nodiscard]] Result<Done> cancel(const std::string& id);

 private:
  friend class JobControl;
  struct Job {
    JobView view;
    JobWork work;
    std::unique_ptr<JobControl> control;
  };
  void work_through();
  void run(Job& job, std::unique_lock<std::mutex>& lock);
  void tell(const Job& job, std::unique_lock<std::mutex>& lock);
  void forget_large();

  std::function<void(const JobView&)> listener_;
  const std::size_t most_result_bytes_;
  mutable std::mutex mutex_;
  std::condition_variable changed_;
  std::deque<std::shared_ptr<Job>> jobs_;  ///< oldest first
  int next_ = 1;
  bool closing_ = false;
  std::thread worker_;
};

}  // namespace evencount::app::studio
