#include "bead/bead_size.hpp"

#include <algorithm>
#include <array>

#include "base/text.hpp"

namespace evencount::bead {
namespace {

Size size_row(std::string id, Kind kind, double diameter_mm, double length_mm, double hole_mm,
              double per_gram, double scatter, double lot_shift, std::string source) {
  return {std::move(id),
          kind,
          millimetres(diameter_mm),
          millimetres(length_mm),
          millimetres(hole_mm),
          per_gram,
          scatter,
          lot_shift,
          std::move(source)};
}

// Scatter and lot shift are from memory: cylinders are cut to length and vary little, tumbled round beads
// more.
constexpr double cylinder_scatter = 0.015, cylinder_lot = 0.010;
constexpr double round_scatter = 0.050, round_lot = 0.020;

}  // namespace

std::span<const Size> sizes() {
  using enum Kind;
  static const std::array<Size, 8> table{{
      size_row("cylinder-15", cylinder, 1.3, 1.0, 0.55, 360, cylinder_scatter, cylinder_lot, "from memory"),
      size_row("cylinder-11", cylinder, 1.6, 1.3, 0.8, 195, cylinder_scatter, cylinder_lot,
               "common practice: 1.6 x 1.3 mm; 190-200 beads to the gram and the hole from memory"),
      size_row("cylinder-10", cylinder, 2.2, 1.7, 1.0, 107, cylinder_scatter, cylinder_lot, "from memory"),
      size_row("cylinder-8", cylinder, 3.0, 2.6, 1.3, 29, cylinder_scatter, cylinder_lot, "from memory"),
      size_row("round-15", round, 1.4, 1.05, 0.55, 270, round_scatter, round_lot,
               "common practice: 1.3-1.5 mm, 250-290 beads to the gram; length and hole from memory"),
      size_row("round-11", round, 2.0, 1.5, 0.75, 112, round_scatter, round_lot,
               "common practice: 1.8-2.2 x 1.5 mm, 105-120 beads to the gram; hole from memory"),
      size_row(
          "round-8", round, 2.8, 2.3, 1.05, 37, round_scatter, round_lot,
          "common practice: 2.5-3.1 x 2.0-2.3 mm, 35-44 beads to the gram, 11 to the inch; hole from memory"),
      size_row("round-6", round, 3.65, 2.8, 1.45, 15, round_scatter, round_lot,
               "common practice: 3.3-4.0 mm, 15 beads to the gram, hole 1.2-1.7 mm; length from memory"),
  }};
  return table;
}

Result<Size> find_size(std::string_view id) {
  const auto all = sizes();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Size& s) { return s.id == id; });
  if (found != all.end()) return *found;
  std::string ids;
  for (const Size& size : all) ids += (ids.empty() ? "" : ", ") + size.id;
  return Problem{ProblemCode::unknown_name, "bead", quote(id), "one of " + ids};
}

std::string_view kind_name(Kind kind) {
  return kind == Kind::cylinder ? "cylinder" : "round";
}

Result<Kind> parse_kind(std::string_view name) {
  for (const Kind kind : {Kind::cylinder, Kind::round})
    if (name == kind_name(kind)) return kind;
  return Problem{ProblemCode::unknown_name, "", quote(name), "cylinder or round"};
}

Length rim(const Size& size) {
  const Length all_round = std::min(size.length, size.diameter) / 2;
  return size.kind == Kind::cylinder ? std::min(0.1 * size.diameter, all_round) : all_round;
}

std::string trade_name(const Size& size) {
  const std::string prefix = std::string(kind_name(size.kind)) + "-";
  if (!size.id.starts_with(prefix) || !parse_integer(size.id.substr(prefix.size()))) return size.id;
  return size.id.substr(prefix.size()) + "/0 " + std::string(kind_name(size.kind)) + " bead";
}

}  // namespace evencount::bead
