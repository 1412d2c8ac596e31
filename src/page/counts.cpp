#include "page/counts.hpp"

#include <algorithm>

namespace evencount::page {
namespace {

/// The beads that the words of a line name: "(2)A, (1)B; dec".
void count_line(std::string_view beads, Counts& counts) {
  while (true) {
    const std::size_t open = beads.find('(');
    if (open == std::string_view::npos) return;
    beads.remove_prefix(open + 1);
    const std::size_t close = beads.find(')'), end = std::min(beads.find_first_of(",;", close), beads.size());
    if (close == std::string_view::npos) return;
    std::int64_t count = 0;
    for (const char digit : beads.substr(0, close)) count = 10 * count + (digit - '0');
    counts[std::string(beads.substr(close + 1, end - close - 1))] += count;
    beads.remove_prefix(end);
  }
}

}  // namespace

Counts counts_in_words(const wording::WordChart& words) {
  Counts counts;
  for (const wording::WordLine& line : words.lines) count_line(line.beads, counts);
  return counts;
}

Counts counts_in_plan(const project::Project& project, const weave::Plan& plan) {
  Counts counts;
  const auto beads = weave::count_beads(plan);
  for (std::size_t bead = 0; bead < beads.size(); ++bead)
    if (beads[bead] > 0) counts[project.legend[bead].letter] += beads[bead];
  return counts;
}

Counts counts_in_chart(const project::Project& project, const chart::Chart& chart) {
  std::vector<std::int64_t> by_bead(project.legend.size(), 0);
  for (const chart::Bead bead : chart.cells())
    if (bead < by_bead.size()) ++by_bead[bead];
  Counts counts;
  for (std::size_t bead = 0; bead < by_bead.size(); ++bead)
    if (by_bead[bead] > 0) counts[project.legend[bead].letter] += by_bead[bead];
  return counts;
}

Counts counts_of_supplies(const project::SupplyList& supplies) {
  Counts counts;
  for (const auto& bead : supplies.beads.beads)
    if (bead.count > 0) counts[bead.letter] += bead.count;
  return counts;
}

void add(Counts& all, const Counts& more, std::int64_t times) {
  for (const auto& [letter, count] : more) all[letter] += times * count;
}

Result<Done> check_counts(const Subject& subject) {
  Counts in_rows;
  for (const BandSheet& sheet : subject.bands) {
    const Counts words = counts_in_words(sheet.words);
    const auto fault = [&](const char* found) {
      return Problem{ProblemCode::bad_plan, "band " + sheet.band->name, found, "the beads of its plan"};
    };
    const Counts plan = counts_in_plan(subject.project, sheet.plan);
    if (words != plan) return fault("other beads in its rows");
    if (counts_in_chart(subject.project, sheet.band->chart) != plan) return fault("other beads in its cells");
    std::int64_t lines = 0;
    for (const wording::WordLine& line : sheet.words.lines) lines += line.count;
    if (lines != beads_in(sheet.plan)) return fault("other sums at its rows");
    add(in_rows, words, sheet.band->copies);
  }
  if (in_rows != counts_of_supplies(subject.supplies))
    return Problem{ProblemCode::bad_plan, "supplies", "other beads than in the rows", "the beads of every row"};
  return Done{};
}

}  // namespace evencount::page
