#include "app/studio/api.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>
#include <unordered_set>

#include "base/text.hpp"

namespace evencount::app::studio {
namespace {

constexpr int deepest_json = 64;                    // as a project's file
constexpr std::size_t most_json_values = 8'000'000;  // as a project's file
constexpr std::size_t most_json_names = 1'000;       // in one object; the library looks through all of them for each

std::array<std::span<const Route>, 11> tables() {
  return {project_routes(), table_routes(),   view_routes(),   round_routes(),  drawing_routes(),
          job_routes(),     picture_routes(), strand_routes(), colour_routes(), resize_routes(),
          render_routes()};
}

/// The names in a path, if it is of this address.
std::optional<std::vector<std::string>> match(std::string_view address,
                                              const std::vector<std::string>& path) {
  const auto parts = split(address.substr(1), '/');
  if (parts.size() != path.size()) return std::nullopt;
  std::vector<std::string> names;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (parts[i].starts_with('{'))
      names.push_back(path[i]);
    else if (parts[i] != path[i])
      return std::nullopt;
  }
  return names;
}

struct Found {
  const Route* route = nullptr;
  std::vector<std::string> names;
  std::string methods;  ///< of the address, where the method is another
};

Found find_route(const Head& head) {
  Found found;
  const std::string method = head.method == "HEAD" ? "GET" : head.method;
  for (const auto table : tables())
    for (const Route& route : table) {
      auto names = match(route.address, head.path);
      if (!names) continue;
      if (route.method == method) return {&route, std::move(*names), ""};
      found.methods += (found.methods.empty() ? "" : ", ") + std::string(route.method);
    }
  return found;
}

Problem no_route(const Found& found, const Head& head) {
  if (found.methods.empty())
    return {ProblemCode::not_found, "address", address_without_query(head.target),
            "an address of docs/openapi.yaml"};
  return {ProblemCode::bad_usage, "method", quote(head.method), found.methods};
}

struct Extent {
  bool shallow = true;
  std::size_t values = 1;  ///< no fewer than there are
};

/// How deep brackets nest and how many values there are, before any memory is taken for them; what is in quotes doesn't count.
Extent extent_of(std::string_view text) {
  Extent extent;
  int depth = 0;
  bool in_text = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (in_text) {
      if (c == '\\')
        ++i;
      else if (c == '"')
        in_text = false;
    } else if (c == '"') {
      in_text = true;
    } else if (c == '[' || c == '{') {
      ++extent.values;
      if (++depth > deepest_json) return {false, extent.values};
    } else if (c == ']' || c == '}') {
      --depth;
    } else if (c == ',') {
      ++extent.values;
    }
  }
  return extent;
}

/// The document, or nothing where it isn't one, or has an object with a name twice (other readers would take the other value) or with
/// too many names.
std::optional<Json> parsed(std::string_view text) {
  std::vector<std::unordered_set<std::string>> names;
  bool sound = true;
  const auto look = [&](int, Json::parse_event_t event, Json& part) {
    if (event == Json::parse_event_t::object_start) names.emplace_back();
    if (event == Json::parse_event_t::object_end) names.pop_back();
    if (event == Json::parse_event_t::key)
      sound = sound && names.back().size() < most_json_names && names.back().insert(part.get<std::string>()).second;
    return sound;
  };
  Json json = Json::parse(text, look, false);
  if (json.is_discarded() || !sound) return std::nullopt;
  return json;
}

}  // namespace

Result<std::int64_t> Call::whole(const std::string& name, std::int64_t least, std::int64_t most,
                                 std::optional<std::int64_t> otherwise) const {
  const auto found = request.head.query.find(name);
  const std::string expected = fmt::format("a whole number from {} to {}", least, most);
  if (found == request.head.query.end()) {
    if (otherwise) return *otherwise;
    return Problem{ProblemCode::missing_field, name, "nothing", expected};
  }
  const auto value = parse_integer(found->second);
  if (!value) return Problem{ProblemCode::bad_text, name, quote(found->second), expected};
  if (*value < least || *value > most)
    return Problem{ProblemCode::out_of_range, name, found->second, expected};
  return *value;
}

std::vector<std::string> route_names() {
  std::vector<std::string> names;
  for (const auto table : tables())
    for (const Route& route : table) names.push_back(fmt::format("{} {}", route.method, route.address));
  return names;
}

Result<std::size_t> admit(const Head& head) {
  const Found found = find_route(head);
  if (!found.route) return no_body;  // what it is instead is said by the answer, which needs no body
  return found.route->most_body;
}

Response answer(Studio& studio, const Request& request) {
  const Found found = find_route(request.head);
  if (!found.route) {
    Response response = problem_response(no_route(found, request.head));
    if (!found.methods.empty()) {
      response.status = 405;
      response.fields.emplace_back("Allow", found.methods);
    }
    return response;
  }
  Response response = found.route->answer(studio, {request, found.names});
  response.fields.emplace_back("Cache-Control", "no-store");
  return response;
}

Problem of_own_stock(Problem problem) {
  problem.where = "stock";
  return problem;
}

Response json_response(const Json& json) {
  Response response;
  response.body = json_line(json) + "\n";
  return response;
}

Result<Json> read_json(std::string_view text) {
  const Problem bad{ProblemCode::bad_json, "body", quote(text),
                    fmt::format("JSON, nested at most {} deep, at most {} names in an object, each once", deepest_json, most_json_names)};
  const Extent extent = extent_of(text);
  // The parser takes a zero byte for the end.
  if (!is_utf8(text) || !extent.shallow || text.find('\0') != std::string_view::npos) return bad;
  if (extent.values > most_json_values)
    return Problem{ProblemCode::out_of_range, "body", fmt::format("about {} values", extent.values),
                   fmt::format("at most {}", most_json_values)};
  auto json = parsed(text);
  if (!json) return bad;
  return std::move(*json);
}

}  // namespace evencount::app::studio
