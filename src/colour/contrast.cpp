#include "colour/contrast.hpp"

#include <algorithm>

namespace evencount::colour {

double luminance(Linear light) {
  return 0.2126 * light.red + 0.7152 * light.green + 0.0722 * light.blue;  // WCAG 2.2, relative luminance
}

double luminance(Rgb colour) {
  return luminance(to_linear(colour));
}

double contrast(Rgb a, Rgb b) {
  const auto [darker, lighter] = std::minmax({luminance(a), luminance(b)});
  return (lighter + 0.05) / (darker + 0.05);  // WCAG 2.2, contrast ratio
}

Rgb ink_on(Rgb ground) {
  constexpr Rgb black{0, 0, 0}, white{255, 255, 255};
  return contrast(ground, black) >= contrast(ground, white) ? black : white;
}

}  // namespace evencount::colour
