#pragma once
/// Projects and pieces to measure on, always the same.

#include <fmt/format.h>

#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

#include "bead/thread.hpp"
#include "chart/letters.hpp"
#include "project/project.hpp"

namespace evencount::bench {

/// So many bands of flat peyote in so many colours, drawn in small blocks as designs are.
inline project::Project project_of(int bands, int columns, int edge, int colours) {
  std::mt19937 random(7);
  project::Project project{
      .title = "Bench", .beads = {*bead::find_size("cylinder-11")}, .thread = bead::threads().front()};
  for (int i = 0; i < colours; ++i)
    project.legend.push_back(
        {.letter = chart::letter_name(i),
         .name = fmt::format("colour {}", i),
         .colour = {static_cast<std::uint8_t>(random()), static_cast<std::uint8_t>(random()),
                    static_cast<std::uint8_t>(random())},
         .bead = "cylinder-11"});
  for (int i = 0; i < bands; ++i) {
    chart::Chart chart = *chart::Chart::make(columns, edge);
    for (int step = 0; step < edge; ++step)
      for (int column = 0; column < columns; ++column)
        chart.set({column, step}, static_cast<chart::Bead>((column / 3 + step / 2 + i) % colours));
    project.bands.push_back({.name = fmt::format("Band {}", i + 1),
                             .technique = "peyote-even-count",
                             .bead = "cylinder-11",
                             .closure = weave::Closure::open,
                             .chart = std::move(chart)});
  }
  return project;
}

/// A chart of twelve beads at random: nothing in it repeats.
inline chart::Chart random_chart(int columns, int edge) {
  auto chart = chart::Chart::make(columns, edge).value();
  std::mt19937 random(1);
  for (int step = 0; step < edge; ++step)
    for (int column = 0; column < columns; ++column)
      chart.set({column, step}, static_cast<chart::Bead>(random() % 12));
  return chart;
}

inline std::vector<std::string> twelve_letters() {
  std::vector<std::string> names;
  for (int i = 0; i < 12; ++i) names.push_back(chart::letter_name(i));
  return names;
}

inline std::string file_text(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

}  // namespace evencount::bench
