#include "render/surface.hpp"

#include "render/microfacet.hpp"

namespace evencount::render {
namespace {

constexpr double per_pi = 1 / std::numbers::pi;

Vec3 seen_under(double cosine) {
  return {std::sqrt(std::max(0.0, 1 - cosine * cosine)), 0, cosine};
}

/// What mirrors of that roughness throw back, each by `mirror` of the angle it is seen under.
template <typename Mirror>
Spectrum thrown_back(double cosine, double alpha, Mirror mirror) {
  constexpr std::uint32_t points = 256;
  const Vec3 out = seen_under(cosine);
  Spectrum sum;
  for (std::uint32_t i = 0; i < points; ++i) {
    const Four at = spread_point(0, i, 0, 1);
    const Vec3 half = sample_visible(out, alpha, at[0], at[1]);
    const Vec3 in = mirrored(out, half);
    if (in.z <= 0) continue;
    sum += (seen_and_lit_share(out, in, alpha) / seen_share(out, alpha)) * mirror(dot(out, half));
  }
  return (1.0 / points) * sum;
}

Spectrum schlick(Spectrum base, double edge, double cosine) {  // C. Schlick 1994
  const double c = 1 - std::clamp(cosine, 0.0, 1.0), c2 = c * c;
  return mix(base, grey(edge), c2 * c2 * c);
}

/// Of what metal's mirrors throw at each other: its colour after any number of them.
Spectrum many_mirrors(const Surface& s) {
  const double once = s.thrown.hemisphere(0).r;
  const Spectrum mean = mix(s.base, grey(s.edge), 1.0 / 21);  // Schlick's curve over a hemisphere
  return once * mean * mean / (grey(1) - (1 - once) * mean);
}

/// The even light that comes from below the mirrors, without the cosine of `in`.
Spectrum even_light(const Surface& s, double out, double in, double film) {
  const Spectrum one = grey(1);
  const Spectrum all = one - s.thrown.hemisphere(film);
  const Spectrum colour = s.make == Make::metal ? many_mirrors(s) : s.base;
  Spectrum light = (one - s.thrown.at(out, film)) * (one - s.thrown.at(in, film)) * colour;
  for (int c = 0; c < 3; ++c) light[c] = all[c] > 1e-9 ? per_pi * light[c] / all[c] : 0;
  return light;
}

Spectrum mirror_of(const Surface& s, double cosine, double film) {
  return s.make == Make::metal ? schlick(s.base, s.edge, cosine) : s.mirror.at(cosine, film);
}

/// How often bounce takes a mirror rather than the ground.
double mirror_share(const Surface& s, double cosine, double film) {
  if (s.make == Make::metal) return 0.95;
  const Spectrum thrown = s.thrown.at(cosine, film);
  const double a = mean(thrown), b = mean((grey(1) - thrown) * s.base);
  return a + b <= 0 ? 1 : std::clamp(a / (a + b), 0.1, 0.95);
}

}  // namespace

Spectrum AngleTable::at(double cosine, double film) const {
  const double x = std::sqrt(std::clamp(cosine, 0.0, 1.0)) * (nodes - 1);
  const int node = std::min(static_cast<int>(x), nodes - 2);
  const auto in_row = [&](int row) {
    const auto first = static_cast<std::size_t>(row * nodes + node);
    return mix(values_[first], values_[first + 1], x - node);
  };
  if (rows_ == 1) return in_row(0);
  const double y = std::clamp(film, 0.0, 1.0) * (rows_ - 1);
  const int row = std::min(static_cast<int>(y), rows_ - 2);
  return mix(in_row(row), in_row(row + 1), y - row);
}

Spectrum AngleTable::hemisphere(double film) const {
  if (rows_ == 1) return means_[0];
  const double y = std::clamp(film, 0.0, 1.0) * (rows_ - 1);
  const int row = std::min(static_cast<int>(y), rows_ - 2);
  const auto first = static_cast<std::size_t>(row);
  return mix(means_[first], means_[first + 1], y - row);
}

void AngleTable::average() {
  constexpr int steps = 512;
  means_.clear();
  for (int row = 0; row < rows_; ++row) {
    Spectrum sum;
    const double film = rows_ == 1 ? 0 : static_cast<double>(row) / (rows_ - 1);
    for (int i = 0; i < steps; ++i) {
      const double cosine = (i + 0.5) / steps;
      sum += 2 * cosine / steps * at(cosine, film);
    }
    means_.push_back(sum);
  }
}

Surface plain(Spectrum base) {
  return {.make = Make::plain, .base = base};
}

Surface coated(Spectrum base, double alpha, AngleTable mirror) {
  Surface s{
      .make = Make::coated, .base = base, .alpha = std::clamp(alpha, 0.02, 1.0), .mirror = std::move(mirror)};
  s.thrown = AngleTable(s.mirror.rows(), [&](double cosine, int row) {
    const double film = s.mirror.rows() == 1 ? 0 : static_cast<double>(row) / (s.mirror.rows() - 1);
    return thrown_back(cosine, s.alpha, [&](double angle) { return s.mirror.at(angle, film); });
  });
  return s;
}

Surface metal(Spectrum base, double alpha, double edge) {
  Surface s{.make = Make::metal, .base = base, .alpha = std::clamp(alpha, 0.02, 1.0), .edge = edge};
  s.thrown = AngleTable(
      1, [&](double cosine, int) { return thrown_back(cosine, s.alpha, [](double) { return grey(1); }); });
  return s;
}

Surface glass(Spectrum absorbed_per_mm, std::optional<Spectrum> lining, double density) {
  return {.make = Make::glass, .density = density, .absorbed_per_mm = absorbed_per_mm, .lining = lining};
}

AngleTable glass_mirror(double density, double strength) {
  return AngleTable(1, [&](double cosine, int) { return grey(strength * fresnel(cosine, density)); });
}

GlassSplit split_by_glass(const Surface& s, Vec3 out, bool within) {
  const double density = within ? 1 / s.density : s.density;
  const double x = -out.x / density, y = -out.y / density;
  return {
      fresnel(out.z, density), {-out.x, -out.y, out.z}, {x, y, -std::sqrt(std::max(0.0, 1 - x * x - y * y))}};
}

Spectrum reflected(const Surface& s, Vec3 out, Vec3 in, double film) {
  if (s.make == Make::glass || out.z <= 0 || in.z <= 0) return {};
  if (s.make == Make::plain) return per_pi * in.z * s.base;
  const Vec3 half = unit(out + in);
  const double mirrors = ggx(half, s.alpha) * seen_and_lit_share(out, in, s.alpha) / (4 * out.z);
  return mirrors * mirror_of(s, dot(out, half), film) + in.z * even_light(s, out.z, in.z, film);
}

double density_of(const Surface& s, Vec3 out, Vec3 in, double film) {
  if (s.make == Make::glass || out.z <= 0 || in.z <= 0) return 0;
  if (s.make == Make::plain) return per_pi * in.z;
  const Vec3 half = unit(out + in);
  const double share = mirror_share(s, out.z, film);
  return share * visible_density(out, half, s.alpha) / (4 * dot(out, half)) + (1 - share) * per_pi * in.z;
}

std::optional<Bounce> bounce(const Surface& s, Vec3 out, double film, bool within, const Four& at) {
  if (out.z <= 0) return std::nullopt;
  if (s.make == Make::glass) {
    const GlassSplit parts = split_by_glass(s, out, within);
    return Bounce{at[2] < parts.mirrored_share ? parts.mirrored : parts.through, grey(1), 0, true};
  }
  Vec3 in = cosine_direction(at[0], at[1]);
  if (s.make == Make::plain)
    return in.z > 0 ? std::optional(Bounce{in, s.base, per_pi * in.z}) : std::nullopt;
  if (at[2] < mirror_share(s, out.z, film)) in = mirrored(out, sample_visible(out, s.alpha, at[0], at[1]));
  if (in.z <= 0) return std::nullopt;
  const double density = density_of(s, out, in, film);
  if (!(density > 0)) return std::nullopt;
  return Bounce{in, (1 / density) * reflected(s, out, in, film), density};
}

Spectrum albedo(const Surface& s, double cosine, double film) {
  if (s.make == Make::plain) return s.base;
  if (s.make == Make::glass) return grey(1);
  const Spectrum lost = grey(1) - s.thrown.at(cosine, film);
  if (s.make == Make::metal)
    return thrown_back(cosine, s.alpha, [&](double angle) { return schlick(s.base, s.edge, angle); }) +
           lost * many_mirrors(s);
  return s.thrown.at(cosine, film) + lost * s.base;
}

}  // namespace evencount::render
