#pragma once
/// What the techniques that fill every cell have in common in their tests.

#include <gtest/gtest.h>

#include <functional>
#include <span>
#include <string>
#include <vector>

#include "faults.hpp"
#include "plan_checks.hpp"

namespace evencount::weave::testing_support {

inline Plan open_plan(const Technique& technique, const chart::Chart& chart) {
  return make_plan(technique.id, chart, {Closure::open}).value();
}

/// A plan of one kind of bead.
inline Plan blank_plan(const Technique& technique, int columns, int edge) {
  Random random(1);
  auto chart = filled_chart(random, technique.lattice(columns, edge));
  for (int step = 0; step < edge; ++step)
    for (int column = 0; column < columns; ++column)
      if (chart.at({column, step}) != chart::no_bead) chart.set({column, step}, 0);
  return open_plan(technique, chart);
}

struct RowInWords {
  Travel travel = Travel::right;
  std::vector<Cell> cells;
};

/// The plan makes its chart, as every plan must, and its rows read as the words say.
inline void expect_faithful(const Technique& technique, const chart::Chart& chart,
                            std::span<const RowInWords> rows) {
  const Plan plan = checked_plan(technique.id, {chart, Closure::open});
  ASSERT_EQ(plan.rows.size(), rows.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    EXPECT_EQ(plan.rows[i].travel, rows[i].travel) << row_name(plan.rows[i]);
    EXPECT_EQ(plan.rows[i].first_number, static_cast<int>(i) + 1);
    EXPECT_EQ(plan.rows[i].last_number, static_cast<int>(i) + 1);
    EXPECT_EQ(cells_of(plan, plan.rows[i]), rows[i].cells) << row_name(plan.rows[i]);
  }
}

/// "columns: found 3, expected ..." for a size that can't be made; empty where it can.
inline std::string refusal(const Technique& technique, int columns, int edge) {
  const auto size = technique.check_size(columns, edge);
  if (size) return "";
  EXPECT_EQ(size.problem().code, ProblemCode::wrong_size);
  return message(size.problem());
}

/// What is said of a chart with one cell filled or emptied.
inline std::string refusal_of_cell(const Technique& technique, int columns, int edge, Cell cell, Bead bead) {
  Random random(2);
  auto chart = filled_chart(random, technique.lattice(columns, edge));
  chart.set(cell, bead);
  const auto plan = make_plan(technique.id, chart, {Closure::open});
  if (plan) return "";
  EXPECT_EQ(plan.problem().code, ProblemCode::wrong_size);
  return message(plan.problem());
}

/// Nearly every fault put into the plans of so many pieces is noticed; prints how many.
inline void expect_faults_noticed(const Technique& technique, unsigned seed,
                                  const std::function<chart::Chart(Random&)>& random_chart) {
  Random random(seed);
  bool has_turns = false;
  const FaultCount count = count_faults(random, 40000, [&](Random& r) {
    const chart::Chart chart = random_chart(r);
    const Piece piece{open_plan(technique, chart), chart};
    for (const Stitch& stitch : piece.plan.stitches) has_turns = has_turns || stitch.act == Act::turn;
    return piece;
  });
  for (std::size_t kind = 0; kind < faults.size(); ++kind) {
    const int expected = faults[kind] == Fault::turn && !has_turns ? 0 : 300;
    EXPECT_GE(count.made[kind], expected) << kind;
  }
  print_faults(std::string(technique.name).c_str(), count);
  EXPECT_GE(count.rate(), 0.99);
}

}  // namespace evencount::weave::testing_support
