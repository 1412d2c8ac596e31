#include "project/carry.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <random>
#include <set>

#include "chart/edit.hpp"
#include "weave/technique.hpp"

namespace evencount::project {
namespace {

using chart::Bead;
using chart::Cell;
using chart::Chart;
using weave::Closure;

constexpr std::array methods{Carry::resample, Carry::repeat, Carry::centre};

Piece piece(std::string_view technique, int columns, int edge) {
  const auto found = *weave::find_technique(technique);
  return {found.lattice(columns, edge), found.closures.front()};
}

/// A size near the wanted one that the technique can make.
Piece makeable(std::string_view technique, int columns, int edge) {
  const auto found = *weave::find_technique(technique);
  while (!found.check_size(columns, edge))
    ++columns, edge += found.check_size(found.lattice(3, 3).columns, edge) ? 0 : 1;
  return piece(technique, columns, edge);
}

Chart filled(const Piece& piece, Bead bead) {
  Chart chart = *Chart::make(piece.lattice.columns, piece.lattice.edge, bead);
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column)
      if (!piece.lattice.holds_bead({column, step})) chart.set({column, step}, chart::no_bead);
  return chart;
}

void each_cell(const Piece& piece, const std::function<void(Cell)>& use) {
  for (int step = 0; step < piece.lattice.edge; ++step)
    for (int column = 0; column < piece.lattice.columns; ++column)
      if (piece.lattice.holds_bead({column, step})) use({column, step});
}

Chart noise(const Piece& piece, std::mt19937& random, int colours) {
  Chart chart = filled(piece, 0);
  each_cell(piece, [&](Cell cell) {
    chart.set(cell, static_cast<Bead>(random() % static_cast<unsigned>(colours)));
  });
  return chart;
}

/// Rectangles on a ground: things with borders and middles.
Chart blobs(const Piece& piece, std::mt19937& random) {
  Chart chart = filled(piece, 0);
  for (int blob = 0; blob < 4; ++blob) {
    const int column = static_cast<int>(random() % static_cast<unsigned>(chart.columns()));
    const int step = static_cast<int>(random() % static_cast<unsigned>(chart.edge()));
    const int width = 1 + static_cast<int>(random() % 6), height = 1 + static_cast<int>(random() % 6);
    each_cell(piece, [&](Cell cell) {
      if (cell.column >= column && cell.column < column + width && cell.step >= step &&
          cell.step < step + height)
        chart.set(cell, static_cast<Bead>(1 + blob % 3));
    });
  }
  return chart;
}

struct Pair {
  std::string_view technique;
  Piece from, to;
};

/// Every technique, to smaller, equal, a little larger and much larger.
std::vector<Pair> pairs() {
  std::vector<Pair> all;
  for (const weave::Technique& technique : weave::techniques())
    for (const auto& [columns, edge] :
         std::vector<std::pair<int, int>>{{6, 9}, {9, 14}, {12, 18}, {14, 20}, {17, 26}, {25, 40}})
      all.push_back({technique.id, makeable(technique.id, 12, 18), makeable(technique.id, columns, edge)});
  return all;
}

std::string told(const Pair& pair) {
  return fmt::format("{} {}x{} to {}x{}", pair.technique, pair.from.lattice.columns, pair.from.lattice.edge,
                     pair.to.lattice.columns, pair.to.lattice.edge);
}

std::set<Bead> colours_of(const Chart& chart) {
  std::set<Bead> colours(chart.cells().begin(), chart.cells().end());
  colours.erase(chart::no_bead);
  return colours;
}

TEST(carry, a_chart_of_one_colour_stays_so_and_every_cell_that_can_holds_a_bead) {
  for (const Pair& pair : pairs())
    for (const Carry method : methods) {
      const auto carried = carry(filled(pair.from, 3), pair.from, pair.to, {.method = method});
      ASSERT_TRUE(carried.ok()) << told(pair) << message(carried.problem());
      EXPECT_EQ(carried->chart, filled(pair.to, 3)) << told(pair) << carry_name(method);
      EXPECT_TRUE(carried->lost.empty());
    }
}

TEST(carry, the_same_size_gives_the_same_chart) {
  std::mt19937 random(1);
  for (const Pair& pair : pairs())
    for (const Carry method : methods)
      for (const bool keep_lines : {true, false}) {
        const Chart chart = noise(pair.from, random, 4);
        const auto carried = carry(chart, pair.from, pair.from, {.method = method, .keep_lines = keep_lines});
        ASSERT_TRUE(carried.ok());
        EXPECT_EQ(carried->chart, chart) << told(pair);
        EXPECT_TRUE(carried->changes.empty());
        EXPECT_EQ(carried->left_out, 0);
      }
}

TEST(carry, resampling_to_a_ring_of_the_same_size_changes_nothing_either) {
  // The same cells, but another closure: the drawing is looked at afresh.
  std::mt19937 random(2);
  for (const std::string_view technique : {"brick", "square", "peyote-odd-count"}) {
    const Piece from = makeable(technique, 7, 12);
    const Piece to{from.lattice, from.closure == Closure::open ? Closure::sew : Closure::open};
    const Chart chart = blobs(from, random);
    const auto carried = carry(chart, from, to, {.method = Carry::resample, .keep_lines = false});
    ASSERT_TRUE(carried.ok());
    int same = 0;
    each_cell(to, [&](Cell cell) { same += carried->chart.at(cell) == chart.at(cell); });
    EXPECT_GE(same, 7 * 12 * 8 / 10) << technique;
  }
}

TEST(carry, there_are_no_new_colours_and_the_changes_are_all_there) {
  std::mt19937 random(3);
  for (const Pair& pair : pairs())
    for (const Carry method : methods)
      for (const bool keep_lines : {true, false})
        for (const Chart& chart : {noise(pair.from, random, 4), blobs(pair.from, random)}) {
          const auto carried = carry(chart, pair.from, pair.to, {.method = method, .keep_lines = keep_lines});
          ASSERT_TRUE(carried.ok()) << told(pair);
          const auto before = colours_of(chart), after = colours_of(carried->chart);
          EXPECT_TRUE(std::ranges::includes(before, after)) << told(pair);
          // The plain chart, made here from the sources alone.
          Chart drawn = filled(pair.to, chart::no_bead);
          each_cell(pair.to, [&](Cell cell) {
            const auto& source =
                carried->source[static_cast<std::size_t>(cell.step * drawn.columns() + cell.column)];
            if (source) drawn.set(cell, chart.at(*source));
          });
          EXPECT_EQ(drawn, plain(chart, *carried));
          std::set<Cell> listed;
          for (const CarryChange& change : carried->changes) {
            EXPECT_TRUE(listed.insert(change.cell).second);
            EXPECT_EQ(drawn.at(change.cell), change.before);
            EXPECT_NE(change.before, change.after);
            EXPECT_EQ(change.reason == ChangeReason::fresh, change.before == chart::no_bead);
            drawn.set(change.cell, change.after);
          }
          EXPECT_EQ(drawn, carried->chart) << told(pair) << carry_name(method);
          each_cell(pair.to,
                    [&](Cell cell) { EXPECT_NE(carried->chart.at(cell), chart::no_bead) << told(pair); });
        }
}

TEST(carry, beads_that_are_left_out_are_counted) {
  std::mt19937 random(4);
  const Piece from = piece("peyote-even-count", 6, 24), to = piece("peyote-even-count", 4, 20);
  const auto carried = carry(noise(from, random, 3), from, to, {.method = Carry::centre});
  ASSERT_TRUE(carried.ok());
  EXPECT_EQ(
      carried->left_out,
      6 * 24 - 4 * 20);  // one column can't be taken off each side: every other one would lose its shift
  EXPECT_TRUE(carried->changes.empty());
}

// Lines.

/// Whether the old cell's place, stretched over the new piece, meets a new bead of the colour: by plain distance.
bool stands_near(const Chart& chart, const Piece& from, const Piece& to, Cell old, Bead bead) {
  const weave::Box all = weave::extent(from.lattice), fresh = weave::extent(to.lattice);
  const bool round = weave::closes_round_edge(to.closure);
  const double wide = fresh.width / all.width;
  const double high = round ? 1.0 * to.lattice.edge / from.lattice.edge : fresh.height / all.height;
  const weave::Box box = weave::box_of(from.lattice, old);
  const double across = (box.across + box.width / 2) * wide;
  const double along =
      round ? (box.along + box.height / 2 - 0.5) * high + 0.5 : (box.along + box.height / 2) * high;
  bool near = false;
  each_cell(to, [&](Cell cell) {
    if (chart.at(cell) != bead) return;
    const weave::Box place = weave::box_of(to.lattice, cell);
    const double dx = std::abs(place.across + place.width / 2 - across);
    double dy = std::abs(place.along + place.height / 2 - along);
    if (round) dy = std::min(dy, to.lattice.edge - dy);
    // Half of each, and half a bead more at the ends of shifted columns.
    near = near || (dx <= (1 + wide) / 2 + 0.01 && dy <= (1 + high) / 2 + 0.51);
  });
  return near;
}

/// Draws a walk one bead wide that never touches itself along more than one side of a bead.
Chart with_walk(const Piece& piece, std::mt19937& random, int beads, std::vector<Cell>& walk) {
  const chart::Grid grid = weave::grid_of(piece.lattice, piece.closure);
  const auto beside = [&](const Chart& chart, Cell cell) {
    if (piece.lattice.holes != weave::Holes::round_squares) return chart::neighbours(chart, grid, cell);
    std::vector<Cell> cells;
    for (const int across : {-1, 1})
      for (const int along : {-1, 1})
        if (const Cell next{cell.column + across, cell.step + along}; chart.contains(next))
          cells.push_back(next);
    return cells;
  };
  Chart chart = filled(piece, 0);
  Cell at;
  do
    at = {static_cast<int>(random() % static_cast<unsigned>(chart.columns())),
          static_cast<int>(random() % static_cast<unsigned>(chart.edge()))};
  while (chart.at(at) == chart::no_bead);
  while (static_cast<int>(walk.size()) < beads) {
    walk.push_back(at);
    chart.set(at, 1);
    std::vector<Cell> next = beside(chart, at);
    std::erase_if(next, [&](Cell cell) {
      const auto around = beside(chart, cell);
      return chart.at(cell) == 1 ||
             std::count_if(around.begin(), around.end(), [&](Cell c) { return chart.at(c) == 1; }) != 1;
    });
    if (next.empty()) break;
    at = next[random() % next.size()];
  }
  return chart;
}

TEST(carry, a_line_or_speck_one_bead_wide_never_vanishes) {
  std::mt19937 random(5);
  for (const Pair& pair : pairs())
    for (int round = 0; round < 40; ++round) {
      std::vector<Cell> walk;
      const Chart chart = with_walk(pair.from, random, 1 + round % 14, walk);
      const auto carried = carry(chart, pair.from, pair.to, {.method = Carry::resample});
      ASSERT_TRUE(carried.ok());
      // The ground may lose a gap that the walk encloses.
      for (const LostTrail& trail : carried->lost) EXPECT_EQ(trail.bead, 0) << told(pair);
      for (const Cell cell : walk)
        EXPECT_TRUE(stands_near(carried->chart, pair.from, pair.to, cell, 1))
            << told(pair) << fmt::format(" column {} step {} of {}", cell.column, cell.step, walk.size());
    }
}

TEST(carry, by_area_alone_lines_do_vanish) {
  const Piece from = piece("loom", 9, 9), to = piece("loom", 3, 3);
  Chart chart = filled(from, 0);
  for (int step = 0; step < 9; ++step) chart.set({4, step}, 1);
  EXPECT_EQ(carry(chart, from, to, {.method = Carry::resample, .keep_lines = false})->chart, filled(to, 0));
  const auto kept = carry(chart, from, to, {.method = Carry::resample});
  for (int step = 0; step < 3; ++step) EXPECT_EQ(kept->chart.at({1, step}), 1);
  EXPECT_TRUE(kept->changes.empty());  // one of the three old beads at each place has that colour
}

TEST(carry, outlines_stay_closed_round_what_they_hold) {
  // A filled box with an outline: from its middle the ground can't be reached but through the outline.
  for (const std::string_view technique :
       {"peyote-even-count", "peyote-odd-count", "brick", "square", "loom"})
    for (const auto& [columns, edge] :
         std::vector<std::pair<int, int>>{{12, 13}, {16, 20}, {20, 22}, {28, 36}}) {
      const Piece from = piece(technique, 24, 30), to = makeable(technique, columns, edge);
      Chart chart = filled(from, 0);
      const chart::Grid grid = weave::grid_of(from.lattice, from.closure);
      chart = chart::draw_ellipse(chart, grid, {{4, 5}, {19, 24}}, 2, true)->chart;
      chart = chart::draw_ellipse(chart, grid, {{4, 5}, {19, 24}}, 1, false)->chart;
      const auto carried = carry(chart, from, to, {.method = Carry::resample});
      const Cell middle{to.lattice.columns / 2, to.lattice.edge / 2};
      ASSERT_EQ(carried->chart.at(middle), 2) << technique << columns;
      const auto flooded =
          chart::flood_fill(carried->chart, weave::grid_of(to.lattice, to.closure), middle, 9);
      each_cell(to, [&](Cell cell) {
        if (flooded->chart.at(cell) != 9) return;
        for (const Cell other :
             chart::neighbours(flooded->chart, weave::grid_of(to.lattice, to.closure), cell))
          EXPECT_NE(flooded->chart.at(other), 0)
              << technique << " " << columns << "x" << edge << " at " << cell.column << "," << cell.step;
      });
    }
}

TEST(carry, a_frame_round_the_edge_stays_a_frame) {
  for (const std::string_view technique : {"peyote-even-count", "square", "right-angle"})
    for (const int columns : {7, 10, 12, 15, 22}) {
      const Piece from = makeable(technique, 16, 24), to = makeable(technique, columns, columns + 6);
      Chart chart = filled(from, 0);
      each_cell(from, [&](Cell cell) {
        if (cell.column == 0 || cell.column == from.lattice.columns - 1) chart.set(cell, 1);
      });
      const auto carried = carry(chart, from, to, {.method = Carry::resample});
      each_cell(to, [&](Cell cell) {
        if (cell.column == 0 || cell.column == to.lattice.columns - 1) {
          EXPECT_EQ(carried->chart.at(cell), 1) << technique << columns;
        }
      });
    }
}

TEST(carry, a_line_that_shares_every_bead_with_another_is_named) {
  // Stripes of one bead, four to a new bead: some colours have none left.
  const Piece from = piece("loom", 12, 4), to = piece("loom", 3, 4);
  Chart chart = filled(from, 0);
  for (int step = 0; step < 4; ++step)
    for (int column = 0; column < 12; ++column) chart.set({column, step}, static_cast<Bead>(column % 4));
  const auto carried = carry(chart, from, to, {.method = Carry::resample});
  std::set<Bead> lost;
  for (const LostTrail& trail : carried->lost) {
    EXPECT_EQ(trail.beads, 4);
    EXPECT_EQ(trail.first.step, 0);
    lost.insert(trail.bead);
  }
  EXPECT_EQ(lost.size() + colours_of(carried->chart).size(), 4u);
}

// Symmetries.

TEST(carry, what_is_symmetric_stays_so_where_both_pieces_are) {
  std::mt19937 random(6);
  int tried = 0;
  for (const Pair& pair : pairs()) {
    if (pair.from.lattice.holes == weave::Holes::round_squares) continue;  // below, on its own grid
    const chart::Grid grid = weave::grid_of(pair.from.lattice, pair.from.closure);
    const chart::Grid fresh = weave::grid_of(pair.to.lattice, pair.to.closure);
    for (const chart::Symmetry symmetry :
         {chart::Symmetry::mirror_across, chart::Symmetry::mirror_along, chart::Symmetry::half_turn})
      for (int round = 0; round < 6; ++round) {
        Chart chart = round % 2 == 0 ? noise(pair.from, random, 3) : blobs(pair.from, random);
        const auto turned = chart::apply(chart, grid, symmetry);
        if (!turned || !chart::apply(filled(pair.to, 0), fresh, symmetry)) continue;
        // Make it its own image: one of each two that change places takes the other's bead.
        each_cell(pair.from,
                  [&](Cell cell) { chart.set(cell, std::min(chart.at(cell), turned->chart.at(cell))); });
        ASSERT_TRUE(chart::apply(chart, grid, symmetry)->changes.empty());
        for (const bool keep_lines : {true, false}) {
          const auto carried =
              carry(chart, pair.from, pair.to, {.method = Carry::resample, .keep_lines = keep_lines});
          EXPECT_TRUE(chart::apply(carried->chart, fresh, symmetry)->changes.empty())
              << told(pair) << " " << chart::symmetry_name(symmetry);
          ++tried;
        }
      }
  }
  EXPECT_GT(tried, 300);
}

TEST(carry, units_of_four_stay_symmetric_both_ways) {
  std::mt19937 random(7);
  for (const int units : {3, 5, 6, 8, 11}) {
    const Piece from = piece("right-angle", 13, 17), to = piece("right-angle", 2 * units + 1, 2 * units + 5);
    Chart chart = noise(from, random, 3);
    each_cell(from, [&](Cell cell) {
      const Cell across{12 - cell.column, cell.step}, along{cell.column, 16 - cell.step},
          both{12 - cell.column, 16 - cell.step};
      chart.set(cell, chart.at(std::min({cell, across, along, both})));
    });
    const auto carried = carry(chart, from, to, {.method = Carry::resample});
    each_cell(to, [&](Cell cell) {
      EXPECT_EQ(carried->chart.at(cell), carried->chart.at({2 * units - cell.column, cell.step}));
      EXPECT_EQ(carried->chart.at(cell), carried->chart.at({cell.column, 2 * units + 4 - cell.step}));
    });
  }
}

// Repeats.

TEST(carry, a_period_goes_on) {
  const Piece from = piece("peyote-even-count", 8, 24), to = piece("peyote-even-count", 12, 28);
  Chart chart = filled(from, 0);
  each_cell(from, [&](Cell cell) {
    chart.set(cell, cell.step % 4 == 0 && cell.column % 4 == 1 ? 1 : cell.step % 4 == 2 ? 2 : 0);
  });
  const auto carried = carry(chart, from, to);
  ASSERT_TRUE(carried.ok());
  EXPECT_EQ(carried->method, Carry::repeat);
  EXPECT_EQ(carried->period_across, 4);
  EXPECT_EQ(carried->period_along, 4);
  each_cell(to, [&](Cell cell) {
    EXPECT_EQ(carried->chart.at(cell), chart.at({cell.column % 4, cell.step % 4}));
  });
  EXPECT_TRUE(carried->changes.empty());
  // Round a ring only whole repeats meet: 26 is not, so that the drawing is looked at afresh.
  EXPECT_EQ(carry(chart, from, piece("peyote-even-count", 12, 26))->method, Carry::resample);
}

TEST(carry, repeating_takes_whole_steps_and_columns_evenly) {
  std::mt19937 random(8);
  for (const Pair& pair : pairs()) {
    const Chart chart = noise(pair.from, random, 5);
    const auto carried = carry(chart, pair.from, pair.to, {.method = Carry::repeat});
    ASSERT_TRUE(carried.ok());
    std::map<int, std::set<int>> columns, steps;
    each_cell(pair.to, [&](Cell cell) {
      const auto source =
          carried->source[static_cast<std::size_t>(cell.step * carried->chart.columns() + cell.column)];
      ASSERT_TRUE(source.has_value());
      columns[cell.column].insert(source->column);
      steps[cell.step].insert(source->step);
    });
    std::map<int, int> uses;
    for (const auto& [column, olds] : columns) {
      EXPECT_EQ(olds.size(), 1u) << told(pair);
      if (pair.from.lattice.drop > 0 && pair.from.lattice.holes != weave::Holes::round_squares) {
        EXPECT_EQ(*olds.begin() % (2 * pair.from.lattice.drop), column % (2 * pair.from.lattice.drop))
            << told(pair);
      }
    }
    for (const auto& [step, olds] : steps) {
      EXPECT_EQ(olds.size(), 1u) << told(pair);
      ++uses[*olds.begin()];
    }
    int fewest = 1000, most = 0;
    for (int step = 0; step < pair.from.lattice.edge; ++step)
      fewest = std::min(fewest, uses[step]), most = std::max(most, uses[step]);
    EXPECT_LE(most - fewest, pair.from.lattice.holes == weave::Holes::round_squares ? 2 : 1) << told(pair);
  }
}

TEST(carry, the_middle_of_a_border) {
  const Piece from = piece("square", 3, 2), to = piece("square", 7, 6);
  Chart chart = filled(from, 1);
  const auto carried = carry(chart, from, to, {.method = Carry::centre, .border = Bead{4}});
  ASSERT_TRUE(carried.ok());
  int fresh = 0;
  each_cell(to, [&](Cell cell) {
    const bool inside = cell.column >= 2 && cell.column < 5 && cell.step >= 2 && cell.step < 4;
    EXPECT_EQ(carried->chart.at(cell), inside ? 1 : 4);
    fresh += !inside;
  });
  EXPECT_EQ(static_cast<int>(carried->changes.size()), fresh);
}

TEST(carry, an_odd_number_of_rows_stays_one) {
  const Piece from{piece("peyote-even-count", 6, 12).lattice, Closure::open},
      to{piece("peyote-even-count", 8, 17).lattice, Closure::open};
  Chart chart = filled(from, 0);
  for (const int column : {1, 3, 5}) chart.set({column, 11}, chart::no_bead);
  for (const Carry method : methods) {
    const auto carried = carry(chart, from, to, {.method = method});
    ASSERT_TRUE(carried.ok());
    each_cell(to, [&](Cell cell) {
      EXPECT_EQ(carried->chart.at(cell), cell.step == 16 && cell.column % 2 == 1 ? chart::no_bead : 0)
          << carry_name(method);
    });
  }
}

TEST(carry, what_it_refuses) {
  const Piece from = piece("peyote-even-count", 6, 12), other = piece("loom", 6, 12);
  const Chart chart = filled(from, 0);
  EXPECT_EQ(carry(*Chart::make(5, 12), from, from).problem().code, ProblemCode::wrong_size);
  EXPECT_EQ(carry(chart, from, other, {.method = Carry::repeat}).problem().code, ProblemCode::wrong_size);
  EXPECT_EQ(carry(chart, from, other, {.method = Carry::centre}).problem().code, ProblemCode::wrong_size);
  EXPECT_TRUE(carry(chart, from, other, {.method = Carry::resample}).ok());
  EXPECT_EQ(parse_carry("resample").value(), Carry::resample);
  EXPECT_EQ(parse_carry("stretch").problem().code, ProblemCode::unknown_name);
}

/// The share of beads that are as they were after a resampling there and back.
double kept_there_and_back(const Chart& chart, const Piece& piece, const Piece& there) {
  const auto one = carry(chart, piece, there, {.method = Carry::resample});
  const auto back = carry(one->chart, there, piece, {.method = Carry::resample});
  int same = 0, all = 0;
  each_cell(piece, [&](Cell cell) {
    ++all;
    same += back->chart.at(cell) == chart.at(cell);
  });
  return 1.0 * same / all;
}

TEST(carry, there_through_twice_the_beads_and_back_keeps_all) {
  std::mt19937 random(9);
  for (const std::string_view technique : {"square", "loom"})
    for (int round = 0; round < 20; ++round) {
      const Piece small = makeable(technique, 12, 18), large = makeable(technique, 24, 36);
      EXPECT_EQ(kept_there_and_back(noise(small, random, 4), small, large), 1.0);
    }
}

}  // namespace
}  // namespace evencount::project
