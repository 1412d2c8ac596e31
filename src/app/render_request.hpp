#pragma once
/// What is asked of a catalogue picture, by a verb's options or by a request to the studio, as the renderer takes it.

#include <string>

#include "render/piece.hpp"
#include "render/render.hpp"

namespace evencount::app {

struct RenderRequest {
  std::string band;    ///< empty: the whole piece
  std::string wearer;  ///< the size that things are strung for; empty: the middle one
  std::string view = "table", light = "tent", ground = "paper";
  std::string size = "1600x1200";  ///< pixels, or a4, square
  int samples = 24;                ///< a pixel, on average
  int threads = 0;                 ///< 0: as many as the machine runs at once
  int seed = 1;
  double turn = 0;      ///< degrees that the piece is turned on the table
  double blur = 1;      ///< depth of field
  double exposure = 0;  ///< stops
  std::string ground_colour, thread_colour, cord_colour, form_colour, stone_colour;  ///< "#rrggbb"; empty: usual ones
  std::string stone;  ///< that bezels hold, in form::parse_stone's notation; empty: the one that each was made for
  bool no_filter = false;
};

inline constexpr double most_blur = 10, most_stops = 5;
inline constexpr int most_seed = 1'000'000'000;

struct RenderPlan {
  render::SceneChoice choice;
  render::Options options;
  double dots_per_inch = 150;  ///< as the file says it
};

/// Errors: bad_text (size, a colour), unknown_name (view, light, ground), those of form::parse_stone.
[[nodiscard]] Result<RenderPlan> render_plan(const RenderRequest& request);

/// The picture as a PNG file's bytes. Errors: those of page::to_png.
[[nodiscard]] Result<std::string> png_of(const render::Picture& picture, double dots_per_inch);

}  // namespace evencount::app
