#pragma once
/// Shows an address in the browser of the person who started the studio.

#include <sys/types.h>

#include <mutex>
#include <string>

#include "base/result.hpp"

namespace evencount::app::studio {

/// A page in a file that only this user can read, which leads to the address: what a program is started with can be read by every user
/// of a machine, and the address holds the studio's key. So that a crash leaves no key behind, the file goes as soon as it has been
/// followed, when whoever was to open it failed, and with this.
class Browser {
 public:
  /// What the address in the file carries besides, so that it is known which one was followed: "/?from=file&key=…".
  static constexpr const char* from_field = "from";
  static constexpr const char* from_file = "file";

  Browser() = default;
  Browser(const Browser&) = delete;
  Browser& operator=(const Browser&) = delete;
  ~Browser();

  /// Writes the file and starts the desktop's opener (xdg-open). Done means that it was started: whether it finds a browser is known
  /// when it ends, and `opener_result` tells. To be called once.
  /// Errors: system_failure (no xdg-open, no place for the file).
  [[nodiscard]] Result<Done> show(const std::string& server, const std::string& key);

  /// Takes the file away; nothing if it is gone already. Any thread may call it.
  void forget_file();

  /// To be asked after SIGCHLD. Once, after the opener has ended without having opened anything, what is to be done instead;
  /// done while it runs, when it went well, and when the file has been followed all the same.
  /// Errors: system_failure.
  [[nodiscard]] Result<Done> opener_result();

 private:
  std::mutex mutex_;
  std::string file_;  ///< empty when there is none
  pid_t opener_ = 0;  ///< 0 when none runs
};

}  // namespace evencount::app::studio
