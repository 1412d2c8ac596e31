#pragma once
/// Text made safe within HTML and JSON, fingerprints, and the filling of a template. Private to this room.

#include <functional>
#include <string>
#include <string_view>

namespace evencount::page {

/// A person's text on one line as a page may show it: without signs that turn the direction of writing (U+202A to U+202E, U+2066 to
/// U+2069), bytes that are no UTF-8 shown as '?'.
[[nodiscard]] std::string shown_text(std::string_view text);

/// The text for an element's content or an attribute in double quotes: & < > " ' as references.
[[nodiscard]] std::string escaped(std::string_view text);
/// escaped(shown_text(text)).
[[nodiscard]] std::string shown(std::string_view text);

/// JSON text for a script element: < > & as \u escapes, so that nothing in it can end the element.
[[nodiscard]] std::string for_script(std::string_view json);

/// SHA-256 in lower-case hexadecimal, and in base 64 as a policy names it.
[[nodiscard]] std::string sha256_hex(std::string_view bytes);
[[nodiscard]] std::string sha256_base64(std::string_view bytes);
[[nodiscard]] std::string base64(std::string_view bytes);

/// A template with each {{name}} replaced by what `value` gives for the name; what was put in is not looked at again.
[[nodiscard]] std::string filled(std::string_view text, const std::function<std::string(std::string_view)>& value);

}  // namespace evencount::page
