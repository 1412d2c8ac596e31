#include <fmt/format.h>
#include <tiffio.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cstring>
#include <memory>
#include <vector>

#include "picture/decoders.hpp"

namespace evencount::picture {
namespace {

constexpr std::string_view format = "TIFF";
constexpr int most_samples =
    6;  // a pixel: four inks, alpha and one to spare; more would not be a picture of ours

/// The file in memory, and the first thing libtiff said was wrong with it.
struct Source {
  std::string_view bytes;
  std::uint64_t at = 0;
  char message[160] = "";
};

tmsize_t read_bytes(thandle_t handle, void* to, tmsize_t count) {
  auto* source = static_cast<Source*>(handle);
  if (count <= 0 || source->at >= source->bytes.size()) return 0;
  const std::size_t some =
      std::min(static_cast<std::size_t>(count), source->bytes.size() - static_cast<std::size_t>(source->at));
  std::memcpy(to, source->bytes.data() + source->at, some);
  source->at += some;
  return static_cast<tmsize_t>(some);
}

tmsize_t write_nothing(thandle_t, void*, tmsize_t) {
  return 0;
}

toff_t seek(thandle_t handle, toff_t to, int from) {
  auto* source = static_cast<Source*>(handle);
  source->at = from == SEEK_CUR ? source->at + to : from == SEEK_END ? source->bytes.size() + to : to;
  return source->at;
}

int close_nothing(thandle_t) {
  return 0;
}
toff_t size_of(thandle_t handle) {
  return static_cast<Source*>(handle)->bytes.size();
}
int map_nothing(thandle_t, void**, toff_t*) {
  return 0;
}
void unmap_nothing(thandle_t, void*, toff_t) {}

int keep_error(TIFF*, void* user, const char*, const char* text, va_list arguments) {
  auto* source = static_cast<Source*>(user);
  if (source->message[0] == '\0') vsnprintf(source->message, sizeof source->message, text, arguments);
  return 1;  // said; nothing is printed
}

int drop_warning(TIFF*, void*, const char*, const char*, va_list) {
  return 1;
}

struct CloseTiff {
  void operator()(TIFF* file) const { TIFFClose(file); }
};
using Tiff = std::unique_ptr<TIFF, CloseTiff>;

Tiff open(Source& source, const DecodeLimits& limits) {
  const std::unique_ptr<TIFFOpenOptions, decltype(&TIFFOpenOptionsFree)> options(TIFFOpenOptionsAlloc(),
                                                                                 &TIFFOpenOptionsFree);
  if (!options) return nullptr;
  TIFFOpenOptionsSetErrorHandlerExtR(options.get(), keep_error, &source);
  TIFFOpenOptionsSetWarningHandlerExtR(options.get(), drop_warning, nullptr);
  TIFFOpenOptionsSetMaxSingleMemAlloc(options.get(),
                                      2 * most_samples * limits.most_pixels + (tmsize_t{64} << 20));
  // m: libtiff reads through us and maps nothing.
  return Tiff(TIFFClientOpenExt("picture", "rm", &source, read_bytes, write_nothing, seek, close_nothing,
                                size_of, map_nothing, unmap_nothing, options.get()));
}

/// The tags of the first picture, with TIFF 6.0's defaults.
struct Tags {
  std::uint32_t width = 0, height = 0;
  std::uint16_t bits = 1, samples = 1, photometric = 0, planar = PLANARCONFIG_CONTIG,
                number_kind = SAMPLEFORMAT_UINT;
  std::uint16_t compression = COMPRESSION_NONE, orientation = ORIENTATION_TOPLEFT, inks = INKSET_CMYK;
  std::uint16_t extra = 0;
  const std::uint16_t* extra_kinds = nullptr;
  std::string_view profile;
};

Tags read_tags(TIFF* file) {
  Tags tags;
  TIFFGetField(file, TIFFTAG_IMAGEWIDTH, &tags.width);
  TIFFGetField(file, TIFFTAG_IMAGELENGTH, &tags.height);
  TIFFGetFieldDefaulted(file, TIFFTAG_BITSPERSAMPLE, &tags.bits);
  TIFFGetFieldDefaulted(file, TIFFTAG_SAMPLESPERPIXEL, &tags.samples);
  TIFFGetFieldDefaulted(file, TIFFTAG_PLANARCONFIG, &tags.planar);
  TIFFGetFieldDefaulted(file, TIFFTAG_SAMPLEFORMAT, &tags.number_kind);
  TIFFGetFieldDefaulted(file, TIFFTAG_COMPRESSION, &tags.compression);
  TIFFGetFieldDefaulted(file, TIFFTAG_ORIENTATION, &tags.orientation);
  TIFFGetFieldDefaulted(file, TIFFTAG_INKSET, &tags.inks);
  if (TIFFGetField(file, TIFFTAG_PHOTOMETRIC, &tags.photometric) == 0) tags.photometric = 0xFFFF;
  if (TIFFGetField(file, TIFFTAG_EXTRASAMPLES, &tags.extra, &tags.extra_kinds) == 0) tags.extra = 0;
  std::uint32_t length = 0;
  void* profile = nullptr;
  if (TIFFGetField(file, TIFFTAG_ICCPROFILE, &length, &profile) != 0 && length <= largest_profile)
    tags.profile = as_bytes(profile, length);
  return tags;
}

/// A camera's raw file is a TIFF whose first picture is a thumbnail, or that says it is a negative.
bool is_raw(TIFF* file, std::string_view bytes) {
  std::uint32_t subfile = 0;
  std::uint16_t count = 0;
  void* version = nullptr;
  TIFFGetField(file, TIFFTAG_SUBFILETYPE, &subfile);
  return (subfile & FILETYPE_REDUCEDIMAGE) != 0 ||
         TIFFGetField(file, TIFFTAG_DNGVERSION, &count, &version) != 0 || bytes.substr(8, 2) == "CR";
}

/// What cameras, scanners and editors write (from memory). libtiff knows more: rarely used code, and the readiest to have faults.
bool is_usual(std::uint16_t compression) {
  constexpr std::array usual{COMPRESSION_NONE, COMPRESSION_LZW,  COMPRESSION_ADOBE_DEFLATE, COMPRESSION_DEFLATE, COMPRESSION_PACKBITS,
                             COMPRESSION_JPEG, COMPRESSION_LZMA, COMPRESSION_ZSTD,          COMPRESSION_CCITTRLE, COMPRESSION_CCITTFAX3,
                             COMPRESSION_CCITTFAX4};
  return std::find(usual.begin(), usual.end(), compression) != usual.end();
}

int colours_of(const Tags& tags) {
  switch (tags.photometric) {
    case PHOTOMETRIC_MINISBLACK:
    case PHOTOMETRIC_MINISWHITE:
      return 1;
    case PHOTOMETRIC_RGB:
      return 3;
    case PHOTOMETRIC_SEPARATED:
      return tags.inks == INKSET_CMYK ? 4 : 0;
    case PHOTOMETRIC_YCBCR:  // libjpeg makes red, green and blue of it
      return tags.compression == COMPRESSION_JPEG && tags.planar == PLANARCONFIG_CONTIG && tags.bits == 8 ? 3
                                                                                                          : 0;
    case PHOTOMETRIC_PALETTE:
      return tags.bits == 8 && tags.samples == 1 ? 3 : 0;
    default:
      return 0;
  }
}

/// Whether pixels are read number by number; the rest (1, 2 and 4 bits, CIELAB, YCbCr) goes through libtiff's own colours.
bool is_plain(const Tags& tags) {
  const int colours =
      tags.photometric == PHOTOMETRIC_PALETTE ? std::min(colours_of(tags), 1) : colours_of(tags);
  return colours > 0 && (tags.bits == 8 || tags.bits == 16) && tags.samples >= colours &&
         tags.samples <= most_samples;
}

/// Reads blocks, which are strips or tiles, plane by plane where the file has planes, and hands their rows on.
class BlockReader {
 public:
  BlockReader(TIFF* file, const Tags& tags) : file_(file), tags_(tags) {
    const std::uint16_t* kinds = tags.extra_kinds;
    samples_.colours = colours_of(tags);
    samples_.bits = tags.photometric == PHOTOMETRIC_PALETTE ? 16 : tags.bits;
    const bool room =
        tags.extra > 0 && tags.samples > samples_.colours && tags.photometric != PHOTOMETRIC_PALETTE;
    samples_.associated = room && kinds[0] == EXTRASAMPLE_ASSOCALPHA;
    samples_.alpha = samples_.associated || (room && kinds[0] == EXTRASAMPLE_UNASSALPHA);
    if (TIFFIsTiled(file) != 0) {
      TIFFGetField(file, TIFFTAG_TILEWIDTH, &block_width_);
      TIFFGetField(file, TIFFTAG_TILELENGTH, &block_height_);
    } else {
      block_width_ = tags.width;
      TIFFGetFieldDefaulted(file, TIFFTAG_ROWSPERSTRIP, &block_height_);
      block_height_ = std::min(block_height_, tags.height);
    }
    planes_ = tags.planar == PLANARCONFIG_SEPARATE ? samples_.channels() : 1;
  }

