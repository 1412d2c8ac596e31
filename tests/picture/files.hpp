#pragma once
/// Picture files written by the same libraries that the decoders read with.

#include <array>
#include <cstdint>
#include <optional>
#include <random>
#include <string>
#include <vector>

namespace evencount::picture {

/// Numbers as a file holds them, row after row.
struct Numbers {
  int width = 0, height = 0;
  int channels = 3;  ///< 1 grey, 2 grey and alpha, 3 RGB, 4 RGB and alpha or inks, 5 inks and alpha
  int bits = 8;
  std::vector<std::uint16_t> values;
  bool operator==(const Numbers&) const = default;

  [[nodiscard]] std::uint16_t at(int x, int y, int channel) const { return values[index(x, y, channel)]; }
  [[nodiscard]] std::uint16_t& at(int x, int y, int channel) { return values[index(x, y, channel)]; }
  [[nodiscard]] double share(int x, int y, int channel) const {
    return at(x, y, channel) / (bits == 8 ? 255.0 : 65535.0);
  }

 private:
  [[nodiscard]] std::size_t index(int x, int y, int channel) const {
    return static_cast<std::size_t>((y * width + x) * channels + channel);
  }
};

[[nodiscard]] Numbers random_numbers(std::mt19937& random, int width, int height, int channels, int bits);

struct PngWriting {
  bool interlaced = false;
  bool says_srgb = false;
  std::string profile;
  std::optional<double> file_gamma;  ///< gAMA
  bool wide_primaries = false;       ///< cHRM of Rec. 2020
  int orientation = 0;               ///< eXIf; 0 for none
  bool orientation_last = false;     ///< behind the pixels
  std::size_t text_length = 0;       ///< of a compressed comment
  /// tRNS of a picture without alpha: the grey, or the red (green and blue 0), that is clear.
  int clear_grey = -1;
};
[[nodiscard]] std::string png_file(const Numbers& numbers, const PngWriting& writing = {});

/// `indices` is a picture of one channel; `bits` of it are written: 1, 2, 4 or 8. Colours are R, G, B, alpha.
[[nodiscard]] std::string png_palette_file(const Numbers& indices, int bits,
                                           const std::vector<std::array<std::uint8_t, 4>>& colours);

/// The start of a PNG of this size, without pixels.
[[nodiscard]] std::string png_header(std::uint32_t width, std::uint32_t height);

struct JpegWriting {
  int quality = 100;
  bool progressive = false;
  bool in_two_scans = false;  ///< progressive, of one channel: the means, then all the rest at once
  bool thin_colour = false;   ///< colour at half the size, as most cameras write it
  bool adobe = true;          ///< inks upside down, with Adobe's marker; else as they are, without
  std::string profile;
  int orientation = 0;
};
/// 1, 3 or 4 channels.
[[nodiscard]] std::string jpeg_file(const Numbers& numbers, const JpegWriting& writing = {});

struct WebpWriting {
  bool lossless = true;
  std::string profile;
  int orientation = 0;
};
/// 3 or 4 channels of 8 bits.
[[nodiscard]] std::string webp_file(const Numbers& numbers, const WebpWriting& writing = {});
[[nodiscard]] std::string webp_animation(const Numbers& numbers);

struct TiffWriting {
  bool inks = false;
  bool associated = false;  ///< the alpha, where there is one
  bool white_is_lowest = false;
  bool tiled = false;
  bool planes = false;
  bool big_end_first = false;
  bool big = false;        ///< BigTIFF
  bool thumbnail = false;  ///< marked as a smaller copy of another
  int compression = 1;     ///< libtiff's number; 1 for none
  int rows_a_strip = 3;
  std::string profile;
  int orientation = 0;
};
[[nodiscard]] std::string tiff_file(const Numbers& numbers, const TiffWriting& writing = {});
/// `bits` 1, 4 or 8 a pixel; colours of 16 bits, or 8 bits as old writers had them.
[[nodiscard]] std::string tiff_palette_file(const Numbers& indices, int bits,
                                            const std::vector<std::array<std::uint16_t, 3>>& colours);
/// Numbers of 32 bits, floating.
[[nodiscard]] std::string tiff_float_file(int width, int height);
/// The tags of a picture of this size, and no pixels.
[[nodiscard]] std::string tiff_header(std::uint32_t width, std::uint32_t height);

/// A block of EXIF that says only this.
[[nodiscard]] std::string exif_block(int orientation, bool big_end_first);

/// RGB with Rec. 2020's primaries and exponent 1.8.
[[nodiscard]] std::string wide_profile();
[[nodiscard]] std::string srgb_profile();
[[nodiscard]] std::string grey_profile(double exponent);
/// Inks on a paper that is not quite white, with a black that is not quite black.
[[nodiscard]] std::string ink_profile();
/// RGB of a printer: no channel has a curve of its own.
[[nodiscard]] std::string rgb_table_profile();
/// What lcms makes of a colour (shares 0 .. 1 of as many channels as the profile has) by a profile: CIELAB, D50.
[[nodiscard]] std::array<double, 3> lab_by_lcms(const std::string& profile,
                                                const std::vector<double>& shares);

}  // namespace evencount::picture
