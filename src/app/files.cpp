#include "app/files.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <limits.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>

namespace evencount::app {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view standard_input = "-";

/// A file descriptor that closes itself.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() {
    if (number_ > STDIN_FILENO) ::close(number_);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  [[nodiscard]] int number() const { return number_; }

 private:
  const int number_;
};

Problem unreadable(const std::string& path, int error) {
  const auto code = error == ENOENT ? ProblemCode::file_not_found : ProblemCode::file_unreadable;
  return {code, path, std::strerror(error), "a file that can be read"};
}

Problem unwritable(const std::string& path, int error) {
  return {ProblemCode::file_unwritable, path, std::strerror(error),
          "a file that can be written; nothing was changed"};
}

bool write_all(int descriptor, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(descriptor, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

/// Writes and syncs the temporary file. Returns an errno, 0 when all is well.
int fill_temporary(const Descriptor& file, std::string_view bytes, mode_t mode) {
  if (!write_all(file.number(), bytes)) return errno;
  if (::fchmod(file.number(), mode) != 0) return errno;
  if (::fsync(file.number()) != 0) return errno;
  // A copy is closed, which tells what closing would; the file itself stays open and with it its lock.
  const int copy = ::dup(file.number());
  if (copy < 0 || ::close(copy) != 0) return errno;
  return 0;
}

constexpr std::string_view part_ending = ".part", part_letters = "XXXXXX";

/// ".NAME." of the temporary files for a path; of a long name the beginning, since names have at most NAME_MAX bytes.
std::string part_prefix(const std::string& name) {
  constexpr std::size_t others = 2 + part_letters.size() + part_ending.size();
  return "." + name.substr(0, NAME_MAX - others) + ".";
}

/// Whether no other process holds the file. A file system without locks lets everybody.
bool take_lock(int descriptor) {
  return ::flock(descriptor, LOCK_EX | LOCK_NB) == 0 || errno != EWOULDBLOCK;
}

/// Removes what killed processes left. Whoever still writes holds a lock.
void remove_leftovers(const fs::path& folder, const std::string& prefix) {
  std::error_code error;
  for (fs::directory_iterator entry(folder, error), end; !error && entry != end; entry.increment(error)) {
    const std::string name = entry->path().filename().string();
    if (name.size() != prefix.size() + part_letters.size() + part_ending.size() || !name.starts_with(prefix) ||
        !name.ends_with(part_ending))
      continue;
    const Descriptor left(::open(entry->path().c_str(), O_RDWR | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK));
    struct stat status {};
    if (left.number() < 0 || ::fstat(left.number(), &status) != 0 || !S_ISREG(status.st_mode)) continue;
    if (::flock(left.number(), LOCK_EX | LOCK_NB) == 0) ::unlink(entry->path().c_str());
  }
}

/// An open, locked, empty file of that pattern, whose name comes back in it; below 0 and errno where there can be none.
int open_temporary(std::string& pattern) {
  constexpr int tries = 10;
  const std::string given = pattern;
  for (int i = 0; i < tries; ++i) {
    pattern = given;
    const int file = ::mkostemps(pattern.data(), static_cast<int>(part_ending.size()), O_CLOEXEC);
    if (file < 0) return file;
    // Between its making and its lock another process may have taken it for a leftover: then the next one.
    struct stat status {};
    if (take_lock(file) && ::fstat(file, &status) == 0 && status.st_nlink > 0) return file;
    ::close(file);
  }
  errno = EBUSY;
  return -1;
}

/// What a new file may not be used for. Asked once: asking means setting it, and other threads make files, too.
mode_t mode_mask() {
  static const mode_t mask = [] {
    const mode_t now = ::umask(0);
    ::umask(now);
    return now;
  }();
  return mask;
}

mode_t mode_for(const std::string& path) {
  struct stat status {};
  constexpr mode_t permissions = 07777;
  if (::stat(path.c_str(), &status) == 0) return status.st_mode & permissions;
  return 0666 & ~mode_mask();
}

/// Where the bytes really go: the end of any chain of links, also of one that leads to nothing yet.
std::string target_of(const std::string& path) {
  constexpr int most_links = 40;  // as many as Linux follows (path_resolution(7))
  fs::path target = path;
  std::error_code error;
  for (int i = 0; i < most_links && fs::is_symlink(fs::symlink_status(target, error)); ++i) {
    const fs::path next = fs::read_symlink(target, error);
    if (error) break;
    target = target.parent_path() / next;  // an absolute one takes the place of all before
  }
  return target.string();
}

}  // namespace

Result<std::string> read_file(const std::string& path) {
  const Descriptor file(path == standard_input ? STDIN_FILENO : ::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (file.number() < 0) return unreadable(path, errno);
  std::string bytes;
  char buffer[65536];
  while (true) {
    const ssize_t count = ::read(file.number(), buffer, sizeof buffer);
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) return unreadable(path, errno);
    if (count == 0) return bytes;
    bytes.append(buffer, static_cast<std::size_t>(count));
    if (bytes.size() > largest_input)
      return Problem{ProblemCode::out_of_range, path, "a file of more than 64 MiB", "at most 64 MiB"};
  }
}

Result<Done> write_file(const std::string& path, std::string_view bytes) {
  const std::string target = target_of(path);
  struct stat status {};
  if (::stat(target.c_str(), &status) != 0) {
    if (errno != ENOENT) return unwritable(path, errno);
  } else if (!S_ISREG(status.st_mode)) {
    return Problem{ProblemCode::file_unwritable, path, "something that is not a file", "a file name"};
  } else if (::access(target.c_str(), W_OK) != 0) {
    return unwritable(path, errno);  // renaming would get past its protection
  }
  const mode_t mode = mode_for(target);
  const fs::path folder = fs::path(target).has_parent_path() ? fs::path(target).parent_path() : ".";
  const std::string prefix = part_prefix(fs::path(target).filename().string());
  remove_leftovers(folder, prefix);
  std::string temporary = (folder / fmt::format("{}{}{}", prefix, part_letters, part_ending)).string();
  const Descriptor file(open_temporary(temporary));
  if (file.number() < 0) return unwritable(path, errno);
  int error = fill_temporary(file, bytes, mode);
  if (error == 0 && ::rename(temporary.c_str(), target.c_str()) != 0) error = errno;
  if (error != 0) {
    ::unlink(temporary.c_str());
    return unwritable(path, error);
  }
  // The rename itself is on disk only once its folder is.
  const Descriptor directory(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (directory.number() >= 0) ::fsync(directory.number());
  return Done{};
}

}  // namespace evencount::app
