/// The path of a request with its percent signs.

#include "app/studio/http.hpp"
#include "target.hpp"

using namespace evencount;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  app::studio::Head head;
  const auto read = app::studio::read_target(fuzzing::text_of(data, size), head);
  fuzzing::require_told(read);
  if (!read) return 0;
  for (const std::string& segment : head.path)
    fuzzing::require(is_utf8(segment) && segment.find('\0') == std::string::npos, "segments are text");
  for (const auto& [name, value] : head.query) fuzzing::require(is_utf8(name) && is_utf8(value), "a query is text");
  return 0;
}
