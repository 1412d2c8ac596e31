#include "picture/max_flow.hpp"

#include <gtest/gtest.h>

#include "oracle/flow_oracle.hpp"
#include "pictures.hpp"

namespace evencount::picture {
namespace {

/// The same network twice.
struct Networks {
  explicit Networks(int nodes) : fast(nodes), slow(nodes) {}

  void add_ends(int node, Flow from_source, Flow to_sink) {
    fast.add_ends(node, from_source, to_sink);
    slow.room[slow.source()][static_cast<std::size_t>(node)] += from_source;
    slow.room[static_cast<std::size_t>(node)][slow.sink()] += to_sink;
  }
  void add_edge(int from, int to, Flow there, Flow back) {
    fast.add_edge(from, to, there, back);
    slow.room[static_cast<std::size_t>(from)][static_cast<std::size_t>(to)] += there;
    slow.room[static_cast<std::size_t>(to)][static_cast<std::size_t>(from)] += back;
  }

  FlowNetwork fast;
  oracle::Network slow;
};

/// Few capacities, so that ties are common; zeros, parallel edges, nodes with both ends or none.
Networks random_network(Random& random, int nodes, int edges, int most) {
  Networks networks(nodes);
  for (int i = 0; i < nodes; ++i)
    for (int times = pick(random, 3); times > 0; --times)
      networks.add_ends(i, pick(random, 2) * pick(random, most), pick(random, 2) * pick(random, most));
  for (int e = 0; e < edges; ++e) {
    const int from = pick(random, nodes), to = (from + 1 + pick(random, nodes - 1)) % nodes;
    networks.add_edge(from, to, pick(random, most), pick(random, most));
  }
  return networks;
}

std::vector<bool> sides(const FlowNetwork& network, int nodes) {
  std::vector<bool> with_source;
  for (int i = 0; i < nodes; ++i) with_source.push_back(network.is_with_source(i));
  return with_source;
}

TEST(MaxFlow, IsTheLeastOfAllCuts) {
  Random random(1);
  for (int trial = 0; trial < 400; ++trial) {
    SCOPED_TRACE(trial);
    const int nodes = 2 + pick(random, 8);
    Networks networks = random_network(random, nodes, pick(random, 20), 2 + pick(random, 9));
    const Flow flow = networks.fast.find_flow();
    const std::vector<bool> with_source = sides(networks.fast, nodes);
    const oracle::LeastCut least = oracle::least_cut(networks.slow);
    EXPECT_EQ(flow, least.cost);
    EXPECT_EQ(oracle::cut(networks.slow, with_source), flow);
    EXPECT_EQ(std::count(with_source.begin(), with_source.end(), true), least.with_source);
  }
}

TEST(MaxFlow, AgreesWithShortestPaths) {
  Random random(2);
  for (int trial = 0; trial < 60; ++trial) {
    SCOPED_TRACE(trial);
    const int nodes = 20 + pick(random, 80);
    Networks networks = random_network(random, nodes, nodes * (1 + pick(random, 5)), 2 + pick(random, 1000));
    const Flow flow = networks.fast.find_flow();
    EXPECT_EQ(flow, oracle::greatest_flow(networks.slow));
    EXPECT_EQ(oracle::cut(networks.slow, sides(networks.fast, nodes)), flow);
  }
}

// Long, narrow ways from one end to the other: trees are torn and mended again and again.
TEST(MaxFlow, AgreesOnStrips) {
  Random random(3);
  for (int trial = 0; trial < 30; ++trial) {
    SCOPED_TRACE(trial);
    const int columns = 2 + pick(random, 3), steps = 30, nodes = columns * steps;
    Networks networks(nodes);
    for (int c = 0; c < columns; ++c) {
      networks.add_ends(c, 5 + pick(random, 20), 0);
      networks.add_ends(nodes - 1 - c, 0, 5 + pick(random, 20));
    }
    for (int i = 0; i < nodes; ++i) {
      if (i % columns + 1 < columns) networks.add_edge(i, i + 1, pick(random, 12), pick(random, 12));
      if (i + columns < nodes) networks.add_edge(i, i + columns, 1 + pick(random, 12), pick(random, 12));
    }
    const Flow flow = networks.fast.find_flow();
    EXPECT_GT(flow, 0);
    EXPECT_EQ(flow, oracle::greatest_flow(networks.slow));
    EXPECT_EQ(oracle::cut(networks.slow, sides(networks.fast, nodes)), flow);
  }
}

TEST(MaxFlow, NothingFlowsWithoutAWay) {
  FlowNetwork apart(2);
  apart.add_ends(0, 7, 0);
  apart.add_ends(1, 0, 9);
  EXPECT_EQ(apart.find_flow(), 0);
  EXPECT_TRUE(apart.is_with_source(0));
  EXPECT_FALSE(apart.is_with_source(1));
}

}  // namespace
}  // namespace evencount::picture
