#pragma once
/// Work done in a process of its own, which may be killed.

#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <functional>

namespace evencount::testing {

class OtherProcess {
 public:
  /// `work` runs in a copy of this process; its result is the exit status.
  explicit OtherProcess(const std::function<int()>& work) : id_(::fork()) {
    if (id_ == 0) ::_exit(work());
  }
  ~OtherProcess() {
    if (id_ > 0) kill();
  }
  OtherProcess(const OtherProcess&) = delete;
  OtherProcess& operator=(const OtherProcess&) = delete;

  [[nodiscard]] bool started() const { return id_ > 0; }
  /// It hasn't ended by itself.
  [[nodiscard]] bool running() {
    int status = 0;
    if (id_ > 0 && ::waitpid(id_, &status, WNOHANG) != 0) id_ = -1;
    return id_ > 0;
  }
  void kill() {
    if (id_ <= 0) return;
    ::kill(id_, SIGKILL);
    static_cast<void>(wait());
  }
  /// The exit status; -1 when it was killed.
  [[nodiscard]] int wait() {
    int status = 0;
    ::waitpid(id_, &status, 0);
    id_ = -1;
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  }

 private:
  ::pid_t id_;
};

/// A value that both processes see.
template <typename Value>
class Shared {
 public:
  Shared() {
    void* place = ::mmap(nullptr, sizeof(Value), PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
    value_ = new (place) Value{};
  }
  ~Shared() { ::munmap(value_, sizeof(Value)); }
  Shared(const Shared&) = delete;
  Shared& operator=(const Shared&) = delete;
  Value& operator*() { return *value_; }
  Value* operator->() { return value_; }

 private:
  Value* value_;
};

}  // namespace evencount::testing
