#include <png.h>

#include <bit>
#include <csetjmp>
#include <cstring>
#include <vector>

#include "picture/decoders.hpp"

namespace evencount::picture {
namespace {

constexpr std::string_view format = "PNG";

/// What is read of a file, and where in it libpng is. All that needs freeing while libpng may jump lives here.
struct Png {
  explicit Png(std::string_view all) : bytes(all) {}
  Png(const Png&) = delete;
  Png& operator=(const Png&) = delete;
  ~Png() { png_destroy_read_struct(&png, &info, &end); }

  std::string_view bytes;
  std::size_t at = 0;
  char message[100] = "no memory";
  png_structp png = nullptr;
  png_infop info = nullptr, end = nullptr;

  png_uint_32 width = 0, height = 0;
  Samples samples;
  std::size_t row_length = 0;
  int passes = 1;
  png_bytep profile = nullptr;
  png_uint_32 profile_length = 0;
  bool says_gamma = false;
  GammaAndPrimaries gamma;
  png_bytep exif = nullptr;
  png_uint_32 exif_length = 0;
};

void on_error(png_structp png, png_const_charp message) {
  auto* state = static_cast<Png*>(png_get_error_ptr(png));
  std::strncpy(state->message, message, sizeof state->message - 1);
  png_longjmp(png, 1);
}

void on_warning(png_structp, png_const_charp) {}

void read_bytes(png_structp png, png_bytep to, std::size_t count) {
  auto* state = static_cast<Png*>(png_get_io_ptr(png));
  if (count > state->bytes.size() - state->at) png_error(png, "it ends early");
  std::memcpy(to, state->bytes.data() + state->at, count);
  state->at += count;
}

/// iCCP goes before sRGB, and that before gAMA and cHRM (PNG 1.2, section 4.2).
void read_colour_tags(Png& state) {
  png_charp name = nullptr;
  int compression = 0;
  if (png_get_iCCP(state.png, state.info, &name, &compression, &state.profile, &state.profile_length) != 0)
    return;
  if (png_get_valid(state.png, state.info, PNG_INFO_sRGB) != 0) return;
  double file_gamma = 0;
  GammaAndPrimaries& gamma = state.gamma;
  if (png_get_gAMA(state.png, state.info, &file_gamma) == 0 || !(file_gamma > 0.01 && file_gamma < 100))
    return;
  gamma.exponent = 1 / file_gamma;
  const bool own_primaries =
      png_get_cHRM(state.png, state.info, &gamma.white[0], &gamma.white[1], &gamma.red[0], &gamma.red[1],
                   &gamma.green[0], &gamma.green[1], &gamma.blue[0], &gamma.blue[1]) != 0;
  const GammaAndPrimaries srgb;
  const auto near = [](const std::array<double, 2>& a, const std::array<double, 2>& b) {
    return std::abs(a[0] - b[0]) < 0.002 && std::abs(a[1] - b[1]) < 0.002;  // as written with three digits
  };
  const bool srgb_primaries =
      !own_primaries || (near(gamma.white, srgb.white) && near(gamma.red, srgb.red) &&
                         near(gamma.green, srgb.green) && near(gamma.blue, srgb.blue));
  // Writers of sRGB say 1 / 2.2, the nearest exponent to its curve (PNG 1.2, section 11.3.3.5).
  const bool srgb_curve = std::abs(file_gamma - 1 / 2.2) < 0.005;
  state.says_gamma = !(srgb_primaries && srgb_curve);
}

bool read_header(Png& state) {
  state.png = png_create_read_struct(PNG_LIBPNG_VER_STRING, &state, on_error, on_warning);
  if (state.png == nullptr) return false;
  if (setjmp(png_jmpbuf(state.png)) != 0) return false;
  state.info = png_create_info_struct(state.png);
  state.end = png_create_info_struct(state.png);
  if (state.info == nullptr || state.end == nullptr) return false;
  png_set_read_fn(state.png, &state, read_bytes);
  png_set_user_limits(state.png, PNG_UINT_31_MAX,
                      PNG_UINT_31_MAX);  // ours are checked by check_size, which says them
  png_set_chunk_malloc_max(state.png, largest_profile);
  // Texts and palettes for other purposes may unpack to a thousand times their size, each of many; none is wanted.
  constexpr png_byte unwanted[] = "tEXt\0zTXt\0iTXt\0sPLT\0hIST\0pCAL\0sCAL";
  png_set_keep_unknown_chunks(state.png, PNG_HANDLE_CHUNK_NEVER, unwanted, sizeof unwanted / 5);
  png_read_info(state.png, state.info);
  state.width = png_get_image_width(state.png, state.info);
  state.height = png_get_image_height(state.png, state.info);
  read_colour_tags(state);
  return true;
}

/// Asks for rows of 8 or 16 bits, palettes as their colours, clear colours as alpha.
bool begin_rows(Png& state) {
  if (setjmp(png_jmpbuf(state.png)) != 0) return false;
  png_set_expand(state.png);
  if (std::endian::native == std::endian::little) png_set_swap(state.png);
  state.passes = png_set_interlace_handling(state.png);
  png_read_update_info(state.png, state.info);
  const int channels = png_get_channels(state.png, state.info);
  state.samples.colours = channels >= 3 ? 3 : 1;
  state.samples.alpha = channels == 2 || channels == 4;
  state.samples.bits = png_get_bit_depth(state.png, state.info);
  state.row_length = png_get_rowbytes(state.png, state.info);
  return true;
}

bool read_rows(Png& state, std::uint8_t* rows) {
  if (setjmp(png_jmpbuf(state.png)) != 0) return false;
  for (int pass = 0; pass < state.passes; ++pass)
    for (png_uint_32 y = 0; y < state.height; ++y)
      png_read_row(state.png, rows + y * state.row_length, nullptr);
  png_read_end(state.png, state.end);
  if (png_get_eXIf_1(state.png, state.info, &state.exif_length, &state.exif) == 0 &&
      png_get_eXIf_1(state.png, state.end, &state.exif_length, &state.exif) == 0)
    state.exif_length = 0;
  return true;
}

}  // namespace

Result<Image> decode_png(std::string_view bytes, const DecodeLimits& limits) {
  Png png(bytes);
  if (!read_header(png)) return damaged(format, png.message);
  if (auto problem = check_size(format, png.width, png.height, limits)) return *problem;
  if (!begin_rows(png)) return damaged(format, png.message);
  // The orientation may stand behind the pixels, so they are kept until the end is read.
  std::vector<std::uint8_t> rows(png.row_length * png.height);
  if (!read_rows(png, rows.data())) return damaged(format, png.message);

  ColourTags tags{.profile = as_bytes(png.profile, png.profile_length)};
  if (png.says_gamma) tags.gamma = png.gamma;
  ImageRows image(static_cast<int>(png.width), static_cast<int>(png.height),
                  exif_orientation(as_bytes(png.exif, png.exif_length)), RowsToLight(png.samples, tags));
  for (int y = 0; y < static_cast<int>(png.height); ++y)
    image.put_row(y, rows.data() + static_cast<std::size_t>(y) * png.row_length);
  return std::move(image).take();
}

}  // namespace evencount::picture
