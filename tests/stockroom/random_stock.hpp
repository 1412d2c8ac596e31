#pragma once
/// Invented stock, drawn from a seed.

#include <random>
#include <vector>

#include "stockroom/stockroom.hpp"

namespace evencount::testing {

/// A text that is hard on tables: quotes, separators, line ends, umlauts, emoji. No blanks at its ends; never empty.
[[nodiscard]] std::string random_text(std::mt19937& random);

/// `count` items of a kind, codes single among all kinds, quantities from 0 up, none reserved.
[[nodiscard]] std::vector<materials::StockedItem> random_stock(std::mt19937& random, materials::StockKind kind,
                                                            int count);

inline constexpr stockroom::Time noon{std::chrono::seconds{1'700'000'000}};

}  // namespace evencount::testing
