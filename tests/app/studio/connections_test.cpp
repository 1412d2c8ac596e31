#include "app/studio/connections.hpp"

#include <gtest/gtest.h>
#include <sys/socket.h>
#include <unistd.h>

#include <array>
#include <memory>
#include <optional>
#include <thread>
#include <vector>

namespace evencount::app::studio {
namespace {

/// Two ends that are joined; the first is the server's.
struct Pair {
  std::array<int, 2> ends{-1, -1};
  Pair() { EXPECT_EQ(::socketpair(AF_UNIX, SOCK_STREAM, 0, ends.data()), 0); }
  ~Pair() { ::close(ends[0]), ::close(ends[1]); }
  Pair(const Pair&) = delete;
  Pair& operator=(const Pair&) = delete;
  /// Whether the server's end was ended; waits for it when it must come.
  [[nodiscard]] bool is_ended() const {
    char byte = 0;
    return ::recv(ends[0], &byte, 1, MSG_DONTWAIT) == 0;
  }
  void wait_for_end() const {
    char byte = 0;
    EXPECT_EQ(::recv(ends[0], &byte, 1, 0), 0);
  }
};

/// As the server does: reads until the socket ends, then gives its place back.
class Reading {
 public:
  Reading(Connections& connections, bool works) : connections_(connections) {
    entry_.emplace(connections, pair.ends[0]);
    entry_->allow(1000);
    if (works) entry_->work();
    thread_ = std::thread([this] {
      pair.wait_for_end();
      entry_.reset();
      connections_.end();
    });
  }
  ~Reading() {
    ::shutdown(pair.ends[0], SHUT_RDWR);
    thread_.join();
  }
  Reading(const Reading&) = delete;
  Reading& operator=(const Reading&) = delete;
  Pair pair;

 private:
  Connections& connections_;
  std::optional<Connections::Entry> entry_;
  std::thread thread_;
};

TEST(Connections, TheOneThatWaitedLongestMakesRoom) {
  Connections connections(3);
  std::vector<std::unique_ptr<Reading>> open;
  for (int i = 0; i < 3; ++i) {
    ASSERT_TRUE(connections.begin());
    open.push_back(std::make_unique<Reading>(connections, i == 0));
  }
  ASSERT_TRUE(connections.begin()) << "the second is ended, since the first is worked for";
  EXPECT_FALSE(open[0]->pair.is_ended());
  EXPECT_TRUE(open[1]->pair.is_ended());
  EXPECT_FALSE(open[2]->pair.is_ended());
  connections.end();
}

TEST(Connections, WhatIsWorkedForKeepsItsPlace) {
  Connections connections(2);
  std::vector<std::unique_ptr<Reading>> open;
  for (int i = 0; i < 2; ++i) {
    ASSERT_TRUE(connections.begin());
    open.push_back(std::make_unique<Reading>(connections, true));
  }
  EXPECT_FALSE(connections.begin());
  EXPECT_FALSE(open[0]->pair.is_ended() || open[1]->pair.is_ended());
  open.pop_back();
  EXPECT_TRUE(connections.begin()) << "the place is free again";
  connections.end();
}

TEST(Connections, AWaitEndsAndTheNextHasItsOwnTime) {
  Connections connections(1);
  ASSERT_TRUE(connections.begin());
  const Pair pair;
  {
    Connections::Entry entry(connections, pair.ends[0]);
    entry.allow(0);
    pair.wait_for_end();
    EXPECT_TRUE(entry.expired());
    entry.allow(1000, true);
    EXPECT_FALSE(entry.expired());
    EXPECT_EQ(::send(pair.ends[0], "x", 1, MSG_NOSIGNAL), 1) << "an answer can still be given";
    entry.allow(0, true);
    while (!entry.expired()) std::this_thread::yield();
    EXPECT_EQ(::send(pair.ends[0], "x", 1, MSG_NOSIGNAL), -1) << "and is not waited for without end";
  }
  connections.end();
}

TEST(Connections, NoneBeginsWhenItCloses) {
  Connections connections(2);
  ASSERT_TRUE(connections.begin());
  const Reading open(connections, true);
  connections.end_all();
  EXPECT_TRUE(connections.closing());
  EXPECT_FALSE(connections.begin());
}

}  // namespace
}  // namespace evencount::app::studio
