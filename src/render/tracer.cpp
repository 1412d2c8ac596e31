#include "render/tracer.hpp"

#include <embree3/rtcore.h>
#include <fmt/format.h>

#include <cstring>
#include <map>
#include <numbers>

namespace evencount::render {
namespace {

struct DeviceEnd {
  void operator()(RTCDevice device) const { rtcReleaseDevice(device); }
};
struct SceneEnd {
  void operator()(RTCScene scene) const { rtcReleaseScene(scene); }
};
struct GeometryEnd {
  void operator()(RTCGeometry geometry) const { rtcReleaseGeometry(geometry); }
};
using Device = std::unique_ptr<RTCDeviceTy, DeviceEnd>;
using EmbreeScene = std::unique_ptr<RTCSceneTy, SceneEnd>;
using Geometry = std::unique_ptr<RTCGeometryTy, GeometryEnd>;

float f(double value) {
  return static_cast<float>(value);
}

RTCRay ray_of(const Ray& ray, double farthest) {
  RTCRay r{};
  r.org_x = f(ray.from.x), r.org_y = f(ray.from.y), r.org_z = f(ray.from.z);
  r.dir_x = f(ray.towards.x), r.dir_y = f(ray.towards.y), r.dir_z = f(ray.towards.z);
  r.tnear = 0, r.tfar = f(farthest), r.mask = ~0u;
  return r;
}

constexpr double endless = 1e18;

RTCRayHit first_hit(RTCScene scene, const Ray& ray) {
  RTCRayHit query{};
  query.ray = ray_of(ray, endless);
  query.hit.geomID = RTC_INVALID_GEOMETRY_ID;
  query.hit.instID[0] = RTC_INVALID_GEOMETRY_ID;
  RTCIntersectContext context;
  rtcInitIntersectContext(&context);
  rtcIntersect1(scene, &context, &query);
  return query;
}

/// A normal's way into the world: by the inverse transpose, the columns being at right angles.
Vec3 turned_normal(const Placement& p, Vec3 n) {
  return unit(n.x / dot(p.x, p.x) * p.x + n.y / dot(p.y, p.y) * p.y + n.z / dot(p.z, p.z) * p.z);
}

/// The coat gets thicker and thinner once round the bead.
double film_at(const Placed& solid, Vec3 point) {
  const Vec3 from = point - solid.placement.origin;
  const Placement& p = solid.placement;
  const double x = dot(from, p.x) / dot(p.x, p.x), y = dot(from, p.y) / dot(p.y, p.y),
               z = dot(from, p.z) / dot(p.z, p.z);
  return 0.5 + 0.5 * std::sin(std::atan2(y, x) + 2 * std::numbers::pi * solid.turn + 0.3 * z);
}

bool is_finite(Vec3 p) {
  return std::isfinite(p.x) && std::isfinite(p.y) && std::isfinite(p.z);
}

Problem out_of_scene(const std::string& found) {
  return {ProblemCode::out_of_range, "scene", found, "meshes and surfaces that are there, finite places"};
}

Result<Done> check(const Scene& scene) {
  for (const Placed& solid : scene.solids) {
    const Placement& p = solid.placement;
    if (solid.mesh >= scene.meshes.size() || solid.surface >= scene.surfaces.size())
      return out_of_scene(fmt::format("mesh {}, surface {}", solid.mesh, solid.surface));
    if (!is_finite(p.x) || !is_finite(p.y) || !is_finite(p.z) || !is_finite(p.origin))
      return out_of_scene("a place that is not finite");
  }
  for (const Strand& strand : scene.strands) {
    if (strand.surface >= scene.surfaces.size() || strand.points.size() < 2)
      return out_of_scene("a thread without a surface or without two points");
    for (const Vec3 p : strand.points)
      if (!is_finite(p)) return out_of_scene("a place that is not finite");
  }
  return Done{};
}

}  // namespace

struct Tracer::Inside {
  const Scene* scene = nullptr;
  Device device;
  std::vector<EmbreeScene> solids;  ///< one a mesh
  EmbreeScene world;
  std::vector<std::uint32_t> strand_surfaces;  ///< by what comes after the placements

