#include "app/render_request.hpp"

#include <cmath>
#include <numbers>

#include "base/text.hpp"
#include "page/output.hpp"

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
    return Problem{ProblemCode::bad_text, "size", quote(text), "WIDTHxHEIGHT in pixels, a4 or square"};
  return PictureSize{static_cast<int>(*width), static_cast<int>(*height), 150};
}

struct NamedColour {
  const std::string& text;
  const char* where;
  std::optional<colour::Rgb>& colour;
};

Result<Done> read(const NamedColour& named) {
  if (named.text.empty()) return Done{};
  const auto colour = colour::parse_hex(named.text);
  if (!colour) return colour.problem().within(named.where);
  named.colour = *colour;
  return Done{};
}

}  // namespace

Result<RenderPlan> render_plan(const RenderRequest& request) {
  const auto size = parse_size(request.size);
  if (!size) return size.problem();
  const auto view = render::parse_view(request.view);
  if (!view) return view.problem();
  const auto light = render::parse_light(request.light);
  if (!light) return light.problem();
  const auto ground = render::parse_ground(request.ground);
  if (!ground) return ground.problem();

  RenderPlan plan{.choice = {.band = request.band,
                             .size = request.wearer,
                             .view = *view,
                             .turn = request.turn * std::numbers::pi / 180,
                             .aspect = static_cast<double>(size->width) / size->height,
                             .light = *light,
                             .ground = *ground,
                             .blur = request.blur,
                             .seed = static_cast<std::uint32_t>(request.seed)},
                  .options = {.width = size->width,
                              .height = size->height,
                              .samples = request.samples,
                              .seed = static_cast<std::uint32_t>(request.seed),
                              .threads = request.threads,
                              .exposure = std::exp2(request.exposure),
                              .filter = !request.no_filter},
                  .dots_per_inch = size->dots_per_inch};
  render::SceneChoice& choice = plan.choice;
  for (const NamedColour& named : {NamedColour{request.ground_colour, "ground colour", choice.ground_colour},
                                   NamedColour{request.thread_colour, "thread colour", choice.thread_colour},
                                   NamedColour{request.cord_colour, "cord colour", choice.cord_colour},
                                   NamedColour{request.form_colour, "form colour", choice.form_colour},
                                   NamedColour{request.stone_colour, "stone colour", choice.stone_colour}})
    if (auto good = read(named); !good) return good.problem();
  if (!request.stone.empty()) {
    const auto stone = form::parse_stone(request.stone);
    if (!stone) return stone.problem();
    choice.stone = *stone;
  }
  return plan;
}

Result<std::string> png_of(const render::Picture& picture, double dots_per_inch) {
  return page::to_png(drawing::Pixels{picture.width, picture.height, picture.rgb}, dots_per_inch);
}

}  // namespace evencount::app
