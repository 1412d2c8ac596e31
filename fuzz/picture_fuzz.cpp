/// libFuzzer entry: any bytes decode to an image that keeps its promises, or to a Problem that says something.
/// What it finds (docs/fuzzing.md) goes to fuzz/crashers/picture/, which tests/picture/crashers_test.cpp reads in every run.

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

#include "picture/decode.hpp"

namespace {

using namespace evencount;

[[noreturn]] void broken(const char* promise, const std::string& detail) {
  std::fprintf(stderr, "picture: %s: %s\n", promise, detail.c_str());
  std::abort();
}

bool is_light(float channel) {
  return std::isfinite(channel) && channel >= -2 && channel <= 4;
}

void check(const picture::Image& image, const picture::DecodeLimits& limits) {
  const auto width = static_cast<std::size_t>(image.width), height = static_cast<std::size_t>(image.height);
  if (image.width < 1 || image.height < 1 || image.width > limits.most_side ||
      image.height > limits.most_side || width * height > static_cast<std::size_t>(limits.most_pixels))
    broken("an image is within the limits", std::to_string(width) + " by " + std::to_string(height));
  if (image.pixels.size() != width * height)
    broken("an image has its pixels", std::to_string(image.pixels.size()));
  for (const picture::Pixel& pixel : image.pixels) {
    if (!is_light(pixel.red) || !is_light(pixel.green) || !is_light(pixel.blue))
      broken("light is finite and within its range", "");
    if (!(pixel.alpha >= 0 && pixel.alpha <= 1))
      broken("alpha is within 0 .. 1", std::to_string(pixel.alpha));
    if (!image.has_alpha && pixel.alpha != 1)
      broken("without alpha every pixel is solid", std::to_string(pixel.alpha));
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  constexpr picture::DecodeLimits limits{.most_pixels = 250'000, .most_side = 2'000};
  const auto image = picture::decode({reinterpret_cast<const char*>(bytes), size}, limits);
  if (image)
    check(*image, limits);
  else if (message(image.problem()).empty() ||
           image.problem().expected.empty() != (image.problem().code == ProblemCode::system_failure))
    broken("a failure says what is wrong", message(image.problem()));
  return 0;
}
