#pragma once
/// For techniques that leave no cell out. Internal to the room.

#include <fmt/format.h>

#include "weave/lattice.hpp"

namespace evencount::weave {

/// Whether every cell that can hold a bead has one, and no other cell has; else wrong_size, naming the first that is wrong.
[[nodiscard]] inline Result<Done> check_filled(const chart::Chart& chart, const Lattice& lattice,
                                               std::string_view technique) {
  for (int step = 0; step < chart.edge(); ++step) {
    for (int column = 0; column < chart.columns(); ++column) {
      const bool bead = chart.at({column, step}) != chart::no_bead;
      if (bead == lattice.holds_bead({column, step})) continue;
      return Problem{ProblemCode::wrong_size, fmt::format("column {}, step {}", column, step),
                     bead ? "a bead" : "an empty cell",
                     bead ? fmt::format("no bead in the middles and corners of {}'s units", technique)
                          : fmt::format("a bead in every cell for {}", technique)};
    }
  }
  return Done{};
}

}  // namespace evencount::weave
