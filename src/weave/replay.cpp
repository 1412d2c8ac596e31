#include "weave/replay.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <optional>

namespace evencount::weave {
namespace {

std::string cell_name(Cell cell) {
  return fmt::format("column {}, step {}", cell.column, cell.step);
}

class Replay {
 public:
  explicit Replay(const Plan& plan) : plan_(plan) {}

  Result<chart::Chart> run() {
    auto blank = chart::Chart::make(plan_.lattice.columns, plan_.lattice.edge, chart::no_bead);
    if (!blank)
      return Problem{ProblemCode::bad_plan, "lattice", blank.problem().found, blank.problem().expected};
    chart_ = std::move(*blank);
    row_of_cell_.assign(chart_.cells().size(), -1);
    seam_.assign(chart_.cells().size(), false);
    if (auto rows = check_rows(); !rows) return rows.problem();
    for (position_ = 0; position_ < plan_.stitches.size(); ++position_) {
      while (row_ + 1 < plan_.rows.size() && position_ >= plan_.rows[row_].end_stitch) ++row_;
      if (auto step = follow(plan_.stitches[position_]); !step) return step.problem();
    }
    if (auto end = check_end(); !end) return end.problem();
    return chart_;
  }

 private:
  [[nodiscard]] std::size_t index(Cell cell) const {
    return static_cast<std::size_t>(cell.step) * plan_.lattice.columns + cell.column;
  }

  [[nodiscard]] Problem here(std::string found, std::string expected) const {
    std::string where = "plan";
    if (row_ < plan_.rows.size()) {
      const Row& row = plan_.rows[row_];
      where = position_ < row.first_stitch
                  ? fmt::format("turn before {}", row_name(row))
                  : fmt::format("{}, stitch {}", row_name(row), position_ - row.first_stitch + 1);
    }
    return {ProblemCode::bad_plan, where, std::move(found), std::move(expected)};
  }

  Result<Done> check_rows() const {
    std::size_t end = 0;
    int number = 0;
    for (const Row& row : plan_.rows) {
      const bool in_order = row.first_stitch >= end && row.end_stitch > row.first_stitch &&
                            row.end_stitch <= plan_.stitches.size() && row.first_number == number + 1 &&
                            row.last_number >= row.first_number;
      if (!in_order)
        return Problem{ProblemCode::bad_plan, row_name(row), "a row mark out of order",
                       "rows one after another, each with its stitches"};
      for (std::size_t i = end; i < row.first_stitch; ++i)
        if (plan_.stitches[i].act != Act::turn)
          return Problem{ProblemCode::bad_plan, "before " + row_name(row), "a stitch outside any row",
                         "only turns between rows"};
      if (auto way = check_travel(row); !way) return way;
      end = row.end_stitch;
      number = row.last_number;
    }
    if (plan_.rows.empty() || end != plan_.stitches.size())
      return Problem{ProblemCode::bad_plan, "plan", "stitches after the last row", "every stitch in a row"};
    return Done{};
  }

  /// The words take a row's direction from its mark, so the mark must tell the truth.
  Result<Done> check_travel(const Row& row) const {
    for (std::size_t i = row.first_stitch; i < row.end_stitch; ++i) {
      const Stitch& stitch = plan_.stitches[i];
      if (stitch.act != Act::pick_up && stitch.act != Act::join) continue;
      if (stitch.travel == row.travel) return Done{};
      return Problem{ProblemCode::bad_plan, row_name(row), "beads that go against the row's direction",
                     "the direction of its first bead"};
    }
    return Done{};
  }

  Result<Done> follow(const Stitch& stitch) {
    const bool first = position_ == 0;
    if (first != (stitch.act == Act::start))
      return here(first ? "no thread" : "a second start", "one start, at the very beginning");
    if (finished_) return here("a stitch after the thread was finished", "nothing");
    switch (stitch.act) {
      case Act::start:
        travel_ = stitch.travel;
        return Done{};
      case Act::finish:
        return finish();
      case Act::turn:
        return turn(stitch);
      case Act::pick_up:
        return pick_up(stitch);
      case Act::pass:
      case Act::join:
        return pass(stitch);
    }
    return here("an unknown stitch", "a known one");
  }

  Result<Done> finish() {
    finished_ = true;
    if (turned_) return here("the thread finished at a turn", "a bead after it");
    const int edge_column = travel_ == Travel::right ? plan_.lattice.columns - 1 : 0;
    if (plan_.rows[row_].kind == RowKind::zip && last_ && last_->column != edge_column)
      return here(fmt::format("a zip that stops at column {}", last_->column),
                  fmt::format("the whole way across, to column {}", edge_column));
    return Done{};
  }

  Result<Done> turn(const Stitch& stitch) {
    if (turned_) return here("two turns together", "a bead between turns");
    if (!last_) return here("a turn before the first bead", "a bead");
    if (stitch.travel != opposite(travel_))
      return here("a turn that goes on the same way", "the other direction");
    const int edge_column = travel_ == Travel::right ? plan_.lattice.columns - 1 : 0;
    if (stitch.turn != Turn::inside && last_->column != edge_column)
      return here(fmt::format("a turn round the edge at column {}", last_->column),
                  fmt::format("column {}", edge_column));
    if (stitch.turn == Turn::inside && last_->column == edge_column)
      return here(fmt::format("a turn inside the band at its edge, column {}", edge_column),
                  "a turn round the edge");
    if (stitch.turn == Turn::loop && last_->step < 2)
      return here(fmt::format("a loop at step {}", last_->step),
                  "a thread along the edge below to catch: step 2 or later");
    travel_ = stitch.travel;
    turned_ = stitch.turn;
    return Done{};
  }

