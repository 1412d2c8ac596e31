#pragma once
/// A decoded row's numbers to light, by the file's colour profile or as sRGB; and the image that takes the rows. For the decoders.

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string_view>
#include <vector>

#include "picture/image.hpp"
#include "picture/orientation.hpp"

namespace evencount::picture {

/// What the numbers of a row are. Rows are interleaved; numbers of 16 bits are in the machine's byte order.
struct Samples {
  /// 1 grey, 3 red green blue, 4 cyan magenta yellow black with the highest number for full ink.
  int colours = 3;
  bool alpha = false;       ///< one more number after them
  bool associated = false;  ///< the colours have been multiplied by alpha
  int bits = 8;             ///< 8 or 16

  [[nodiscard]] int channels() const { return colours + (alpha ? 1 : 0); }
  [[nodiscard]] std::size_t bytes_a_pixel() const { return static_cast<std::size_t>(channels() * bits / 8); }
};

/// A PNG's gAMA and cHRM: light = number ^ exponent, and chromaticities x, y.
struct GammaAndPrimaries {
  double exponent = 2.2;
  std::array<double, 2> white{0.3127, 0.3290}, red{0.64, 0.33}, green{0.30, 0.60},
      blue{0.15, 0.06};  // sRGB's, IEC 61966-2-1
};

/// What a file says about its colours.
struct ColourTags {
  std::string_view profile;                ///< an ICC profile, or empty
  std::optional<GammaAndPrimaries> gamma;  ///< used when there is no profile
};

class RowsToLight {
 public:
  RowsToLight(Samples samples, const ColourTags& tags);
  ~RowsToLight();
  RowsToLight(RowsToLight&&) noexcept;
  RowsToLight& operator=(RowsToLight&&) noexcept;

  [[nodiscard]] const Samples& samples() const { return samples_; }
  [[nodiscard]] LightFrom light_from() const { return light_from_; }

  /// `count` pixels.
  void convert(const std::uint8_t* row, std::size_t count, Pixel* light);

 private:
  struct Transform;  // lcms's, which this header need not know
  class Shares;
  struct Light {
    float red = 0, green = 0, blue = 0;
  };
  [[nodiscard]] std::size_t table_size() const;
  void fill_tables_as_srgb();
  [[nodiscard]] bool fill_tables_by_profile();
  [[nodiscard]] Light added(const std::array<float, 3>& shares) const;
  void convert_by_tables(const std::uint8_t* row, std::size_t count, Pixel* light);
  void convert_by_lcms(const std::uint8_t* row, std::size_t count, Pixel* light);

  Samples samples_;
  LightFrom light_from_ = LightFrom::srgb;
  std::unique_ptr<Transform> transform_;  // none: as sRGB
  Light black_;                           // of the number 0 in every channel
  std::array<std::vector<Light>, 3>
      adds_;                    // what each number of each channel adds to it; empty where only lcms can tell
  std::vector<float> numbers_;  // a piece of a row, for lcms
};

/// The image being filled, upright.
class ImageRows {
 public:
  /// Stored `width` by `height`, turned upright by `orientation`.
  ImageRows(int width, int height, Orientation orientation, RowsToLight to_light);

  /// `count` pixels from stored (x, y) rightwards; inside the picture.
  void put(int x, int y, std::size_t count, const std::uint8_t* row);
  void put_row(int y, const std::uint8_t* row) { put(0, y, static_cast<std::size_t>(width_), row); }

  [[nodiscard]] Image take() && { return std::move(image_); }

 private:
  int width_;
  Places places_;
  RowsToLight to_light_;
  Image image_;
  std::vector<Pixel> light_;
};

}  // namespace evencount::picture
