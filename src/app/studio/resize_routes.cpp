#include <algorithm>
#include <map>

#include "app/studio/band_view.hpp"
#include "app/studio/body_fields.hpp"
#include "app/verbs/resize_report.hpp"
#include "base/text.hpp"

namespace evencount::app::studio {
namespace {

/// An object of texts.
std::map<std::string, std::string> texts_by_name(BodyFields& fields, const std::string& name) {
  std::map<std::string, std::string> texts;
  const Json* value = fields.find(name);
  if (!value) return texts;
  if (!value->is_object()) return fields.refuse(name, "an object of texts"), texts;
  for (const auto& [key, text] : value->items()) {
    if (!text.is_string()) return fields.refuse(name, "an object of texts"), texts;
    texts[key] = text.get<std::string>();
  }
  return texts;
}

/// What the operation `resize` takes.
Result<project::ResizeRequest> read_request(const Json& body) {
  BodyFields fields(body);
  project::ResizeRequest request;
  request.beads = texts_by_name(fields, "beads");
  const auto forms = texts_by_name(fields, "forms");
  const std::string flat = fields.text("flat"), carry = fields.text("carry"), border = fields.text("border");
  if (auto good = fields.finish(); !good) return good.problem();
  for (const auto& [id, notation] : forms) {
    auto form = form::parse_form(notation);
    if (!form) return form.problem();
    request.forms.emplace(id, std::move(*form));
  }
  if (!flat.empty()) {
    const auto keeps = project::parse_flat_keeps(flat);
    if (!keeps) return keeps.problem();
    request.flat = *keeps;
  }
  if (!carry.empty()) {
    const auto way = project::parse_carry(carry);
    if (!way) return way.problem();
    request.carry = *way;
  }
  if (!border.empty()) request.border = border;
  return request;
}

std::int64_t beads_in(const chart::Chart& chart) {
  const auto cells = chart.cells();
  return std::count_if(cells.begin(), cells.end(), [](chart::Bead bead) { return bead != chart::no_bead; });
}

/// The report without the single beads that changed, with how many there are before and after.
Json resized_json(const project::Project& before, const project::Resized& resized) {
  Json json = to_json(resized);
  std::size_t at = 0;
  for (Json& band : json["bands"]) {
    band["carry"].erase("changes");
    while (before.bands[at].name != band["name"]) ++at;
    band["before"]["beads"] = beads_in(before.bands[at].chart);
    band["after"]["beads"] = beads_in(resized.project.bands[at].chart);
    ++at;
  }
  return json;
}

Response preview(Studio& studio, const Call& call) {
  const auto body = read_json(call.request.body);
  if (!body) return problem_response(body.problem());
  const auto request = read_request(*body);
  if (!request) return problem_response(request.problem());
  return with_session(studio, call, [&](Session& session) {
    const State state = session.state();
    const auto resized = project::resize(*state.project, *request);
    return of_revision(
        resized ? json_response(resized_json(*state.project, *resized)) : problem_response(resized.problem()),
        state.revision);
  });
}

constexpr Route routes[] = {
    {"POST", "/api/projects/{project}/resized", small_body, preview},
};

}  // namespace

std::span<const Route> resize_routes() {
  return routes;
}

}  // namespace evencount::app::studio
