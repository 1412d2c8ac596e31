#include "picture/alphabet_text.hpp"
#include "stockroom/palette.hpp"
#include "target.hpp"

using namespace evencount;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzzing::text_of(data, size);
  const auto palette = stockroom::parse_palette(text);
  fuzzing::require_told(palette);
  fuzzing::require(!palette || !palette->empty(), "a palette has colours");
  fuzzing::require_told(picture::parse_alphabet("fuzz", text));
  return 0;
}
