#include "wording/reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "base/text.hpp"
#include "chart/letters.hpp"
#include "wording/reader_page.hpp"

namespace evencount::wording {
namespace {

using reader::FoundBand;

/// A million cells written one by one come to about 8 MB; a booklet's prose is little beside that.
constexpr std::size_t most_bytes = 64u << 20;

/// Lines end with a line feed, a carriage return or both.
class Lines {
 public:
  explicit Lines(std::string_view text) : rest_(text) {}
  [[nodiscard]] bool done() const { return done_; }
  std::string_view next() {
    const auto end = rest_.find_first_of("\r\n");
    const std::string_view line = rest_.substr(0, end);
    if (end == std::string_view::npos) {
      done_ = true;
      return line;
    }
    const bool both = rest_.substr(end).starts_with("\r\n");
    rest_.remove_prefix(end + (both ? 2 : 1));
    return line;
  }

 private:
  std::string_view rest_;
  bool done_ = false;
};

/// For each letter its bead: its place in the legend, or among the letters that occur in any band.
using reader::BeadOfLetter;

Result<BeadOfLetter> beads_of_legend(const std::vector<std::string>& legend) {
  BeadOfLetter beads;
  for (std::size_t i = 0; i < legend.size(); ++i) {
    const auto letter = chart::letter_position(upper_ascii(legend[i]));
    if (!letter) return Problem{ProblemCode::bad_text, "legend", quote(legend[i]), "letters from A to ZZZ"};
    if (!beads.emplace(*letter, static_cast<chart::Bead>(i)).second)
      return Problem{ProblemCode::duplicate_name, "legend", quote(legend[i]), "each letter once"};
  }
  return beads;
}

BeadOfLetter beads_that_occur(const std::vector<FoundBand>& bands) {
  BeadOfLetter beads;
  for (const FoundBand& band : bands)
    for (const auto& [number, row] : band.rows)
      for (const reader::FoundRun& run : row.runs)
        if (run.letter != reader::no_letter) beads.emplace(run.letter, chart::Bead{0});
  chart::Bead next = 0;
  for (auto& [letter, bead] : beads) bead = next++;
  return beads;
}

std::vector<std::string> names_of(const BeadOfLetter& beads) {
  std::vector<std::string> names(beads.size());
  for (const auto& [letter, bead] : beads) names[bead] = chart::letter_name(letter);
  return names;
}

Result<ReadBand> finished_band(const FoundBand& found, const reader::CheckedBand& checked,
                               const BeadOfLetter& beads) {
  auto chart = chart_of(checked, beads);
  if (!chart) return chart.problem();
  const reader::RowRules& rules = *checked.rules;
  return ReadBand{.name = found.name,
                  .chart = std::move(*chart),
                  .letters = names_of(beads),
                  .first_travel = found.rows.at(1).travel.value_or(weave::Travel::left),
                  .rows = checked.whole.count(),
                  .closure = rules.rounds  ? std::optional(weave::Closure::round)
                             : found.facts ? found.facts->closure
                                           : std::nullopt,
                  .technique = std::string(rules.id),
                  .begin_at = checked.extent.begin_at};
}

Problem no_rows(const reader::PageReader& page) {
  if (page.first_stray_round() > 0)
    return {ProblemCode::bad_words, fmt::format("line {}", page.first_stray_round()),
            "rounds of a technique without a name",
            "a sentence such as Tubular peyote, even count: 12 columns, 8 beads along the edge, 16 rounds, "
            "worked in the round"};
  const int stray_line = page.first_stray_line();
  return {
      ProblemCode::bad_words, stray_line > 0 ? fmt::format("line {}", stray_line) : std::string("the words"),
      stray_line > 0 ? "beads without a row's label" : "no rows", "a line such as Rows 1-2 (L): (2)A, (1)B"};
}

Result<std::vector<ReadBand>> finished_bands(const reader::PageReader& page, const reader::Wanted& wanted,
                                             const BeadOfLetter& legend) {
  const BeadOfLetter beads = legend.empty() ? beads_that_occur(page.bands()) : legend;
  std::vector<ReadBand> bands;
  std::int64_t cells = 0;
  for (const FoundBand& found : page.bands()) {
    const auto checked = check_band(found, wanted);
    if (!checked) return checked.problem();
    auto band = finished_band(found, *checked, beads);
    if (!band) return band.problem();
    cells += static_cast<std::int64_t>(band->chart.cells().size());
    if (cells > most_cells_read)
      return Problem{ProblemCode::out_of_range, reader::place_text(found.rows.at(1), ""), "too many bands",
                     fmt::format("at most {} cells in all", most_cells_read)};
    bands.push_back(std::move(*band));
  }
  return bands;
}

}  // namespace

Result<std::vector<ReadBand>> read_words(std::string_view text, const ReadOptions& options) {
  if (text.size() > most_bytes)
    return Problem{ProblemCode::out_of_range, "", fmt::format("{} bytes of text", text.size()),
                   fmt::format("at most {}", most_bytes)};
  const auto legend = beads_of_legend(options.legend);
  if (!legend) return legend.problem();
  std::vector<int> letters;
  for (const auto& [letter, bead] : *legend) letters.push_back(letter);
  reader::Wanted wanted{options.columns, options.rows};
  if (options.technique) {
    const auto rules = reader::find_rules(*options.technique);
    if (!rules) return rules.problem();
    wanted.rules = *rules;
  }

  reader::PageReader page(wanted, std::move(letters));
  Lines lines(text);
  for (int number = 1; !lines.done(); ++number)
    if (auto taken = page.take_line(lines.next(), number); !taken) return taken.problem();
  if (page.bands().empty()) return no_rows(page);
  return finished_bands(page, wanted, *legend);
}

}  // namespace evencount::wording
