#include "weave/flat_peyote.hpp"

#include <fmt/format.h>

#include <array>
#include <map>

#include "language/texts.hpp"
#include "weave/needle.hpp"
#include "weave/peyote_outline.hpp"

namespace evencount::weave {
namespace {

using chart::Chart;

/// How an end bead without a bead beyond it is anchored, where both ways are open.
enum class Anchor { loop, figure_eight };

struct Style {
  std::string_view id;
  int drop = 1;
  Anchor anchor = Anchor::loop;
  bool shaped = false;
};

/// Works one piece, row after row, in groups of beads.
class FlatPeyote {
 public:
  FlatPeyote(Plan& plan, const Chart& chart, const PeyoteOutline& outline, const Style& style)
      : outline_(outline), style_(style), needle_(plan, chart) {}

  void work(Closure closure) {
    string_first_rows();
    for (int row = outline_.begin + 2; row < outline_.end(); ++row) {
      come_round(row);
      work_row(row);
    }
    if (closure == Closure::zip) zip();
    needle_.finish();
  }

 private:
  [[nodiscard]] int number(int row) const { return row - outline_.begin + 1; }
  [[nodiscard]] int onward() const { return needle_.travel() == Travel::right ? 1 : -1; }

  template <typename Stitch>
  void each_of(int group, int row, Stitch stitch) {
    const int first = group * style_.drop, last = first + style_.drop - 1;
    if (needle_.travel() == Travel::right)
      for (int column = first; column <= last; ++column) stitch(Cell{column, row / 2});
    else
      for (int column = last; column >= first; --column) stitch(Cell{column, row / 2});
  }
  void pick_up(int group, int row) {
    each_of(group, row, [this](Cell cell) { needle_.pick_up(cell); });
  }
  void pass(int group, int row) {
    each_of(group, row, [this](Cell cell) { needle_.pass(cell); });
  }
  void join(int group, int row) {
    each_of(group, row, [this](Cell cell) { needle_.join(cell); });
  }

  void string_first_rows() {
    const int row = outline_.begin;
    const GroupSpan low = outline_.at(row), high = outline_.at(row + 1);
    needle_.begin_row(RowKind::row, 1, 2);
    needle_.start();
    for (int group = std::max(low.last, high.last); group >= std::min(low.first, high.first); --group)
      pick_up(group, (group - row) % 2 == 0 ? row : row + 1);
    const bool ended_out = high.first < low.first;
    if (style_.shaped && ended_out) needle_.row().ends = RowEnd::increase;
    if (ended_out && row + 2 < outline_.end() && edge_of(row + 2) > high.first) anchor(high.first, row + 1, false);
    needle_.end_row();
  }

  /// The outer end of a row on the side where the needle now is.
  [[nodiscard]] int edge_of(int row) const {
    return onward() > 0 ? outline_.at(row).last : outline_.at(row).first;
  }

  /// From the end of the row before into `row`.
  void come_round(int row) {
    const RowEnd begins = came_back_ ? RowEnd::decrease : turn_into(row);
    came_back_ = false;
    needle_.begin_row(RowKind::row, number(row));
    if (style_.shaped) needle_.row().begins = begins;
  }

  RowEnd turn_into(int row) {
    const int out = onward(), edge = edge_of(row - 1), first = edge_of(row);
    const bool ended_out = edge == edge_of(row - 2) + out;
    if (first != edge + out) {
      step_in(edge + out, row - 2);
      return RowEnd::decrease;
    }
    needle_.turn(ended_out ? Turn::outside : Turn::edge);
    if (!ended_out) lay_thread(first, row);
    return ended_out ? RowEnd::increase : RowEnd::plain;
  }

  void work_row(int row) {
    const int out = onward();
    const int first = out > 0 ? outline_.at(row).first : outline_.at(row).last, last = edge_of(row);
    for (int group = first; group != last + 2 * out; group += 2 * out) {
      pick_up(group, row);
      if (outline_.holds(group + out, row - 1)) pass(group + out, row - 1);
    }
    const bool ended_out = last == edge_of(row - 1) + out;
    if (style_.shaped && ended_out) needle_.row().ends = RowEnd::increase;
    const bool at_end = row + 1 == outline_.end();
    if (ended_out && (at_end || edge_of(row + 1) == last - out)) anchor(last, row, at_end);
    needle_.end_row();
  }

