// Diffusion on random crops of the pictures of tests/cases/picture, each a picture of its own: print_finish_crops COUNT
//
// A line for each: where it was cut from, how many beads, and CIEDE2000 at viewing distance without and with diffusion, measured
// from the beads that came out. Fails when one is worse with.

#include <fmt/format.h>

#include "finish.hpp"
#include "picture/diffusion.hpp"
#include "picture/viewing.hpp"

namespace evencount::picture {
namespace {

/// Every other crop has beads of its own, from 2 to 12; the others have the whole picture's 12.
Beaded random_crop(Random& random, const Beaded& whole, int trial, CellWindow& window) {
  window = random_window(random, {40, 40}, 6);
  window.first.column += pick(random, whole.lattice.columns - 39);
  window.first.step += pick(random, whole.lattice.edge - 39);
  Beaded part = crop(whole, window);
  part.lattice.grid = {pick(random, 3), pick(random, 3) == 0, pick(random, 3) == 0};
  part.lattice.step_length = pick(random, 2) == 0 ? 1.0 : 1.23;  // 1.66 mm over 1.35 mm
  if (trial % 2 == 0) return part;
  ChoiceOptions quick;
  quick.effort.prove = false;
  part.choice = choose_stock(part.cells, part.stock, 2 + pick(random, 11), quick).value();
  return part;
}

int run(int count) {
  constexpr std::array pictures{"portrait", "coffee", "flat"};
  std::vector<Beaded> wholes;
  for (const char* picture : pictures) wholes.push_back(load_beaded(picture, 60, 80, {.drop = 1}));
  Random random(200);
  int worse = 0, better = 0;
  for (int trial = 0; trial < count; ++trial) {
    const int which = pick(random, 3);
    CellWindow window;
    const Beaded part = random_crop(random, wholes[static_cast<std::size_t>(which)], trial, window);
    const DiffusionOptions options{.closeness = 0.15 * pick(random, 3)};
    const Diffusion result = diffuse(part.lattice, part.cells, part.stock, part.choice, options).value();
    const auto viewed = [&](std::span<const int> beads) {
      return viewing_difference(part.lattice, part.cells, charted(part, beads)).value().mean;
    };
    const double before = viewed(part.choice.bead_of_cell), after = viewed(result.bead_of_cell);
    worse += after > before, better += after < before;
    fmt::print(
        "{:3} {:8} {:2} x {:2} at {:2}, {:2}  drop {}  {:2} beads  closeness {:.2f}  {:6.3f} -> {:6.3f}{}\n",
        trial + 1, pictures[static_cast<std::size_t>(which)], window.columns, window.steps,
        window.first.column, window.first.step, part.lattice.grid.drop, part.choice.chosen.size(),
        options.closeness, before, after, after > before ? "  WORSE" : "");
  }
  fmt::print("{} crops: {} better with diffusion, {} the same, {} worse\n", count, better,
             count - better - worse, worse);
  return worse > 0 ? 1 : 0;
}

}  // namespace
}  // namespace evencount::picture

int main(int count, char** arguments) {
  return evencount::picture::run(count > 1 ? std::stoi(arguments[1]) : 200);
}
