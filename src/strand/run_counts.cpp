#include "strand/run_counts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <queue>
#include <tuple>

#include "strand/run_kinds.hpp"
#include "strand/run_moves.hpp"

namespace evencount::strand {
namespace {

enum class Side { not_longer, not_shorter };

/// How good an answer is; the smaller the better. `totals` one a kind.
struct Key {
  std::int64_t error_um = 0, spread = 0, beads = 0, length_um = 0;
  std::vector<int> totals;
  auto operator<=>(const Key&) const = default;
};

/// How many units of each kind may be taken, counted from the least.
struct Bounds {
  std::vector<int> low, high;
};

/// The moves of one kind within its bounds: the totals that are possible, as few evenly spaced rows as they make.
class KindMoves {
 public:
  KindMoves(const RunKind& kind, int low, int high) : kind_(kind) {
    for (int t = low; t <= high; ++t)
      if (spread(t) < no_share) totals_.push_back(t);
  }
  [[nodiscard]] bool none() const { return totals_.empty(); }
  [[nodiscard]] const std::vector<int>& totals() const { return totals_; }
  [[nodiscard]] std::int64_t length_um(int t) const { return kind_.unit_um * t; }
  [[nodiscard]] Cost cost(int t) const {
    return (static_cast<Cost>(spread(t)) << spread_shift) +
           static_cast<Cost>(kind_.unit_beads) * static_cast<Cost>(t);
  }
  /// Of all steps from one total to the next, in units.
  [[nodiscard]] int common_step() const {
    int common = 0;
    for (const int t : totals_) common = std::gcd(common, t - totals_.front());
    return common;
  }

  /// In steps of `grid_um`, from the first total on.
  [[nodiscard]] std::vector<Moves> moves(std::int64_t grid_um) const {
    std::vector<int> levels;
    for (const int t : totals_) levels.push_back(spread(t));
    std::sort(levels.begin(), levels.end());
    levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
    std::vector<Moves> moves;
    for (const int level : levels) {
      // A total of less spread may stand in a row of more: it is there at its own cost already.
      if (const auto row = even_row([&](int t) { return spread(t) <= level; }, level, grid_um)) {
        moves.push_back(*row);
      } else if (const auto own = even_row([&](int t) { return spread(t) == level; }, level, grid_um)) {
        moves.push_back(*own);
      } else {
        for (const int t : totals_)
          if (spread(t) == level) moves.push_back({shift(t, grid_um), 1, 1, cost(t), 0});
      }
    }
    return moves;
  }

  [[nodiscard]] std::int64_t shift(int t, std::int64_t grid_um) const {
    return kind_.unit_um * (t - totals_.front()) / grid_um;
  }

 private:
  [[nodiscard]] int spread(int t) const { return kind_.spreads.front()[static_cast<std::size_t>(t)]; }

  template <typename Belongs>
  [[nodiscard]] std::optional<Moves> even_row(Belongs belongs, int level, std::int64_t grid_um) const {
    std::vector<int> row;
    std::copy_if(totals_.begin(), totals_.end(), std::back_inserter(row), belongs);
    for (std::size_t i = 2; i < row.size(); ++i)
      if (row[i] - row[i - 1] != row[1] - row[0]) return std::nullopt;
    const int step = row.size() > 1 ? row[1] - row[0] : 1;
    const auto beads = static_cast<Cost>(kind_.unit_beads);
    return Moves{shift(row.front(), grid_um), kind_.unit_um * step / grid_um,
                 static_cast<std::int64_t>(row.size()),
                 (static_cast<Cost>(level) << spread_shift) + beads * static_cast<Cost>(row.front()),
                 beads * static_cast<Cost>(step)};
  }

