#include "wording/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "language/texts.hpp"
#include "weave/technique.hpp"
#include "wording/row_text.hpp"

namespace evencount::wording {
namespace {

using language::Language;
using language::Texts;

language::Text side_letter(weave::Travel travel) {
  switch (travel) {
    case weave::Travel::left: return &Texts::side_left;
    case weave::Travel::right: return &Texts::side_right;
    case weave::Travel::forth: return &Texts::side_down;
    case weave::Travel::back: return &Texts::side_up;
  }
  return &Texts::side_left;
}

/// ", increase at the beginning, decrease at the end"; empty for a plain row.
std::string ends_text(const weave::Row& row, const Language& language) {
  std::string text;
  const auto add = [&](language::Text part) {
    text += language.say(&Texts::label_part, {{"part", language.text(part)}});
  };
  const auto increases = [](weave::RowEnd end) { return end == weave::RowEnd::increase; };
  if (row.begins != weave::RowEnd::plain)
    add(increases(row.begins) ? &Texts::begins_increase : &Texts::begins_decrease);
  if (row.ends != weave::RowEnd::plain) add(increases(row.ends) ? &Texts::ends_increase : &Texts::ends_decrease);
  if (row.on_back) add(&Texts::on_the_back);
  return text;
}

/// "Row 3", "Rounds 1–2".
std::string numbered(const Language& language, bool round, int first, int last) {
  const language::Text text = first == last ? (round ? &Texts::round_one : &Texts::row_one)
                                            : (round ? &Texts::round_range : &Texts::row_range);
  return language.say(text, {{"first", first}, {"last", last}});
}

std::string label_text(const weave::Row& row, const Language& language) {
  const std::string name =
      numbered(language, row.kind == weave::RowKind::round, row.first_number, row.last_number);
  return language.say(&Texts::label, {{"row", name},
                                      {"side", language.text(side_letter(row.travel))},
                                      {"ends", ends_text(row, language)}});
}

language::Text closure_word(weave::Closure closure) {
  switch (closure) {
    case weave::Closure::open: return &Texts::closure_open;
    case weave::Closure::zip: return &Texts::closure_zip;
    case weave::Closure::sew: return &Texts::closure_sew;
    case weave::Closure::round: return &Texts::closure_round;
  }
  return &Texts::closure_open;
}

std::string facts_text(const weave::Plan& plan, const Language& language) {
  const auto [across, along] = sizes_text(plan, language);
  return language.say(&Texts::facts, {{"technique", language::capitalised(technique_name(plan, language))},
                                      {"across", across},
                                      {"along", along},
                                      {"rows", rows_text(plan, language)},
                                      {"closure", language.text(closure_word(plan.closure))}});
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
    std::string key = fmt::format("{}{}|{}", static_cast<int>(rows[i]->travel),
                                  ends_text(*rows[i], language::english()), lines[i].beads);
    kind_of.push_back(kinds.emplace(std::move(key), static_cast<int>(kinds.size())).first->second);
  }
  return kind_of;
}

std::string times_text(std::size_t times, const Language& language) {
  if (times == 1) return std::string(language.text(&Texts::times_once));
  if (times == 2) return std::string(language.text(&Texts::times_twice));
  return language.say(&Texts::times, {{"n", times}});
}

/// "Rows 13–28" and "work rows 5–12 twice".
WordLine repeat_line(const Language& language, bool round, std::pair<int, int> rows, std::pair<int, int> again,
                     std::size_t times) {
  const auto within = [&](int first, int last) {
    const language::Text text = first == last ? (round ? &Texts::again_round : &Texts::again_row)
                                              : (round ? &Texts::again_rounds : &Texts::again_rows);
    return language.say(text, {{"first", first}, {"last", last}});
  };
  return {.label = numbered(language, round, rows.first, rows.second),
          .beads = language.say(&Texts::work_rows, {{"rows", within(again.first, again.second)},
                                                    {"times", times_text(times, language)}}),
          .first_row = rows.first,
          .last_row = rows.second};
}

/// Blocks of lines that repeat the block before them become one line.
std::vector<WordLine> fold_rows(const std::vector<WordLine>& lines, std::span<const weave::Row* const> rows,
                                const Language& language) {
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
    WordLine line = repeat_line(language, rows[written]->kind == weave::RowKind::round,
                                {first.first_row, last.last_row}, {from.first_row, to.last_row}, best_times);
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
  const Language& language = *style.language;
  WordChart words{language.say(&Texts::word_chart, {{"name", one_line(band_name)}}), facts_text(plan, language), {}};
  std::vector<const weave::Row*> rows;
  for (std::size_t i = 0; i < plan.rows.size(); ++i) {
    const weave::Row& row = plan.rows[i];
    if (!weave::has_beads(row.kind)) continue;
    const auto runs = runs_of(plan, i, letters, language.text(&Texts::decrease_sign));
    words.lines.push_back({label_text(row, language), style.fold_runs ? folded(runs) : joined(runs), row.first_number,
                           row.last_number, static_cast<int>(weave::beads_of(plan, row).size())});
    rows.push_back(&row);
  }
  if (style.fold_rows) words.lines = fold_rows(words.lines, rows, language);
  return words;
}

std::string ended(const std::string& label, const Language& language) {
  return language.say(&Texts::label_end, {{"label", label}});
}

std::string to_text(const WordChart& words, const Language& language) {
  std::string text = words.heading + "\n" + words.facts + "\n";
  for (const WordLine& line : words.lines) text += ended(line.label, language) + " " + line.beads + "\n";
  return text;
}

std::string technique_name(const weave::Plan& plan, const Language& language) {
  const auto technique = weave::find_technique(plan.technique);
  return technique ? std::string(language.text(technique->printed_name)) : plan.technique;
}

std::pair<std::string, std::string> sizes_text(const weave::Plan& plan, const Language& language) {
  const auto technique = weave::find_technique(plan.technique);
  const auto [across, along] = technique ? technique->measures(plan.lattice) : weave::columns_and_edge(plan.lattice);
  return {language.say(across.counted, {{"n", across.count}}), language.say(along.counted, {{"n", along.count}})};
}

std::string rows_text(const weave::Plan& plan, const Language& language) {
  const bool rounds = !plan.rows.empty() && plan.rows.front().kind == weave::RowKind::round;
  return language.say(rounds ? &Texts::rounds_counted : &Texts::rows_counted, {{"n", weave::row_count(plan)}});
}

}  // namespace evencount::wording
