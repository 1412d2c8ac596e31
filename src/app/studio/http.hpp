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
  /// For an event stream: waits for the next piece to send; nothing when it ends. It must come back within `longest_wait`.
  std::function<std::optional<std::string>()> next;
};

/// {"code", "where", "found", "expected", "message"} with the status of the problem's kind.
[[nodiscard]] Response problem_response(const Problem& problem);

struct HttpHandler {
  /// Looks at a request before its body is read: how many bytes of it are taken, or an answer that refuses it.
  std::function<Result<std::size_t>(const Head&)> admit;
  std::function<Response(const Request&)> answer;
  /// A line about what was refused.
  std::function<void(const std::string&)> log;
};

struct HttpLimits {
  int connections = 64;
  std::uint32_t head_bytes = 16 * 1024;
  int head_seconds = 10;  ///< from a request's first byte to the end of its head
  int idle_seconds = 75;  ///< for the first byte of the next request
  int body_seconds = 60;
  int write_seconds = 30;
};

}  // namespace evencount::app::studio
