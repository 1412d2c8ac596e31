#pragma once
/// Finding things among the stock.

#include <string>
#include <vector>

#include "colour/lab.hpp"
#include "stockroom/import.hpp"

namespace evencount::stockroom {

/// The measured colour, if it has one.
[[nodiscard]] std::optional<colour::Rgb> colour_of(const materials::StockItem& item);

/// The items in which every word stands somewhere: in code, name, size (form, thread, cord, finding), finish, note, or a pack's supplier
/// or order code. Letters from A to Z match either case. No words: all.
[[nodiscard]] std::vector<materials::StockedItem> with_words(const std::vector<materials::StockedItem>& items,
                                               const std::vector<std::string>& words);

struct NearItem {
  materials::StockedItem held;
  double difference = 0;  ///< CIEDE2000
};

/// The `count` items whose colours are nearest, nearest first; items alike in that keep their order. Items without a colour are left out.
[[nodiscard]] std::vector<NearItem> nearest(const std::vector<materials::StockedItem>& items, colour::Rgb colour,
                                            std::size_t count);

}  // namespace evencount::stockroom
