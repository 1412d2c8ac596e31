#pragma once
/// Pieces of every technique there is, whole and shaped, small and larger, for properties of whatever is read off a plan.

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

#include "weave/shapes.hpp"
#include "weave/technique.hpp"

namespace evencount::weave::testing_support {

struct AnyPiece {
  std::string name;  ///< for messages
  std::string technique;
  chart::Chart chart;
  Making making;

  [[nodiscard]] Plan plan() const { return make_plan(technique, chart, making).value(); }
};

/// Rows of so many beads, one a column, each centred on the others: brick stitch with points.
inline chart::Chart centred_columns(const std::vector<int>& beads) {
  const int most = *std::max_element(beads.begin(), beads.end());
  // Columns of odd place lie half a step further on, so their beads begin there.
  auto chart = chart::Chart::make(static_cast<int>(beads.size()), most + 1, chart::no_bead).value();
  for (int column = 0; column < chart.columns(); ++column) {
    const int count = beads[static_cast<std::size_t>(column)];
    const int begin = most - count + (beads.front() % 2 == most % 2 ? 0 : 1);  // in half steps
    for (int i = 0; i < count; ++i) chart.set({column, (begin + 2 * i) / 2}, static_cast<Bead>(column % 3));
  }
  return chart;
}

inline std::vector<AnyPiece> every_piece() {
  Random random(20'251);
  std::vector<AnyPiece> pieces;
  const auto add = [&](std::string_view technique, const chart::Chart& chart, Making making) {
    if (!make_plan(technique, chart, making)) return;
    pieces.push_back({fmt::format("{} {}x{} {} from {}", technique, chart.columns(), chart.edge(),
                                  closure_name(making.closure), making.begin_at),
                      std::string(technique), chart, making});
  };
  for (const Technique& technique : techniques())
    for (const Closure closure : technique.closures)
      for (const int columns : {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 13, 20, 21})
        for (const int edge : {1, 2, 3, 5, 8, 9})
          if (technique.check_size(columns, edge))
            add(technique.id, filled_chart(random, technique.lattice(columns, edge), 4), {closure});
  for (int i = 0; i < 60; ++i) add("peyote-shaped", random_shape(random, 14), {Closure::open});
  for (const auto& beads :
       {std::vector{4, 3, 2}, {3, 4, 5, 6}, {5, 4, 5, 4, 3}, {2, 3, 4, 3, 2}, {6, 5, 4, 3, 2, 1}})
    add("brick", centred_columns(beads), {Closure::open});
  for (const int begin_at : {1, 2, 3, 5})
    for (const int columns : {6, 8, 12, 24})
      add("peyote-bezel", filled_chart(random, find_technique("peyote-bezel")->lattice(columns, 6), 4),
          {Closure::round, begin_at});
  for (const int left_out : {1, 5, 7}) {
    chart::Chart bezel = filled_chart(random, find_technique("peyote-bezel")->lattice(12, 4), 4);
    bezel.set({left_out, 3}, chart::no_bead);
    add("peyote-bezel", bezel, {Closure::round});
  }
  return pieces;
}

}  // namespace evencount::weave::testing_support
