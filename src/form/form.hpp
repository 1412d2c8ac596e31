#pragma once
/// What a band goes round, as a designer writes it down: KIND:SIZES, then settings after commas.
///
/// notation             sizes                        what it is
/// lens:17x5x9          width x thickness x length   two-hole carrier bead: two arcs that meet at tapered tips
/// round:12x20          diameter x length            tube, rod or round bead
/// oval:18x13x5         width x height x length      elliptic section
/// bar:20x4x10          width x thickness x length   flat bar; the ends of its section are half circles
/// dome:20x6x10         width x height x length      flat back, domed front: a segment of a circle; height at
///                                                   most half the width
/// bangle:66x12         outer diameter x width       stiff bracelet that the band covers all round
/// ring:54              inner circumference          finger by its ISO 8653 size; no length
/// ring:us7             US size                      the same finger
/// ring:17.3mm          inner diameter               the same: a size with a unit is a diameter
/// wrist:165            circumference                a wrist, an ellipse; no length
/// outline:NAME         (points)                     a measured section; its points travel separately
///
/// setting              kinds                        what it is
/// tip=0.5              lens                         radius of the tips
/// edge=0.5             dome                         radius of the two edges between back and front
/// holes=6.5            solid ones with a length     distance between the centres of two holes, along the width
/// hole=1.5             solid ones with a length     diameter of a hole; alone, one hole in the middle
/// length=9             outline                      length along the holes
///
/// The length runs along the holes, across the section. Sizes are millimetres unless they carry a unit
/// (`0.67in`), and are kept to a ten-thousandth of a millimetre.
///
/// Properties (tests/form/form_test.cpp): (1) parse_form(to_notation(f)) == f for every f that parse_form or
/// us_ring gives, given the points again for an outline; (2) every form that parses has a section, as wide
/// and thick as the form says.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "form/convex_curve.hpp"

namespace evencount::form {

enum class FormKind { lens, round, oval, bar, dome, bangle, ring, wrist, outline };

/// A measured section. Made by form_from_outline (form/outline.hpp), which checks it.
struct Outline {
  std::string name;
  std::vector<Point> points;  ///< as measured, in any order; the hull of them is what a band touches
  Length bridged;             ///< how far beads stand off the deepest dent between the points; 0 without one
  Length smoothing_error;     ///< largest distance between a corner of the hull and the smoothed section
  bool operator==(const Outline&) const = default;
};

/// A form. `width` and `thickness` are the section's full sizes. round, bangle and ring: both are the
/// diameter (ring: the inner circumference divided by pi).
struct Form {
  FormKind kind = FormKind::round;
  Length width;
  Length thickness;
  std::optional<Length> length_along_holes{};  ///< none: unbounded (a finger)
  std::optional<Length> tip_radius{};          ///< lens; none: lens_tip_radius
  std::optional<Length> edge_radius{};         ///< dome; none: sharp
  std::optional<Length> hole_spacing{};        ///< of two holes, centre to centre, along the width
  std::optional<Length> hole{};                ///< diameter of a hole
  std::optional<Outline> outline{};            ///< outline only, and always there

  bool operator==(const Form&) const = default;
};

/// The sizes that a form may have: from a thin wire to a large hoop. They bound what the arithmetic is tested
/// for.
inline constexpr Length smallest_size = millimetres(0.5), largest_size = millimetres(2000);

/// The radius of a carrier bead's tips, from memory: they taper to nearly an edge. Rounder tips within the same width make
/// a fuller section: 0.5 mm makes that of `lens:17x5x9` 1.5 % longer round.
inline constexpr Length lens_tip_radius = millimetres(0);

/// A wrist's breadth over its depth at the bone, from memory (about 58 x 41 mm). A bracelet's ellipse of 60 x 40 mm, which
/// the trade works with (orchid.ganoksin.com/t/formula-to-calculate-bracelet-sizes/44408/2), has 1.5.
inline constexpr double wrist_ratio = 1.4;

/// Errors: unknown_name (the kind, a setting that the kind doesn't have), duplicate_name (a setting), bad_text (a size
/// that is no length, or the wrong number of sizes), missing_field (an outline, whose points are not in the text), and
/// those of check. `where` names the size.
[[nodiscard]] Result<Form> parse_form(std::string_view text);

/// The same, with the points of an outline (not looked at for other kinds). Dents are bridged: they were accepted when the
/// outline was made. Errors: also those of form_from_outline.
[[nodiscard]] Result<Form> parse_form(std::string_view text, std::span<const Point> outline_points);

/// The checks of parse_form, for a form that came from elsewhere (a project file, a slider).
/// Errors: out_of_range (a size outside smallest_size to largest_size; a thickness greater than the width of a lens or
/// bar, or than half that of a dome; a tip or edge radius not below half the thickness; holes that overlap or don't lie
/// inside the section); missing_field (an outline without points, or with points that enclose nothing).
[[nodiscard]] Result<Done> check(const Form& form);

/// `lens:17x5x9,tip=0.5`; millimetres without a unit, at most four decimals. Settings come in the order of the table above.
[[nodiscard]] std::string to_notation(const Form& form);

/// For people: "two-hole carrier bead 17 × 5 × 9 mm". Settings are left out.
[[nodiscard]] std::string describe(const Form& form);

/// "lens", "round", …
[[nodiscard]] std::string_view kind_name(FormKind kind);
/// Errors: unknown_name.
[[nodiscard]] Result<FormKind> parse_kind(std::string_view name);

/// The cross-section, centred on the origin (the middle of its box), width along x. It begins on the +x axis, a dome at
/// its top; a kind with a mirror line begins on it. Errors: those of check.
[[nodiscard]] Result<ConvexCurve> section(const Form& form);

/// Where the holes' centres are: none, one in the middle or two along the width.
[[nodiscard]] std::vector<Point> hole_centres(const Form& form);

}  // namespace evencount::form
