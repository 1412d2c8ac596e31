#pragma once
/// A picture laid on a window of a chart, and the colour that each cell then has: the light that falls on its rectangle, exactly.
///
/// A cell is one column pitch wide and one edge pitch high; shifted columns lie half a bead further on. The window is as high as its
/// cells reach, so on a shifted grid each end has half beads between the columns: what of the picture falls there is on no bead and
/// is left out, unless the band is closed and the picture `meets_itself`. Docs: docs/algorithms/picture_sampling.md.
///
/// Properties (tests/picture/sample_test.cpp):
///  (1) a picture of one colour gives cells of that colour, within 1e-12, wherever nothing but it is seen
///  (2) light is conserved: the cells' light times their area is the light of the picture over them, within 1e-6 relative
///      (measured: 1e-11); with meets_itself, and on a grid without shifts, over the whole window
///  (3) four quarters are none; turning the picture by quarters is turning its pixels
///  (4) mirrored, and then mirrored in the picture itself, is the same
///  (5) with keep_detail a cell's light is a weighted mean of the light on it, and a dark line one pixel wide on light ground leaves a
///      connected trace of cells at least 10 L* darker than without the line, however it runs and wherever it lies but along the
///      picture's very edge
///
/// Errors: out_of_range (an image without pixels; a window without cells or larger than a chart may be; a gauge not above 0; a crop
/// outside the image or thinner than a thousandth of a pixel; an angle that is not finite; meets_itself on a grid that isn't round).

#include <optional>
#include <vector>

#include "base/result.hpp"
#include "bead/gauge.hpp"
#include "chart/grid.hpp"
#include "colour/srgb.hpp"
#include "picture/coverage.hpp"
#include "picture/image.hpp"

namespace evencount::picture {

/// Cells `first` .. of a chart, so many columns across and steps along.
struct CellWindow {
  chart::Cell first;
  int columns = 0;
  int steps = 0;
  bool operator==(const CellWindow&) const = default;
};

enum class PictureFit {
  fill,     ///< as small as covers the window; what sticks out is cut off on both sides alike
  contain,  ///< as large as fits; the ground shows beside it
  stretch,  ///< the turned picture's own rectangle becomes the window, its proportions changed
};

/// How a picture is laid on a window. It is cropped, then mirrored, then turned about its middle, then fitted.
/// x of the picture goes across the columns, y along the edge.
struct Placement {
  std::optional<PictureRectangle> crop = std::nullopt;  ///< none: all of it
  bool mirrored = false;                                ///< left and right change places
  int quarter_turns = 0;                                ///< clockwise
  double turn_degrees = 0;                              ///< clockwise, besides the quarters
  PictureFit fit = PictureFit::fill;
  colour::Linear ground{1, 1, 1};  ///< behind clear pixels and beside the picture
  /// On a closed band: the last shifted cells lie half on the picture's end, half on its beginning.
  bool meets_itself = false;
  /// For small charts: what is finer than a bead counts for more than its area, see detail.hpp. Light is then not conserved.
  bool keep_detail = false;
};

/// The cells of a window, step after step.
struct CellLight {
  int columns = 0;
  int steps = 0;
  std::vector<colour::Linear> light;
  bool operator==(const CellLight&) const = default;

  /// Of the window's own column and step, from 0.
  [[nodiscard]] const colour::Linear& at(int column, int step) const {
    return light[static_cast<std::size_t>(step) * static_cast<std::size_t>(columns) +
                 static_cast<std::size_t>(column)];
  }
};

[[nodiscard]] Result<CellLight> sample(const Image& image, const CellWindow& window, const chart::Grid& grid,
                                       const bead::Gauge& gauge, const Placement& placement = {});

/// As a choice of beads wants them.
[[nodiscard]] std::vector<colour::Rgb> to_rgb(const CellLight& cells);

}  // namespace evencount::picture
