#include "weave/replay.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <optional>

#include "weave/replay_checks.hpp"

namespace evencount::weave {
namespace {

class Replay {
 public:
  explicit Replay(const Plan& plan) : plan_(plan), lattice_(plan.lattice) {}

  Result<chart::Chart> run() {
    auto blank = chart::Chart::make(lattice_.columns, lattice_.edge, chart::no_bead);
    if (!blank)
      return Problem{ProblemCode::bad_plan, "lattice", blank.problem().found, blank.problem().expected};
    chart_ = std::move(*blank);
    const std::size_t cells = chart_.cells().size();
    row_of_cell_.assign(cells, -1);
    seam_.assign(cells, false);
    stays_empty_.assign(cells, false);
    threads_.assign(cells, {});
    gone_through_.assign(cells, {});
    corners_.assign(cells, {});
    for (const Cell cell : plan_.empty_cells)
      if (chart_.contains(cell)) stays_empty_[index(cell)] = true;
    if (auto rows = check_rows(plan_); !rows) return rows.problem();
    for (position_ = 0; position_ < plan_.stitches.size(); ++position_) {
      while (row_ + 1 < plan_.rows.size() && position_ >= plan_.rows[row_].end_stitch) ++row_;
      if (auto step = follow(plan_.stitches[position_]); !step) return step.problem();
    }
    if (auto end = check_end(); !end) return end.problem();
    return chart_;
  }

 private:
  [[nodiscard]] std::size_t index(Cell cell) const {
    return static_cast<std::size_t>(cell.step) * lattice_.columns + cell.column;
  }
  [[nodiscard]] bool stitched(Cell cell) const {
    return chart_.contains(cell) && chart_.at(cell) != chart::no_bead;
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
      case Act::under:
        return under(stitch);
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
    if (turned_ || under_) return here("the thread finished at a turn", "a bead after it");
    const int edge_column = travel_ == Travel::right ? lattice_.columns - 1 : 0;
    if (plan_.rows[row_].kind == RowKind::zip && last_ && last_->column != edge_column)
      return here(fmt::format("a zip that stops at column {}", last_->column),
                  fmt::format("the whole way across, to column {}", edge_column));
    return end_group();
  }

  // Coming back

  Result<Done> come_back(const Stitch& stitch) {
    if (turned_ || under_) return here("two turns together", "a bead between turns");
    if (!last_) return here("a turn before the first bead", "a bead");
    if (stitch.travel != opposite(travel_))
      return here("a turn that goes on the same way", "the other direction");
    travel_ = stitch.travel;
    return Done{};
  }

  Result<Done> turn(const Stitch& stitch) {
    if (auto back = come_back(stitch); !back) return back;
    if (stitch.turn == Turn::loop && !thread_at_edge())
      return here(fmt::format("a loop at {}", cell_name(*last_)), "a thread along the edge to catch");
    if (stitch.turn == Turn::warp && !plan_.on_warps) return here("a turn round a warp", "a piece on warps");
    const Cell beyond{last_->column + (stitch.travel == Travel::left ? 1 : -1), last_->step};
    if (stitch.turn == Turn::warp && chart_.contains(beyond) && !stays_empty_[index(beyond)])
      return here(fmt::format("a turn round the warp after {}", cell_name(*last_)), "a turn round the row's outer warp");
    if (stitch.turn != Turn::edge && plan_.rows[row_].kind == RowKind::zip)
      return here("a zip that turns within the band", "turns round its edges");
    if (stitch.turn == Turn::loop || stitch.turn == Turn::outside) ++group_links_;
    turned_ = stitch.turn;
    return Done{};
  }

  Result<Done> under(const Stitch& stitch) {
    const Travel out = stitch.travel;
    if (auto back = come_back(stitch); !back) return back;
    if (!stitched(stitch.cell) || !threads_[index(stitch.cell)][side_of(out)])
      return here(fmt::format("the needle under the thread after {}", cell_name(stitch.cell)), "a thread there");
    const Spot mouth = exit_of(lattice_.site(stitch.cell), out);
    const Spot way = apart(lattice_, left_at_, {mouth.across, mouth.along + 1});
    // A bead beyond the end of the row before hangs on its last thread; any other on the thread just below it.
    const int step_to_it = way.along < 0 ? 1 : -1;
    const Cell nearer{stitch.cell.column, stitch.cell.step + step_to_it};
    const bool passed_over = way.along != 0 && stitched(nearer) && threads_[index(nearer)][side_of(out)];
    if (way.across != 0 || std::abs(way.along) > 2 || passed_over)
      return here(fmt::format("from {} under the thread after {}", cell_name(*last_), cell_name(stitch.cell)),
                  "the nearest thread of the row before");
    group_links_ += 2;
    under_ = true;
    return Done{};
  }

