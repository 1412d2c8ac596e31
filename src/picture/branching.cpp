#include "picture/branching.hpp"

#include <algorithm>
#include <set>

#include "picture/swap_search.hpp"

namespace evencount::picture {
namespace {

class Search {
 public:
  Search(ChoiceModel& model, NearList list, int count, Assignment start, const ChoiceEffort& effort,
         double tolerance)
      : model_(model),
        list_(std::move(list)),
        count_(count),
        best_(std::move(start)),
        effort_(effort),
        tolerance_(tolerance) {}

  Proof run(std::vector<double> multipliers) {
    Branch root{std::vector<Fate>(static_cast<std::size_t>(model_.stock().size()), Fate::open),
                std::move(multipliers)};
    for (std::size_t c = 0; c < root.fates.size(); ++c)
      if (model_.stock().required[c]) root.fates[c] = Fate::in;
    climb(list_, root, effort_.dual_rounds);
    Proof proof{.multipliers = root.multipliers};
    std::vector<Branch> open;
    double closed = without_limit;
    settle(std::move(root), open, closed);
    while (!open.empty() && proof.nodes < effort_.nodes && !is_enough(open)) {
      Branch branch = std::move(open.back());
      open.pop_back();
      split(std::move(branch), open, closed);
      proof.nodes += 2;
    }
    proof.bound = std::min(closed, best_.total - tolerance_);
    for (const Branch& branch : open) proof.bound = std::min(proof.bound, branch.bound);
    proof.best = std::move(best_);
    return proof;
  }

 private:
  static constexpr int node_rounds = 60, most_searches = 20;

  void climb(NearList& list, Branch& branch, int rounds) {
    ascend(model_, list, count_, branch, best_.total, [this](const Candidates& set) { return offered(set); },
           {rounds, tolerance_, effort_.enough_gap});
  }

  [[nodiscard]] bool is_enough(const std::vector<Branch>& open) const {
    double least = without_limit;
    for (const Branch& branch : open) least = std::min(least, branch.bound);
    return best_.total - least <= effort_.enough_gap * best_.total;
  }

  /// A set that the relaxation picked: perhaps a better choice, or near one.
  double offered(const Candidates& set) {
    if (!tried_.insert(set).second) return best_.total;
    // Worth exchanging from when it is nearly as good as the best, or better.
    const double nearly = best_.total * (searched_ < most_searches ? 1.01 : 1.0);
    std::optional<Assignment> found = assign(model_, set, nearly);
    if (!found) return best_.total;
    if (found->total < nearly && searched_ < most_searches) {
      ++searched_;
      found = exchange(model_, list_, std::move(*found), effort_.swaps);
    }
    if (found->total < best_.total) best_ = std::move(*found);
    return best_.total;
  }

  /// Keeps a branch that may still hold a better choice; where only one choice is left in it, looks at that.
  void settle(Branch branch, std::vector<Branch>& open, double& closed) {
    if (branch.bound >= best_.total - tolerance_ || !has_room(branch)) return;
    const auto counted = [&](Fate f) { return std::count(branch.fates.begin(), branch.fates.end(), f); };
    const auto in = counted(Fate::in), undecided = counted(Fate::open);
    if (in < count_ && in + undecided > count_) {
      open.push_back(std::move(branch));
      return;
    }
    Candidates chosen;
    for (std::size_t c = 0; c < branch.fates.size(); ++c)
      if (branch.fates[c] == Fate::in || (branch.fates[c] == Fate::open && in < count_))
        chosen.push_back(static_cast<int>(c));
    std::optional<Assignment> only = assign(model_, std::move(chosen));
    if (only && only->total < best_.total) best_ = std::move(*only);
    if (only) closed = std::min(closed, only->total);
  }

  /// Whether some choice in the branch has beads enough.
  [[nodiscard]] bool has_room(const Branch& branch) const {
    double room = 0;
    std::vector<double> open;
    int in = 0;
    for (std::size_t c = 0; c < branch.fates.size(); ++c) {
      const double most = std::min(model_.stock().most_cells[c], model_.spots().cells);
      if (branch.fates[c] == Fate::in) room += most, ++in;
      if (branch.fates[c] == Fate::open) open.push_back(most);
    }
    std::sort(open.rbegin(), open.rend());
    for (std::size_t i = 0; i < open.size() && in < count_; ++i, ++in) room += open[i];
    return room >= model_.spots().cells;
  }

  void split(Branch branch, std::vector<Branch>& open, double& closed) {
    // The least certain: as often picked as not.
    std::size_t pivot = branch.fates.size();
    const auto doubt = [&](std::size_t c) { return std::abs(branch.popularity[c] - 0.5); };
    for (std::size_t c = 0; c < branch.fates.size(); ++c)
      if (branch.fates[c] == Fate::open && (pivot == branch.fates.size() || doubt(c) < doubt(pivot)))
        pivot = c;
    for (const Fate fate : {Fate::out, Fate::in}) {
      Branch child = branch;
      child.fates[pivot] = fate;
      NearList own = list_;
      std::vector<bool> keep(child.fates.size());
      for (std::size_t c = 0; c < keep.size(); ++c) keep[c] = child.fates[c] != Fate::out;
      keep_only(own, keep, model_);
      climb(own, child, node_rounds);
      settle(std::move(child), open, closed);
    }
  }

  ChoiceModel& model_;
  NearList list_;  // thinned by what the root puts out: no better choice holds it
  int count_;
  Assignment best_;
  const ChoiceEffort& effort_;
  double tolerance_;
  std::set<Candidates> tried_;
  int searched_ = 0;
};

}  // namespace

Proof prove(ChoiceModel& model, NearList list, int count, Assignment start, std::vector<double> multipliers,
            const ChoiceEffort& effort, double tolerance) {
  Search search(model, std::move(list), count, std::move(start), effort, tolerance);
  return search.run(std::move(multipliers));
}

}  // namespace evencount::picture
