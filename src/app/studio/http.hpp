#pragma once
/// Requests and answers of the studio's server, as plain values.

#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/result.hpp"

namespace evencount::app::studio {

/// What stands before a request's body.
struct Head {
  std::string method;                              ///< "GET"
  std::string target;                              ///< as it came: "/api/projects/a%20b?after=3"
  std::vector<std::string> path;                   ///< its segments, decoded: {"api", "projects", "a b"}
  std::map<std::string, std::string> query;        ///< decoded; of a name given twice the last
  std::multimap<std::string, std::string> fields;  ///< by name in small letters

  /// Empty when the request has it not, or more than once.
  [[nodiscard]] std::string field(const std::string& name) const;
  [[nodiscard]] bool is_api() const { return !path.empty() && path.front() == "api"; }
  [[nodiscard]] bool changes() const { return method != "GET" && method != "HEAD"; }
};

/// Path and query of a target. Errors: bad_text (no leading slash, percent signs without two digits, NUL, bytes that are no UTF-8).
[[nodiscard]] Result<Done> read_target(std::string_view target, Head& head);

struct Request {
  Head head;
  std::string body;
};

struct Response {
  int status = 200;
  std::string type = "application/json";
  std::string body;
  std::vector<std::pair<std::string, std::string>> fields;
  /// For an event stream: waits for the next piece to send; nothing when it ends. It comes back within a second or so, with an empty
  /// piece when there is none yet, so that a reader who has gone is noticed.
  std::function<std::optional<std::string>()> next;
};

/// {"code", "where", "found", "expected", "message"} with the status of the problem's kind.
[[nodiscard]] Response problem_response(const Problem& problem);

/// 503: the machine gives no more of `what` ("memory", "threads") just now; the server goes on.
[[nodiscard]] Response exhausted_response(const std::string& what);

struct HttpHandler {
  /// Looks at a request before its body is read: how many bytes of it are taken, or an answer that refuses it.
  std::function<Result<std::size_t>(const Head&)> admit;
  std::function<Response(const Request&)> answer;
  /// A line about what was refused.
  std::function<void(const std::string&)> log;
  /// Fields of every answer, the server's own refusals too, that the answer doesn't set otherwise.
  std::vector<std::pair<std::string, std::string>> fields;
};

/// A request's address as it may be written down: what stands behind a question mark, a key perhaps, stays out.
[[nodiscard]] std::string address_without_query(std::string_view target);

/// docs/limits.md gives the reasons once more, beside all others.
struct HttpLimits {
  int connections = 64;                  ///< a thread each; ten tabs of a browser take six
  std::uint32_t head_bytes = 16 * 1024;  ///< browsers send below 4 KiB, from memory
  int head_seconds = 10;                 ///< from a request's first byte to the end of its head
  int idle_seconds = 75;                 ///< for the first byte of the next request
  int body_seconds = 60;
  int write_seconds = 30;
  /// Of all bodies that are being read or worked with: four of the largest.
  std::size_t bodies_bytes = std::size_t{256} << 20;
  /// Of all answers that are being sent: some booklets and pictures at once. One alone may be larger.
  std::size_t answers_bytes = std::size_t{512} << 20;
  /// Below this a body or an answer doesn't count: 64 of them are no burden.
  std::size_t uncounted_bytes = std::size_t{1} << 20;
};

}  // namespace evencount::app::studio