  Result<Done> make(const Scene& from);
  Result<Done> failed() const {
    const RTCError error = rtcGetDeviceError(device.get());
    if (error == RTC_ERROR_NONE) return Done{};
    return Problem{ProblemCode::system_failure, "ray tracing",
                   fmt::format("Embree's error {}", static_cast<int>(error)), ""};
  }
  void add_mesh(const Mesh& mesh);
  void add_strands(std::uint32_t surface, const std::vector<const Strand*>& strands);
  [[nodiscard]] Hit hit_of(const RTCRayHit& query, const Ray& ray) const;
  [[nodiscard]] double to_ground(const Ray& ray) const {
    const Ground& ground = scene->ground;
    if (ground.kind == GroundKind::none || ray.towards.z >= 0 || ray.from.z <= ground.height_mm)
      return endless;
    return (ground.height_mm - ray.from.z) / ray.towards.z;
  }
};

void Tracer::Ends::operator()(Inside* inside) const {
  delete inside;
}

void Tracer::Inside::add_mesh(const Mesh& mesh) {
  const Geometry geometry(rtcNewGeometry(device.get(), RTC_GEOMETRY_TYPE_TRIANGLE));
  auto* points = static_cast<float*>(rtcSetNewGeometryBuffer(
      geometry.get(), RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3, 3 * sizeof(float), mesh.points.size()));
  auto* corners = static_cast<std::uint32_t*>(
      rtcSetNewGeometryBuffer(geometry.get(), RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3,
                              3 * sizeof(std::uint32_t), mesh.triangles.size()));
  if (points)
    for (const Vec3 p : mesh.points) *points++ = f(p.x), *points++ = f(p.y), *points++ = f(p.z);
  if (corners)
    for (const auto& triangle : mesh.triangles)
      for (const std::uint32_t corner : triangle) *corners++ = corner;
  rtcCommitGeometry(geometry.get());
  EmbreeScene solid(rtcNewScene(device.get()));
  rtcSetSceneFlags(solid.get(), RTC_SCENE_FLAG_ROBUST);
  rtcSetSceneBuildQuality(solid.get(), RTC_BUILD_QUALITY_HIGH);
  rtcAttachGeometry(solid.get(), geometry.get());
  rtcCommitScene(solid.get());
  solids.push_back(std::move(solid));
}

void Tracer::Inside::add_strands(std::uint32_t surface, const std::vector<const Strand*>& strands) {
  std::size_t points = 0, pieces = 0;
  for (const Strand* strand : strands) points += strand->points.size(), pieces += strand->points.size() - 1;
  const Geometry geometry(rtcNewGeometry(device.get(), RTC_GEOMETRY_TYPE_ROUND_LINEAR_CURVE));
  auto* place = static_cast<float*>(rtcSetNewGeometryBuffer(geometry.get(), RTC_BUFFER_TYPE_VERTEX, 0,
                                                            RTC_FORMAT_FLOAT4, 4 * sizeof(float), points));
  auto* piece = static_cast<std::uint32_t*>(rtcSetNewGeometryBuffer(
      geometry.get(), RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT, sizeof(std::uint32_t), pieces));
  auto* joins = static_cast<unsigned char*>(
      rtcSetNewGeometryBuffer(geometry.get(), RTC_BUFFER_TYPE_FLAGS, 0, RTC_FORMAT_UCHAR, 1, pieces));
  std::uint32_t first = 0;
  for (const Strand* strand : strands) {
    const auto count = static_cast<std::uint32_t>(strand->points.size());
    for (const Vec3 p : strand->points)
      *place++ = f(p.x), *place++ = f(p.y), *place++ = f(p.z), *place++ = f(strand->radius_mm);
    for (std::uint32_t i = 0; i + 1 < count; ++i) {
      *piece++ = first + i;
      *joins++ = static_cast<unsigned char>((i > 0 ? RTC_CURVE_FLAG_NEIGHBOR_LEFT : 0) |
                                            (i + 2 < count ? RTC_CURVE_FLAG_NEIGHBOR_RIGHT : 0));
    }
    first += count;
  }
  rtcCommitGeometry(geometry.get());
  rtcAttachGeometry(world.get(), geometry.get());
  strand_surfaces.push_back(surface);
}

Result<Done> Tracer::Inside::make(const Scene& from) {
  if (auto sound = check(from); !sound) return sound;
  scene = &from;
  // One thread builds: a tree that depends on how many threads there were would show in the last bits.
  device.reset(rtcNewDevice("threads=1"));
  if (!device) return Problem{ProblemCode::system_failure, "ray tracing", "Embree does not start", "more memory for it"};
  for (const Mesh& mesh : from.meshes) add_mesh(mesh);
  world.reset(rtcNewScene(device.get()));
  rtcSetSceneFlags(world.get(), RTC_SCENE_FLAG_ROBUST);
  for (const Placed& solid : from.solids) {
    const Geometry geometry(rtcNewGeometry(device.get(), RTC_GEOMETRY_TYPE_INSTANCE));
    rtcSetGeometryInstancedScene(geometry.get(), solids[solid.mesh].get());
    const Placement& p = solid.placement;
    const float columns[12] = {f(p.x.x), f(p.x.y), f(p.x.z), f(p.y.x),      f(p.y.y),      f(p.y.z),
                               f(p.z.x), f(p.z.y), f(p.z.z), f(p.origin.x), f(p.origin.y), f(p.origin.z)};
    rtcSetGeometryTransform(geometry.get(), 0, RTC_FORMAT_FLOAT3X4_COLUMN_MAJOR, columns);
    rtcCommitGeometry(geometry.get());
    rtcAttachGeometry(world.get(), geometry.get());
  }
  std::map<std::uint32_t, std::vector<const Strand*>> by_surface;
  for (const Strand& strand : from.strands) by_surface[strand.surface].push_back(&strand);
  for (const auto& [surface, strands] : by_surface) add_strands(surface, strands);
  rtcCommitScene(world.get());
  return failed();
}

Hit Tracer::Inside::hit_of(const RTCRayHit& query, const Ray& ray) const {
  Hit hit;
  hit.distance_mm = static_cast<double>(query.ray.tfar);
  const Vec3 normal{query.hit.Ng_x, query.hit.Ng_y, query.hit.Ng_z};
  if (query.hit.instID[0] == RTC_INVALID_GEOMETRY_ID) {
    hit.normal = hit.smooth = unit(normal);
    hit.surface = strand_surfaces[query.hit.geomID - scene->solids.size()];
    return hit;
  }
  const Placed& solid = scene->solids[query.hit.instID[0]];
  const Mesh& mesh = scene->meshes[solid.mesh];
  const auto& [a, b, c] = mesh.triangles[query.hit.primID];
  const double u = static_cast<double>(query.hit.u), v = static_cast<double>(query.hit.v);
  hit.normal = turned_normal(solid.placement, normal);
  hit.smooth = turned_normal(solid.placement,
                             (1 - u - v) * mesh.normals[a] + u * mesh.normals[b] + v * mesh.normals[c]);
  hit.surface = solid.surface;
  hit.hole = query.hit.primID >= mesh.first_of_hole;
  if (scene->surfaces[solid.surface].mirror.rows() > 1)
    hit.film = film_at(solid, ray.from + hit.distance_mm * ray.towards);
  return hit;
}

Result<Tracer> Tracer::build(const Scene& scene) {
  std::unique_ptr<Inside, Ends> inside(new Inside);
  if (auto made = inside->make(scene); !made) return made.problem();
  return Tracer(std::move(inside));
}

std::optional<Hit> Tracer::closest(const Ray& ray) const {
  const double ground = inside_->to_ground(ray);
  const RTCRayHit query = first_hit(inside_->world.get(), ray);
  if (query.hit.geomID != RTC_INVALID_GEOMETRY_ID && static_cast<double>(query.ray.tfar) < ground)
    return inside_->hit_of(query, ray);
  if (ground >= endless) return std::nullopt;
  return Hit{.distance_mm = ground, .normal = {0, 0, 1}, .smooth = {0, 0, 1}, .ground = true};
}

bool Tracer::hidden(const Ray& ray, double distance_mm) const {
  if (inside_->to_ground(ray) < distance_mm) return true;
  RTCRay query = ray_of(ray, distance_mm);
  RTCIntersectContext context;
  rtcInitIntersectContext(&context);
  rtcOccluded1(inside_->world.get(), &context, &query);
  return query.tfar < 0;
}

bool Tracer::bare(const Ray& ray) const {
  return first_hit(inside_->world.get(), ray).hit.geomID != RTC_INVALID_GEOMETRY_ID;
}

}  // namespace evencount::render
