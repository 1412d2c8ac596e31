#pragma once
/// Shows an address in the browser of the person who started the studio.

#include <sys/types.h>

#include <string>

#include "base/result.hpp"

namespace evencount::app::studio {

/// A page in a file that only this user can read, which leads to the address: what a program is started with can be read by every user
/// of a machine, and the address holds the studio's key. The file goes with this.
class Browser {
 public:
  /// Asks the desktop (xdg-open) to show it, and does not wait.
  /// Errors: system_failure (no xdg-open, no place for the file).
  [[nodiscard]] static Result<Browser> show(const std::string& address);

  Browser(Browser&& other) noexcept;
  Browser& operator=(Browser&&) = delete;
  ~Browser();

 private:
  explicit Browser(std::string file) : file_(std::move(file)) {}
  std::string file_;
  pid_t opener_ = 0;
};

}  // namespace evencount::app::studio
