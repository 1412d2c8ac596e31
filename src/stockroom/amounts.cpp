#include "stockroom/amounts.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "base/text.hpp"
#include "bead/bead_size.hpp"

namespace evencount::stockroom {
namespace {

using materials::StockKind;

bool all_digits(std::string_view text) {
  return text.find_first_not_of("0123456789") == std::string_view::npos;
}

/// A unit and how many digits after the point it has, counted in the kind's own unit: 1.2 kg are 1,200,000 mg.
struct WrittenUnit {
  std::string_view name;
  int decimals;
};
constexpr std::array mass_units{WrittenUnit{"kg", 6}, WrittenUnit{"mg", 0}, WrittenUnit{"g", 3},
                                WrittenUnit{"", 3}};
constexpr std::array length_units{WrittenUnit{"cm", 1}, WrittenUnit{"mm", 0}, WrittenUnit{"m", 3}};
constexpr std::array piece_units{WrittenUnit{"pieces", 0}, WrittenUnit{"piece", 0}, WrittenUnit{"", 0}};

template <std::size_t count>
std::optional<std::int64_t> with_unit(std::string_view text, const std::array<WrittenUnit, count>& units) {
  for (const WrittenUnit& unit : units)
    if (text.ends_with(unit.name))
      return parse_decimal(trim(text.substr(0, text.size() - unit.name.size())), unit.decimals);
  return std::nullopt;
}

std::optional<std::int64_t> weighed(std::string_view count, double per_gram) {
  const auto beads = parse_integer(count);
  if (!beads || *beads < 0 || *beads > most_amount) return std::nullopt;
  constexpr double rounding = 1e-9;  // of a double: 195 beads at 195 to the gram are 1000 mg, not 1001
  const double mg = 1000.0 * static_cast<double>(*beads) / per_gram;
  return static_cast<std::int64_t>(std::ceil(mg * (1 - rounding)));
}

std::string_view shape_of(StockKind kind) {
  switch (kind) {
    case StockKind::beads:
      return "a weight such as 12.5g, or a count such as '800 beads'";
    case StockKind::thread:
    case StockKind::cord:
      return "a length with its unit, such as 3m or 40cm, in whole millimetres";
    case StockKind::forms:
    case StockKind::findings:
      break;
  }
  return "a whole number of pieces";
}

std::optional<std::int64_t> parsed(const materials::StockItem& item, std::string_view text) {
  switch (kind_of(item)) {
    case StockKind::beads: {
      constexpr std::string_view counted = "beads";
      if (!text.ends_with(counted)) return with_unit(text, mass_units);
      const auto per_gram = beads_per_gram(item);
      return per_gram ? weighed(trim(text.substr(0, text.size() - counted.size())), *per_gram) : std::nullopt;
    }
    case StockKind::thread:
    case StockKind::cord:
      return with_unit(text, length_units);
    case StockKind::forms:
    case StockKind::findings:
      break;
  }
  return with_unit(text, piece_units);
}

}  // namespace

int decimals_of(StockKind kind) {
  return kind == StockKind::forms || kind == StockKind::findings ? 0 : 3;
}

std::string_view written_unit(StockKind kind) {
  if (kind == StockKind::beads) return "g";
  return kind == StockKind::thread || kind == StockKind::cord ? "m" : "pieces";
}

std::optional<std::int64_t> parse_decimal(std::string_view text, int decimals) {
  const bool negative = text.starts_with('-');
  if (negative) text.remove_prefix(1);
  const auto sign = text.find_first_of(".,");
  const std::string_view whole = text.substr(0, sign);
  std::string_view part = sign == std::string_view::npos ? std::string_view{} : text.substr(sign + 1);
  if (whole.empty() || !all_digits(whole) || !all_digits(part)) return std::nullopt;
  if (sign != std::string_view::npos && part.empty()) return std::nullopt;
  while (part.size() > static_cast<std::size_t>(decimals) && part.ends_with('0')) part.remove_suffix(1);
  if (part.size() > static_cast<std::size_t>(decimals)) return std::nullopt;
  std::string digits = std::string(whole) + std::string(part);
  digits.append(static_cast<std::size_t>(decimals) - part.size(), '0');
  const auto value = parse_integer(digits);
  return value && negative ? -*value : value;
}

std::string decimal_text(std::int64_t value, int decimals, bool fixed) {
  const bool negative = value < 0;
  std::string digits = fmt::format("{:0{}}", negative ? -value : value, decimals + 1);
  if (decimals > 0) {
    digits.insert(digits.size() - static_cast<std::size_t>(decimals), 1, '.');
    if (!fixed) digits.erase(digits.find_last_not_of('0') + 1);
    if (digits.ends_with('.')) digits.pop_back();
  }
  return negative ? "-" + digits : digits;
}

std::string amount_text(StockKind kind, std::int64_t amount) {
  const std::string_view unit = written_unit(kind);
  const bool single = unit == "pieces" && (amount == 1 || amount == -1);
  return fmt::format("{} {}", decimal_text(amount, decimals_of(kind)), single ? "piece" : unit);
}

std::optional<double> beads_per_gram(const materials::StockItem& item) {
  const auto* beads = std::get_if<materials::BeadStock>(&item.what);
  if (beads == nullptr) return std::nullopt;
  if (beads->beads_per_gram) return beads->beads_per_gram;
  const auto size = bead::find_size(beads->size);
  return size ? std::optional(size->beads_per_gram) : std::nullopt;
}

Result<std::int64_t> parse_amount(const materials::StockItem& item, std::string_view text) {
  const auto amount = parsed(item, trim(text));
  if (!amount) return Problem{ProblemCode::bad_text, "", quote(text), std::string(shape_of(kind_of(item)))};
  if (*amount < 0 || *amount > most_amount)
    return Problem{ProblemCode::out_of_range, "", quote(text),
                   "from 0 to " + amount_text(kind_of(item), most_amount)};
  return *amount;
}

}  // namespace evencount::stockroom
