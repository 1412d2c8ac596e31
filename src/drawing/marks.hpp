#pragma once
/// Drawings as device-neutral marks, in millimetres, y down. `page` turns them into PDF, SVG or PNG.

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/units.hpp"
#include "colour/rgb.hpp"

namespace evencount::drawing {

struct Point {
  double x_mm = 0, y_mm = 0;
  bool operator==(const Point&) const = default;
};

struct Stroke {
  colour::Rgb ink;
  double width_mm = 0.2;
  bool dashed = false;
  bool operator==(const Stroke&) const = default;
};

struct Rectangle {
  Point corner;  ///< upper left
  double width_mm = 0, height_mm = 0;
  double radius_mm = 0;  ///< of its rounded corners
  std::optional<colour::Rgb> fill;
  std::optional<Stroke> stroke;
  bool operator==(const Rectangle&) const = default;
};

struct Path {
  std::vector<Point> points;  ///< joined by straight lines
  bool closed = false;
  std::optional<colour::Rgb> fill;
  std::optional<Stroke> stroke;
  bool operator==(const Path&) const = default;
};

struct Circle {
  Point centre;
  double radius_mm = 0;
  std::optional<colour::Rgb> fill;
  std::optional<Stroke> stroke;
  bool operator==(const Circle&) const = default;
};

/// What a text is for; `page` chooses the font.
enum class TextRole { title, heading, body, body_italic, label, label_bold };

enum class Align { left, centre, right };

/// One line of text. `at` lies on its baseline, at the left, middle or right by `align`.
struct Text {
  Point at;
  TextRole role = TextRole::label;
  double size_pt = 8;
  Align align = Align::left;
  colour::Rgb ink;
  std::string text;
  bool in_picture = false;  ///< a sign within a drawing: shown so that it isn't read as words
  bool operator==(const Text&) const = default;
};

/// Rows from the top, three bytes a pixel, sRGB.
struct Pixels {
  int width = 0, height = 0;
  std::vector<std::uint8_t> rgb;  ///< width x height x 3
  bool operator==(const Pixels&) const = default;
};

/// A picture that fills a box. Its pixels are shared: sheets are copied while they are laid out.
struct Picture {
  Point corner;  ///< upper left
  double width_mm = 0, height_mm = 0;
  std::shared_ptr<const Pixels> pixels;  ///< there, with as many bytes as its size asks for
  bool operator==(const Picture&) const = default;
};

using Mark = std::variant<Rectangle, Path, Circle, Text, Picture>;

/// What neighbouring marks are to a reader who does not see them, and where they lead.
enum class Part : std::uint8_t {
  title,
  heading,
  subheading,
  paragraph,
  figure,  ///< `text` describes it
  link,    ///< `text` is the name of the place it leads to
  place,   ///< `text` is its name
};

/// The marks from first_mark up to, not including, end_mark. Regions of a sheet lie beside or within each other.
struct Region {
  Part part = Part::paragraph;
  std::size_t first_mark = 0, end_mark = 0;
  std::string text;
  bool operator==(const Region&) const = default;
};

/// Marks on a sheet of the given size. Every mark lies within it (`bounds_of` tells).
struct Drawing {
  Length width, height;
  std::vector<Mark> marks;
  std::vector<Region> regions = {};  ///< in the order of their first marks, outer ones first
  bool operator==(const Drawing&) const = default;
};

struct Bounds {
  double left_mm = 0, top_mm = 0, right_mm = 0, bottom_mm = 0;
};

/// The box round all marks but texts (whose extent only `page` can measure), strokes included; all zero when
/// there are none.
[[nodiscard]] Bounds bounds_of(const Drawing& drawing);

/// The marks of `part`, without its regions, moved by (x, y) and enlarged by `scale` about their origin, appended to `whole`.
/// `scale` is above 0. Properties: place at (0, 0) and 1 appends the same marks; bounds grow by the scale.
void place(Drawing& whole, const Drawing& part, Point at, double scale = 1);

/// The drawing turned a quarter to the left, its top edge on the left; texts move along but stay upright.
/// Four turns give the drawing back.
[[nodiscard]] Drawing turned_left(const Drawing& drawing);

}  // namespace evencount::drawing
