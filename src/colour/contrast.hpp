#pragma once
/// How light a colour is and how well it stands out, after WCAG 2.2 (https://www.w3.org/TR/WCAG22/).
///
/// Properties (tests/colour/contrast_test.cpp):
///  (1) contrast(a, b) == contrast(b, a), between 1 (the same luminance) and 21 (black and white)
///  (2) the pairs of tests/cases/colour/wcag22_contrast.csv, each within its stated tolerance
///  (3) ink_on gives at least 4.58 : 1 on every ground: black and white are alike where the ground's luminance is
///      sqrt(1.05 x 0.05) - 0.05

#include "colour/srgb.hpp"

namespace evencount::colour {

/// Relative luminance, 0 (black) to 1 (white). WCAG 2.2, definition of relative luminance.
[[nodiscard]] double luminance(Rgb colour);
[[nodiscard]] double luminance(Linear light);

/// Contrast ratio, 1 to 21, the same for (a, b) and (b, a). WCAG 2.2, definition of contrast ratio.
[[nodiscard]] double contrast(Rgb a, Rgb b);

/// Black or white, whichever stands out more on `ground`.
[[nodiscard]] Rgb ink_on(Rgb ground);

/// What a pair of colours is used for, with the ratio it needs.
inline constexpr double least_text_contrast = 4.5;      // WCAG 2.2, success criterion 1.4.3 (AA)
inline constexpr double least_large_text_contrast = 3;  // 1.4.3: from 18 points, or 14 points bold
inline constexpr double least_shape_contrast = 3;       // 1.4.11: parts of graphics that must be told apart
inline constexpr double enhanced_text_contrast = 7;     // 1.4.6 (AAA)

}  // namespace evencount::colour
