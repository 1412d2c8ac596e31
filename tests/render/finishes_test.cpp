#include "render/finishes.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <random>
#include <set>
#include <sstream>

#include "colour/difference.hpp"

namespace evencount::render {
namespace {

using bead::Finish;

/// Greys, the corners of the cube, the demo's legend, and others.
std::vector<colour::Rgb> colours() {
  std::vector<colour::Rgb> all{{0x17, 0x23, 0x3f}, {0xf3, 0xe9, 0xcf}, {0x46, 0x55, 0x7a}, {0xd8, 0xa6, 0x3a},
                               {0x55, 0xa9, 0xb0}, {0x1b, 0x64, 0x78}, {0xcf, 0xa6, 0x73}, {0xc3, 0xd3, 0xe0},
                               {0, 0, 0},          {255, 255, 255}};
  for (const int r : {20, 128, 235})
    for (const int g : {20, 128, 235})
      for (const int b : {20, 128, 235})
        all.push_back(
            {static_cast<std::uint8_t>(r), static_cast<std::uint8_t>(g), static_cast<std::uint8_t>(b)});
  std::mt19937 random(3);
  for (int i = 0; i < 20; ++i)
    all.push_back({static_cast<std::uint8_t>(random() % 256), static_cast<std::uint8_t>(random() % 256),
                   static_cast<std::uint8_t>(random() % 256)});
  return all;
}

double off(Finish finish, colour::Rgb colour) {
  const Surface surface = surface_of(finish, colour, bead::find_size("cylinder-11").value());
  return colour::ciede2000(colour::to_lab_d65(to_linear(shown_by(surface))), colour::to_lab_d65(colour));
}

// (1)
TEST(Finishes, SolidOnesShowTheMeasuredColour) {
  for (const Finish finish : {Finish::opaque, Finish::matte, Finish::metallic, Finish::galvanised})
    for (const colour::Rgb colour : colours())
      EXPECT_LE(off(finish, colour), 2.5) << finish_name(finish) << " " << to_hex(colour);
}

// (1) for every opaque bead of the sample stock.
TEST(Finishes, TheStocksOpaqueBeadsShowTheirColour) {
  std::ifstream file(std::string(EVENCOUNT_SOURCE_DIR) + "/examples/stock/beads.csv");
  std::set<std::pair<std::string, std::string>> beads;  // finish, colour
  for (std::string line; std::getline(file, line);) {
    std::vector<std::string> fields;
    std::stringstream rest(line);
    for (std::string field; std::getline(rest, field, ',');) fields.push_back(field);
    if (fields.size() > 4) beads.insert({fields[3], fields[4]});
  }
  int tried = 0;
  for (const Finish finish : {Finish::opaque, Finish::matte, Finish::metallic, Finish::galvanised})
    for (const auto& [name, hex] : beads) {
      if (name != finish_name(finish)) continue;
      ++tried;
      EXPECT_LE(off(finish, colour::parse_hex(hex).value()), 3) << name << " " << hex;
    }
  EXPECT_GT(tried, 80);
}

// (2)
TEST(Finishes, CoatsMayAddTheirOwn) {
  for (const Finish finish : {Finish::lustre, Finish::pearl, Finish::rainbow})
    for (const colour::Rgb colour : colours())
      if (of(colour).g > 0.06) {
        EXPECT_LE(off(finish, colour), 10) << finish_name(finish) << " " << to_hex(colour);
      }
}

// (3)
TEST(Finishes, TheSameAgain) {
  for (const Finish finish : bead::finishes) {
    const auto size = bead::find_size("round-11").value();
    const Surface a = surface_of(finish, {90, 140, 200}, size), b = surface_of(finish, {90, 140, 200}, size);
    EXPECT_EQ(a.base, b.base);
    EXPECT_EQ(a.absorbed_per_mm, b.absorbed_per_mm);
    EXPECT_EQ(a.lining, b.lining);
    EXPECT_EQ(albedo(a, 0.5, 0.5), albedo(b, 0.5, 0.5));
  }
}

}  // namespace
}  // namespace evencount::render
