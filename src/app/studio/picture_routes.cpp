#include <fmt/format.h>

#include <algorithm>

#include "app/stock_source.hpp"
#include "app/studio/band_view.hpp"
#include "app/studio/body_fields.hpp"
#include "app/verbs/picture_making.hpp"
#include "base/text.hpp"
#include "drawing/band_drawing.hpp"
#include "page/output.hpp"
#include "picture/decode.hpp"
#include "project/json.hpp"

namespace evencount::app::studio {
namespace {

constexpr int most_colours = 1'000;
constexpr std::size_t most_offered = 10'000;
constexpr std::string_view operation_part = "operation.json";

Response keep_picture(Studio& studio, const Call& call) {
  int width = 0, height = 0;
  {
    const auto turn = studio.uploads.turn_to_decode();
    const auto image = picture::decode(call.request.body);
    if (!image) return problem_response(image.problem());
    width = image->width, height = image->height;
  }
  const auto id = studio.uploads.keep(call.request.body);
  if (!id) return problem_response(id.problem());
  Response response = json_response({{"picture", *id}, {"width", width}, {"height", height}});
  response.status = 201;
  return response;
}

/// A list of colours as beads that can be had of a size.
std::vector<materials::StockedItem> offered_beads(const Json& list, const std::string& size,
                                                  BodyFields& fields) {
  std::vector<materials::StockedItem> items;
  for (const Json& one : list) {
    const bool named = one.is_object() && one.contains("name") && one["name"].is_string() &&
                       one.contains("colour") && one["colour"].is_string();
    const auto colour = named ? colour::parse_hex(one["colour"].get<std::string>())
                              : Result<colour::Rgb>(Problem{ProblemCode::bad_text, "", "", ""});
    if (!colour || items.size() >= most_offered) {
      fields.refuse("stock",
                    fmt::format("a list of at most {} objects with name and colour (#rrggbb), legend, or own",
                                most_offered));
      return {};
    }
    materials::StockedItem item;
    item.item.name = one["name"].get<std::string>();
    item.item.what = materials::BeadStock{size, bead::Finish::opaque, *colour, {}};
    items.push_back(std::move(item));
  }
  return items;
}

std::vector<materials::StockedItem> legend_beads(const project::Project& project, const std::string& size) {
  std::vector<materials::StockedItem> items;
  for (const project::LegendEntry& entry : project.legend) {
    if (entry.bead != size) continue;
    materials::StockedItem item;
    item.item.name = entry.name;
    item.item.what = materials::BeadStock{size, entry.finish, entry.colour, {}};
    items.push_back(std::move(item));
  }
  return items;
}

PictureArguments read_arguments(BodyFields& fields) {
  PictureArguments arguments;
  arguments.name = fields.text("name"), arguments.technique = fields.text("technique");
  arguments.bead = fields.text("bead", arguments.bead), arguments.face = fields.text("face");
  arguments.columns = fields.whole("columns", 1, chart::most_columns),
  arguments.edge = fields.whole("edge", 1, chart::most_edge);
  arguments.at = fields.whole("at", 0, chart::most_edge),
  arguments.steps = fields.whole("steps", 1, chart::most_edge);
  arguments.colours = fields.whole("colours", 1, most_colours).value_or(arguments.colours);
  arguments.fit = fields.text("fit", arguments.fit), arguments.crop = fields.text("crop");
  arguments.ground = fields.text("ground", arguments.ground);
  arguments.turn = fields.real("turn", -360, 360, 0),
  arguments.strength = fields.real("strength", 0, 100, arguments.strength);
  arguments.open = fields.flag("open"), arguments.mirror = fields.flag("mirror"),
  arguments.detail = fields.flag("detail");
  arguments.mix = fields.flag("mix"), arguments.smooth = fields.flag("smooth"),
  arguments.quick = fields.flag("quick");
  arguments.only_free = fields.flag("only_free");
  arguments.require = fields.texts("require"), arguments.forbid = fields.texts("forbid"),
  arguments.on_hand = fields.texts("on_hand");
  return arguments;
}

Result<JobResult> make_picture(const PictureArguments& arguments, const State& state,
                               const PictureSources& sources, JobControl& control) {
  control.progress(0, "reading the picture");
  const auto job = picture_job(arguments, *state.project, sources);
  if (!job) return job.problem();
  control.progress(0.2, "choosing beads");
  auto made =
      project::picture_band(job->project, job->band, job->window, job->image, job->offer, job->options);
  if (!made) return made.problem();
  if (control.cancelled()) return JobResult{};
  control.progress(0.9, "drawing it");
  Json summary = picture_json(*job, *made);
  summary["revision"] = state.revision, summary["band"] = made->band.name;
  const std::string sentence = "laid a picture on " + made->band.name;
  const project::Band band = made->band;
  const project::Project project = project::with_band(job->project, std::move(*made));
  const auto plan = project::plan_of(band);
  if (!plan) return plan.problem();
  auto preview = page::to_svg(drawing::band_drawing(project, band, *plan));
  if (!preview) return preview.problem();
  JobResult result;
  result.summary = json_line(summary);
  result.parts["preview.svg"] = {"image/svg+xml", std::move(*preview)};
  result.parts[std::string(operation_part)] = {
      "application/json", fmt::format(R"({{"do":"replace","sentence":{},"project":{}}})", json_line(sentence),
                                      project::to_json(project))};
  return result;
}

/// The beads to choose from: a list in the request, the legend's, or what the designer owns.
Result<PictureSources> read_sources(Studio& studio, const project::Project& project, BodyFields& fields) {
  const auto bytes = studio.uploads.find(fields.text("picture"));
  const Json* stock = fields.find("stock");
  const bool own = stock && *stock == "own", legend = stock && *stock == "legend",
             listed = stock && stock->is_array();
  if (!own && !legend && !listed) fields.refuse("stock", "own, legend, or a list of colours");
  const auto items = listed ? offered_beads(*stock, "", fields) : std::vector<materials::StockedItem>();
  if (auto good = fields.finish(); !good) return good.problem();
  if (!bytes) return bytes.problem();
  PictureSources sources;
  sources.image = [bytes = *bytes] { return picture::decode(*bytes); };
  sources.stock = [own, legend, items,
                   project](const std::string& size) -> Result<std::vector<materials::StockedItem>> {
    if (own) {
      auto owned = stock_items({.file = "", .own = true}, size);
      if (!owned) return of_own_stock(owned.problem());
      return owned;
    }
    if (legend) return legend_beads(project, size);
    auto sized = items;
    for (materials::StockedItem& item : sized) std::get<materials::BeadStock>(item.item.what).size = size;
    return sized;
  };
  return sources;
}

Response lay_picture(Studio& studio, const Call& call) {
  const auto body = read_json(call.request.body);
  if (!body) return problem_response(body.problem());
  return with_session(studio, call, [&](Session& session) {
    const State state = session.state();
    BodyFields fields(*body);
    const PictureArguments arguments = read_arguments(fields);
    const auto sources = read_sources(studio, *state.project, fields);
    if (!sources) return problem_response(sources.problem());
    const auto id = studio.jobs.start("picture", call.names[0],
                                      [arguments, state, sources = *sources](JobControl& control) {
                                        return make_picture(arguments, state, sources, control);
                                      });
    return started(studio, id);
  });
}

/// What a job made, as an operation on the revision that it was made from.
struct MadeChange {
  std::shared_ptr<Session> session;
  std::int64_t made_on = 0;
  std::string operation;
};

Result<MadeChange> change_of(Studio& studio, const Call& call) {
  const auto job = studio.jobs.view(call.names[0]);
  if (!job) return job.problem();
  const auto* parts = job->result ? &job->result->parts : nullptr;
  const auto operation =
      parts ? parts->find(std::string(operation_part)) : std::map<std::string, JobPart>::const_iterator{};
  if (!parts || operation == parts->end())
    return Problem{ProblemCode::not_found, "job", quote(call.names[0]),
                   "work that is done and can be put into a project"};
  const auto session = studio.library.session(job->project);
  if (!session) return session.problem();
  return MadeChange{*session, Json::parse(job->result->summary).at("revision").get<std::int64_t>(),
                    operation->second.bytes};
}

Response apply_job(Studio& studio, const Call& call) {
  const auto change = change_of(studio, call);
  if (!change) return problem_response(change.problem());
  return accepted(*change->session, change->session->operate(change->made_on, change->operation));
}

Response preview_job(Studio& studio, const Call& call) {
  const auto change = change_of(studio, call);
  if (!change) return problem_response(change.problem());
  return previewed(*change->session, change->session->preview(change->made_on, change->operation));
}

constexpr Route routes[] = {
    {"POST", "/api/pictures", picture_body, keep_picture},
    {"POST", "/api/projects/{project}/picture", small_body, lay_picture},
    {"POST", "/api/jobs/{job}/apply", no_body, apply_job},
    {"POST", "/api/jobs/{job}/preview", no_body, preview_job},
};

}  // namespace

std::span<const Route> picture_routes() {
  return routes;
}

}  // namespace evencount::app::studio
