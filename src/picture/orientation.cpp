#include "picture/orientation.hpp"

#include <cassert>

namespace evencount::picture {
namespace {

/// Numbers of a TIFF structure, in its own byte order. Places past the end read as 0.
class Numbers {
 public:
  Numbers(std::string_view bytes, bool big_end_first) : bytes_(bytes), big_end_first_(big_end_first) {}

  [[nodiscard]] std::uint32_t two(std::size_t at) const { return number(at, 2); }
  [[nodiscard]] std::uint32_t four(std::size_t at) const { return number(at, 4); }

 private:
  [[nodiscard]] std::uint32_t number(std::size_t at, std::size_t length) const {
    if (at > bytes_.size() || bytes_.size() - at < length) return 0;
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < length; ++i)
      value = value << 8 | static_cast<std::uint8_t>(bytes_[big_end_first_ ? at + i : at + length - 1 - i]);
    return value;
  }

  std::string_view bytes_;
  bool big_end_first_;
};

// EXIF 2.32 and TIFF 6.0, from memory.
constexpr std::uint32_t orientation_tag = 274, two_byte_number = 3;
constexpr std::size_t entry_length = 12;

}  // namespace

Orientation orientation_of(unsigned number) {
  return number >= 1 && number <= 8 ? static_cast<Orientation>(number) : Orientation::top_left;
}

Orientation exif_orientation(std::string_view exif) {
  using namespace std::string_view_literals;
  if (exif.starts_with("Exif\0\0"sv)) exif.remove_prefix(6);
  const bool big_end_first = exif.starts_with("MM\0*"sv);
  if (!big_end_first && !exif.starts_with("II*\0"sv)) return Orientation::top_left;
  const Numbers numbers(exif, big_end_first);
  const std::size_t directory = numbers.four(4);
  const std::size_t entries = numbers.two(directory);
  for (std::size_t i = 0; i < entries; ++i) {
    const std::size_t entry = directory + 2 + i * entry_length;
    if (numbers.two(entry) == orientation_tag && numbers.two(entry + 2) == two_byte_number &&
        numbers.four(entry + 4) == 1)
      return orientation_of(numbers.two(entry + 8));
  }
  return Orientation::top_left;
}

Places places(Orientation orientation, int width, int height) {
  const std::ptrdiff_t w = width, h = height;
  const std::ptrdiff_t last_column = w - 1, last_row = h - 1;
  switch (orientation) {
    case Orientation::top_left:
      return {0, 1, w};
    case Orientation::top_right:
      return {last_column, -1, w};
    case Orientation::bottom_right:
      return {last_row * w + last_column, -1, -w};
    case Orientation::bottom_left:
      return {last_row * w, 1, -w};
    // From here on the upright picture is `height` wide.
    case Orientation::left_top:
      return {0, h, 1};
    case Orientation::right_top:
      return {last_row, h, -1};
    case Orientation::right_bottom:
      return {last_column * h + last_row, -h, -1};
    case Orientation::left_bottom:
      return {last_column * h, -h, 1};
  }
  assert(false);
  return {};
}

}  // namespace evencount::picture
