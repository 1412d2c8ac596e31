#pragma once
/// Amounts as people write them, exactly: beads in grams, forms and findings in pieces, thread and cord in metres.
///
/// Properties (tests/stockroom/amounts_test.cpp):
///  (1) parse_decimal(decimal_text(v, d), d) == v
///  (2) parse_amount(k, amount_text(k, a), …) == a
///  (3) no number is read through floating point: 0.1 g is 100 mg, and more digits than a unit has are refused unless they are 0

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "materials/stock.hpp"

namespace evencount::stockroom {

/// The most of one thing, in its kind's unit: a thousand tonnes of beads, a million kilometres of thread. Keeps sums exact.
inline constexpr std::int64_t most_amount = 1'000'000'000'000;
/// The dearest pack, in the minor unit of its currency: a million.
inline constexpr std::int64_t most_price = 100'000'000;

/// Digits after the point of an amount written in grams or metres: 3; of pieces 0.
[[nodiscard]] int decimals_of(materials::StockKind kind);
/// "g", "pieces", "m": what people count in, where `unit_of` is what is kept.
[[nodiscard]] std::string_view written_unit(materials::StockKind kind);

/// A decimal number times 10^decimals: ("3.4", 2) is 340. A comma does as well as a point. Nothing for what is no number, has
/// more digits that are not 0, or doesn't fit.
[[nodiscard]] std::optional<std::int64_t> parse_decimal(std::string_view text, int decimals);
/// 340 with two decimals is "3.4"; with `fixed`, "3.40".
[[nodiscard]] std::string decimal_text(std::int64_t value, int decimals, bool fixed = false);

/// "12.5 g", "8 pieces", "1 piece", "3.2 m".
[[nodiscard]] std::string amount_text(materials::StockKind kind, std::int64_t amount);

/// How many beads of an item there are to the gram: its own figure, or its size's. Nothing for other kinds.
[[nodiscard]] std::optional<double> beads_per_gram(const materials::StockItem& item);

/// An amount of this item: beads "12.5g", "12.5", "1.2kg" or "800 beads" (weighed, rounded up to a milligram); thread and cord a length
/// with its unit, "3m", "40cm"; forms and findings a whole number, with or without "pieces". 0 to most_amount.
/// Errors: bad_text, out_of_range.
[[nodiscard]] Result<std::int64_t> parse_amount(const materials::StockItem& item, std::string_view text);

}  // namespace evencount::stockroom
