#include "strand/run_moves.hpp"

#include <algorithm>

namespace evencount::strand {
namespace {

using Index = std::int64_t;

Cost& at(std::vector<Cost>& costs, Index i) {
  return costs[static_cast<std::size_t>(i)];
}
Cost at(const std::vector<Cost>& costs, Index i) {
  return costs[static_cast<std::size_t>(i)];
}

void apply_one(const Moves& moves, const std::vector<Cost>& prev, std::vector<Cost>& next) {
  const auto size = static_cast<Index>(prev.size());
  for (Index x = moves.first; x < size; ++x)
    at(next, x) = std::min(at(next, x), at(prev, x - moves.first) + moves.first_cost);
}

/// So many that none of them is out of reach within the table.
void apply_unbounded(const Moves& moves, const std::vector<Cost>& prev, std::vector<Cost>& next) {
  const auto size = static_cast<Index>(prev.size());
  std::vector<Cost> best(prev.size(), unreachable);
  for (Index x = moves.first; x < size; ++x) {
    Cost cost = at(prev, x - moves.first) + moves.first_cost;
    if (x - moves.step >= moves.first) cost = std::min(cost, at(best, x - moves.step) + moves.step_cost);
    at(best, x) = cost;
    at(next, x) = std::min(at(next, x), cost);
  }
}

/// The least of a window that slides along every residue of the step.
void apply_window(const Moves& moves, const std::vector<Cost>& prev, std::vector<Cost>& next) {
  const Index size = static_cast<Index>(prev.size()) - moves.first;
  std::vector<Index> queue;
  for (Index residue = 0; residue < std::min(moves.step, size); ++residue) {
    queue.clear();
    std::size_t head = 0;
    const auto key = [&](Index k) {
      return std::int64_t{at(prev, residue + k * moves.step)} - k * std::int64_t{moves.step_cost};
    };
    for (Index k = 0; residue + k * moves.step < size; ++k) {
      if (at(prev, residue + k * moves.step) < unreachable) {
        while (queue.size() > head && key(queue.back()) >= key(k)) queue.pop_back();
        queue.push_back(k);
      }
      while (head < queue.size() && queue[head] <= k - moves.count) ++head;
      if (head == queue.size()) continue;
      const auto cost =
          static_cast<Cost>(key(queue[head]) + k * std::int64_t{moves.step_cost} + moves.first_cost);
      Cost& there = at(next, moves.first + residue + k * moves.step);
      there = std::min(there, cost);
    }
  }
}

}  // namespace

void apply(const Moves& moves, const std::vector<Cost>& prev, std::vector<Cost>& next) {
  if (moves.count == 1) return apply_one(moves, prev, next);
  const Index reach = static_cast<Index>(prev.size()) - moves.first;
  if (moves.count * moves.step >= reach) return apply_unbounded(moves, prev, next);
  apply_window(moves, prev, next);
}

}  // namespace evencount::strand
