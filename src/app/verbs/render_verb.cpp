#include <fmt/format.h>
#include <fmt/ostream.h>

#include <filesystem>
#include <functional>
#include <numbers>

#include "app/files.hpp"
#include "app/project_file.hpp"
#include "app/verbs.hpp"
#include "base/text.hpp"

namespace evencount::app {
namespace {

/// FILE-001.png for FILE.png.
std::string frame_path(const std::string& output, int frame, int frames) {
  if (frames == 1) return output;
  const std::filesystem::path path(output);
  return (path.parent_path() /
          fmt::format("{}-{:03}{}", path.stem().string(), frame + 1, path.extension().string()))
      .string();
}

/// Says every tenth; keeps the first whole picture where only that is wanted.
struct Follower {
  const Console& console;
  bool only_preview = false;
  int said = 0;
  std::optional<render::Picture> preview;

  bool operator()(const render::Progress& progress) {
    if (only_preview && progress.picture) {
      preview = *progress.picture;
      return false;
    }
    const int tenth = static_cast<int>(progress.share * 10);
    if (!only_preview && tenth > said) fmt::print(console.err, "{} %\n", 10 * (said = tenth));
    return true;
  }
};

Result<Done> render_frame(const project::Project& project, const RenderPlan& plan, const std::string& path,
                          bool preview, const Console& console) {
  const auto scene = render::scene_of(project, plan.choice);
  if (!scene) return scene.problem();
  Follower follower{console, preview, 0, {}};
  auto rendered = render::render(*scene, plan.options, std::ref(follower));
  if (follower.preview) rendered = render::Rendered{*follower.preview, 0};
  if (!rendered) return rendered.problem();
  const auto png = png_of(rendered->picture, plan.dots_per_inch);
  if (!png) return png.problem();
  if (auto written = write_file(path, *png); !written) return written;
  fmt::print(console.err, "wrote {} ({} x {})\n", path, plan.options.width, plan.options.height);
  return Done{};
}

}  // namespace

int render_verb(const RenderArguments& arguments, const Console& console) {
  if (lower_ascii(std::filesystem::path(arguments.output).extension().string()) != ".png")
    return console.fail(
        {ProblemCode::bad_usage, "output", quote(arguments.output), "a name that ends in .png"});
  auto plan = render_plan(arguments.request);
  if (!plan) return console.fail(plan.problem());
  const auto project = load_project(arguments.project);
  if (!project) return console.fail(project.problem());
  const double begin = plan->choice.turn;
  for (int frame = 0; frame < arguments.frames; ++frame) {
    plan->choice.turn = begin + 2 * std::numbers::pi * frame / arguments.frames;
    const auto done =
        render_frame(*project, *plan, frame_path(arguments.output, frame, arguments.frames), arguments.preview,
                     console);
    if (!done) return console.fail(done.problem().within(arguments.project));
  }
  return exit_done;
}

}  // namespace evencount::app