  // Threads along the edge: for each bead and each mouth (0 left or near, 1 right or far), whether thread runs there to the next
  // bead along.

  [[nodiscard]] static std::size_t side_of(Travel out) {
    return out == Travel::right || out == Travel::forth ? 1 : 0;
  }

  /// Whether thread lies along the mouth the needle has just come out of, or just below it.
  [[nodiscard]] bool thread_at_edge() const {
    for (const int below : {1, 2}) {
      const Cell cell{last_->column, last_->step - below};
      if (stitched(cell) && threads_[index(cell)][side_of(opposite(travel_))]) return true;
    }
    return false;
  }

  void lay_thread(Cell a, Cell b, Travel out) {
    if (a.column != b.column || std::abs(a.step - b.step) != 1) return;
    threads_[index(a.step < b.step ? a : b)][side_of(out)] = true;
  }

  // Beads

  Result<Done> pick_up(const Stitch& stitch) {
    if (!chart_.contains(stitch.cell) || !lattice_.holds_bead(stitch.cell))
      return here(cell_name(stitch.cell), "a cell of the piece that can hold a bead");
    if (stitch.bead == chart::no_bead) return here("no bead", "a bead to pick up");
    if (stitched(stitch.cell)) return here(cell_name(stitch.cell) + " a second time", "each cell stitched once");
    if (stays_empty_[index(stitch.cell)])
      return here("a bead for " + cell_name(stitch.cell), "that cell empty");
    if (!has_beads(plan_.rows[row_].kind)) return here("a new bead in the seam", "only joins");
    const bool same_stitch = in_group_ && group_row_ == row_;
    if (!same_stitch)
      if (auto held = end_group(); !held) return held;
    if (auto near = check_neighbour(stitch); !near) return near;
    ++group_;
    if (row_ > 0 && group_ > plan_.strung_together)
      return here(fmt::format("{} beads strung in one stitch", group_),
                  fmt::format("at most {}", plan_.strung_together));
    if (!same_stitch && last_) ++group_links_;
    in_group_ = true;
    chart_.set(stitch.cell, stitch.bead);
    row_of_cell_[index(stitch.cell)] = static_cast<int>(row_);
    return arrive(stitch);
  }

  Result<Done> pass(const Stitch& stitch) {
    if (!stitched(stitch.cell))
      return here("the needle in " + cell_name(stitch.cell) + ", where no bead is yet",
                  "a bead stitched before");
    const bool joining = stitch.act == Act::join;
    if (joining == has_beads(plan_.rows[row_].kind))
      return here(joining ? "a join outside the seam" : "a plain pass in the seam",
                  "joins in the seam and nowhere else");
    if (auto near = check_neighbour(stitch); !near) return near;
    if (joining) seam_[index(stitch.cell)] = true;
    // Only the thread from the new beads, and back into them, holds them.
    if (in_group_ || row_of(stitch.cell) == static_cast<int>(row_)) ++group_links_;
    in_group_ = false;
    return arrive(stitch);
  }

  [[nodiscard]] int row_of(Cell cell) const { return row_of_cell_[index(cell)]; }

  /// The beads strung last are complete: they must be held.
  Result<Done> end_group() {
    const bool held = group_ == 0 || group_row_ == 0 || plan_.on_warps || group_links_ >= 2;
    if (!held)
      return here(fmt::format("a stitch that holds at {} place{} only", group_links_, group_links_ == 1 ? "" : "s"),
                  "thread to earlier beads on both sides");
    group_ = 0;
    group_links_ = 0;
    group_row_ = row_;
    return Done{};
  }

  Result<Done> arrive(const Stitch& stitch) {
    if (last_ && (turned_ == Turn::edge || turned_ == Turn::inside)) lay_thread(*last_, stitch.cell, opposite(stitch.travel));
    if (turned_ == Turn::loop && stitch.cell.step > 0)
      lay_thread({stitch.cell.column, stitch.cell.step - 1}, stitch.cell, opposite(stitch.travel));
    if (last_ && lattice_.holes == Holes::round_squares) turn_corner(stitch.cell);
    gone_through_[index(stitch.cell)][side_of(stitch.travel)] = true;
    last_ = stitch.cell;
    left_at_ = exit_of(lattice_.site(stitch.cell), stitch.travel);
    travel_ = stitch.travel;
    turned_.reset();
    under_ = false;
    return Done{};
  }

