#include "colour/oklab.hpp"

#include "colour/matrix.hpp"
#include "colour/roots.hpp"

namespace evencount::colour {
namespace {

// B. Ottosson, https://bottosson.github.io/posts/oklab/: M1, M2, and the product of M1 with sRGB's primaries.
constexpr Matrix xyz_to_cones{{{0.8189330101, 0.3618667424, -0.1288597137},
                               {0.0329845436, 0.9293118715, 0.0361456387},
                               {0.0482003018, 0.2643662691, 0.6338517070}}};
constexpr Matrix cones_to_oklab{{{0.2104542553, 0.7936177850, -0.0040720468},
                                 {1.9779984951, -2.4285922050, 0.4505937099},
                                 {0.0259040371, 0.7827717662, -0.8086757660}}};
constexpr Matrix rgb_to_cones{{{0.4122214708, 0.5363325363, 0.0514459929},
                               {0.2119034982, 0.6806995451, 0.1073969566},
                               {0.0883024619, 0.2817188376, 0.6299787005}}};

// The published inverses are rounded; these come back to where they started.
constexpr Matrix cones_to_xyz = inverse(xyz_to_cones), cones_to_rgb = inverse(rgb_to_cones),
                 oklab_to_cones = inverse(cones_to_oklab);

Oklab from_cones(const Triple& cones) {
  const auto [lightness, a, b] =
      cones_to_oklab * Triple{cube_root(cones[0]), cube_root(cones[1]), cube_root(cones[2])};
  return {lightness, a, b};
}

Triple to_cones(Oklab colour) {
  const auto [l, m, s] = oklab_to_cones * Triple{colour.lightness, colour.a, colour.b};
  return {l * l * l, m * m * m, s * s * s};
}

}  // namespace

Oklab to_oklab(Linear light) {
  return from_cones(rgb_to_cones * Triple{light.red, light.green, light.blue});
}

Oklab to_oklab(Rgb colour) {
  return to_oklab(to_linear(colour));
}

Linear to_linear(Oklab colour) {
  const auto [red, green, blue] = cones_to_rgb * to_cones(colour);
  return {red, green, blue};
}

Oklab to_oklab(XyzD65 colour) {
  return from_cones(xyz_to_cones * Triple{colour.x, colour.y, colour.z});
}

XyzD65 to_xyz(Oklab colour) {
  const auto [x, y, z] = cones_to_xyz * to_cones(colour);
  return {x, y, z};
}

}  // namespace evencount::colour
