#include "render/strung_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numbers>

namespace evencount::render {
namespace {

using strand::Element;
using strand::ElementKind;

/// Turned so that the solid's axis (its own z) runs along x or y of the piece.
Placement axis_along_x(Vec3 at) {
  return {{0, 1, 0}, {0, 0, 1}, {1, 0, 0}, at};
}
Placement axis_along_y(Vec3 at) {
  return {{0, 0, 1}, {1, 0, 0}, {0, 1, 0}, at};
}

class PartMaker {
 public:
  PartMaker(Workbench& bench, const project::Project& project, const strand::Strung& strung)
      : bench_(bench), project_(project), strung_(strung) {}

  Result<Done> add(const StrungPiece& piece) {
    const Element& element = strung_.elements[static_cast<std::size_t>(piece.element)];
    if (element.kind == ElementKind::form) return add_carrier(element, piece.placement);
    if (piece.closing) return add_closing(element, piece), Done{};
    for (const double side : piece.beads == 2 ? std::vector<double>{0.5, -0.5} : std::vector<double>{0.0})
      add_part(element, piece, moved({side * piece.apart_mm, 0, 0}).then(piece.placement));
    return Done{};
  }

 private:
  Result<Done> add_carrier(const Element& element, const Placement& placement) {
    const auto band = std::find_if(project_.bands.begin(), project_.bands.end(),
                                   [&](const project::Band& b) { return b.name == element.id; });
    if (element.carrier->band && band != project_.bands.end())
      return bench_.add_band(*band, placement, element.carrier->together);
    return bench_.add_form(project::find_form(project_, element.id), element.carrier->form, placement);
  }

  void add_part(const Element& element, const StrungPiece& piece, const Placement& placement) {
    switch (element.kind) {
      case ElementKind::bead:
        return add_bead(element, placement);
      case ElementKind::crimp:
        return tube(element, 0.12, placement);
      case ElementKind::cap:
      case ElementKind::cover:
        return tube(element, 0.45, placement);
      case ElementKind::knot:
        return round_part(element, element.thickness.mm() / 2, bench_.surface_of_stuff(Stuff::cord),
                          placement);
      case ElementKind::spacer:
      case ElementKind::joiner:
        return box(element, placement);
      case ElementKind::ring:
        return rings(piece.width_mm, 0.5 * std::max(element.thickness.mm() - element.width.mm(), 0.8),
                     placement);
      default:
        return rings(piece.width_mm, 0.8, placement);
    }
  }

  void add_bead(const Element& element, const Placement& placement) {
    bead::Size size{.id = element.id,
                    .kind = bead::Kind::round,
                    .diameter = element.across,
                    .length = element.width,
                    .hole = element.hole};
    if (const bead::Size* known = project::find_bead(project_, element.id))
      size = *known;
    else if (const auto standard = bead::find_size(element.id))
      size = *standard;
    const auto entry = bench_.entry_named_in(element.name);
    if (entry && size.scatter == 0)
      size.scatter = 0.03;  // a seed bead, from memory between cylinders and rounds
    bench_.add_bead(size,
                    entry ? bench_.surface_for(*entry, size) : bench_.surface_of_stuff(Stuff::glass_bead),
                    placement);
  }

