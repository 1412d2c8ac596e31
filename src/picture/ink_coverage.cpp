#include "picture/ink_coverage.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace evencount::picture {

Result<Done> check(const Coverage& coverage) {
  constexpr std::int64_t most_pixels = 100'000'000;  // 400 MB of shares
  const std::int64_t pixels = std::int64_t{coverage.width} * coverage.height;
  if (coverage.width < 1 || coverage.height < 1 || pixels > most_pixels ||
      std::ssize(coverage.shares) != pixels)
    return Problem{
        ProblemCode::out_of_range, "picture of a text",
        fmt::format("{} by {} pixels, {} shares", coverage.width, coverage.height, coverage.shares.size()),
        fmt::format("1 to {} pixels, a share for each", most_pixels)};
  constexpr double largest_mm = 1e5;
  for (const double side : {coverage.width_mm, coverage.height_mm})
    if (!(side > 0 && side <= largest_mm))
      return Problem{ProblemCode::out_of_range, "picture of a text", fmt::format("{} mm", side),
                     fmt::format("0 to {} mm", largest_mm)};
  for (const float share : coverage.shares)
    if (!(share >= 0 && share <= 1))
      return Problem{ProblemCode::out_of_range, "picture of a text", fmt::format("a share of {}", share),
                     "shares from 0 to 1"};
  return Done{};
}

Coverage rotated(const Coverage& coverage, Running running) {
  if (running == Running::across) return coverage;
  Coverage turned{coverage.height, coverage.width, coverage.height_mm, coverage.width_mm, {}};
  turned.shares.reserve(coverage.shares.size());
  for (int y = 0; y < turned.height; ++y)
    for (int x = 0; x < turned.width; ++x)
      turned.shares.push_back(running == Running::down ? coverage.at(y, coverage.height - 1 - x)
                                                       : coverage.at(coverage.width - 1 - y, x));
  return turned;
}

InkSums::InkSums(const Coverage& coverage)
    : width_(coverage.width),
      height_(coverage.height),
      pixel_width_mm_(coverage.width_mm / coverage.width),
      pixel_height_mm_(coverage.height_mm / coverage.height),
      sums_(static_cast<std::size_t>(width_ + 1) * (height_ + 1)) {
  int left = width_, top = height_, right = 0, bottom = 0;
  for (int y = 0; y < height_; ++y) {
    double row = 0;
    for (int x = 0; x < width_; ++x) {
      const float share = coverage.at(x, y);
      row += share;
      const std::size_t corner = static_cast<std::size_t>(y + 1) * (width_ + 1) + x + 1;
      sums_[corner] = sums_[corner - width_ - 1] + row;
      if (share <= 0) continue;
      left = std::min(left, x);
      right = std::max(right, x + 1);
      top = std::min(top, y);
      bottom = std::max(bottom, y + 1);
    }
  }
  if (right > left)
    ink_ = {left * pixel_width_mm_, top * pixel_height_mm_, (right - left) * pixel_width_mm_,
            (bottom - top) * pixel_height_mm_};
}

/// Within a pixel the ink is even, so the sum grows bilinearly: exact, not an approximation.
double InkSums::sum_to(double x, double y) const {
  x = std::clamp(x, 0.0, static_cast<double>(width_));
  y = std::clamp(y, 0.0, static_cast<double>(height_));
  const int x0 = std::min(static_cast<int>(x), width_ - 1), y0 = std::min(static_cast<int>(y), height_ - 1);
  const double along = x - x0, down = y - y0;
  const double* corner = &sums_[static_cast<std::size_t>(y0) * (width_ + 1) + x0];
  const double above = corner[0] + (corner[1] - corner[0]) * along;
  const double below = corner[width_ + 1] + (corner[width_ + 2] - corner[width_ + 1]) * along;
  return above + (below - above) * down;
}

double InkSums::area_mm2(const BoxMm& box) const {
  const double left = box.left / pixel_width_mm_, right = (box.left + box.width) / pixel_width_mm_;
  const double top = box.top / pixel_height_mm_, bottom = (box.top + box.height) / pixel_height_mm_;
  const double pixels = sum_to(right, bottom) - sum_to(left, bottom) - sum_to(right, top) + sum_to(left, top);
  return std::max(0.0, pixels) * pixel_width_mm_ * pixel_height_mm_;
}

}  // namespace evencount::picture
