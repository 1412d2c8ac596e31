#include "colour/oklab.hpp"

#include "colour/matrix.hpp"
#include "colour/primaries.hpp"
#include "colour/roots.hpp"

namespace evencount::colour {
namespace {

// B. Ottosson, https://bottosson.github.io/posts/oklab/, 2020: M1.
constexpr Matrix xyz_to_cones{{{0.8189330101, 0.3618667424, -0.1288597137},
                               {0.0329845436, 0.9293118715, 0.0361456387},
                               {0.0482003018, 0.2643662691, 0.6338517070}}};

// CSS Color 4 (https://www.w3.org/TR/css-color-4/#color-conversion-code): M1 fitted again so that D65 is exactly white, as in
// Ottosson's revision of 2021, and M2, each to 16 figures.
constexpr Matrix refitted_xyz_to_cones{{{0.8190224379967030, 0.3619062600528904, -0.1288737815209879},
                                        {0.0329836539323885, 0.9292868615863434, 0.0361446663506424},
                                        {0.0481771893596242, 0.2642395317527308, 0.6335478284694309}}};
constexpr Matrix cones_to_oklab{{{0.2104542683093140, 0.7936177747023054, -0.0040720430116193},
                                 {1.9779985324311684, -2.4285922420485799, 0.4505937096174110},
                                 {0.0259040424655478, 0.7827717124575296, -0.8086757549230774}}};

constexpr Matrix rgb_to_cones = refitted_xyz_to_cones * rgb_to_xyz;
// Worked out, as published inverses are rounded: these come back to where they started.
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
