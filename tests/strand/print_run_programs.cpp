// Writes random problems of counting runs as integer programs (CPLEX LP format), one a file, and what the engine makes of them:
//   print_run_programs FOLDER COUNT
// prints a line for each: FILE, then the engine's error (in steps of 500 micrometres), spread and beads, or "none". The objective
// weighs them so that the error counts before the spread and the spread before the beads.

#include <fmt/format.h>

#include <cstdlib>
#include <fstream>
#include <numeric>

#include "random_runs.hpp"

namespace evencount::strand {
namespace {

constexpr std::int64_t grid_um = 500;
constexpr int beads_below = 2000, spread_below = 20;

RunProblem random_problem(unsigned seed) {
  Random random(seed);
  RunProblem problem = random_runs(random, {.most_groups = 6,
                                            .most_runs = 3,
                                            .shortest = 3,
                                            .longest = 18,
                                            .grid_um = grid_um,
                                            .most_count = 12,
                                            .bounded_in = 3});
  // A room that parity alone rules out takes such a solver for ever; those are left to trying all.
  std::int64_t common_um = 0;
  for (const RunGroup& group : problem.groups)
    for (const int places : group.places) common_um = std::gcd(common_um, places * group.unit_um);
  problem.room_um -= problem.room_um % common_um;
  return problem;
}

/// n_G_R: units of run R of group G. low_G, high_G: the least and the most in the group. over, under: too long, too short.
std::string to_program(const RunProblem& problem) {
  std::string beads = "", length = "", bounds = "", rows = "", whole = "";
  std::vector<std::string> on_hand(problem.on_hand.size());
  std::string objective =
      fmt::format(" {} over + {} under", beads_below * spread_below, beads_below * spread_below);
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const RunGroup& group = problem.groups[g];
    objective += fmt::format(" + {} high_{} - {} low_{}", beads_below, g, beads_below, g);
    whole += fmt::format(" high_{}\n low_{}\n", g, g);
    for (std::size_t r = 0; r < group.places.size(); ++r) {
      const std::string run = fmt::format("n_{}_{}", g, r);
      const int places = group.places[r];
      objective += fmt::format("\n + {} {}", group.unit_beads * places, run);
      length += fmt::format(" + {} {}", group.unit_um / grid_um * places, run);
      rows += fmt::format(" most_{0}: {0} - high_{1} <= 0\n least_{0}: {0} - low_{1} >= 0\n", run, g);
      // Runs in as many places may change counts, so that the solver need not try all orders.
      for (std::size_t before = r; before-- > 0;)
        if (group.places[before] == places) {
          rows += fmt::format(" order_{0}: n_{1}_{2} - {0} >= 0\n", run, g, before);
          break;
        }
      bounds += fmt::format(
          " {} <= {} <= {}\n", group.least, run,
          std::min<std::int64_t>(
              group.most, std::max<std::int64_t>(0, problem.room_um) / group.unit_um + 2 + group.least));
      whole += " " + run + "\n";
      for (const TakenBead& taken : group.takes)
        on_hand[static_cast<std::size_t>(taken.bead)] += fmt::format(" + {} {}", taken.count * places, run);
    }
  }
  for (std::size_t b = 0; b < on_hand.size(); ++b)
    if (!on_hand[b].empty()) rows += fmt::format(" on_hand_{}:{} <= {}\n", b, on_hand[b], problem.on_hand[b]);
  return "Minimize\n total:" + objective + "\nSubject To\n" +
         fmt::format(" length:{} - over + under = {}\n", length, problem.room_um / grid_um) + rows +
         "Bounds\n" + bounds + "General\n" + whole + "End\n";
}

void print_trial(const std::string& folder, unsigned seed) {
  const RunProblem problem = random_problem(seed);
  const std::string file = fmt::format("{}/runs_{}.lp", folder, seed);
  std::ofstream(file) << to_program(problem);
  const auto answers = solve_runs(problem);
  if (!answers) return fmt::print("{} none\n", file);
  const RunCounts& best = answers->best();
  fmt::print("{} {} {} {}\n", file, std::abs(best.error_um) / grid_um, best.spread, best.beads);
}

}  // namespace
}  // namespace evencount::strand

int main(int count, char** arguments) {
  if (count != 3) return 2;
  const auto trials = static_cast<unsigned>(std::strtoul(arguments[2], nullptr, 10));
  for (unsigned seed = 1; seed <= trials; ++seed) evencount::strand::print_trial(arguments[1], seed);
}
