#include "weave/moment_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <map>

#include "weave/unrolled.hpp"

namespace evencount::weave {
namespace {

std::string circled(int number) {
  constexpr int most = 20;  // U+2460 to U+2473, ISO/IEC 10646
  if (number < 1 || number > most) return {};
  const int code = 0x2460 + number - 1;
  return {static_cast<char>(0xE2), static_cast<char>(0x80 | ((code >> 6) & 0x3F)),
          static_cast<char>(0x80 | (code & 0x3F))};
}

std::string_view turn_text(Turn turn) {
  switch (turn) {
    case Turn::edge:
    case Turn::inside:
      return "turn";
    case Turn::loop:
      return "go round the thread that lies along the edge";
    case Turn::outside:
      return "take the thread round the outside of the end bead";
    case Turn::warp:
      return "go round the outer warp";
  }
  return {};
}

/// "② to ④", "③ and ②", "① and ④".
std::string numbers_text(const std::vector<int>& numbers) {
  const int step = numbers.size() > 1 ? numbers[1] - numbers[0] : 1;
  bool in_order = std::abs(step) == 1;
  for (std::size_t i = 1; i < numbers.size(); ++i) in_order = in_order && numbers[i] - numbers[i - 1] == step;
  if (in_order && numbers.size() > 2) return circled(numbers.front()) + " to " + circled(numbers.back());
  std::string text;
  for (std::size_t i = 0; i < numbers.size(); ++i)
    text += (i == 0 ? "" : i + 1 == numbers.size() ? " and " : ", ") + circled(numbers[i]);
  return text;
}

}  // namespace

std::string circled(int first, int last) {
  if (first == last) return circled(first);
  return circled(first) + (last == first + 1 ? "" : " to ") + circled(last);
}

std::string printed_row(const Row& row) {
  const std::string name = row_name(row);
  const auto dash = name.find('-');
  return dash == std::string::npos ? name : name.substr(0, dash) + " and " + name.substr(dash + 1);
}

std::string capitalised(std::string text) {
  if (!text.empty()) text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  return text;
}

std::string beads_text(int count) {
  return count == 1 ? "a bead" : fmt::format("{} beads", count);
}

MomentTeller::MomentTeller(const Plan& plan) : plan_(plan) {
  const auto cells = static_cast<std::size_t>(plan.lattice.columns) * plan.lattice.edge;
  row_of_cell_.assign(cells, 0);
  for (std::size_t row = 0; row < plan.rows.size(); ++row)
    for (std::size_t i = plan.rows[row].first_stitch; i < plan.rows[row].end_stitch; ++i) {
      const Stitch& stitch = plan.stitches[i];
      if (stitch.act != Act::pick_up) continue;
      row_of_cell_[static_cast<std::size_t>(stitch.cell.step) * plan.lattice.columns + stitch.cell.column] =
          row;
    }
}

std::size_t MomentTeller::row_of(Cell cell) const {
  return row_of_cell_[static_cast<std::size_t>(cell.step) * plan_.lattice.columns + cell.column];
}

std::string MomentTeller::told_beads(std::size_t first, std::size_t end) const {
  const int count = static_cast<int>(end - first);
  if (plan_.stitches[first].act == Act::pick_up) return "string " + beads_text(count);
  const std::size_t row = row_of(plan_.stitches[first].cell);
  const bool one_row = std::all_of(plan_.stitches.begin() + static_cast<std::ptrdiff_t>(first),
                                   plan_.stitches.begin() + static_cast<std::ptrdiff_t>(end),
                                   [&](const Stitch& stitch) { return row_of(stitch.cell) == row; });
  if (one_row) return fmt::format("go through {} of {}", beads_text(count), printed_row(plan_.rows[row]));
  return "go through " + beads_text(count);
}

/// Whether stitch i is a turn after which a bead further out is strung.
bool MomentTeller::strings_from_outside(std::size_t i) const {
  const bool outside = plan_.stitches[i].act == Act::turn && plan_.stitches[i].turn == Turn::outside;
  if (!outside || i == 0 || i + 1 >= plan_.stitches.size() || plan_.stitches[i + 1].act != Act::pick_up)
    return false;
  const Travel out = opposite(plan_.stitches[i].travel);
  const Spot way = apart(plan_.lattice, exit_of(plan_.lattice.site(plan_.stitches[i - 1].cell), out),
                         exit_of(plan_.lattice.site(plan_.stitches[i + 1].cell), out));
  const int ahead = axis_of(out) == Axis::across ? way.across : way.along;
  return out == Travel::right || out == Travel::forth ? ahead > 0 : ahead < 0;
}

std::string MomentTeller::tell(std::size_t first, std::size_t end, std::size_t shown_end, int number) const {
  while (end > first && !goes_through(plan_.stitches[end - 1].act)) --end;
  std::vector<std::string> clauses;
  std::map<Cell, int> numbers;  // of the beads told so far; none any more when a run was cut short
  for (std::size_t i = first; i < end;) {
    const Stitch& stitch = plan_.stitches[i];
    if (!goes_through(stitch.act)) {
      if (stitch.act == Act::under)
        clauses.push_back("go under the thread between two beads of " +
                          printed_row(plan_.rows[row_of(stitch.cell)]));
      if (stitch.act == Act::turn && !strings_from_outside(i)) clauses.emplace_back(turn_text(stitch.turn));
      ++i;
      continue;
    }
    // As far as the beads are all new to the moment, or all gone through in it before.
    const bool again = numbers.contains(stitch.cell);
    std::size_t next = i + 1;
    while (next < end && plan_.stitches[next].act == stitch.act &&
           numbers.contains(plan_.stitches[next].cell) == again)
      ++next;
    const int shown = static_cast<int>(std::min(next, std::max(shown_end, i)) - i);
    std::string clause = told_beads(i, next);
    if (again) {
      std::vector<int> before;
      for (std::size_t k = i; k < next; ++k) before.push_back(numbers.at(plan_.stitches[k].cell));
      clause = "go through " + numbers_text(before) + " again";
    }
    const std::string now = circled(number, number + shown - 1);
    const bool cut_short = shown > 0 && i + static_cast<std::size_t>(shown) < next;
    if (cut_short)
      clause += fmt::format(" (the first {} are {})", shown, now);
    else if (shown > 0)
      clause += " " + now;
    if (i > first && strings_from_outside(i - 1))
      clause += " from its outer side, so that the thread runs round it";
    clauses.push_back(std::move(clause));
    for (int k = 0; k < shown; ++k)
      numbers.emplace(plan_.stitches[i + static_cast<std::size_t>(k)].cell, number + k);
    if (cut_short) numbers.clear();
    number += shown;
    i = next;
  }
  std::string text;
  for (std::size_t i = 0; i < clauses.size(); ++i)
    text += (i == 0 ? "" : i + 1 == clauses.size() ? " and " : ", ") + clauses[i];
  return text;
}

}  // namespace evencount::weave
