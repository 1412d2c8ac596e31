#include "picture/dual_bound.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

namespace evencount::picture {
namespace {

/// The relaxation at one set of multipliers.
struct Relaxed {
  double bound = 0;
  std::vector<double> rho;     // by candidate
  Candidates chosen;           // those in, and the best of the open ones
  double last_chosen = 0;      // rho of the worst open one that is chosen
  double first_left = 0;       // rho of the best open one that is not
  std::vector<double> served;  // of each spot: by how many of the chosen
};

struct Wish {
  double worth;  // below 0
  double cells;
  int spot;
  bool operator<(const Wish& other) const {
    return worth != other.worth ? worth < other.worth : spot < other.spot;
  }
};

class Relaxation {
 public:
  Relaxation(ChoiceModel& model, const NearList& list, int count)
      : model_(model), list_(list), count_(count) {}

  Relaxed at(const std::vector<double>& u, const std::vector<Fate>& fates) {
    Relaxed relaxed;
    sum_rho(u, relaxed.rho);
    limit_wishes(u, fates, relaxed.rho);
    choose(fates, relaxed);
    const std::vector<double>& weight = model_.spots().weight;
    for (std::size_t spot = 0; spot < u.size(); ++spot) relaxed.bound += weight[spot] * u[spot];
    for (const int c : relaxed.chosen) relaxed.bound += relaxed.rho[static_cast<std::size_t>(c)];
    count_served(u, relaxed);
    return relaxed;
  }

 private:
  void sum_rho(const std::vector<double>& u, std::vector<double>& rho) {
    const auto candidates = static_cast<std::size_t>(model_.stock().size());
    const bool limited = model_.stock().limited;
    parts_.resize(list_.parts.size()), wanted_.resize(limited ? list_.parts.size() : 0);
    model_.run([&](int p) {
      const auto index = static_cast<std::size_t>(p);
      const NearPart& part = list_.near[index];
      std::vector<double>& sum = parts_[index];
      sum.assign(candidates, 0);
      if (limited) wanted_[index].assign(candidates, 0);
      auto spot = static_cast<std::size_t>(list_.parts[index].begin);
      for (std::size_t row = 0; row + 1 < part.start.size(); ++row, ++spot) {
        const double w = model_.spots().weight[spot], top = u[spot];
        for (std::size_t i = part.start[row]; i < part.start[row + 1]; ++i)
          sum[part.candidate[i]] += w * std::min(part.difference[i] - top, 0.0);
        if (!limited) continue;
        for (std::size_t i = part.start[row]; i < part.start[row + 1]; ++i)
          if (part.difference[i] < top) wanted_[index][part.candidate[i]] += w;
      }
    });
    rho.assign(candidates, 0);
    for (const auto& part : parts_)
      for (std::size_t c = 0; c < candidates; ++c) rho[c] += part[c];
  }

  /// Where more cells wish for a candidate than there are beads of it, the most welcome get them.
  void limit_wishes(const std::vector<double>& u, const std::vector<Fate>& fates, std::vector<double>& rho) {
    wishes_.clear();
    if (!model_.stock().limited) return;
    wishes_.resize(rho.size());
    std::vector<bool> short_of(rho.size(), false);
    for (std::size_t c = 0; c < rho.size(); ++c) {
      double wanted = 0;
      for (const auto& part : wanted_) wanted += part[c];
      short_of[c] = wanted > model_.stock().most_cells[c] && fates[c] != Fate::out;
    }
    for (std::size_t p = 0; p < list_.parts.size(); ++p) {
      const NearPart& part = list_.near[p];
      auto spot = static_cast<std::size_t>(list_.parts[p].begin);
      for (std::size_t row = 0; row + 1 < part.start.size(); ++row, ++spot)
        for (std::size_t i = part.start[row]; i < part.start[row + 1]; ++i)
          if (short_of[part.candidate[i]] && part.difference[i] < u[spot])
            wishes_[part.candidate[i]].push_back(
                {part.difference[i] - u[spot], model_.spots().weight[spot], static_cast<int>(spot)});
    }
    for (std::size_t c = 0; c < rho.size(); ++c)
      if (short_of[c]) rho[c] = grant(wishes_[c], model_.stock().most_cells[c]);
  }

  /// Keeps the wishes that are granted, the last perhaps in part.
  static double grant(std::vector<Wish>& wishes, double beads) {
    std::sort(wishes.begin(), wishes.end());
    double worth = 0;
    std::size_t granted = 0;
    for (; granted < wishes.size() && beads > 0; ++granted) {
      wishes[granted].cells = std::min(wishes[granted].cells, beads);
      beads -= wishes[granted].cells;
      worth += wishes[granted].cells * wishes[granted].worth;
    }
    wishes.resize(granted);
    if (wishes.empty()) wishes.push_back({0, 0, 0});  // none on hand: still not the nearest of everyone
    return worth;
  }

