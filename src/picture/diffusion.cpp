#include "picture/diffusion.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "picture/error_diffusion.hpp"

namespace evencount::picture {
namespace {

constexpr std::array strengths{0.5, 0.75, 0.9, 1.0};  // tried: docs/algorithms/picture_finish.md

}  // namespace

Result<Diffusion> diffuse(const CellLattice& lattice, std::span<const colour::Rgb> cells,
                          std::span<const StockColour> stock, const StockChoice& choice,
                          const DiffusionOptions& options) {
  if (!(options.closeness >= 0 && std::isfinite(options.closeness)))
    return Problem{ProblemCode::out_of_range, "closeness", fmt::format("{}", options.closeness), "0 or more"};
  if (options.rounds < 0)
    return Problem{ProblemCode::out_of_range, "rounds", fmt::format("{}", options.rounds), "0 or more"};
  const Result<Beading> given = Beading::make(lattice, cells, stock, choice);
  if (!given) return given.problem();
  const Viewing viewing = Viewing::make(lattice).value();
  const Target target(viewing, cells);

  const auto cost = [&](const Beading& beading) {
    return viewing_mean(target, beading) + options.closeness * beading.mean();
  };
  Diffusion result;
  result.mean_before = given->mean(), result.viewing_before = viewing_mean(target, *given);
  Beading beading = *given;
  double least = cost(*given);
  for (const double strength : strengths) {
    Beading one = diffused(target, *given, strength, error_shares(lattice.grid.drop > 0));
    if (const double its = cost(one); its < least)
      least = its, beading = std::move(one), result.strength = strength;
  }
  ViewingSearch search(target, std::move(beading), options.closeness);
  search.improve(options.rounds);
  beading = search.beading();
  // The cost is now at most the given chart's. Where every cell had the nearest bead there was, only the difference at viewing distance
  // can have fallen; where one had not, it may have risen in exchange.
  if (viewing_mean(target, beading) > result.viewing_before) beading = *given, result.strength = 0;
  result.viewing_after = viewing_mean(target, beading);
  result.mean_after = beading.mean();
  result.changed = beading.changes(*given);
  result.bead_of_cell = beading.bead_of_cell();
  result.rules = check_rules(stock, choice.chosen, result.bead_of_cell);
  return result;
}

}  // namespace evencount::picture
