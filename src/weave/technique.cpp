#include "weave/technique.hpp"

#include <algorithm>
#include <array>

#include "base/text.hpp"
#include "weave/flat_peyote.hpp"

namespace evencount::weave {

std::span<const Technique> techniques() {
  static const std::array<Technique, 2> table{{
      {"peyote-even-count", "flat peyote, even count", 1, check_even_count, lower_even_count},
      {"peyote-odd-count", "flat peyote, odd count", 1, check_odd_count, lower_odd_count},
  }};
  return table;
}

Result<Technique> find_technique(std::string_view id) {
  const auto all = techniques();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Technique& t) { return t.id == id; });
  if (found != all.end()) return *found;
  std::string ids;
  for (const Technique& technique : all) ids += (ids.empty() ? "" : ", ") + std::string(technique.id);
  return Problem{ProblemCode::unknown_name, "technique", quoted(id), "one of " + ids};
}

const Technique& flat_peyote_for(int columns) {
  return techniques()[columns % 2 == 0 ? 0 : 1];
}

Result<Plan> make_plan(std::string_view technique, const chart::Chart& chart, Closure closure) {
  const auto found = find_technique(technique);
  if (!found) return found.problem();
  return found->lower(chart, closure);
}

}  // namespace evencount::weave
