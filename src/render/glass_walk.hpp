#pragma once
/// The ways that light goes through glass beads: how far in the glass, and how often off the paint in their holes. From them follows what
/// glass must absorb, or the paint be, for the beads to show a colour.
///
/// A glass bead's colour is what beads of its kind show together, as they are sold and worked: side by side on white paper, in even light from
/// above. (Made to show it alone in light from all sides, glass looks black in a fabric, where light goes through several beads.) The beads
/// are cylinders with flat ends and a hole, in rows both ways as far apart as they are usually worked.
///
/// Properties (tests/render/glass_walk_test.cpp): (1) shown rises with every colour's transmission; (2) absorption_for(shown(a)) == a within
/// 1e-3 relative; (3) glass without colour and white paint show white on paper that loses nothing; (4) the ways are those of rays through
/// such beads: what a scene of them shows is what is asked, within CIEDE2000 4 (tests/render/path_test.cpp).

#include <vector>

#include "render/spectrum.hpp"

namespace evencount::render {

struct GlassBead {
  double radius_mm = 0.8, half_length_mm = 0.65, hole_radius_mm = 0.4;
  double density = 1.515;
  double paper = 0.8;  ///< what the paper below throws back, from memory of white paper
};

/// How much farther apart beads lie than they are large: 1.66 mm for beads of 1.6 mm (bead::default_gauge).
inline constexpr double worked_apart = 1.0375;

/// One way from the eye to the light.
struct GlassWay {
  double in_glass_mm = 0;
  int off_lining = 0;  ///< how often it comes off the paint
  double share = 1;    ///< what the paper leaves of it
};

/// `ways` of them, all as likely; the same every time. `lined`: the hole's wall is painted.
[[nodiscard]] std::vector<GlassWay> glass_ways(const GlassBead& bead, bool lined, int ways = 4096);

/// The mean over ways of share x exp(-absorbed x way) x lining^times.
[[nodiscard]] double shown(const std::vector<GlassWay>& ways, double absorbed_per_mm, double lining);

/// The nearest to `colour` that beads can show whose surfaces throw back at least `darkest`. Near that and below, the surface's light
/// is left on top of the colour, so that dark glass keeps its hue.
[[nodiscard]] double can_be_shown(double colour, double darkest);

/// What glass must absorb so that `colour` is shown, as far as it can be; within 0 to 50 per mm.
[[nodiscard]] Spectrum absorption_for(const std::vector<GlassWay>& ways, Spectrum colour);
/// The paint under clear glass for which `colour` is shown, as far as it can be; within 0 to 1.
[[nodiscard]] Spectrum lining_for(const std::vector<GlassWay>& ways, Spectrum colour);

}  // namespace evencount::render
