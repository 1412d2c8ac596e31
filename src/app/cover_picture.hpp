#pragma once
/// A picture for a booklet's cover.

#include <memory>

#include "base/result.hpp"
#include "drawing/marks.hpp"
#include "picture/image.hpp"

namespace evencount::app {

/// Pixels of the longer side that a cover keeps: 300 dots per inch on the width of a page. More is averaged in linear light.
inline constexpr int most_cover_pixels = 2400;

/// What is clear in the picture shows white. Properties (tests/app/cover_picture_test.cpp): a picture that is small enough keeps its
/// pixels; of a larger one every pixel is the mean light of its block.
[[nodiscard]] std::shared_ptr<const drawing::Pixels> cover_of(const picture::Image& image);

/// Of a file. Errors: those of picture_argument.
[[nodiscard]] Result<std::shared_ptr<const drawing::Pixels>> cover_picture(const std::string& path);

}  // namespace evencount::app
