/// Prints an alphabet as a project, its characters on bands: print_alphabet_sheet five|three|along. For tools/alphabets.

#include <algorithm>
#include <iostream>
#include <string>
#include <vector>

#include "picture/lettering.hpp"
#include "project/json.hpp"

namespace evencount::picture {
namespace {

constexpr chart::Bead ground = 0, ink = 1;

/// All characters of an alphabet, in lines of at most so many: capitals, small letters, digits, accented letters, signs.
std::string all_characters(const Alphabet& alphabet, std::size_t most) {
  const auto group_of = [&](const LetterDrawing& drawing) {
    const char first = drawing.character[0];
    if (first >= 'A' && first <= 'Z') return 0;
    if (first >= 'a' && first <= 'z') return 1;
    if (first >= '0' && first <= '9') return 2;
    return is_letter(drawing) ? 3 : 4;
  };
  std::string text;
  for (int group = 0; group < 5; ++group) {
    std::vector<std::string> characters;
    for (const LetterDrawing& drawing : alphabet.letters)
      if (group_of(drawing) == group) characters.push_back(drawing.character);
    std::sort(characters.begin(), characters.end());
    for (std::size_t i = 0; i < characters.size(); ++i) {
      if (i % most == 0 && !text.empty()) text += '\n';
      text += characters[i];
    }
  }
  return text;
}

/// A band just large enough for a text, with one column or more and one bead free around it; an even number of columns.
project::Band band_of(const std::string& name, const std::string& text, const LetteringStyle& style,
                      int first_column = 2) {
  const LetteringSize size = lettering_size(text, style).value();
  const int around = first_column % 2 == 0 ? 0 : 1;  // half a bead more, from a shifted column
  const Window window{{first_column, 1}, size.columns, size.steps + around};
  int columns = size.columns + first_column + 1;
  columns += columns % 2;
  const auto chart = chart::Chart::make(columns, window.steps + 2, ground).value();
  project::Band band;
  band.name = name;
  band.technique = "peyote-even-count";
  band.bead = "cylinder-11";
  band.closure = weave::Closure::open;
  band.chart = write_text(chart, {}, text, window, ink, style).value().chart;
  return band;
}

project::Project sheet(const std::string& title) {
  project::Project project;
  project.title = title;
  project.beads = {*bead::find_size("cylinder-11")};
  project.thread = *bead::find_thread("braided-6lb");
  project.legend = {
      {.letter = "A", .name = "paper", .colour = colour::Rgb{0xef, 0xe8, 0xd6}, .bead = "cylinder-11"},
      {.letter = "B", .name = "ink", .colour = colour::Rgb{0x22, 0x30, 0x4f}, .bead = "cylinder-11"}};
  return project;
}

project::Project five() {
  LetteringStyle style{.line = LineAlign::begin, .line_space = 2};
  project::Project project = sheet("Five-column alphabet");
  project.bands = {
      band_of("All characters", all_characters(*find_alphabet(style.alphabet, style.running), 13), style),
      band_of("From a shifted column", "ABCDEFGHI\nabcdefghi", style, 3)};
  return project;
}

project::Project three() {
  LetteringStyle style{.alphabet = AlphabetName::three_columns, .line = LineAlign::begin, .line_space = 2};
  project::Project project = sheet("Three-column alphabet");
  project.bands = {
      band_of("All characters", all_characters(*find_alphabet(style.alphabet, style.running), 18), style)};
  style.narrow = true;
  project.bands.push_back(band_of("Narrow forms", "MNWH", style));
  return project;
}

project::Project along() {
  LetteringStyle style{.running = Running::down, .line = LineAlign::begin, .line_space = 2};
  project::Project project = sheet("Five-column alphabet along the band");
  project.bands = {
      band_of("All characters", all_characters(*find_alphabet(style.alphabet, style.running), 13), style),
      band_of("Down", "MOONRISE & TIDE", style)};
  style.running = Running::up;
  project.bands.push_back(band_of("Up", "MOONRISE & TIDE", style));
  return project;
}

}  // namespace
}  // namespace evencount::picture

int main(int count, char** arguments) {
  const std::string which = count == 2 ? arguments[1] : "";
  using namespace evencount;
  if (which != "five" && which != "three" && which != "along") return 2;
  std::cout << project::to_json(which == "five"    ? picture::five()
                                : which == "three" ? picture::three()
                                                   : picture::along());
}
