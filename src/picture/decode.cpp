#include "picture/decode.hpp"

#include <fmt/format.h>

#include <array>
#include <new>

#include "base/text.hpp"
#include "picture/decoders.hpp"

namespace evencount::picture {
namespace {

using namespace std::string_view_literals;

constexpr std::string_view accepted = "a PNG, JPEG, WebP or TIFF file";

/// How a format begins: `mark` stands at `at`.
struct Mark {
  std::size_t at;
  std::string_view mark;
  std::string_view name;
};

// The first bytes of formats, from memory.
constexpr std::array others{
    Mark{0, "GIF87a"sv, "a GIF file"},
    Mark{0, "GIF89a"sv, "a GIF file"},
    Mark{0, "BM"sv, "a BMP file"},
    Mark{0, "%PDF"sv, "a PDF file"},
    Mark{4, "ftypavif"sv, "an AVIF file"},
    Mark{4, "ftypheic"sv, "an HEIC file"},
    Mark{4, "ftypheix"sv, "an HEIC file"},
    Mark{4, "ftypmif1"sv, "an HEIF file"},
    Mark{4, "ftyp"sv, "a film"},
    Mark{0, "8BPS"sv, "a layered picture (PSD)"},
    Mark{0, "\0\0\0\x0CjP  "sv, "a JPEG 2000 file"},
    Mark{0, "\xFF\x4F\xFF\x51"sv, "a JPEG 2000 file"},
    Mark{0, "\xFF\x0A"sv, "a JPEG XL file"},
    Mark{0, "\0\0\0\x0CJXL "sv, "a JPEG XL file"},
    Mark{0, "\0\0\1\0"sv, "an icon"},
    Mark{0, "PK\3\4"sv, "a ZIP archive"},
};

bool has(std::string_view bytes, const Mark& mark) {
  return bytes.substr(std::min(mark.at, bytes.size())).starts_with(mark.mark);
}

/// What a file that isn't accepted seems to be.
std::string name_of(std::string_view bytes) {
  if (bytes.empty()) return "an empty file";
  for (const Mark& other : others)
    if (has(bytes, other)) return std::string(other.name);
  const std::string_view head = trim(bytes.substr(0, 4096));
  const bool marked_up = head.starts_with('<') || head.starts_with("\xEF\xBB\xBF<");
  if (marked_up && head.find("<svg") != std::string_view::npos) return "an SVG file";
  if (marked_up) return "a text with tags (XML or HTML)";
  return fmt::format("a file that begins with {}", quote(bytes.substr(0, 12)));
}

Result<Image> decode_known(std::string_view bytes, const DecodeLimits& limits) {
  if (bytes.starts_with("\x89PNG\r\n\x1A\n"sv)) return decode_png(bytes, limits);
  if (bytes.starts_with("\xFF\xD8\xFF"sv)) return decode_jpeg(bytes, limits);
  if (bytes.starts_with("RIFF"sv) && has(bytes, {8, "WEBP"sv, {}})) return decode_webp(bytes, limits);
  for (const std::string_view mark : {"II*\0"sv, "MM\0*"sv, "II+\0"sv, "MM\0+"sv})
    if (bytes.starts_with(mark)) return decode_tiff(bytes, limits);
  return Problem{ProblemCode::bad_picture, "picture", name_of(bytes), std::string(accepted)};
}

}  // namespace

Result<Image> decode(std::string_view bytes, const DecodeLimits& limits) {
  try {
    return decode_known(bytes, limits);
  } catch (const std::bad_alloc&) {
    return Problem{ProblemCode::system_failure, "picture", "not enough memory for its pixels", ""};
  }
}

std::optional<Problem> check_size(std::string_view format, std::uint64_t width, std::uint64_t height,
                                  const DecodeLimits& limits) {
  const auto side = static_cast<std::uint64_t>(limits.most_side),
             pixels = static_cast<std::uint64_t>(limits.most_pixels);
  if (width == 0 || height == 0) return damaged(format, fmt::format("{} by {} pixels", width, height));
  if (width <= side && height <= side && width * height <= pixels) return std::nullopt;
  return Problem{ProblemCode::out_of_range, std::string(format),
                 fmt::format("{} by {} pixels", width, height),
                 fmt::format("at most {} pixels, and {} a side", pixels, side)};
}

Problem damaged(std::string_view format, std::string_view how) {
  return {ProblemCode::bad_picture, std::string(format),
          fmt::format("a damaged file, or only a part of one ({})", how), "a whole file"};
}

Problem unreadable_kind(std::string_view format, std::string_view found, std::string_view expected) {
  return {ProblemCode::bad_picture, std::string(format), std::string(found), std::string(expected)};
}

}  // namespace evencount::picture
