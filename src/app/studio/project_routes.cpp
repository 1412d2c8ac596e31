#include <fmt/format.h>

#include "app/studio/api.hpp"
#include "base/text.hpp"
#include "project/json.hpp"
#include "project/operation.hpp"

namespace evencount::app::studio {
namespace {

constexpr std::int64_t most_revisions = 1'000'000'000'000;

Json to_json(const Listed& listed) {
  Json json = {
      {"id", listed.id}, {"title", listed.title}, {"changed_ms", listed.changed}, {"bands", listed.bands}};
  if (!listed.problem.empty()) json["problem"] = listed.problem;
  return json;
}

Json text_or_null(const std::string& text) {
  return text.empty() ? Json(nullptr) : Json(text);
}

Response about(Studio& studio, const Call&) {
  Json operations = Json::array();
  for (const std::string_view name : project::operation_names()) operations.push_back(name);
  return json_response({{"version", EVENCOUNT_VERSION},
                        {"folder", studio.library.folder()},
                        {"operations", std::move(operations)},
                        {"routes", route_names()}});
}

Response list_projects(Studio& studio, const Call&) {
  Json projects = Json::array(), examples = Json::array();
  for (const Listed& listed : studio.library.list()) projects.push_back(to_json(listed));
  for (const Listed& listed : studio.library.examples()) examples.push_back(to_json(listed));
  return json_response({{"projects", std::move(projects)}, {"examples", std::move(examples)}});
}

/// An untitled project with a bead and two colours to begin with.
project::Project blank_project(const std::string& title) {
  project::Project project;
  project.title = title;
  project.thread = bead::threads().front();
  project.beads = {*bead::find_size("cylinder-11")};
  project.legend = {{.letter = "A", .name = "ground", .colour = {0x22, 0x2f, 0x4a}, .bead = "cylinder-11"},
                    {.letter = "B", .name = "figure", .colour = {0xf2, 0xe8, 0xd5}, .bead = "cylinder-11"}};
  return project;
}

Result<std::string> text_field(const Json& json, const char* name) {
  const auto found = json.find(name);
  if (found == json.end()) return std::string();
  if (!found->is_string())
    return Problem{ProblemCode::wrong_type, "/" + std::string(name), found->type_name(), "text"};
  return found->get<std::string>();
}

Response created(Studio& studio, const project::Project& project) {
  // Written and read once, so that nothing is begun that can't be opened.
  if (auto good = project::parse_project(project::to_json(project)); !good)
    return problem_response(good.problem());
  const auto id = studio.library.create(project);
  if (!id) return problem_response(id.problem());
  Response response = json_response({{"id", *id}});
  response.status = 201;
  return response;
}

Response create_project(Studio& studio, const Call& call) {
  const auto body = read_json(call.request.body);
  if (!body) return problem_response(body.problem());
  if (!body->is_object())
    return problem_response({ProblemCode::wrong_type, "body", body->type_name(), "an object"});
  for (const auto& [name, value] : body->items())
    if (name != "title" && name != "example" && name != "project")
      return problem_response(
          {ProblemCode::unknown_name, "/" + name, quote(name), "title, example or project"});
  const auto title = text_field(*body, "title"), example = text_field(*body, "example");
  if (!title) return problem_response(title.problem());
  if (!example) return problem_response(example.problem());
  project::Project project = blank_project(title->empty() ? "Untitled" : *title);
  if (!example->empty() || body->contains("project")) {
    auto copied = !example->empty() ? studio.library.example(*example)
                                    : project::parse_project(body->at("project").dump());
    if (!copied) return problem_response(copied.problem());
    project = std::move(*copied);
    if (!title->empty()) project.title = *title;
  }
  return created(studio, project);
}

Response duplicate_project(Studio& studio, const Call& call) {
  const auto session = studio.library.session(call.names[0]);
  if (!session) return problem_response(session.problem());
  project::Project copy = *(*session)->state().project;
  copy.title += " (copy)";
  return created(studio, copy);
}

Response remove_project(Studio& studio, const Call& call) {
  const auto removed = studio.library.remove(call.names[0]);
  return removed ? json_response({{"bin", *removed}}) : problem_response(removed.problem());
}

Response restore_project(Studio& studio, const Call& call) {
  const auto restored = studio.library.restore(call.names[0]);
  return restored ? json_response({{"id", *restored}}) : problem_response(restored.problem());
}

Response read_project(Studio& studio, const Call& call) {
  return with_session(studio, call, [&](Session& session) {
    const State state = session.state();
    const Json about = {{"id", call.names[0]},
                        {"revision", state.revision},
                        {"undo", text_or_null(state.undo)},
                        {"redo", text_or_null(state.redo)},
                        {"file_problem", text_or_null(state.file_problem)}};
    // The project's text as it is saved, not parsed again.
    std::string text = about.dump();
    text.back() = ',';
    Response response;
    response.body = text + "\"project\":" + project::to_json(*state.project) + "}\n";
    return response;
  });
}

Response project_file(Studio& studio, const Call& call) {
  return with_session(studio, call, [&](Session& session) {
    Response response;
    response.body = project::to_json(*session.state().project);
    return response;
  });
}

Response operate(Studio& studio, const Call& call) {
  const auto made_on = call.whole("revision", 0, most_revisions);
  if (!made_on) return problem_response(made_on.problem());
  return with_session(studio, call, [&](Session& session) {
    return accepted(session, session.operate(*made_on, call.request.body));
  });
}

Response preview(Studio& studio, const Call& call) {
  const auto made_on = call.whole("revision", 0, most_revisions);
  if (!made_on) return problem_response(made_on.problem());
  return with_session(studio, call, [&](Session& session) {
    return previewed(session, session.preview(*made_on, call.request.body));
  });
}

Response undo(Studio& studio, const Call& call) {
  const auto made_on = call.whole("revision", 0, most_revisions);
  if (!made_on) return problem_response(made_on.problem());
  return with_session(studio, call,
                      [&](Session& session) { return accepted(session, session.undo(*made_on)); });
}

Response redo(Studio& studio, const Call& call) {
  const auto made_on = call.whole("revision", 0, most_revisions);
  if (!made_on) return problem_response(made_on.problem());
  return with_session(studio, call,
                      [&](Session& session) { return accepted(session, session.redo(*made_on)); });
}

Json to_json(const Revision& revision) {
  Json json = {{"revision", revision.number},
               {"at_ms", revision.at},
               {"doing", doing_name(revision.doing)},
               {"sentence", revision.sentence}};
  if (revision.target != 0) json["of"] = revision.target;
  return json;
}

Response list_history(Studio& studio, const Call& call) {
  const auto before = call.whole("before", 0, most_revisions, most_revisions),
             count = call.whole("count", 1, 1000, 100);
  if (!before) return problem_response(before.problem());
  if (!count) return problem_response(count.problem());
  return with_session(studio, call, [&](Session& session) {
    const auto revisions = session.list(*before, static_cast<int>(*count));
    if (!revisions) return problem_response(revisions.problem());
    Json json = Json::array();
    for (const Revision& revision : *revisions) json.push_back(to_json(revision));
    return json_response({{"revisions", std::move(json)}});
  });
}

Response steps_after(Studio& studio, const Call& call) {
  const auto after = call.whole("after", 0, most_revisions);
  if (!after) return problem_response(after.problem());
  return with_session(studio, call, [&](Session& session) {
    const auto steps = session.steps_after(*after);
    if (!steps) return problem_response(steps.problem());
    // Asked for after the steps: a change that came in between shows as a revision that they do not reach.
    const State state = session.state();
    std::string text = json_line({{"revision", state.revision},
                                  {"undo", text_or_null(state.undo)},
                                  {"redo", text_or_null(state.redo)},
                                  {"file_problem", text_or_null(state.file_problem)}});
    text.back() = ',';
    text += "\"patches\":[";
    for (const Step& step : *steps) {
      std::string head = json_line(to_json(step.revision));
      head.back() = ',';
      text += (text.back() == '[' ? "" : ",") + head + "\"patch\":" + step.patch + "}";
    }
    Response response;
    response.body = text + "]}\n";
    return response;
  });
}

Response save(Studio& studio, const Call& call) {
  return with_session(studio, call, [&](Session& session) {
    const auto saved = session.save();
    return saved ? json_response({{"revision", session.revision()}}) : problem_response(saved.problem());
  });
}

Response events(Studio& studio, const Call&) {
  auto reader = studio.events.join([&studio] {
    Json revisions = Json::object();
    for (const auto& [id, revision] : studio.library.revisions()) revisions[id] = revision;
    return event_text("hello", json_line({{"revisions", std::move(revisions)}}));
  });
  if (!reader) return problem_response(reader.problem());
  Response response;
  response.type = "text/event-stream";
  response.next = [reader = *reader] { return reader->next(); };
  return response;
}

Response pair(Studio& studio, const Call& call) {
  const auto body = read_json(call.request.body);
  if (!body) return problem_response(body.problem());
  const auto code = body->is_object() ? text_field(*body, "code") : Result<std::string>(std::string());
  if (!code) return problem_response(code.problem());
  auto paired = studio.guard.pair(*code, studio.clock());
  return paired ? std::move(*paired) : problem_response(paired.problem());
}

constexpr Route routes[] = {
    {"GET", "/api/about", no_body, about},
    {"POST", "/api/pair", 1024, pair},
    {"GET", "/api/events", no_body, events},
    {"GET", "/api/projects", no_body, list_projects},
    {"POST", "/api/projects", project_body, create_project},
    {"GET", "/api/projects/{project}", no_body, read_project},
    {"DELETE", "/api/projects/{project}", no_body, remove_project},
    {"POST", "/api/bin/{binned}/restore", no_body, restore_project},
    {"GET", "/api/projects/{project}/file", no_body, project_file},
    {"POST", "/api/projects/{project}/duplicate", no_body, duplicate_project},
    {"POST", "/api/projects/{project}/operations", project_body, operate},
    {"POST", "/api/projects/{project}/preview", project_body, preview},
    {"POST", "/api/projects/{project}/undo", no_body, undo},
    {"POST", "/api/projects/{project}/redo", no_body, redo},
    {"POST", "/api/projects/{project}/save", no_body, save},
    {"GET", "/api/projects/{project}/history", no_body, list_history},
    {"GET", "/api/projects/{project}/patches", no_body, steps_after},
};

}  // namespace

namespace {

Response refused(Session& session, const Problem& problem) {
  Response response = problem_response(problem);
  if (problem.code == ProblemCode::out_of_date)
    response.fields.emplace_back("X-Evencount-Revision", std::to_string(session.revision()));
  return response;
}

/// An object with a patch, which is JSON already.
Response with_patch(const Json& json, const std::string& patch) {
  std::string text = json_line(json);
  text.back() = ',';
  Response response;
  response.body = text + "\"patch\":" + patch + "}\n";
  return response;
}

}  // namespace

Response previewed(Session& session, const Result<Previewed>& would) {
  if (!would) return refused(session, would.problem());
  return with_patch({{"revision", would->on}, {"sentence", would->sentence}}, would->patch);
}

Response accepted(Session& session, const Result<Accepted>& done) {
  if (!done) return refused(session, done.problem());
  const Json json = {{"revision", done->revision},
                     {"sentence", done->sentence},
                     {"undo", text_or_null(done->undo)},
                     {"redo", text_or_null(done->redo)}};
  return with_patch(json, done->patch);
}

std::span<const Route> project_routes() {
  return routes;
}

}  // namespace evencount::app::studio
