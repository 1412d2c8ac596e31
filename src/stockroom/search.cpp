#include "stockroom/search.hpp"

#include <algorithm>

#include "base/text.hpp"
#include "colour/difference.hpp"
#include "stockroom/columns.hpp"

namespace evencount::stockroom {
namespace {

/// All that can be searched of an item, in small letters.
std::string searched_text(const materials::StockItem& item) {
  std::string text;
  const Line line{item, 0};
  for (const Column& column : columns_of(kind_of(item)))
    if (column.written && !column.number && column.part != ColumnPart::pack)
      text += column.write(line) + "\n";
  for (const materials::PackOffer& pack : item.packs) text += pack.supplier + "\n" + pack.order_code + "\n";
  return lower_ascii(text);
}

}  // namespace

std::optional<colour::Rgb> colour_of(const materials::StockItem& item) {
  return std::visit(
      [](const auto& what) -> std::optional<colour::Rgb> {
        if constexpr (requires { what.colour; })
          return what.colour;
        else
          return std::nullopt;
      },
      item.what);
}

std::vector<materials::StockedItem> with_words(const std::vector<materials::StockedItem>& items, const std::vector<std::string>& words) {
  std::vector<materials::StockedItem> found;
  for (const materials::StockedItem& held : items) {
    const std::string text = searched_text(held.item);
    const bool all = std::all_of(words.begin(), words.end(), [&](const std::string& word) {
      return text.find(lower_ascii(word)) != std::string::npos;
    });
    if (all) found.push_back(held);
  }
  return found;
}

std::vector<NearItem> nearest(const std::vector<materials::StockedItem>& items, colour::Rgb colour, std::size_t count) {
  std::vector<NearItem> near;
  const colour::LabD65 wanted = colour::to_lab_d65(colour);
  for (const materials::StockedItem& held : items)
    if (const auto own = colour_of(held.item))
      near.push_back({held, colour::ciede2000(wanted, colour::to_lab_d65(*own))});
  std::stable_sort(near.begin(), near.end(),
                   [](const NearItem& a, const NearItem& b) { return a.difference < b.difference; });
  if (near.size() > count) near.resize(count);
  return near;
}

}  // namespace evencount::stockroom
