#pragma once
/// A picture of ink, and how much of a cell it covers.
///
/// Properties (tests/picture/ink_coverage_test.cpp):
///  (1) the ink of boxes that fill a rectangle without overlapping is the ink of the rectangle, within 1e-9 of its area
///  (2) rotated four times by a quarter is the same

#include <vector>

#include "base/result.hpp"
#include "picture/alphabet.hpp"

namespace evencount::picture {

/// Rows of equal pixels, top row first, each the share of it that ink covers, 0 to 1.
struct Coverage {
  int width = 0, height = 0;  ///< pixels
  double width_mm = 0, height_mm = 0;
  std::vector<float> shares;  ///< width * height
  bool operator==(const Coverage&) const = default;

  [[nodiscard]] float at(int x, int y) const { return shares[static_cast<std::size_t>(y) * width + x]; }
};

/// Errors: out_of_range (no pixels, more than 100 million, no size, as many shares as pixels, a share outside 0 to 1).
[[nodiscard]] Result<Done> check(const Coverage& coverage);

/// Turned so that text in it runs this way: clockwise for down, the other way for up.
[[nodiscard]] Coverage rotated(const Coverage& coverage, Running running);

/// A box in millimetres, x to the right, y down.
struct BoxMm {
  double left = 0, top = 0, width = 0, height = 0;
  bool operator==(const BoxMm&) const = default;
};

/// Sums over boxes of a coverage in constant time.
class InkSums {
 public:
  explicit InkSums(const Coverage& coverage);

  /// Square millimetres of ink in a box; (0, 0) is the picture's left top corner, and there is no ink outside it.
  [[nodiscard]] double area_mm2(const BoxMm& box) const;
  /// The box that holds all ink, to whole pixels; no width where there is none.
  [[nodiscard]] BoxMm ink() const { return ink_; }

 private:
  [[nodiscard]] double sum_to(double x, double y) const;

  int width_ = 0, height_ = 0;
  double pixel_width_mm_ = 0, pixel_height_mm_ = 0;
  std::vector<double> sums_;  ///< of all pixels left of and above a corner, (width + 1) * (height + 1)
  BoxMm ink_;
};

}  // namespace evencount::picture
