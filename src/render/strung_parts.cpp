#include "render/strung_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numbers>

namespace evencount::render {
namespace {

using strand::Element;
using strand::ElementKind;

/// Shares below are from memory of findings and chosen for the look: they are plain shapes of the stated sizes.
constexpr double least_wire_mm = 0.8;  ///< thickness, from memory of findings

/// Turned so that the solid's axis (its own z) runs along x or y of the piece.
Placement axis_along_x(Vec3 at) {
  return {{0, 1, 0}, {0, 0, 1}, {1, 0, 0}, at};
}
Placement axis_along_y(Vec3 at) {
  return {{0, 0, 1}, {1, 0, 0}, {0, 1, 0}, at};
}

Vec3 to_vec(strand::Place3 p) {
  return {p.x, p.y, p.z};
}

/// A thing in its place: z along the cord, y out of its face, x to the inner cord (to higher x of a form's section, as the fabric lays
/// bands round it).
struct Strung {
  const Element& element;
  const strand::PlacedThing& thing;
  Placement placement;
  [[nodiscard]] double length_mm() const { return thing.length.mm(); }
};

class PartMaker {
 public:
  PartMaker(Workbench& bench, const project::Project& project) : bench_(bench), project_(project) {}

  Result<Done> add(const Strung& part, bool closing) {
    if (part.element.kind == ElementKind::form) return add_carrier(part.element, part.placement);
    if (closing && part.element.kind == ElementKind::clasp)
      add_clasp(part);
    else
      add_part(part);
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

  void add_part(const Strung& part) {
    const auto& [element, thing, placement] = part;
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
        return jump_ring(element, placement);
      default:
        return chain(part.length_mm(), placement);
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
  /// A jump ring adds its inside: the wire lies round its neighbours' loops.
  void jump_ring(const Element& element, const Placement& placement) {
    const double wire = std::max(element.thickness.mm() - element.width.mm(), least_wire_mm) / 2;
    ring(element.width.mm() / 2 + wire, wire, axis_along_y({}).then(placement));
  }
  /// A chain of rings as long as the piece, hooked into each other, every second one standing.
  void chain(double length, const Placement& placement) {
    constexpr double link_mm = 6;  // about; from memory of fine chain
    const double wire = std::min(least_wire_mm, length / 6) / 2;
    const int count = std::max(1, static_cast<int>(std::lround(length / link_mm)));
    const double each = (length - 4 * wire) / count;  // from link to link
    for (int i = 0; i < count; ++i) {
      const Vec3 at{0, 0, (i - (count - 1) / 2.0) * each};
      ring(each / 2 + wire, wire, (i % 2 == 0 ? axis_along_y(at) : axis_along_x(at)).then(placement));
    }
  }

  /// An opened clasp's halves lie apart; each is drawn as its share of the closed one.
  void add_clasp(const Strung& part) {
    const Element& element = part.element;
    const double half = element.width.mm() / 2;
    std::vector<double> ends;  // the sides of the clasp that are there
    if (part.thing.half != strand::ClaspHalf::before) ends.push_back(-1);
    if (part.thing.half != strand::ClaspHalf::after) ends.push_back(1);
    const bool closed = ends.size() == 2;
    const Placement whole = moved({0, 0, closed ? 0 : -ends.front() * half / 2}).then(part.placement);
    if (element.holes == 2)
      slide_clasp(element, half, ends, whole);
    else
      round_clasp(element, half, ends, whole);
  }

  /// A round body between two loops that the cords are tied to.
  void round_clasp(const Element& element, double half, const std::vector<double>& ends,
                   const Placement& whole) {
    const double eye = std::min(0.28 * half, 2.2), body = half - 2 * eye;
    const double radius = std::min(element.thickness.mm() / 2, 0.6 * body);
    const double middle = ends.size() == 2 ? 0 : ends.front() * body / 2;
    const BeadShape shape{radius, ends.size() == 2 ? body : body / 2, 0.3, 0.55 * std::min(radius, body / 2)};
    metal_bead(shape, moved({0, 0, middle}).then(whole));
    for (const double end : ends)
      ring(0.82 * eye, 0.18 * eye, axis_along_y({0, 0, end * (half - eye)}).then(whole));
  }

  /// One tube slid into another, and an eye for each cord on both sides.
  void slide_clasp(const Element& element, double half, const std::vector<double>& ends,
                   const Placement& whole) {
    const double radius = std::min(element.thickness.mm() / 2, 0.45 * half), across = element.across.mm() / 2;
    const double eye = (half - radius) / 2;
    for (const double end : ends) {
      if (end < 0)  // the outer tube
        metal_bead({radius, across, 0.62 * radius, 0.12 * radius}, axis_along_x({}).then(whole));
      else
        metal_bead({0.58 * radius, across + 0.4, 0.1 * radius, 0.2 * radius}, axis_along_x({}).then(whole));
      for (const double cord : {-0.5, 0.5})
        ring(0.8 * eye, 0.2 * eye,
             axis_along_y({cord * element.apart.mm(), 0, end * (radius + eye)}).then(whole));
    }
  }

  std::uint32_t silver() { return bench_.surface_of_stuff(Stuff::silver); }

  Workbench& bench_;
  const project::Project& project_;
};

}  // namespace

Result<Done> add_strung(Workbench& bench, const project::Project& project, const strand::Strung& strung,
                        const strand::PlacedStrand& placed, const Placement& stand) {
  PartMaker maker(bench, project);
  for (const strand::PlacedThing& thing : placed.things) {
    const Vec3 along = to_vec(thing.along), out = to_vec(thing.outwards);
    const Placement own{cross(out, along), out, along, to_vec(thing.middle)};
    const Strung part{strung.elements[static_cast<std::size_t>(thing.element)], thing, own.then(stand)};
    if (auto done = maker.add(part, thing.element == strung.closing); !done) return done;
  }
  for (const auto& cord : placed.cords) {
    std::vector<Vec3> way;
    for (const strand::Place3 p : cord) way.push_back(stand.point(to_vec(p)));
    constexpr int pieces = 4;  // between two points of the cord: as even as its thickness shows
    if (way.size() >= 2)
      bench.add_strand(smooth_way(way, pieces), strung.cord.diameter.mm() / 2,
                       bench.surface_of_stuff(Stuff::cord));
  }
  return Done{};
}

}  // namespace evencount::render