  // Turning. `edge_thread_` knows up to which row thread lies along the outer side of a group; the two sides have a key each.

  [[nodiscard]] int side_of(int group) const { return 2 * group + (onward() > 0 ? 1 : 0); }
  void lay_thread(int group, int row) { edge_thread_[2 * group + (onward() > 0 ? 0 : 1)] = row; }
  /// Whether thread lies along the bead's outer side or just below it, for a loop.
  [[nodiscard]] bool can_loop(int group, int row) const {
    const auto found = edge_thread_.find(side_of(group));
    return found != edge_thread_.end() && found->second >= row - 2;
  }

  /// A decrease after a row that ended through the bead below its edge: back through that bead and the next one.
  void step_in(int group, int row) {
    const int out = onward();
    if (can_loop(group, row)) {
      needle_.turn(Turn::loop);
      pass(group, row);
    } else {
      needle_.turn(Turn::outside);
    }
    pass(group - out, row + 1);
  }

  /// The last bead has no bead beyond it: anchor it and come back through it, or into the next bead.
  void anchor(int group, int row, bool at_end) {
    const int out = onward();
    came_back_ = true;
    const bool below = outline_.holds(group, row - 2) && outline_.holds(group - out, row - 1) &&
                       outline_.holds(group - 2 * out, row - 2) && outline_.holds(group - 2 * out, row);
    const bool loop = can_loop(group, row);
    if (below && (style_.anchor == Anchor::figure_eight || !loop)) {
      figure_eight(group, row);
    } else if (loop) {
      needle_.turn(Turn::loop);
      pass(group, row);
    } else {
      needle_.turn(Turn::outside);
      if (at_end) pass(group - out, row - 1);
      return;
    }
    lay_thread(group, row);
  }

  void figure_eight(int group, int row) {
    const int out = onward();
    needle_.turn(Turn::edge);
    pass(group, row - 2);
    pass(group - out, row - 1);
    pass(group - 2 * out, row - 2);
    needle_.turn(outline_.holds(group - 3 * out, row - 1) ? Turn::inside : Turn::edge);
    pass(group - 2 * out, row);
    pass(group - out, row - 1);
    pass(group, row - 2);
    needle_.turn(Turn::edge);
    pass(group, row);
  }

  /// From the left edge across the seam: the low beads of row 1 and the high beads of the last row in turn, and
  /// back once.
  void zip() {
    const int last_row = outline_.end() - 1, last = outline_.groups - 1;
    const auto join_seam = [&](int group) { join(group, group % 2 == 0 ? 0 : last_row); };
    needle_.turn(Turn::edge);
    needle_.begin_row(RowKind::zip, last_row + 2);
    for (int group = 0; group <= last; ++group) join_seam(group);
    needle_.turn(Turn::edge);
    // Coming back through the neighbours on the other side of the edge turn locks the seam.
    join(last, last % 2 == 1 ? 0 : last_row);
    for (int group = last - 1; group >= 0; --group) join_seam(group);
  }

