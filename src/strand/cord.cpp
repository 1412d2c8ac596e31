#include "strand/cord.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.hpp"

namespace evencount::strand {
namespace {

struct CordRow {
  CordKind kind;
  std::string_view name;
};
constexpr std::array<CordRow, 4> kinds{{{CordKind::elastic, "elastic"},
                                        {CordKind::wire, "wire"},
                                        {CordKind::braided, "braided"},
                                        {CordKind::leather, "leather"}}};

constexpr int ends = 2;

Allowance knots(const Cord& cord, int count) {
  const double thicknesses = cord.kind == CordKind::leather ? 12 : 10;
  return {"knots", count, thicknesses * cord.diameter, "from memory: 10 thicknesses of cord, 12 of leather"};
}

Allowance crimps() {
  return {"crimps with their loops", ends, crimp_and_loop, "published: each crimp and loop takes about 5 mm"};
}

std::vector<Allowance> at_the_ends(const Cord& cord, EndFinish finish) {
  const bool crimped = finish == EndFinish::crimped;
  switch (cord.kind) {
    case CordKind::wire:
      if (crimped)
        return {{"both ends, crimps and loops in it", 1, inches(10),
                 "published: \"How to String Beads with Beading Wire\", "
                 "thesprucecraftsaj.pages.dev/posts/how-to-string-beads-with-beading-wire"}};
      return {{"both ends", 1, inches(10), "as for crimped ends, from memory"}, knots(cord, ends)};
    case CordKind::elastic:
      return {{"tails", ends, millimetres(40), "published: at least 4 cm at each end"},
              crimped ? crimps() : knots(cord, 1)};
    case CordKind::braided:
      return {{"tails", ends, millimetres(200), "common practice, no source: 20 cm on bracelets"},
              crimped ? crimps() : knots(cord, ends)};
    case CordKind::leather:
      return {{"tails", ends, millimetres(100), "from memory"}, crimped ? crimps() : knots(cord, ends)};
  }
  return {};
}

}  // namespace

std::string_view cord_kind_name(CordKind kind) {
  return kinds[static_cast<std::size_t>(kind)].name;
}

std::optional<CordKind> find_cord_kind(std::string_view name) {
  const auto found =
      std::find_if(kinds.begin(), kinds.end(), [&](const CordRow& r) { return r.name == name; });
  if (found == kinds.end()) return std::nullopt;
  return found->kind;
}

Result<CordLength> cord_to_cut(const Cord& cord, Length strung, EndFinish finish, int knots_between) {
  const auto shown = [](Length length) { return plain_number(length.mm(), 3) + " mm"; };
  if (!std::isfinite(strung.mm()) || strung <= Length{})
    return Problem{ProblemCode::out_of_range, "strung length", shown(strung), "above 0"};
  if (!(cord.diameter > Length{} && cord.diameter <= thickest_cord))
    return Problem{ProblemCode::out_of_range, "thickness of the cord", shown(cord.diameter),
                   "above 0, at most " + shown(thickest_cord)};
  if (knots_between < 0)
    return Problem{ProblemCode::out_of_range, "knots", fmt::format("{}", knots_between), "0 or more"};
  CordLength length{strung, at_the_ends(cord, finish), strung};
  if (knots_between > 0) length.allowances.push_back(knots(cord, knots_between));
  for (const Allowance& allowance : length.allowances)
    length.cut = length.cut + static_cast<double>(allowance.count) * allowance.each;
  return length;
}

}  // namespace evencount::strand