  [[nodiscard]] const Samples& samples() const { return samples_; }
  [[nodiscard]] std::uint32_t block_width() const { return block_width_; }
  [[nodiscard]] std::uint32_t block_height() const { return block_height_; }

  /// False when libtiff can't give a block, or gives one of another length than its tags say.
  bool read_all(ImageRows& image) {
    if (!read_palette()) return false;
    const bool tiled = TIFFIsTiled(file_) != 0;
    const auto block = static_cast<std::size_t>(tiled ? TIFFTileSize(file_) : TIFFStripSize(file_));
    block_row_ = static_cast<std::size_t>(tiled ? TIFFTileRowSize(file_) : TIFFScanlineSize(file_));
    const std::size_t numbers = planes_ > 1 ? 1 : tags_.samples;
    if (block_row_ != std::size_t{block_width_} * numbers * (tags_.bits / 8U) ||
        block != block_row_ * block_height_)
      return false;
    blocks_.resize(static_cast<std::size_t>(planes_));
    for (auto& plane : blocks_) plane.resize(block);
    row_.resize(samples_.bytes_a_pixel() * block_width_);
    for (std::uint32_t y = 0; y < tags_.height; y += block_height_)
      for (std::uint32_t x = 0; x < tags_.width; x += block_width_)
        if (!read_block(x, y, tiled) || !hand_on(x, y, image)) return false;
    return true;
  }

