#pragma once
/// Sections that were measured: points round a form, from a caliper, a tracing or a scan.
///
/// Beads touch the convex hull of the points; they bridge what lies inside it. The hull's corners, which are partly scatter
/// of the measurement, are rounded: points spread evenly along the hull (`smoothing_points` of them) control a closed
/// uniform cubic B-spline. Such a spline of a convex polygon is convex (variation diminishing), lies inside the hull,
/// keeps straight sides straight, and turns a corner over three spacings, a sixty-fourth of the way round.
///
/// Properties (tests/form/outline_test.cpp):
///  (1) the section is inside the hull, and no corner of the hull is farther from it than `smoothing_error`
///  (2) turning all points, repeating some, or giving them in another order changes the section's perimeter by less than
///      2e-3 relative (evenly spread points start elsewhere), and `bridged` not at all
///  (3) points of a known section, without scatter, give its closing chords within 0.6 % (sharp tips) or 0.1 % (round ones)

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "form/form.hpp"

namespace evencount::form {

/// How many points an outline may have.
inline constexpr std::size_t most_outline_points = 2000;

/// How many evenly spread points of the hull control the smooth section.
inline constexpr int smoothing_points = 192;

/// A dent deeper than the greater of the two is more than scatter: 0.3 mm is what a caliper held askew gives (from memory),
/// and a share of the outline's greater extent.
inline constexpr Length deepest_dent = millimetres(0.3);
inline constexpr double deepest_dent_share = 0.02;

/// What to do about a deeper dent.
enum class Dents { refuse, bridge };

/// A form from points in millimetres. Its box's middle becomes the origin; it is not turned.
/// Errors: bad_text (a name that is not 1 to 60 letters, digits, '-' or '_'), out_of_range (fewer than 3 or too many points,
/// a point that is not finite, points in a line, or sizes outside smallest_size to largest_size), not_convex (a dent that
/// is too deep; it names the place).
[[nodiscard]] Result<Form> form_from_outline(std::string name, std::span<const Point> points_mm,
                                             std::optional<Length> length_along_holes,
                                             Dents dents = Dents::refuse);

/// Points from a table: x and y in millimetres on each line, between them a comma (decimal points) or a semicolon (decimal
/// points or commas) or a tab. A first line of words is a heading; blank lines and what follows a `#` are left out.
/// Errors: bad_text, out_of_range (too many lines); `where` names the line.
[[nodiscard]] Result<std::vector<Point>> parse_outline_csv(std::string_view text);

/// The smoothed section of an outline's points. Errors: out_of_range (points that enclose nothing).
[[nodiscard]] Result<ConvexCurve> section_of(const Outline& outline);

/// The corners of the convex hull, counterclockwise, without corners that turn by rounding only. Fewer than 3 when the
/// points lie in a line.
[[nodiscard]] std::vector<Point> convex_hull(std::vector<Point> points);

}  // namespace evencount::form
