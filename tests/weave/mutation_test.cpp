// Faults put into plans one at a time: replay must notice those that change the fabric.

#include <gtest/gtest.h>

#include <array>
#include <cstdio>

#include "random_band.hpp"
#include "weave/replay.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

enum class Fault { drop, swap, repeat, cell, travel, no_bead, turn, act };
constexpr std::array faults{Fault::drop,   Fault::swap,    Fault::repeat, Fault::cell,
                            Fault::travel, Fault::no_bead, Fault::turn,   Fault::act};

void shift_rows(Plan& plan, std::size_t at, int by) {
  for (Row& row : plan.rows) {
    if (row.first_stitch > at) row.first_stitch += by;
    if (row.end_stitch > at) row.end_stitch += by;
  }
}

bool goes_through(Act act) {
  return act == Act::pick_up || act == Act::pass || act == Act::join;
}

/// What the fields of a stitch mean: those that a stitch of its kind does not use are blanked.
Stitch meaning(Stitch stitch) {
  if (stitch.act != Act::turn) stitch.turn = Turn::edge;
  if (stitch.act != Act::pick_up) stitch.bead = chart::no_bead;
  if (!goes_through(stitch.act)) stitch.cell = {};
  if (stitch.act == Act::finish) stitch.travel = Travel::left;
  return stitch;
}

bool same_meaning(const Plan& a, const Plan& b) {
  if (a.stitches.size() != b.stitches.size()) return false;
  for (std::size_t i = 0; i < a.stitches.size(); ++i)
    if (meaning(a.stitches[i]) != meaning(b.stitches[i])) return false;
  return true;
}

Plan with_fault(Random& random, Plan plan, Fault fault) {
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
      if (!goes_through(stitch.act)) break;
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
      if (stitch.act == Act::turn) stitch.turn = static_cast<Turn>(pick(random, 0, 2));
      break;
    case Fault::act:
      stitch.act = static_cast<Act>(pick(random, 0, 5));
      break;
  }
  return plan;
}

TEST(Mutation, ReplayNoticesFaults) {
  Random random(77);
  std::array<int, faults.size()> made{}, caught{};
  int slipped_shown = 0;
  for (int i = 0; i < 40000; ++i) {
    const Band band = random_band(random, 8, 8);
    const Plan plan = plan_of(band);
    const Fault fault = faults[static_cast<std::size_t>(i) % faults.size()];
    const Plan faulty = with_fault(random, plan, fault);
    if (same_meaning(plan, faulty)) continue;
    ++made[static_cast<std::size_t>(fault)];
    const auto replayed = replay(faulty);
    if (!replayed || *replayed != band.chart) {
      ++caught[static_cast<std::size_t>(fault)];
    } else if (slipped_shown++ < 10) {
      for (std::size_t k = 0; k < std::min(plan.stitches.size(), faulty.stitches.size()); ++k) {
        if (meaning(plan.stitches[k]) == meaning(faulty.stitches[k])) continue;
        std::printf("slipped: fault %d at stitch %zu, act %d, columns %d, edge %d\n", static_cast<int>(fault),
                    k, static_cast<int>(plan.stitches[k].act), band.chart.columns(), band.chart.edge());
        break;
      }
    }
  }
  int all_made = 0, all_caught = 0;
  for (std::size_t f = 0; f < faults.size(); ++f) {
    EXPECT_GT(made[f], 300) << f;
    all_made += made[f];
    all_caught += caught[f];
  }
  const double rate = static_cast<double>(all_caught) / all_made;
  std::printf("plan faults noticed by replay: %d of %d (%.2f %%)\n", all_caught, all_made, 100 * rate);
  RecordProperty("caught", all_caught);
  EXPECT_GE(rate, 0.99);
}

}  // namespace
}  // namespace evencount::weave
