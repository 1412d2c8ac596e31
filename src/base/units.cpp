#include "base/units.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>

#include "base/text.hpp"

namespace evencount {
namespace {

std::optional<double> parse_plain_or_fraction(std::string_view text) {
  const auto slash = text.find('/');
  if (slash == std::string_view::npos) return parse_number(text);
  const auto top = parse_number(trim(text.substr(0, slash)));
  const auto bottom = parse_number(trim(text.substr(slash + 1)));
  if (!top || !bottom || *bottom == 0) return std::nullopt;
  return *top / *bottom;
}

}  // namespace

std::string to_text(const Money& money) {
  const auto [units, cents] = std::lldiv(money.minor, 100);
  return fmt::format("{}{}.{:02} {}", money.minor < 0 && units == 0 ? "-" : "", units, std::llabs(cents),
                     money.currency);
}

Result<Length> parse_length(std::string_view text) {
  struct Unit {
    std::string_view name;
    double mm;
  };
  // "m" stands last so that "mm" and "cm" are tried before it.
  constexpr Unit units[] = {{"mm", 1}, {"cm", 10}, {"in", 25.4}, {"\"", 25.4}, {"yd", 914.4}, {"m", 1000}};
  const Problem bad{ProblemCode::bad_text, "", quote(text),
                    "a length such as 17, 17mm, 1.7cm, 0.67in or 3/4in"};
  std::string_view number = trim(text);
  double scale = 1;
  for (const Unit& unit : units) {
    if (number.size() > unit.name.size() && number.ends_with(unit.name)) {
      number = trim(number.substr(0, number.size() - unit.name.size()));
      scale = unit.mm;
      break;
    }
  }
  const auto value = parse_plain_or_fraction(number);
  if (!value || !std::isfinite(*value * scale)) return bad;
  return millimetres(*value * scale);
}

}  // namespace evencount
