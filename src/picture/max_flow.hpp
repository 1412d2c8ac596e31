#pragma once
/// The greatest flow through a network, and with it the cheapest cut: what smoothing asks for, once for each bead. This room's own.
///
/// After Y. Boykov, V. Kolmogorov, "An experimental comparison of min-cut/max-flow algorithms for energy minimization in vision",
/// IEEE TPAMI 26(9), 2004: a tree grows from the source and one from the sink; where they touch, flow is sent along; what
/// a full edge cuts off looks for another parent. Trees are kept from one path to the next, which pays where paths are short.
///
/// Properties (tests/picture/max_flow_test.cpp):
///  (1) the flow is that of a textbook solver, and of trying all cuts on small networks
///  (2) the cut that `is_with_source` tells costs as much as the flow
///  (3) of the cheapest cuts it is the one with the fewest nodes on the source's side
/// Capacities are whole numbers, so that nothing is rounded.

#include <cstdint>
#include <deque>
#include <vector>

namespace evencount::picture {

using Flow = std::int64_t;

class FlowNetwork {
 public:
  explicit FlowNetwork(int nodes) : nodes_(static_cast<std::size_t>(nodes)) {}

  /// Edges to the two ends; capacities >= 0, and add up.
  void add_ends(int node, Flow from_source, Flow to_sink);
  /// An edge there and one back; capacities >= 0.
  void add_edge(int from, int to, Flow there, Flow back);

  /// Sends all the flow there is. Once.
  Flow find_flow();
  /// On the source's side of the cut. After find_flow.
  [[nodiscard]] bool is_with_source(int node) const {
    return nodes_[static_cast<std::size_t>(node)].side == Side::source;
  }

 private:
  enum class Side : signed char { free, source, sink };
  static constexpr int none = -1,
                       end = -2;  // instead of an edge to a parent: no parent; the source or the sink itself

  struct Node {
    int first_edge = none;
    int parent = none;  // the edge to the parent
    Flow end_room = 0;  // room from the source, or, below 0, to the sink
    int distance = 0;   // to the end of its tree, at most, as of `checked`
    int checked = 0;    // the round in which the way to the end was last seen whole
    Side side = Side::free;
    bool waiting = false;
  };
  struct Edge {
    int to, next;
    Flow room;
  };

  Node& node(int i) { return nodes_[static_cast<std::size_t>(i)]; }
  Edge& edge(int e) { return edges_[static_cast<std::size_t>(e)]; }
  /// Room on an edge in the direction flow takes in a tree: away from the source, towards the sink.
  [[nodiscard]] Flow room_outwards(Side side, int e) { return edge(side == Side::source ? e : e ^ 1).room; }

  void start_trees();
  void wait(int i);
  int grow();
  void send(int bridge);
  void send_along(int i, Side side, Flow amount);
  Flow narrowest(int i, Side side, Flow amount);
  void adopt();
  int find_parent(int orphan);
  int way_to_end(int i);

  std::vector<Node> nodes_;
  std::vector<Edge> edges_;  // an edge and its way back are neighbours: e and e ^ 1
  std::deque<int> waiting_, orphans_;
  Flow flow_ = 0;
  int round_ = 0;
};

}  // namespace evencount::picture
