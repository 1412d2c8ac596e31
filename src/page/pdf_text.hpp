#pragma once
/// The text of a finished PDF, read from its bytes: what stands in its content streams, through the fonts' own tables to Unicode.
/// Private to this room. It shares nothing with the layout and is no general reader: it knows the operators that our writer uses.
///
/// Why not poppler: it is under the GPL, which the product keeps out (its command is used in tests). qpdf, which completes the file
/// anyway, gives the decoded streams and the fonts.
///
/// Texts come in the order of the stream. Texts on one baseline are parted by a blank where they lie apart, and are one line; a jump back to
/// the left, or to another baseline, begins a line. A page ends with a form feed.

#include <string>
#include <string_view>

#include "base/result.hpp"

namespace evencount::page {

/// Errors: bad_text for bytes that are no PDF of this kind.
[[nodiscard]] Result<std::string> pdf_text(std::string_view pdf);

}  // namespace evencount::page
