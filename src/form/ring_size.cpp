#include "form/ring_size.hpp"

#include <numbers>

#include "base/text.hpp"

namespace evencount::form {

Length iso_inner_diameter(double iso_size) {
  return millimetres(iso_size / std::numbers::pi);
}

Result<Length> us_inner_diameter(double us_size) {
  if (!(us_size >= 0 && us_size <= 16))
    return Problem{ProblemCode::out_of_range, "US ring size", plain_number(us_size), "from 0 to 16"};
  return millimetres(11.63 + 0.8128 * us_size);  // liquisearch.com/ring_size/systems
}

Result<Form> us_ring(double us_size) {
  const auto across = us_inner_diameter(us_size);
  if (!across) return across.problem();
  return Form{FormKind::ring, *across, *across, std::nullopt};
}

}  // namespace evencount::form
