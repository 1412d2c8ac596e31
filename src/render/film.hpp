#pragma once
/// What the samples of each pixel have brought so far.

#include <functional>
#include <vector>

#include "render/path.hpp"
#include "render/picture.hpp"

namespace evencount::render {

struct Pixel {
  float r = 0, g = 0, b = 0;                       ///< sums of light
  float shown = 0, shown_squared = 0;              ///< sums of how light it will be shown, and of its square
  float colour_r = 0, colour_g = 0, colour_b = 0;  ///< sums of what was met first
  float normal_x = 0, normal_y = 0, normal_z = 0;
  std::int32_t samples = 0;
};

class LightFilm {
 public:
  LightFilm(int width, int height)
      : width_(width),
        height_(height),
        pixels_(static_cast<std::size_t>(width) * static_cast<std::size_t>(height)) {}
  [[nodiscard]] int width() const { return width_; }
  [[nodiscard]] int height() const { return height_; }
  [[nodiscard]] Pixel& at(int x, int y) {
    return pixels_[static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) +
                   static_cast<std::size_t>(x)];
  }
  [[nodiscard]] const Pixel& at(int x, int y) const {
    return pixels_[static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) +
                   static_cast<std::size_t>(x)];
  }
  void add(int x, int y, const Seen& seen);

 private:
  int width_, height_;
  std::vector<Pixel> pixels_;
};

/// The variance of a pixel's mean, as it will be shown; of fewer than 2 samples, 1.
[[nodiscard]] double variance_of(const Pixel& pixel);

[[nodiscard]] Spectrum mean_light(const Pixel& pixel);

/// Calls `job` with every row; in any order, at once or not.
using RunRows = std::function<void(int rows, const std::function<void(int row)>& job)>;

[[nodiscard]] Picture developed(const LightFilm& film, double exposure, const RunRows& run_rows);

/// Each pixel averaged with those near it that show the same surface (colour and normal) and differ by no more than their noise explains. What
/// is averaged is the light on the surface, its colour taken out and put back, so that chart edges stay.
[[nodiscard]] Picture filtered(const LightFilm& film, double exposure, const RunRows& run_rows);

}  // namespace evencount::render
