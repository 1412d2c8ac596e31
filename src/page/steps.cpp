#include "page/steps.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace evencount::page {
namespace {

using namespace drawing;

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

std::vector<StepBlock> step_blocks(const Typesetter& typesetter, const project::Project& project,
                                   const project::Band& band, const weave::Plan& plan,
                                   std::span<const weave::Moment> moments, double column_mm,
                                   int first_number) {
  std::vector<StepBlock> blocks;
  for (const weave::Moment& moment : moments)
    blocks.push_back({fmt::format("{}  {}", first_number++, moment.title),
                      typesetter.wrap(text_style.face, with_bound_figures(moment.text), column_mm),
                      step_drawing(project, band, plan, moment, {.most_width = millimetres(column_mm)})});
  return blocks;
}

double height_of(std::span<const StepBlock> row) {
  double mm = 0;
  for (const StepBlock& block : row) mm = std::max(mm, height_of(block));
  return mm;
}

void put_blocks(Drawing& sheet, std::span<const StepBlock> row, Point at, double column_mm) {
  for (const StepBlock& block : row) {
    double y = at.y_mm;
    sheet.marks.push_back(line_of(title_style, block.title, {at.x_mm, y}));
    y += title_style.leading_mm + below_title_mm;
    const double left = at.x_mm + std::max(0.0, column_mm - block.picture.width.mm()) / 2;
    place(sheet, block.picture, {left, y});
    y += block.picture.height.mm() + below_picture_mm;
    for (const std::string& line : block.lines) {
      sheet.marks.push_back(line_of(text_style, line, {at.x_mm, y}));
      y += text_style.leading_mm;
    }
    at.x_mm += column_mm + step_gutter_mm;
  }
}

void put_step_key(Drawing& sheet, Point at) {
  constexpr double radius_mm = 1.45;
  const double middle = at.y_mm + key_height_mm / 2;
  const auto sign = [&](double x, bool strung) {
    sheet.marks.push_back(Circle{.centre = {x + radius_mm, middle},
                                 .radius_mm = radius_mm,
                                 .fill = strung ? ink::text : ink::white,
                                 .stroke = Stroke{ink::text, 0.3}});
  };
  const auto words = [&](double x, std::string text) {
    sheet.marks.push_back(
        line_of({{TextRole::label, 8}, key_height_mm, ink::quiet}, std::move(text), {x, at.y_mm}));
  };
  sign(at.x_mm, true);
  words(at.x_mm + 4.2, "string this bead");
  sign(at.x_mm + 32, false);
  words(at.x_mm + 36.2, "go through this bead; the numbers follow the needle");
}

}  // namespace evencount::page
