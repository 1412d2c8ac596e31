#include "files.hpp"

#include <lcms2.h>
#include <png.h>
#include <tiffio.h>
#include <webp/encode.h>
#include <webp/mux.h>
//
#include <jpeglib.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cassert>
#include <cmath>
#include <cstring>
#include <memory>

namespace evencount::picture {
namespace {

/// A row in the file's own layout, 16 bits in the machine's order.
std::vector<std::uint8_t> row_bytes(const Numbers& numbers, int y) {
  std::vector<std::uint8_t> row;
  for (int x = 0; x < numbers.width; ++x)
    for (int channel = 0; channel < numbers.channels; ++channel) {
      const std::uint16_t value = numbers.at(x, y, channel);
      std::uint8_t bytes[2];
      std::memcpy(bytes, &value, 2);
      if (numbers.bits == 16)
        row.insert(row.end(), bytes, bytes + 2);
      else
        row.push_back(static_cast<std::uint8_t>(value));
    }
  return row;
}

void append(png_structp png, png_bytep data, std::size_t size) {
  static_cast<std::string*>(png_get_io_ptr(png))->append(reinterpret_cast<const char*>(data), size);
}

struct PngWriter {
  explicit PngWriter(std::string& file) {
    png_set_write_fn(png, &file, append, nullptr);
    png_set_user_limits(png, PNG_UINT_31_MAX, PNG_UINT_31_MAX);
  }
  PngWriter(const PngWriter&) = delete;
  PngWriter& operator=(const PngWriter&) = delete;
  ~PngWriter() { png_destroy_write_struct(&png, &info); }
  png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, nullptr, nullptr);
  png_infop info = png_create_info_struct(png);
};

void set_exif(PngWriter& writer, int orientation) {
  std::string exif = exif_block(orientation, true);
  png_set_eXIf_1(writer.png, writer.info, static_cast<png_uint_32>(exif.size()),
                 reinterpret_cast<png_bytep>(exif.data()));
}

}  // namespace

Numbers random_numbers(std::mt19937& random, int width, int height, int channels, int bits) {
  Numbers numbers{width, height, channels, bits, {}};
  for (int i = 0; i < width * height * channels; ++i)
    numbers.values.push_back(static_cast<std::uint16_t>(bits == 8 ? random() % 256 : random() % 65536));
  return numbers;
}

std::string png_file(const Numbers& numbers, const PngWriting& writing) {
  std::string file;
  PngWriter writer(file);
  const int kinds[] = {0, PNG_COLOR_TYPE_GRAY, PNG_COLOR_TYPE_GRAY_ALPHA, PNG_COLOR_TYPE_RGB,
                       PNG_COLOR_TYPE_RGB_ALPHA};
  png_set_IHDR(writer.png, writer.info, static_cast<png_uint_32>(numbers.width),
               static_cast<png_uint_32>(numbers.height), numbers.bits, kinds[numbers.channels],
               writing.interlaced ? PNG_INTERLACE_ADAM7 : PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT,
               PNG_FILTER_TYPE_DEFAULT);
  if (writing.says_srgb) png_set_sRGB(writer.png, writer.info, PNG_sRGB_INTENT_PERCEPTUAL);
  if (writing.file_gamma) png_set_gAMA(writer.png, writer.info, *writing.file_gamma);
  if (writing.wide_primaries)
    png_set_cHRM(writer.png, writer.info, 0.3127, 0.3290, 0.708, 0.292, 0.170, 0.797, 0.131, 0.046);
  if (!writing.profile.empty())
    png_set_iCCP(writer.png, writer.info, "profile", PNG_COMPRESSION_TYPE_BASE,
                 reinterpret_cast<png_const_bytep>(writing.profile.data()),
                 static_cast<png_uint_32>(writing.profile.size()));
  if (writing.clear_grey >= 0) {
    png_color_16 clear{};
    clear.gray = clear.red = static_cast<png_uint_16>(writing.clear_grey);
    png_set_tRNS(writer.png, writer.info, nullptr, 0, &clear);
  }
  std::string text(writing.text_length, 'a'), key = "Comment";
  png_text chunk{};
  chunk.compression = PNG_TEXT_COMPRESSION_zTXt, chunk.key = key.data(), chunk.text = text.data();
  chunk.text_length = text.size();
  if (writing.text_length > 0) png_set_text(writer.png, writer.info, &chunk, 1);
  if (writing.orientation != 0 && !writing.orientation_last) set_exif(writer, writing.orientation);
  png_write_info(writer.png, writer.info);
  if (std::endian::native == std::endian::little) png_set_swap(writer.png);
  std::vector<std::vector<std::uint8_t>> rows;
  std::vector<png_bytep> starts;
  for (int y = 0; y < numbers.height; ++y) rows.push_back(row_bytes(numbers, y));
  for (auto& row : rows) starts.push_back(row.data());
  png_write_image(writer.png, starts.data());
  if (writing.orientation != 0 && writing.orientation_last) {
    const std::string exif = exif_block(writing.orientation, true);
    png_write_chunk(writer.png, reinterpret_cast<png_const_bytep>("eXIf"),
                    reinterpret_cast<png_const_bytep>(exif.data()), exif.size());
  }
  png_write_end(writer.png, nullptr);
  return file;
}

