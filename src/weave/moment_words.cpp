#include "weave/moment_words.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>

#include "language/texts.hpp"
#include "weave/unrolled.hpp"

namespace evencount::weave {
namespace {

using language::Texts;

std::string circled(int number) {
  constexpr int most = 20;  // U+2460 to U+2473, ISO/IEC 10646
  if (number < 1 || number > most) return {};
  const int code = 0x2460 + number - 1;
  return {static_cast<char>(0xE2), static_cast<char>(0x80 | ((code >> 6) & 0x3F)),
          static_cast<char>(0x80 | (code & 0x3F))};
}

language::Text turn_text(Turn turn) {
  switch (turn) {
    case Turn::edge:
    case Turn::inside:
      return &Texts::turn;
    case Turn::loop:
      return &Texts::turn_loop;
    case Turn::outside:
      return &Texts::turn_outside;
    case Turn::warp:
      return &Texts::turn_warp;
  }
  return &Texts::turn;
}

/// The names of a row, a few rows, a round, a few rounds.
using RowTexts = std::array<language::Text, 4>;

std::string row_in(const language::Language& language, const Row& row, const RowTexts& texts) {
  const std::size_t place = (row.kind == RowKind::round ? 2 : 0) + (row.first_number == row.last_number ? 0 : 1);
  return language.say(texts[place], {{"first", row.first_number}, {"last", row.last_number}});
}

}  // namespace

std::string circled(const language::Language& language, int first, int last) {
  if (first == last) return circled(first);
  if (last == first + 1) return circled(first) + circled(last);
  return language.say(&Texts::marks_range, {{"first", circled(first)}, {"last", circled(last)}});
}

std::string the_row(const language::Language& language, const Row& row) {
  return row_in(language, row, {&Texts::the_row, &Texts::the_rows, &Texts::the_round, &Texts::the_rounds});
}

std::string of_row(const language::Language& language, const Row& row) {
  return row_in(language, row, {&Texts::of_row, &Texts::of_rows, &Texts::of_round, &Texts::of_rounds});
}

std::string some_beads(const language::Language& language, int count) {
  return count == 1 ? std::string(language.text(&Texts::a_bead)) : language.say(&Texts::some_beads, {{"n", count}});
}

/// One thing that the hands do.
struct MomentTeller::Clause {
  language::Text text = nullptr;
  std::string beads, of_row, before, marks;
  bool from_outside = false;
};

std::string MomentTeller::said(const Clause& clause, bool last) const {
  return language_.say(clause.text,
                       {{"beads", clause.beads},
                        {"of_row", clause.of_row},
                        {"before", clause.before},
                        {"marks", clause.marks},
                        {"outer", clause.from_outside ? language_.text(&Texts::from_outside) : std::string_view()},
                        {"last", last}});
}

/// "② to ④", "③ and ②", "① and ④".
std::string MomentTeller::numbers_text(const std::vector<int>& numbers) const {
  const int step = numbers.size() > 1 ? numbers[1] - numbers[0] : 1;
  bool in_order = std::abs(step) == 1;
  for (std::size_t i = 1; i < numbers.size(); ++i) in_order = in_order && numbers[i] - numbers[i - 1] == step;
  if (in_order && numbers.size() > 2)
    return language_.say(&Texts::marks_range, {{"first", circled(numbers.front())}, {"last", circled(numbers.back())}});
  std::vector<std::string> all;
  for (const int number : numbers) all.push_back(circled(number));
  return language_.list(all);
}

MomentTeller::MomentTeller(const Plan& plan, const language::Language& language)
    : plan_(plan), language_(language) {
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

MomentTeller::Clause MomentTeller::new_beads(std::size_t first, std::size_t end) const {
  Clause clause;
  clause.beads = some_beads(language_, static_cast<int>(end - first));
  clause.text = &Texts::string_beads;
  if (plan_.stitches[first].act == Act::pick_up) return clause;
  const std::size_t row = row_of(plan_.stitches[first].cell);
  const bool one_row = std::all_of(plan_.stitches.begin() + static_cast<std::ptrdiff_t>(first),
                                   plan_.stitches.begin() + static_cast<std::ptrdiff_t>(end),
                                   [&](const Stitch& stitch) { return row_of(stitch.cell) == row; });
  clause.text = one_row ? &Texts::go_through_of : &Texts::go_through;
  if (one_row) clause.of_row = weave::of_row(language_, plan_.rows[row]);
  return clause;
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

std::vector<MomentTeller::Clause> MomentTeller::clauses_of(std::size_t first, std::size_t end,
                                                           std::size_t shown_end, int number) const {
  std::vector<Clause> clauses;
  std::map<Cell, int> numbers;  // of the beads told so far; none any more when a run was cut short
  for (std::size_t i = first; i < end;) {
    const Stitch& stitch = plan_.stitches[i];
    if (!goes_through(stitch.act)) {
      if (stitch.act == Act::under)
        clauses.push_back({.text = &Texts::go_under,
                           .of_row = weave::of_row(language_, plan_.rows[row_of(stitch.cell)])});
      if (stitch.act == Act::turn && !strings_from_outside(i)) clauses.push_back({.text = turn_text(stitch.turn)});
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
    Clause clause = new_beads(i, next);
    if (again) {
      std::vector<int> before;
      for (std::size_t k = i; k < next; ++k) before.push_back(numbers.at(plan_.stitches[k].cell));
      clause = {.text = &Texts::go_through_again, .before = numbers_text(before)};
    }
    const std::string now = circled(language_, number, number + shown - 1);
    const bool cut_short = shown > 0 && i + static_cast<std::size_t>(shown) < next;
    if (cut_short)
      clause.marks = language_.say(&Texts::marks_cut, {{"n", shown}, {"now", now}});
    else if (shown > 0)
      clause.marks = language_.say(again ? &Texts::marks_again : &Texts::marks, {{"now", now}});
    clause.from_outside = i > first && strings_from_outside(i - 1);
    clauses.push_back(std::move(clause));
    for (int k = 0; k < shown; ++k)
      numbers.emplace(plan_.stitches[i + static_cast<std::size_t>(k)].cell, number + k);
    if (cut_short) numbers.clear();
    number += shown;
    i = next;
  }
  return clauses;
}

std::string MomentTeller::tell(std::size_t first, std::size_t end, std::size_t shown_end, int number) const {
  while (end > first && !goes_through(plan_.stitches[end - 1].act)) --end;
  const std::vector<Clause> clauses = clauses_of(first, end, shown_end, number);
  std::string text;
  for (std::size_t i = 0; i < clauses.size(); ++i) {
    const bool last = i + 1 == clauses.size();
    if (i > 0) text += language_.text(last ? &Texts::clause_and : &Texts::list_comma);
    text += said(clauses[i], last);
  }
  return text;
}

}  // namespace evencount::weave
