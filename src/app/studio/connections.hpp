#pragma once
/// The sockets that are open, and until when each may wait: the server's synchronous reads have no time-outs of their own.

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
    /// From now on the socket's reading (or, with `both`, all of it) ends after so many seconds.
    void allow(int seconds, bool both = false);
    /// Whether a time was over.
    [[nodiscard]] bool expired() const;

   private:
    Connections& connections_;
    const int socket_;
  };

  /// Whether there is room for another.
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
  };
  void watch();

  const int most_;
  mutable std::mutex mutex_;
  std::condition_variable changed_;
  std::map<int, Wait> waits_;  ///< by socket
  int open_ = 0;
  bool closing_ = false, ended_ = false;
  std::thread watchdog_;
};

}  // namespace evencount::app::studio
