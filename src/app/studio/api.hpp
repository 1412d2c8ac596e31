#pragma once
/// The programming interface: addresses to functions. docs/openapi.yaml describes it; a test compares the two.

#include <span>

#include "app/json_text.hpp"
#include "app/studio/events.hpp"
#include "app/studio/guard.hpp"
#include "app/studio/http.hpp"
#include "app/studio/jobs.hpp"
#include "app/studio/library.hpp"
#include "app/studio/proofs.hpp"
#include "app/studio/uploads.hpp"

namespace evencount::app::studio {

/// What the routes work with.
struct Studio {
  Library& library;
  Events& events;
  Jobs& jobs;
  Uploads& uploads;
  Proofs& proofs;
  Guard& guard;
  Clock clock;  ///< of milliseconds that only grow, however the wall clock is set
};

/// A request and what its address names: `{project}` and so on, in order.
struct Call {
  const Request& request;
  std::vector<std::string> names;

  [[nodiscard]] std::string query(const std::string& name, const std::string& otherwise = "") const {
    const auto found = request.head.query.find(name);
    return found == request.head.query.end() ? otherwise : found->second;
  }
  /// Errors: bad_text, out_of_range, missing_field (left out, and no other value).
  [[nodiscard]] Result<std::int64_t> whole(const std::string& name, std::int64_t least, std::int64_t most,
                                           std::optional<std::int64_t> otherwise = {}) const;
};

inline constexpr std::size_t no_body = 0, small_body = 1 << 20, project_body = 64u << 20,
                             picture_body = 64u << 20;

struct Route {
  std::string_view method;
  std::string_view address;  ///< "/api/projects/{project}"
  std::size_t most_body;
  Response (*answer)(Studio& studio, const Call& call);
};

[[nodiscard]] std::span<const Route> project_routes();
[[nodiscard]] std::span<const Route> table_routes();
[[nodiscard]] std::span<const Route> view_routes();
[[nodiscard]] std::span<const Route> round_routes();
[[nodiscard]] std::span<const Route> drawing_routes();
[[nodiscard]] std::span<const Route> job_routes();
[[nodiscard]] std::span<const Route> picture_routes();
[[nodiscard]] std::span<const Route> strand_routes();
[[nodiscard]] std::span<const Route> colour_routes();
[[nodiscard]] std::span<const Route> resize_routes();
[[nodiscard]] std::span<const Route> render_routes();

/// "GET /api/about" and all others.
[[nodiscard]] std::vector<std::string> route_names();

/// Errors: not_found (no such address), bad_usage (the address takes other methods; the answer's status is 405).
[[nodiscard]] Result<std::size_t> admit(const Head& head);
[[nodiscard]] Response answer(Studio& studio, const Request& request);

[[nodiscard]] Response json_response(const Json& json);
/// What came of a change; a change that came too late names the newest revision in a field.
[[nodiscard]] Response accepted(Session& session, const Result<Accepted>& done);
[[nodiscard]] Response previewed(Session& session, const Result<Previewed>& would);
/// Work that has been started, or why it hasn't.
[[nodiscard]] Response started(Studio& studio, const Result<std::string>& id);
/// A problem with the designer's own stock, without the place of its file: that lies outside the projects' folder.
[[nodiscard]] Problem of_own_stock(Problem problem);
/// The body as JSON. Errors: bad_json (also: nested deeper than 64, a name twice in one object, a number beyond double), out_of_range
/// (more values than a project's file may hold).
[[nodiscard]] Result<Json> read_json(std::string_view text);

/// Runs `use(session)` on a project's session, or answers why there is none.
template <typename Use>
[[nodiscard]] Response with_session(Studio& studio, const Call& call, Use use) {
  const auto session = studio.library.session(call.names.at(0));
  if (!session) return problem_response(session.problem());
  return use(**session);
}

}  // namespace evencount::app::studio
