#include "app/studio/jobs.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"

namespace evencount::app::studio {
namespace {

bool is_over(JobState state) {
  return state == JobState::done || state == JobState::failed || state == JobState::cancelled;
}

std::size_t bytes_of(const JobView& view) {
  std::size_t bytes = 0;
  if (view.result)
    for (const auto& [name, part] : view.result->parts) bytes += part.bytes.size();
  return bytes;
}

Problem unknown(const std::string& id) {
  return {ProblemCode::not_found, "job", quote(id),
          "a piece of work that was started not long ago"};
}

}  // namespace

std::string_view state_name(JobState state) {
  switch (state) {
    case JobState::waiting:
      return "waiting";
    case JobState::running:
      return "running";
    case JobState::done:
      return "done";
    case JobState::failed:
      return "failed";
    case JobState::cancelled:
      return "cancelled";
  }
  return "";
}

void JobControl::progress(double share, const std::string& step) {
  std::unique_lock lock(jobs_.mutex_);
  const auto found = std::find_if(jobs_.jobs_.begin(), jobs_.jobs_.end(),
                                  [&](const auto& job) { return job->view.id == id_; });
  if (found == jobs_.jobs_.end()) return;
  (*found)->view.progress = share, (*found)->view.step = step;
  jobs_.tell(**found, lock);
}

void JobControl::show(JobResult so_far) {
  auto shown = std::make_shared<const JobResult>(std::move(so_far));
  std::unique_lock lock(jobs_.mutex_);
  const auto found = std::find_if(jobs_.jobs_.begin(), jobs_.jobs_.end(),
                                  [&](const auto& job) { return job->view.id == id_; });
  if (found == jobs_.jobs_.end()) return;
  (*found)->view.result = std::move(shown), ++(*found)->view.shown;
  jobs_.tell(**found, lock);
}

Jobs::Jobs(std::function<void(const JobView&)> listener, std::size_t most_result_bytes)
    : listener_(std::move(listener)), most_result_bytes_(most_result_bytes), worker_([this] { work_through(); }) {}

Jobs::~Jobs() {
  {
    const std::lock_guard lock(mutex_);
    closing_ = true;
    for (const auto& job : jobs_) job->control->cancelled_ = true;
  }
  changed_.notify_all();
  worker_.join();
}

/// The listener is called without the lock: it may ask for more.
void Jobs::tell(const Job& job, std::unique_lock<std::mutex>& lock) {
  const JobView view = job.view;
  lock.unlock();
  listener_(view);
  lock.lock();
}

void Jobs::work_through() {
  std::unique_lock lock(mutex_);
  while (true) {
    const auto next_waiting = [this] {
      return std::find_if(jobs_.begin(), jobs_.end(),
                          [](const auto& job) { return job->view.state == JobState::waiting; });
    };
    changed_.wait(lock, [&] { return closing_ || next_waiting() != jobs_.end(); });
    if (closing_) return;
    const std::shared_ptr<Job> job = *next_waiting();
    run(*job, lock);
  }
}

void Jobs::run(Job& job, std::unique_lock<std::mutex>& lock) {
  job.view.state = JobState::running;
  tell(job, lock);
  lock.unlock();
  Result<JobResult> result = Problem{ProblemCode::system_failure, "job", "out of memory", "smaller work"};
  try {
    // A library under the pages ends the program where it gets no thread: better looked at before.
    std::thread([] {}).join();
    result = job.work(*job.control);
  } catch (const std::bad_alloc&) {
  } catch (const std::system_error& fault) {
    result = Problem{ProblemCode::system_failure, "job", fault.code().message(), "fewer programs at once"};
  } catch (const std::exception& fault) {
    result =
        Problem{ProblemCode::system_failure, "job", fmt::format("a fault of ours: {}", fault.what()), ""};
  }
  lock.lock();
  job.work = nullptr;
  if (job.control->cancelled()) {
    job.view.state = JobState::cancelled;
  } else if (result) {
    job.view.result = std::make_shared<const JobResult>(std::move(*result));
    job.view.state = JobState::done, job.view.progress = 1;
  } else {
    job.view.problem = result.problem();
    job.view.state = JobState::failed;
  }
  forget_large();
  tell(job, lock);
}

/// The oldest results go, until the rest is small enough or only the newest is left.
void Jobs::forget_large() {
  std::size_t bytes = 0;
  for (auto job = jobs_.rbegin(); job != jobs_.rend(); ++job) {
    const std::size_t own = bytes_of((*job)->view);
    if (bytes > 0 && own > 0 && own > most_result_bytes_ - std::min(bytes, most_result_bytes_)) {
      const auto is_large_and_over = [](const auto& old) { return is_over(old->view.state) && old->view.result; };
      jobs_.erase(std::remove_if(jobs_.begin(), job.base(), is_large_and_over), job.base());
      return;
    }
    bytes += own;
  }
}

Result<std::string> Jobs::start(const std::string& kind, const std::string& project, JobWork work) {
  std::unique_lock lock(mutex_);
  const auto waiting = static_cast<std::size_t>(
      std::count_if(jobs_.begin(), jobs_.end(), [](const auto& job) { return !is_over(job->view.state); }));
  if (waiting >= most_waiting)
    return Problem{ProblemCode::too_many, "job", fmt::format("{} pieces of work", waiting), "fewer at once"};
  while (jobs_.size() >= most_kept) {
    const auto oldest =
        std::find_if(jobs_.begin(), jobs_.end(), [](const auto& job) { return is_over(job->view.state); });
    if (oldest == jobs_.end()) break;
    jobs_.erase(oldest);
  }
  auto job = std::make_shared<Job>();
  job->view.id = fmt::format("{}", next_++);
  job->view.kind = kind, job->view.project = project;
  job->work = std::move(work);
  job->control.reset(new JobControl(*this, job->view.id));
  jobs_.push_back(job);
  changed_.notify_all();
  tell(*job, lock);
  return job->view.id;
}

Result<JobView> Jobs::view(const std::string& id) const {
  const std::lock_guard lock(mutex_);
  const auto found =
      std::find_if(jobs_.begin(), jobs_.end(), [&](const auto& job) { return job->view.id == id; });
  if (found == jobs_.end()) return unknown(id);
  return (*found)->view;
}

std::vector<JobView> Jobs::all() const {
  const std::lock_guard lock(mutex_);
  std::vector<JobView> views;
  for (const auto& job : jobs_) views.push_back(job->view);
  return views;
}

Result<Done> Jobs::cancel(const std::string& id) {
  std::unique_lock lock(mutex_);
  const auto found =
      std::find_if(jobs_.begin(), jobs_.end(), [&](const auto& job) { return job->view.id == id; });
  if (found == jobs_.end()) return unknown(id);
  const std::shared_ptr<Job> job = *found;
  job->control->cancelled_ = true;
  if (job->view.state != JobState::waiting) return Done{};
  job->view.state = JobState::cancelled, job->work = nullptr;
  tell(*job, lock);
  return Done{};
}

}  // namespace evencount::app::studio
