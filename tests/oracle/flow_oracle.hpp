#pragma once
/// The greatest flow and the cheapest cut, by slow and obvious ways.

#include <algorithm>
#include <cstdint>
#include <limits>
#include <queue>
#include <vector>

namespace evencount::picture::oracle {

/// A network on `nodes` inner nodes; the source is node `nodes`, the sink `nodes + 1`. room[from][to].
struct Network {
  explicit Network(int inner)
      : nodes(inner),
        room(static_cast<std::size_t>(inner) + 2,
             std::vector<std::int64_t>(static_cast<std::size_t>(inner) + 2, 0)) {}

  int nodes;
  std::vector<std::vector<std::int64_t>> room;

  [[nodiscard]] std::size_t source() const { return static_cast<std::size_t>(nodes); }
  [[nodiscard]] std::size_t sink() const { return static_cast<std::size_t>(nodes) + 1; }
};

/// What it costs to cut the network so that these inner nodes stay with the source.
inline std::int64_t cut(const Network& network, const std::vector<bool>& with_source) {
  const auto side = [&](std::size_t i) {
    return i == network.source() || (i != network.sink() && with_source[i]);
  };
  std::int64_t sum = 0;
  for (std::size_t from = 0; from < network.room.size(); ++from)
    for (std::size_t to = 0; to < network.room.size(); ++to)
      if (side(from) && !side(to)) sum += network.room[from][to];
  return sum;
}

/// By trying all cuts: the least cost, and how many nodes stay with the source in the smallest cut that has it.
struct LeastCut {
  std::int64_t cost = std::numeric_limits<std::int64_t>::max();
  int with_source = 0;
};

inline LeastCut least_cut(const Network& network) {
  LeastCut least;
  for (unsigned set = 0; set < 1u << network.nodes; ++set) {
    std::vector<bool> with_source;
    for (int i = 0; i < network.nodes; ++i) with_source.push_back((set >> i & 1) != 0);
    const std::int64_t cost = cut(network, with_source);
    const int count = static_cast<int>(std::count(with_source.begin(), with_source.end(), true));
    if (cost < least.cost || (cost == least.cost && count < least.with_source)) least = {cost, count};
  }
  return least;
}

/// By sending flow along shortest paths (J. Edmonds, R. M. Karp 1972).
inline std::int64_t greatest_flow(Network network) {
  std::int64_t flow = 0;
  for (;;) {
    std::vector<std::size_t> before(network.room.size(), network.room.size());
    std::queue<std::size_t> waiting;
    waiting.push(network.source());
    before[network.source()] = network.source();
    while (!waiting.empty()) {
      const std::size_t from = waiting.front();
      waiting.pop();
      for (std::size_t to = 0; to < network.room.size(); ++to)
        if (before[to] == network.room.size() && network.room[from][to] > 0)
          before[to] = from, waiting.push(to);
    }
    if (before[network.sink()] == network.room.size()) return flow;
    std::int64_t amount = std::numeric_limits<std::int64_t>::max();
    for (std::size_t to = network.sink(); to != network.source(); to = before[to])
      amount = std::min(amount, network.room[before[to]][to]);
    for (std::size_t to = network.sink(); to != network.source(); to = before[to])
      network.room[before[to]][to] -= amount, network.room[to][before[to]] += amount;
    flow += amount;
  }
}

}  // namespace evencount::picture::oracle
