#include "wording/reader_band.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "chart/letters.hpp"

namespace evencount::wording::reader {
namespace {

using weave::Travel;

std::string beads_text(int beads) {
  return fmt::format("{} bead{}", beads, beads == 1 ? "" : "s");
}

Problem bad_words(std::string where, std::string found, std::string expected) {
  return {ProblemCode::bad_words, std::move(where), std::move(found), std::move(expected)};
}

int columns_of(const FoundBand& band) {
  return band.rows.at(1).beads;
}

/// The skipped line that row `number` was most likely written in: one with its label, or a line of runs
/// between its neighbours.
std::optional<Suspect> suspect_for(const FoundBand& band, int number) {
  if (const auto found = band.labelled_lines.find(number); found != band.labelled_lines.end())
    return found->second;
  const auto after = band.rows.lower_bound(number);
  const int from = after == band.rows.begin() ? 0 : std::prev(after)->second.line;
  const auto line = std::upper_bound(band.run_lines.begin(), band.run_lines.end(), from);
  if (line == band.run_lines.end()) return std::nullopt;
  if (after != band.rows.end() && after->second.line > from && *line > after->second.line)
    return std::nullopt;
  return Suspect{*line, false};
}

Problem missing_row(const FoundBand& band, int number, int total) {
  const auto next = band.rows.lower_bound(number);
  const FoundRow& before = std::prev(next)->second;
  const std::string previous = row_text(before.first_row, before.last_row);
  std::string expected = fmt::format("row {}", number);
  if (const auto suspect = suspect_for(band, number))
    expected += fmt::format(" (line {} {})", suspect->line,
                            suspect->by_label ? "speaks of it, but what follows is not a row's beads"
                                              : "holds beads, but can't be read as a row");
  if (next == band.rows.end())
    return bad_words(fmt::format("line {}, after {}", before.line, previous), "the end of the band",
                     expected + fmt::format(", of {} rows", total));
  return bad_words(fmt::format("line {}", next->second.line),
                   fmt::format("row {} after {}", next->second.first_row, previous), expected);
}

Result<Done> check_columns(const FoundBand& band, const Wanted& wanted) {
  const FoundRow& first = band.rows.at(1);
  if (const auto columns = stated_columns(band, wanted); columns && *columns != first.beads)
    return wrong_length(first, first.beads, *columns);
  if (first.beads < 2) return bad_words(place_text(first, ""), beads_text(first.beads), "at least 2 beads");
  if (const auto& facts = band.facts; facts && facts->columns && *facts->columns != first.beads)
    return bad_words(fmt::format("line {}, the facts", facts->line),
                     fmt::format("{} columns", *facts->columns),
                     fmt::format("{}, as rows 1-2 have", first.beads));
  return Done{};
}

Result<Done> check_rows(const FoundBand& band, int total) {
  int number = 1;
  for (const auto& [first_row, row] : band.rows) {
    if (first_row > number) return missing_row(band, number, total);
    if (const int needed = beads_needed(columns_of(band), first_row); row.beads != needed)
      return wrong_length(row, row.beads, needed);
    number = row.last_row + 1;
  }
  if (number <= total) return missing_row(band, number, total);
  return Done{};
}

Result<Done> check_directions(const FoundBand& band) {
  const FoundRow* first = nullptr;
  for (const auto& [number, row] : band.rows) {
    if (!row.travel) continue;
    if (first == nullptr) first = &row;
    const bool same = (row.last_row - first->last_row) % 2 == 0;
    const Travel right_way = same ? *first->travel : weave::opposite(*first->travel);
    if (*row.travel != right_way)
      return bad_words(
          place_text(row, ""), fmt::format("direction {}", *row.travel == Travel::left ? "L" : "R"),
          fmt::format("{}: directions alternate from {} ({})", right_way == Travel::left ? "L" : "R",
                      row_text(first->first_row, first->last_row),
                      *first->travel == Travel::left ? "L" : "R"));
  }
  return Done{};
}

Result<Done> check_facts(const FoundBand& band) {
  if (!band.facts) return Done{};
  const Facts& facts = *band.facts;
  const int columns = columns_of(band), rows = row_total(band);
  const std::string where = fmt::format("line {}, the facts", facts.line);
  if (facts.odd_count && *facts.odd_count != (columns % 2 == 1))
    return bad_words(where, *facts.odd_count ? "odd count" : "even count",
                     fmt::format("{} count for {} columns", columns % 2 == 1 ? "odd" : "even", columns));
  if (facts.rows && *facts.rows != rows)
    return bad_words(where, fmt::format("{} rows", *facts.rows), fmt::format("{}, as were read", rows));
  if (facts.edge && *facts.edge != (rows + 1) / 2)
    return bad_words(where, fmt::format("{} along the edge", beads_text(*facts.edge)),
                     fmt::format("{} for {} rows", (rows + 1) / 2, rows));
  if (facts.closure == weave::Closure::zip && rows % 2 == 1)
    return bad_words(where, fmt::format("zipped, with {} rows", rows), "an even number of rows");
  return Done{};
}

}  // namespace

std::string row_text(int first_row, int last_row) {
  return first_row == last_row ? fmt::format("row {}", first_row)
                               : fmt::format("rows {}-{}", first_row, last_row);
}

std::string place_text(const FoundRow& row, std::string_view after) {
  return fmt::format("line {}, {}{}{}", row.line, row_text(row.first_row, row.last_row),
                     after.empty() ? "" : ", after ", after);
}

std::optional<int> stated_columns(const FoundBand& band, const Wanted& wanted) {
  if (wanted.columns) return wanted.columns;
  return band.facts ? band.facts->columns : std::nullopt;
}

int beads_needed(int columns, int first_row) {
  if (first_row == 1) return columns;
  return first_row % 2 == 1 ? (columns + 1) / 2 : columns / 2;
}

Problem wrong_length(const FoundRow& row, int beads, int needed) {
  std::string after;
  int passed = 0;
  for (const FoundRun& run : row.runs) {
    if (passed + run.count > needed) break;
    passed += run.count;
    after = fmt::format("{}{}", run.count, chart::letter_name(run.letter));
  }
  return bad_words(place_text(row, after), beads_text(beads), beads_text(needed));
}

int row_total(const FoundBand& band) {
  return std::prev(band.rows.end())->second.last_row;
}

Result<Done> check_band(const FoundBand& band, const Wanted& wanted) {
  if (auto columns = check_columns(band, wanted); !columns) return columns;
  int total = row_total(band);
  if (band.facts && band.facts->rows) total = std::max(total, std::min(*band.facts->rows, highest_row));
  if (wanted.rows) total = std::max(total, std::min(*wanted.rows, highest_row));
  if (auto rows = check_rows(band, total); !rows) return rows;
  if (wanted.rows && *wanted.rows != total)
    return bad_words(place_text(std::prev(band.rows.end())->second, ""), fmt::format("{} rows", total),
                     fmt::format("{} rows", *wanted.rows));
  if (auto directions = check_directions(band); !directions) return directions;
  return check_facts(band);
}

Result<chart::Chart> chart_of(const FoundBand& band, const std::map<int, chart::Bead>& bead_of_letter) {
  const int columns = columns_of(band);
  auto chart = chart::Chart::make(columns, (row_total(band) + 1) / 2, chart::no_bead);
  if (!chart) return chart.problem().within(place_text(band.rows.at(1), ""));
  for (const auto& [number, row] : band.rows) {
    // Odd rows go up the even columns, even rows down the odd ones; rows 1-2 take every column, downwards.
    const bool upwards = number > 1 && number % 2 == 1;
    const int stride = number == 1 ? -1 : (upwards ? 2 : -2);
    int column = upwards ? 0 : (number == 1 ? columns - 1 : 2 * (columns / 2) - 1);
    for (const FoundRun& run : row.runs) {
      for (int bead = 0; bead < run.count; ++bead, column += stride)
        chart->set({column, (number - 1) / 2}, bead_of_letter.at(run.letter));
    }
  }
  return chart;
}

}  // namespace evencount::wording::reader
