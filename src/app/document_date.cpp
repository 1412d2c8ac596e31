#include "app/document_date.hpp"

#include <cstdlib>

#include "base/text.hpp"

namespace evencount::app {

Result<std::optional<std::int64_t>> document_date() {
  const char* text = std::getenv("SOURCE_DATE_EPOCH");
  if (text == nullptr || *text == '\0') return std::optional<std::int64_t>{};
  const auto seconds = parse_integer(text);
  constexpr std::int64_t end_of_year_9999 = 253402300799;
  if (!seconds || *seconds < 0 || *seconds > end_of_year_9999)
    return Problem{ProblemCode::bad_text, "SOURCE_DATE_EPOCH", quote(text),
                   "seconds since 1970 as a whole number"};
  return std::optional<std::int64_t>{*seconds};
}

}  // namespace evencount::app
