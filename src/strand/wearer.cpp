#include "strand/wearer.hpp"

#include <array>
#include <cmath>
#include <numbers>

#include "base/text.hpp"
#include "form/form.hpp"

namespace evencount::strand {
namespace {

constexpr std::array<std::string_view, 3> names{"wrist", "neck", "length"};

bool is_between(Length length, Length least, Length most) {
  return length >= least && length <= most;  // false for NaN
}

Problem out_of_range(std::string where, Length found, std::string expected) {
  return {ProblemCode::out_of_range, std::move(where), plain_number(found.mm(), 3) + " mm",
          std::move(expected)};
}

Wearer necklace(std::string name, double from_in, double to_in) {
  return {std::move(name), Worn::length, inches((from_in + to_in) / 2), Length{}};
}

}  // namespace

std::string_view worn_name(Worn worn) {
  return names[static_cast<std::size_t>(worn)];
}

Result<Worn> parse_worn(std::string_view name) {
  for (const Worn worn : {Worn::wrist, Worn::neck, Worn::length})
    if (name == worn_name(worn)) return worn;
  return Problem{ProblemCode::unknown_name, "worn", quote(name), "wrist, neck or length"};
}

double ratio_of(Worn worn) {
  return worn == Worn::wrist ? form::wrist_ratio : neck_ratio;
}

Result<Length> length_for(const Wearer& wearer, Length thickness) {
  constexpr Length most_ease = millimetres(200);
  if (!is_between(wearer.measure, smallest_measure, largest_measure))
    return out_of_range(std::string(worn_name(wearer.worn)), wearer.measure, "50 to 2000 mm");
  if (!is_between(wearer.ease, Length{}, most_ease)) return out_of_range("ease", wearer.ease, "0 to 200 mm");
  if (!is_between(thickness, Length{}, largest_measure))
    return out_of_range("thickness", thickness, "0 or more");
  if (wearer.worn == Worn::length) return wearer.measure;
  return wearer.measure + wearer.ease + std::numbers::pi * thickness;
}

Length inside_of(Length length, Length thickness) {
  return length - std::numbers::pi * thickness;
}

std::span<const Wearer> wrist_sizes() {
  static const std::array<Wearer, 5> table{{{"XS", Worn::wrist, millimetres(145), ordinary_ease},
                                            {"S", Worn::wrist, millimetres(155), ordinary_ease},
                                            {"M", Worn::wrist, millimetres(165), ordinary_ease},
                                            {"L", Worn::wrist, millimetres(175), ordinary_ease},
                                            {"XL", Worn::wrist, millimetres(185), ordinary_ease}}};
  return table;
}

std::span<const Wearer> necklace_sizes() {
  static const std::array<Wearer, 5> table{{necklace("collar", 12, 13), necklace("choker", 14, 16),
                                            necklace("princess", 17, 19), necklace("matinee", 20, 24),
                                            necklace("opera", 28, 34)}};
  return table;
}

}  // namespace evencount::strand