 private:
  bool read_block(std::uint32_t x, std::uint32_t y, bool tiled) {
    const std::uint32_t rows = tiled ? block_height_ : std::min(block_height_, tags_.height - y);
    const auto wanted = static_cast<tmsize_t>(block_row_ * rows);
    for (int plane = 0; plane < planes_; ++plane) {
      std::uint8_t* to = blocks_[static_cast<std::size_t>(plane)].data();
      const auto sample = static_cast<std::uint16_t>(plane);
      const tmsize_t got =
          tiled ? TIFFReadEncodedTile(file_, TIFFComputeTile(file_, x, y, 0, sample), to, wanted)
                : TIFFReadEncodedStrip(file_, TIFFComputeStrip(file_, y, sample), to, wanted);
      if (got != wanted) return false;
    }
    return true;
  }

  bool hand_on(std::uint32_t x, std::uint32_t y, ImageRows& image) {
    const std::uint32_t columns = std::min(block_width_, tags_.width - x),
                        rows = std::min(block_height_, tags_.height - y);
    for (std::uint32_t row = 0; row < rows; ++row) {
      if (tags_.photometric == PHOTOMETRIC_PALETTE)
        look_up(row, columns);
      else
        gather(row, columns);
      image.put(static_cast<int>(x), static_cast<int>(y + row), columns, row_.data());
    }
    return true;
  }

  /// The colours and the alpha of a row side by side, without what else the file has; black lowest.
  void gather(std::uint32_t row, std::uint32_t columns) {
    const std::size_t length = tags_.bits / 8U, channels = static_cast<std::size_t>(samples_.channels());
    const std::size_t step = length * (planes_ > 1 ? 1U : tags_.samples);
    for (std::size_t channel = 0; channel < channels; ++channel) {
      const std::uint8_t* from = planes_ > 1 ? blocks_[channel].data() : blocks_[0].data() + channel * length;
      from += row * block_row_;
      std::uint8_t* to = row_.data() + channel * length;
      for (std::uint32_t i = 0; i < columns; ++i, from += step, to += channels * length)
        std::memcpy(to, from, length);
    }
    if (tags_.photometric != PHOTOMETRIC_MINISWHITE) return;
    for (std::uint32_t i = 0; i < columns; ++i)
      for (std::size_t byte = 0; byte < length; ++byte) {
        std::uint8_t& number = row_[i * channels * length + byte];
        number = static_cast<std::uint8_t>(~number);
      }
  }

  void look_up(std::uint32_t row, std::uint32_t columns) {
    const std::uint8_t* from = blocks_[0].data() + row * block_row_;
    for (std::uint32_t i = 0; i < columns; ++i)
      std::memcpy(row_.data() + std::size_t{6} * i, palette_.data() + std::size_t{3} * from[i], 6);
  }

  bool read_palette() {
    if (tags_.photometric != PHOTOMETRIC_PALETTE) return true;
    std::uint16_t *red = nullptr, *green = nullptr, *blue = nullptr;
    if (TIFFGetField(file_, TIFFTAG_COLORMAP, &red, &green, &blue) == 0) return false;
    for (std::size_t i = 0; i < 256; ++i)
      for (const std::uint16_t* channel : {red, green, blue}) palette_.push_back(channel[i]);
    // Some old writers put 8 bits where 16 belong.
    if (std::all_of(palette_.begin(), palette_.end(), [](std::uint16_t number) { return number < 256; }))
      for (std::uint16_t& number : palette_) number = static_cast<std::uint16_t>(number * 257);
    return true;
  }

