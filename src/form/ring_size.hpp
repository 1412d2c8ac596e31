#pragma once
/// Finger sizes as the trade writes them.

#include "form/form.hpp"

namespace evencount::form {

/// The inner diameter of a ring by its ISO 8653 size, which is the inner circumference in millimetres: 54
/// -> 17.19 mm. Source: "Ring size", en.wikipedia.org/wiki/Ring_size. No range: parse_form bounds what can be
/// a form.
[[nodiscard]] Length iso_inner_diameter(double iso_size);

/// The inner diameter of a ring by its US size: 11.63 mm + 0.8128 mm a size. Half and quarter sizes are
/// fractions. Source: "Ring Size - Systems", liquisearch.com/ring_size/systems (7 -> 17.32 mm). Errors:
/// out_of_range (US sizes run from 0 to 16, from memory).
[[nodiscard]] Result<Length> us_inner_diameter(double us_size);

/// The inner circumference from what stands after `ring:`: `54` (ISO 8653), `us7` or `us6.5`, `17.3mm` or `0.68in` (a size
/// with a unit is the inner diameter). Errors: bad_text, out_of_range (a US size).
[[nodiscard]] Result<Length> parse_ring_size(std::string_view text);

/// The form for a finger of that US size, its circumference kept as parse_form keeps it.
/// Errors: out_of_range.
[[nodiscard]] Result<Form> us_ring(double us_size);

}  // namespace evencount::form
