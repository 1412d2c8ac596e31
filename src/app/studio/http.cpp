#include "app/studio/http.hpp"

#include <iterator>

#include "app/json_text.hpp"
#include "base/text.hpp"

namespace evencount::app::studio {
namespace {

std::optional<int> hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return std::nullopt;
}

Result<std::string> decoded(std::string_view text, bool plus_is_blank) {
  // What stands in a query may be a key: it isn't repeated.
  const Problem bad{ProblemCode::bad_text, "address", plus_is_blank ? "a query" : quote(text),
                    "UTF-8 with percent signs before two digits"};
  std::string bytes;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '+' && plus_is_blank) {
      bytes += ' ';
    } else if (text[i] == '%') {
      const auto high = i + 2 < text.size() ? hex_digit(text[i + 1]) : std::nullopt;
      const auto low = i + 2 < text.size() ? hex_digit(text[i + 2]) : std::nullopt;
      if (!high || !low) return bad;
      bytes += static_cast<char>(*high * 16 + *low);
      i += 2;
    } else {
      bytes += text[i];
    }
  }
  if (!is_utf8(bytes) || bytes.find('\0') != std::string::npos) return bad;
  return bytes;
}

}  // namespace

std::string Head::field(const std::string& name) const {
  const auto [first, end] = fields.equal_range(name);
  return first != end && std::next(first) == end ? first->second : "";
}

std::string address_without_query(std::string_view target) {
  const auto mark = target.find('?');
  return quote(target.substr(0, mark)) + (mark == std::string_view::npos ? "" : " with a query");
}

Result<Done> read_target(std::string_view target, Head& head) {
  head.target = target;
  if (!target.starts_with('/'))
    return Problem{ProblemCode::bad_text, "address", address_without_query(target), "a path that begins with /"};
  const auto mark = target.find('?');
  for (const std::string_view part :
       split(target.substr(1, mark == std::string_view::npos ? mark : mark - 1), '/')) {
    auto segment = decoded(part, false);
    if (!segment) return segment.problem();
    head.path.push_back(std::move(*segment));
  }
  if (head.path.size() == 1 && head.path.front().empty()) head.path.clear();
  if (mark == std::string_view::npos) return Done{};
  for (const std::string_view pair : split(target.substr(mark + 1), '&')) {
    if (pair.empty()) continue;
    const auto equals = pair.find('=');
    auto name = decoded(pair.substr(0, equals), true);
    auto value = decoded(equals == std::string_view::npos ? "" : pair.substr(equals + 1), true);
    if (!name) return name.problem();
    if (!value) return value.problem();
    head.query[*name] = std::move(*value);
  }
  return Done{};
}

Response problem_response(const Problem& problem) {
  const ProblemKind& kind = problem_kind(problem.code);
  const Json json = {{"code", kind.name},
                     {"where", problem.where},
                     {"found", problem.found},
                     {"expected", problem.expected},
                     {"message", message(problem)}};
  Response response;
  response.status = kind.http_status;
  response.body = json_line(json) + "\n";
  return response;
}

Response exhausted_response(const std::string& what) {
  constexpr int service_unavailable = 503;  // RFC 9110, 15.6.4
  Response response = problem_response({ProblemCode::system_failure, "studio", "no more " + what + " for this",
                                        "less at once; nothing was changed"});
  response.status = service_unavailable;
  return response;
}

}  // namespace evencount::app::studio