  void choose(const std::vector<Fate>& fates, Relaxed& relaxed) const {
    Candidates open;
    for (std::size_t c = 0; c < fates.size(); ++c) {
      if (fates[c] == Fate::in) relaxed.chosen.push_back(static_cast<int>(c));
      if (fates[c] == Fate::open) open.push_back(static_cast<int>(c));
    }
    const std::size_t more = std::min(open.size(), static_cast<std::size_t>(count_) - relaxed.chosen.size());
    const auto rho = [&](int c) { return relaxed.rho[static_cast<std::size_t>(c)]; };
    const auto better = [&](int a, int b) { return rho(a) != rho(b) ? rho(a) < rho(b) : a < b; };
    std::partial_sort(open.begin(),
                      open.begin() + static_cast<std::ptrdiff_t>(std::min(open.size(), more + 1)), open.end(),
                      better);
    relaxed.last_chosen = more > 0 ? rho(open[more - 1]) : 0;
    relaxed.first_left = more < open.size() ? rho(open[more]) : 0;
    relaxed.chosen.insert(relaxed.chosen.end(), open.begin(),
                          open.begin() + static_cast<std::ptrdiff_t>(more));
    std::sort(relaxed.chosen.begin(), relaxed.chosen.end());
  }

  void count_served(const std::vector<double>& u, Relaxed& relaxed) {
    relaxed.served.assign(u.size(), 0);
    for (const int c : relaxed.chosen) {
      if (!wishes_.empty() && !wishes_[static_cast<std::size_t>(c)].empty()) {
        for (const Wish& wish : wishes_[static_cast<std::size_t>(c)]) {
          const auto spot = static_cast<std::size_t>(wish.spot);
          relaxed.served[spot] += wish.cells / model_.spots().weight[spot];
        }
        continue;
      }
      const std::vector<float>& column = model_.column(c);
      for (std::size_t spot = 0; spot < u.size(); ++spot)
        relaxed.served[spot] += column[spot] < u[spot] ? 1 : 0;
    }
  }

  ChoiceModel& model_;
  const NearList& list_;
  int count_;
  std::vector<std::vector<double>> parts_, wanted_;
  std::vector<std::vector<Wish>> wishes_;  // by candidate; empty where everyone is served
};

/// Decides candidates whose other fate would cost more than `upper`. Returns how many were put out.
int fix(const Relaxed& relaxed, double least_to_beat, Branch& branch) {
  std::vector<bool> chosen(branch.fates.size(), false);
  for (const int c : relaxed.chosen) chosen[static_cast<std::size_t>(c)] = true;
  int put_out = 0;
  for (std::size_t c = 0; c < branch.fates.size(); ++c) {
    if (branch.fates[c] != Fate::open) continue;
    if (chosen[c] && relaxed.bound - relaxed.rho[c] + relaxed.first_left > least_to_beat)
      branch.fates[c] = Fate::in;
    if (!chosen[c] && relaxed.bound + relaxed.rho[c] - relaxed.last_chosen > least_to_beat) {
      branch.fates[c] = Fate::out;
      ++put_out;
    }
  }
  return put_out;
}

}  // namespace

std::vector<double> first_multipliers(const Assignment& choice, const NearList& list) {
  std::vector<double> u(choice.near.size());
  for (std::size_t spot = 0; spot < u.size(); ++spot)
    u[spot] = std::min(choice.near[spot] + 0.5 * (choice.next[spot] - choice.near[spot]), list.reach[spot]);
  return u;
}

void ascend(ChoiceModel& model, NearList& list, int count, Branch& branch, double upper,
            const std::function<double(const Candidates&)>& offer, const AscentLimits& limits) {
  // How the steps go: from memory for their kind, tried on pictures for their values.
  constexpr double first_length = 1.0, shortest = 2e-3, memory = 0.7;
  constexpr int patience = 10;
  Relaxation relaxation(model, list, count);
  const std::vector<double>& weight = model.spots().weight;
  std::vector<double> u = branch.multipliers, direction(u.size(), 0);
  branch.popularity.resize(branch.fates.size(), 0);
  double length = first_length;
  int waited = 0, put_out = 0;
  auto listed = static_cast<int>(
      std::count_if(branch.fates.begin(), branch.fates.end(), [](Fate f) { return f != Fate::out; }));
  for (int round = 0; round < limits.rounds && length > shortest; ++round) {
    const Relaxed relaxed = relaxation.at(u, branch.fates);
    upper = offer(relaxed.chosen);
    for (double& p : branch.popularity) p *= 0.9;
    for (const int c : relaxed.chosen) branch.popularity[static_cast<std::size_t>(c)] += 0.1;
    put_out += fix(relaxed, upper - limits.tolerance, branch);
    if (relaxed.bound > branch.bound) {
      waited = relaxed.bound > branch.bound * (1 + 1e-6) ? 0 : waited + 1;
      branch.bound = relaxed.bound;
      branch.multipliers = u;
    } else {
      ++waited;
    }
    if (branch.bound >= upper - limits.tolerance || upper - branch.bound <= limits.enough_gap * upper) return;
    if (waited >= patience) {
      length /= 2;
      waited = 0;
      u = branch.multipliers;
    }
    if (put_out * 8 > listed) {
      std::vector<bool> keep(branch.fates.size());
      for (std::size_t c = 0; c < keep.size(); ++c) keep[c] = branch.fates[c] != Fate::out;
      keep_only(list, keep, model);
      listed -= put_out;
      put_out = 0;
    }
    double norm = 0;
    for (std::size_t spot = 0; spot < u.size(); ++spot) {
      direction[spot] = memory * direction[spot] + (1 - memory) * (1 - relaxed.served[spot]);
      norm += weight[spot] * direction[spot] * direction[spot];
    }
    if (norm == 0) return;
    const double step = length * (upper - relaxed.bound) / norm;
    for (std::size_t spot = 0; spot < u.size(); ++spot)
      u[spot] = std::clamp(u[spot] + step * direction[spot], 0.0, list.reach[spot]);
  }
}

}  // namespace evencount::picture
