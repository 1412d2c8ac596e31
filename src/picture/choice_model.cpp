#include "picture/choice_model.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <tuple>

#include "colour/lab.hpp"

namespace evencount::picture {
namespace {

std::uint32_t packed(colour::Rgb c) {
  return static_cast<std::uint32_t>(c.red) << 16 | static_cast<std::uint32_t>(c.green) << 8 | c.blue;
}

/// The first candidate, in order of lightness, whose lightness alone does not put it out of reach.
int first_within(const std::vector<double>& lightness, double from, double reach) {
  const auto middle = std::lower_bound(lightness.begin(), lightness.end(), from);
  const auto first = std::partition_point(lightness.begin(), middle,
                                          [&](double l) { return lightness_difference(from, l) >= reach; });
  return static_cast<int>(first - lightness.begin());
}

int end_within(const std::vector<double>& lightness, double from, double reach) {
  const auto middle = std::lower_bound(lightness.begin(), lightness.end(), from);
  const auto last = std::partition_point(middle, lightness.end(),
                                         [&](double l) { return lightness_difference(from, l) < reach; });
  return static_cast<int>(last - lightness.begin());
}

void list_near_spot(const Spots& spots, const Stock& stock, int spot, double reach, std::vector<float>& row,
                    NearPart& part) {
  const colour::LabD65 from = spots.colours[static_cast<std::size_t>(spot)];
  // A hair more than the reach, for what rounding to float may take off.
  const double margin = reach * (1 + 1e-6);
  const int begin = first_within(stock.colours.lightness, from.lightness, margin);
  const int end = end_within(stock.colours.lightness, from.lightness, margin);
  const auto size = static_cast<std::size_t>(end - begin);
  colour::ciede2000(from, stock.colours, static_cast<std::size_t>(begin), std::span(row).first(size));
  for (std::size_t i = 0; i < size; ++i)
    if (row[i] < reach) {
      part.candidate.push_back(static_cast<std::uint32_t>(begin) + static_cast<std::uint32_t>(i));
      part.difference.push_back(row[i]);
    }
  part.start.push_back(part.candidate.size());
}

}  // namespace

double lightness_difference(double x, double y) {
  const double middle = (x + y) / 2 - 50;
  return std::abs(x - y) / (1 + 0.015 * middle * middle / std::sqrt(20 + middle * middle));
}

Spots merge_equal_cells(std::span<const colour::Rgb> cells) {
  std::vector<std::uint32_t> sorted(cells.size());
  std::transform(cells.begin(), cells.end(), sorted.begin(), packed);
  std::sort(sorted.begin(), sorted.end());
  Spots spots;
  std::vector<std::uint32_t> colours;
  for (const std::uint32_t colour : sorted) {
    if (colours.empty() || colours.back() != colour) {
      colours.push_back(colour);
      spots.weight.push_back(0);
    }
    ++spots.weight.back();
  }
  std::vector<colour::LabD65> labs;
  labs.reserve(colours.size());
  for (const std::uint32_t c : colours)
    labs.push_back(
        colour::to_lab_d65(colour::Rgb{static_cast<std::uint8_t>(c >> 16), static_cast<std::uint8_t>(c >> 8),
                                       static_cast<std::uint8_t>(c)}));
  spots.colours = Columns(labs);
  spots.cells = static_cast<double>(cells.size());
  for (const colour::Rgb cell : cells)
    spots.spot_of_cell.push_back(
        static_cast<int>(std::lower_bound(colours.begin(), colours.end(), packed(cell)) - colours.begin()));
  return spots;
}

Spots merge_near_spots(const Spots& spots, int most) {
  if (spots.size() <= most) {
    Spots same = spots;
    same.spot_of_cell.resize(spots.weight.size());
    std::iota(same.spot_of_cell.begin(), same.spot_of_cell.end(), 0);
    return same;
  }
  struct Sum {
    double weight = 0, lightness = 0, a = 0, b = 0;
    std::vector<int> spots{};
  };
  // The finest grid of cubes in CIELAB that leaves few enough.
  for (double side = 1;; side *= 1.25) {
    std::map<std::tuple<int, int, int>, Sum> cubes;
    for (std::size_t i = 0; i < spots.weight.size(); ++i) {
      const colour::LabD65 c = spots.colours[i];
      const auto place = [side](double x) { return static_cast<int>(std::floor(x / side)); };
      Sum& sum = cubes[{place(c.lightness), place(c.a), place(c.b)}];
      const double w = spots.weight[i];
      sum.weight += w, sum.lightness += w * c.lightness, sum.a += w * c.a, sum.b += w * c.b;
      sum.spots.push_back(static_cast<int>(i));
      if (static_cast<int>(cubes.size()) > most) break;
    }
    if (static_cast<int>(cubes.size()) > most) continue;
    Spots merged;
    merged.spot_of_cell.resize(spots.weight.size());
    std::vector<colour::LabD65> labs;
    for (const auto& [place, sum] : cubes) {
      for (const int spot : sum.spots)
        merged.spot_of_cell[static_cast<std::size_t>(spot)] = static_cast<int>(labs.size());
      labs.push_back({sum.lightness / sum.weight, sum.a / sum.weight, sum.b / sum.weight});
      merged.weight.push_back(sum.weight);
    }
    merged.colours = Columns(labs);
    merged.cells = spots.cells;
    return merged;
  }
}

Stock sort_stock(std::span<const StockColour> stock) {
  std::vector<int> order;
  for (std::size_t i = 0; i < stock.size(); ++i)
    if (stock[i].rule != StockRule::forbidden) order.push_back(static_cast<int>(i));
  const auto at = [&](int i) -> const StockColour& { return stock[static_cast<std::size_t>(i)]; };
  // Equal colours together, those that make others needless first.
  std::sort(order.begin(), order.end(), [&](int i, int j) {
    const auto key = [&](int k) {
      return std::tuple(packed(at(k).colour), at(k).at_most.has_value(), at(k).rule != StockRule::required,
                        k);
    };
    return key(i) < key(j);
  });
  std::vector<int> kept;
  for (const int i : order) {
    const bool needless = at(i).rule == StockRule::free && !kept.empty() &&
                          at(kept.back()).colour == at(i).colour && !at(kept.back()).at_most;
    if (!needless) kept.push_back(i);
  }

  std::vector<colour::LabD65> labs(stock.size());
  for (const int i : kept) labs[static_cast<std::size_t>(i)] = colour::to_lab_d65(at(i).colour);
  const auto lab = [&](int i) { return labs[static_cast<std::size_t>(i)]; };
  std::sort(kept.begin(), kept.end(),
            [&](int i, int j) { return std::pair(lab(i).lightness, i) < std::pair(lab(j).lightness, j); });
  Stock sorted;
  std::vector<colour::LabD65> ordered;
  for (const int i : kept) {
    ordered.push_back(lab(i));
    sorted.index.push_back(i);
    sorted.required.push_back(at(i).rule == StockRule::required);
    sorted.most_cells.push_back(at(i).at_most ? static_cast<double>(*at(i).at_most) : without_limit);
    sorted.limited = sorted.limited || at(i).at_most;
  }
  sorted.colours = Columns(ordered);
  return sorted;
}

std::vector<Part> parts_of(int spots) {
  const int count = std::clamp(spots / 64, 1, 8);
  std::vector<Part> parts;
  for (int i = 0; i < count; ++i) parts.push_back({spots * i / count, spots * (i + 1) / count});
  return parts;
}

const std::vector<float>& ChoiceModel::column(int candidate) {
  std::vector<float>& column = columns_[static_cast<std::size_t>(candidate)];
  if (column.empty()) {
    column.resize(spots_.weight.size());
    colour::ciede2000(stock_.colours[static_cast<std::size_t>(candidate)], spots_.colours, 0, column);
  }
  return column;
}

NearList ChoiceModel::list_near(std::vector<double> reach) const {
  NearList list{parts_, std::vector<NearPart>(parts_.size()), std::move(reach)};
  run([&](int p) {
    NearPart& part = list.near[static_cast<std::size_t>(p)];
    std::vector<float> row(stock_.index.size());
    part.start.push_back(0);
    for (int spot = parts_[static_cast<std::size_t>(p)].begin; spot < parts_[static_cast<std::size_t>(p)].end;
         ++spot)
      list_near_spot(spots_, stock_, spot, list.reach[static_cast<std::size_t>(spot)], row, part);
  });
  return list;
}

void keep_only(NearList& list, const std::vector<bool>& keep, const ChoiceModel& model) {
  model.run([&](int p) {
    NearPart& part = list.near[static_cast<std::size_t>(p)];
    std::size_t kept = 0, from = 0;
    for (std::size_t spot = 0; spot + 1 < part.start.size(); ++spot) {
      const std::size_t end = part.start[spot + 1];
      part.start[spot] = kept;
      for (; from < end; ++from)
        if (keep[part.candidate[from]]) {
          part.candidate[kept] = part.candidate[from];
          part.difference[kept++] = part.difference[from];
        }
    }
    part.start.back() = kept;
    part.candidate.resize(kept), part.difference.resize(kept);
  });
}

}  // namespace evencount::picture
