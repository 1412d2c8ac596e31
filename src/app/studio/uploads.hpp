#pragma once
/// Pictures that a page sent, for work that follows: the last few, in memory.

#include <deque>
#include <memory>
#include <mutex>
#include <string>

#include "base/result.hpp"

namespace evencount::app::studio {

class Uploads {
 public:
  static constexpr std::size_t most_kept = 4;

  /// The id of what is kept from now on; the oldest goes.
  [[nodiscard]] std::string keep(std::string bytes) {
    const std::lock_guard lock(mutex_);
    if (kept_.size() >= most_kept) kept_.pop_front();
    kept_.push_back({std::to_string(next_++), std::make_shared<const std::string>(std::move(bytes))});
    return kept_.back().id;
  }

  /// Errors: not_found.
  [[nodiscard]] Result<std::shared_ptr<const std::string>> find(const std::string& id) const {
    const std::lock_guard lock(mutex_);
    for (const Kept& one : kept_)
      if (one.id == id) return one.bytes;
    return Problem{ProblemCode::not_found, "picture", id, "a picture that was sent not long ago"};
  }

 private:
  struct Kept {
    std::string id;
    std::shared_ptr<const std::string> bytes;
  };
  mutable std::mutex mutex_;
  std::deque<Kept> kept_;
  int next_ = 1;
};

}  // namespace evencount::app::studio
