#include <lcms2.h>  // brings the FILE that jpeglib.h names; nothing here opens one
//
#include <jerror.h>
#include <jpeglib.h>

#include <csetjmp>
#include <cstdlib>
#include <cstring>
#include <vector>

#include "picture/decoders.hpp"

namespace evencount::picture {
namespace {

constexpr std::string_view format = "JPEG";

/// Every scan goes over all pixels, so a small file of many scans would take for ever. Cameras and editors write about ten (from
/// memory).
constexpr int most_scans = 200;

struct Jpeg {
  explicit Jpeg(std::string_view all) : bytes(all) {}
  Jpeg(const Jpeg&) = delete;
  Jpeg& operator=(const Jpeg&) = delete;
  ~Jpeg() {
    if (made) jpeg_destroy_decompress(&file);
    std::free(profile);
  }

  std::string_view bytes;
  bool made = false;
  jpeg_decompress_struct file{};
  jpeg_error_mgr errors{};
  jpeg_progress_mgr progress{};
  std::jmp_buf out{};
  char message[JMSG_LENGTH_MAX] = "";

  JOCTET* profile = nullptr;
  unsigned profile_length = 0;
  std::string_view exif;
  std::vector<std::uint8_t> row;
};

[[noreturn]] void give_up(j_common_ptr file) {
  auto* jpeg = static_cast<Jpeg*>(file->client_data);
  file->err->format_message(file, jpeg->message);
  std::longjmp(jpeg->out, 1);
}

/// Warnings that leave the picture whole; after any other libjpeg goes on with made-up pixels.
bool is_harmless(int warning) {
  return warning == JWRN_EXTRANEOUS_DATA || warning == JWRN_ADOBE_XFORM || warning == JWRN_JFIF_MAJOR ||
         warning == JWRN_BOGUS_ICC || warning == JWRN_NOT_SEQUENTIAL;
}

void on_message(j_common_ptr file, int level) {
  if (level < 0 && !is_harmless(file->err->msg_code)) give_up(file);
}

void print_nothing(j_common_ptr) {}

void count_scans(j_common_ptr file) {
  if (reinterpret_cast<j_decompress_ptr>(file)->input_scan_number <= most_scans) return;
  auto* jpeg = static_cast<Jpeg*>(file->client_data);
  std::strcpy(jpeg->message, "endless scans");
  std::longjmp(jpeg->out, 1);
}

bool read_header(Jpeg& jpeg) {
  jpeg_decompress_struct& file = jpeg.file;
  file.err = jpeg_std_error(&jpeg.errors);
  jpeg.errors.error_exit = give_up;
  jpeg.errors.emit_message = on_message;
  jpeg.errors.output_message = print_nothing;
  file.client_data = &jpeg;
  if (setjmp(jpeg.out) != 0) return false;
  jpeg_create_decompress(&file);
  jpeg.made = true;
  jpeg.progress.progress_monitor = count_scans;
  file.progress = &jpeg.progress;
  jpeg_mem_src(&file, reinterpret_cast<const unsigned char*>(jpeg.bytes.data()), jpeg.bytes.size());
  constexpr unsigned whole_marker = 0xFFFF;
  jpeg_save_markers(&file, JPEG_APP0 + 1, whole_marker);  // EXIF
  jpeg_save_markers(&file, JPEG_APP0 + 2, whole_marker);  // colour profile
  jpeg_read_header(&file, TRUE);
  for (jpeg_saved_marker_ptr marker = file.marker_list; marker != nullptr && jpeg.exif.empty();
       marker = marker->next)
    if (const auto data = as_bytes(marker->data, marker->data_length);
        marker->marker == JPEG_APP0 + 1 && data.starts_with("Exif"))
      jpeg.exif = data;
  if (jpeg_read_icc_profile(&file, &jpeg.profile, &jpeg.profile_length) == FALSE) jpeg.profile_length = 0;
  return true;
}

/// Grey, red green blue, or inks; and room for libjpeg's own copy of a progressive picture but no more.
bool begin_rows(Jpeg& jpeg, long most_memory) {
  if (setjmp(jpeg.out) != 0) return false;
  jpeg_decompress_struct& file = jpeg.file;
  file.mem->max_memory_to_use = most_memory;
  file.out_color_space = file.num_components == 1   ? JCS_GRAYSCALE
                         : file.num_components == 4 ? JCS_CMYK
                                                    : JCS_RGB;
  jpeg_start_decompress(&file);
  return true;
}

bool read_rows(Jpeg& jpeg, ImageRows& image) {
  if (setjmp(jpeg.out) != 0) return false;
  jpeg_decompress_struct& file = jpeg.file;
  // Files with this marker have their inks upside down: common practice, no source.
  const bool upside_down = file.num_components == 4 && file.saw_Adobe_marker != FALSE;
  JSAMPROW row = jpeg.row.data();
  while (file.output_scanline < file.output_height) {
    const int y = static_cast<int>(file.output_scanline);
    jpeg_read_scanlines(&file, &row, 1);
    if (upside_down)
      for (std::uint8_t& number : jpeg.row) number = static_cast<std::uint8_t>(255 - number);
    image.put_row(y, jpeg.row.data());
  }
  jpeg_finish_decompress(&file);
  return true;
}

}  // namespace

Result<Image> decode_jpeg(std::string_view bytes, const DecodeLimits& limits) {
  Jpeg jpeg(bytes);
  if (!read_header(jpeg)) return damaged(format, jpeg.message);
  const jpeg_decompress_struct& file = jpeg.file;
  if (auto problem = check_size(format, file.image_width, file.image_height, limits)) return *problem;
  const int channels = file.num_components;
  if (channels != 1 && channels != 3 && channels != 4)
    return unreadable_kind(format, std::to_string(channels) + " numbers a pixel",
                           "grey, red green blue, or four inks");
  // A progressive picture is kept as coefficients of two bytes, in blocks of up to 32 a side.
  const long padded_pixels =
      (long{static_cast<int>(file.image_width)} + 32) * (long{static_cast<int>(file.image_height)} + 32);
  if (!begin_rows(jpeg, 2 * channels * padded_pixels + (16L << 20))) return damaged(format, jpeg.message);

  const Samples samples{.colours = channels, .bits = 8};
  ImageRows image(static_cast<int>(file.image_width), static_cast<int>(file.image_height),
                  exif_orientation(jpeg.exif),
                  RowsToLight(samples, {.profile = as_bytes(jpeg.profile, jpeg.profile_length)}));
  jpeg.row.resize(samples.bytes_a_pixel() * file.image_width);
  if (!read_rows(jpeg, image)) return damaged(format, jpeg.message);
  return std::move(image).take();
}

}  // namespace evencount::picture
