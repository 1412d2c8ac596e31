#include "render/crew.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <system_error>
#include <thread>
#include <vector>

namespace evencount::render {

int threads_for(int asked) {
  return asked > 0 ? asked : std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
}

bool share_out(int threads, int count, const std::function<void(int)>& job,
               const std::function<bool()>& after) {
  std::atomic<int> next = 0;
  std::atomic<bool> stopped = false;
  std::exception_ptr thrown;
  std::mutex throwing;
  const auto guarded = [&](const std::function<void()>& work) {
    try {
      work();
    } catch (...) {
      const std::lock_guard lock(throwing);
      if (!thrown) thrown = std::current_exception();
      stopped = true;
    }
  };
  std::vector<std::thread> others;
  guarded([&] { others.reserve(static_cast<std::size_t>(std::max(0, std::min(threads, count)))); });
  try {
    for (int i = 1; !thrown && i < std::min(threads, count); ++i)
      others.emplace_back([&] {
        guarded([&] {
          for (int mine; !stopped && (mine = next++) < count;) job(mine);
        });
      });
  } catch (const std::system_error&) {  // no more threads: those that there are do it
  }
  guarded([&] {
    for (int mine; !stopped && (mine = next++) < count;) {
      job(mine);
      if (after && !after()) stopped = true;
    }
  });
  for (std::thread& other : others) other.join();
  if (thrown) std::rethrow_exception(thrown);
  return !stopped;
}

}  // namespace evencount::render
