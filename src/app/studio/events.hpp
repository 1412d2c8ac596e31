#pragma once
/// What happens, told to every page at once: one stream of server-sent events for each.
///
/// Only the newest of what is told under one name waits for a slow reader, so that nothing grows.

#include <chrono>
#include <condition_variable>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include "base/result.hpp"

namespace evencount::app::studio {

class Events {
 public:
  static constexpr int usual_readers = 16;  ///< windows, of all devices; each holds a connection

  explicit Events(int most_readers = usual_readers) : most_readers_(most_readers) {}

  class Reader {
   public:
    explicit Reader(Events& events);
    ~Reader();
    Reader(const Reader&) = delete;
    Reader& operator=(const Reader&) = delete;
    /// What there is to send, after waiting for it: events, or a comment after `heartbeat`, so that a connection that broke off is
    /// noticed; an empty text after `look`. Nothing when the stream ends.
    [[nodiscard]] std::optional<std::string> next();

   private:
    friend class Events;
    Events& events_;
    std::map<std::string, std::string> waiting_;  ///< by name
    std::chrono::steady_clock::time_point sent_ = std::chrono::steady_clock::now();
  };

  /// `first` says what the new reader gets before all else. It is asked when the reader already listens: what happens meanwhile is told
  /// after it, and nothing falls between. Errors: too_many.
  [[nodiscard]] Result<std::shared_ptr<Reader>> join(const std::function<std::string()>& first);

  /// `event` with data (JSON on one line); `name` tells which earlier one it takes the place of.
  void tell(const std::string& name, std::string_view event, std::string_view data);

  /// Ends every stream.
  void close();

  static constexpr std::chrono::seconds heartbeat{15}, look{1};

 private:
  const int most_readers_;
  std::mutex mutex_;
  std::condition_variable told_;
  std::vector<Reader*> readers_;
  bool closed_ = false;
};

/// One event as it is sent.
[[nodiscard]] std::string event_text(std::string_view event, std::string_view data);

}  // namespace evencount::app::studio
