#pragma once
/// What fuzzing targets share.
///
/// A target is one function: it reads bytes as a person's file would be read, and aborts where a promise of the reader's header is broken. What
/// is no valid input must come out as a Problem that can be told; anything else is for the sanitizers to find.

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

#include "base/result.hpp"
#include "base/text.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace evencount::fuzzing {

inline std::string_view text_of(const std::uint8_t* data, std::size_t size) {
  return {reinterpret_cast<const char*>(data), size};
}

inline void require(bool kept, const char* promise) {
  if (kept) return;
  std::fprintf(stderr, "broken: %s\n", promise);
  std::abort();
}

/// A problem is told in text that a terminal and a page can show.
template <typename T>
void require_told(const Result<T>& result) {
  if (result.ok()) return;
  const std::string told = message(result.problem());
  require(!told.empty() && is_utf8(told), "a problem is told in UTF-8");
}

}  // namespace evencount::fuzzing
