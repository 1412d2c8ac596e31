#include "picture/sample.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "base/text.hpp"
#include "picture/detail.hpp"

namespace evencount::picture {
namespace {

/// How much more a cell as many pixels wide gives to detail: a line of one pixel right across it then has two thirds of its colour, one
/// that only cuts a corner a third, and a speck little. 2 was chosen by looking and by property (5).
double detail_gain(double cell_pixels) {
  return 2 * std::max(0.0, cell_pixels - 1);
}

/// Where the cells lie in millimetres from the window's corner.
class CellPlaces {
 public:
  CellPlaces(const CellWindow& window, const chart::Grid& grid, const bead::Gauge& gauge, bool meets_itself)
      : column_mm_(gauge.column.mm()), edge_mm_(gauge.edge.mm()), first_(window.first.column), grid_(grid) {
    int most = 0;
    for (int column = first_; column < first_ + window.columns; ++column) {
      least_shift_ = std::min(least_shift_, grid.shift_of(column));
      most = std::max(most, grid.shift_of(column));
    }
    width_mm_ = window.columns * column_mm_;
    height_mm_ = (window.steps + (meets_itself ? 0 : most - least_shift_) / 2.0) * edge_mm_;
  }

  [[nodiscard]] double column_mm() const { return column_mm_; }
  [[nodiscard]] double edge_mm() const { return edge_mm_; }
  [[nodiscard]] double width_mm() const { return width_mm_; }
  [[nodiscard]] double height_mm() const { return height_mm_; }

  [[nodiscard]] PictureRectangle cell(int column, int step) const {
    const double steps = step + (grid_.shift_of(first_ + column) - least_shift_) / 2.0;
    return {column * column_mm_, steps * edge_mm_, column_mm_, edge_mm_};
  }

 private:
  double column_mm_, edge_mm_, width_mm_ = 0, height_mm_ = 0;
  int first_, least_shift_ = 1;
  chart::Grid grid_;
};

/// Millimetres of the window to pixels of the picture.
class WindowToPicture {
 public:
  WindowToPicture(const CellPlaces& places, const PictureRectangle& crop, const Placement& placement)
      : centre_mm_{places.width_mm() / 2, places.height_mm() / 2},
        centre_{crop.left + crop.width / 2, crop.top + crop.height / 2} {
    const double angle = placement.turn_degrees * (std::numbers::pi / 180);
    double c = std::cos(angle), s = std::sin(angle);
    for (int quarter = 0; quarter < (placement.quarter_turns % 4 + 4) % 4; ++quarter)
      s = std::exchange(c, -s);
    const double w = places.width_mm(), h = places.height_mm();
    const double turned_width = crop.width * std::abs(c) + crop.height * std::abs(s);
    const double turned_height = crop.width * std::abs(s) + crop.height * std::abs(c);
    double across_mm = w / turned_width, along_mm = h / turned_height;  // millimetres a pixel
    if (placement.fit == PictureFit::contain) across_mm = along_mm = std::min(across_mm, along_mm);
    if (placement.fit == PictureFit::fill)
      across_mm = along_mm = std::max((w * std::abs(c) + h * std::abs(s)) / crop.width,
                                      (w * std::abs(s) + h * std::abs(c)) / crop.height);
    const double sense = placement.mirrored ? -1 : 1;
    x_of_across_ = sense * c / across_mm, x_of_along_ = sense * s / along_mm;
    y_of_across_ = -s / across_mm, y_of_along_ = c / along_mm;
  }

  [[nodiscard]] PicturePoint operator()(double across_mm, double along_mm) const {
    const double u = across_mm - centre_mm_.x, v = along_mm - centre_mm_.y;
    return {centre_.x + x_of_across_ * u + x_of_along_ * v, centre_.y + y_of_across_ * u + y_of_along_ * v};
  }

  [[nodiscard]] Quad operator()(const PictureRectangle& mm) const {
    const double right = mm.left + mm.width, bottom = mm.top + mm.height;
    return {(*this)(mm.left, mm.top), (*this)(right, mm.top), (*this)(right, bottom),
            (*this)(mm.left, bottom)};
  }

  /// The sides of a cell in pixels.
  [[nodiscard]] std::pair<double, double> cell_sides(const CellPlaces& places) const {
    return std::minmax(places.column_mm() * std::hypot(x_of_across_, y_of_across_),
                       places.edge_mm() * std::hypot(x_of_along_, y_of_along_));
  }

 private:
  PicturePoint centre_mm_, centre_;
  double x_of_across_ = 0, x_of_along_ = 0, y_of_across_ = 0, y_of_along_ = 0;
};

/// Gathers the light of one cell after another.
class LightGatherer {
 public:
  LightGatherer(const Image& image, const PictureRectangle& crop, colour::Linear ground)
      : image_(image), ground_(ground), rows_(crop) {}

  void weigh_detail(DetailMap map, double gain) {
    map_ = std::move(map);
    for (std::size_t i = 0; i < weights_.size(); ++i) weights_[i] = 1 + gain * static_cast<double>(i) / 255;
  }

  void add(const Quad& quad) {
    double inside = 0;
    for (rows_.begin(quad); rows_.next();) {
      const auto coverage = rows_.coverage();
      if (coverage.empty()) continue;
      const Pixel* pixels = &image_.at(rows_.first_x(), rows_.y());
      const std::uint8_t* detail = map_ ? map_->row(rows_.first_x(), rows_.y()) : nullptr;
      for (std::size_t i = 0; i < coverage.size(); ++i) {
        const Pixel& pixel = pixels[i];
        const double weight = detail != nullptr ? coverage[i] * weights_[detail[i]] : coverage[i];
        const double solid = weight * static_cast<double>(pixel.alpha);
        inside += coverage[i];
        weight_ += weight, solid_ += solid;
        red_ += solid * static_cast<double>(pixel.red);
        green_ += solid * static_cast<double>(pixel.green);
        blue_ += solid * static_cast<double>(pixel.blue);
      }
    }
    weight_ += area(quad) - inside;  // beside the picture is ground
  }

