#include "render/picture.hpp"

namespace evencount::render {

Spectrum softly_clipped(Spectrum light) {
  const double most = largest(light);
  if (most <= knee) return light;
  const double room = 1 - knee;
  return (1 - room * std::exp(-(most - knee) / room)) / most * light;
}

colour::Rgb shown_as(Spectrum light, double exposure) {
  return colour::to_rgb(to_linear(softly_clipped(exposure * light)));
}

}  // namespace evencount::render
