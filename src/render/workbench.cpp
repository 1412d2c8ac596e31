#include "render/workbench.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "project/project.hpp"
#include "render/finishes.hpp"
#include "render/set_stone.hpp"

namespace evencount::render {
namespace {

/// What glass absorbs so that a wall of that thickness lets `colour` through.
Spectrum absorbing(colour::Rgb colour, double wall_mm) {
  const Spectrum through = of(colour);
  Spectrum absorbed;
  for (int c = 0; c < 3; ++c) absorbed[c] = -std::log(std::clamp(through[c], 0.002, 1.0)) / wall_mm;
  return absorbed;
}

constexpr double form_wall_mm = 5;
constexpr colour::Rgb clear_glass{0xee, 0xf4, 0xf2}, smoke_glass{0x9c, 0x9a, 0x98},
    pale_glass{0xd4, 0xe3, 0xe6}, skin{0xd8, 0xc2, 0xb0}, silver{0xc6, 0xc4, 0xc0},
    grey_stone{0x6c, 0x7c, 0x86}, plain_cord{0x3a, 0x34, 0x30}, pale_thread{0xe6, 0xe2, 0xd8};

/// A unit vector across another.
Vec3 aside_of(Vec3 axis, double turn) {
  const Frame frame = Frame::of(axis);
  return std::cos(turn) * frame.tangent + std::sin(turn) * frame.bitangent;
}

/// The reach of a mesh in a direction, placed.
double reach_down(const Mesh& mesh, const Placement& p) {
  const Vec3 down{-p.x.z, -p.y.z, -p.z.z};
  double reach = -1e30;
  for (const Vec3 point : mesh.points) reach = std::max(reach, dot(point, down));
  return reach;
}

constexpr double full_turn = 6.283185307179586;

}  // namespace

std::vector<Vec3> smooth_way(const std::vector<Vec3>& through, int steps) {
  std::vector<Vec3> way;
  const auto at = [&](std::ptrdiff_t i) {
    return through[static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(i, 0, std::ssize(through) - 1))];
  };
  for (std::ptrdiff_t i = 0; i + 1 < std::ssize(through); ++i)
    for (int k = 0; k < steps; ++k) {
      const double t = static_cast<double>(k) / steps;
      const Vec3 a = at(i - 1), b = at(i), c = at(i + 1), d = at(i + 2);
      way.push_back(0.5 * (2 * b + t * (c - a) + t * t * (2 * a - 5 * b + 4 * c - d) +
                           t * t * t * (3 * b - a - 3 * c + d)));
    }
  way.push_back(through.back());
  return way;
}

std::uint32_t Workbench::keep(Surface surface) {
  scene.surfaces.push_back(std::move(surface));
  return static_cast<std::uint32_t>(scene.surfaces.size() - 1);
}

std::uint32_t Workbench::mesh_of(const std::string& key, const std::function<Mesh()>& make) {
  const auto [found, is_new] = meshes_.try_emplace(key, static_cast<std::uint32_t>(scene.meshes.size()));
  if (is_new) scene.meshes.push_back(make());
  return found->second;
}

std::uint32_t Workbench::surface_for(std::size_t entry, const bead::Size& size) {
  const auto [found, is_new] = legend_surfaces_.try_emplace({entry, size.id}, 0u);
  if (is_new) {
    const project::LegendEntry& bead = project_.legend[entry];
    found->second = keep(surface_of(bead.finish, bead.colour, size));
  }
  return found->second;
}

std::uint32_t Workbench::surface_of_legend(std::size_t entry) {
  const bead::Size* size = project::find_bead(project_, project_.legend[entry].bead);
  return surface_for(entry, size ? *size : bead::sizes().front());
}

std::optional<std::size_t> Workbench::entry_named_in(std::string_view name) const {
  for (std::size_t i = 0; i < project_.legend.size(); ++i)
    if (!project_.legend[i].name.empty() && name.ends_with(project_.legend[i].name)) return i;
  return std::nullopt;
}

