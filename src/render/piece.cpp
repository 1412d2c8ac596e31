#include "render/piece.hpp"

#include <algorithm>
#include <array>
#include <numbers>

#include "base/text.hpp"
#include "project/strung_sizes.hpp"
#include "render/strung_parts.hpp"

namespace evencount::render {
namespace {

constexpr double degrees = std::numbers::pi / 180;
/// Paper a little warm, linen as it is before it is bleached; from memory.
constexpr colour::Rgb paper{0xe9, 0xe5, 0xde}, linen{0xd9, 0xcd, 0xba};

/// Bands lie on their backs: their length along the holes to the right, what is in front upwards.
constexpr Placement lying{{0, 1, 0}, {0, 0, 1}, {1, 0, 0}, {}};
/// Flat pieces lie as their chart is drawn; rings and bezels on their rims.
constexpr Placement upright{};

struct Extents {
  Vec3 low{1e30, 1e30, 1e30}, high{-1e30, -1e30, -1e30};
  void take(const Ball& ball) {
    const Vec3 r{ball.radius_mm, ball.radius_mm, ball.radius_mm};
    const Vec3 a = ball.middle - r, b = ball.middle + r;
    low = {std::min(low.x, a.x), std::min(low.y, a.y), std::min(low.z, a.z)};
    high = {std::max(high.x, b.x), std::max(high.y, b.y), std::max(high.z, b.z)};
  }
  [[nodiscard]] Vec3 middle() const { return 0.5 * (low + high); }
  [[nodiscard]] double radius() const { return norm(high - low) / 2; }
};

Extents extents_of(std::span<const Ball> balls) {
  Extents extents;
  for (const Ball& ball : balls) extents.take(ball);
  return extents;
}

/// How a band lies on the table: a flat one as it is, a wide ring on its rim, everything else round on its back.
Placement way_to_lie(const project::Band& band, const std::vector<Ball>& as_settled) {
  if (band.closure == weave::Closure::open) return upright;
  const Extents extents = extents_of(as_settled);
  const Vec3 size = extents.high - extents.low;
  return !band.form && size.z < 0.8 * std::max(size.x, size.y) ? upright : lying;
}

Result<Placement> way_to_lie(const project::Project& project, const SceneChoice& choice,
                             const project::Band& band) {
  Workbench trial(project, choice);
  if (auto done = trial.add_band(band, upright); !done) return done.problem();
  return way_to_lie(band, trial.balls());
}

Result<Done> add_one_band(Workbench& bench, const project::Project& project, const SceneChoice& choice) {
  const auto band = project::find_band(project, choice.band);
  if (!band) return band.problem();
  if (choice.view == View::worn)
    return Problem{ProblemCode::out_of_range, "worn", "a band alone",
                   "what is strung; a band is shown on the table or flat"};
  const auto lie = way_to_lie(project, choice, *band);
  if (!lie) return lie.problem();
  return bench.add_band(*band, *lie);
}

/// All bands in rows beside each other, as many in a row as make the whole about as wide as the picture.
Result<Done> add_all_bands(Workbench& bench, const project::Project& project, const SceneChoice& choice) {
  if (choice.view == View::worn)
    return Problem{ProblemCode::out_of_range, "worn", "a piece without a strand", "what is strung"};
  struct Lying {
    Placement placement;
    Extents extents;
  };
  std::vector<Lying> all;
  double widest = 0, deepest = 0;
  for (const project::Band& band : project.bands) {
    const auto lie = way_to_lie(project, choice, band);
    if (!lie) return lie.problem();
    Workbench trial(project, choice);
    if (auto done = trial.add_band(band, *lie); !done) return done;
    all.push_back({*lie, extents_of(trial.balls())});
    const Vec3 size = all.back().extents.high - all.back().extents.low;
    widest = std::max(widest, size.x), deepest = std::max(deepest, size.y);
  }
  const double gap = 0.15 * std::min(widest, deepest) + 2, count = static_cast<double>(all.size());
  const double in_row =
      std::clamp(std::round(std::sqrt(count * choice.aspect * (deepest + gap) / (widest + gap))), 1.0, count);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const double column = std::fmod(static_cast<double>(i), in_row),
                 row = std::floor(static_cast<double>(i) / in_row);
    const Vec3 place{column * (widest + gap), -row * (deepest + gap), -all[i].extents.low.z};
    Vec3 middle = all[i].extents.middle();
    middle.z = 0;
    if (auto done = bench.add_band(project.bands[i], all[i].placement.then(moved(place - middle))); !done)
      return done;
  }
  return Done{};
}

/// How the strand's space (strand/placing.hpp: seen from +y with z up) stands in the scene.
constexpr Placement table_top{
    {-1, 0, 0}, {0, 0, 1}, {0, 1, 0}, {}};  ///< what looks to +y looks up, z leads away
constexpr Placement on_edge{
    {-1, 0, 0}, {0, -1, 0}, {0, 0, 1}, {}};  ///< half a turn: the front towards the viewer
constexpr Placement level_arm{
    {0, -1, 0}, {0, 0, 1}, {-1, 0, 0}, {}};  ///< the arm from left to right, its front on top
/// The same of what is hung up: its front is below there, the neck's length leads to the viewer.
constexpr Placement level_neck{{0, -1, 0}, {-1, 0, 0}, {0, 0, -1}, {}};

void add_body(Workbench& bench, const strand::Body& body, const Placement& stand) {
  const auto placed = [&](strand::Place3 p) { return stand.direction({p.x, p.y, p.z}); };
  const Vec3 wide = placed(body.half_width), deep = placed(body.half_depth);
  const Vec3 x = unit(wide), y = unit(deep);
  constexpr double length = 3.5;  // half of it, in half widths: beyond the edges of most pictures
  bench.scene.solids.push_back({static_cast<std::uint32_t>(bench.scene.meshes.size()),
                                bench.surface_of_stuff(Stuff::skin),
                                {x, y, cross(x, y), placed(body.middle)},
                                0});
  bench.scene.meshes.push_back(oval_tube_mesh(norm(wide), norm(deep), length * norm(wide)));
}

Result<Done> add_strand_of(Workbench& bench, const project::Project& project, const SceneChoice& choice) {
  const auto strung = project::strung_of(project);
  if (!strung) return strung.problem();
  const auto wearer = project::wearer_of(*project.strand, choice.size);
  if (!wearer) return wearer.problem();
  const std::array wearers{*wearer};
  const auto sizes = project::strung_sizes(project, *strung, wearers);
  if (!sizes) return sizes.problem();
  const strand::StrandFit& fit = sizes->sizes.front().fit;
  const strand::TwoCords& curve = sizes->sizes.front().curve;
  const bool on_wrist = wearer->worn == strand::Worn::wrist;
  if (choice.view == View::flat || (choice.view == View::table && !on_wrist)) {
    Placement stand = table_top;
    if (on_wrist) {  // most of the way to the picture's diagonal, rising to the right
      const double slope = 0.75 * std::atan(1 / choice.aspect), c = std::cos(slope), s = std::sin(slope);
      stand = stand.then({{c, s, 0}, {-s, c, 0}, {0, 0, 1}, {}});
    }
    return add_strung(bench, project, *strung, strand::placed_on_table(*strung, fit, curve), stand);
  }
  if (wearer->worn == strand::Worn::length)
    return Problem{ProblemCode::out_of_range, "worn", "a strand of finished length",
                   "one for a wrist or neck"};
  const auto worn = strand::placed_worn(*strung, fit, curve, sizes->lean);
  if (!worn) return worn.problem();
  if (choice.view == View::table) return add_strung(bench, project, *strung, *worn, on_edge);
  const Placement stand = on_wrist ? level_arm : level_neck;
  if (auto done = add_strung(bench, project, *strung, *worn, stand); !done) return done;
  if (worn->body) add_body(bench, *worn->body, stand);
  return Done{};
}

/// Where the camera looks from, as angles: round from -y, and above the table.
struct Sight {
  double round = 0, above = 0, half_view = 0.15;
};

Sight sight_of(const SceneChoice& choice, bool strung) {
  // Half the view's tangent 0.12 to 0.16: a lens of 110 to 150 mm on 36 mm of film, as small things are taken with. From memory.
  if (choice.view == View::flat) return {0, 90 * degrees, 0.12};
  if (choice.view == View::worn) return {14 * degrees, 60 * degrees, 0.15};
  return strung ? Sight{-14 * degrees, 30 * degrees, 0.15} : Sight{-24 * degrees, 40 * degrees, 0.13};
}

void set_camera(Workbench& bench, const SceneChoice& choice, const Sight& sight) {
  const Extents extents = extents_of(bench.balls());
  const Vec3 towards{std::sin(sight.round) * std::cos(sight.above),
                     -std::cos(sight.round) * std::cos(sight.above), std::sin(sight.above)};
  // What lies nearest to the camera of the upper half is sharp.
  Vec3 nearest = extents.middle();
  double best = -1e30;
  for (const Ball& ball : bench.balls())
    if (const double near =
            dot(ball.middle, towards) - 0.5 * norm(across(ball.middle - extents.middle(), towards));
        near > best)
      best = near, nearest = ball.middle;
  Camera camera;
  camera.target = extents.middle() + dot(nearest - extents.middle(), towards) * towards;
  camera.at = camera.target + 1000 * towards;
  camera.up = sight.above > 89 * degrees ? Vec3{0, 1, 0} : Vec3{0, 0, 1};
  camera.half_view = sight.half_view;
  camera = framed(camera, choice.aspect, bench.balls(), choice.margin);
  // A point as far behind the sharp one as the piece is large is spread over 0.9 % of the picture at blur 1; from looking at pictures.
  const double depth = std::max(extents.radius(), 1.0);
  camera.lens_mm =
      choice.blur * 0.009 * 2 * camera.half_view * camera.focus_mm * (camera.focus_mm + depth) / depth;
  bench.scene.camera = camera;
}

void set_stage(Workbench& bench, const SceneChoice& choice, const Sight& sight) {
  const double radius = std::max(extents_of(bench.balls()).radius(), 10.0);
  bench.scene.lights = lights_of(choice.light, radius, sight.round);
  const Vec3 middle = extents_of(bench.balls()).middle();
  for (SoftBox& box : bench.scene.lights.boxes) box.middle = box.middle + Vec3{middle.x, middle.y, 0};
  bench.scene.ground = {
      choice.ground, 0,
      of(choice.ground_colour.value_or(choice.ground == GroundKind::linen ? linen : paper))};
}

}  // namespace

std::string_view view_name(View view) {
  switch (view) {
    case View::table:
      return "table";
    case View::flat:
      return "flat";
    case View::worn:
      return "worn";
  }
  return "table";
}

Result<View> parse_view(std::string_view name) {
  for (const View view : {View::table, View::flat, View::worn})
    if (name == view_name(view)) return view;
  return Problem{ProblemCode::unknown_name, "view", quote(name), "table, flat or worn"};
}

Result<Scene> scene_of(const project::Project& project, const SceneChoice& choice) {
  if (project.bands.empty()) return Problem{ProblemCode::missing_field, "bands", "none", "a band to show"};
  Workbench bench(project, choice);
  const bool strung = choice.band.empty() && project.strand.has_value();
  const auto done = !choice.band.empty() ? add_one_band(bench, project, choice)
                    : strung             ? add_strand_of(bench, project, choice)
                                         : add_all_bands(bench, project, choice);
  if (!done) return done.problem();
  bench.turn_and_rest(choice.turn);
  const Sight sight = sight_of(choice, strung);
  set_camera(bench, choice, sight);
  set_stage(bench, choice, sight);
  return std::move(bench.scene);
}

}  // namespace evencount::render
