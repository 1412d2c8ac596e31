#include "page/steps.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "language/texts.hpp"
#include "page/along_hand.hpp"

namespace evencount::page {
namespace {

using namespace drawing;
using language::Texts;

// The label font has the figures in circles that the sentences name the beads by.
constexpr Style title_style{{TextRole::label_bold, 9.5}, 5.0, ink::accent};
constexpr Style text_style{{TextRole::label, 8.5}, 4.1};
constexpr double below_title_mm = 1.5, below_picture_mm = 2.0;

Text line_of(const Style& style, std::string text, Point top_left) {
  const double drop_mm = style.leading_mm / 2 + 0.30 * style.face.size_pt * mm_per_pt;
  return {.at = {top_left.x_mm, top_left.y_mm + drop_mm},
          .role = style.face.role,
          .size_pt = style.face.size_pt,
          .ink = style.ink,
          .text = std::move(text)};
}

double height_of(const StepBlock& block) {
  return title_style.leading_mm + below_title_mm + block.picture.height.mm() + below_picture_mm +
         text_style.leading_mm * static_cast<double>(block.lines.size());
}

/// The text with each figure in a circle bound to the word before it.
std::string with_bound_figures(std::string_view text) {
  constexpr std::string_view circle = "\xE2\x91", no_break_space = "\u00A0";  // U+2460 to U+247F begin so
  std::string bound;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == ' ' && text.substr(i + 1, circle.size()) == circle)
      bound += no_break_space;
    else
      bound += text[i];
  }
  return bound;
}

}  // namespace

std::vector<StepBlock> step_blocks(const Typesetter& typesetter, const StepsOf& of,
                                   std::span<const weave::Moment> moments, double column_mm, int first_number) {
  std::vector<StepBlock> blocks;
  const StepStyle style{.most_width = millimetres(column_mm), .language = &of.language};
  for (const weave::Moment& moment : moments) {
    const Drawing picture = step_drawing(of.project, of.band, of.plan, moment, style);
    const std::string title = fmt::format("{}  {}", first_number++, moment.title);
    const bool fits = typesetter.width_mm(title_style.face, title) <= column_mm;
    blocks.push_back({fits ? title : typesetter.shortened(title_style.face, title, column_mm),
                      typesetter.wrap(text_style.face, with_bound_figures(moment.text), column_mm),
                      of.in_mirror ? in_mirror(picture) : picture, std::string(of.language.text(&Texts::diagram))});
  }
  return blocks;
}

double height_of(std::span<const StepBlock> row) {
  double mm = 0;
  for (const StepBlock& block : row) mm = std::max(mm, height_of(block));
  return mm;
}

void put_blocks(Drawing& sheet, std::span<const StepBlock> row, Point at, double column_mm) {
  const auto part = [&](Part kind, std::size_t first, std::string text = {}) {
    sheet.regions.push_back({kind, first, sheet.marks.size(), std::move(text)});
  };
  for (const StepBlock& block : row) {
    double y = at.y_mm;
    std::size_t first = sheet.marks.size();
    sheet.marks.push_back(line_of(title_style, block.title, {at.x_mm, y}));
    part(Part::subheading, first);
    y += title_style.leading_mm + below_title_mm;
    const double left = at.x_mm + std::max(0.0, column_mm - block.picture.width.mm()) / 2;
    first = sheet.marks.size();
    place(sheet, block.picture, {left, y});
    part(Part::figure, first, block.alt);
    y += block.picture.height.mm() + below_picture_mm;
    first = sheet.marks.size();
    for (const std::string& line : block.lines) {
      sheet.marks.push_back(line_of(text_style, line, {at.x_mm, y}));
      y += text_style.leading_mm;
    }
    part(Part::paragraph, first);
    at.x_mm += column_mm + step_gutter_mm;
  }
}

void put_step_key(Drawing& sheet, const Typesetter& typesetter, const language::Language& language, Point at) {
  constexpr double radius_mm = 1.45, before_words_mm = 4.2, between_mm = 8;
  constexpr Style words{{TextRole::label, 8}, key_height_mm, ink::quiet};
  const double middle = at.y_mm + key_height_mm / 2;
  for (const bool strung : {true, false}) {
    sheet.marks.push_back(Circle{.centre = {at.x_mm + radius_mm, middle},
                                 .radius_mm = radius_mm,
                                 .fill = strung ? ink::text : ink::white,
                                 .stroke = Stroke{ink::text, 0.3}});
    std::string text(language.text(strung ? &Texts::key_string : &Texts::key_go_through));
    const double width = typesetter.width_mm(words.face, text);
    sheet.marks.push_back(line_of(words, std::move(text), {at.x_mm + before_words_mm, at.y_mm}));
    at.x_mm += before_words_mm + width + between_mm;
  }
}

}  // namespace evencount::page
