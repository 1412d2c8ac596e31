#pragma once
/// Builds a plan stitch by stitch, so that the techniques read like instructions. Internal to the room.

#include "weave/plan.hpp"

namespace evencount::weave {

class Needle {
 public:
  /// Both must outlive the needle. `travel` is the way the first bead is strung.
  Needle(Plan& plan, const chart::Chart& chart, Travel travel = Travel::left)
      : plan_(plan), chart_(chart), travel_(travel) {}

  void start() { add({.act = Act::start, .travel = travel_}); }
  /// Ends the thread, and with it the last row.
  void finish() {
    add({.act = Act::finish, .travel = travel_});
    end_row();
  }
  /// Strings the chart's bead for a cell.
  void pick_up(Cell cell) {
    add({.act = Act::pick_up, .travel = travel_, .bead = chart_.at(cell), .cell = cell});
  }
  void pass(Cell cell) { add({.act = Act::pass, .travel = travel_, .cell = cell}); }
  void join(Cell cell) { add({.act = Act::join, .travel = travel_, .cell = cell}); }
  void turn(Turn turn) {
    travel_ = opposite(travel_);
    add({.act = Act::turn, .travel = travel_, .turn = turn});
  }
  /// Under the thread from `cell` to the next bead along the edge, and back.
  void under(Cell cell) {
    travel_ = opposite(travel_);
    add({.act = Act::under, .travel = travel_, .cell = cell});
  }
  /// A quarter turn, which needs no stitch of its own: the next bead's hole runs the other way.
  void face(Travel travel) { travel_ = travel; }

  void begin_row(RowKind kind, int first_number, int last_number) {
    plan_.rows.push_back({.kind = kind,
                          .first_number = first_number,
                          .last_number = last_number,
                          .travel = travel_,
                          .first_stitch = plan_.stitches.size()});
  }
  void begin_row(RowKind kind, int number) { begin_row(kind, number, number); }
  [[nodiscard]] Row& row() { return plan_.rows.back(); }
  void end_row() { plan_.rows.back().end_stitch = plan_.stitches.size(); }

  [[nodiscard]] Travel travel() const { return travel_; }
  [[nodiscard]] Bead bead_at(Cell cell) const { return chart_.at(cell); }

 private:
  void add(Stitch stitch) { plan_.stitches.push_back(stitch); }

  Plan& plan_;
  const chart::Chart& chart_;
  Travel travel_;
};

}  // namespace evencount::weave
