#include "drawing/section_drawing.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "bead/thread.hpp"
#include "form/closure.hpp"

namespace evencount::drawing {
namespace {

form::Fit fit_of(const char* notation, form::Use use, bead::Size& size) {
  size = bead::find_size("cylinder-11").value();
  form::FitRequest request;
  request.form = form::parse_form(notation).value();
  request.bead = size;
  request.gauge = bead::default_gauge(size, bead::threads().front());
  request.use = use;
  return form::fit(request).value();
}

/// The beads of a drawing: its large circles, the form's outline being its first closed path.
struct Seen {
  std::vector<Circle> beads;
  Path outline;
};

Seen seen_in(const Drawing& drawing, std::size_t edge) {
  Seen seen;
  std::vector<Circle> circles;
  for (const Mark& mark : drawing.marks) {
    // A white circle is a hole of the form.
    if (const auto* circle = std::get_if<Circle>(&mark);
        circle != nullptr && circle->fill != colour::Rgb{255, 255, 255})
      circles.push_back(*circle);
    if (const auto* path = std::get_if<Path>(&mark); path != nullptr && path->closed) seen.outline = *path;
  }
  std::stable_sort(circles.begin(), circles.end(),
                   [](const Circle& a, const Circle& b) { return a.radius_mm > b.radius_mm; });
  circles.resize(edge);
  seen.beads = circles;
  return seen;
}

double distance(Point a, Point b) {
  return std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm);
}

double distance_to_side(Point p, Point a, Point b) {
  const double length = distance(a, b);
  if (length == 0) return distance(p, a);
  const double share =
      ((p.x_mm - a.x_mm) * (b.x_mm - a.x_mm) + (p.y_mm - a.y_mm) * (b.y_mm - a.y_mm)) / (length * length);
  const double clamped = std::min(1.0, std::max(0.0, share));
  return distance(p, {a.x_mm + clamped * (b.x_mm - a.x_mm), a.y_mm + clamped * (b.y_mm - a.y_mm)});
}

class SectionDrawing : public ::testing::TestWithParam<const char*> {};

// Beads touch the form without cutting into it, and lie as far apart as the strain says.
TEST_P(SectionDrawing, BeadsTouchTheFormAndKeepTheirDistance) {
  for (const form::Use use : {form::Use::fixed, form::Use::sliding}) {
    bead::Size size;
    const form::Fit fit = fit_of(GetParam(), use, size);
    const Drawing drawing = section_drawing(fit, size).value();
    const Seen seen = seen_in(drawing, static_cast<std::size_t>(fit.edge));
    ASSERT_EQ(seen.beads.size(), static_cast<std::size_t>(fit.edge));
    const double scale =
        (seen.beads.front().radius_mm + 0.1) / (size.diameter.mm() / 2);  // 0.1: half the rim's stroke
    const double least_mm = scale * fit.gauge.edge.mm() * (1 + fit.candidates.front().smallest_strain) - 0.02;
    const double most_mm = scale * fit.gauge.edge.mm() * (1 + fit.candidates.front().largest_strain) + 0.02;
    for (std::size_t i = 0; i < seen.beads.size(); ++i) {
      const double next_mm = distance(seen.beads[i].centre, seen.beads[(i + 1) % seen.beads.size()].centre);
      EXPECT_GE(next_mm, least_mm) << i;
      EXPECT_LE(next_mm, most_mm) << i;
      double to_form_mm = 1e300;
      for (std::size_t p = 0; p < seen.outline.points.size(); ++p)
        to_form_mm =
            std::min(to_form_mm, distance_to_side(seen.beads[i].centre, seen.outline.points[p],
                                                  seen.outline.points[(p + 1) % seen.outline.points.size()]));
      EXPECT_NEAR(to_form_mm, scale * size.diameter.mm() / 2, scale * 0.006) << i;
    }
    const Bounds bounds = bounds_of(drawing);
    EXPECT_GE(bounds.left_mm, 0);
    EXPECT_GE(bounds.top_mm, 0);
    EXPECT_LE(bounds.right_mm, drawing.width.mm());
    EXPECT_LE(bounds.bottom_mm, drawing.height.mm());
  }
}

INSTANTIATE_TEST_SUITE_P(Forms, SectionDrawing,
                         ::testing::Values("lens:17x5x9", "lens:16x5x9,holes=9.6,hole=2", "round:12x20",
                                           "oval:18x13x5", "bar:20x4x10", "dome:20x6x10", "ring:54",
                                           "wrist:165", "bangle:66x12"));

}  // namespace
}  // namespace evencount::drawing
