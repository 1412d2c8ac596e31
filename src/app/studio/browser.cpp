#include "app/studio/browser.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <signal.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <filesystem>
#include <string_view>
#include <system_error>

#include "app/places.hpp"

namespace evencount::app::studio {
namespace {

namespace fs = std::filesystem;

Problem failure(const char* where, const std::string& found) {
  return {ProblemCode::system_failure, where, found, "a browser to open; open the address above yourself"};
}

std::string words_of(int error) {
  return std::generic_category().message(error);  // std::strerror need not be safe beside the server's threads
}

/// The address is ours: digits, letters, and nothing that HTML would read (its one & stands before no name of a character).
std::string page_that_leads_to(const std::string& address) {
  return fmt::format("<!doctype html><meta charset=\"utf-8\"><meta name=\"referrer\" content=\"no-referrer\"><title>Evencount</title>"
                     "<meta http-equiv=\"refresh\" content=\"0; url={0}\"><p><a href=\"{0}\">Open the studio</a></p>\n",
                     address);
}

/// The user's own folder for what lasts as long as a session, else the one for temporary files.
Result<fs::path> folder_for_the_file() {
  std::error_code error;
  const fs::path own = variable("XDG_RUNTIME_DIR");
  if (own.is_absolute() && fs::is_directory(own, error)) return own;
  const fs::path temporary = fs::temp_directory_path(error);
  if (error) return failure("a folder for the browser's file", error.message());
  return temporary;
}

/// 0, or what went wrong.
int write_all(int file, std::string_view text) {
  while (!text.empty()) {
    const ssize_t count = ::write(file, text.data(), text.size());
    if (count < 0 && errno != EINTR) return errno;
    if (count > 0) text.remove_prefix(static_cast<std::size_t>(count));
  }
  return 0;
}

/// As a program of its own: Ctrl-C in the terminal ends the studio, not the browser.
int start(const char* program, const std::string& argument, pid_t& child) {
  posix_spawnattr_t attributes;
  ::posix_spawnattr_init(&attributes);
  sigset_t none, usual;
  sigemptyset(&none);
  sigemptyset(&usual);
  sigaddset(&usual, SIGPIPE);
  ::posix_spawnattr_setsigmask(&attributes, &none);
  ::posix_spawnattr_setsigdefault(&attributes, &usual);
  ::posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETSIGMASK | POSIX_SPAWN_SETSIGDEF | POSIX_SPAWN_SETPGROUP);
  posix_spawn_file_actions_t files;
  ::posix_spawn_file_actions_init(&files);
  // What the browser says is not for whoever reads the address from our output.
  ::posix_spawn_file_actions_addopen(&files, STDIN_FILENO, "/dev/null", 0, 0);
  ::posix_spawn_file_actions_addopen(&files, STDOUT_FILENO, "/dev/null", 1, 0);
  ::posix_spawn_file_actions_adddup2(&files, STDOUT_FILENO, STDERR_FILENO);
  // Nor are the server's sockets: the browser outlives the studio, and its port would stay taken.
  ::posix_spawn_file_actions_addclosefrom_np(&files, STDERR_FILENO + 1);
  std::string name = program, word = argument;
  char* const arguments[] = {name.data(), word.data(), nullptr};
  const int error = ::posix_spawnp(&child, program, &files, &attributes, arguments, environ);
  ::posix_spawn_file_actions_destroy(&files);
  ::posix_spawnattr_destroy(&attributes);
  return error;
}

}  // namespace

Browser::~Browser() {
  forget_file();
  if (opener_ > 0) ::waitpid(opener_, nullptr, WNOHANG);
}

Result<Done> Browser::show(const std::string& server, const std::string& key) {
  const auto folder = folder_for_the_file();
  if (!folder) return folder.problem();
  std::string name = (*folder / "evencount-XXXXXX.html").string();
  const int file = ::mkostemps(name.data(), 5, O_CLOEXEC);  // ".html"; readable by this user alone
  if (file < 0) return failure("a file for the browser", words_of(errno));
  {
    const std::lock_guard lock(mutex_);
    file_ = name;
  }
  const int unwritten = write_all(file, page_that_leads_to(fmt::format("{}?{}={}&key={}", server, from_field, from_file, key)));
  ::close(file);
  const int failed = unwritten != 0 ? 0 : start("xdg-open", name, opener_);
  if (unwritten == 0 && failed == 0) return Done{};
  forget_file();
  opener_ = 0;
  return unwritten != 0 ? failure("a file for the browser", words_of(unwritten)) : failure("xdg-open", words_of(failed));
}

void Browser::forget_file() {
  const std::lock_guard lock(mutex_);
  if (!file_.empty()) ::unlink(file_.c_str());
  file_.clear();
}

Result<Done> Browser::opener_result() {
  int status = 0;
  if (opener_ <= 0 || ::waitpid(opener_, &status, WNOHANG) != opener_) return Done{};
  opener_ = 0;
  if (WIFEXITED(status) && WEXITSTATUS(status) == 0) return Done{};
  {
    const std::lock_guard lock(mutex_);
    if (file_.empty()) return Done{};  // a browser that was shut, perhaps, hours later
  }
  forget_file();
  return failure("xdg-open", WIFEXITED(status) ? fmt::format("an end with status {}", WEXITSTATUS(status)) : "a sudden end");
}

}  // namespace evencount::app::studio
