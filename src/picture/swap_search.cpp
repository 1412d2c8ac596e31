#include "picture/swap_search.hpp"

#include <algorithm>

namespace evencount::picture {
namespace {

/// How much every newcomer would change the total, and every exchange of one chosen for one newcomer.
struct Gains {
  std::size_t places;
  std::vector<double> adding;      // by candidate
  std::vector<double> correction;  // by candidate and place
  std::vector<double> leaving;     // by place

  Gains(std::size_t candidates, std::size_t chosen)
      : places(chosen), adding(candidates, 0), correction(candidates * chosen, 0), leaving(chosen, 0) {}

  Gains& operator+=(const Gains& other) {
    const auto add = [](std::vector<double>& to, const std::vector<double>& from) {
      for (std::size_t i = 0; i < to.size(); ++i) to[i] += from[i];
    };
    add(adding, other.adding), add(correction, other.correction), add(leaving, other.leaving);
    return *this;
  }
  [[nodiscard]] double of(std::size_t newcomer, std::size_t place) const {
    return adding[newcomer] + leaving[place] + correction[newcomer * places + place];
  }
};

void price_part(const NearPart& near, Part part, const std::vector<double>& weight, const Assignment& now,
                Gains& gains) {
  for (int s = part.begin; s < part.end; ++s) {
    const auto spot = static_cast<std::size_t>(s), row = static_cast<std::size_t>(s - part.begin);
    const double first = now.near[spot], second = now.next[spot], w = weight[spot];
    const auto place = static_cast<std::size_t>(now.first[spot]);
    gains.leaving[place] += w * (second - first);
    for (std::size_t i = near.start[row]; i < near.start[row + 1]; ++i) {
      const double difference = near.difference[i];
      if (difference >= second) continue;
      const std::size_t newcomer = near.candidate[i];
      gains.adding[newcomer] += w * std::min(difference - first, 0.0);
      gains.correction[newcomer * gains.places + place] += w * (std::max(difference, first) - second);
    }
  }
}

Gains price_exchanges(const ChoiceModel& model, const NearList& list, const Assignment& now) {
  std::vector<Gains> parts(list.parts.size(),
                           Gains(static_cast<std::size_t>(model.stock().size()), now.chosen.size()));
  model.run([&](int p) {
    const auto part = static_cast<std::size_t>(p);
    price_part(list.near[part], list.parts[part], model.spots().weight, now, parts[part]);
  });
  for (std::size_t p = 1; p < parts.size(); ++p) parts.front() += parts[p];
  return std::move(parts.front());
}

struct Exchange {
  double change;
  int newcomer;
  std::size_t place;
};

/// The best exchange for each newcomer, the most promising first. With limits a price is a guess, so several are worth a try.
std::vector<Exchange> promising(const ChoiceModel& model, const Assignment& now, const Gains& gains) {
  std::vector<bool> taken(static_cast<std::size_t>(model.stock().size()), false);
  for (const int c : now.chosen) taken[static_cast<std::size_t>(c)] = true;
  std::vector<Exchange> exchanges;
  for (std::size_t newcomer = 0; newcomer < taken.size(); ++newcomer) {
    if (taken[newcomer]) continue;
    Exchange best{0, static_cast<int>(newcomer), now.chosen.size()};
    for (std::size_t place = 0; place < now.chosen.size(); ++place) {
      if (model.stock().required[static_cast<std::size_t>(now.chosen[place])]) continue;
      if (const double change = gains.of(newcomer, place); change < best.change)
        best.change = change, best.place = place;
    }
    if (best.place < now.chosen.size()) exchanges.push_back(best);
  }
  const std::size_t tries = std::min<std::size_t>(exchanges.size(), model.stock().limited ? 24 : 1);
  std::partial_sort(exchanges.begin(), exchanges.begin() + static_cast<std::ptrdiff_t>(tries),
                    exchanges.end(), [](const Exchange& a, const Exchange& b) {
                      return a.change != b.change ? a.change < b.change : a.newcomer < b.newcomer;
                    });
  exchanges.resize(tries);
  return exchanges;
}

}  // namespace

Candidates add_greedily(ChoiceModel& model, const NearList& list, Candidates chosen, int count) {
  const auto candidates = static_cast<std::size_t>(model.stock().size());
  const std::vector<double>& weight = model.spots().weight;
  std::vector<double> near(weight.size(), farther_than_any);
  std::vector<bool> taken(candidates, false);
  const auto take = [&](int candidate) {
    taken[static_cast<std::size_t>(candidate)] = true;
    const std::vector<float>& column = model.column(candidate);
    for (std::size_t spot = 0; spot < near.size(); ++spot)
      near[spot] = std::min<double>(near[spot], column[spot]);
  };
  for (const int c : chosen) take(c);
  while (static_cast<int>(chosen.size()) < std::min(count, model.stock().size())) {
    std::vector<std::vector<double>> parts(list.parts.size(), std::vector<double>(candidates, 0));
    model.run([&](int p) {
      const NearPart& part = list.near[static_cast<std::size_t>(p)];
      std::vector<double>& gain = parts[static_cast<std::size_t>(p)];
      auto spot = static_cast<std::size_t>(list.parts[static_cast<std::size_t>(p)].begin);
      for (std::size_t row = 0; row + 1 < part.start.size(); ++row, ++spot)
        for (std::size_t i = part.start[row]; i < part.start[row + 1]; ++i)
          gain[part.candidate[i]] += weight[spot] * std::max(near[spot] - part.difference[i], 0.0);
    });
    int best = -1;
    double most = -1;
    for (std::size_t candidate = 0; candidate < candidates; ++candidate) {
      double gain = 0;
      for (const auto& part : parts) gain += part[candidate];
      // A bead that is short can't serve more than its share.
      gain *= std::min(1.0, model.stock().most_cells[candidate] * count / model.spots().cells);
      if (!taken[candidate] && gain > most) most = gain, best = static_cast<int>(candidate);
    }
    take(best);
    chosen.push_back(best);
  }
  std::sort(chosen.begin(), chosen.end());
  return chosen;
}

Assignment exchange(ChoiceModel& model, const NearList& list, Assignment start, int swaps) {
  Assignment now = std::move(start);
  for (int swap = 0; swap < swaps; ++swap) {
    bool better = false;
    for (const Exchange& exchange : promising(model, now, price_exchanges(model, list, now))) {
      Candidates chosen = now.chosen;
      chosen[exchange.place] = exchange.newcomer;
      std::sort(chosen.begin(), chosen.end());
      std::optional<Assignment> next = assign(model, std::move(chosen), now.total);
      if (!next || next->total >= now.total * (1 - 1e-12)) continue;
      now = std::move(*next);
      better = true;
      break;
    }
    if (!better) break;
  }
  return now;
}

}  // namespace evencount::picture
