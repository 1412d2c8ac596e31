#include "app/studio/browser.hpp"

#include <fmt/format.h>
#include <signal.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <utility>

#include "app/places.hpp"

namespace evencount::app::studio {
namespace {

namespace fs = std::filesystem;

Problem failure(const char* where, int error) {
  return {ProblemCode::system_failure, where, std::strerror(error), "a browser to open; without --open the address is only printed"};
}

/// The address is ours: digits, letters, and nothing that HTML would read.
std::string page_that_leads_to(const std::string& address) {
  return fmt::format("<!doctype html><meta charset=\"utf-8\"><meta name=\"referrer\" content=\"no-referrer\"><title>Evencount</title>"
                     "<meta http-equiv=\"refresh\" content=\"0; url={0}\"><p><a href=\"{0}\">Open the studio</a></p>\n",
                     address);
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

Result<Browser> Browser::show(const std::string& address) {
  std::error_code error;
  fs::path folder = variable("XDG_RUNTIME_DIR");
  if (!fs::is_directory(folder, error)) folder = fs::temp_directory_path(error);
  std::string name = (folder / "evencount-XXXXXX.html").string();
  const int file = ::mkstemps(name.data(), 5);  // ".html"; readable by this user alone
  if (file < 0) return failure("a file for the browser", errno);
  Browser browser(name);
  const std::string page = page_that_leads_to(address);
  const bool written = ::write(file, page.data(), page.size()) == static_cast<ssize_t>(page.size());
  ::close(file);
  if (!written) return failure("a file for the browser", ENOSPC);
  if (const int failed = start("xdg-open", name, browser.opener_); failed != 0) return failure("xdg-open", failed);
  return browser;
}

Browser::Browser(Browser&& other) noexcept : file_(std::exchange(other.file_, "")), opener_(std::exchange(other.opener_, 0)) {}

Browser::~Browser() {
  if (!file_.empty()) ::unlink(file_.c_str());
  if (opener_ > 0) ::waitpid(opener_, nullptr, WNOHANG);
}

}  // namespace evencount::app::studio