  Result<Done> pick_up(const Stitch& stitch) {
    if (!chart_.contains(stitch.cell)) return here(cell_name(stitch.cell), "a cell of the band");
    if (stitch.bead == chart::no_bead) return here("no bead", "a bead to pick up");
    if (chart_.at(stitch.cell) != chart::no_bead)
      return here(cell_name(stitch.cell) + " a second time", "each cell stitched once");
    if (std::binary_search(plan_.empty_cells.begin(), plan_.empty_cells.end(), stitch.cell, along_the_band))
      return here("a bead for " + cell_name(stitch.cell), "that cell empty");
    if (row_ > 0 && last_ && row_of_cell_[index(*last_)] == static_cast<int>(row_))
      return here("a bead strung next to one of the same row", "a bead of an earlier row between them");
    if (auto near = check_neighbour(stitch, false); !near) return near;
    chart_.set(stitch.cell, stitch.bead);
    row_of_cell_[index(stitch.cell)] = static_cast<int>(row_);
    hangs_loose_ = row_ > 0;
    return arrive(stitch.cell);
  }

  Result<Done> pass(const Stitch& stitch) {
    if (!chart_.contains(stitch.cell) || chart_.at(stitch.cell) == chart::no_bead)
      return here("the needle in " + cell_name(stitch.cell) + ", where no bead is yet",
                  "a bead stitched before");
    const bool joining = stitch.act == Act::join;
    if (joining != (plan_.rows[row_].kind == RowKind::zip))
      return here(joining ? "a join outside the zip" : "a plain pass in the zip",
                  "joins in the zip and nowhere else");
    if (auto near = check_neighbour(stitch, joining); !near) return near;
    if (joining) seam_[index(stitch.cell)] = true;
    hangs_loose_ = false;
    return arrive(stitch.cell);
  }

  Result<Done> arrive(Cell cell) {
    last_ = cell;
    turned_.reset();
    return Done{};
  }

  /// Half steps between two cells along the edge, the shorter way round when the ends are being joined.
  [[nodiscard]] int apart(Cell a, Cell b, bool round) const {
    const int gap = std::abs(plan_.lattice.along_halves(a) - plan_.lattice.along_halves(b));
    return round ? std::min(gap, 2 * plan_.lattice.edge - gap) : gap;
  }

  [[nodiscard]] Result<Done> check_neighbour(const Stitch& stitch, bool round) const {
    if (stitch.travel != travel_)
      return here("a bead entered against the direction of travel", "the same direction until a turn");
    if (!last_) return Done{};
    const auto too_far = [&](std::string expected) {
      return here(fmt::format("{} after {}", cell_name(stitch.cell), cell_name(*last_)), std::move(expected));
    };
    if (turned_ == Turn::loop) {
      if (stitch.cell != *last_) return too_far("the same bead again after a loop");
      return Done{};
    }
    if (turned_) {
      if (stitch.cell.column != last_->column || apart(stitch.cell, *last_, round) != 2)
        return too_far("the next bead of the same column after a turn");
      return Done{};
    }
    const int onward = last_->column + (travel_ == Travel::right ? 1 : -1);
    if (stitch.cell.column != onward || apart(stitch.cell, *last_, round) != 1)
      return too_far(fmt::format("a neighbour in column {}", onward));
    return Done{};
  }

  [[nodiscard]] Result<Done> check_end() const {
    if (!finished_) return here("the end of the plan", "the thread finished");
    if (hangs_loose_) return here("a last bead that hangs on one side only", "a pass that holds it");
    for (int step = 0; step < chart_.edge(); ++step) {
      for (int column = 0; column < chart_.columns(); ++column) {
        const Cell cell{column, step};
        const bool empty =
            std::binary_search(plan_.empty_cells.begin(), plan_.empty_cells.end(), cell, along_the_band);
        if (!empty && chart_.at(cell) == chart::no_bead)
          return here("no bead in " + cell_name(cell) + " at the end", "every cell stitched");
      }
    }
    return check_seam();
  }

  [[nodiscard]] Result<Done> check_seam() const {
    const bool zipped = plan_.closure == Closure::zip;
    for (int column = 0; column < chart_.columns(); ++column) {
      // The beads that stand out: low ones at the beginning, high ones at the end.
      const Cell cell{column, column % 2 == 0 ? 0 : chart_.edge() - 1};
      if (seam_[index(cell)] != zipped)
        return here(zipped ? "a zip that leaves out " + cell_name(cell) : "a seam in an open band",
                    zipped ? "every standing bead of both ends" : "none");
    }
    return Done{};
  }

  static bool along_the_band(Cell a, Cell b) {
    return a.step != b.step ? a.step < b.step : a.column < b.column;
  }

  const Plan& plan_;
  chart::Chart chart_;
  std::vector<int> row_of_cell_;
  std::vector<bool> seam_;
  std::size_t position_ = 0;
  std::size_t row_ = 0;
  Travel travel_ = Travel::right;
  std::optional<Cell> last_;
  std::optional<Turn> turned_;
  bool finished_ = false;
  bool hangs_loose_ = false;
};

}  // namespace

Result<chart::Chart> replay(const Plan& plan) {
  return Replay(plan).run();
}

}  // namespace evencount::weave
