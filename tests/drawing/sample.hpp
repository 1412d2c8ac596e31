#pragma once
/// A small hand-made project for the tests of this room.

#include <vector>

#include "drawing/marks.hpp"
#include "project/project.hpp"

namespace evencount::drawing {

/// Two beads (A dark, B pale) and one band of `columns` by `edge`, striped by step.
inline project::Project sample_project(int columns, int edge, bool last_row_empty = false) {
  project::Project project;
  project.title = "Sample";
  project.beads = {*bead::find_size("cylinder-11")};
  project.thread = bead::threads().front();
  project.legend = {{.letter = "A", .name = "ink", .colour = {0x10, 0x18, 0x30}, .bead = "cylinder-11"},
                    {.letter = "B", .name = "milk", .colour = {0xf4, 0xf0, 0xe0}, .bead = "cylinder-11"}};
  project::Band band{.name = "Stripe",
                     .technique = columns % 2 == 0 ? "peyote-even-count" : "peyote-odd-count",
                     .bead = "cylinder-11",
                     .closure = weave::Closure::open,
                     .chart = *chart::Chart::make(columns, edge)};
  for (int step = 0; step < edge; ++step)
    for (int column = 0; column < columns; ++column) {
      const bool empty = last_row_empty && step == edge - 1 && column % 2 == 1;
      band.chart.set({column, step}, empty ? chart::no_bead : static_cast<chart::Bead>(step % 2));
    }
  project.bands = {band};
  return project;
}

template <typename M>
std::vector<M> all_of_kind(const Drawing& drawing) {
  std::vector<M> found;
  for (const auto& mark : drawing.marks)
    if (const M* one = std::get_if<M>(&mark)) found.push_back(*one);
  return found;
}

}  // namespace evencount::drawing
