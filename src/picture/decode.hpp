#pragma once
/// A picture file's bytes to light: PNG, JPEG, WebP and TIFF, told apart by their bytes and never by a name.
///
/// 8 and 16 bits, grey, palette, RGB, inks (CMYK), alpha, interlaced and progressive. A colour profile in the file is followed
/// (relative colorimetric, black point matched); without one the numbers are sRGB, inks by (1 - ink) (1 - black), which is rough. A
/// profile that can't be read or belongs to another kind of pixel is set aside. The picture is turned upright as its EXIF
/// orientation says. Of a file with several pages the first is read.
///
/// Properties (tests/picture/decode_test.cpp):
///  (1) a file written by the same libraries without loss gives back its light, within a millionth of white
///  (2) with a profile, each pixel is what lcms makes of it, within 2e-4 of white
///  (3) the eight orientations of one scene give the same image
///  (4) any bytes give an image or a Problem: nothing is printed, and no more memory is taken than is said below
///  (5) a file cut short anywhere in its picture is a Problem; the channels of an image are finite and within -2 .. 4
///
/// Memory: 16 bytes a pixel for the image and, while decoding, up to 12 more and once the file. Sizes are checked against the limits before any
/// memory is taken for pixels.
///
/// Errors: bad_picture (another format, named where it is a common one; a damaged file; a kind of picture within its format that
/// can't be read, such as a camera's raw file or an animation); out_of_range (more pixels than the limits);
/// system_failure (not enough memory).

#include <cstdint>
#include <string_view>

#include "base/result.hpp"
#include "picture/image.hpp"

namespace evencount::picture {

struct DecodeLimits {
  /// 640 MB of image; most cameras and telephones stay below it (from memory).
  std::int64_t most_pixels = 40'000'000;
  int most_side = 30'000;
};

[[nodiscard]] Result<Image> decode(std::string_view bytes, const DecodeLimits& limits = {});

}  // namespace evencount::picture
