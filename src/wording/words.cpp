#include "wording/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "weave/technique.hpp"
#include "wording/row_text.hpp"

namespace evencount::wording {
namespace {

char side_letter(weave::Travel travel) {
  switch (travel) {
    case weave::Travel::left: return 'L';
    case weave::Travel::right: return 'R';
    case weave::Travel::forth: return 'D';
    case weave::Travel::back: return 'U';
  }
  return '?';
}

/// ", increase at the beginning, decrease at the end"; empty for a plain row.
std::string ends_text(const weave::Row& row) {
  const auto change = [](weave::RowEnd end) { return end == weave::RowEnd::increase ? "increase" : "decrease"; };
  std::string text;
  if (row.begins != weave::RowEnd::plain) text += fmt::format(", {} at the beginning", change(row.begins));
  if (row.ends != weave::RowEnd::plain) text += fmt::format(", {} at the end", change(row.ends));
  if (row.on_back) text += ", on the back";
  return text;
}

std::string label_text(const weave::Row& row) {
  const std::string_view word = row.kind == weave::RowKind::round ? "Round" : "Row";
  const char side = side_letter(row.travel);
  const std::string ends = ends_text(row);
  if (row.first_number == row.last_number) return fmt::format("{} {} ({}){}", word, row.first_number, side, ends);
  return fmt::format("{}s {}–{} ({}){}", word, row.first_number, row.last_number, side, ends);
}

std::string counted(int count, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

std::string_view closure_word(weave::Closure closure) {
  switch (closure) {
    case weave::Closure::open: return "open";
    case weave::Closure::zip: return "zipped";
    case weave::Closure::sew: return "sewn together";
    case weave::Closure::round: return "worked in the round";
  }
  return "";
}

std::string facts_text(const weave::Plan& plan) {
  const auto technique = weave::find_technique(plan.technique);
  std::string name = technique ? std::string(technique->name) : plan.technique;
  if (!name.empty() && name[0] >= 'a' && name[0] <= 'z') name[0] = static_cast<char>(name[0] - 'a' + 'A');
  const auto [across, along] = technique ? technique->measures(plan.lattice) : weave::columns_and_edge(plan.lattice);
  const bool rounds = !plan.rows.empty() && plan.rows.front().kind == weave::RowKind::round;
  return fmt::format("{}: {}, {}, {}, {}.", name, counted(across.count, across.one, across.many),
                     counted(along.count, along.one, along.many),
                     counted(weave::row_count(plan), rounds ? "round" : "row", rounds ? "rounds" : "rows"),
                     closure_word(plan.closure));
}

/// A name that stays on one line, whatever was typed into it.
std::string one_line(std::string_view name) {
  std::string line;
  for (const char c : name) {
    const bool blank = static_cast<unsigned char>(c) <= 0x20 || c == 0x7F;
    if (!blank) line += c;
    if (blank && !line.empty() && line.back() != ' ') line += ' ';
  }
  if (!line.empty() && line.back() == ' ') line.pop_back();
  return line;
}

/// Lines that do the same, whatever their numbers, have the same number here.
std::vector<int> kinds_of(const std::vector<WordLine>& lines, std::span<const weave::Row* const> rows) {
  std::map<std::string, int> kinds;
  std::vector<int> kind_of;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    std::string key = fmt::format("{}{}|{}", side_letter(rows[i]->travel), ends_text(*rows[i]), lines[i].beads);
    kind_of.push_back(kinds.emplace(std::move(key), static_cast<int>(kinds.size())).first->second);
  }
  return kind_of;
}

std::string times_text(std::size_t times) {
  return times == 1 ? "once" : times == 2 ? "twice" : fmt::format("{} times", times);
}

/// Blocks of lines that repeat the block before them become one line.
std::vector<WordLine> fold_rows(const std::vector<WordLine>& lines, std::span<const weave::Row* const> rows) {
  constexpr std::size_t longest_block = 64;  // rows; a longer block is no pattern to remember
  const std::vector<int> kinds = kinds_of(lines, rows);
  std::vector<WordLine> folded;
  std::size_t written = 0;  // lines before this one stand in the text as they are, from `block_floor` on
  std::size_t block_floor = 0;
  while (written < lines.size()) {
    std::size_t best_period = 0, best_times = 0;
    for (std::size_t period = 1; period <= std::min(longest_block, written - block_floor); ++period) {
      std::size_t alike = 0;
      while (written + alike < lines.size() && kinds[written + alike] == kinds[written + alike - period]) ++alike;
      const std::size_t times = alike / period;
      if (times * period > best_times * best_period) best_period = period, best_times = times;
    }
    const std::size_t covered = best_period * best_times;
    // Two rows that come once more are sooner read than looked up.
    if (covered < 3 || (best_times < 2 && covered < 4)) {
      folded.push_back(lines[written++]);
      continue;
    }
    const WordLine &first = lines[written], &last = lines[written + covered - 1];
    const WordLine &from = lines[written - best_period], &to = lines[written - 1];
    const bool round = rows[written]->kind == weave::RowKind::round;
    const auto range = [](int a, int b) { return a == b ? fmt::format("{}", a) : fmt::format("{}–{}", a, b); };
    WordLine line{.label = fmt::format("{} {}", round ? "Rounds" : "Rows", range(first.first_row, last.last_row)),
                  .beads = fmt::format("work {}{} {} {}", round ? "round" : "row", best_period > 1 ? "s" : "",
                                       range(from.first_row, to.last_row), times_text(best_times)),
                  .first_row = first.first_row,
                  .last_row = last.last_row};
    for (std::size_t i = written; i < written + covered; ++i) line.count += lines[i].count;
    folded.push_back(std::move(line));
    written += covered;
    block_floor = written;
  }
  return folded;
}

}  // namespace

WordChart write_words(const weave::Plan& plan, std::span<const std::string> letters,
                      std::string_view band_name, const WordStyle& style) {
  WordChart words{"Word chart: " + one_line(band_name), facts_text(plan), {}};
  std::vector<const weave::Row*> rows;
  for (std::size_t i = 0; i < plan.rows.size(); ++i) {
    const weave::Row& row = plan.rows[i];
    if (!weave::has_beads(row.kind)) continue;
    const auto runs = runs_of(plan, i, letters);
    words.lines.push_back({label_text(row), style.fold_runs ? folded(runs) : joined(runs), row.first_number,
                           row.last_number, static_cast<int>(weave::beads_of(plan, row).size())});
    rows.push_back(&row);
  }
  if (style.fold_rows) words.lines = fold_rows(words.lines, rows);
  return words;
}

std::string to_text(const WordChart& words) {
  std::string text = words.heading + "\n" + words.facts + "\n";
  for (const WordLine& line : words.lines) text += line.label + ": " + line.beads + "\n";
  return text;
}

}  // namespace evencount::wording
