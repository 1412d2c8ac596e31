#include "project/motif.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "project/json_fields.hpp"

namespace evencount::project {
namespace {

Result<chart::Bead> bead_of(char letter, const std::vector<std::string>& letters, const std::string& where) {
  const std::string name = upper_ascii(std::string_view(&letter, 1));
  const auto found = std::ranges::find(letters, name);
  if (found != letters.end()) return static_cast<chart::Bead>(found - letters.begin());
  return Problem{ProblemCode::unknown_name, where,
                 fmt::format("letter {}", quote(std::string_view(&letter, 1))),
                 "a letter of the legend, " + json::one_of(letters)};
}

}  // namespace

std::vector<std::string_view> motif_lines(std::string_view text) {
  std::vector<std::string_view> lines = split(text, '\n');
  while (!lines.empty() && trim(lines.back()).empty()) lines.pop_back();
  return lines;
}

Result<chart::Chart> with_motif(const chart::Chart& chart, std::string_view text,
                                const std::vector<std::string>& letters, const StepSpan& span) {
  chart::Chart drawn = chart;
  const std::vector<std::string_view> lines = motif_lines(text);
  const int end = std::min(span.first + span.steps, chart.edge());
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const std::string_view line = trim(lines[i]);
    const int step = span.first + static_cast<int>(i),
              margin = (chart.columns() - static_cast<int>(line.size())) / 2;
    const std::string where = fmt::format("line {}", i + 1);
    if (static_cast<int>(line.size()) > chart.columns() || step < 0 || step >= end)
      return Problem{
          ProblemCode::wrong_size, where, fmt::format("{} letters for step {}", line.size(), step),
          fmt::format("at most {} letters on steps {} to {}", chart.columns(), span.first, end - 1)};
    for (std::size_t c = 0; c < line.size(); ++c) {
      const chart::Cell cell{margin + static_cast<int>(c), step};
      if (line[c] == '.') continue;
      const auto bead =
          line[c] == '_' ? Result<chart::Bead>(chart::no_bead) : bead_of(line[c], letters, where);
      if (!bead) return bead.problem();
      drawn.set(cell, *bead);
    }
  }
  return drawn;
}

}  // namespace evencount::project
