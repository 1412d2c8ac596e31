#pragma once
/// A project's piece as a scene: one band, all bands, or what is strung, on the table or worn.
///
/// Properties (tests/render/piece_test.cpp):
///  (1) every bead of the settled band is placed once, with its legend entry's surface; the same project and seed give the same scene
///  (2) sizes scatter about the bead's own with its tolerance; with no scatter every bead is the settled one
///  (3) nothing lies under the ground, and something rests on it within 0.05 mm
///  (4) everything lies in the picture
///  (5) a given stone is set in bezels, and in a tube where that is the only band shown; nothing else minds it

#include <string>
#include <string_view>

#include "form/bezel_stone.hpp"
#include "project/project.hpp"
#include "render/scene.hpp"

namespace evencount::render {

enum class View {
  table,  ///< three-quarter view of the piece on a table: a bracelet stands on its edge, faces outwards; other strands lie in a ring
  flat,   ///< from above: a bracelet lies in a row, its clasp opened; other strands in a ring
  worn,   ///< round a plain oval as thick as the wearer; for what is strung for a wrist or neck
};
[[nodiscard]] std::string_view view_name(View view);
/// Errors: unknown_name.
[[nodiscard]] Result<View> parse_view(std::string_view name);

struct SceneChoice {
  std::string band;  ///< one band; empty: the whole piece, what is strung where there is a strand
  std::string size;  ///< the wearer's; empty: the middle one
  View view = View::table;
  double turn = 0;  ///< radians by which the piece is turned on the table, counterclockwise: for turntables
  double aspect = 4.0 / 3;  ///< of the picture, width over height
  LightPreset light = LightPreset::tent;
  GroundKind ground = GroundKind::paper;
  std::optional<colour::Rgb> ground_colour, thread_colour, cord_colour, form_colour,
      stone_colour;  ///< none: usual ones (workbench.cpp)
  std::optional<form::Stone>
      stone;  ///< that bezels hold (workbench.hpp); none: the one that each was made for (set_stone.hpp)
  double blur = 1;         ///< depth of field: 0 all sharp, 1 as a lens stopped down for small things
  double margin = 0.08;    ///< left free at the picture's edges, of its shorter side
  std::uint32_t seed = 1;  ///< of how beads scatter
};

/// Errors: unknown_name (a band or size), missing_field (no bands), out_of_range (worn: a band alone, a strand of finished length, or none
/// at all), those of set_stone, the plan, the fabric and the strand.
[[nodiscard]] Result<Scene> scene_of(const project::Project& project, const SceneChoice& choice);

}  // namespace evencount::render
