#include "form/ring_size.hpp"

#include <numbers>

#include "base/text.hpp"
#include "form/form_kinds.hpp"

namespace evencount::form {

Length iso_inner_diameter(double iso_size) {
  return millimetres(iso_size / std::numbers::pi);
}

Result<Length> us_inner_diameter(double us_size) {
  if (!(us_size >= 0 && us_size <= 16))
    return Problem{ProblemCode::out_of_range, "US ring size", plain_number(us_size), "from 0 to 16"};
  return millimetres(11.63 + 0.8128 * us_size);  // liquisearch.com/ring_size/systems
}

Result<Length> parse_ring_size(std::string_view text) {
  text = trim(text);
  if (const auto iso_size = parse_number(text)) return millimetres(*iso_size);
  constexpr std::string_view us = "us";
  const std::string lower = lower_ascii(text);
  if (lower.starts_with(us)) {
    const auto us_size = parse_number(trim(text.substr(us.size())));
    if (!us_size) return Problem{ProblemCode::bad_text, "", quote(text), "a US size such as us7 or us6.5"};
    const auto across = us_inner_diameter(*us_size);
    if (!across) return across.problem();
    return *across * std::numbers::pi;
  }
  const auto across = parse_length(text);
  if (!across)
    return Problem{ProblemCode::bad_text, "", quote(text),
                   "an ISO size such as 54, a US size such as us7, or an inner diameter such as 17.3mm"};
  return *across * std::numbers::pi;
}

Result<Form> us_ring(double us_size) {
  const auto across = us_inner_diameter(us_size);
  if (!across) return across.problem();
  const std::vector circumference{kept(*across * std::numbers::pi)};
  return row(FormKind::ring).make(circumference);
}

}  // namespace evencount::form