  /// A bead-like body of metal, its rims rounded by a share of its wall.
  void tube(const Element& element, double rounding, const Placement& placement) {
    const double radius = element.thickness.mm() / 2, hole = std::min(element.hole.mm() / 2, 0.85 * radius);
    metal_bead({radius, element.width.mm() / 2, hole, rounding * radius}, placement);
  }
  void metal_bead(const BeadShape& shape, const Placement& placement) {
    bench_.add_solid(
        fmt::format("bead {} {} {} {}", shape.radius_mm, shape.half_length_mm, shape.hole_radius_mm,
                    shape.rim_mm),
        [&] { return bead_mesh(shape); }, silver(), placement);
  }
  void round_part(const Element& element, double radius, std::uint32_t surface, const Placement& placement) {
    const BeadShape shape{radius, std::max(element.width.mm() / 2, 0.6 * radius), 0.15 * radius,
                          0.6 * radius};
    bench_.add_solid(
        fmt::format("bead {} {} {} {}", shape.radius_mm, shape.half_length_mm, shape.hole_radius_mm,
                    shape.rim_mm),
        [&] { return bead_mesh(shape); }, surface, placement);
  }
  void box(const Element& element, const Placement& placement) {
    const double x = element.across.mm(), y = element.thickness.mm(), z = element.width.mm();
    bench_.add_solid(
        fmt::format("box {} {} {}", x, y, z),
        [&] {
          return box_mesh(x, y, z, 0.3 * std::min({x, y, z}));
        },
        silver(), placement);
  }
  void ring(double radius, double wire, const Placement& placement) {
    bench_.add_solid(
        fmt::format("ring {} {}", radius, wire), [&] { return ring_mesh(radius, wire); }, silver(),
        placement);
  }
  /// A chain of rings as long as the piece, every second one standing.
  void rings(double length, double wire_mm, const Placement& placement) {
    const double wire = std::min(wire_mm, length / 3) / 2;
    const int count = std::max(1, static_cast<int>(std::lround(length / 6)));
    const double each = length / count;
    for (int i = 0; i < count; ++i) {
      const Vec3 at{0, 0, (i + 0.5) * each - length / 2};
      ring(each / 2 - wire / 2, wire, (i % 2 == 0 ? axis_along_y(at) : axis_along_x(at)).then(placement));
    }
  }

  void add_closing(const Element& element, const StrungPiece& piece) {
    if (element.kind != ElementKind::clasp) return add_part(element, piece, piece.placement);
    const double half = piece.width_mm / 2;
    if (element.holes == 2) return slide_clasp(element, half, piece);
    // A round body between two rings that the cords are looped through.
    const double eye = std::min(0.28 * half, 2.2), body = half - 2 * eye;
    const BeadShape shape{std::min(element.thickness.mm() / 2, 0.6 * body), body, 0.3,
                          0.55 * std::min(element.thickness.mm() / 2, 0.6 * body)};
    metal_bead(shape, piece.placement);
    for (const double side : {-1.0, 1.0})
      ring(0.85 * eye, 0.18 * eye, axis_along_y({0, 0, side * (half - eye)}).then(piece.placement));
  }

  /// One tube slid into another, and an eye for each cord on both sides.
  void slide_clasp(const Element& element, double half, const StrungPiece& piece) {
    const double radius = std::min(element.thickness.mm() / 2, 0.45 * half), across = element.across.mm() / 2;
    metal_bead({radius, across, 0.62 * radius, 0.12 * radius}, axis_along_x({}).then(piece.placement));
    metal_bead({0.58 * radius, across + 0.4, 0.1 * radius, 0.2 * radius},
               axis_along_x({}).then(piece.placement));
    const double eye = (half - radius) / 2;
    for (const double side : {-1.0, 1.0})
      for (const double cord : {-0.5, 0.5})
        ring(0.86 * eye, 0.2 * eye,
             axis_along_y({cord * piece.apart_mm, 0, side * (radius + eye)}).then(piece.placement));
  }

  std::uint32_t silver() { return bench_.surface_of_stuff(Stuff::silver); }

  Workbench& bench_;
  const project::Project& project_;
  const strand::Strung& strung_;
};

}  // namespace

Result<Done> add_strung(Workbench& bench, const project::Project& project, const strand::Strung& strung,
                        const StrungLayout& layout) {
  PartMaker maker(bench, project, strung);
  for (const StrungPiece& piece : layout.pieces)
    if (auto done = maker.add(piece); !done) return done;
  for (const auto& way : cord_ways(strung, layout))
    if (way.size() >= 2)
      bench.add_strand(smooth_way(way, 4), strung.cord.diameter.mm() / 2,
                       bench.surface_of_stuff(Stuff::cord));
  return Done{};
}

}  // namespace evencount::render
