#include "drawing/band_drawing.hpp"

#include <algorithm>
#include <map>

#include "drawing/stitched_cells.hpp"

namespace evencount::drawing {
namespace {

using colour::Rgb;

constexpr Rgb black{0, 0, 0}, white{255, 255, 255};

/// How a finish takes light, as shares towards white and black. All by eye.
struct Look {
  double rim = 0.30;        ///< the edge of the barrel, towards black
  double core = 0.0;        ///< the middle, towards white
  double glow = 0.18;       ///< the lit upper half, towards white
  double highlight = 0.55;  ///< the reflection, towards white; 0 for none
  double shade = 0.16;      ///< the lower edge, towards black
  Rgb highlight_ink = white;
};

Look look_of(bead::Finish finish) {
  using bead::Finish;
  switch (finish) {
    case Finish::opaque:
      return {};
    case Finish::transparent:
      return {.rim = 0.24, .core = 0.07, .glow = 0.22, .highlight = 0.66, .shade = 0.04};
    case Finish::lined:
      return {.rim = 0.12, .core = 0.0, .glow = 0.30, .highlight = 0.75, .shade = 0.20};
    case Finish::metallic:
      return {.rim = 0.48, .core = 0.04, .glow = 0.30, .highlight = 0.82, .shade = 0.34};
    case Finish::galvanised:
      return {.rim = 0.44, .core = 0.08, .glow = 0.38, .highlight = 0.92, .shade = 0.28};
    case Finish::matte:
      return {.rim = 0.24, .core = 0.0, .glow = 0.07, .highlight = 0, .shade = 0.10};
    case Finish::lustre:
      return {.rim = 0.26, .core = 0.06, .glow = 0.32, .highlight = 0.50, .shade = 0.12};
    case Finish::pearl:
      return {.rim = 0.18, .core = 0.10, .glow = 0.40, .highlight = 0.36, .shade = 0.06};
    case Finish::rainbow:
      return {.rim = 0.30, .glow = 0.24, .highlight = 0.55, .shade = 0.20, .highlight_ink = {255, 214, 236}};
  }
  return {};
}

struct Barrel {
  Point corner;
  double width_mm = 0, height_mm = 0;
  double rounding = 0.2;  ///< radius as a share of the smaller side
};

/// The strips of a barrel that lies across the band: light falls on it from above. Each is drawn over the one before.
struct Strip {
  double left = 0, top = 0, width = 1, height = 1;
  Rgb fill;
};

std::vector<Strip> strips_of(Rgb base, const Look& look, bool fine) {
  const Rgb core = colour::mix(base, white, look.core);
  // On dark glass the same share of white in linear light looks far brighter than on pale glass.
  const double dampen = 0.15 + 0.85 * std::min(1.0, 3 * colour::luminance(base));
  const Rgb lit = colour::mix(core, white, look.glow * dampen);
  std::vector<Strip> strips{{0, 0, 1, 1, colour::mix(base, black, look.rim)}};
  if (fine) strips.push_back({0.035, 0.03, 0.93, 0.94, colour::mix(core, black, look.shade)});
  strips.push_back({0.035, 0.05, 0.93, 0.74, core});
  strips.push_back({0.05, 0.11, 0.90, 0.42, lit});
  if (fine && look.highlight > 0)
    strips.push_back({0.16, 0.19, 0.62, 0.13, colour::mix(lit, look.highlight_ink, look.highlight * dampen)});
  return strips;
}

/// A bead's outline in its cell: its true size, but never over its neighbours.
Barrel barrel_in(const bead::Size* size, const Rectangle& cell, weave::Axis axis) {
  constexpr double fullest = 0.985;
  const bool across = axis == weave::Axis::across;
  const double room_x_mm = fullest * cell.width_mm, room_y_mm = fullest * cell.height_mm;
  const double width_mm = size ? std::min((across ? size->length : size->diameter).mm(), room_x_mm) : room_x_mm;
  const double height_mm = size ? std::min((across ? size->diameter : size->length).mm(), room_y_mm) : room_y_mm;
  const bool round = size && size->kind == bead::Kind::round;
  return {{cell.corner.x_mm + (cell.width_mm - width_mm) / 2, cell.corner.y_mm + (cell.height_mm - height_mm) / 2},
          width_mm,
          height_mm,
          round ? 0.45 : 0.17};
}

Rectangle drawn(const Barrel& barrel, const Strip& strip) {
  const double width_mm = strip.width * barrel.width_mm, height_mm = strip.height * barrel.height_mm;
  return {.corner = {barrel.corner.x_mm + strip.left * barrel.width_mm, barrel.corner.y_mm + strip.top * barrel.height_mm},
          .width_mm = width_mm,
          .height_mm = height_mm,
          .radius_mm = std::min({barrel.rounding * std::min(barrel.width_mm, barrel.height_mm), width_mm / 2, height_mm / 2}),
          .fill = strip.fill};
}

std::vector<Strip> strips_of(const project::Project& project, chart::Bead bead, bool fine) {
  const bool known = bead < project.legend.size();
  return strips_of(colour_of(project, bead), look_of(known ? project.legend[bead].finish : bead::Finish::opaque), fine);
}

/// Marks that look alike and follow each other are painted as one, so the same strip of all beads of a colour is drawn at once.
void draw_barrels(Drawing& drawing, const project::Project& project, const std::map<chart::Bead, std::vector<Barrel>>& barrels,
                  bool fine) {
  for (const auto& [bead, alike] : barrels)
    for (const Strip& strip : strips_of(project, bead, fine))
      for (const Barrel& barrel : alike) drawing.marks.push_back(drawn(barrel, strip));
}

}  // namespace

Drawing band_drawing(const project::Project& project, const project::Band& band, const weave::Plan& plan,
                     const BandLook& look) {
  const bead::Gauge gauge = project::gauge_of(project, band);
  const int steps = std::min(plan.lattice.edge, look.most_steps.value_or(plan.lattice.edge));
  weave::Lattice shown = plan.lattice;
  shown.edge = steps;
  const weave::Box extent = weave::extent(shown);
  Drawing drawing{extent.width * gauge.column, extent.height * gauge.edge, {}};
  std::map<chart::Bead, std::vector<Barrel>> barrels;
  for (const StitchedCell& stitched : all_cells(plan)) {
    if (stitched.cell.step >= steps) continue;
    const weave::Box box = weave::box_of(plan.lattice, stitched.cell);
    const Rectangle cell{.corner = {box.across * gauge.column.mm(), box.along * gauge.edge.mm()},
                         .width_mm = box.width * gauge.column.mm(),
                         .height_mm = box.height * gauge.edge.mm()};
    const std::string& size = stitched.bead < project.legend.size() ? project.legend[stitched.bead].bead : band.bead;
    barrels[stitched.bead].push_back(
        barrel_in(project::find_bead(project, size), cell, plan.lattice.site(stitched.cell).axis));
  }
  draw_barrels(drawing, project, barrels, look.fine);
  return drawing;
}

}  // namespace evencount::drawing
