#include "app/studio/connections.hpp"

#include <sys/socket.h>

namespace evencount::app::studio {
namespace {
constexpr std::chrono::milliseconds between_looks{100};
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

bool Connections::begin() {
  const std::lock_guard lock(mutex_);
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
  connections_.waits_[socket_] = {Time::max(), false, false};
  if (connections_.closing_) ::shutdown(socket_, SHUT_RDWR);
}

Connections::Entry::~Entry() {
  const std::lock_guard lock(connections_.mutex_);
  connections_.waits_.erase(socket_);
}

void Connections::Entry::allow(int seconds, bool both) {
  const std::lock_guard lock(connections_.mutex_);
  Wait& wait = connections_.waits_[socket_];
  wait.until = std::chrono::steady_clock::now() + std::chrono::seconds(seconds), wait.both = both;
}

bool Connections::Entry::expired() const {
  const std::lock_guard lock(connections_.mutex_);
  return connections_.waits_[socket_].expired;
}

}  // namespace evencount::app::studio
