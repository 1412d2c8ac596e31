#include "picture/max_flow.hpp"

#include <algorithm>
#include <cassert>
#include <limits>

namespace evencount::picture {

void FlowNetwork::add_ends(int i, Flow from_source, Flow to_sink) {
  assert(from_source >= 0 && to_sink >= 0);
  Flow& room = node(i).end_room;
  (room > 0 ? from_source : to_sink) += room > 0 ? room : -room;
  // What fits through both edges of a node needs no search.
  flow_ += std::min(from_source, to_sink);
  room = from_source - to_sink;
}

void FlowNetwork::add_edge(int from, int to, Flow there, Flow back) {
  assert(from != to && there >= 0 && back >= 0);
  const int e = static_cast<int>(edges_.size());
  edges_.push_back({to, node(from).first_edge, there});
  edges_.push_back({from, node(to).first_edge, back});
  node(from).first_edge = e;
  node(to).first_edge = e + 1;
}

Flow FlowNetwork::find_flow() {
  start_trees();
  for (int bridge = grow(); bridge != none; bridge = grow()) {
    ++round_;
    send(bridge);
    adopt();
  }
  return flow_;
}

void FlowNetwork::start_trees() {
  for (int i = 0; i < static_cast<int>(nodes_.size()); ++i) {
    Node& one = node(i);
    if (one.end_room == 0) continue;
    one.side = one.end_room > 0 ? Side::source : Side::sink;
    one.parent = end, one.distance = 1;
    wait(i);
  }
}

void FlowNetwork::wait(int i) {
  if (node(i).waiting) return;
  node(i).waiting = true;
  waiting_.push_back(i);
}

/// Lets the trees grow until they touch: an edge with room from the source's to the sink's, or `none` when they never do.
int FlowNetwork::grow() {
  while (!waiting_.empty()) {
    const int i = waiting_.front();
    Node& one = node(i);
    if (one.side != Side::free) {
      for (int e = one.first_edge; e != none; e = edge(e).next) {
        if (room_outwards(one.side, e) == 0) continue;
        Node& other = node(edge(e).to);
        if (other.side == Side::free) {
          other.side = one.side, other.parent = e ^ 1;
          other.distance = one.distance + 1, other.checked = one.checked;
          wait(edge(e).to);
        } else if (other.side != one.side) {
          return one.side == Side::source ? e : e ^ 1;  // it may touch again: keeps waiting at the front
        } else if (other.checked <= one.checked && other.distance > one.distance + 1) {
          other.parent = e ^ 1;  // a shorter way to the end
          other.distance = one.distance + 1, other.checked = one.checked;
        }
      }
    }
    one.waiting = false;
    waiting_.pop_front();
  }
  return none;
}

/// The least room from a node to the end of its tree.
Flow FlowNetwork::narrowest(int i, Side side, Flow amount) {
  while (node(i).parent != end) {
    amount = std::min(amount, room_outwards(side, node(i).parent ^ 1));
    i = edge(node(i).parent).to;
  }
  return std::min(amount, side == Side::source ? node(i).end_room : -node(i).end_room);
}

/// Takes so much of the room to the end of a node's tree; those whose edge is then full are orphans.
void FlowNetwork::send_along(int i, Side side, Flow amount) {
  while (node(i).parent != end) {
    const int up = node(i).parent, next = edge(up).to;
    const int along = side == Side::source ? up ^ 1 : up;
    edge(along).room -= amount, edge(along ^ 1).room += amount;
    if (edge(along).room == 0) node(i).parent = none, orphans_.push_back(i);
    i = next;
  }
  node(i).end_room -= side == Side::source ? amount : -amount;
  if (node(i).end_room == 0) node(i).parent = none, orphans_.push_back(i);
}

void FlowNetwork::send(int bridge) {
  const int from = edge(bridge ^ 1).to, to = edge(bridge).to;
  const Flow amount = narrowest(to, Side::sink, narrowest(from, Side::source, edge(bridge).room));
  edge(bridge).room -= amount, edge(bridge ^ 1).room += amount;
  send_along(from, Side::source, amount);
  send_along(to, Side::sink, amount);
  flow_ += amount;
}

/// How many edges it is to the end of a node's tree, or `none` where an orphan is on the way.
int FlowNetwork::way_to_end(int i) {
  int steps = 0, above = i;
  for (; node(above).checked != round_; above = edge(node(above).parent).to, ++steps) {
    if (node(above).parent == none) return none;
    if (node(above).parent == end) {
      node(above).checked = round_, node(above).distance = 1;
      break;
    }
  }
  // All is well from here: remember it, so that the next orphan need not go all the way up.
  const int length = node(above).distance + steps;
  for (int below = i, left = length; below != above; below = edge(node(below).parent).to, --left)
    node(below).checked = round_, node(below).distance = left;
  return length;
}

int FlowNetwork::find_parent(int orphan) {
  const Side side = node(orphan).side;
  int best = none, nearest = std::numeric_limits<int>::max();
  for (int e = node(orphan).first_edge; e != none; e = edge(e).next) {
    // Flow would come over e's way back in the source's tree, and leave over e in the sink's.
    if (room_outwards(side, e ^ 1) == 0) continue;
    const int other = edge(e).to;
    if (node(other).side != side || node(other).parent == none) continue;
    const int distance = way_to_end(other);
    if (distance != none && distance < nearest) best = e, nearest = distance;
  }
  if (best != none) node(orphan).distance = nearest + 1, node(orphan).checked = round_;
  return best;
}

void FlowNetwork::adopt() {
  while (!orphans_.empty()) {
    const int i = orphans_.front();
    orphans_.pop_front();
    const Side side = node(i).side;
    node(i).parent = find_parent(i);
    if (node(i).parent != none) continue;
    // No one takes it: its children are orphans too, and those that could reach it may grow here again.
    for (int e = node(i).first_edge; e != none; e = edge(e).next) {
      const int other = edge(e).to;
      if (node(other).side != side) continue;
      if (room_outwards(side, e ^ 1) > 0) wait(other);
      const int up = node(other).parent;
      if (up != none && up != end && edge(up).to == i) node(other).parent = none, orphans_.push_back(other);
    }
    node(i).side = Side::free;
  }
}

}  // namespace evencount::picture
