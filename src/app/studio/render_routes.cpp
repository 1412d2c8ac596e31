#include <fmt/format.h>

#include <chrono>

#include "app/render_request.hpp"
#include "app/studio/api.hpp"
#include "app/studio/body_fields.hpp"

namespace evencount::app::studio {
namespace {

using Time = std::chrono::steady_clock;

/// A picture that is on its way is shown so often: writing one takes a good part of a second of a processor.
constexpr std::chrono::seconds between_pictures{3};

RenderRequest read_request(BodyFields& fields) {
  RenderRequest request;
  request.band = fields.text("band"), request.wearer = fields.text("wearer");
  request.view = fields.text("view", request.view), request.light = fields.text("light", request.light);
  request.ground = fields.text("ground", request.ground), request.size = fields.text("size", request.size);
  request.samples = fields.whole("samples", 1, render::most_samples).value_or(request.samples);
  request.seed = fields.whole("seed", 0, most_seed).value_or(request.seed);
  request.turn = fields.real("turn", -360, 360, request.turn);
  request.blur = fields.real("blur", 0, most_blur, request.blur);
  request.exposure = fields.real("exposure", -most_stops, most_stops, request.exposure);
  request.ground_colour = fields.text("ground_colour"), request.thread_colour = fields.text("thread_colour");
  request.cord_colour = fields.text("cord_colour"), request.form_colour = fields.text("form_colour");
  request.stone = fields.text("stone"), request.stone_colour = fields.text("stone_colour");
  return request;
}

Result<JobResult> result_of(const render::Picture& picture, const RenderPlan& plan) {
  auto png = png_of(picture, plan.dots_per_inch);
  if (!png) return png.problem();
  JobResult result;
  result.summary = json_line({{"width", picture.width}, {"height", picture.height}});
  result.parts["picture.png"] = {"image/png", std::move(*png)};
  return result;
}

/// Tells the page how far the picture is, and shows what there is of it.
class Follower {
 public:
  Follower(const RenderPlan& plan, JobControl& control) : plan_(plan), control_(control) {}

  bool operator()(const render::Progress& progress) {
    if (progress.picture && (!shown_ || Time::now() - *shown_ > between_pictures)) {
      if (auto result = result_of(*progress.picture, plan_)) control_.show(std::move(*result));
      shown_ = Time::now();
    }
    if (const int percent = static_cast<int>(100 * progress.share); percent > told_)
      control_.progress(progress.share, "following the light"), told_ = percent;
    return !control_.cancelled();
  }

 private:
  const RenderPlan& plan_;
  JobControl& control_;
  std::optional<Time::time_point> shown_;
  int told_ = 0;
};

Result<JobResult> make_picture(const project::Project& project, const RenderPlan& plan, JobControl& control) {
  control.progress(0, "setting things up");
  const auto scene = render::scene_of(project, plan.choice);
  if (!scene) return scene.problem();
  Follower follower(plan, control);
  const auto rendered = render::render(*scene, plan.options, std::ref(follower));
  if (!rendered) return rendered.problem();
  return result_of(rendered->picture, plan);
}

Response render(Studio& studio, const Call& call) {
  const auto body = read_json(call.request.body);
  if (!body) return problem_response(body.problem());
  BodyFields fields(*body);
  const RenderRequest request = read_request(fields);
  if (auto good = fields.finish(); !good) return problem_response(good.problem());
  const auto plan = render_plan(request);
  if (!plan) return problem_response(plan.problem());
  return with_session(studio, call, [&](Session& session) {
    const auto work = [project = session.state().project, plan = *plan](JobControl& control) {
      return make_picture(*project, plan, control);
    };
    return started(studio, studio.jobs.start("render", call.names[0], work));
  });
}

constexpr Route routes[] = {{"POST", "/api/projects/{project}/render", small_body, render}};

}  // namespace

std::span<const Route> render_routes() {
  return routes;
}

}  // namespace evencount::app::studio
