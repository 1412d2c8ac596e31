#include "picture/smoothing.hpp"

#include <fmt/format.h>

#include <cmath>

#include "picture/expansion.hpp"
#include "picture/isolated.hpp"

namespace evencount::picture {
namespace {

Result<Done> check(const SmoothingOptions& options) {
  const auto bad = [](const char* what, double found, const char* expected) {
    return Problem{ProblemCode::out_of_range, what, fmt::format("{}", found), expected};
  };
  // A border of 10,000 outweighs every colour of a cell's neighbours.
  if (!(options.strength >= 0 && options.strength <= 10'000))
    return bad("strength", options.strength, "0 to 10000");
  if (!(options.outline > 0)) return bad("outline", options.outline, "above 0");
  if (!(options.most_loss >= 0)) return bad("most loss", options.most_loss, "0 or more");
  return Done{};
}

int count_borders(const Neighbours& neighbours, const Beading& beading) {
  int count = 0;
  for (int cell = 0; cell < beading.cells(); ++cell)
    for (const int other : neighbours.of(cell))
      count += cell < other && beading.at(cell) != beading.at(other);
  return count;
}

}  // namespace

Result<Smoothing> smooth(const CellLattice& lattice, std::span<const colour::Rgb> cells,
                         std::span<const StockColour> stock, const StockChoice& choice,
                         const SmoothingOptions& options) {
  if (const Result<Done> sound = check(options); !sound) return sound.problem();
  const Result<Beading> given = Beading::make(lattice, cells, stock, choice);
  if (!given) return given.problem();
  const Neighbours neighbours(lattice);
  Beading beading = *given;
  if (options.strength > 0)
    expand_all(SmoothCost(neighbours, cells, options.strength, options.outline), beading);
  if (options.most_loss > 0)
    join_isolated(neighbours, beading, given->mean() * beading.cells() * (1 + options.most_loss));

  Smoothing result;
  result.mean_before = given->mean(), result.mean_after = beading.mean();
  result.borders_before = count_borders(neighbours, *given);
  result.borders_after = count_borders(neighbours, beading);
  result.changed = beading.changes(*given);
  result.bead_of_cell = beading.bead_of_cell();
  result.isolated_before = count_isolated(lattice, choice.bead_of_cell);
  result.isolated_after = count_isolated(lattice, result.bead_of_cell);
  result.rules = check_rules(stock, choice.chosen, result.bead_of_cell);
  return result;
}

int count_isolated(const CellLattice& lattice, std::span<const int> bead_of_cell) {
  const Neighbours neighbours(lattice);
  int count = 0;
  for (int cell = 0; cell < lattice.cells(); ++cell) {
    bool alone = !neighbours.of(cell).empty();
    for (const int other : neighbours.of(cell))
      alone &= bead_of_cell[static_cast<std::size_t>(other)] != bead_of_cell[static_cast<std::size_t>(cell)];
    count += alone;
  }
  return count;
}

}  // namespace evencount::picture