  /// The thread goes from the last bead into the next round a corner of the unit whose sides they are.
  void turn_corner(Cell next) {
    const Cell unit{last_->column + next.column - left_at_.across, last_->step + next.step - left_at_.along};
    if (!chart_.contains(unit)) return;
    const bool right = left_at_.across > unit.column, far = left_at_.along > unit.step;
    corners_[index(unit)][(right ? 1 : 0) + (far ? 2 : 0)] = true;
  }

  // Neighbours

  [[nodiscard]] Result<Done> check_neighbour(const Stitch& stitch) const {
    const Site site = lattice_.site(stitch.cell);
    if (axis_of(stitch.travel) != site.axis)
      return here("a bead entered across its hole", "a needle that goes along the hole");
    const bool corner = last_ && lattice_.holes == Holes::round_squares;
    if (!corner && stitch.travel != travel_)
      return here("a bead entered against the direction of travel", "the same direction until a turn");
    if (!last_) return Done{};
    const auto too_far = [&](std::string expected) {
      return here(fmt::format("{} after {}", cell_name(stitch.cell), cell_name(*last_)), std::move(expected));
    };
    if (turned_ == Turn::loop || turned_ == Turn::warp || under_) {
      if (stitch.cell != *last_) return too_far("the same bead again after going round a thread");
      return Done{};
    }
    if (corner && axis_of(travel_) == site.axis)
      return too_far("a bead round the corner: the thread never goes straight across one");
    const bool seam = !has_beads(plan_.rows[row_].kind);
    const Spot way = apart(lattice_, left_at_, exit_of(site, opposite(stitch.travel)), seam);
    const bool across = site.axis == Axis::across;
    const int gap = across ? way.across : way.along, aside = std::abs(across ? way.along : way.across);
    if (corner) {
      if (gap != 0 || aside != 0) return too_far("a bead that meets it at a corner");
      return Done{};
    }
    if (turned_ == Turn::outside) {
      if (std::abs(gap) != 2 || aside > 1) return too_far("a neighbour past the outside of one of the two beads");
      return Done{};
    }
    if (turned_) {
      if (gap != 0 || aside != 2) return too_far("the next bead beside it after a turn");
      return check_turn_name(stitch);
    }
    if (aside > 1 || !(gap == 0 || over_empty_cells(stitch, gap)))
      return too_far("the next bead in the direction of travel");
    return Done{};
  }

  /// Whether only cells that stay empty lie on the way from the last bead to the next, which are `gap` half pitches apart. On
  /// the level of both the way passes over beads of the other kind of column, on the side towards which the work grows.
  [[nodiscard]] bool over_empty_cells(const Stitch& stitch, int gap) const {
    const int onward = stitch.travel == Travel::right ? 1 : -1;
    if (gap * onward <= 0 || gap % 2 != 0 || lattice_.holes != Holes::across) return false;
    const int from = lattice_.along_halves(*last_), to = lattice_.along_halves(stitch.cell);
    const int low = std::min(from, to), outwards = plan_.rows[row_].on_back ? -1 : 1;
    int column = last_->column;
    for (int skipped = 0; skipped < std::abs(gap) / 2; ++skipped) {
      column += onward;
      if (lattice_.round) column = (column + lattice_.columns) % lattice_.columns;
      const int parity = lattice_.along_halves({column, 0});
      const int along = (low - parity) % 2 == 0 ? low : from == to ? low + outwards : low + 1;
      const Cell beside{column, (along - parity) / 2};
      if (along < parity || !chart_.contains(beside) || !stays_empty_[index(beside)]) return false;
    }
    return true;
  }

