#pragma once
/// What the server says on standard error, a line at a time from any thread.
///
/// Properties (tests/app/studio/log_test.cpp):
///  (1) whatever was sent, a line is one line, and no terminal obeys what stands in it

#include <mutex>
#include <ostream>
#include <string>
#include <string_view>

namespace evencount::app::studio {

/// The text with '?' for control characters, for those that turn the direction of writing, and for bytes that are no UTF-8.
[[nodiscard]] std::string without_controls(std::string_view text);

class Log {
 public:
  explicit Log(std::ostream& out) : out_(out) {}
  void line(std::string_view text);

 private:
  std::ostream& out_;
  std::mutex mutex_;
};

}  // namespace evencount::app::studio
