#pragma once
/// How much of each pixel a four-sided figure covers: exactly, by the area to the right of its sides.
///
/// Properties (tests/picture/coverage_test.cpp):
///  (1) the coverages sum to the area of the figure inside the bounds, within 1e-12 of it
///  (2) figures that tile a pixel cover it to 1, within 1e-12
///  (3) the same as cutting the figure at each pixel's sides, within 1e-12

#include <array>
#include <span>
#include <vector>

namespace evencount::picture {

/// In pixels: pixel (i, j) is the square from (i, j) to (i + 1, j + 1); y points down.
struct PicturePoint {
  double x = 0, y = 0;
};

/// A part of a picture, in pixels from its top left corner; its sides may cut pixels.
struct PictureRectangle {
  double left = 0, top = 0, width = 0, height = 0;
  bool operator==(const PictureRectangle&) const = default;
};

/// The corners of a convex figure, in order, either way round.
using Quad = std::array<PicturePoint, 4>;

[[nodiscard]] double area(const Quad& quad);

/// Goes over the rows of pixels that a figure touches inside the bounds:
///   for (rows.begin(quad); rows.next();) use(rows.y(), rows.first_x(), rows.coverage());
class CoverageRows {
 public:
  /// `bounds` starts at or after (0, 0).
  explicit CoverageRows(const PictureRectangle& bounds);

  void begin(const Quad& quad);
  /// False after the last row.
  bool next();

  [[nodiscard]] int y() const { return y_; }
  /// The column of coverage()[0].
  [[nodiscard]] int first_x() const { return first_x_; }
  /// 0 .. 1 for each pixel of the row that the figure may touch; but for rounding.
  [[nodiscard]] std::span<const double> coverage() const { return {cover_.data(), count_}; }

 private:
  /// A side's part within the row, from its upper end to its lower.
  struct Side {
    double x, lower_x, y, lower_y, sign;
  };
  void add(const Side& side);
  void add_within_bounds(double x, double lower_x, double height);

  double left_, top_, right_, bottom_;
  Quad quad_{};
  double sign_ = 1;
  int y_ = 0, last_y_ = -1, first_x_ = 0;
  std::size_t count_ = 0;
  std::vector<double> cover_;
};

}  // namespace evencount::picture