std::uint32_t Workbench::surface_of_stuff(Stuff stuff) {
  const auto [found, is_new] = stuff_.try_emplace(stuff, 0u);
  if (!is_new) return found->second;
  switch (stuff) {
    case Stuff::thread:
      return found->second = keep(plain(of(choice_.thread_colour.value_or(plain_cord))));
    case Stuff::cord:
      return found->second = keep(plain(of(choice_.cord_colour.value_or(plain_cord))));
    case Stuff::silver:
      return found->second = keep(metal(of(silver), 0.16));
    case Stuff::form_glass:
      return found->second = keep(form_glass(nullptr));
    case Stuff::glass_bead:
      return found->second = keep(glass(absorbing(pale_glass, form_wall_mm)));
    case Stuff::stone: {                                     // polished and opaque
      constexpr double polish = 0.03, stone_density = 1.54;  // quartz and agate, from memory
      return found->second = keep(
                 coated(of(choice_.stone_colour.value_or(grey_stone)), polish, glass_mirror(stone_density)));
    }
    case Stuff::skin:
      return found->second = keep(plain(of(skin)));
  }
  return 0;
}

Surface Workbench::form_glass(const project::FormEntry* entry) const {
  if (choice_.form_colour) return glass(absorbing(*choice_.form_colour, form_wall_mm));
  const bool smoke = entry && lower_ascii(entry->name).find("smoke") != std::string::npos;
  return glass(absorbing(smoke ? smoke_glass : clear_glass, form_wall_mm));
}

void Workbench::add_solid(const std::string& key, const std::function<Mesh()>& make, std::uint32_t surface,
                          const Placement& placement) {
  const std::uint32_t mesh = mesh_of(key, make);
  scene.solids.push_back({mesh, surface, placement, share_of(next_number())});
  double reach = 0;
  for (const Vec3 p : scene.meshes[mesh].points) reach = std::max(reach, norm(placement.direction(p)));
  balls_.push_back({placement.origin, reach});
}

void Workbench::add_bead(const bead::Size& size, std::uint32_t surface, const Placement& placement) {
  // Each bead has its own size, seat and turn: as much off as its kind's tolerance says.
  const auto normal = [&] {
    const std::uint32_t a = next_number(), b = next_number();
    return std::clamp(normal_of(a, b), -2.5, 2.5);
  };
  const double wide = 1 + size.scatter * normal(), long_ = 1 + size.scatter * normal();
  const double tilt = size.scatter * normal(), tilt_towards = full_turn * share_of(next_number()),
               spin = full_turn * share_of(next_number());
  const Vec3 axis = unit(placement.z + tilt * aside_of(placement.z, tilt_towards));
  const double shift = size.scatter * size.diameter.mm() / 2;
  const Vec3 off = (shift * normal()) * placement.x + (shift * normal()) * placement.y;
  const Vec3 across = aside_of(axis, spin);
  const Placement own{wide * across, wide * cross(axis, across), long_ * axis, placement.origin + off};
  const BeadShape shape = shape_of(size);
  const std::uint32_t mesh = mesh_of(fmt::format("bead {} {} {} {} {}", shape.radius_mm, shape.half_length_mm,
                                                 shape.hole_radius_mm, shape.rim_mm, shape.tumbled),
                                     [&] { return bead_mesh(shape); });
  scene.solids.push_back({mesh, surface, own, share_of(next_number())});
  balls_.push_back({own.origin, std::hypot(shape.radius_mm, shape.half_length_mm)});
}

void Workbench::add_strand(std::vector<Vec3> points, double radius_mm, std::uint32_t surface) {
  if (points.size() >= 2) scene.strands.push_back({std::move(points), radius_mm, surface});
}

