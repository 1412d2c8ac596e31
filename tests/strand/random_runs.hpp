#pragma once
/// Random problems of counting runs.

#include <random>

#include "strand/run_counts.hpp"

namespace evencount::strand {

using Random = std::mt19937;

inline int pick(Random& random, int below) {
  return static_cast<int>(random() % static_cast<unsigned>(below));
}

/// Units whose lengths are whole multiples of `grid_um`; every third problem has beads that are short, shared between groups.
struct RandomRuns {
  int most_groups = 3, most_runs = 3;
  int shortest = 8, longest = 40;  ///< of a unit, in grid steps
  std::int64_t grid_um = 100;
  int most_count = 8;  ///< about what a run takes
  int bounded_in = 2;  ///< one group in so many has a `most`
};

inline RunProblem random_runs(Random& random, const RandomRuns& wanted) {
  RunProblem problem;
  const int groups = 1 + pick(random, wanted.most_groups);
  const bool limited = pick(random, 3) == 0;
  if (limited)
    for (int i = 1 + pick(random, 2); i > 0; --i)
      problem.on_hand.push_back(3 + pick(random, wanted.most_count * groups * 2));
  std::int64_t units_um = 0;
  for (int g = 0; g < groups; ++g) {
    RunGroup group;
    if (g > 0 && pick(random, 3) == 0) {  // the same unit in a group of its own
      group = problem.groups[static_cast<std::size_t>(pick(random, g))];
      group.places.clear();
    } else {
      group.unit_um = wanted.grid_um * (wanted.shortest + pick(random, wanted.longest - wanted.shortest));
      group.unit_beads = 1 + pick(random, 4);
      for (std::size_t b = 0; b < problem.on_hand.size(); ++b)
        if (pick(random, 3) != 0) group.takes.push_back({static_cast<int>(b), 1 + pick(random, 2)});
    }
    group.least = pick(random, 3) == 0 ? pick(random, 3) : 0;
    group.most =
        pick(random, wanted.bounded_in) == 0 ? group.least + pick(random, wanted.most_count) : most_units;
    for (int r = 1 + pick(random, wanted.most_runs); r > 0; --r) group.places.push_back(1 + pick(random, 2));
    for (const int places : group.places) units_um += places * group.unit_um;
    problem.groups.push_back(std::move(group));
  }
  problem.room_um =
      static_cast<std::int64_t>(random() % static_cast<unsigned>(units_um * wanted.most_count / 2 + 1)) -
      wanted.grid_um * 20;
  if (pick(random, 2) == 0) problem.room_um -= problem.room_um % wanted.grid_um;  // it can come out exactly
  return problem;
}

}  // namespace evencount::strand
