#include "technique_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>

namespace evencount::wording::testing_support {
namespace {

using chart::Cell;
using chart::Chart;
using chart::no_bead;
using weave::Closure;

// Random cells and outlines

/// A bead that is often the one before.
class Beads {
 public:
  Beads(Random& random, int letters) : random_(random), letters_(letters), sameness_(pick(random, 0, 9)) {}
  int next() {
    if (pick(random_, 0, 9) >= sameness_) bead_ = pick(random_, 0, letters_ - 1);
    return bead_;
  }

 private:
  Random& random_;
  int letters_, sameness_, bead_ = 0;
};

/// Sometimes the same few steps again and again, so that there is something to fold.
void fill(Random& random, Piece& piece, const std::function<bool(Cell)>& holds) {
  Chart& chart = piece.chart;
  const int period = pick(random, 0, 2) == 0 ? pick(random, 1, 4) : chart.edge();
  const int across = pick(random, 0, 2) == 0 ? pick(random, 1, 6) : chart.columns();
  Beads beads(random, piece.letters);
  std::map<std::pair<int, int>, int> pattern;
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column) {
      const auto key = std::pair(step % period, column % across);
      if (!pattern.contains(key)) pattern[key] = beads.next();
      chart.set({column, step}, holds({column, step}) ? static_cast<chart::Bead>(pattern[key]) : no_bead);
    }
}

int bead_at(const Piece& piece, int column, int step) {
  return piece.chart.at({column, step});
}

std::string counted(int count, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

void say_facts(Piece& piece, std::string_view name, std::string_view closure) {
  const int rows = piece.rows.back().last;
  std::string size = counted(piece.chart.columns(), "column", "columns") + ", " +
                     counted(piece.chart.edge(), "bead along the edge", "beads along the edge");
  if (piece.technique == "right-angle")
    size = counted(piece.chart.columns() / 2, "unit across", "units across") + ", " +
           counted(piece.chart.edge() / 2, "unit along", "units along");
  piece.facts =
      fmt::format("{}: {}, {}, {}.", name, size,
                  piece.rounds ? counted(rows, "round", "rounds") : counted(rows, "row", "rows"), closure);
}

// Flat and tubular peyote

/// Whether a cell lies in the second half of its step: the odd groups of columns.
bool second_half(int column, int drop) {
  return (column / drop) % 2 == 1;
}

void make_peyote(Random& random, Piece& piece, int columns, int drop) {
  const int edge = pick(random, 1, 14);
  const bool odd_rows = edge > 1 && pick(random, 0, 3) == 0;
  piece.chart = Chart::make(columns, edge).value();
  fill(random, piece,
       [&](Cell cell) { return !odd_rows || cell.step < edge - 1 || !second_half(cell.column, drop); });
  if (!odd_rows && pick(random, 0, 1) == 0) piece.closure = Closure::zip;
  piece.rows.push_back({.first = 1, .last = 2, .direction = 'L'});
  for (int column = columns - 1; column >= 0; --column)
    piece.rows.back().beads.push_back(bead_at(piece, column, 0));
  for (int row = 3; row <= 2 * edge - (odd_rows ? 1 : 0); ++row) {
    PieceRow made{.first = row, .last = row, .direction = row % 2 == 1 ? 'R' : 'L'};
    for (int column = 0; column < columns; ++column)
      if (second_half(column, drop) == (row % 2 == 0))
        made.beads.push_back(bead_at(piece, column, (row - 1) / 2));
    if (row % 2 == 0) std::reverse(made.beads.begin(), made.beads.end());
    piece.rows.push_back(made);
  }
}

std::string_view zipped_or_open(const Piece& piece) {
  return piece.closure == Closure::zip ? "zipped" : "open";
}

void make_tube(Random& random, Piece& piece, int columns) {
  const int edge = pick(random, 1, 12);
  const bool odd_rounds = edge > 1 && pick(random, 0, 3) == 0;
  piece.chart = Chart::make(columns, edge).value();
  piece.rounds = true;
  piece.alternates = false;
  piece.closure = Closure::round;
  fill(random, piece, [&](Cell cell) { return !odd_rounds || cell.step < edge - 1 || cell.column % 2 == 0; });
  piece.rows.push_back({.first = 1, .last = 2});
  for (int i = 0; i < columns; ++i)
    piece.rows.back().beads.push_back(bead_at(piece, columns % 2 == 0 ? (i + 1) % columns : i, 0));
  for (int round = 3; round <= 2 * edge - (odd_rounds ? 1 : 0); ++round) {
    PieceRow made{.first = round, .last = round};
    const int step = (round - 1) / 2, parity = (round - 1) % 2;
    if (columns % 2 == 1)
      for (int column = parity; column < columns; column += 2)
        made.beads.push_back(bead_at(piece, column, step));
    else
      for (int i = 0; i < columns / 2; ++i)
        made.beads.push_back(bead_at(piece, (round - 1 + 2 * i) % columns, step));
    piece.rows.push_back(made);
  }
}

// Outlines that move by half a bead

struct Ends {
  int low, high;
};

/// Rows of half-shifted beads: each end of a row lies half a bead further out or in than that of the row before.
std::vector<Ends> random_outline(Random& random, Ends first, int rows, int most) {
  std::vector<Ends> outline{first};
  const int liveliness = pick(random, 0, 3);
  int low_way = -1, high_way = -1;
  while (static_cast<int>(outline.size()) < rows) {
    if (pick(random, 0, 3) < liveliness) low_way = pick(random, 0, 1) == 0 ? 1 : -1;
    if (pick(random, 0, 3) < liveliness) high_way = pick(random, 0, 1) == 0 ? 1 : -1;
    if (liveliness == 0) low_way = -low_way, high_way = low_way;
    Ends next{outline.back().low + low_way, outline.back().high + high_way};
    if (next.high < next.low || next.high - next.low > 2 * most)
      next = {outline.back().low + 1, outline.back().high + 1};
    outline.push_back(next);
  }
  return outline;
}

/// What a label says of a row against the one before. `onward` is 1 when the row goes to its high end.
std::string marks_of(Random& random, Ends before, Ends row, int onward) {
  const int out_at_beginning = onward > 0 ? before.low - row.low : row.high - before.high;
  const int out_at_end = onward > 0 ? row.high - before.high : before.low - row.low;
  std::string marks;
  if (out_at_beginning < 0) marks += ", decrease at the beginning";
  if (out_at_beginning > 0 && pick(random, 0, 5) == 0) marks += ", increase at the beginning";
  if (out_at_end > 0) marks += ", increase at the end";
  return marks;
}

void make_shaped(Random& random, Piece& piece) {
  const int rows = pick(random, 2, 20);
  // Row 1 lies in columns of its own parity, row 2 half a bead off it at both ends.
  const int beads = pick(random, 2, 12);
  const bool low_in_row_1 = pick(random, 0, 1) == 0;
  const auto beside = [&](bool in_row_1) {
    Ends ends{in_row_1 == low_in_row_1 ? 0 : 1, beads - 1};
    if ((ends.high - ends.low) % 2 != 0) --ends.high;
    return ends;
  };
  std::vector<Ends> outline{beside(true)};
  for (const Ends ends : random_outline(random, beside(false), rows - 1, 8)) outline.push_back(ends);
  int lowest = 0, highest = 0;
  for (const Ends ends : outline) lowest = std::min(lowest, ends.low), highest = std::max(highest, ends.high);
  for (Ends& ends : outline) ends = {ends.low - lowest, ends.high - lowest};
  const int begin = outline[0].low % 2;
  piece.chart = Chart::make(highest - lowest + 1, (begin + rows - 1) / 2 + 1).value();
  fill(random, piece, [&](Cell cell) {
    const int row = 2 * cell.step + cell.column % 2 - begin;
    return row >= 0 && row < rows && cell.column >= outline[static_cast<std::size_t>(row)].low &&
           cell.column <= outline[static_cast<std::size_t>(row)].high;
  });
  const auto step_of = [&](int row) { return (begin + row - 1) / 2; };
  PieceRow first{.first = 1, .last = 2, .direction = 'L'};
  for (int column = std::max(outline[0].high, outline[1].high);
       column >= std::min(outline[0].low, outline[1].low); --column)
    first.beads.push_back(bead_at(piece, column, step_of(column % 2 == begin ? 1 : 2)));
  if (outline[1].low < outline[0].low) first.marks = ", increase at the end";
  piece.rows.push_back(first);
  for (int row = 3; row <= rows; ++row) {
    const Ends ends = outline[static_cast<std::size_t>(row) - 1];
    const int onward = row % 2 == 1 ? 1 : -1;
    PieceRow made{.first = row, .last = row, .direction = onward > 0 ? 'R' : 'L'};
    made.marks = marks_of(random, outline[static_cast<std::size_t>(row) - 2], ends, onward);
    for (int column = ends.low; column <= ends.high; column += 2)
      made.beads.push_back(bead_at(piece, column, step_of(row)));
    if (onward < 0) std::reverse(made.beads.begin(), made.beads.end());
    piece.rows.push_back(made);
  }
}

void make_brick(Random& random, Piece& piece) {
  const int columns = pick(random, 1, 16), length = pick(random, 2, 12);
  const bool plain = pick(random, 0, 2) == 0;
  std::vector<Ends> outline = random_outline(random, {0, 2 * (length - 1)}, columns, 16);
  if (plain)
    for (int column = 0; column < columns; ++column)
      outline[static_cast<std::size_t>(column)] = {column % 2, 2 * (length - 1) + column % 2};
  if (plain && pick(random, 0, 1) == 0) piece.closure = Closure::sew;
  const auto halves_to_step = [](int along, int column) { return (along - column % 2) / 2; };
  int lowest = 0, highest = 0;
  for (int column = 0; column < columns; ++column) {
    lowest = std::min(lowest, halves_to_step(outline[static_cast<std::size_t>(column)].low, column));
    highest = std::max(highest, halves_to_step(outline[static_cast<std::size_t>(column)].high, column));
  }
  piece.chart = Chart::make(columns, highest - lowest + 1).value();
  fill(random, piece, [&](Cell cell) {
    const int along = 2 * (cell.step + lowest) + cell.column % 2;
    const Ends ends = outline[static_cast<std::size_t>(cell.column)];
    return along >= ends.low && along <= ends.high;
  });
  for (int column = 0; column < columns; ++column) {
    const int onward = column % 2 == 0 ? 1 : -1;
    PieceRow made{.first = column + 1, .last = column + 1, .direction = onward > 0 ? 'D' : 'U'};
    if (column > 0)
      made.marks = marks_of(random, outline[static_cast<std::size_t>(column) - 1],
                            outline[static_cast<std::size_t>(column)], onward);
    for (int step = 0; step < piece.chart.edge(); ++step)
      if (bead_at(piece, column, step) != no_bead) made.beads.push_back(bead_at(piece, column, step));
    if (onward < 0) std::reverse(made.beads.begin(), made.beads.end());
    piece.rows.push_back(made);
  }
}

// Bezels

void make_bezel(Random& random, Piece& piece) {
  const int columns = 2 * pick(random, 2, 16), front = pick(random, 2, 9), back = pick(random, 0, 5);
  const int beginning = back % 2, decreases = pick(random, 0, 2);
  piece.rounds = true;
  piece.alternates = false;
  piece.closure = Closure::round;
  piece.begin_at = back;
  piece.chart = Chart::make(columns, (front + back + 1) / 2, no_bead).value();
  Beads beads(random, piece.letters);
  const auto cell_at = [&](int along, int column) { return Cell{column % columns, (along - along % 2) / 2}; };
  PieceRow ring{.first = 1, .last = 2};
  for (int i = 1; i <= columns; ++i) {
    const int column = (beginning + i) % columns;
    ring.beads.push_back(beads.next());
    piece.chart.set(cell_at(column % 2 == back % 2 ? back : back + 1, column),
                    static_cast<chart::Bead>(ring.beads.back()));
  }
  piece.rows.push_back(ring);
  for (int round = 3; round <= front + back; ++round) {
    const bool on_back = round > front;
    const int j = round - front;
    const int along = on_back ? back - j : back + round - 1, below = on_back ? along + 1 : along - 1;
    const int start = on_back ? beginning + 2 * front - 2 + j : beginning + round - 1;
    PieceRow made{.first = round, .last = round, .marks = on_back ? ", on the back" : ""};
    for (int i = 0; i < columns / 2; ++i) {
      const int column = (start + 2 * i) % columns;
      if (piece.chart.at(cell_at(below, (column + columns - 1) % columns)) == no_bead) continue;
      const bool decrease = decreases > 0 && pick(random, 0, 6) == 0;
      made.beads.push_back(decrease ? decreased : beads.next());
      if (!decrease) piece.chart.set(cell_at(along, column), static_cast<chart::Bead>(made.beads.back()));
    }
    // A round that nothing hangs on ends the piece; its chart is then smaller than this one.
    if (std::count(made.beads.begin(), made.beads.end(), decreased) ==
        static_cast<std::ptrdiff_t>(made.beads.size())) {
      piece.rows.clear();
      piece.begin_at = 0;
      return make_bezel(random, piece);
    }
    piece.rows.push_back(made);
  }
}

// Straight rows

void make_straight(Random& random, Piece& piece, int columns, const std::function<bool(int)>& upwards) {
  const int edge = pick(random, 1, 16);
  piece.chart = Chart::make(columns, edge).value();
  fill(random, piece, [](Cell) { return true; });
  for (int step = 0; step < edge; ++step) {
    PieceRow made{.first = step + 1, .last = step + 1, .direction = upwards(step + 1) ? 'R' : 'L'};
    const auto beads = piece.chart.step(step);
    made.beads.assign(beads.begin(), beads.end());
    if (!upwards(step + 1)) std::reverse(made.beads.begin(), made.beads.end());
    piece.rows.push_back(made);
  }
}

// Right-angle weave

/// Goes through a unit's side: where it lies from the unit's middle, and which way the needle goes along it.
struct Leg {
  int across, along;  ///< from the unit's middle, in cells
  int right, forth;   ///< the needle's direction
  [[nodiscard]] Cell cell(Cell middle) const { return {middle.column + across, middle.step + along}; }
};

/// The next side when the needle goes on round: it turns at each corner, always towards the same hand.
Leg onward_leg(const Leg& leg) {
  // It reaches the corner that lies ahead on its side; the next side meets that corner, and the needle crosses to the other side of
  // the unit.
  return {leg.right, leg.forth, -leg.across, -leg.along};
}

void make_units(Random& random, Piece& piece) {
  const int units = pick(random, 1, 8), rows = pick(random, 1, 8);
  piece.chart = Chart::make(2 * units + 1, 2 * rows + 1).value();
  fill(random, piece, [](Cell cell) { return (cell.column + cell.step) % 2 == 1; });
  std::map<std::pair<int, int>, bool> strung;
  Leg leg{-1, 0, 0, 1};  // the left side, going forth
  bool very_first = true;
  for (int row = 0; row < rows; ++row) {
    const int way = row % 2 == 0 ? 1 : -1;
    PieceRow made{.first = row + 1, .last = row + 1, .direction = way > 0 ? 'R' : 'L'};
    for (int i = 0; i < units; ++i) {
      const Cell middle{2 * (way > 0 ? i : units - 1 - i) + 1, 2 * row + 1};
      if (!very_first) leg = onward_leg(leg);
      for (int side = 0; side < 4; ++side, leg = onward_leg(leg)) {
        const Cell cell = leg.cell(middle);
        auto& there = strung[{cell.column, cell.step}];
        if (!there) made.beads.push_back(piece.chart.at(cell));
        there = true;
      }
      made.unit_ends.push_back(made.beads.size());
      very_first = false;
      // On round to the side that the next unit shares, which lies on that one's other side.
      const bool last = i == units - 1;
      while (last ? leg.along != 1 : leg.across != way) leg = onward_leg(leg);
      leg.across = -leg.across;
      leg.along = -leg.along;
    }
    piece.rows.push_back(made);
  }
}

}  // namespace

const std::vector<std::string>& piece_techniques() {
  static const std::vector<std::string> ids{"peyote-even-count",
                                            "peyote-odd-count",
                                            "peyote-odd-count-figure-8",
                                            "two-drop-even-count",
                                            "two-drop-odd-count",
                                            "peyote-shaped",
                                            "tubular-even-count",
                                            "tubular-odd-count",
                                            "peyote-bezel",
                                            "brick",
                                            "square",
                                            "loom",
                                            "herringbone",
                                            "right-angle"};
  return ids;
}

Piece random_piece(Random& random, std::string_view technique) {
  Piece piece{.technique = std::string(technique), .letters = pick(random, 1, 5)};
  if (technique == "peyote-even-count") {
    make_peyote(random, piece, 2 * pick(random, 1, 8), 1);
    say_facts(piece, "Flat peyote, even count", zipped_or_open(piece));
  } else if (technique == "peyote-odd-count" || technique == "peyote-odd-count-figure-8") {
    make_peyote(random, piece, 2 * pick(random, 1, 8) + 1, 1);
    say_facts(piece,
              technique == "peyote-odd-count" ? "Flat peyote, odd count"
                                              : "Flat peyote, odd count with figure-8 turns",
              zipped_or_open(piece));
  } else if (technique == "two-drop-even-count") {
    make_peyote(random, piece, 4 * pick(random, 1, 5), 2);
    say_facts(piece, "Two-drop peyote, even count", zipped_or_open(piece));
  } else if (technique == "two-drop-odd-count") {
    make_peyote(random, piece, 4 * pick(random, 1, 5) + 2, 2);
    say_facts(piece, "Two-drop peyote, odd count", zipped_or_open(piece));
  } else if (technique == "peyote-shaped") {
    make_shaped(random, piece);
    say_facts(piece, "Shaped flat peyote", "open");
  } else if (technique == "tubular-even-count") {
    make_tube(random, piece, 2 * pick(random, 2, 10));
    say_facts(piece, "Tubular peyote, even count", "worked in the round");
  } else if (technique == "tubular-odd-count") {
    make_tube(random, piece, 2 * pick(random, 1, 10) + 1);
    say_facts(piece, "Tubular peyote, odd count", "worked in the round");
  } else if (technique == "peyote-bezel") {
    make_bezel(random, piece);
    say_facts(piece, "Peyote bezel", "worked in the round");
  } else if (technique == "brick") {
    make_brick(random, piece);
    say_facts(piece, "Brick stitch", piece.closure == Closure::sew ? "sewn together" : "open");
  } else if (technique == "square") {
    make_straight(random, piece, pick(random, 1, 14), [](int row) { return row % 2 == 0; });
    say_facts(piece, "Square stitch", "open");
  } else if (technique == "loom") {
    make_straight(random, piece, pick(random, 1, 14), [](int) { return true; });
    piece.alternates = false;
    say_facts(piece, "Loom work", "open");
  } else if (technique == "herringbone") {
    make_straight(random, piece, 2 * pick(random, 1, 7), [](int row) { return row % 2 == 1; });
    say_facts(piece, "Flat herringbone", "open");
  } else {
    make_units(random, piece);
    say_facts(piece, "Right-angle weave", "open");
  }
  return piece;
}

// Spelling

namespace {

std::string spelled_run(int style, int count, const std::string& letter) {
  switch (style) {
    case 1:
      return fmt::format("{}{}", count, letter);
    case 2:
      return fmt::format("{}{}", letter, count);
    case 3:
      return fmt::format("{} x {}", count, letter);
    default:
      return fmt::format("({}){}", count, letter);
  }
}

std::string spelled_times(int style, int times) {
  switch (style) {
    case 1:
      return fmt::format("x {}", times);
    case 2:
      return times == 2 ? "twice" : fmt::format("{} times", times);
    default:
      return fmt::format("× {}", times);
  }
}

/// The runs of beads `from` to `end`.
std::vector<std::string> spelled_runs(Random& random, const PieceRow& row, std::size_t from, std::size_t end,
                                      const Spelling& spelling) {
  std::vector<std::string> runs;
  while (from < end) {
    if (row.beads[from] == decreased) {
      runs.emplace_back("dec");
      ++from;
      continue;
    }
    std::size_t next = from;
    while (next < end && row.beads[next] == row.beads[from] &&
           (next == from || !spelling.short_runs || pick(random, 0, 4) > 0))
      ++next;
    runs.push_back(
        spelled_run(spelling.runs, static_cast<int>(next - from), chart::letter_name(row.beads[from])));
    from = next;
  }
  return runs;
}

std::string joined(const std::vector<std::string>& parts, std::size_t from, std::size_t end,
                   std::string_view separator) {
  std::string text;
  for (std::size_t i = from; i < end; ++i) text += (i == from ? "" : std::string(separator)) + parts[i];
  return text;
}

/// Parts with a separator between them, folded wherever some of them come at least twice in a row.
std::string folded(const std::vector<std::string>& parts, std::string_view separator,
                   const Spelling& spelling) {
  std::vector<std::string> made;
  for (std::size_t i = 0; i < parts.size();) {
    std::size_t length = 0;
    int times = 1;
    for (std::size_t tried = 1; tried <= 4 && i + 2 * tried <= parts.size(); ++tried) {
      int found = 1;
      while (i + (static_cast<std::size_t>(found) + 1) * tried <= parts.size() &&
             std::equal(
                 parts.begin() + static_cast<std::ptrdiff_t>(i),
                 parts.begin() + static_cast<std::ptrdiff_t>(i + tried),
                 parts.begin() + static_cast<std::ptrdiff_t>(i + static_cast<std::size_t>(found) * tried)))
        ++found;
      if (found > 1 && static_cast<std::size_t>(found) * tried > static_cast<std::size_t>(times) * length) {
        length = tried;
        times = found;
      }
    }
    if (times == 1) {
      made.push_back(parts[i++]);
      continue;
    }
    made.push_back("*" + joined(parts, i, i + length, separator) + "* " +
                   spelled_times(spelling.times, times));
    i += static_cast<std::size_t>(times) * length;
  }
  return joined(made, 0, made.size(), separator);
}

std::string spelled_beads(Random& random, const PieceRow& row, const Spelling& spelling) {
  const auto list = [&](const std::vector<std::string>& parts, std::string_view separator) {
    return spelling.fold_lists ? folded(parts, separator, spelling)
                               : joined(parts, 0, parts.size(), separator);
  };
  if (row.unit_ends.empty()) return list(spelled_runs(random, row, 0, row.beads.size(), spelling), ", ");
  std::vector<std::string> units;
  std::size_t from = 0;
  for (const std::size_t end : row.unit_ends) {
    const auto runs = spelled_runs(random, row, from, end, spelling);
    units.push_back(joined(runs, 0, runs.size(), ", "));
    from = end;
  }
  return list(units, "; ");
}

std::string numbered(const Piece& piece, int first, int last) {
  const std::string word = piece.rounds ? "Round" : "Row";
  return first == last ? fmt::format("{} {}", word, first) : fmt::format("{}s {}–{}", word, first, last);
}

/// Rows from `at` on that are the `length` rows before them again, as often as they come.
int rows_again(const Piece& piece, std::size_t at, std::size_t length) {
  int times = 0;
  for (std::size_t next = at; next + length <= piece.rows.size(); next += length, ++times)
    for (std::size_t i = 0; i < length; ++i) {
      const PieceRow &row = piece.rows[next + i], &source = piece.rows[at - length + i];
      if (row.beads != source.beads || row.marks != source.marks || row.direction != source.direction)
        return times;
    }
  return times;
}

}  // namespace

Spelling random_spelling(Random& random) {
  return {.fold_lists = pick(random, 0, 1) == 0,
          .fold_rows = pick(random, 0, 1) == 0,
          .runs = pick(random, 0, 3),
          .times = pick(random, 0, 2),
          .short_runs = pick(random, 0, 3) == 0};
}

std::vector<SpelledLine> spelled_lines(Random& random, const Piece& piece, const Spelling& spelling) {
  std::vector<SpelledLine> lines;
  for (std::size_t at = 0; at < piece.rows.size();) {
    std::size_t length = 0;
    int times = 0;
    // Rows 1-2 are strung together once and for all.
    const std::size_t sources = at - std::min<std::size_t>(at, piece.rows[0].last == 2 ? 1 : 0);
    for (std::size_t tried = 1;
         spelling.fold_rows && tried <= std::min<std::size_t>(sources, 6) && times == 0; ++tried) {
      times = rows_again(piece, at, tried);
      length = tried;
    }
    if (times > 0) {
      const int first = piece.rows[at].first, last = first + static_cast<int>(length) * times - 1;
      const int first_source = first - static_cast<int>(length);
      const std::string source = fmt::format("{}", numbered(piece, first_source, first - 1));
      const std::string often = times == 1 ? "once" : times == 2 ? "twice" : fmt::format("{} times", times);
      lines.push_back({numbered(piece, first, last), fmt::format("work r{} {}", source.substr(1), often), 0});
      at += length * static_cast<std::size_t>(times);
      continue;
    }
    const PieceRow& row = piece.rows[at++];
    lines.push_back({fmt::format("{} ({}){}", numbered(piece, row.first, row.last), row.direction, row.marks),
                     spelled_beads(random, row, spelling),
                     static_cast<int>(std::count_if(row.beads.begin(), row.beads.end(),
                                                    [](int b) { return b != decreased; }))});
  }
  return lines;
}

}  // namespace evencount::wording::testing_support
