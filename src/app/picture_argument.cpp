#include "app/picture_argument.hpp"

#include <array>

#include "app/files.hpp"
#include "base/text.hpp"
#include "picture/decode.hpp"

namespace evencount::app {

Result<picture::Image> picture_argument(const std::string& path) {
  const auto bytes = read_file(path);
  if (!bytes) return bytes.problem();
  auto image = picture::decode(*bytes);
  if (!image) return image.problem().within(path);
  return image;
}

Result<picture::PictureRectangle> rectangle_argument(const std::string& text) {
  const auto parts = split(text, ',');
  std::array<double, 4> numbers{};
  bool good = parts.size() == numbers.size();
  for (std::size_t i = 0; i < numbers.size() && good; ++i) {
    const auto number = parse_number(trim(parts[i]));
    good = number.has_value();
    if (good) numbers[i] = *number;
  }
  if (!good)
    return Problem{ProblemCode::bad_text, "", quote(text), "LEFT,TOP,WIDTH,HEIGHT in pixels, such as 0,40,600,400"};
  return picture::PictureRectangle{numbers[0], numbers[1], numbers[2], numbers[3]};
}

}  // namespace evencount::app