  /// A turn from the last bead into the one beside it goes round the edge if no bead stands beyond the two, else inside.
  [[nodiscard]] Result<Done> check_turn_name(const Stitch& stitch) const {
    const Travel out = opposite(stitch.travel);
    const bool seam = !has_beads(plan_.rows[row_].kind);
    bool beyond = false;
    if (axis_of(out) == Axis::along) {
      if (seam) return Done{};
      const int onward = out == Travel::forth ? 1 : -1;
      beyond = stitched({last_->column, last_->step + onward}) || stitched({stitch.cell.column, stitch.cell.step + onward});
    } else {
      const int column = last_->column + (out == Travel::right ? 1 : -1);
      int low = std::min(last_->step, stitch.cell.step);
      // Across the seam the beads of the last step lie below those of the first, which come round again.
      if (seam && std::abs(last_->step - stitch.cell.step) > 1) low = lattice_.edge - 1;
      const int from = lattice_.along_halves({last_->column, low});
      for (int step = low - 1; step <= low + 2 && column >= 0 && column < lattice_.columns; ++step) {
        const int along = lattice_.along_halves({column, step});
        const Cell cell{column, seam ? step % lattice_.edge : step};
        beyond = beyond || (along >= from && along <= from + 2 && stitched(cell));
      }
    }
    if (beyond == (turned_ == Turn::edge))
      return here(beyond ? "a turn round the edge where a bead stands beyond" : "a turn inside where no bead stands beyond",
                  beyond ? "a turn inside the piece" : "a turn round the edge");
    return Done{};
  }

  [[nodiscard]] Result<Done> check_end() {
    if (!finished_) return here("the end of the plan", "the thread finished");
    if (auto woven = check_woven(); !woven) return woven;
    if (auto closed = check_units(); !closed) return closed;
    const bool seam = closes_round_edge(plan_.closure);
    for (int step = 0; step < chart_.edge(); ++step) {
      for (int column = 0; column < chart_.columns(); ++column) {
        const Cell cell{column, step};
        if (stitched(cell) || stays_empty_[index(cell)] || !lattice_.holds_bead(cell)) {
          if (stitched(cell) && seam && in_seam(plan_, cell) && !seam_[index(cell)])
            return here("a seam that leaves out " + cell_name(cell), "every end bead that stands");
          if (!seam && seam_[index(cell)]) return here("a seam in an open piece", "none");
          continue;
        }
        return here("no bead in " + cell_name(cell) + " at the end", "every cell stitched");
      }
    }
    return Done{};
  }

  /// On warps only the thread under them and the thread above them together hold a bead.
  [[nodiscard]] Result<Done> check_woven() const {
    if (!plan_.on_warps) return Done{};
    for (int step = 0; step < chart_.edge(); ++step) {
      for (int column = 0; column < chart_.columns(); ++column) {
        const Cell cell{column, step};
        if (const auto& ways = gone_through_[index(cell)]; ways[0] != ways[1])
          return Problem{ProblemCode::bad_plan, row_name(plan_.rows[static_cast<std::size_t>(row_of(cell))]),
                         cell_name(cell) + " on one thread only", "thread under the warps and above them"};
      }
    }
    return Done{};
  }

  /// A unit of right-angle weave is a ring: thread runs round each of its corners.
  [[nodiscard]] Result<Done> check_units() const {
    if (lattice_.holes != Holes::round_squares) return Done{};
    for (int step = 1; step < chart_.edge(); step += 2) {
      for (int column = 1; column < chart_.columns(); column += 2) {
        const std::array sides{Cell{column - 1, step}, Cell{column + 1, step}, Cell{column, step - 1}, Cell{column, step + 1}};
        const auto& corners = corners_[index({column, step})];
        const bool whole = std::all_of(sides.begin(), sides.end(), [this](Cell side) { return stitched(side); });
        if (whole && std::count(corners.begin(), corners.end(), true) < std::ssize(corners))
          return here(fmt::format("a unit at column {}, step {} that is not closed", column, step),
                      "thread round all four of its corners");
      }
    }
    return Done{};
  }

  const Plan& plan_;
  const Lattice& lattice_;
  chart::Chart chart_;
  std::vector<int> row_of_cell_;
  std::vector<bool> seam_, stays_empty_;
  std::vector<std::array<bool, 2>> threads_;
  std::vector<std::array<bool, 2>> gone_through_;  ///< for each bead, towards its left or near mouth and its right or far one
  std::vector<std::array<bool, 4>> corners_;  ///< for each unit of right-angle weave, whether thread goes round each corner
  std::size_t position_ = 0, row_ = 0;
  Travel travel_ = Travel::right;
  std::optional<Cell> last_;
  Spot left_at_;  ///< the mouth the needle came out of last
  std::optional<Turn> turned_;
  bool under_ = false;
  // The beads of the stitch being worked and what holds them.
  int group_ = 0, group_links_ = 0;
  std::size_t group_row_ = 0;
  bool in_group_ = false;  ///< the last bead on the thread was a new one
  bool finished_ = false;
};

}  // namespace

Result<chart::Chart> replay(const Plan& plan) {
  return Replay(plan).run();
}

}  // namespace evencount::weave
