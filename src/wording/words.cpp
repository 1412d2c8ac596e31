#include "wording/words.hpp"

#include <fmt/format.h>

#include <cassert>

#include "weave/technique.hpp"

namespace evencount::wording {
namespace {

std::string run_text(int count, const std::string& letter) {
  return fmt::format("({}){}", count, letter);
}

std::string runs_text(std::span<const weave::Bead> beads, std::span<const std::string> letters) {
  std::string text;
  for (std::size_t first = 0; first < beads.size();) {
    std::size_t end = first + 1;
    while (end < beads.size() && beads[end] == beads[first]) ++end;
    assert(beads[first] < letters.size());
    if (!text.empty()) text += ", ";
    text += run_text(static_cast<int>(end - first), letters[beads[first]]);
    first = end;
  }
  return text;
}

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

}  // namespace

WordChart write_words(const weave::Plan& plan, std::span<const std::string> letters,
                      std::string_view band_name) {
  WordChart words{"Word chart: " + one_line(band_name), facts_text(plan), {}};
  for (const weave::Row& row : plan.rows) {
    if (!weave::has_beads(row.kind)) continue;
    const auto beads = weave::beads_of(plan, row);
    words.lines.push_back({label_text(row), runs_text(beads, letters), row.first_number, row.last_number,
                           static_cast<int>(beads.size())});
  }
  return words;
}

std::string to_text(const WordChart& words) {
  std::string text = words.heading + "\n" + words.facts + "\n";
  for (const WordLine& line : words.lines) text += line.label + ": " + line.beads + "\n";
  return text;
}

}  // namespace evencount::wording
