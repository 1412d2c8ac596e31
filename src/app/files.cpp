#include "app/files.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>

namespace evencount::app {
namespace {

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
  /// Closes now and tells whether that went well: a full disk may show only here.
  bool close() { return ::close(std::exchange(number_, -1)) == 0; }

 private:
  int number_;
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
int fill_temporary(Descriptor& file, std::string_view bytes, mode_t mode) {
  if (!write_all(file.number(), bytes)) return errno;
  if (::fchmod(file.number(), mode) != 0) return errno;
  if (::fsync(file.number()) != 0) return errno;
  if (!file.close()) return errno;
  return 0;
}

mode_t mode_for(const std::string& path) {
  struct stat status {};
  constexpr mode_t permissions = 07777;
  if (::stat(path.c_str(), &status) == 0) return status.st_mode & permissions;
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return 0666 & ~mask;
}

/// Where the bytes really go: the end of any chain of links.
std::string target_of(const std::string& path) {
  std::error_code error;
  const auto target = std::filesystem::weakly_canonical(path, error);
  return error ? path : target.string();
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
  if (::stat(target.c_str(), &status) == 0 && !S_ISREG(status.st_mode))
    return Problem{ProblemCode::file_unwritable, path, "something that is not a file", "a file name"};
  const mode_t mode = mode_for(target);
  std::string temporary = target + ".XXXXXX";
  Descriptor file(::mkstemp(temporary.data()));
  if (file.number() < 0) return unwritable(path, errno);
  int error = fill_temporary(file, bytes, mode);
  if (error == 0 && ::rename(temporary.c_str(), target.c_str()) != 0) error = errno;
  if (error != 0) {
    ::unlink(temporary.c_str());
    return unwritable(path, error);
  }
  // The rename itself is on disk only once its folder is.
  const std::string folder = std::filesystem::path(target).parent_path().string();
  const Descriptor directory(
      ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (directory.number() >= 0) ::fsync(directory.number());
  return Done{};
}

}  // namespace evencount::app
