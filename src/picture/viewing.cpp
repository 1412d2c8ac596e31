#include "picture/viewing.hpp"

#include <fmt/format.h>

#include <cmath>
#include <map>
#include <numeric>

#include "colour/difference.hpp"

namespace evencount::picture {
namespace {

constexpr double reach =
    3;  // standard deviations; what lies beyond is exp(-4.5) = 1.1 % of a Gaussian in the plane

/// exp(-x), 0 <= x <= 5, within 1e-14: std::exp differs in the last bit from one C library to the next.
double exp_of_minus(double x) {
  const double part = -x / 64;
  double sum = 1;
  for (int term = 10; term >= 1; --term) sum = 1 + part / term * sum;
  for (int doubling = 0; doubling < 6; ++doubling) sum *= sum;
  return sum;
}

}  // namespace

Result<Viewing> Viewing::make(const CellLattice& lattice) {
  if (const Result<Done> sound = check_lattice(lattice); !sound) return sound.problem();
  return Viewing(lattice);
}

Viewing::Viewing(const CellLattice& lattice) : lattice_(lattice) {
  for (int column = 0; column < lattice.columns; ++column) taps_.push_back(taps_of(column));
  scale_.reserve(static_cast<std::size_t>(lattice.cells()));
  for (int cell = 0; cell < lattice.cells(); ++cell) {
    double sum = 0;
    visit_near(cell, [&](int, double weight) { sum += weight; });
    scale_.push_back(1 / sum);
  }
}

std::vector<Viewing::Tap> Viewing::taps_of(int column) const {
  const auto& [columns, edge, grid, step_length] = lattice_;
  // A cell is step_length squares large: so many of its widths and lengths make the side of one.
  const double width = 1 / std::sqrt(step_length), length = std::sqrt(step_length);
  const int columns_off = static_cast<int>(reach / width), steps_off = static_cast<int>(reach / length) + 1;
  // On a lattice that is smaller than the kernel a cell is met more than once.
  std::map<int, double> weights;
  for (int by = -columns_off; by <= columns_off; ++by) {
    int other = column + by;
    if (grid.columns_round) other = (other % columns + columns) % columns;
    if (other < 0 || other >= columns) continue;
    for (int step = -steps_off; step <= steps_off; ++step) {
      const double across = by * width,
                   along = 0.5 * length * (2 * step + grid.shift_of(other) - grid.shift_of(column));
      const double square = across * across + along * along;
      if (square > reach * reach) continue;
      const int steps = grid.edge_round ? (step % edge + edge) % edge : step;
      weights[steps * columns + other - column] += exp_of_minus(0.5 * square);
    }
  }
  std::vector<Tap> taps;
  for (const auto& [offset, weight] : weights) taps.push_back({offset, weight});
  return taps;
}

std::vector<colour::Linear> Viewing::blurred(std::span<const colour::Linear> light) const {
  assert(static_cast<int>(light.size()) == lattice_.cells());
  std::vector<colour::Linear> seen;
  seen.reserve(light.size());
  for (int cell = 0; cell < lattice_.cells(); ++cell) {
    colour::Linear sum;
    visit_near(cell, [&](int other, double weight) {
      const colour::Linear& one = light[static_cast<std::size_t>(other)];
      sum.red += weight * one.red, sum.green += weight * one.green, sum.blue += weight * one.blue;
    });
    const double whole = scale(cell);
    seen.push_back({whole * sum.red, whole * sum.green, whole * sum.blue});
  }
  return seen;
}

Result<ViewingDifference> viewing_difference(const CellLattice& lattice,
                                             std::span<const colour::Rgb> original,
                                             std::span<const colour::Rgb> charted) {
  const Result<Viewing> viewing = Viewing::make(lattice);
  if (!viewing) return viewing.problem();
  const auto seen = [&](std::span<const colour::Rgb> colours) {
    std::vector<colour::Linear> light;
    for (const colour::Rgb one : colours) light.push_back(colour::to_linear(one));
    return viewing->blurred(light);
  };
  for (const auto colours : {original, charted})
    if (static_cast<int>(colours.size()) != lattice.cells())
      return Problem{ProblemCode::wrong_size, "picture", fmt::format("{} colours", colours.size()),
                     fmt::format("{} cells", lattice.cells())};
  const auto wanted = seen(original), had = seen(charted);
  ViewingDifference difference;
  for (std::size_t cell = 0; cell < wanted.size(); ++cell)
    difference.of_cell.push_back(
        colour::ciede2000(colour::to_lab_d65(wanted[cell]), colour::to_lab_d65(had[cell])));
  difference.mean = std::accumulate(difference.of_cell.begin(), difference.of_cell.end(), 0.0) /
                    static_cast<double>(lattice.cells());
  return difference;
}

}  // namespace evencount::picture
