#include <fmt/format.h>

#include "app/cover_picture.hpp"
#include "app/hand.hpp"
#include "app/studio/band_view.hpp"
#include "base/text.hpp"
#include "page/booklet.hpp"
#include "page/stitch_along.hpp"
#include "picture/decode.hpp"

namespace evencount::app::studio {
namespace {

/// Enough to read a page's heading and see where things stand.
constexpr double preview_dots_per_inch = 72;
constexpr std::size_t most_previews = 80;

Json to_json(const JobView& job) {
  Json json = {{"id", job.id},
               {"kind", job.kind},
               {"project", job.project},
               {"state", state_name(job.state)},
               {"progress", job.progress},
               {"step", job.step},
               {"shown", job.shown}};
  if (job.problem) json["problem"] = Json::parse(problem_response(*job.problem).body);
  if (!job.result) return json;
  Json parts = Json::array();
  for (const auto& [name, part] : job.result->parts)
    parts.push_back({{"name", name}, {"type", part.type}, {"bytes", part.bytes.size()}});
  json["parts"] = std::move(parts);
  json["summary"] = Json::parse(job.result->summary);
  return json;
}

Result<JobResult> make_booklet(const project::Project& project, const page::BookletOptions& options,
                               JobControl& control) {
  control.progress(0, "laying out pages, writing the PDF and reading it back");
  auto printed = page::print_booklet(project, options);
  if (!printed) return printed.problem();
  const page::Booklet& booklet = printed->booklet;
  JobResult result;
  result.summary = Json{{"pages", booklet.pages.size()}}.dump();
  result.parts["booklet.pdf"] = {"application/pdf", std::move(printed->pdf)};
  const std::size_t previews = std::min(booklet.pages.size(), most_previews);
  for (std::size_t i = 0; i < previews && !control.cancelled(); ++i) {
    control.progress(0.4 + 0.6 * static_cast<double>(i) / static_cast<double>(previews),
                     fmt::format("page {} of {}", i + 1, previews));
    auto png = page::to_png(booklet.pages[i], preview_dots_per_inch);
    if (!png) return png.problem();
    result.parts[fmt::format("page-{:03}.png", i + 1)] = {"image/png", std::move(*png)};
  }
  return result;
}

/// The picture of the project that a job made, as a cover.
Result<std::shared_ptr<const drawing::Pixels>> cover_from(const Studio& studio, const std::string& project, const std::string& id) {
  const auto job = studio.jobs.view(id);
  if (!job) return job.problem();
  const auto* parts = job->result ? &job->result->parts : nullptr;
  if (job->project != project || job->state != JobState::done || !parts || !parts->contains("picture.png"))
    return Problem{ProblemCode::not_found, "cover", "work that made no picture", "a catalogue picture that is done"};
  const auto image = picture::decode(parts->at("picture.png").bytes);
  if (!image) return image.problem();
  return cover_of(*image);
}

Response booklet(Studio& studio, const Call& call) {
  page::BookletOptions options;
  const auto paper = page::parse_paper(call.query("paper", "a4"));
  if (!paper) return problem_response(paper.problem());
  const auto signs = drawing::parse_signs(call.query("signs", "letters"));
  if (!signs) return problem_response(signs.problem());
  const auto language = language::find_language(call.query("language", "en"));
  if (!language) return problem_response(language.problem());
  const auto left_handed = parse_left_handed(call.query("hand", "right"));
  if (!left_handed) return problem_response(left_handed.problem());
  options.language = *language, options.left_handed = *left_handed;
  options.paper = *paper, options.signs = *signs, options.steps = call.query("steps", "true") != "false";
  if (const std::string picture = call.query("cover"); !picture.empty()) {
    auto cover = cover_from(studio, call.names[0], picture);
    if (!cover) return problem_response(cover.problem());
    options.cover = std::move(*cover);
  }
  return with_session(studio, call, [&](Session& session) {
    const auto project = session.state().project;
    return started(studio,
                   studio.jobs.start("booklet", call.names[0], [project, options](JobControl& control) {
                     return make_booklet(*project, options, control);
                   }));
  });
}

Response along(Studio& studio, const Call& call) {
  const auto language = language::find_language(call.query("language", "en"));
  if (!language) return problem_response(language.problem());
  return with_session(studio, call, [&](Session& session) {
    const auto project = session.state().project;
    const auto work = [project, language = *language](JobControl& control) -> Result<JobResult> {
      control.progress(0, "writing the page");
      auto page = page::stitch_along(*project, *language);
      if (!page) return page.problem();
      Json without = Json::array();
      for (const page::NoLeftHand& band : page->without_left_hand)
        without.push_back({{"band", band.band}, {"reason", band.reason}});
      JobResult result;
      result.summary = json_line({{"without_left_hand", std::move(without)}});
      result.parts["along.html"] = {"text/html; charset=utf-8", std::move(page->html)};
      return result;
    };
    return started(studio, studio.jobs.start("along", call.names[0], work));
  });
}

Response list_jobs(Studio& studio, const Call&) {
  Json jobs = Json::array();
  for (const JobView& job : studio.jobs.all()) jobs.push_back(to_json(job));
  return json_response({{"jobs", std::move(jobs)}});
}

Response read_job(Studio& studio, const Call& call) {
  const auto job = studio.jobs.view(call.names[0]);
  return job ? json_response(to_json(*job)) : problem_response(job.problem());
}

Response cancel_job(Studio& studio, const Call& call) {
  const auto cancelled = studio.jobs.cancel(call.names[0]);
  return cancelled ? read_job(studio, call) : problem_response(cancelled.problem());
}

Response job_part(Studio& studio, const Call& call) {
  const auto job = studio.jobs.view(call.names[0]);
  if (!job) return problem_response(job.problem());
  const auto* parts = job->result ? &job->result->parts : nullptr;
  if (!parts || !parts->contains(call.names[1]))
    return problem_response({ProblemCode::not_found, "part", quote(call.names[1]),
                             parts ? "one of the parts that the job lists" : "work that is done"});
  const JobPart& part = parts->at(call.names[1]);
  Response response;
  response.type = part.type;
  response.body = part.bytes;
  // A page of its own is to be kept, not shown as one of ours.
  if (part.type.starts_with("text/html"))
    response.fields.emplace_back("Content-Disposition", "attachment; filename=\"" + call.names[1] + "\"");
  return response;
}

constexpr Route routes[] = {
    {"POST", "/api/projects/{project}/booklet", no_body, booklet},
    {"POST", "/api/projects/{project}/along", no_body, along},
    {"GET", "/api/jobs", no_body, list_jobs},
    {"GET", "/api/jobs/{job}", no_body, read_job},
    {"DELETE", "/api/jobs/{job}", no_body, cancel_job},
    {"GET", "/api/jobs/{job}/parts/{part}", no_body, job_part},
};

}  // namespace

Response started(Studio& studio, const Result<std::string>& id) {
  if (!id) return problem_response(id.problem());
  const auto job = studio.jobs.view(*id);
  Response response = job ? json_response(to_json(*job)) : problem_response(job.problem());
  if (job) response.status = 202;
  return response;
}

std::span<const Route> job_routes() {
  return routes;
}

}  // namespace evencount::app::studio
