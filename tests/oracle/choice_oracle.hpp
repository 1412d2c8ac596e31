#pragma once
/// Choosing beads by trying everything: every set of candidates, and with limits every way to share the cells out. For small pictures.

#include <algorithm>
#include <limits>
#include <optional>
#include <span>
#include <vector>

#include "colour/difference.hpp"
#include "picture/stock_choice.hpp"

namespace evencount::picture::oracle {

inline double difference(colour::Rgb cell, colour::Rgb bead) {
  return colour::ciede2000(colour::to_lab_d65(cell), colour::to_lab_d65(bead));
}

/// The least sum over cells [at, ...) when each chosen bead has so many left.
inline double share_out(std::span<const colour::Rgb> cells, std::size_t at,
                        std::span<const StockColour> stock, const std::vector<int>& chosen,
                        std::vector<int>& left) {
  if (at == cells.size()) return 0;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t place = 0; place < chosen.size(); ++place) {
    if (left[place] == 0) continue;
    --left[place];
    const double rest = share_out(cells, at + 1, stock, chosen, left);
    ++left[place];
    const colour::Rgb bead = stock[static_cast<std::size_t>(chosen[place])].colour;
    least = std::min(least, difference(cells[at], bead) + rest);
  }
  return least;
}

/// The least mean of exactly these beads; infinite where they are too few.
inline double mean_of(std::span<const colour::Rgb> cells, std::span<const StockColour> stock,
                      const std::vector<int>& chosen) {
  const auto cell_count = static_cast<int>(cells.size());
  bool limited = false;
  std::vector<int> left;
  for (const int i : chosen) {
    left.push_back(stock[static_cast<std::size_t>(i)].at_most.value_or(cell_count));
    limited = limited || left.back() < cell_count;
  }
  if (limited) return share_out(cells, 0, stock, chosen, left) / cell_count;
  double sum = 0;
  for (const colour::Rgb cell : cells) {
    double nearest = std::numeric_limits<double>::infinity();
    for (const int i : chosen)
      nearest = std::min(nearest, difference(cell, stock[static_cast<std::size_t>(i)].colour));
    sum += nearest;
  }
  return sum / cell_count;
}

/// The least mean of all choices of at most `count`; infinite where there is none.
inline double least_mean(std::span<const colour::Rgb> cells, std::span<const StockColour> stock, int count) {
  double least = std::numeric_limits<double>::infinity();
  for (unsigned set = 1; set < 1u << stock.size(); ++set) {
    std::vector<int> chosen;
    bool allowed = true;
    for (std::size_t i = 0; i < stock.size(); ++i) {
      const bool in = (set >> i & 1u) != 0;
      if (in) chosen.push_back(static_cast<int>(i));
      allowed = allowed && stock[i].rule != (in ? StockRule::forbidden : StockRule::required);
    }
    if (allowed && static_cast<int>(chosen.size()) <= count)
      least = std::min(least, mean_of(cells, stock, chosen));
  }
  return least;
}

}  // namespace evencount::picture::oracle