  const RunKind& kind_;
  std::vector<int> totals_;
};

/// The best answers when what is on hand only bounds each kind by itself.
class Relaxation {
 public:
  Relaxation(const std::vector<RunKind>& kinds, const Bounds& bounds, std::int64_t room_um,
             std::int64_t reach_um)
      : room_um_(room_um) {
    for (std::size_t k = 0; k < kinds.size(); ++k) {
      moves_.emplace_back(kinds[k], bounds.low[k], bounds.high[k]);
      if (moves_.back().none()) {
        possible_ = false;
        return;
      }
    }
    for (std::size_t k = 0; k < kinds.size(); ++k) {
      base_um_ += moves_[k].length_um(moves_[k].totals().front());
      grid_um_ = std::gcd(grid_um_, kinds[k].unit_um * moves_[k].common_step());
    }
    if (grid_um_ == 0) grid_um_ = 1;  // nothing can change
    const std::int64_t window_um = std::max<std::int64_t>(0, room_um - base_um_) + reach_um;
    tables_.assign(kinds.size() + 1,
                   std::vector<Cost>(static_cast<std::size_t>(window_um / grid_um_) + 1, unreachable));
    tables_.back().front() = 0;
    for (std::size_t k = kinds.size(); k-- > 0;)
      for (const Moves& moves : moves_[k].moves(grid_um_)) apply(moves, tables_[k + 1], tables_[k]);
  }

  [[nodiscard]] std::optional<Key> best(Side side) const {
    if (!possible_) return std::nullopt;
    const auto found = side == Side::not_longer ? nearest_below() : nearest_above();
    if (!found) return std::nullopt;
    return key_at(*found);
  }

 private:
  using Index = std::int64_t;
  [[nodiscard]] bool reached(Index x) const {
    return tables_.front()[static_cast<std::size_t>(x)] < unreachable;
  }

  [[nodiscard]] std::optional<Index> nearest_below() const {
    if (room_um_ < base_um_) return std::nullopt;
    for (Index x = (room_um_ - base_um_) / grid_um_; x >= 0; --x)
      if (reached(x)) return x;
    return std::nullopt;
  }
  [[nodiscard]] std::optional<Index> nearest_above() const {
    const Index from = room_um_ <= base_um_ ? 0 : (room_um_ - base_um_ + grid_um_ - 1) / grid_um_;
    for (Index x = from; x < static_cast<Index>(tables_.front().size()); ++x)
      if (reached(x)) return x;
    return std::nullopt;
  }

  [[nodiscard]] Key key_at(Index x) const {
    const std::int64_t length_um = base_um_ + x * grid_um_;
    const Cost cost = tables_.front()[static_cast<std::size_t>(x)];
    Key key{std::abs(length_um - room_um_),
            cost >> spread_shift,
            cost & ((Cost{1} << spread_shift) - 1),
            length_um,
            {}};
    for (std::size_t k = 0; k < moves_.size(); ++k) {
      const auto& totals = moves_[k].totals();
      const Cost here = tables_[k][static_cast<std::size_t>(x)];
      const auto leads = [&](int t) {
        const Index before = x - moves_[k].shift(t, grid_um_);
        return before >= 0 && tables_[k + 1][static_cast<std::size_t>(before)] + moves_[k].cost(t) == here;
      };
      const auto chosen = std::find_if(totals.begin(), totals.end(), leads);
      key.totals.push_back(*chosen);
      x -= moves_[k].shift(*chosen, grid_um_);
    }
    return key;
  }

  std::int64_t room_um_;
  std::int64_t base_um_ = 0, grid_um_ = 0;
  bool possible_ = true;
  std::vector<KindMoves> moves_;
  std::vector<std::vector<Cost>>
      tables_;  ///< tables_[k]: the cheapest way of the kinds from k on to each length
};

/// Best-first search: what is on hand couples kinds that share a bead.
class Search {
 public:
  explicit Search(const RunProblem& problem) : problem_(problem) {
    least_um_ = 0;
    for (const RunGroup& group : problem.groups) {
      least_um_ += group.unit_um * group.least * places_in_all(group);
      // Taking one unit away, in at most two places, shortens by no more: some answer not shorter than the room lies so near.
      reach_um_ = std::max(reach_um_, 2 * group.unit_um);
    }
    room_um_ = problem.room_um - least_um_;
    kinds_ = kinds_of(problem, std::max<std::int64_t>(0, room_um_) + reach_um_);
    left_ = problem.on_hand;
    for (const RunKind& kind : kinds_)
      for (const TakenBead& taken : kind.takes) left_[index(taken)] -= taken.count * kind.least_total;
  }

