#pragma once
/// Small text helpers that do not depend on the locale.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace evencount {

/// A whole decimal number, or nothing. No sign but '-', no spaces, no overflow.
[[nodiscard]] std::optional<std::int64_t> parse_integer(std::string_view text);

/// A finite decimal number written with a point, or nothing ("nan", "inf", "1e999" and "" are nothing).
[[nodiscard]] std::optional<double> parse_number(std::string_view text);

/// A number with at most `decimals` digits after the point, without trailing zeros: 1.50 -> "1.5", -0.0 ->
/// "0".
[[nodiscard]] std::string plain_number(double value, int decimals = 2);

/// A number with exactly `decimals` digits after the point.
[[nodiscard]] std::string fixed_number(double value, int decimals);

[[nodiscard]] std::string_view trim(std::string_view text);
[[nodiscard]] std::vector<std::string_view> split(std::string_view text, char separator);
[[nodiscard]] std::string lower_ascii(std::string_view text);
[[nodiscard]] std::string upper_ascii(std::string_view text);

/// The text in single quotes, cut to 40 bytes, control characters and bytes that are no UTF-8 shown as '?': for error messages. Always UTF-8.
[[nodiscard]] std::string quote(std::string_view text);

/// True when the bytes are well-formed UTF-8 (no surrogates, no overlong forms, at most U+10FFFF).
[[nodiscard]] bool is_utf8(std::string_view text);

/// "U+1F319": the first character of a text that is well-formed UTF-8 and not empty.
[[nodiscard]] std::string code_point_name(std::string_view text);

}  // namespace evencount
