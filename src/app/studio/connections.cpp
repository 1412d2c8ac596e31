#include "app/studio/connections.hpp"

#include <sys/socket.h>

namespace evencount::app::studio {
namespace {
constexpr std::chrono::milliseconds between_looks{100};
/// For a connection's thread to begin or to go, on a busy machine.
constexpr std::chrono::seconds for_room{2};
}

Connections::Connections(int most) : most_(most), watchdog_([this] { watch(); }) {}

Connections::~Connections() {
  end_all();
  {
    const std::lock_guard lock(mutex_);
    ended_ = true;
  }
  changed_.notify_all();
  watchdog_.join();
}

void Connections::watch() {
  std::unique_lock lock(mutex_);
  while (!changed_.wait_for(lock, between_looks, [this] { return ended_; })) {
    const Time now = std::chrono::steady_clock::now();
    for (auto& [socket, wait] : waits_) {
      if (wait.expired || now < wait.until) continue;
      wait.expired = true;
      ::shutdown(socket, wait.both ? SHUT_RDWR : SHUT_RD);
    }
  }
}

/// Ends one at a time. Whoever opens connections and leaves them ages first: the person's own come and go in a moment.
void Connections::make_room(std::unique_lock<std::mutex>& lock) {
  const Time patience = std::chrono::steady_clock::now() + for_room;
  while (!closing_ && open_ >= most_) {
    auto longest = waits_.end();
    bool one_is_ending = false;
    for (auto wait = waits_.begin(); wait != waits_.end(); ++wait) {
      one_is_ending = one_is_ending || wait->second.makes_room;
      if (!wait->second.working && (longest == waits_.end() || wait->second.since < longest->second.since)) longest = wait;
    }
    if (longest != waits_.end() && !one_is_ending) {
      ::shutdown(longest->first, SHUT_RDWR);
      longest->second.makes_room = longest->second.working = true;
      longest->second.until = Time::max();
    }
    if (changed_.wait_until(lock, patience) == std::cv_status::timeout) return;
  }
}

bool Connections::begin() {
  std::unique_lock lock(mutex_);
  if (!closing_ && open_ >= most_) make_room(lock);
  if (closing_ || open_ >= most_) return false;
  ++open_;
  return true;
}

void Connections::end() {
  const std::lock_guard lock(mutex_);
  --open_;
  changed_.notify_all();
}

bool Connections::closing() const {
  const std::lock_guard lock(mutex_);
  return closing_;
}

void Connections::end_all() {
  std::unique_lock lock(mutex_);
  closing_ = true;
  for (const auto& [socket, wait] : waits_) ::shutdown(socket, SHUT_RDWR);
  changed_.wait(lock, [this] { return open_ == 0; });
}

Connections::Entry::Entry(Connections& connections, int socket) : connections_(connections), socket_(socket) {
  const std::lock_guard lock(connections_.mutex_);
  connections_.waits_[socket_] = {.until = Time::max(), .since = std::chrono::steady_clock::now()};
  connections_.changed_.notify_all();
  if (connections_.closing_) ::shutdown(socket_, SHUT_RDWR);
}

Connections::Entry::~Entry() {
  const std::lock_guard lock(connections_.mutex_);
  connections_.waits_.erase(socket_);
}

void Connections::Entry::allow(int seconds, bool both) {
  const std::lock_guard lock(connections_.mutex_);
  Wait& wait = connections_.waits_[socket_];
  wait.since = std::chrono::steady_clock::now();
  wait.until = wait.since + std::chrono::seconds(seconds);
  wait.both = both, wait.expired = false, wait.working = wait.makes_room;
  connections_.changed_.notify_all();
}

void Connections::Entry::work() {
  const std::lock_guard lock(connections_.mutex_);
  Wait& wait = connections_.waits_[socket_];
  wait.working = true, wait.until = Time::max();
}

bool Connections::Entry::expired() const {
  const std::lock_guard lock(connections_.mutex_);
  return connections_.waits_[socket_].expired;
}

}  // namespace evencount::app::studio