void Workbench::add_settled(const fabric::Fabric& fabric, const std::vector<bead::Size>& sizes,
                            const Placement& placement) {
  for (const fabric::SettledBead& bead : fabric.beads) {
    const auto entry = static_cast<std::size_t>(bead.bead);
    const Vec3 axis = unit(placement.direction(bead.shape.axis)), aside = aside_of(axis, 0);
    add_bead(sizes[entry], surface_for(entry, sizes[entry]),
             {aside, cross(axis, aside), axis, placement.point(bead.shape.middle)});
  }
}

void Workbench::add_links(const fabric::Fabric& fabric, const Placement& placement, std::uint32_t surface) {
  const double radius = project_.thread.diameter.mm() / 2;
  for (const fabric::Link& link : fabric.links) {
    if (link.across_seam && !fabric.closed) continue;
    const fabric::Cylinder &from = fabric.beads[link.from.bead].shape, &to = fabric.beads[link.to.bead].shape;
    const Vec3 out_a = link.from.end * from.axis, out_b = link.to.end * to.axis;
    // Each pass lies somewhere else in its hole.
    const double aside = 0.35 * std::min(from.radius_mm, to.radius_mm) * share_of(next_number());
    const Vec3 seat = aside * aside_of(from.axis, full_turn * share_of(next_number()));
    const Vec3 a = place_of(from, link.from.end) + seat, b = place_of(to, link.to.end) + seat;
    const double handle = std::max(0.16 * norm(b - a), 0.6 * radius);  // drawn tight
    const Vec3 p1 = a + handle * out_a, p2 = b + handle * out_b;
    std::vector<Vec3> way{placement.point(from.middle + seat)};
    constexpr int steps = 6;
    for (int i = 0; i <= steps; ++i) {  // Bezier's curve from mouth to mouth
      const double t = static_cast<double>(i) / steps, s = 1 - t;
      way.push_back(placement.point(s * s * s * a + 3 * s * s * t * p1 + 3 * s * t * t * p2 + t * t * t * b));
    }
    way.push_back(placement.point(to.middle + seat));
    add_strand(std::move(way), radius, surface);
  }
}

Spectrum Workbench::thread_colour(const fabric::Fabric& fabric) const {
  // Thread is chosen not to be seen: as the beads are on the whole, a little darker; in glass that is seen through, pale.
  Spectrum sum;
  std::size_t clear = 0;
  for (const fabric::SettledBead& bead : fabric.beads) {
    const project::LegendEntry& entry = project_.legend[static_cast<std::size_t>(bead.bead)];
    sum += of(entry.colour);
    clear += entry.finish == bead::Finish::transparent || entry.finish == bead::Finish::lined;
  }
  if (2 * clear > fabric.beads.size()) return of(pale_thread);
  return (0.7 / static_cast<double>(std::max<std::size_t>(1, fabric.beads.size()))) * sum;
}

std::vector<bead::Size> Workbench::sizes_for(const project::Band& band) const {
  std::vector<bead::Size> sizes;
  for (const project::LegendEntry& entry : project_.legend) {
    const bead::Size* size = project::find_bead(project_, entry.bead);
    if (!size) size = project::find_bead(project_, band.bead);
    sizes.push_back(size ? *size : bead::sizes().front());
  }
  return sizes;
}

Result<fabric::Around> Workbench::around_stone(const project::Band& band,
                                               const std::vector<bead::Size>& sizes) const {
  const bool alone = !choice_.band.empty() || (project_.bands.size() == 1 && !project_.strand);
  const bool is_bezel = band.begin_at > 0 || is_drawn_in(band, sizes);
  const auto set = set_stone(project_, band, sizes, alone || is_bezel ? choice_.stone : std::nullopt);
  if (!set) return set.problem();
  return *set ? fabric::Around(**set) : fabric::Around();
}

