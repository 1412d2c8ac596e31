#pragma once
/// How many bytes may be held at once for all connections together.
///
/// Properties (tests/app/studio/byte_budget_test.cpp):
///  (1) what is taken together is never more than the most, but by one that is alone
///  (2) what is given back can be taken again

#include <cstddef>
#include <mutex>
#include <optional>
#include <utility>

namespace evencount::app::studio {

class ByteBudget {
 public:
  explicit ByteBudget(std::size_t most) : most_(most) {}

  /// What was taken; given back when it goes.
  class Share {
   public:
    Share(Share&& other) noexcept : budget_(std::exchange(other.budget_, nullptr)), bytes_(other.bytes_) {}
    Share(const Share&) = delete;
    Share& operator=(const Share&) = delete;
    Share& operator=(Share&&) = delete;
    ~Share() {
      if (budget_) budget_->give_back(bytes_);
    }

   private:
    friend class ByteBudget;
    Share(ByteBudget& budget, std::size_t bytes) : budget_(&budget), bytes_(bytes) {}
    ByteBudget* budget_;
    std::size_t bytes_;
  };

  /// Nothing when others hold so much that this would be too much.
  [[nodiscard]] std::optional<Share> take(std::size_t bytes) {
    const std::lock_guard lock(mutex_);
    if (taken_ > 0 && (taken_ >= most_ || bytes > most_ - taken_)) return std::nullopt;
    taken_ += bytes;
    return Share(*this, bytes);
  }
  [[nodiscard]] std::size_t most() const { return most_; }

 private:
  void give_back(std::size_t bytes) {
    const std::lock_guard lock(mutex_);
    taken_ -= bytes;
  }

  const std::size_t most_;
  std::mutex mutex_;
  std::size_t taken_ = 0;
};

}  // namespace evencount::app::studio
