#pragma once
/// The sockets that are open, and until when each may wait: the server's synchronous reads have no time-outs of their own.
///
/// Properties (tests/app/studio/connections_test.cpp):
///  (1) no more are open than the most
///  (2) when all places are taken, the one that has waited longest for its other side is ended for the newcomer; one that is worked for
///      never is
///  (3) a wait ends after its seconds, and the next one has all of its own

#include <chrono>
#include <condition_variable>
#include <map>
#include <mutex>
#include <thread>

namespace evencount::app::studio {

class Connections {
 public:
  explicit Connections(int most);
  ~Connections();
  Connections(const Connections&) = delete;
  Connections& operator=(const Connections&) = delete;

  /// One open socket; it must be closed after this goes.
  class Entry {
   public:
    Entry(Connections& connections, int socket);
    ~Entry();
    Entry(const Entry&) = delete;
    Entry& operator=(const Entry&) = delete;
    /// From now on it waits for its other side: the socket's reading (or, with `both`, all of it) ends after so many seconds.
    void allow(int seconds, bool both = false);
    /// From now on it is worked for, and keeps its place until it waits again.
    void work();
    /// Whether a time was over.
    [[nodiscard]] bool expired() const;

   private:
    Connections& connections_;
    const int socket_;
  };

  /// Whether there is room for another; made, where it must be, by ending one that only waits.
  [[nodiscard]] bool begin();
  /// Takes back what `begin` gave.
  void end();
  /// Ends all that are open and waits until none is.
  void end_all();
  [[nodiscard]] bool closing() const;

 private:
  using Time = std::chrono::steady_clock::time_point;
  struct Wait {
    Time until;
    bool both = false, expired = false;
    bool working = false, makes_room = false;
    Time since{};  ///< of waiting
  };
  void watch();
  void make_room(std::unique_lock<std::mutex>& lock);

  const int most_;
  mutable std::mutex mutex_;
  std::condition_variable changed_;
  std::map<int, Wait> waits_;  ///< by socket
  int open_ = 0;
  bool closing_ = false, ended_ = false;
  std::thread watchdog_;
};

}  // namespace evencount::app::studio
