#pragma once
/// Pictures that a page sent, for work that follows: the last few, in memory.
///
/// Properties (tests/app/studio/uploads_test.cpp):
///  (1) the last `most_kept` are there, and no others
///  (2) no more than `most_bytes` are held in all, those counted that are forgotten here but still wait to be worked on

#include <fmt/format.h>

#include <atomic>
#include <deque>
#include <memory>
#include <mutex>
#include <string>

#include "base/result.hpp"

namespace evencount::app::studio {

class Uploads {
 public:
  static constexpr std::size_t most_kept = 4;
  static constexpr std::size_t most_bytes = std::size_t{256} << 20;  ///< as many of the largest that a request may carry

  explicit Uploads(std::size_t most = most_bytes) : most_(most) {}

  /// The id of what is kept from now on; the oldest goes. Errors: too_many.
  [[nodiscard]] Result<std::string> keep(std::string bytes) {
    const std::lock_guard lock(mutex_);
    if (kept_.size() >= most_kept) kept_.pop_front();
    while (!kept_.empty() && *held_ + bytes.size() > most_) kept_.pop_front();
    if (*held_ + bytes.size() > most_)
      return Problem{ProblemCode::too_many, "picture", fmt::format("{} bytes, beside what waits to be worked on", bytes.size()),
                     fmt::format("at most {} in all", most_)};
    *held_ += bytes.size();
    const auto count_out = [held = held_](const std::string* text) {
      *held -= text->size();
      delete text;
    };
    kept_.push_back({std::to_string(next_++), std::shared_ptr<const std::string>(new std::string(std::move(bytes)), count_out)});
    return kept_.back().id;
  }

  /// Errors: not_found.
  [[nodiscard]] Result<std::shared_ptr<const std::string>> find(const std::string& id) const {
    const std::lock_guard lock(mutex_);
    for (const Kept& one : kept_)
      if (one.id == id) return one.bytes;
    return Problem{ProblemCode::not_found, "picture", id, "a picture that was sent not long ago"};
  }

  /// While it is held, nobody else decodes for a request: the pixels of a large picture take a gigabyte.
  [[nodiscard]] std::unique_lock<std::mutex> turn_to_decode() { return std::unique_lock(decoding_); }

 private:
  struct Kept {
    std::string id;
    std::shared_ptr<const std::string> bytes;
  };
  const std::size_t most_;
  mutable std::mutex mutex_;
  std::mutex decoding_;
  /// Work may outlive this.
  std::shared_ptr<std::atomic<std::size_t>> held_ = std::make_shared<std::atomic<std::size_t>>(0);
  std::deque<Kept> kept_;
  int next_ = 1;
};

}  // namespace evencount::app::studio