  TIFF* file_;
  const Tags& tags_;
  Samples samples_;
  std::uint32_t block_width_ = 0, block_height_ = 0;
  int planes_ = 1;
  std::size_t block_row_ = 0;
  std::vector<std::vector<std::uint8_t>> blocks_;  // one a plane
  std::vector<std::uint8_t> row_;
  std::vector<std::uint16_t> palette_;  // red, green, blue of each number
};

int width_of(const Tags& tags) {
  return static_cast<int>(tags.width);
}
int height_of(const Tags& tags) {
  return static_cast<int>(tags.height);
}

Problem damage(const Source& source) {
  return damaged(format, source.message[0] == '\0' ? "its tags contradict each other" : source.message);
}

Result<Image> decode_plain(TIFF* file, const Tags& tags, const Source& source, const DecodeLimits& limits) {
  if (tags.photometric == PHOTOMETRIC_YCBCR) TIFFSetField(file, TIFFTAG_JPEGCOLORMODE, JPEGCOLORMODE_RGB);
  BlockReader reader(file, tags);
  if (auto problem = check_size(format, reader.block_width(), reader.block_height(), limits)) return *problem;
  ImageRows image(width_of(tags), height_of(tags), orientation_of(tags.orientation),
                  RowsToLight(reader.samples(), {.profile = tags.profile}));
  if (!reader.read_all(image)) return damage(source);
  return std::move(image).take();
}

/// By libtiff's own way to red, green, blue and associated alpha, 8 bits each.
Result<Image> decode_by_libtiff(TIFF* file, const Tags& tags, const Source& source) {
  TIFFRGBAImage pixels;
  char message[1024] = "";
  if (TIFFRGBAImageOK(file, message) == 0 || TIFFRGBAImageBegin(&pixels, file, 1, message) == 0)
    return unreadable_kind(format, fmt::format("a kind of picture that can't be read ({})", message),
                           "grey, palette, RGB or CMYK of 8 or 16 bits");
  const std::unique_ptr<TIFFRGBAImage, decltype(&TIFFRGBAImageEnd)> end(&pixels, &TIFFRGBAImageEnd);
  pixels.req_orientation = pixels.orientation;  // as it is stored; turning it upright is ours
  std::vector<std::uint32_t> raster(std::size_t{tags.width} * tags.height);
  if (TIFFRGBAImageGet(&pixels, raster.data(), tags.width, tags.height) == 0) return damage(source);
  const Samples samples{.colours = 3, .alpha = pixels.alpha != 0, .associated = pixels.alpha != 0, .bits = 8};
  ImageRows image(width_of(tags), height_of(tags), orientation_of(tags.orientation),
                  RowsToLight(samples, {.profile = tags.profile}));
  std::vector<std::uint8_t> row;
  for (int y = 0; y < height_of(tags); ++y) {
    row.clear();
    for (std::uint32_t x = 0; x < tags.width; ++x) {
      const std::uint32_t pixel = raster[static_cast<std::size_t>(y) * tags.width + x];
      for (const unsigned shift : {0U, 8U, 16U, 24U})
        if (shift < 24 || samples.alpha) row.push_back(static_cast<std::uint8_t>(pixel >> shift));
    }
    image.put_row(y, row.data());
  }
  return std::move(image).take();
}

}  // namespace

Result<Image> decode_tiff(std::string_view bytes, const DecodeLimits& limits) {
  Source source{bytes};
  const Tiff file = open(source, limits);
  if (!file) return damage(source);
  const Tags tags = read_tags(file.get());
  if (auto problem = check_size(format, tags.width, tags.height, limits)) return *problem;
  if (is_raw(file.get(), bytes)) return unreadable_kind(format, "a camera's raw file", "a developed picture");
  if (tags.number_kind != SAMPLEFORMAT_UINT && tags.number_kind != SAMPLEFORMAT_VOID)
    return unreadable_kind(format, "numbers that are signed or floating", "whole numbers from 0");
  if (tags.compression == COMPRESSION_OJPEG)
    return unreadable_kind(format, "a JPEG in the manner of TIFF before 1995", "another compression");
  if (!is_usual(tags.compression))
    return unreadable_kind(format, fmt::format("compression {}", tags.compression),
                           "none, LZW, deflate, PackBits, JPEG, fax, LZMA or Zstandard");
  return is_plain(tags) ? decode_plain(file.get(), tags, source, limits)
                        : decode_by_libtiff(file.get(), tags, source);
}

}  // namespace evencount::picture
