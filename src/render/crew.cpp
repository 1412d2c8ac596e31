#include "render/crew.hpp"

#include <algorithm>
#include <atomic>
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
  std::vector<std::thread> others;
  for (int i = 1; i < std::min(threads, count); ++i)
    others.emplace_back([&] {
      for (int mine; !stopped && (mine = next++) < count;) job(mine);
    });
  for (int mine; !stopped && (mine = next++) < count;) {
    job(mine);
    if (after && !after()) stopped = true;
  }
  for (std::thread& other : others) other.join();
  return !stopped;
}

}  // namespace evencount::render
