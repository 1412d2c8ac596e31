#include "app/verbs/band_marks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "app/files.hpp"
#include "app/lettering_argument.hpp"
#include "base/text.hpp"
#include "page/font_bitmap.hpp"
#include "picture/lettering.hpp"
#include "project/motif.hpp"
#include "weave/technique.hpp"

namespace evencount::app {
namespace {

/// The chart with the letters of a motif file on it.
Result<chart::Chart> with_motif(const project::Project& project, const BandArguments& arguments, const chart::Chart& chart) {
  const auto text = read_file(arguments.motif);
  if (!text) return text.problem();
  const int at = arguments.motif_at.value_or(0);
  auto drawn = project::with_motif(chart, *text, project::letters_of(project), {at, chart.edge() - at});
  if (!drawn) return drawn.problem().within(arguments.motif);
  return drawn;
}

/// In a drawn alphabet, in the middle of the window.
Result<Drawn> in_alphabet(const Ground& ground, const BandArguments& arguments, const std::string& text,
                          const picture::Window& window, chart::Bead bead, const chart::Chart& chart) {
  const auto style = lettering_style(arguments.alphabet, arguments.running);
  if (!style) return style.problem();
  auto written = picture::write_text(chart, ground.grid, text, window, bead, *style);
  if (!written) return written.problem();
  const auto legibility = picture::legibility(text, *style);
  if (!legibility) return legibility.problem();
  return Drawn{std::move(written->chart), legibility->doubtful()};
}

/// In a font that is installed, likewise.
Result<Drawn> in_font(const Ground& ground, const BandArguments& arguments, const std::string& text,
                      const picture::Window& window, chart::Bead bead, const chart::Chart& chart) {
  const auto style = lettering_style(arguments.alphabet, arguments.running);
  if (!style) return style.problem();
  page::FontRequest request{.family = arguments.font, .bold = arguments.bold, .italic = arguments.italic};
  if (!arguments.capital_height.empty()) {
    const auto height = parse_length(arguments.capital_height);
    if (!height) return height.problem().within("capital height");
    request.capital_height = *height;
  }
  request.letter_space = ground.gauge.column;
  const auto shown = page::font_text(text, request);
  if (!shown) return shown.problem().within("font");
  const auto lettering =
      picture::letter_in_font(*shown, ground.grid, ground.gauge, window, bead, {.running = style->running});
  if (!lettering) return lettering.problem().within("text");
  auto written = picture::press_text(chart, ground.grid, lettering->stamp, lettering->at);
  if (!written) return written.problem().within("text");
  return Drawn{std::move(written->chart), picture::legibility(*shown, *lettering).doubtful()};
}

Result<Drawn> with_text(const Ground& ground, const BandArguments& arguments, const chart::Chart& chart) {
  const auto bead = bead_of_letter(ground.project, arguments.text_letter, "text");
  if (!bead) return bead.problem();
  const std::string text = with_line_breaks(arguments.text);
  const int first = arguments.motif_at.value_or(0);
  const picture::Window window{{0, first}, chart.columns(), arguments.text_steps.value_or(chart.edge() - first)};
  return arguments.font.empty() ? in_alphabet(ground, arguments, text, window, *bead, chart)
                                : in_font(ground, arguments, text, window, *bead, chart);
}

/// "COLUMN,STEP,COLUMNS,STEPS" of a chart; all of it for an empty text.
Result<chart::Stretch> parse_part(const std::string& text, const chart::Chart& chart) {
  if (text.empty()) return chart::Stretch{{0, 0}, {chart.columns() - 1, chart.edge() - 1}};
  const auto parts = split(text, ',');
  std::array<int, 4> numbers{};
  bool good = parts.size() == numbers.size();
  for (std::size_t i = 0; i < numbers.size() && good; ++i) {
    const auto number = parse_number(trim(parts[i]));
    good = number && *number == std::floor(*number) && *number >= (i < 2 ? 0 : 1) && *number <= chart::most_edge;
    if (good) numbers[i] = static_cast<int>(*number);
  }
  const auto [column, step, columns, steps] = numbers;
  if (!good)
    return Problem{ProblemCode::bad_text, "stamp part", quote(text), "COLUMN,STEP,COLUMNS,STEPS, such as 0,3,6,11"};
  return chart::Stretch{{column, step}, {column + columns - 1, step + steps - 1}};
}

/// The chart with a part of another band pressed on it.
Result<chart::Chart> with_stamp(const project::Project& project, const BandArguments& arguments, const chart::Grid& grid,
                                const chart::Chart& chart) {
  const auto band = project::find_band(project, arguments.stamp);
  if (!band) return band.problem().within("stamp");
  const auto technique = weave::find_technique(band->technique);
  if (!technique) return technique.problem().within("stamp");
  const auto part = parse_part(arguments.stamp_part, band->chart);
  if (!part) return part.problem();
  std::optional<chart::Bead> leave;
  if (!arguments.stamp_leave.empty()) {
    const auto letter = bead_of_letter(project, arguments.stamp_leave, "stamp leave");
    if (!letter) return letter.problem();
    leave = *letter;
  }
  const chart::Grid from = weave::grid_of(technique->lattice(band->chart.columns(), band->chart.edge()), band->closure);
  if (from.drop != grid.drop)
    return Problem{ProblemCode::wrong_size, "stamp", fmt::format("{} in {}", quote(band->name), band->technique),
                   "a band whose columns are shifted in the same way"};
  const auto stamp = chart::copy(band->chart, from, *part, leave);
  if (!stamp) return stamp.problem().within("stamp");
  auto pressed = chart::press(chart, grid, *stamp, {arguments.at_column, arguments.motif_at.value_or(0)});
  if (!pressed) return pressed.problem().within("stamp");
  return std::move(pressed->chart);
}

}  // namespace

Result<chart::Bead> bead_of_letter(const project::Project& project, std::string_view letter,
                                   std::string_view where) {
  const auto letters = project::letters_of(project);
  const auto found = std::find(letters.begin(), letters.end(), upper_ascii(letter));
  if (found != letters.end()) return static_cast<chart::Bead>(found - letters.begin());
  return Problem{ProblemCode::unknown_name, std::string(where), fmt::format("letter {}", quote(letter)),
                 "a letter of the legend (add it with --colour LETTER=#rrggbb:NAME)"};
}

bool draws(const BandArguments& arguments) {
  return !arguments.motif.empty() || !arguments.stamp.empty() || !arguments.text.empty();
}

Result<Drawn> drawn_on(const Ground& ground, const BandArguments& arguments, chart::Chart chart) {
  if (!arguments.motif.empty()) {
    auto drawn = with_motif(ground.project, arguments, chart);
    if (!drawn) return drawn.problem();
    chart = std::move(*drawn);
  }
  if (!arguments.stamp.empty()) {
    auto stamped = with_stamp(ground.project, arguments, ground.grid, chart);
    if (!stamped) return stamped.problem();
    chart = std::move(*stamped);
  }
  if (!arguments.text.empty()) return with_text(ground, arguments, chart);
  return Drawn{std::move(chart), {}};
}

}  // namespace evencount::app
