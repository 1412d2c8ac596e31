#include "picture/decode.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "colour/lab.hpp"
#include "files.hpp"
#include "picture/orientation.hpp"

namespace evencount::picture {
namespace {

using Random = std::mt19937;

double light(double encoded) {
  return colour::to_linear(colour::Encoded{encoded, encoded, encoded}).red;
}

/// What a pixel should be, from the numbers as sRGB.
using Expected = std::function<Pixel(const Numbers&, int x, int y)>;

Pixel as_srgb(const Numbers& numbers, int x, int y) {
  const auto channel = [&](int i) {
    return static_cast<float>(light(numbers.share(x, y, numbers.channels < 3 ? 0 : i)));
  };
  const bool alpha = numbers.channels % 2 == 0;
  return {channel(0), channel(1), channel(2),
          alpha ? static_cast<float>(numbers.share(x, y, numbers.channels - 1)) : 1.0F};
}

double distance(const Pixel& a, const Pixel& b) {
  return std::max({std::abs(a.red - b.red), std::abs(a.green - b.green), std::abs(a.blue - b.blue),
                   std::abs(a.alpha - b.alpha)});
}

Image decoded(const std::string& file) {
  auto image = decode(file);
  EXPECT_TRUE(image.ok()) << message(image.problem());
  return image ? *image : Image{};
}

void expect_pixels(const Image& image, const Numbers& numbers, double tolerance,
                   const Expected& expected = as_srgb) {
  ASSERT_EQ(image.width, numbers.width);
  ASSERT_EQ(image.height, numbers.height);
  for (int y = 0; y < numbers.height; ++y)
    for (int x = 0; x < numbers.width; ++x)
      ASSERT_LE(distance(image.at(x, y), expected(numbers, x, y)), tolerance) << x << ", " << y;
}

constexpr double exact = 1e-6;

Numbers mirrored(const Numbers& n) {
  Numbers result = n;
  for (int y = 0; y < n.height; ++y)
    for (int x = 0; x < n.width; ++x)
      for (int i = 0; i < n.channels; ++i) result.at(x, y, i) = n.at(n.width - 1 - x, y, i);
  return result;
}

TEST(DecodePng, EveryKindOfPixel) {
  Random random(1);
  for (const int bits : {8, 16})
    for (const int channels : {1, 2, 3, 4})
      for (const bool interlaced : {false, true}) {
        SCOPED_TRACE(testing::Message()
                     << bits << " bits, " << channels << " channels, interlaced " << interlaced);
        const Numbers numbers = random_numbers(random, 13, 9, channels, bits);
        const Image image = decoded(png_file(numbers, {.interlaced = interlaced}));
        expect_pixels(image, numbers, exact);
        EXPECT_EQ(image.bits, bits);
        EXPECT_EQ(image.has_alpha, channels % 2 == 0);
        EXPECT_EQ(image.light_from, LightFrom::srgb);
      }
}

TEST(DecodePng, PalettesOfEveryDepthWithClearColours) {
  Random random(2);
  for (const int bits : {1, 2, 4, 8}) {
    std::vector<std::array<std::uint8_t, 4>> colours(std::size_t{1} << bits);
    for (auto& colour : colours)
      for (auto& channel : colour) channel = static_cast<std::uint8_t>(random() % 256);
    Numbers indices = random_numbers(random, 11, 7, 1, 8);
    for (auto& index : indices.values) index = static_cast<std::uint16_t>(index % colours.size());
    const Image image = decoded(png_palette_file(indices, bits, colours));
    EXPECT_TRUE(image.has_alpha);
    expect_pixels(image, indices, exact, [&](const Numbers& numbers, int x, int y) {
      const auto& colour = colours[numbers.at(x, y, 0)];
      const auto channel = [&](std::size_t i) { return static_cast<float>(light(colour[i] / 255.0)); };
      return Pixel{channel(0), channel(1), channel(2), static_cast<float>(colour[3] / 255.0)};
    });
  }
}

TEST(DecodePng, OneColourThatIsClear) {
  const Numbers grey{3, 1, 1, 16, {1000, 1001, 60000}};
  const Image image = decoded(png_file(grey, {.clear_grey = 1001}));
  EXPECT_EQ(image.at(0, 0).alpha, 1);
  EXPECT_EQ(image.at(1, 0).alpha, 0);
  EXPECT_EQ(image.at(2, 0).alpha, 1);
  const Numbers red{2, 1, 3, 8, {200, 0, 0, 200, 1, 0}};
  const Image second = decoded(png_file(red, {.clear_grey = 200}));
  EXPECT_EQ(second.at(0, 0).alpha, 0);
  EXPECT_EQ(second.at(1, 0).alpha, 1);
}

TEST(DecodePng, TextsAreNotUnpacked) {
  Random random(19);
  const Numbers numbers = random_numbers(random, 5, 5, 3, 8);
  // 40 MB in some 40 KB: more than any chunk may unpack to, were it wanted.
  const std::string file =
      png_file(numbers, {.orientation = 2, .orientation_last = true, .text_length = 40'000'000});
  EXPECT_LT(file.size(), 100'000U);
  expect_pixels(decoded(file), mirrored(numbers), exact);
}

TEST(DecodePng, ItsOwnExponentAndPrimaries) {
  Random random(3);
  const Numbers numbers = random_numbers(random, 9, 5, 3, 16);
  const Image linear = decoded(png_file(numbers, {.file_gamma = 1}));
  EXPECT_EQ(linear.light_from, LightFrom::gamma);
  expect_pixels(linear, numbers, 2e-4, [](const Numbers& n, int x, int y) {
    return Pixel{static_cast<float>(n.share(x, y, 0)), static_cast<float>(n.share(x, y, 1)),
                 static_cast<float>(n.share(x, y, 2)), 1};
  });
  // Said in the words of exponents, sRGB is sRGB; and sRGB goes before an exponent.
  EXPECT_EQ(decoded(png_file(numbers, {.file_gamma = 0.45455})).light_from, LightFrom::srgb);
  EXPECT_EQ(decoded(png_file(numbers, {.says_srgb = true})).light_from, LightFrom::srgb);
  // White stays white whatever the primaries; a green of Rec. 2020 lies outside sRGB and is kept there.
  const Numbers white_and_green{2, 1, 3, 8, {255, 255, 255, 0, 255, 0}};
  const Image wide = decoded(png_file(white_and_green, {.file_gamma = 0.45455, .wide_primaries = true}));
  EXPECT_EQ(wide.light_from, LightFrom::gamma);
  EXPECT_LE(distance(wide.at(0, 0), {1, 1, 1, 1}), 1e-3);
  EXPECT_LT(wide.at(1, 0).red,
            -0.3);  // -0.59 by the published matrix from Rec. 2020 to Rec. 709 (ITU-R BT.2407)
  EXPECT_NEAR(wide.at(1, 0).green, 1.1329, 2e-3);
}

Pixel by_lcms(const std::string& profile, const std::vector<double>& shares, float alpha = 1) {
  const auto lab = lab_by_lcms(profile, shares);
  const colour::Linear expected = colour::to_linear(colour::LabD50{lab[0], lab[1], lab[2]});
  return {static_cast<float>(expected.red), static_cast<float>(expected.green),
          static_cast<float>(expected.blue), alpha};
}

TEST(Decode, AProfileIsFollowedAsLcmsDoes) {
  Random random(4);
  const std::string wide = wide_profile(), grey = grey_profile(1.8);
  const auto by = [](const std::string& profile) {
    return [&profile](const Numbers& n, int x, int y) {
      std::vector<double> shares;
      const int colours = n.channels >= 3 ? 3 : 1;
      for (int i = 0; i < colours; ++i) shares.push_back(n.share(x, y, i));
      return by_lcms(profile, shares,
                     n.channels % 2 == 0 ? static_cast<float>(n.share(x, y, n.channels - 1)) : 1.0F);
    };
  };
  for (const int bits : {8, 16}) {
    const Numbers colours = random_numbers(random, 8, 6, 4, bits),
                  greys = random_numbers(random, 8, 6, 1, bits);
    for (const std::string& file :
         {png_file(colours, {.profile = wide}), tiff_file(colours, {.profile = wide})}) {
      const Image image = decoded(file);
      EXPECT_EQ(image.light_from, LightFrom::profile);
      expect_pixels(image, colours, 2e-4, by(wide));
    }
    for (const std::string& file :
         {png_file(greys, {.profile = grey}), tiff_file(greys, {.profile = grey})}) {
      const Image image = decoded(file);
      EXPECT_EQ(image.light_from, LightFrom::profile);
      expect_pixels(image, greys, 2e-4, by(grey));
    }
  }
  const Numbers colours = random_numbers(random, 8, 6, 3, 8);
  expect_pixels(decoded(webp_file(colours, {.profile = wide})), colours, 2e-4, by(wide));
  const std::string table = rgb_table_profile();
  expect_pixels(decoded(png_file(colours, {.profile = table})), colours, 2e-4, by(table));
  // The same differs from sRGB by far, or this would show nothing.
  EXPECT_GT(distance(by_lcms(wide, {0.2, 0.8, 0.2}), as_srgb({1, 1, 3, 8, {51, 204, 51}}, 0, 0)), 0.1);
}

TEST(Decode, AnSrgbProfileIsSrgb) {
  Random random(5);
  const Numbers numbers = random_numbers(random, 16, 16, 3, 8);
  expect_pixels(decoded(png_file(numbers, {.profile = srgb_profile()})), numbers, 2e-4);
  const Numbers greys = random_numbers(random, 16, 16, 1, 8);
  expect_pixels(decoded(tiff_file(greys, {.profile = srgb_profile()})), greys,
                2e-4);  // of red, green and blue, for greys
}

TEST(Decode, AProfileOfOtherPixelsIsSetAside) {
  Random random(6);
  const Numbers numbers = random_numbers(random, 5, 5, 3, 8);
  for (const std::string& profile :
       {grey_profile(1.2), ink_profile(), std::string("not a profile"), wide_profile().substr(0, 200)}) {
    const Image image = decoded(tiff_file(numbers, {.profile = profile}));
    EXPECT_EQ(image.light_from, LightFrom::srgb);
    expect_pixels(image, numbers, exact);
  }
}

/// A picture that JPEG keeps well.
Numbers smooth(int width, int height, int channels) {
  Numbers numbers{width, height, channels, 8, {}};
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x)
      for (int channel = 0; channel < channels; ++channel)
        numbers.values.push_back(static_cast<std::uint16_t>(
            40 + 150 * (channel % 2 == 0 ? x : y) / std::max(width, height) + 15 * channel));
  return numbers;
}

double worst_of(const Image& image, const Numbers& numbers, const Expected& expected = as_srgb) {
  double worst = image.width == numbers.width && image.height == numbers.height ? 0 : 10;
  for (int y = 0; worst < 10 && y < numbers.height; ++y)
    for (int x = 0; x < numbers.width; ++x)
      worst = std::max(worst, distance(image.at(x, y), expected(numbers, x, y)));
  return worst;
}

TEST(DecodeJpeg, GreyAndColourPlainAndProgressive) {
  for (const int channels : {1, 3})
    for (const bool progressive : {false, true})
      for (const bool thin : {false, true}) {
        const Numbers numbers = smooth(37, 23, channels);
        const Image image = decoded(jpeg_file(numbers, {.progressive = progressive, .thin_colour = thin}));
        EXPECT_LE(worst_of(image, numbers),
                  thin && channels == 3 ? 0.04 : 0.02);  // 2 of 255 in the lights are 0.016
        EXPECT_FALSE(image.has_alpha);
        EXPECT_EQ(image.bits, 8);
      }
}

TEST(DecodeJpeg, FollowsAProfile) {
  const Numbers numbers = smooth(16, 16, 3);
  const std::string wide = wide_profile();
  const Image image = decoded(jpeg_file(numbers, {.profile = wide}));
  EXPECT_EQ(image.light_from, LightFrom::profile);
  EXPECT_LE(worst_of(image, numbers,
                     [&](const Numbers& n, int x, int y) {
                       return by_lcms(wide, {n.share(x, y, 0), n.share(x, y, 1), n.share(x, y, 2)});
                     }),
            0.02);
}

TEST(DecodeInks, ThroughTheirProfile) {
  const std::string profile = ink_profile();
  const auto expected = [&](const Numbers& n, int x, int y) {
    return by_lcms(profile, {n.share(x, y, 0), n.share(x, y, 1), n.share(x, y, 2), n.share(x, y, 3)});
  };
  Random random(7);
  for (const int bits : {8, 16}) {
    const Numbers numbers = random_numbers(random, 6, 6, 4, bits);
    const Image image = decoded(tiff_file(numbers, {.inks = true, .profile = profile}));
    EXPECT_EQ(image.light_from, LightFrom::profile);
    expect_pixels(image, numbers, 2e-4, expected);
  }
  ASSERT_GT(profile.size(), 65'536U);  // a JPEG holds it in several pieces
  const Numbers numbers = smooth(24, 24, 4);
  EXPECT_LE(worst_of(decoded(jpeg_file(numbers, {.profile = profile})), numbers, expected), 0.02);
}

TEST(DecodeInks, WithoutOneByAPlainRule) {
  const auto plain = [](const Numbers& n, int x, int y) {
    const auto channel = [&](int i) {
      return static_cast<float>(light((1 - n.share(x, y, i)) * (1 - n.share(x, y, 3))));
    };
    return Pixel{channel(0), channel(1), channel(2),
                 n.channels == 5 ? static_cast<float>(n.share(x, y, 4)) : 1.0F};
  };
  Random random(8);
  for (const int channels : {4, 5}) {
    const Numbers numbers = random_numbers(random, 6, 6, channels, 8);
    const Image image = decoded(tiff_file(numbers, {.inks = true}));
    EXPECT_EQ(image.light_from, LightFrom::inks);
    expect_pixels(image, numbers, 1e-4, plain);
  }
  const Numbers numbers = smooth(24, 24, 4);
  for (const bool adobe : {true, false})
    EXPECT_LE(worst_of(decoded(jpeg_file(numbers, {.adobe = adobe})), numbers, plain), 0.02);
}

TEST(DecodeWebp, WithoutLossAndWithAlpha) {
  Random random(9);
  for (const int channels : {3, 4}) {
    const Numbers numbers = random_numbers(random, 19, 8, channels, 8);
    const Image image = decoded(webp_file(numbers));
    expect_pixels(image, numbers, exact);
    EXPECT_EQ(image.has_alpha, channels == 4);
  }
  EXPECT_LE(worst_of(decoded(webp_file(smooth(40, 30, 3), {.lossless = false})), smooth(40, 30, 3)), 0.06);
}

TEST(DecodeTiff, EveryLayout) {
  Random random(10);
  for (const int bits : {8, 16})
    for (const int channels : {1, 2, 3, 4})
      for (const bool tiled : {false, true})
        for (const bool planes : {false, true})
          for (const bool big_end_first : {false, true}) {
            const Numbers numbers = random_numbers(random, 37, 41, channels, bits);
            const TiffWriting writing{.tiled = tiled,
                                      .planes = planes,
                                      .big_end_first = big_end_first,
                                      .big = planes && tiled,
                                      .compression = tiled ? 5 : 1};  // LZW, none
            const Image image = decoded(tiff_file(numbers, writing));
            expect_pixels(image, numbers, exact);
            EXPECT_EQ(image.bits, bits);
            EXPECT_EQ(image.has_alpha, channels % 2 == 0);
          }
}

TEST(DecodeTiff, EveryCompression) {
  Random random(11);
  const Numbers numbers = random_numbers(random, 20, 20, 3, 8);
  for (const int compression : {1, 5, 8, 32773, 34925, 50000})  // none, LZW, deflate, packed, LZMA, Zstandard
    expect_pixels(decoded(tiff_file(numbers, {.compression = compression})), numbers, exact);
  const Numbers even = smooth(32, 32, 3);
  EXPECT_LE(worst_of(decoded(tiff_file(even, {.compression = 7, .rows_a_strip = 16})), even),
            0.04);  // JPEG in TIFF, colour thinned
}

TEST(DecodeTiff, NoCompressionThatHardlyAnybodyWrites) {
  Random random(13);
  const std::string plain = tiff_file(random_numbers(random, 20, 20, 3, 8), {});
  EXPECT_TRUE(decode(plain).ok());
  const std::string entry("\x03\x01\x03\x00\x01\x00\x00\x00", 8);  // tag 259, one short
  const std::size_t at = plain.find(entry + '\x01');
  ASSERT_NE(at, std::string::npos);
  for (const int compression : {32766, 32771, 32809, 32908, 32909, 34661, 34676, 34677, 34887, 50001, 50002, 0, 65535}) {
    std::string file = plain;
    file[at + 8] = static_cast<char>(compression & 0xFF), file[at + 9] = static_cast<char>(compression >> 8);
    const auto refused = decode(file);
    ASSERT_FALSE(refused.ok()) << compression;
    EXPECT_EQ(refused.problem().code, ProblemCode::bad_picture) << compression;
  }
}

TEST(DecodeTiff, WhiteLowestAndColoursMultipliedByAlpha) {
  Random random(12);
  const Numbers numbers = random_numbers(random, 7, 7, 1, 16);
  expect_pixels(decoded(tiff_file(numbers, {.white_is_lowest = true})), numbers, exact,
                [](const Numbers& n, int x, int y) {
                  const auto grey = static_cast<float>(light(1 - n.share(x, y, 0)));
                  return Pixel{grey, grey, grey, 1};
                });
  const Numbers half{2, 1, 4, 16, {30000, 20000, 10000, 32768, 0, 0, 0, 0}};
  const Image image = decoded(tiff_file(half, {.associated = true}));
  EXPECT_NEAR(image.at(0, 0).red, light(30000 / 32768.0), 1e-4);
  EXPECT_NEAR(image.at(0, 0).blue, light(10000 / 32768.0), 1e-4);
  EXPECT_EQ(image.at(1, 0), (Pixel{0, 0, 0, 0}));
}

TEST(DecodeTiff, Palettes) {
  Random random(13);
  for (const int bits : {4, 8})
    for (const bool old : {false, true}) {
      std::vector<std::array<std::uint16_t, 3>> colours(std::size_t{1} << bits);
      for (auto& colour : colours)
        for (auto& channel : colour)
          channel = static_cast<std::uint16_t>(old ? random() % 256 : 257 * (random() % 256));
      Numbers indices = random_numbers(random, 9, 9, 1, 8);
      for (auto& index : indices.values) index = static_cast<std::uint16_t>(index % colours.size());
      expect_pixels(decoded(tiff_palette_file(indices, bits, colours)), indices, exact,
                    [&](const Numbers& n, int x, int y) {
                      const auto channel = [&](std::size_t i) {
                        return static_cast<float>(light(colours[n.at(x, y, 0)][i] / (old ? 255.0 : 65535.0)));
                      };
                      return Pixel{channel(0), channel(1), channel(2), 1};
                    });
    }
}

/// A quarter clockwise: the left column becomes the top row.
Numbers turned(const Numbers& n) {
  Numbers result{n.height, n.width, n.channels, n.bits, n.values};
  for (int y = 0; y < result.height; ++y)
    for (int x = 0; x < result.width; ++x)
      for (int i = 0; i < n.channels; ++i) result.at(x, y, i) = n.at(y, n.height - 1 - x, i);
  return result;
}

/// As a camera would have stored the upright picture, by what EXIF says of the first row and column.
Numbers stored(const Numbers& upright, int orientation) {
  switch (orientation) {
    case 1:
      return upright;
    case 2:
      return mirrored(upright);
    case 3:
      return turned(turned(upright));
    case 4:
      return mirrored(turned(turned(upright)));
    case 5:
      return mirrored(turned(upright));
    case 6:
      return turned(turned(turned(upright)));
    case 7:
      return mirrored(turned(turned(turned(upright))));
    default:
      return turned(upright);
  }
}

TEST(Decode, EveryOrientationInEveryFormat) {
  Random random(14);
  const Numbers upright = random_numbers(random, 7, 4, 3, 8), even = smooth(24, 16, 3);
  for (int orientation = 1; orientation <= 8; ++orientation) {
    SCOPED_TRACE(orientation);
    const Numbers held = stored(upright, orientation);
    expect_pixels(decoded(png_file(held, {.orientation = orientation})), upright, exact);
    expect_pixels(
        decoded(png_file(held, {.interlaced = true, .orientation = orientation, .orientation_last = true})),
        upright, exact);
    expect_pixels(decoded(webp_file(held, {.orientation = orientation})), upright, exact);
    expect_pixels(decoded(tiff_file(held, {.orientation = orientation})), upright, exact);
    EXPECT_LE(worst_of(decoded(jpeg_file(stored(even, orientation), {.orientation = orientation})), even),
              0.02);
  }
  const Numbers big = random_numbers(random, 37, 41, 3, 8);
  for (const int orientation : {3, 6, 7})  // tiles, and libtiff's own colours, turn too
    expect_pixels(decoded(tiff_file(stored(big, orientation), {.tiled = true, .orientation = orientation})),
                  big, exact);
}

/// The problem of a file that must not decode. Nothing may be printed on the way.
Problem refused(const std::string& file, const DecodeLimits& limits = {}) {
  testing::internal::CaptureStderr();
  testing::internal::CaptureStdout();
  const auto image = decode(file, limits);
  EXPECT_EQ(testing::internal::GetCapturedStdout() + testing::internal::GetCapturedStderr(), "");
  EXPECT_FALSE(image.ok()) << (image ? image->width : 0) << " wide";
  return image ? Problem{ProblemCode::system_failure, "", "", ""} : image.problem();
}

TEST(DecodeRefuses, OtherFormatsByName) {
  const std::string accepted = ", expected a PNG, JPEG, WebP or TIFF file";
  const auto said = [&](const std::string& file) { return message(refused(file)); };
  EXPECT_EQ(said(std::string("GIF89a\1\0\1\0\0\0\0;", 14)), "picture: found a GIF file" + accepted);
  EXPECT_EQ(said("<svg xmlns='http://www.w3.org/2000/svg'/>"), "picture: found an SVG file" + accepted);
  EXPECT_EQ(said("\xEF\xBB\xBF<?xml version='1.0'?>\n<!-- drawn -->\n<svg/>"),
            "picture: found an SVG file" + accepted);
  EXPECT_EQ(said("<!doctype html><p>"), "picture: found a text with tags (XML or HTML)" + accepted);
  EXPECT_EQ(said(""), "picture: found an empty file" + accepted);
  EXPECT_EQ(said(std::string("\0\0\0\x1c"
                             "ftypheic",
                             12)),
            "picture: found an HEIC file" + accepted);
  EXPECT_EQ(said("%PDF-1.7"), "picture: found a PDF file" + accepted);
  EXPECT_EQ(said("hello"), "picture: found a file that begins with 'hello'" + accepted);
  EXPECT_EQ(said(std::string("RIFF\4\0\0\0WAVE", 12)),
            "picture: found a file that begins with 'RIFF????WAVE'" + accepted);
  EXPECT_EQ(refused("GIF89a").code, ProblemCode::bad_picture);
}

TEST(DecodeRefuses, KindsWithinAFormatThatAreNotPictures) {
  Random random(15);
  const Numbers numbers = random_numbers(random, 8, 8, 3, 8);
  EXPECT_EQ(message(refused(webp_animation(numbers))), "WebP: found an animation, expected a still picture");
  EXPECT_EQ(message(refused(tiff_file(numbers, {.thumbnail = true}))),
            "TIFF: found a camera's raw file, expected a developed picture");
  EXPECT_EQ(message(refused(tiff_float_file(4, 4))),
            "TIFF: found numbers that are signed or floating, expected whole numbers from 0");
}

/// A JPEG whose header says another size.
std::string jpeg_header(unsigned width, unsigned height) {
  std::string file = jpeg_file(smooth(16, 16, 3));
  const std::size_t frame = file.find("\xFF\xC0");
  file[frame + 5] = static_cast<char>(height >> 8), file[frame + 6] = static_cast<char>(height);
  file[frame + 7] = static_cast<char>(width >> 8), file[frame + 8] = static_cast<char>(width);
  return file;
}

TEST(DecodeRefuses, HugePicturesFromTheirHeaders) {
  std::string webp = webp_file(smooth(8, 8, 3));
  const std::size_t lossless = webp.find("VP8L") + 9;  // 14 bits of width - 1, then of height - 1
  webp[lossless] = '\xFF', webp[lossless + 1] = '\xFF', webp[lossless + 2] = '\xFF',
  webp[lossless + 3] |= '\x0F';
  const std::string files[] = {png_header(64'250, 64'250), jpeg_header(64'250, 64'250),
                               tiff_header(64'250, 64'250), webp};
  for (const std::string& file : files) {
    EXPECT_LT(file.size(), 5'000U);
    const Problem problem = refused(file);
    EXPECT_EQ(problem.code, ProblemCode::out_of_range) << message(problem);
    EXPECT_EQ(problem.expected, "at most 40000000 pixels, and 30000 a side");
  }
  EXPECT_EQ(refused(files[0]).found, "64250 by 64250 pixels");
  EXPECT_EQ(refused(files[3]).found, "16384 by 16384 pixels");
  EXPECT_EQ(refused(png_header(30'001, 1)).code, ProblemCode::out_of_range);
  EXPECT_EQ(refused(png_header(2'147'483'647, 2'147'483'647)).code, ProblemCode::out_of_range);
}

TEST(DecodeRefuses, MoreThanTheCallerAllows) {
  Random random(16);
  const Numbers numbers = random_numbers(random, 10, 6, 3, 8);
  const std::string files[] = {png_file(numbers), jpeg_file(numbers), webp_file(numbers), tiff_file(numbers)};
  for (const std::string& file : files) {
    EXPECT_TRUE(decode(file, {.most_pixels = 60, .most_side = 10}).ok());
    EXPECT_EQ(refused(file, {.most_pixels = 59, .most_side = 10}).code, ProblemCode::out_of_range);
    EXPECT_EQ(refused(file, {.most_pixels = 60, .most_side = 9}).code, ProblemCode::out_of_range);
  }
}

TEST(DecodeRefuses, FilesCutShortAnywhere) {
  Random random(17);
  const Numbers numbers = random_numbers(random, 16, 16, 3, 8), grey = random_numbers(random, 16, 16, 1, 8);
  const std::string files[] = {png_file(numbers),
                               png_file(numbers, {.interlaced = true, .profile = wide_profile()}),
                               jpeg_file(numbers, {.quality = 60}),
                               jpeg_file(numbers, {.quality = 60, .progressive = true, .orientation = 6}),
                               webp_file(numbers),
                               webp_file(numbers, {.lossless = false}),
                               webp_file(numbers, {.orientation = 3}),
                               tiff_file(numbers),
                               tiff_file(grey, {.tiled = true, .compression = 5})};
  for (std::size_t i = 0; i < std::size(files); ++i) {
    const std::string& file = files[i];
    EXPECT_TRUE(decode(file).ok()) << i;
    // The last bytes of a TIFF or a WebP may be padding or lie behind the picture.
    const std::size_t whole = file.size() - (i >= 4 ? 40 : 1);
    for (std::size_t length = 0; length <= whole; length += length < 700 ? 1 : 13)
      EXPECT_EQ(refused(file.substr(0, length)).code, ProblemCode::bad_picture)
          << i << ": " << length << " of " << file.size();
    EXPECT_EQ(refused(file.substr(0, whole)).code, ProblemCode::bad_picture) << i;
  }
}

TEST(DecodeRefuses, DamageWithinThePicture) {
  const Numbers numbers = smooth(64, 64, 3);
  std::string png = png_file(numbers);
  png[png.size() / 2] ^= 0x10;
  EXPECT_EQ(refused(png).code, ProblemCode::bad_picture);
  std::string jpeg = jpeg_file(numbers, {.quality = 80});
  const std::size_t scan = jpeg.find("\xFF\xDA");
  jpeg.replace(scan + 40, 2, "\xFF\xD9");  // the end too soon
  EXPECT_EQ(refused(jpeg).code, ProblemCode::bad_picture);
}

TEST(DecodeRefuses, AJpegOfEndlessScans) {
  std::string file = jpeg_file(smooth(16, 16, 1), {.in_two_scans = true});
  // The last scan gives all the rest: it may lawfully be said again and again.
  const std::size_t last = file.rfind("\xFF\xDA");
  const std::string scan = file.substr(last, file.size() - 2 - last);
  const auto with_scans = [&](int count) {
    std::string many = file.substr(0, last);
    for (int i = 0; i < count; ++i) many += scan;
    return many + "\xFF\xD9";
  };
  EXPECT_TRUE(decode(with_scans(20)).ok()) << message(refused(with_scans(20)));
  EXPECT_EQ(refused(with_scans(1000)).found, "a damaged file, or only a part of one (endless scans)");
}

TEST(Orientation, PlacesEveryPixelOnce) {
  for (unsigned number = 1; number <= 8; ++number)
    for (const auto& [width, height] : {std::pair{5, 3}, {1, 7}, {4, 4}, {6, 1}}) {
      const Places at = places(orientation_of(number), width, height);
      std::vector<int> seen(static_cast<std::size_t>(width * height), 0);
      for (int y = 0; y < height; ++y)
        for (int x = 0; x < width; ++x)
          ++seen.at(static_cast<std::size_t>(at.origin + x * at.by_column + y * at.by_row));
      EXPECT_EQ(std::count(seen.begin(), seen.end(), 1), width * height);
    }
}

TEST(Orientation, IsReadFromEitherByteOrderAndNeverPastTheEnd) {
  for (int number = 0; number <= 9; ++number)
    for (const bool big_end_first : {false, true}) {
      const std::string block = exif_block(number, big_end_first);
      const auto expected =
          number >= 1 && number <= 8 ? static_cast<Orientation>(number) : Orientation::top_left;
      EXPECT_EQ(exif_orientation(block), expected);
      EXPECT_EQ(exif_orientation(std::string("Exif\0\0", 6) + block), expected);
      for (std::size_t length = 0; length < 32; ++length)
        EXPECT_EQ(exif_orientation(std::string(block, 0, length)), Orientation::top_left);
    }
  std::string far = exif_block(6, true);
  far[4] = far[5] = far[6] = far[7] = '\xFF';  // the directory at 4 GB
  EXPECT_EQ(exif_orientation(far), Orientation::top_left);
  EXPECT_EQ(exif_orientation(""), Orientation::top_left);
}

TEST(Orientation, RandomBytesAreUpright) {
  Random random(18);
  for (int i = 0; i < 2'000; ++i) {
    std::string block = exif_block(1, i % 2 == 0);
    for (int change = 0; change < 3; ++change) block[random() % block.size()] = static_cast<char>(random());
    const auto number = static_cast<int>(exif_orientation(block));
    EXPECT_TRUE(number >= 1 && number <= 8);
  }
}

}  // namespace
}  // namespace evencount::picture
