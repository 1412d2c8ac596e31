// PngSuite, the public conformance set of PNG, as Debian's libsixel-examples carries it: every file of it that is a PNG is read, those that
// are broken are told, and files that its table of contents describes as one picture written in two ways are one.
// Source of the groups: the suite's own naming of its files.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>

#include "picture/decode.hpp"

namespace evencount::picture {
namespace {

namespace fs = std::filesystem;

const fs::path suite = "/usr/share/doc/libsixel-examples/examples/images/pngsuite";

class PngSuite : public ::testing::Test {
 protected:
  void SetUp() override {
    if (!fs::exists(suite)) GTEST_SKIP() << "libsixel-examples is not installed";
  }
};

Result<Image> read(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  EXPECT_TRUE(file.is_open()) << path;
  return decode(std::string{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()});
}

std::set<fs::path> files_in(const std::string& folder) {
  std::set<fs::path> files;
  for (const auto& entry : fs::directory_iterator(suite / folder)) files.insert(entry.path());
  return files;
}

double farthest(const Pixel& p, const Pixel& q) {
  const auto apart = [](float a, float b) { return std::abs(static_cast<double>(a) - b); };
  return std::max({apart(p.red, q.red), apart(p.green, q.green), apart(p.blue, q.blue), apart(p.alpha, q.alpha)});
}

double farthest(const Image& a, const Image& b) {
  if (a.width != b.width || a.height != b.height) return HUGE_VAL;
  double most = 0;
  for (std::size_t i = 0; i < a.pixels.size(); ++i) most = std::max(most, farthest(a.pixels[i], b.pixels[i]));
  return most;
}

/// Every file is the picture of the first, within `tolerance` of light.
void expect_one_picture(const std::vector<std::string>& names, double tolerance) {
  const auto first = read(suite / names.front());
  ASSERT_TRUE(first) << names.front();
  for (const std::string& name : names) {
    const auto other = read(suite / name);
    ASSERT_TRUE(other) << name << ": " << message(other.problem());
    EXPECT_LE(farthest(*first, *other), tolerance) << name;
  }
}

TEST_F(PngSuite, EveryPictureIsRead) {
  int read_files = 0;
  for (const auto& folder : fs::directory_iterator(suite)) {
    if (folder.path().filename() == "corrupted") continue;
    for (const fs::path& file : files_in(folder.path().filename().string())) {
      const auto image = read(file);
      ASSERT_TRUE(image) << file << ": " << message(image.problem());
      // Names end in the colour type and the bits: "basn6a08".
      const std::string name = file.stem().string();
      EXPECT_EQ(image->bits, name.ends_with("16") ? 16 : 8) << file;
      if (name[5] == 'a') {
        EXPECT_TRUE(image->has_alpha) << file;
      }
      ++read_files;
    }
  }
  EXPECT_GE(read_files, 150);
}

TEST_F(PngSuite, WhatIsBrokenIsTold) {
  int broken = 0;
  for (const fs::path& file : files_in("corrupted")) {
    const auto image = read(file);
    ASSERT_FALSE(image) << file;
    EXPECT_FALSE(message(image.problem()).empty());
    ++broken;
  }
  EXPECT_EQ(broken, 14);
}

TEST_F(PngSuite, InterlacedFilesAreThePlainOnes) {
  for (const fs::path& file : files_in("interlacing")) {
    std::string plain = file.filename().string();
    plain[3] = 'n';
    expect_one_picture({"basic/" + plain, "interlacing/" + file.filename().string()}, 0);
  }
}

TEST_F(PngSuite, OddSizesAreTheSameInterlaced) {
  int sizes = 0;
  for (const fs::path& file : files_in("odd")) {
    const std::string name = file.filename().string();  // "s07n3p02": 7 by 7
    const auto image = read(file);
    ASSERT_TRUE(image) << name;
    EXPECT_EQ(image->width, std::stoi(name.substr(1, 2)));
    EXPECT_EQ(image->height, image->width);
    if (name[3] != 'i') continue;
    std::string plain = name;
    plain[3] = 'n';
    expect_one_picture({"odd/" + plain, "odd/" + name}, 0);
    ++sizes;
  }
  EXPECT_EQ(sizes, 18);
}

TEST_F(PngSuite, CompressionAndPiecesChangeNothing) {
  expect_one_picture({"zlib/z00n2c08.png", "zlib/z03n2c08.png", "zlib/z06n2c08.png", "zlib/z09n2c08.png"}, 0);
  for (const std::string kind : {"n0g16.png", "n2c16.png"})
    expect_one_picture({"order/oi1" + kind, "order/oi2" + kind, "order/oi4" + kind, "order/oi9" + kind}, 0);
  expect_one_picture({"palette/ps1n2c16.png", "palette/ps2n2c16.png"}, 0);
  expect_one_picture({"palette/ps1n0g08.png", "palette/ps2n0g08.png"}, 0);
}

TEST_F(PngSuite, ASquareOfOneColourHasIt) {
  // cs5/cs8 and cs3: significant bits do not change what is stored; the palette's file is the true-colour one.
  expect_one_picture({"chunk/cs8n2c08.png", "chunk/cs8n3p08.png"}, 1e-6);
  expect_one_picture({"chunk/cs5n2c08.png", "chunk/cs5n3p08.png"}, 1e-6);
}

/// The suite draws one picture for exponents of 0.35 to 2.5, so that it looks the same where they are followed. Its numbers are rounded, to 1/255
/// or so: dark light that an exponent of 2.5 squeezes is off by more than 0.03 in 7 pixels of a hundred, and a pixel or two lie on the other side of an edge.
TEST_F(PngSuite, AnExponentInTheFileIsFollowed) {
  for (const std::string kind : {"n0g16.png", "n2c08.png", "n3p04.png"}) {
    const auto straight = read(suite / ("gamma/g10" + kind));
    ASSERT_TRUE(straight);
    EXPECT_EQ(straight->light_from, LightFrom::gamma);
    for (const std::string exponent : {"03", "04", "05", "07", "25"}) {
      const auto image = read(suite / ("gamma/g" + exponent + kind));
      ASSERT_TRUE(image);
      ASSERT_EQ(image->pixels.size(), straight->pixels.size());
      std::size_t alike = 0;
      for (std::size_t i = 0; i < image->pixels.size(); ++i) alike += farthest(image->pixels[i], straight->pixels[i]) < 0.03;
      EXPECT_GE(alike, image->pixels.size() * 92 / 100) << exponent << kind;
    }
  }
}

}  // namespace
}  // namespace evencount::picture