  /// What is missing of a bead for the least of every run.
  [[nodiscard]] std::optional<Problem> shortage() const {
    for (std::size_t b = 0; b < left_.size(); ++b)
      if (left_[b] < 0)
        return Problem{ProblemCode::too_few_beads, fmt::format("on hand, bead {}", b),
                       fmt::format("{}", problem_.on_hand[b]),
                       fmt::format("at least {}", problem_.on_hand[b] - left_[b])};
    return std::nullopt;
  }

  [[nodiscard]] std::optional<RunCounts> best(Side side) {
    Bounds all;
    for (const RunKind& kind : kinds_) {
      all.low.push_back(0);
      all.high.push_back(static_cast<int>(kind.spreads.front().size()) - 1);
    }
    open_ = {};
    add(std::move(all), side);
    while (!open_.empty()) {
      const Node node = open_.top();
      open_.pop();
      const auto bead = short_of(node.key.totals);
      if (!bead) return counts(node.key);
      branch(node, *bead, side);
    }
    return std::nullopt;
  }

 private:
  struct Node {
    Key key;
    Bounds bounds;
    bool operator<(const Node& other) const { return key > other.key; }  // the best on top
  };

  static std::size_t index(const TakenBead& taken) { return static_cast<std::size_t>(taken.bead); }

  [[nodiscard]] std::int64_t taken(std::size_t bead, const std::vector<int>& totals) const {
    std::int64_t sum = 0;
    for (std::size_t k = 0; k < kinds_.size(); ++k)
      for (const TakenBead& one : kinds_[k].takes)
        if (index(one) == bead) sum += std::int64_t{one.count} * totals[k];
    return sum;
  }
  [[nodiscard]] std::optional<std::size_t> short_of(const std::vector<int>& totals) const {
    for (std::size_t b = 0; b < left_.size(); ++b)
      if (taken(b, totals) > left_[b]) return b;
    return std::nullopt;
  }

  /// No kind may take more than the others' least leave. False: nothing is possible.
  [[nodiscard]] bool tighten(Bounds& bounds) const {
    for (std::size_t k = 0; k < kinds_.size(); ++k) {
      for (const TakenBead& one : kinds_[k].takes) {
        const std::int64_t others = taken(index(one), bounds.low) - std::int64_t{one.count} * bounds.low[k];
        const std::int64_t room = left_[index(one)] - others;
        if (room < 0) return false;
        bounds.high[k] = static_cast<int>(std::min<std::int64_t>(bounds.high[k], room / one.count));
      }
      if (bounds.low[k] > bounds.high[k]) return false;
    }
    return true;
  }

  void add(Bounds bounds, Side side) {
    if (!tighten(bounds)) return;
    const Relaxation relaxation(kinds_, bounds, room_um_, reach_um_);
    if (auto key = relaxation.best(side)) open_.push({std::move(*key), std::move(bounds)});
  }

  /// Of the kinds that share the bead, the one that takes most of it beyond its bound takes less; or at least
  /// as much, which
  /// leaves less for the others.
  void branch(const Node& node, std::size_t bead, Side side) {
    std::size_t chosen = 0;
    std::int64_t most = 0;
    for (std::size_t k = 0; k < kinds_.size(); ++k)
      for (const TakenBead& one : kinds_[k].takes) {
        const std::int64_t beyond = std::int64_t{one.count} * (node.key.totals[k] - node.bounds.low[k]);
        if (index(one) != bead || beyond <= most) continue;
        most = beyond;
        chosen = k;
      }
    Bounds fewer = node.bounds, more = node.bounds;
    fewer.high[chosen] = node.key.totals[chosen] - 1;
    more.low[chosen] = node.key.totals[chosen];
    add(std::move(fewer), side);
    add(std::move(more), side);
  }

  [[nodiscard]] RunCounts counts(const Key& key) const {
    RunCounts result;
    result.length_um = least_um_ + key.length_um;
    result.error_um = result.length_um - problem_.room_um;
    result.spread = static_cast<int>(key.spread);
    result.beads = key.beads;
    result.counts.resize(problem_.groups.size());
    for (std::size_t k = 0; k < kinds_.size(); ++k) {
      const auto shares = shares_of(problem_, kinds_[k], key.totals[k]);
      for (std::size_t i = 0; i < shares.size(); ++i)
        result.counts[kinds_[k].groups[i]] = counts_of(problem_.groups[kinds_[k].groups[i]], shares[i]);
      result.beads += kinds_[k].least_total * kinds_[k].unit_beads;
    }
    return result;
  }

