#pragma once
/// Pictures and parts of them, as the command line names them.

#include <string>

#include "base/result.hpp"
#include "picture/coverage.hpp"
#include "picture/image.hpp"

namespace evencount::app {

/// A picture's file. Errors: those of read_file and picture::decode, with the file's name.
[[nodiscard]] Result<picture::Image> picture_argument(const std::string& path);

/// "LEFT,TOP,WIDTH,HEIGHT" in pixels. Errors: bad_text.
[[nodiscard]] Result<picture::PictureRectangle> rectangle_argument(const std::string& text);

}  // namespace evencount::app
