#include "form/ring_start.hpp"

#include <fmt/format.h>

#include <cmath>
#include <optional>

#include "form/closure.hpp"
#include "form/track.hpp"

namespace evencount::form {

Result<RingStart> ring_start(const Form& form, const bead::Size& bead, const bead::Gauge& gauge) {
  const auto outline = section(form);
  if (!outline) return outline.problem();
  constexpr double most_beads = 100000;
  const auto positive = [](Length l) { return std::isfinite(l.mm()) && l > Length{}; };
  if (!positive(bead.diameter) || !positive(gauge.column))
    return Problem{ProblemCode::out_of_range, "gauge", bead::to_notation(gauge),
                   "a bead and a gauge above 0"};
  const Track track(offset(*outline, bead.diameter / 2));
  const double wanted = track.perimeter_mm() / gauge.column.mm();
  if (!(wanted <= most_beads))
    return Problem{ProblemCode::out_of_range, "gauge", bead::to_notation(gauge),
                   "beads large enough for this form"};
  constexpr int fewest = 4;
  std::optional<RingStart> best;
  const int below = 2 * static_cast<int>(wanted / 2);
  for (const int beads : {below - 2, below, below + 2}) {
    if (beads < fewest) continue;
    const auto range = closing_range(track, beads);
    if (!range) return range.problem();
    const RingStart start{beads, range->largest / gauge.column - 1};
    if (!best || std::abs(std::log1p(start.strain)) < std::abs(std::log1p(best->strain))) best = start;
  }
  if (!best || wanted < fewest - 1)
    return Problem{ProblemCode::too_few_beads, "form", fmt::format("room for {:.1f} beads", wanted),
                   "room for at least 4"};
  return *best;
}

}  // namespace evencount::form
