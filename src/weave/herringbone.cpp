#include "weave/herringbone.hpp"

#include <array>

#include "language/texts.hpp"
#include "weave/filled.hpp"
#include "weave/needle.hpp"

namespace evencount::weave {
namespace {

constexpr std::string_view name = "flat herringbone";

Lattice lattice_of(int columns, int edge) {
  return {.columns = columns, .edge = edge, .drop = 0, .holes = Holes::along};
}

Result<Done> check_size(int columns, int edge) {
  if (columns < 2 || columns % 2 != 0)
    return Problem{ProblemCode::wrong_size, "columns", fmt::format("{}", columns),
                   "an even number from 2 for flat herringbone, whose stitches take two columns each"};
  if (edge < 1)
    return Problem{ProblemCode::wrong_size, "edge", fmt::format("{}", edge),
                   "1 or more for flat herringbone"};
  return Done{};
}

class FlatHerringbone {
 public:
  FlatHerringbone(Plan& plan, const chart::Chart& chart)
      : columns_(chart.columns()), edge_(chart.edge()), needle_(plan, chart, Travel::back) {}

  void work() {
    ladder();
    for (int step = 1; step < edge_; ++step) {
      if (step > 1) come_up(step);
      work_row(step);
    }
    needle_.finish();
  }

 private:
  void ladder() {
    begin_row(0);
    needle_.start();
    needle_.pick_up({0, 0});
    for (int column = 1; column < columns_; ++column) {
      needle_.turn(Turn::edge);
      needle_.pick_up({column, 0});
      needle_.turn(Turn::edge);
      needle_.pass({column - 1, 0});
      needle_.turn(Turn::edge);
      needle_.pass({column, 0});
    }
    needle_.end_row();
  }

  /// From the far end of the row below's last bead up into the last bead of the row itself.
  void come_up(int step) {
    needle_.turn(Turn::outside);
    needle_.pass({first_column(step), step - 1});
  }

  void work_row(int step) {
    const int onward = goes_right(step) ? 1 : -1;
    begin_row(step);
    int column = first_column(step);
    for (int stitch = 0; stitch < columns_ / 2; ++stitch, column += 2 * onward) {
      if (stitch > 0) {
        needle_.turn(step == 1 ? Turn::edge : Turn::inside);
        needle_.pass({column, step - 1});
      }
      needle_.pick_up({column, step});
      needle_.turn(Turn::edge);
      needle_.pick_up({column + onward, step});
      needle_.pass({column + onward, step - 1});
    }
    needle_.end_row();
  }

  void begin_row(int step) {
    needle_.begin_row(RowKind::row, step + 1);
    needle_.row().travel = goes_right(step) ? Travel::right : Travel::left;
  }

  [[nodiscard]] static bool goes_right(int step) { return step % 2 == 0; }
  [[nodiscard]] int first_column(int step) const { return goes_right(step) ? 0 : columns_ - 1; }

  int columns_, edge_;
  Needle needle_;
};

Result<Plan> lower(const chart::Chart& chart, const Making&) {
  if (const auto filled = check_filled(chart, lattice_of(chart.columns(), chart.edge()), name); !filled)
    return filled.problem();
  Plan plan;
  plan.strung_together = 2;
  plan.stitches.reserve(4 * chart.cells().size() + 3 * static_cast<std::size_t>(chart.columns()));
  FlatHerringbone(plan, chart).work();
  return plan;
}

constexpr std::array closures{Closure::open};

}  // namespace

std::span<const Technique> herringbone_techniques() {
  static const std::array<Technique, 1> table{{
      {"herringbone", name, closures, lattice_of, check_size, columns_and_edge, bead::herringbone_gauge,
       lower,
       &language::Texts::herringbone, &language::Texts::herringbone_note},
  }};
  return table;
}

}  // namespace evencount::weave
