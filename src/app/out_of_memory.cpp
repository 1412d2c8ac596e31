#include "app/out_of_memory.hpp"

#include <signal.h>
#include <sys/mman.h>
#include <unistd.h>

#include <cstdlib>
#include <exception>
#include <new>

#include "app/console.hpp"

namespace evencount::app {
namespace {

/// What malloc asks the system for at a time where it has nothing left is 1 MiB or less (glibc 2.36, malloc/malloc.c, MMAP_AS_MORECORE_SIZE);
/// a library that fails for want of memory mostly asked for more.
constexpr std::size_t probe_bytes = 64u << 20;

bool memory_is_used_up() {
  void* const probe = ::mmap(nullptr, probe_bytes, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS | MAP_NORESERVE, -1, 0);
  if (probe == MAP_FAILED) return true;
  ::munmap(probe, probe_bytes);
  return false;
}

void say(std::string_view text) {
  // NOLINTNEXTLINE(bugprone-unused-return-value): there is nobody left to tell
  if (::write(STDERR_FILENO, text.data(), text.size()) < 0) return;
}

/// Only what a signal handler may call.
void on_sudden_end(int signal) {
  const bool used_up = memory_is_used_up();
  if (used_up || signal == SIGTRAP) {
    say("\nevencount: ");  // what a library said may end without a line's end
    say(used_up ? out_of_memory : out_of_threads);
    say("\n");
    ::_exit(exit_failure);
  }
  ::raise(signal);  // its own way: the handler was for once
}

[[noreturn]] void on_terminate() {
  if (const std::exception_ptr thrown = std::current_exception()) {
    try {
      std::rethrow_exception(thrown);
    } catch (const std::bad_alloc&) {
      say("evencount: ");
      say(out_of_memory);
    } catch (const std::exception& fault) {
      say("evencount: ");
      say(fault.what());
      say("; no file was left half-written");
    } catch (...) {
      std::abort();
    }
    say("\n");
    ::_exit(exit_failure);
  }
  std::abort();
}

}  // namespace

void end_plainly_without_memory() {
  std::set_terminate(on_terminate);
  struct sigaction action {};
  action.sa_handler = on_sudden_end;
  action.sa_flags = static_cast<int>(SA_RESETHAND | SA_NODEFER);
  for (const int signal : {SIGABRT, SIGTRAP, SIGSEGV}) {
    struct sigaction before {};
    // A sanitizer's own stays, and so does what whoever started us wants.
    if (::sigaction(signal, nullptr, &before) == 0 && before.sa_handler == SIG_DFL) ::sigaction(signal, &action, nullptr);
  }
}

}  // namespace evencount::app
