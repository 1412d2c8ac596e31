#pragma once
/// Pictures and stocks to choose on: the ones of tests/cases/picture, and random ones.

#include <fstream>
#include <random>
#include <string>
#include <vector>

#include "picture/stock_choice.hpp"

namespace evencount::picture {

inline std::vector<colour::Rgb> load_ppm(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  std::string magic;
  std::size_t width = 0, height = 0, most = 0;
  in >> magic >> width >> height >> most;
  in.get();
  std::vector<colour::Rgb> cells(width * height);
  for (colour::Rgb& cell : cells)
    cell = {static_cast<std::uint8_t>(in.get()), static_cast<std::uint8_t>(in.get()),
            static_cast<std::uint8_t>(in.get())};
  return in ? cells : std::vector<colour::Rgb>{};
}

inline std::vector<StockColour> load_stock(const std::string& file) {
  std::ifstream in(file);
  std::vector<StockColour> stock;
  for (int red, green, blue; in >> red >> green >> blue;)
    stock.push_back({{static_cast<std::uint8_t>(red), static_cast<std::uint8_t>(green),
                      static_cast<std::uint8_t>(blue)}});
  return stock;
}

using Random = std::mt19937;

inline int pick(Random& random, int below) {
  return static_cast<int>(random() % static_cast<unsigned>(below));
}

/// Colours round a few others, so that some are near each other and some equal.
inline colour::Rgb random_colour(Random& random) {
  const auto channel = [&] { return static_cast<std::uint8_t>(pick(random, 6) * 50 + pick(random, 5)); };
  return {channel(), channel(), channel()};
}

inline std::vector<colour::Rgb> random_cells(Random& random, int count) {
  std::vector<colour::Rgb> cells;
  for (int i = 0; i < count; ++i)
    cells.push_back(i > 0 && pick(random, 4) == 0 ? cells[static_cast<std::size_t>(pick(random, i))]
                                                  : random_colour(random));
  return cells;
}

/// `ruled` of ten colours are required or forbidden, `limited` of ten have a limit below `cells`.
inline std::vector<StockColour> random_stock(Random& random, int size, int ruled, int limited, int cells) {
  std::vector<StockColour> stock;
  for (int i = 0; i < size; ++i) {
    StockColour one{random_colour(random)};
    if (pick(random, 10) < ruled)
      one.rule = pick(random, 2) == 0 ? StockRule::required : StockRule::forbidden;
    if (pick(random, 10) < limited) one.at_most = pick(random, cells);
    stock.push_back(one);
  }
  return stock;
}

}  // namespace evencount::picture
