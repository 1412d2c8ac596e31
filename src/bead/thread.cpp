#include "bead/thread.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.hpp"

namespace evencount::bead {

std::span<const Thread> threads() {
  static const std::array<Thread, 4> table{{
      {"braided-6lb", "6 lb braided beading thread", millimetres(0.20),
       "published, low trust: about 0.20 mm"},
      {"braided-4lb", "4 lb braided beading thread", millimetres(0.15),
       "published, low trust: about 0.15 mm"},
      {"nylon-d", "nylon beading thread, size D", millimetres(0.28), "from memory: 0.25-0.30 mm"},
      {"nylon-b", "nylon beading thread, size B", millimetres(0.20), "from memory: about 0.20 mm"},
  }};
  return table;
}

Result<Thread> find_thread(std::string_view id) {
  const auto all = threads();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Thread& t) { return t.id == id; });
  if (found != all.end()) return *found;
  std::string ids;
  for (const Thread& thread : all) ids += (ids.empty() ? "" : ", ") + thread.id;
  return Problem{ProblemCode::unknown_name, "thread", quote(id), "one of " + ids};
}

Needle needle_for(Length hole) {
  if (hole < millimetres(0.65)) return {"#13", millimetres(0.36)};
  if (hole < millimetres(0.9)) return {"#12", millimetres(0.40)};
  if (hole < millimetres(1.1)) return {"#11", millimetres(0.43)};
  return {"#10", millimetres(0.46)};
}

int passes_that_fit(Length hole, Length thread, Length needle) {
  constexpr double filled_share = 0.7;
  constexpr double most = 100;
  const double room = filled_share * hole.mm() * hole.mm() - needle.mm() * needle.mm();
  if (room < 0 || thread.mm() <= 0) return 0;
  constexpr double rounding = 1e-9;
  return 1 + static_cast<int>(std::min(most - 1, std::floor(room / (thread.mm() * thread.mm()) + rounding)));
}

}  // namespace evencount::bead
