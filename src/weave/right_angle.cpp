#include "weave/right_angle.hpp"

#include <array>
#include <vector>

#include "language/texts.hpp"
#include "weave/filled.hpp"
#include "weave/needle.hpp"

namespace evencount::weave {
namespace {

constexpr std::string_view name = "right-angle weave";

/// The sides of a unit in the order of going round it clockwise.
enum class Side : std::uint8_t { left, far, right, near };
constexpr int sides = 4;

Lattice lattice_of(int columns, int edge) {
  return {.columns = columns, .edge = edge, .drop = 0, .holes = Holes::round_squares};
}

std::pair<Measure, Measure> units(const Lattice& lattice) {
  return {{(lattice.columns - 1) / 2, &language::Texts::units_across},
          {(lattice.edge - 1) / 2, &language::Texts::units_along}};
}

Result<Done> check_size(int columns, int edge) {
  const auto wrong = [](std::string_view what, int count) {
    return Problem{ProblemCode::wrong_size, std::string(what), fmt::format("{}", count),
                   "an odd number from 3 for right-angle weave: two for each unit and one more"};
  };
  if (columns < 3 || columns % 2 == 0) return wrong("columns", columns);
  if (edge < 3 || edge % 2 == 0) return wrong("edge", edge);
  return Done{};
}

struct Unit {
  int across = 0, along = 0;
};

Cell cell_of(Unit unit, Side side) {
  const Cell middle{2 * unit.across + 1, 2 * unit.along + 1};
  switch (side) {
    case Side::left:
      return {middle.column - 1, middle.step};
    case Side::far:
      return {middle.column, middle.step + 1};
    case Side::right:
      return {middle.column + 1, middle.step};
    case Side::near:
      return {middle.column, middle.step - 1};
  }
  return middle;
}

Travel clockwise_along(Side side) {
  switch (side) {
    case Side::left:
      return Travel::forth;
    case Side::far:
      return Travel::right;
    case Side::right:
      return Travel::back;
    case Side::near:
      return Travel::left;
  }
  return Travel::forth;
}

class RightAngleWeave {
 public:
  RightAngleWeave(Plan& plan, const chart::Chart& chart)
      : chart_(chart),
        across_((chart.columns() - 1) / 2),
        along_((chart.edge() - 1) / 2),
        needle_(plan, chart, clockwise_along(Side::left)),
        stitched_(chart.cells().size(), false) {}

  void work() {
    for (int row = 0; row < along_; ++row) work_row(row);
    needle_.finish();
  }

 private:
  void work_row(int row) {
    const bool right = row % 2 == 0;
    needle_.begin_row(RowKind::row, row + 1);
    needle_.row().travel = right ? Travel::right : Travel::left;
    if (row == 0) needle_.start();
    Side shared = row == 0 ? Side::left : Side::near;
    for (int i = 0; i < across_; ++i) {
      const bool last = i + 1 == across_;
      const Side next = last ? Side::far : right ? Side::right : Side::left;
      const bool goes_on = !last || row + 1 < along_;
      work_unit({right ? i : across_ - 1 - i, row}, shared, next, goes_on);
      shared = right ? Side::left : Side::right;
    }
    needle_.end_row();
  }

  /// Round the unit to its shared side, through that again and, if the work goes on, on to the side shared with the next one.
  void work_unit(Unit unit, Side shared, Side next, bool goes_on) {
    const bool clockwise = needle_.travel() == clockwise_along(shared);
    const auto after = [clockwise](Side side) {
      return static_cast<Side>((static_cast<int>(side) + (clockwise ? 1 : sides - 1)) % sides);
    };
    const auto go = [&](Side side) {
      needle_.face(clockwise ? clockwise_along(side) : opposite(clockwise_along(side)));
      go_through(cell_of(unit, side));
    };
    if (!stitched_at(cell_of(unit, shared))) go(shared);
    for (Side side = after(shared); side != shared; side = after(side)) go(side);
    go(shared);
    if (!goes_on) return;
    for (Side side = shared; side != next;) {
      side = after(side);
      go(side);
    }
  }

  void go_through(Cell cell) {
    if (stitched_at(cell)) {
      needle_.pass(cell);
    } else {
      needle_.pick_up(cell);
      stitched_[index(cell)] = true;
    }
  }

  [[nodiscard]] std::size_t index(Cell cell) const {
    return static_cast<std::size_t>(cell.step) * chart_.columns() + cell.column;
  }
  [[nodiscard]] bool stitched_at(Cell cell) const { return stitched_[index(cell)]; }

  const chart::Chart& chart_;
  int across_, along_;
  Needle needle_;
  std::vector<bool> stitched_;
};

Result<Plan> lower(const chart::Chart& chart, const Making&) {
  if (const auto filled = check_filled(chart, lattice_of(chart.columns(), chart.edge()), name); !filled)
    return filled.problem();
  Plan plan;
  plan.strung_together = 3;
  plan.stitches.reserve(2 * chart.cells().size());
  RightAngleWeave(plan, chart).work();
  return plan;
}

constexpr std::array closures{Closure::open};

}  // namespace

std::span<const Technique> right_angle_techniques() {
  static const std::array<Technique, 1> table{{
      {"right-angle", name, closures, lattice_of, check_size, units, bead::right_angle_gauge, lower,
       &language::Texts::right_angle, &language::Texts::right_angle_note},
  }};
  return table;
}

}  // namespace evencount::weave
