#include <fmt/format.h>
#include <fmt/ostream.h>

#include <cmath>
#include <filesystem>
#include <functional>
#include <numbers>

#include "app/files.hpp"
#include "app/project_file.hpp"
#include "app/verbs.hpp"
#include "base/text.hpp"
#include "page/output.hpp"
#include "render/piece.hpp"
#include "render/render.hpp"

namespace evencount::app {
namespace {

struct PictureSize {
  int width = 0, height = 0;
  double dots_per_inch = 150;
};

Result<PictureSize> parse_size(const std::string& text) {
  if (text == "a4") return PictureSize{1654, 2339, 200};  // 210 x 297 mm, ISO 216
  if (text == "square") return PictureSize{1200, 1200, 150};
  const auto parts = split(text, 'x');
  const auto width = parts.size() == 2 ? parse_integer(parts[0]) : std::nullopt;
  const auto height = parts.size() == 2 ? parse_integer(parts[1]) : std::nullopt;
  if (!width || !height || *width < 1 || *height < 1 || *width > 30'000 || *height > 30'000)
    return Problem{ProblemCode::bad_text, "size", evencount::quoted(text),
                   "WIDTHxHEIGHT in pixels, a4 or square"};
  return PictureSize{static_cast<int>(*width), static_cast<int>(*height), 150};
}

Result<std::optional<colour::Rgb>> parse_colour(const std::string& text, const char* where) {
  if (text.empty()) return std::optional<colour::Rgb>();
  const auto colour = colour::parse_hex(text);
  if (!colour) return colour.problem().within(where);
  return std::optional(*colour);
}

Result<render::SceneChoice> scene_choice(const RenderArguments& a, const PictureSize& size) {
  render::SceneChoice choice{.band = a.band,
                             .size = a.wearer,
                             .aspect = static_cast<double>(size.width) / size.height,
                             .blur = a.blur,
                             .seed = static_cast<std::uint32_t>(a.seed)};
  const auto view = render::parse_view(a.view);
  if (!view) return view.problem();
  const auto light = render::parse_light(a.light);
  if (!light) return light.problem();
  const auto ground = render::parse_ground(a.ground);
  if (!ground) return ground.problem();
  choice.view = *view, choice.light = *light, choice.ground = *ground;
  struct Named {
    const std::string& text;
    const char* where;
    std::optional<colour::Rgb>& colour;
  };
  for (const Named& named : {Named{a.ground_colour, "ground colour", choice.ground_colour},
                             Named{a.thread_colour, "thread colour", choice.thread_colour},
                             Named{a.cord_colour, "cord colour", choice.cord_colour},
                             Named{a.form_colour, "form colour", choice.form_colour}}) {
    const auto colour = parse_colour(named.text, named.where);
    if (!colour) return colour.problem();
    named.colour = *colour;
  }
  return choice;
}

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

Result<Done> render_frame(const project::Project& project, const render::SceneChoice& choice,
                          const render::Options& options, const PictureSize& size, const std::string& path,
                          bool preview, const Console& console) {
  const auto scene = render::scene_of(project, choice);
  if (!scene) return scene.problem();
  Follower follower{console, preview, 0, {}};
  auto rendered = render::render(*scene, options, std::ref(follower));
  if (follower.preview) rendered = render::Rendered{*follower.preview, 0};
  if (!rendered) return rendered.problem();
  const auto png =
      page::to_png(page::Pixels{rendered->picture.width, rendered->picture.height, rendered->picture.rgb},
                   size.dots_per_inch);
  if (!png) return png.problem();
  if (auto written = write_file(path, *png); !written) return written;
  fmt::print(console.err, "wrote {} ({} x {})\n", path, size.width, size.height);
  return Done{};
}

}  // namespace

int render_verb(const RenderArguments& arguments, const Console& console) {
  if (lower_ascii(std::filesystem::path(arguments.output).extension().string()) != ".png")
    return console.fail(
        {ProblemCode::bad_usage, "output", evencount::quoted(arguments.output), "a name that ends in .png"});
  const auto size = parse_size(arguments.size);
  if (!size) return console.fail(size.problem());
  auto choice = scene_choice(arguments, *size);
  if (!choice) return console.fail(choice.problem());
  const auto project = load_project(arguments.project);
  if (!project) return console.fail(project.problem());
  const render::Options options{.width = size->width,
                                .height = size->height,
                                .samples = arguments.samples,
                                .seed = static_cast<std::uint32_t>(arguments.seed),
                                .threads = arguments.threads,
                                .exposure = std::exp2(arguments.exposure),
                                .filter = !arguments.no_filter};
  for (int frame = 0; frame < arguments.frames; ++frame) {
    choice->turn =
        2 * std::numbers::pi * (arguments.turn / 360 + static_cast<double>(frame) / arguments.frames);
    const auto done =
        render_frame(*project, *choice, options, *size, frame_path(arguments.output, frame, arguments.frames),
                     arguments.preview, console);
    if (!done) return console.fail(done.problem().within(arguments.project));
  }
  return exit_done;
}

}  // namespace evencount::app
