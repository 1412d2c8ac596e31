#pragma once
/// What a band goes round, as a designer writes it down: KIND:SIZES.
///
/// | notation | sizes | what it is |
/// | --- | --- | --- |
/// | `lens:17x5x9` | width x thickness x length | two-hole carrier bead: two circular arcs that meet at
/// tapered tips | | `round:12x20` | diameter x length | tube, rod or round bead | | `oval:18x13x5` | width x
/// height x length | elliptic section | | `bar:20x4x10` | width x thickness x length | flat bar; the two ends
/// of its section are half circles | | `ring:54` | inner circumference | finger, by its ISO 8653 size; no
/// length |
///
/// The length runs along the holes, across the section. Sizes are millimetres unless they carry a unit
/// (`0.67in`).
///
/// Properties (tests/form/form_test.cpp): (1) parse_form(to_notation(f)) == f for every form whose sizes are
/// a whole number of ten-thousandths of a millimetre; (2) every form that parses has a section.

#include <optional>

#include "form/convex_curve.hpp"

namespace evencount::form {

enum class FormKind { lens, round, oval, bar, ring };

/// A form. `width` and `thickness` are the section's full sizes. round: both are the diameter. ring: both are
/// the inner circumference divided by pi.
struct Form {
  FormKind kind = FormKind::round;
  Length width;
  Length thickness;
  std::optional<Length> length_along_holes;  ///< none: unbounded (a finger)

  bool operator==(const Form&) const = default;
};

/// The sizes that a form may have: from a thin wire to a large hoop. They bound what the arithmetic is tested
/// for.
inline constexpr Length smallest_size = millimetres(0.5), largest_size = millimetres(2000);

/// The radius of a carrier bead's tips, from memory: they taper to nearly an edge. Rounder tips within the same width make
/// a fuller section: 0.5 mm makes that of `lens:17x5x9` 1.5 % longer round.
inline constexpr Length lens_tip_radius = millimetres(0);

/// Errors: unknown_name (the kind), bad_text (a size that is no length, or the wrong number of sizes),
/// out_of_range (a size outside smallest_size to largest_size; a thickness greater than the width of a lens
/// or bar). `where` names the size.
[[nodiscard]] Result<Form> parse_form(std::string_view text);

/// The checks of parse_form, for a form that came from elsewhere (a project file, a slider).
[[nodiscard]] Result<Done> check(const Form& form);

/// `lens:17x5x9`; millimetres without a unit, at most four decimals.
[[nodiscard]] std::string to_notation(const Form& form);

/// For people: "two-hole carrier bead 17 × 5 × 9 mm".
[[nodiscard]] std::string describe(const Form& form);

/// "lens", "round", …
[[nodiscard]] std::string_view kind_name(FormKind kind);
/// Errors: unknown_name.
[[nodiscard]] Result<FormKind> parse_kind(std::string_view name);

/// The cross-section, centred on the origin, width along x, beginning on the +x axis. Errors: those of check.
[[nodiscard]] Result<ConvexCurve> section(const Form& form);

}  // namespace evencount::form
