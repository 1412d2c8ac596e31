#pragma once
/// Whether this test was built with a sanitizer, under which what takes long is tried in a smaller version.

namespace evencount {

#if defined(__SANITIZE_ADDRESS__)
inline constexpr bool sanitized = true;
#else
inline constexpr bool sanitized = false;
#endif

}  // namespace evencount