  /// The light of what has been added since.
  [[nodiscard]] colour::Linear take() {
    const double clear = weight_ - solid_;
    const colour::Linear light{(red_ + clear * ground_.red) / weight_,
                               (green_ + clear * ground_.green) / weight_,
                               (blue_ + clear * ground_.blue) / weight_};
    weight_ = solid_ = red_ = green_ = blue_ = 0;
    return light;
  }

 private:
  const Image& image_;
  colour::Linear ground_;
  CoverageRows rows_;
  std::optional<DetailMap> map_;
  std::array<double, 256> weights_{};
  double weight_ = 0, solid_ = 0, red_ = 0, green_ = 0, blue_ = 0;
};

std::optional<Problem> check(const Image& image, const CellWindow& window, const chart::Grid& grid,
                             const bead::Gauge& gauge, const PictureRectangle& crop,
                             const Placement& placement) {
  if (image.width < 1 || image.height < 1) return out_of_range("picture", "no pixels", "at least one");
  if (window.columns < 1 || window.columns > chart::most_columns || window.steps < 1 ||
      window.steps > chart::most_edge || std::int64_t{window.columns} * window.steps > chart::most_cells ||
      window.first.column < 0 || window.first.column > chart::most_columns)
    return out_of_range("window",
                        fmt::format("{} columns and {} steps from column {}", window.columns, window.steps,
                                    window.first.column),
                        fmt::format("1 to {} columns, 1 to {} steps, at most {} cells", chart::most_columns,
                                    chart::most_edge, chart::most_cells));
  if (!(gauge.column.mm() > 0) || !(gauge.edge.mm() > 0) ||
      !std::isfinite(gauge.column.mm() + gauge.edge.mm()))
    return out_of_range(
        "gauge", plain_number(gauge.column.mm()) + " x " + plain_number(gauge.edge.mm()) + " mm", "above 0");
  constexpr double thinnest = 1e-3;
  if (!(crop.left >= 0 && crop.top >= 0 && crop.width >= thinnest && crop.height >= thinnest &&
        crop.left + crop.width <= image.width && crop.top + crop.height <= image.height))
    return out_of_range(
        "crop",
        fmt::format("{} x {} pixels from {}, {}", plain_number(crop.width), plain_number(crop.height),
                    plain_number(crop.left), plain_number(crop.top)),
        fmt::format("a part of {} x {} pixels", image.width, image.height));
  if (!std::isfinite(placement.turn_degrees)) return out_of_range("turn", "no finite angle", "degrees");
  if (placement.meets_itself && !grid.edge_round)
    return out_of_range("picture", "to meet itself on an open band", "a closed band");
  return std::nullopt;
}

}  // namespace

Result<CellLight> sample(const Image& image, const CellWindow& window, const chart::Grid& grid,
                         const bead::Gauge& gauge, const Placement& placement) {
  const PictureRectangle all{0, 0, static_cast<double>(image.width), static_cast<double>(image.height)};
  const PictureRectangle crop = placement.crop.value_or(all);
  if (auto problem = check(image, window, grid, gauge, crop, placement)) return *problem;

  const CellPlaces places(window, grid, gauge, placement.meets_itself);
  const WindowToPicture to_picture(places, crop, placement);
  LightGatherer gatherer(image, crop, placement.ground);
  const auto [shorter, longer] = to_picture.cell_sides(places);
  if (placement.keep_detail && shorter > 1.5) {  // smaller cells show every pixel anyhow
    // Narrower than half a bead; at least a softened line, which is two pixels wide.
    const int square = std::max(3, static_cast<int>(std::min(shorter, 1e6) / 2) + 1);
    // What lies round the crop tells what is detail in it.
    const int left = std::max(0, static_cast<int>(crop.left) - square),
              top = std::max(0, static_cast<int>(crop.top) - square);
    const int right = std::min(image.width, static_cast<int>(std::ceil(crop.left + crop.width)) + square);
    const int bottom = std::min(image.height, static_cast<int>(std::ceil(crop.top + crop.height)) + square);
    gatherer.weigh_detail(find_detail(image, left, top, right - left, bottom - top, placement.ground, square),
                          detail_gain(longer));
  }

  CellLight cells{window.columns, window.steps, {}};
  cells.light.reserve(static_cast<std::size_t>(window.columns) * static_cast<std::size_t>(window.steps));
  for (int step = 0; step < window.steps; ++step)
    for (int column = 0; column < window.columns; ++column) {
      PictureRectangle cell = places.cell(column, step);
      if (const double past = cell.top + cell.height - places.height_mm();
          placement.meets_itself && past > places.edge_mm() / 4) {
        cell.height -= past;
        gatherer.add(to_picture({cell.left, 0, cell.width, past}));
      }
      gatherer.add(to_picture(cell));
      cells.light.push_back(gatherer.take());
    }
  return cells;
}

std::vector<colour::Rgb> to_rgb(const CellLight& cells) {
  std::vector<colour::Rgb> colours;
  colours.reserve(cells.light.size());
  for (const colour::Linear& light : cells.light) colours.push_back(colour::to_rgb(light));
  return colours;
}

}  // namespace evencount::picture
