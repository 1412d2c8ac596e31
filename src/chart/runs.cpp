#include "chart/runs.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"

namespace evencount::chart {
namespace {

constexpr std::string_view empty_cell = ".";

Result<Run> parse_run(std::string_view word, std::span<const std::string> letters) {
  const Problem bad{ProblemCode::bad_text, "", quote(word), "a count and a letter, such as 3A"};
  const auto digits = word.find_first_not_of("0123456789");
  if (digits == 0 || digits == std::string_view::npos) return bad;
  const auto count = parse_integer(word.substr(0, digits));
  if (!count || *count < 1 || *count > most_columns) return bad;
  const std::string_view letter = word.substr(digits);
  if (letter == empty_cell) return Run{static_cast<int>(*count), no_bead};
  const auto found = std::find(letters.begin(), letters.end(), letter);
  if (found == letters.end())
    return Problem{ProblemCode::unknown_name, "", fmt::format("letter {}", quote(letter)),
                   "a letter of the legend"};
  return Run{static_cast<int>(*count), static_cast<Bead>(found - letters.begin())};
}

}  // namespace

std::vector<Run> to_runs(std::span<const Bead> beads) {
  std::vector<Run> runs;
  for (const Bead bead : beads) {
    if (!runs.empty() && runs.back().bead == bead)
      ++runs.back().count;
    else
      runs.push_back({1, bead});
  }
  return runs;
}

std::string to_text(std::span<const Run> runs, std::span<const std::string> letters) {
  std::string text;
  for (const Run& run : runs) {
    const std::string_view letter = run.bead == no_bead ? empty_cell : std::string_view(letters[run.bead]);
    text += fmt::format("{}{}{}", text.empty() ? "" : " ", run.count, letter);
  }
  return text;
}

Result<std::vector<Bead>> parse_runs(std::string_view text, std::span<const std::string> letters,
                                     int length) {
  std::vector<Bead> beads;
  for (const std::string_view word : split(text, ' ')) {
    if (word.empty()) continue;
    const auto run = parse_run(word, letters);
    if (!run) return run.problem();
    beads.insert(beads.end(), run->count, run->bead);
    if (beads.size() > static_cast<std::size_t>(length)) break;
  }
  if (beads.size() != static_cast<std::size_t>(length))
    return Problem{ProblemCode::wrong_size, "",
                   beads.size() > static_cast<std::size_t>(length) ? fmt::format("more than {} beads", length)
                                                                   : fmt::format("{} beads", beads.size()),
                   fmt::format("{} (one for each column)", length)};
  return beads;
}

}  // namespace evencount::chart
