#include "strand/layout.hpp"
#include "target.hpp"

using namespace evencount;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto layout = strand::parse_layout(fuzzing::text_of(data, size), {});
  fuzzing::require_told(layout);
  if (!layout) return 0;
  const auto again = strand::parse_layout(strand::to_text(*layout), {});
  fuzzing::require(again.ok(), "what to_text writes can be read");
  fuzzing::require(strand::to_text(*again) == strand::to_text(*layout), "to_text(parse(to_text(l))) == to_text(l)");
  return 0;
}