  const RunProblem& problem_;
  std::vector<RunKind> kinds_;
  std::int64_t least_um_ = 0, room_um_ = 0, reach_um_ = 0;
  std::vector<std::int64_t> left_;
  std::priority_queue<Node> open_;
};

Problem out_of_range(std::string where, std::int64_t found, std::string expected) {
  return {ProblemCode::out_of_range, std::move(where), fmt::format("{}", found), std::move(expected)};
}

std::optional<Problem> check(const RunGroup& group, std::size_t limited) {
  if (group.unit_um < 1 || group.unit_um > longest_room_um)
    return out_of_range("length of a run's unit", group.unit_um,
                        fmt::format("1 to {} micrometres", longest_room_um));
  if (group.unit_beads < 0 || group.unit_beads > 1000)
    return out_of_range("beads in a unit", group.unit_beads, "0 to 1000");
  if (group.least < 0 || group.least > most_units)
    return out_of_range("least units of a run", group.least, fmt::format("0 to {}", most_units));
  if (group.most < group.least || group.most > most_units)
    return out_of_range("most units of a run", group.most, fmt::format("{} to {}", group.least, most_units));
  for (const int places : group.places)
    if (places != 1 && places != 2) return out_of_range("places of a run", places, "1 or 2");
  for (std::size_t i = 0; i < group.takes.size(); ++i) {
    const TakenBead& taken = group.takes[i];
    if (taken.bead < (i == 0 ? 0 : group.takes[i - 1].bead + 1) ||
        static_cast<std::size_t>(taken.bead) >= limited)
      return out_of_range("bead that a unit takes", taken.bead, "an ascending index of what is on hand");
    if (taken.count < 1 || taken.count > 1000)
      return out_of_range("beads that a unit takes", taken.count, "1 to 1000");
  }
  return std::nullopt;
}

std::optional<Problem> check(const RunProblem& problem) {
  if (std::abs(problem.room_um) > longest_room_um)
    return out_of_range("room for the runs", problem.room_um,
                        fmt::format("at most {} micrometres", longest_room_um));
  std::size_t runs = 0;
  std::int64_t beads = 0, least_um = 0;
  for (const RunGroup& group : problem.groups) {
    if (auto fault = check(group, problem.on_hand.size())) return fault;
    runs += group.places.size();
    least_um += group.unit_um * group.least * places_in_all(group);
    const std::int64_t within = std::abs(problem.room_um) / group.unit_um + 4;
    beads = std::max(beads, within * group.unit_beads);
  }
  constexpr std::size_t most_runs = 500;
  if (runs > most_runs) return out_of_range("runs", static_cast<std::int64_t>(runs), "at most 500");
  if (least_um > 2 * longest_room_um)
    return out_of_range("the least of every run", least_um,
                        fmt::format("at most {} micrometres", 2 * longest_room_um));
  if (beads > most_beads_in_runs)
    return out_of_range("beads in the runs", beads, fmt::format("at most {}", most_beads_in_runs));
  return std::nullopt;
}

/// 1 to 5 of the header, for two answers to one problem that lie on different sides of the room.
bool better(const RunCounts& a, const RunCounts& b) {
  const auto key = [](const RunCounts& c) {
    return std::tuple(std::abs(c.error_um), c.spread, c.beads, c.length_um);
  };
  return key(a) < key(b);
}

}  // namespace

const RunCounts& RunAnswers::best() const {
  if (!not_longer) return *not_shorter;
  return not_shorter && better(*not_shorter, *not_longer) ? *not_shorter : *not_longer;
}

Result<RunAnswers> solve_runs(const RunProblem& problem) {
  if (auto fault = check(problem)) return *fault;
  Search search(problem);
  if (auto missing = search.shortage()) return *missing;
  RunAnswers answers;
  answers.not_longer = search.best(Side::not_longer);
  // An exact answer is on both sides.
  answers.not_shorter = answers.not_longer && answers.not_longer->error_um == 0
                            ? answers.not_longer
                            : search.best(Side::not_shorter);
  return answers;
}

}  // namespace evencount::strand
