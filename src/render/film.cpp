#include "render/film.hpp"

namespace evencount::render {
namespace {

double as_shown(Spectrum light) {
  const double y =
      0.2126 * light.r + 0.7152 * light.g + 0.0722 * light.b;  // luminance of sRGB's primaries, IEC 61966-2-1
  return std::sqrt(std::min(1.0, std::max(0.0, y)));           // near enough to how light it is shown
}

float f(double value) {
  return static_cast<float>(value);
}
double d(float value) {
  return static_cast<double>(value);
}

/// A pixel's means, for the filter.
struct Smooth {
  Spectrum light_on;  ///< light over colour
  Spectrum colour;
  Vec3 normal;
  double shown = 0, variance = 1;
};

constexpr double least_colour =
    0.02;  ///< dark colours can't be taken out of the light without making noise of it
/// How fast kinship falls: squares of the differences at which it is 1 / e. From looking at pictures.
constexpr double normals_apart = 0.02, colours_apart = 0.003;
constexpr double least_noise = 1e-7;  ///< variance; even where all samples agree
constexpr int reach = 3;              ///< pixels to each side that are averaged

Smooth smooth_of(const Pixel& p) {
  const double n = std::max(1, p.samples);
  Smooth s;
  s.colour = (1 / n) * Spectrum{d(p.colour_r), d(p.colour_g), d(p.colour_b)};
  s.colour = {std::max(least_colour, s.colour.r), std::max(least_colour, s.colour.g),
              std::max(least_colour, s.colour.b)};
  s.light_on = mean_light(p) / s.colour;
  s.normal = (1 / n) * Vec3{d(p.normal_x), d(p.normal_y), d(p.normal_z)};
  s.shown = d(p.shown) / n;
  s.variance = variance_of(p);
  return s;
}

/// Smoothed over 3 x 3, since the variance of few samples is itself noise.
double steady_variance(const std::vector<Smooth>& all, int width, int height, int x, int y) {
  double sum = 0;
  int count = 0;
  for (int dy = -1; dy <= 1; ++dy)
    for (int dx = -1; dx <= 1; ++dx) {
      const int px = x + dx, py = y + dy;
      if (px < 0 || py < 0 || px >= width || py >= height) continue;
      sum +=
          all[static_cast<std::size_t>(py) * static_cast<std::size_t>(width) + static_cast<std::size_t>(px)]
              .variance;
      ++count;
    }
  return sum / count;
}

/// How much a neighbour counts: the same surface, and as light as noise allows.
double kinship(const Smooth& a, double variance_a, const Smooth& b, double variance_b) {
  const Vec3 bend = a.normal - b.normal;
  const Spectrum tint = a.colour - b.colour;
  const double apart =
      (a.shown - b.shown) * (a.shown - b.shown) - (variance_a + std::min(variance_a, variance_b));
  const double allowed = 0.5 * (variance_a + variance_b) + least_noise;
  return std::exp(-dot(bend, bend) / normals_apart -
                  (tint.r * tint.r + tint.g * tint.g + tint.b * tint.b) / colours_apart -
                  std::max(0.0, apart) / allowed);
}

}  // namespace

void LightFilm::add(int x, int y, const Seen& seen) {
  Pixel& p = at(x, y);
  const double shown = as_shown(seen.light);
  p.r += f(seen.light.r), p.g += f(seen.light.g), p.b += f(seen.light.b);
  p.shown += f(shown), p.shown_squared += f(shown * shown);
  p.colour_r += f(seen.colour.r), p.colour_g += f(seen.colour.g), p.colour_b += f(seen.colour.b);
  p.normal_x += f(seen.normal.x), p.normal_y += f(seen.normal.y), p.normal_z += f(seen.normal.z);
  ++p.samples;
}

double variance_of(const Pixel& p) {
  if (p.samples < 2) return 1;
  const double n = p.samples, mean = d(p.shown) / n;
  return std::max(0.0, d(p.shown_squared) / n - mean * mean) / (n - 1);
}

Spectrum mean_light(const Pixel& p) {
  return (1.0 / std::max(1, p.samples)) * Spectrum{d(p.r), d(p.g), d(p.b)};
}

Picture developed(const LightFilm& film, double exposure, const RunRows& run_rows) {
  Picture picture{film.width(), film.height(), {}};
  picture.rgb.resize(std::size_t{3} * static_cast<std::size_t>(film.width()) *
                     static_cast<std::size_t>(film.height()));
  run_rows(film.height(), [&](int y) {
    auto* out = picture.rgb.data() +
                std::size_t{3} * static_cast<std::size_t>(y) * static_cast<std::size_t>(film.width());
    for (int x = 0; x < film.width(); ++x) {
      const colour::Rgb rgb = shown_as(mean_light(film.at(x, y)), exposure);
      *out++ = rgb.red, *out++ = rgb.green, *out++ = rgb.blue;
    }
  });
  return picture;
}

Picture filtered(const LightFilm& film, double exposure, const RunRows& run_rows) {
  const int width = film.width(), height = film.height();
  const auto index = [&](int x, int y) {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x);
  };
  std::vector<Smooth> all(index(0, height));
  run_rows(height, [&](int y) {
    for (int x = 0; x < width; ++x) all[index(x, y)] = smooth_of(film.at(x, y));
  });
  std::vector<double> variance(all.size());
  run_rows(height, [&](int y) {
    for (int x = 0; x < width; ++x) variance[index(x, y)] = steady_variance(all, width, height, x, y);
  });
  Picture picture{width, height, std::vector<std::uint8_t>(3 * all.size())};
  run_rows(height, [&](int y) {
    for (int x = 0; x < width; ++x) {
      const std::size_t own = index(x, y);
      Spectrum sum;
      double weights = 0;
      for (int py = std::max(0, y - reach); py <= std::min(height - 1, y + reach); ++py)
        for (int px = std::max(0, x - reach); px <= std::min(width - 1, x + reach); ++px) {
          const std::size_t other = index(px, py);
          const double weight = kinship(all[own], variance[own], all[other], variance[other]);
          weights += weight;
          sum += weight * all[other].light_on;
        }
      const colour::Rgb rgb = shown_as(1 / weights * sum * all[own].colour, exposure);
      std::uint8_t* out = picture.rgb.data() + 3 * own;
      out[0] = rgb.red, out[1] = rgb.green, out[2] = rgb.blue;
    }
  });
  return picture;
}

}  // namespace evencount::render
