#include "picture/font_lettering.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/text.hpp"
#include "picture/lettering_cells.hpp"

namespace evencount::picture {
namespace {

using chart::Cell;

/// As Grid::shift_of, for columns beyond the chart's left side too.
int shift_of(const chart::Grid& grid, int column) {
  if (grid.drop == 0) return 0;
  const int period = 2 * grid.drop;
  return ((column % period + period) % period) / grid.drop;
}

/// Calls back with every cell that a box touches, and the share of it that ink covers.
template <typename Visit>
void visit_shares(const InkSums& ink, const BoxMm& place, const chart::Grid& grid, double column_mm,
                  double edge_mm, Visit visit) {
  const int first_step = static_cast<int>(std::floor(place.top / edge_mm)) - 1;
  const int last_step = static_cast<int>(std::ceil((place.top + place.height) / edge_mm));
  const int first_column = static_cast<int>(std::floor(place.left / column_mm));
  const int last_column = static_cast<int>(std::ceil((place.left + place.width) / column_mm)) - 1;
  for (int step = first_step; step <= last_step; ++step)
    for (int column = first_column; column <= last_column; ++column) {
      const BoxMm box{column * column_mm - place.left,
                      (step + shift_of(grid, column) / 2.0) * edge_mm - place.top, column_mm, edge_mm};
      visit(Cell{column, step}, ink.area_mm2(box) / (column_mm * edge_mm));
    }
}

/// How far the picture may be moved to meet the beads, in eighths of a pitch, nearest first.
template <typename Align>
std::vector<int> moves(Align align) {
  constexpr int eighths = 8;
  std::vector<int> by;
  for (int i = 0; i < eighths; ++i)
    by.push_back(align == Align{} ? i : align == Align::middle ? i - eighths / 2 : -i);
  std::stable_sort(by.begin(), by.end(), [](int a, int b) { return std::abs(a) < std::abs(b); });
  return by;
}

bool holds(const Window& window, Cell cell) {
  return cell.column >= window.first.column && cell.column < window.first.column + window.columns &&
         cell.step >= window.first.step && cell.step < window.first.step + window.steps;
}

/// What the cells of a window take on the piece, the half beads of shifted columns included.
BoxMm room_of(const Window& window, const chart::Grid& grid, double column_mm, double edge_mm) {
  int least = 1, most = 0;
  for (int column = window.first.column; column < window.first.column + window.columns; ++column) {
    least = std::min(least, shift_of(grid, column));
    most = std::max(most, shift_of(grid, column));
  }
  return {window.first.column * column_mm, (window.first.step + least / 2.0) * edge_mm,
          window.columns * column_mm, (window.steps + (most - least) / 2.0) * edge_mm};
}

struct Trial {
  BoxMm place;
  double doubt = 0;
  std::vector<Cell> cells;
};

/// The picture at one place; nothing where a bead of it falls outside the window.
std::optional<Trial> tried(const InkSums& ink, const BoxMm& place, const chart::Grid& grid,
                           const bead::Gauge& gauge, const Window& window, double threshold) {
  Trial trial{place, 0, {}};
  bool inside = true;
  visit_shares(ink, place, grid, gauge.column.mm(), gauge.edge.mm(), [&](Cell cell, double share) {
    trial.doubt += share * (1 - share);
    if (share < threshold) return;
    inside = inside && holds(window, cell);
    trial.cells.push_back(cell);
  });
  if (!inside) return std::nullopt;
  return trial;
}

/// Lines of text lie across the piece or along it, from the left or the right as one reads.
struct PieceAlign {
  double across = 0, along = 0;  ///< share of the free room before the ink: 0, 0.5 or 1
  std::vector<int> across_moves, along_moves;
};

template <typename Align>
double share_of(Align align) {
  return align == Align{} ? 0 : align == Align::middle ? 0.5 : 1;
}

PieceAlign piece_align(const FontStyle& style) {
  const auto opposite = [](auto align) {
    using Align = decltype(align);
    return static_cast<Align>(2 - static_cast<int>(align));
  };
  const LineAlign line = style.running == Running::up ? opposite(style.line) : style.line;
  const StackAlign stack = style.running == Running::down ? opposite(style.stack) : style.stack;
  if (style.running == Running::across) return {share_of(line), share_of(stack), moves(line), moves(stack)};
  return {share_of(stack), share_of(line), moves(stack), moves(line)};
}

Problem too_large(const BoxMm& ink, const BoxMm& room) {
  const auto size = [](const BoxMm& box) {
    return fmt::format("{} x {} mm", plain_number(box.width, 1), plain_number(box.height, 1));
  };
  return {ProblemCode::wrong_size, "text in a font", size(ink) + " of ink",
          "at most " + size(room) + ", the window's"};
}

Result<Done> check_style(const FontStyle& style, const Window& window) {
  if (!(style.threshold > 0 && style.threshold <= 1))
    return Problem{ProblemCode::out_of_range, "threshold", plain_number(style.threshold),
                   "above 0, at most 1"};
  return check_window(window);
}

}  // namespace

std::vector<Cell> covered_cells(const InkSums& ink, const BoxMm& place, const chart::Grid& grid,
                                double column_mm, double edge_mm, double threshold) {
  std::vector<Cell> cells;
  visit_shares(ink, place, grid, column_mm, edge_mm, [&](Cell cell, double share) {
    if (share >= threshold) cells.push_back(cell);
  });
  return cells;
}

BoxMm turned_box(const BoxMm& box, double width_mm, double height_mm, Running running) {
  if (running == Running::across) return box;
  if (running == Running::down) return {height_mm - box.top - box.height, box.left, box.height, box.width};
  return {box.top, width_mm - box.left - box.width, box.height, box.width};
}

Result<FontLettering> letter_in_font(const FontText& text, const chart::Grid& grid, const bead::Gauge& gauge,
                                     const Window& window, chart::Bead bead, const FontStyle& style) {
  if (auto good = check(text.text); !good) return good.problem();
  if (auto good = check_style(style, window); !good) return good.problem();
  const Coverage picture = rotated(text.text, style.running);
  const InkSums sums(picture);
  const BoxMm ink = sums.ink();
  if (ink.width <= 0) return Problem{ProblemCode::bad_text, "text in a font", "no ink", "letters"};
  const double column_mm = gauge.column.mm(), edge_mm = gauge.edge.mm();
  const BoxMm room = room_of(window, grid, column_mm, edge_mm);
  constexpr double rounding_mm = 1e-9;
  if (ink.width > room.width + rounding_mm || ink.height > room.height + rounding_mm)
    return too_large(ink, room);

  const PieceAlign align = piece_align(style);
  std::optional<Trial> best;
  for (const int down : align.along_moves)
    for (const int right : align.across_moves) {
      const double left = room.left + align.across * (room.width - ink.width) + right / 8.0 * column_mm;
      const double top = room.top + align.along * (room.height - ink.height) + down / 8.0 * edge_mm;
      const BoxMm place{left - ink.left, top - ink.top, picture.width_mm, picture.height_mm};
      const auto trial = tried(sums, place, grid, gauge, window, style.threshold);
      constexpr double same_doubt =
          1e-9;  // of a cell: places that differ by rounding are equally good, the nearer one wins
      if (trial && (!best || trial->doubt < best->doubt - same_doubt)) best = trial;
    }
  if (!best) return too_large(ink, room);
  if (best->cells.empty())
    return Problem{ProblemCode::bad_text, "text in a font", "ink too thin to colour a bead",
                   "larger or bolder letters"};
  auto stamp = stamped({{"", 0, std::move(best->cells)}}, bead, grid);
  if (!stamp) return stamp.problem();
  return FontLettering{std::move(stamp->stamp), stamp->at, best->place, grid, column_mm, edge_mm, style};
}

}  // namespace evencount::picture