std::string png_palette_file(const Numbers& indices, int bits,
                             const std::vector<std::array<std::uint8_t, 4>>& colours) {
  std::string file;
  PngWriter writer(file);
  png_set_IHDR(writer.png, writer.info, static_cast<png_uint_32>(indices.width),
               static_cast<png_uint_32>(indices.height), bits, PNG_COLOR_TYPE_PALETTE, PNG_INTERLACE_NONE,
               PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  std::vector<png_color> palette;
  std::vector<png_byte> alpha;
  for (const auto& colour : colours)
    palette.push_back({colour[0], colour[1], colour[2]}), alpha.push_back(colour[3]);
  png_set_PLTE(writer.png, writer.info, palette.data(), static_cast<int>(palette.size()));
  png_set_tRNS(writer.png, writer.info, alpha.data(), static_cast<int>(alpha.size()), nullptr);
  png_write_info(writer.png, writer.info);
  png_set_packing(writer.png);
  for (int y = 0; y < indices.height; ++y) png_write_row(writer.png, row_bytes(indices, y).data());
  png_write_end(writer.png, nullptr);
  return file;
}

std::string png_header(std::uint32_t width, std::uint32_t height) {
  std::string file;
  PngWriter writer(file);
  png_set_IHDR(writer.png, writer.info, width, height, 8, PNG_COLOR_TYPE_RGB_ALPHA, PNG_INTERLACE_NONE,
               PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  png_write_info(writer.png, writer.info);
  png_write_chunk(writer.png, reinterpret_cast<png_const_bytep>("IDAT"),
                  reinterpret_cast<png_const_bytep>("x\234"), 2);
  return file;
}

std::string jpeg_file(const Numbers& numbers, const JpegWriting& writing) {
  jpeg_compress_struct file{};
  jpeg_error_mgr errors{};
  file.err = jpeg_std_error(&errors);
  jpeg_create_compress(&file);
  unsigned char* bytes = nullptr;
  unsigned long size = 0;
  jpeg_mem_dest(&file, &bytes, &size);
  file.image_width = static_cast<JDIMENSION>(numbers.width),
  file.image_height = static_cast<JDIMENSION>(numbers.height);
  file.input_components = numbers.channels;
  file.in_color_space = numbers.channels == 1 ? JCS_GRAYSCALE : numbers.channels == 3 ? JCS_RGB : JCS_CMYK;
  jpeg_set_defaults(&file);
  jpeg_set_quality(&file, writing.quality, TRUE);
  if (!writing.thin_colour)
    for (int i = 0; i < file.num_components; ++i)
      file.comp_info[i].h_samp_factor = file.comp_info[i].v_samp_factor = 1;
  if (writing.progressive) jpeg_simple_progression(&file);
  const jpeg_scan_info scans[] = {{1, {0}, 0, 0, 0, 0}, {1, {0}, 1, 63, 0, 0}};
  if (writing.in_two_scans) file.scan_info = scans, file.num_scans = 2;
  if (numbers.channels == 4) file.write_Adobe_marker = writing.adobe ? TRUE : FALSE;
  jpeg_start_compress(&file, TRUE);
  if (writing.orientation != 0) {
    const std::string exif = std::string("Exif\0\0", 6) + exif_block(writing.orientation, false);
    jpeg_write_marker(&file, JPEG_APP0 + 1, reinterpret_cast<const JOCTET*>(exif.data()),
                      static_cast<unsigned>(exif.size()));
  }
  if (!writing.profile.empty())
    jpeg_write_icc_profile(&file, reinterpret_cast<const JOCTET*>(writing.profile.data()),
                           static_cast<unsigned>(writing.profile.size()));
  for (int y = 0; y < numbers.height; ++y) {
    auto row = row_bytes(numbers, y);
    if (numbers.channels == 4 && writing.adobe)
      for (auto& number : row) number = static_cast<std::uint8_t>(255 - number);
    JSAMPROW start = row.data();
    jpeg_write_scanlines(&file, &start, 1);
  }
  jpeg_finish_compress(&file);
  std::string text(reinterpret_cast<const char*>(bytes), size);
  jpeg_destroy_compress(&file);
  std::free(bytes);
  return text;
}

namespace {

std::string webp_pixels(const Numbers& numbers, bool lossless) {
  std::vector<std::uint8_t> pixels;
  for (int y = 0; y < numbers.height; ++y)
    for (const std::uint8_t byte : row_bytes(numbers, y)) pixels.push_back(byte);
  WebPConfig config;
  WebPPicture picture;
  WebPConfigInit(&config);
  WebPPictureInit(&picture);
  config.lossless = lossless ? 1 : 0;
  config.exact = 1;  // keep the colours of clear pixels
  config.quality = 100;
  picture.use_argb = 1;
  picture.width = numbers.width, picture.height = numbers.height;
  WebPMemoryWriter writer;
  WebPMemoryWriterInit(&writer);
  picture.writer = WebPMemoryWrite;
  picture.custom_ptr = &writer;
  if (numbers.channels == 4)
    WebPPictureImportRGBA(&picture, pixels.data(), 4 * numbers.width);
  else
    WebPPictureImportRGB(&picture, pixels.data(), 3 * numbers.width);
  WebPEncode(&config, &picture);
  std::string file(reinterpret_cast<const char*>(writer.mem), writer.size);
  WebPMemoryWriterClear(&writer);
  WebPPictureFree(&picture);
  return file;
}

WebPData data_of(const std::string& text) {
  return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()};
}

std::string assembled(WebPMux* mux) {
  WebPData all;
  WebPMuxAssemble(mux, &all);
  std::string file(reinterpret_cast<const char*>(all.bytes), all.size);
  WebPDataClear(&all);
  WebPMuxDelete(mux);
  return file;
}

}  // namespace

std::string webp_file(const Numbers& numbers, const WebpWriting& writing) {
  const std::string pixels = webp_pixels(numbers, writing.lossless);
  if (writing.profile.empty() && writing.orientation == 0) return pixels;
  const WebPData data = data_of(pixels);
  WebPMux* mux = WebPMuxCreate(&data, 1);
  const std::string exif = exif_block(writing.orientation, true);
  const WebPData profile_data = data_of(writing.profile), exif_data = data_of(exif);
  if (!writing.profile.empty()) WebPMuxSetChunk(mux, "ICCP", &profile_data, 1);
  if (writing.orientation != 0) WebPMuxSetChunk(mux, "EXIF", &exif_data, 1);
  return assembled(mux);
}

std::string webp_animation(const Numbers& numbers) {
  const std::string pixels = webp_pixels(numbers, true);
  WebPMux* mux = WebPMuxNew();
  WebPMuxFrameInfo frame{};
  frame.id = WEBP_CHUNK_ANMF;
  frame.bitstream = data_of(pixels);
  frame.duration = 100;
  const WebPMuxAnimParams animation{0xFFFFFFFF, 0};
  WebPMuxSetAnimationParams(mux, &animation);
  for (int i = 0; i < 2; ++i) WebPMuxPushFrame(mux, &frame, 1);
  return assembled(mux);
}

namespace {

struct TiffFile {
  std::string bytes;
  std::uint64_t at = 0;
};

tmsize_t read_tiff(thandle_t handle, void* to, tmsize_t count) {
  auto* file = static_cast<TiffFile*>(handle);
  const auto some =
      std::min<std::size_t>(static_cast<std::size_t>(count),
                            file->bytes.size() - std::min<std::size_t>(file->at, file->bytes.size()));
  std::memcpy(to, file->bytes.data() + file->at, some);
  file->at += some;
  return static_cast<tmsize_t>(some);
}

tmsize_t write_tiff(thandle_t handle, void* from, tmsize_t count) {
  auto* file = static_cast<TiffFile*>(handle);
  const auto end = static_cast<std::size_t>(file->at) + static_cast<std::size_t>(count);
  if (file->bytes.size() < end) file->bytes.resize(end);
  std::memcpy(file->bytes.data() + file->at, from, static_cast<std::size_t>(count));
  file->at = end;
  return count;
}

toff_t seek_tiff(thandle_t handle, toff_t to, int from) {
  auto* file = static_cast<TiffFile*>(handle);
  return file->at = from == SEEK_CUR ? file->at + to : from == SEEK_END ? file->bytes.size() + to : to;
}

TIFF* open_tiff(TiffFile& file, const char* mode) {
  return TIFFClientOpen(
      "made", mode, &file, read_tiff, write_tiff, seek_tiff, [](thandle_t) { return 0; },
      [](thandle_t handle) { return static_cast<toff_t>(static_cast<TiffFile*>(handle)->bytes.size()); },
      nullptr, nullptr);
}

void set_size(TIFF* tiff, int width, int height, int bits, int samples, int photometric) {
  TIFFSetField(tiff, TIFFTAG_IMAGEWIDTH, width);
  TIFFSetField(tiff, TIFFTAG_IMAGELENGTH, height);
  TIFFSetField(tiff, TIFFTAG_BITSPERSAMPLE, bits);
  TIFFSetField(tiff, TIFFTAG_SAMPLESPERPIXEL, samples);
  TIFFSetField(tiff, TIFFTAG_PHOTOMETRIC, photometric);
}

int photometric_of(const Numbers& numbers, const TiffWriting& writing) {
  if (writing.inks) return PHOTOMETRIC_SEPARATED;
  if (numbers.channels >= 3) return PHOTOMETRIC_RGB;
  return writing.white_is_lowest ? PHOTOMETRIC_MINISWHITE : PHOTOMETRIC_MINISBLACK;
}

void write_blocks(TIFF* tiff, const Numbers& numbers, const TiffWriting& writing) {
  const int block_width = writing.tiled ? 16 : numbers.width;
  const int block_height = writing.tiled ? 32 : writing.rows_a_strip;
  const int planes = writing.planes ? numbers.channels : 1;
  for (int plane = 0; plane < planes; ++plane)
    for (int top = 0; top < numbers.height; top += block_height)
      for (int left = 0; left < numbers.width; left += block_width) {
        Numbers block{block_width,
                      writing.tiled ? block_height : std::min(block_height, numbers.height - top),
                      writing.planes ? 1 : numbers.channels,
                      numbers.bits,
                      {}};
        for (int y = 0; y < block.height; ++y)
          for (int x = 0; x < block.width; ++x)
            for (int channel = 0; channel < block.channels; ++channel)
              block.values.push_back(numbers.at(std::min(left + x, numbers.width - 1),
                                                std::min(top + y, numbers.height - 1),
                                                writing.planes ? plane : channel));
        std::vector<std::uint8_t> bytes;
        for (int y = 0; y < block.height; ++y)
          for (const std::uint8_t byte : row_bytes(block, y)) bytes.push_back(byte);
        const auto x = static_cast<std::uint32_t>(left), y = static_cast<std::uint32_t>(top);
        const auto sample = static_cast<std::uint16_t>(plane);
        if (writing.tiled)
          TIFFWriteEncodedTile(tiff, TIFFComputeTile(tiff, x, y, 0, sample), bytes.data(),
                               static_cast<tmsize_t>(bytes.size()));
        else
          TIFFWriteEncodedStrip(tiff, TIFFComputeStrip(tiff, y, sample), bytes.data(),
                                static_cast<tmsize_t>(bytes.size()));
      }
}

}  // namespace

std::string tiff_file(const Numbers& numbers, const TiffWriting& writing) {
  TiffFile file;
  const std::string mode = std::string("w") + (writing.big_end_first ? "b" : "l") + (writing.big ? "8" : "4");
  TIFF* tiff = open_tiff(file, mode.c_str());
  set_size(tiff, numbers.width, numbers.height, numbers.bits, numbers.channels,
           photometric_of(numbers, writing));
  if (numbers.channels == 2 || (numbers.channels == 4 && !writing.inks) || numbers.channels == 5) {
    const std::uint16_t kind = writing.associated ? EXTRASAMPLE_ASSOCALPHA : EXTRASAMPLE_UNASSALPHA;
    TIFFSetField(tiff, TIFFTAG_EXTRASAMPLES, 1, &kind);
  }
  TIFFSetField(tiff, TIFFTAG_PLANARCONFIG, writing.planes ? PLANARCONFIG_SEPARATE : PLANARCONFIG_CONTIG);
  TIFFSetField(tiff, TIFFTAG_COMPRESSION, writing.compression);
  if (writing.thumbnail) TIFFSetField(tiff, TIFFTAG_SUBFILETYPE, FILETYPE_REDUCEDIMAGE);
  if (writing.orientation != 0) TIFFSetField(tiff, TIFFTAG_ORIENTATION, writing.orientation);
  if (!writing.profile.empty())
    TIFFSetField(tiff, TIFFTAG_ICCPROFILE, static_cast<std::uint32_t>(writing.profile.size()),
                 writing.profile.data());
  if (writing.tiled) {
    TIFFSetField(tiff, TIFFTAG_TILEWIDTH, 16);
    TIFFSetField(tiff, TIFFTAG_TILELENGTH, 32);
  } else {
    TIFFSetField(tiff, TIFFTAG_ROWSPERSTRIP, writing.rows_a_strip);
  }
  if (writing.compression == COMPRESSION_JPEG && numbers.channels == 3) {
    TIFFSetField(tiff, TIFFTAG_PHOTOMETRIC, PHOTOMETRIC_YCBCR);
    TIFFSetField(tiff, TIFFTAG_JPEGCOLORMODE, JPEGCOLORMODE_RGB);
    TIFFSetField(tiff, TIFFTAG_JPEGQUALITY, 100);
  }
  write_blocks(tiff, numbers, writing);
  TIFFClose(tiff);
  return file.bytes;
}

std::string tiff_palette_file(const Numbers& indices, int bits,
                              const std::vector<std::array<std::uint16_t, 3>>& colours) {
  TiffFile file;
  TIFF* tiff = open_tiff(file, "wl");
  set_size(tiff, indices.width, indices.height, bits, 1, PHOTOMETRIC_PALETTE);
  std::array<std::vector<std::uint16_t>, 3> maps;
  for (std::size_t channel = 0; channel < 3; ++channel) {
    maps[channel].resize(std::size_t{1} << bits);
    for (std::size_t i = 0; i < colours.size(); ++i) maps[channel][i] = colours[i][channel];
  }
  TIFFSetField(tiff, TIFFTAG_COLORMAP, maps[0].data(), maps[1].data(), maps[2].data());
  TIFFSetField(tiff, TIFFTAG_ROWSPERSTRIP, indices.height);
  for (int y = 0; y < indices.height; ++y) {
    std::vector<std::uint8_t> row(static_cast<std::size_t>((indices.width * bits + 7) / 8));
    for (int x = 0; x < indices.width; ++x)
      row[static_cast<std::size_t>(x * bits / 8)] |=
          static_cast<std::uint8_t>(indices.at(x, y, 0) << (8 - bits - x * bits % 8));
    TIFFWriteScanline(tiff, row.data(), static_cast<std::uint32_t>(y), 0);
  }
  TIFFClose(tiff);
  return file.bytes;
}

std::string tiff_float_file(int width, int height) {
  TiffFile file;
  TIFF* tiff = open_tiff(file, "wl");
  set_size(tiff, width, height, 32, 1, PHOTOMETRIC_MINISBLACK);
  TIFFSetField(tiff, TIFFTAG_SAMPLEFORMAT, SAMPLEFORMAT_IEEEFP);
  std::vector<float> row(static_cast<std::size_t>(width), 0.5F);
  for (int y = 0; y < height; ++y) TIFFWriteScanline(tiff, row.data(), static_cast<std::uint32_t>(y), 0);
  TIFFClose(tiff);
  return file.bytes;
}

std::string tiff_header(std::uint32_t width, std::uint32_t height) {
  Numbers small{2, 2, 1, 8, {1, 2, 3, 4}};
  std::string file = tiff_file(small, {.rows_a_strip = 100'000});
  // Width and height are the tags 256 and 257: 12 bytes each, from the number of entries on, as 16 bits here; make them 32.
  std::uint32_t directory = 0;
  std::memcpy(&directory, file.data() + 4, 4);
  const std::uint16_t four_bytes = 4;
  for (std::size_t i = 0; i < 2; ++i) {
    std::memcpy(file.data() + directory + 2 + 12 * i + 2, &four_bytes, 2);
    std::memcpy(file.data() + directory + 2 + 12 * i + 8, i == 0 ? &width : &height, 4);
  }
  return file;
}

std::string exif_block(int orientation, bool big_end_first) {
  std::string block(big_end_first ? "MM" : "II");
  const auto put = [&](std::uint32_t value, int length) {
    for (int i = 0; i < length; ++i)
      block += static_cast<char>(value >> 8 * (big_end_first ? length - 1 - i : i) & 0xFF);
  };
  put(42, 2), put(8, 4), put(2, 2);
  put(271, 2), put(2, 2), put(4, 4), block += std::string("abc\0", 4);
  put(274, 2), put(3, 2), put(1, 4), put(static_cast<std::uint32_t>(orientation), 2), put(0, 2);
  put(0, 4);
  return block;
}

namespace {

std::string saved(cmsHPROFILE profile) {
  cmsUInt32Number size = 0;
  cmsSaveProfileToMem(profile, nullptr, &size);
  std::string bytes(size, '\0');
  cmsSaveProfileToMem(profile, bytes.data(), &size);
  cmsCloseProfile(profile);
  return bytes;
}

/// CIELAB of inks: each multiplies what the paper sends back.
int lab_of_inks(const cmsUInt16Number* inks, cmsUInt16Number* lab, void*) {
  const double paper[] = {0.85, 0.88, 0.80},
               solid[4][3] = {{0.15, 0.45, 0.85}, {0.75, 0.15, 0.35}, {0.85, 0.8, 0.1}, {0.06, 0.06, 0.06}};
  cmsCIEXYZ xyz{paper[0] * 0.9642, paper[1], paper[2] * 0.8249};
  double* parts[] = {&xyz.X, &xyz.Y, &xyz.Z};
  for (std::size_t ink = 0; ink < 4; ++ink)
    for (std::size_t part = 0; part < 3; ++part)
      *parts[part] *= 1 - inks[ink] / 65535.0 * (1 - solid[ink][part]);
  cmsCIELab colour;
  cmsXYZ2Lab(nullptr, &colour, &xyz);
  cmsFloat2LabEncoded(lab, &colour);
  return 1;
}

}  // namespace

std::string wide_profile() {
  cmsToneCurve* curve = cmsBuildGamma(nullptr, 1.8);
  cmsToneCurve* curves[] = {curve, curve, curve};
  const cmsCIExyY white{0.3127, 0.3290, 1};
  const cmsCIExyYTRIPLE primaries{{0.708, 0.292, 1}, {0.170, 0.797, 1}, {0.131, 0.046, 1}};
  cmsHPROFILE profile = cmsCreateRGBProfile(&white, &primaries, curves);
  cmsFreeToneCurve(curve);
  return saved(profile);
}

std::string srgb_profile() {
  return saved(cmsCreate_sRGBProfile());
}

std::string grey_profile(double exponent) {
  cmsToneCurve* curve = cmsBuildGamma(nullptr, exponent);
  cmsHPROFILE profile = cmsCreateGrayProfile(cmsD50_xyY(), curve);
  cmsFreeToneCurve(curve);
  return saved(profile);
}

namespace {

std::string table_profile(cmsColorSpaceSignature space, cmsUInt32Number channels, cmsUInt32Number grid,
                          cmsSAMPLER16 sampler) {
  cmsHPROFILE profile = cmsCreateProfilePlaceholder(nullptr);
  cmsSetProfileVersion(profile, 4.3);
  cmsSetDeviceClass(profile, cmsSigOutputClass);
  cmsSetColorSpace(profile, space);
  cmsSetPCS(profile, cmsSigLabData);
  cmsPipeline* pipeline = cmsPipelineAlloc(nullptr, channels, 3);
  cmsStage* table = cmsStageAllocCLut16bit(nullptr, grid, channels, 3, nullptr);
  cmsStageSampleCLut16bit(table, sampler, nullptr, 0);
  cmsPipelineInsertStage(pipeline, cmsAT_END, cmsStageAllocToneCurves(nullptr, channels, nullptr));
  cmsPipelineInsertStage(pipeline, cmsAT_END, table);
  cmsPipelineInsertStage(pipeline, cmsAT_END, cmsStageAllocToneCurves(nullptr, 3, nullptr));
  cmsWriteTag(profile, cmsSigAToB0Tag, pipeline);
  cmsWriteTag(profile, cmsSigMediaWhitePointTag, cmsD50_XYZ());
  cmsPipelineFree(pipeline);
  return saved(profile);
}

/// Red, green and blue as the lack of three inks.
int lab_of_lacking_inks(const cmsUInt16Number* colours, cmsUInt16Number* lab, void* nothing) {
  const auto lack = [&](int i) { return static_cast<cmsUInt16Number>(65535 - colours[i]); };
  const cmsUInt16Number inks[] = {lack(0), lack(1), lack(2), 0};
  return lab_of_inks(inks, lab, nothing);
}

}  // namespace

std::string ink_profile() {
  return table_profile(cmsSigCmykData, 4, 11, lab_of_inks);
}

std::string rgb_table_profile() {
  return table_profile(cmsSigRgbData, 3, 11, lab_of_lacking_inks);
}

std::array<double, 3> lab_by_lcms(const std::string& profile, const std::vector<double>& shares) {
  cmsHPROFILE from = cmsOpenProfileFromMem(profile.data(), static_cast<cmsUInt32Number>(profile.size()));
  cmsHPROFILE lab = cmsCreateLab4Profile(nullptr);
  const cmsUInt32Number kind = shares.size() == 1   ? TYPE_GRAY_DBL
                               : shares.size() == 3 ? TYPE_RGB_DBL
                                                    : TYPE_CMYK_DBL;
  cmsHTRANSFORM transform =
      cmsCreateTransform(from, kind, lab, TYPE_Lab_DBL, INTENT_RELATIVE_COLORIMETRIC,
                         cmsFLAGS_BLACKPOINTCOMPENSATION | cmsFLAGS_NOOPTIMIZE | cmsFLAGS_NOCACHE);
  std::vector<double> numbers = shares;
  if (shares.size() == 4)
    for (double& number : numbers) number *= 100;  // per cent of ink
  std::array<double, 3> colour{};
  cmsDoTransform(transform, numbers.data(), colour.data(), 1);
  cmsDeleteTransform(transform);
  cmsCloseProfile(lab);
  cmsCloseProfile(from);
  return colour;
}

}  // namespace evencount::picture
