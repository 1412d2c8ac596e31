#include "app/studio/events.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace evencount::app::studio {

Events::Reader::Reader(Events& events) : events_(events) {}

Events::Reader::~Reader() {
  const std::lock_guard lock(events_.mutex_);
  std::erase(events_.readers_, this);
}

std::optional<std::string> Events::Reader::next() {
  std::unique_lock lock(events_.mutex_);
  events_.told_.wait_for(lock, look, [this] { return events_.closed_ || !waiting_.empty(); });
  if (events_.closed_) return std::nullopt;
  const auto now = std::chrono::steady_clock::now();
  if (waiting_.empty() && now - sent_ < heartbeat) return "";
  sent_ = now;
  if (waiting_.empty()) return ": still here\n\n";
  std::string text;
  for (const auto& [name, event] : waiting_) text += event;
  waiting_.clear();
  return text;
}

Result<std::shared_ptr<Events::Reader>> Events::join(const std::function<std::string()>& first) {
  std::shared_ptr<Reader> reader;
  {
    const std::lock_guard lock(mutex_);
    if (closed_ || readers_.size() >= static_cast<std::size_t>(most_readers_))
      return Problem{ProblemCode::too_many, "events", fmt::format("more than {} streams", most_readers_),
                     "one for all tabs of a browser"};
    reader = std::make_shared<Reader>(*this);
    readers_.push_back(reader.get());
  }
  // Without the lock: whoever is asked may be waiting to tell.
  const std::string text = first();
  const std::lock_guard lock(mutex_);
  reader->waiting_[""] = "retry: 2000\n\n" + text;  // the first of all names
  return reader;
}

void Events::tell(const std::string& name, std::string_view event, std::string_view data) {
  const std::string text = event_text(event, data);
  const std::lock_guard lock(mutex_);
  for (Reader* reader : readers_) reader->waiting_[name] = text;
  told_.notify_all();
}

void Events::close() {
  const std::lock_guard lock(mutex_);
  closed_ = true;
  told_.notify_all();
}

std::string event_text(std::string_view event, std::string_view data) {
  return fmt::format("event: {}\ndata: {}\n\n", event, data);
}

}  // namespace evencount::app::studio