  const PeyoteOutline& outline_;
  const Style& style_;
  Needle needle_;
  std::map<int, int> edge_thread_;
  bool came_back_ = false;  ///< the last bead of the row has been anchored, which turned the needle
};

Problem wrong_columns(int columns, std::string expected) {
  return {ProblemCode::wrong_size, "columns", fmt::format("{}", columns), std::move(expected)};
}

Result<Done> check_even_count(int columns, int) {
  if (columns < 2 || columns % 2 != 0)
    return wrong_columns(columns, "an even number from 2 for even-count peyote");
  return Done{};
}

Result<Done> check_odd_count(int columns, int) {
  if (columns < 3 || columns % 2 != 1)
    return wrong_columns(columns, "an odd number from 3 for odd-count peyote");
  return Done{};
}

Result<Done> check_even_two_drop(int columns, int) {
  if (columns >= 4 && columns % 4 == 0) return Done{};
  const bool odd_count = columns >= 6 && columns % 4 == 2;
  return wrong_columns(columns, fmt::format("a multiple of 4 for two-drop even count{}",
                                            odd_count ? fmt::format("; {} is odd-count two-drop", columns) : ""));
}

Result<Done> check_odd_two_drop(int columns, int) {
  if (columns >= 6 && columns % 4 == 2) return Done{};
  const bool even_count = columns >= 4 && columns % 4 == 0;
  return wrong_columns(columns, fmt::format("6, 10, 14 and so on, an odd number of pairs, for two-drop odd count{}",
                                            even_count ? fmt::format("; {} is even-count two-drop", columns) : ""));
}

Result<Done> check_shaped(int columns, int) {
  if (columns < 2) return wrong_columns(columns, "2 or more for shaped peyote");
  return Done{};
}

template <int drop>
Lattice shifted(int columns, int edge) {
  return {.columns = columns, .edge = edge, .drop = drop};
}

constexpr std::array open_or_zip{Closure::zip, Closure::open};
constexpr std::array open_only{Closure::open};

Result<Plan> lower(const Chart& chart, const Making& making, const Style& style) {
  if (!style.shaped)
    if (const auto whole = check_rectangular(chart, style.drop); !whole) return whole.problem();
  const auto outline = outline_of(chart, style.drop);
  if (!outline) return outline.problem();
  const int edge = chart.edge();
  const int rows = static_cast<int>(outline->rows.size());
  if (making.closure == Closure::zip && rows % 2 == 1)
    return Problem{ProblemCode::needs_even_rows, "closure", fmt::format("zip on {} rows", rows),
                   "an even number of rows: the two ends interlock only then"};
  if (making.closure == Closure::zip && edge < 3)
    return Problem{ProblemCode::too_few_beads, "edge", fmt::format("{}", edge),
                   "at least 3 beads along the edge to zip"};
  Plan plan;
  plan.strung_together = style.drop;
  plan.stitches.reserve(2 * chart.cells().size() + 8 * static_cast<std::size_t>(edge) + 64);
  FlatPeyote(plan, chart, *outline, style).work(making.closure);
  return plan;
}

template <const Style& style>
Result<Plan> lower_as(const Chart& chart, const Making& making) {
  return lower(chart, making, style);
}

constexpr Style even_count{"peyote-even-count"};
constexpr Style odd_count{"peyote-odd-count"};
constexpr Style odd_figure_eight{"peyote-odd-count-figure-8", 1, Anchor::figure_eight};
constexpr Style even_two_drop{"two-drop-even-count", 2};
constexpr Style odd_two_drop{"two-drop-odd-count", 2};
constexpr Style shaped{"peyote-shaped", 1, Anchor::loop, true};

using language::Texts;

}  // namespace

std::span<const Technique> flat_peyote_techniques() {
  static const std::array<Technique, 6> table{{
      {even_count.id, "flat peyote, even count", open_or_zip, shifted<1>, check_even_count, columns_and_edge,
       bead::default_gauge, lower_as<even_count>, &Texts::peyote_even},
      {odd_count.id, "flat peyote, odd count", open_or_zip, shifted<1>, check_odd_count, columns_and_edge,
       bead::default_gauge, lower_as<odd_count>, &Texts::peyote_odd},
      {odd_figure_eight.id, "flat peyote, odd count with figure-8 turns", open_or_zip, shifted<1>, check_odd_count,
       columns_and_edge, bead::default_gauge, lower_as<odd_figure_eight>, &Texts::peyote_odd_figure_eight},
      {even_two_drop.id, "two-drop peyote, even count", open_or_zip, shifted<2>, check_even_two_drop,
       columns_and_edge, bead::default_gauge, lower_as<even_two_drop>, &Texts::two_drop_even, &Texts::two_drop_note},
      {odd_two_drop.id, "two-drop peyote, odd count", open_or_zip, shifted<2>, check_odd_two_drop, columns_and_edge,
       bead::default_gauge, lower_as<odd_two_drop>, &Texts::two_drop_odd, &Texts::two_drop_note},
      {shaped.id, "shaped flat peyote", open_only, shifted<1>, check_shaped, columns_and_edge, bead::default_gauge,
       lower_as<shaped>, &Texts::peyote_shaped, &Texts::shaped_note},
  }};
  return table;
}

}  // namespace evencount::weave
