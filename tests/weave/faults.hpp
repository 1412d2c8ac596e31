#pragma once
/// Faults put into plans one at a time, to learn whether replay notices those that change what the needle does.

#include <algorithm>
#include <array>
#include <cstdio>

#include "random_band.hpp"
#include "weave/replay.hpp"

namespace evencount::weave::testing_support {

enum class Fault {
  drop,     ///< a stitch is left out
  swap,     ///< two stitches in the wrong order
  repeat,   ///< a stitch twice
  cell,     ///< another cell, mostly a near neighbour
  travel,   ///< the other way
  no_bead,  ///< strung, but no bead
  turn,     ///< another way of turning
  act       ///< another act
};
inline constexpr std::array faults{Fault::drop,   Fault::swap,    Fault::repeat, Fault::cell,
                                   Fault::travel, Fault::no_bead, Fault::turn,   Fault::act};

inline void shift_rows(Plan& plan, std::size_t at, int by) {
  for (Row& row : plan.rows) {
    if (row.first_stitch > at) row.first_stitch += static_cast<std::size_t>(by);
    if (row.end_stitch > at) row.end_stitch += static_cast<std::size_t>(by);
  }
}

inline bool names_a_cell(Act act) {
  return act == Act::pick_up || act == Act::pass || act == Act::under || act == Act::join;
}

/// What the fields of a stitch mean: those that a stitch of its kind does not use are blanked.
inline Stitch meaning(Stitch stitch) {
  if (stitch.act != Act::turn) stitch.turn = Turn::edge;
  if (stitch.act != Act::pick_up) stitch.bead = chart::no_bead;
  if (!names_a_cell(stitch.act)) stitch.cell = {};
  if (stitch.act == Act::finish) stitch.travel = Travel::left;
  return stitch;
}

/// Whether the needle does the same in both.
inline bool same_meaning(const Plan& a, const Plan& b) {
  if (a.stitches.size() != b.stitches.size()) return false;
  for (std::size_t i = 0; i < a.stitches.size(); ++i)
    if (meaning(a.stitches[i]) != meaning(b.stitches[i])) return false;
  return true;
}

/// The plan with one fault of a kind at a random stitch; unchanged where that stitch can't have it.
inline Plan with_fault(Random& random, Plan plan, Fault fault) {
  const std::size_t at = random() % plan.stitches.size();
  Stitch& stitch = plan.stitches[at];
  const auto place = plan.stitches.begin() + static_cast<std::ptrdiff_t>(at);
  switch (fault) {
    case Fault::drop:
      plan.stitches.erase(place);
      shift_rows(plan, at, -1);
      break;
    case Fault::swap:
      if (at + 1 < plan.stitches.size()) std::swap(stitch, plan.stitches[at + 1]);
      break;
    case Fault::repeat: {
      const Stitch copy = stitch;
      plan.stitches.insert(place, copy);
      shift_rows(plan, at, 1);
      break;
    }
    case Fault::cell:
      if (!names_a_cell(stitch.act)) break;
      // Mostly a near neighbour, which is the hardest to tell.
      stitch.cell.column += pick(random, -2, 2);
      stitch.cell.step += pick(random, -1, 1);
      break;
    case Fault::travel:
      stitch.travel = opposite(stitch.travel);
      break;
    case Fault::no_bead:
      if (stitch.act == Act::pick_up) stitch.bead = chart::no_bead;
      break;
    case Fault::turn:
      if (stitch.act == Act::turn)
        stitch.turn = static_cast<Turn>(pick(random, 0, static_cast<int>(Turn::warp)));
      break;
    case Fault::act:
      stitch.act = static_cast<Act>(pick(random, 0, static_cast<int>(Act::finish)));
      break;
  }
  return plan;
}

/// A piece and what its plan must make.
struct Piece {
  Plan plan;
  chart::Chart chart;
};

/// How many faults of each kind changed a plan, and how many of those replay noticed.
struct FaultCount {
  std::array<int, faults.size()> made{}, noticed{};

  [[nodiscard]] static int sum(const std::array<int, faults.size()>& counts) {
    int all = 0;
    for (const int count : counts) all += count;
    return all;
  }
  [[nodiscard]] double rate() const { return static_cast<double>(sum(noticed)) / sum(made); }
};

inline void print_slipped(const Plan& plan, const Plan& faulty, Fault fault) {
  for (std::size_t k = 0; k < std::min(plan.stitches.size(), faulty.stitches.size()); ++k) {
    if (meaning(plan.stitches[k]) == meaning(faulty.stitches[k])) continue;
    std::printf("slipped: fault %d at stitch %zu, act %d, columns %d, edge %d\n", static_cast<int>(fault), k,
                static_cast<int>(plan.stitches[k].act), plan.lattice.columns, plan.lattice.edge);
    return;
  }
  std::printf("slipped: fault %d at the end, columns %d, edge %d\n", static_cast<int>(fault),
              plan.lattice.columns, plan.lattice.edge);
}

/// Puts one fault into each of so many pieces, every kind in turn; `make_piece(random)` gives a Piece.
/// Prints the first few that slip through.
template <typename MakePiece>
FaultCount count_faults(Random& random, int rounds, MakePiece make_piece) {
  FaultCount count;
  int shown = 0;
  for (int i = 0; i < rounds; ++i) {
    const Piece piece = make_piece(random);
    const std::size_t kind = static_cast<std::size_t>(i) % faults.size();
    const Plan faulty = with_fault(random, piece.plan, faults[kind]);
    if (same_meaning(piece.plan, faulty)) continue;
    ++count.made[kind];
    const auto replayed = replay(faulty);
    if (!replayed || *replayed != piece.chart)
      ++count.noticed[kind];
    else if (shown++ < 10)
      print_slipped(piece.plan, faulty, faults[kind]);
  }
  return count;
}

/// "plan faults noticed by replay, brick: 9990 of 10000 (99.90 %)".
inline void print_faults(const char* technique, const FaultCount& count) {
  std::printf("plan faults noticed by replay, %s: %d of %d (%.2f %%)\n", technique,
              FaultCount::sum(count.noticed), FaultCount::sum(count.made), 100 * count.rate());
}

}  // namespace evencount::weave::testing_support
