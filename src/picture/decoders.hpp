#pragma once
/// One function a format, and the words they share. For decode.cpp.
///
/// libpng and libjpeg report errors by longjmp. The functions that call setjmp hold nothing that needs a destructor; what must be
/// freed belongs to an object of the function outside them.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "base/result.hpp"
#include "picture/decode.hpp"
#include "picture/light_rows.hpp"

namespace evencount::picture {

[[nodiscard]] Result<Image> decode_png(std::string_view bytes, const DecodeLimits& limits);
[[nodiscard]] Result<Image> decode_jpeg(std::string_view bytes, const DecodeLimits& limits);
[[nodiscard]] Result<Image> decode_webp(std::string_view bytes, const DecodeLimits& limits);
[[nodiscard]] Result<Image> decode_tiff(std::string_view bytes, const DecodeLimits& limits);

/// Nothing when a picture of this size may be decoded. `format` is where the problem is.
[[nodiscard]] std::optional<Problem> check_size(std::string_view format, std::uint64_t width,
                                                std::uint64_t height, const DecodeLimits& limits);

[[nodiscard]] Problem damaged(std::string_view format, std::string_view how);
/// A kind of file within its format that is not read.
[[nodiscard]] Problem unreadable_kind(std::string_view format, std::string_view found,
                                      std::string_view expected);

/// No profile of a real device is larger: a table for inks takes 0.5 to 3 MB (from memory).
inline constexpr std::size_t largest_profile = std::size_t{16} << 20;

inline std::string_view as_bytes(const void* data, std::size_t size) {
  return {static_cast<const char*>(data), size};
}

}  // namespace evencount::picture