Result<Done> Workbench::add_band(const project::Band& band, const Placement& placement, int forms_together) {
  const auto plan = project::plan_of(band);
  if (!plan) return plan.problem();
  const std::vector<bead::Size> sizes = sizes_for(band);
  const project::FormEntry* entry = band.form ? project::find_form(project_, *band.form) : nullptr;
  const bool round = band.closure != weave::Closure::open;
  fabric::Around around;
  if (entry) {
    if (round) around = entry->form;
  } else {
    const auto stone = around_stone(band, sizes);
    if (!stone) return stone.problem().within(band.name);
    around = *stone;
  }
  const auto fabric = fabric::settle(*plan, sizes, project::gauge_of(project_, band), around);
  if (!fabric) return fabric.problem().within(band.name);
  if (fabric->beads.size() > most_solids - std::min(scene.solids.size(), most_solids))
    return Problem{ProblemCode::out_of_range, "scene", fmt::format("more than {} beads", most_solids), "fewer bands, or one of them"};
  add_settled(*fabric, sizes, placement);
  add_links(*fabric, placement,
            choice_.thread_colour ? surface_of_stuff(Stuff::thread) : keep(plain(thread_colour(*fabric))));
  if (const auto* stone = std::get_if<fabric::SetStone>(&around)) add_stone(stone->stone, placement);
  if (!entry || !round) return Done{};
  if (!entry->form.length_along_holes) return add_skin(entry->form, *fabric, placement), Done{};
  for (int i = 0; i < forms_together; ++i) {
    const double along = (i - (forms_together - 1) / 2.0) * entry->form.length_along_holes->mm();
    if (auto done = add_form(entry, entry->form, moved({0, 0, along}).then(placement)); !done) return done;
  }
  return Done{};
}

/// What is worn itself, as far as it is seen beside the band: a finger, a wrist.
void Workbench::add_skin(const form::Form& form, const fabric::Fabric& fabric, const Placement& placement) {
  constexpr double beside_mm = 8;
  double half = 0;
  for (const fabric::SettledBead& bead : fabric.beads) half = std::max(half, std::abs(bead.shape.middle.z));
  const double x = form.width.mm() / 2, y = form.thickness.mm() / 2, length = half + beside_mm;
  add_solid(
      fmt::format("body {} {} {}", x, y, length), [&] { return oval_tube_mesh(x, y, length); },
      surface_of_stuff(Stuff::skin), placement);
}

void Workbench::add_stone(const form::Stone& stone, const Placement& placement) {
  add_solid(
      form::to_notation(stone), [&] { return stone_mesh(stone); }, surface_of_stuff(Stuff::stone), placement);
}

Result<Done> Workbench::add_form(const project::FormEntry* entry, const form::Form& form,
                                 const Placement& placement) {
  const auto mesh =
      form_mesh(form, form.length_along_holes ? form.length_along_holes->mm() : form.width.mm());
  if (!mesh) return mesh.problem();
  const std::string key = "form " + form::to_notation(form);
  const auto [found, is_new] = form_surfaces_.try_emplace(entry ? entry->id : key, 0u);
  if (is_new) found->second = keep(form_glass(entry));
  add_solid(
      key, [&] { return *mesh; }, found->second, placement);
  return Done{};
}

void Workbench::turn_and_rest(double turn) {
  const double c = std::cos(turn), s = std::sin(turn);
  Placement about{{c, s, 0}, {-s, c, 0}, {0, 0, 1}, {}};
  double lowest = 1e30;
  for (Placed& solid : scene.solids) {
    solid.placement = solid.placement.then(about);
    lowest =
        std::min(lowest, solid.placement.origin.z - reach_down(scene.meshes[solid.mesh], solid.placement));
  }
  for (Strand& strand : scene.strands)
    for (Vec3& p : strand.points) p = about.point(p), lowest = std::min(lowest, p.z - strand.radius_mm);
  for (Placed& solid : scene.solids) solid.placement.origin.z -= lowest;
  for (Strand& strand : scene.strands)
    for (Vec3& p : strand.points) p.z -= lowest;
  for (Ball& ball : balls_) ball.middle = about.point(ball.middle) - Vec3{0, 0, lowest};
}

}  // namespace evencount::render
