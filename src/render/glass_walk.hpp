#pragma once
/// The ways that light goes through a glass bead: how far in the glass, and how often off the paint in its hole. From them follows what
/// glass must absorb, or the paint be, for the bead to show a colour.
///
/// The bead is a cylinder with flat ends and a hole, alone in even white light, seen across its hole.
///
/// Properties (tests/render/glass_walk_test.cpp): (1) shown rises with every colour's transmission; (2) absorption_for(shown(a)) == a within
/// 1e-3 relative; (3) glass without colour and white paint show white.

#include <vector>

#include "render/spectrum.hpp"

namespace evencount::render {

struct GlassBead {
  double radius_mm = 0.8, half_length_mm = 0.65, hole_radius_mm = 0.4;
  double density = 1.515;
};

/// One way from the eye to the light.
struct GlassWay {
  double in_glass_mm = 0;
  int off_lining = 0;  ///< how often it comes off the paint
};

/// `ways` of them, all as likely; the same every time. `lined`: the hole's wall is painted.
[[nodiscard]] std::vector<GlassWay> glass_ways(const GlassBead& bead, bool lined, int ways = 4096);

/// The mean over ways of exp(-absorbed x way) x lining^times.
[[nodiscard]] double shown(const std::vector<GlassWay>& ways, double absorbed_per_mm, double lining);

/// The nearest to `colour` that a bead can show which throws back at least `darkest` from its surface. Near that and below, the surface's light
/// is left on top of the colour, so that dark glass keeps its hue.
[[nodiscard]] double can_be_shown(double colour, double darkest);

/// What glass must absorb so that `colour` is shown, as far as it can be; within 0 to 50 per mm.
[[nodiscard]] Spectrum absorption_for(const std::vector<GlassWay>& ways, Spectrum colour);
/// The paint under clear glass for which `colour` is shown, as far as it can be; within 0 to 1.
[[nodiscard]] Spectrum lining_for(const std::vector<GlassWay>& ways, Spectrum colour);

}  // namespace evencount::render
