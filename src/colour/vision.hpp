#pragma once
/// How colours look to people whose colour vision differs from most: a linear map of light, never of encoded values.
///
/// Three models, each good for something:
///   Machado 2009  any severity, all three kinds; the usual choice
///   Vienot 1999   dichromats, protan and deutan
///   Brettel 1997  dichromats, all three kinds; the one to trust for tritan
/// Severity 0 is common vision, 1 a dichromat's; about 8 % of men have a red-green deficiency of some severity (from memory).
///
/// Properties (tests/colour/vision_test.cpp):
///  (1) every published matrix of tests/cases/colour/cvd_*.csv, to the last digit printed
///  (2) a grey stays the same grey, within what the published figures' rounding leaves: of white's light 2e-6 (Machado),
///      1.1e-5 (Brettel), nothing (Vienot)
///  (3) Machado at severity 0 changes nothing; between the table's tenths it is linear
///  (4) black stays black, and twice the light is seen as twice the light
///  (5) a dichromat's colours lie on a surface: seeing them again changes nothing, within 2e-3 (Vienot and Brettel)

#include <string_view>

#include "colour/matrix.hpp"
#include "colour/srgb.hpp"

namespace evencount::colour {

/// Which cones differ: those for long (protan), middle (deutan) or short waves (tritan).
enum class Deficiency { protan, deutan, tritan };

[[nodiscard]] std::string_view deficiency_name(Deficiency deficiency);

/// Light as somebody else sees it, in linear sRGB: `above` on one side of the plane through black with this normal, `below` on the
/// other. Where one matrix does for all, they are the same and the normal is 0.
struct ColourVision {
  Matrix above, below;
  Triple normal;
  bool operator==(const ColourVision&) const = default;
};

/// Severity 0..1. Errors: out_of_range.
[[nodiscard]] Result<ColourVision> machado_vision(Deficiency deficiency, double severity);

/// Errors: out_of_range for tritan, which one plane does not describe.
[[nodiscard]] Result<ColourVision> vienot_vision(Deficiency deficiency);

[[nodiscard]] ColourVision brettel_vision(Deficiency deficiency);

/// May leave 0..1 where the simulated colour is none that sRGB can show.
[[nodiscard]] Linear seen(const ColourVision& vision, Linear light);
/// Clipped to what sRGB can show.
[[nodiscard]] Rgb seen(const ColourVision& vision, Rgb colour);

}  // namespace evencount::colour
