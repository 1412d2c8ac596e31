// Writes random choices of beads as integer programs (CPLEX LP format), one a file, and what the engine makes of them:
//   print_choice_programs FOLDER COUNT
// prints a line for each: FILE, then the engine's total difference and bound, or "none". The objective is the same total.

#include <fmt/format.h>

#include <cstdlib>
#include <fstream>

#include "colour/difference.hpp"
#include "pictures.hpp"

namespace evencount::picture {
namespace {

struct Trial {
  std::vector<colour::Rgb> cells;
  std::vector<StockColour> stock;
  int count;
};

Trial random_trial(unsigned seed) {
  Random random(seed);
  Trial trial;
  trial.count = 2 + pick(random, 5);
  trial.cells = random_cells(random, 20 + pick(random, 40));
  const int cells = static_cast<int>(trial.cells.size());
  trial.stock =
      random_stock(random, 10 + pick(random, 20), seed % 3 == 1 ? 1 : 0, seed % 2 == 1 ? 6 : 0, cells);
  return trial;
}

/// x_C_B: cell C takes bead B. y_B: bead B is chosen.
std::string to_program(const Trial& trial) {
  const std::size_t cells = trial.cells.size(), beads = trial.stock.size();
  std::string lp = "Minimize\n total:";
  for (std::size_t c = 0; c < cells; ++c)
    for (std::size_t b = 0; b < beads; ++b)
      lp += fmt::format(
          "{} + {:.12f} x_{}_{}", b == 0 ? "\n" : "",
          colour::ciede2000(colour::to_lab_d65(trial.cells[c]), colour::to_lab_d65(trial.stock[b].colour)), c,
          b);
  lp += "\nSubject To\n";
  for (std::size_t c = 0; c < cells; ++c) {
    lp += fmt::format(" cell_{}:", c);
    for (std::size_t b = 0; b < beads; ++b) lp += fmt::format(" + x_{}_{}", c, b);
    lp += " = 1\n";
  }
  for (std::size_t b = 0; b < beads; ++b) {
    for (std::size_t c = 0; c < cells; ++c)
      lp += fmt::format(" chosen_{}_{}: x_{}_{} - y_{} <= 0\n", c, b, c, b, b);
    if (!trial.stock[b].at_most) continue;
    lp += fmt::format(" on_hand_{}:", b);
    for (std::size_t c = 0; c < cells; ++c) lp += fmt::format(" + x_{}_{}", c, b);
    lp += fmt::format(" <= {}\n", *trial.stock[b].at_most);
  }
  lp += " count:";
  for (std::size_t b = 0; b < beads; ++b) lp += fmt::format(" + y_{}", b);
  lp += fmt::format(" <= {}\n", trial.count);
  for (std::size_t b = 0; b < beads; ++b)
    if (trial.stock[b].rule != StockRule::free)
      lp += fmt::format(" rule_{}: y_{} = {}\n", b, b, trial.stock[b].rule == StockRule::required ? 1 : 0);
  lp += "Binary\n";
  for (std::size_t b = 0; b < beads; ++b) lp += fmt::format(" y_{}\n", b);
  return lp + "End\n";
}

void print_trial(const std::string& folder, unsigned seed) {
  const Trial trial = random_trial(seed);
  const std::string file = fmt::format("{}/choice_{}.lp", folder, seed);
  std::ofstream(file) << to_program(trial);
  const Result<StockChoice> choice = choose_stock(trial.cells, trial.stock, trial.count);
  const auto cells = static_cast<double>(trial.cells.size());
  if (choice) {
    fmt::print("{} {:.9f} {:.9f}\n", file, choice->mean * cells, choice->bound * cells);
  } else {
    fmt::print("{} none\n", file);
  }
}

}  // namespace
}  // namespace evencount::picture

int main(int count, char** arguments) {
  if (count != 3) return 2;
  const auto trials = static_cast<unsigned>(std::strtoul(arguments[2], nullptr, 10));
  for (unsigned seed = 1; seed <= trials; ++seed) evencount::picture::print_trial(arguments[1], seed);
}
