#include "page/flow.hpp"

#include <fmt/format.h>

namespace evencount::page {

using namespace drawing;

PaperSize size_of(Paper paper) {
  if (paper == Paper::letter) return {8.5 * 25.4, 11 * 25.4};  // ANSI/ASME Y14.1, size A
  return {210, 297};                                           // ISO 216
}

Flow::Flow(const Typesetter& typesetter, Paper paper, std::string footer_title)
    : typesetter_(typesetter), size_(size_of(paper)), footer_title_(std::move(footer_title)) {
  new_page();
}

void Flow::new_page() {
  pages_.push_back({millimetres(size_.width_mm), millimetres(size_.height_mm), {}});
  y_ = top();
  if (running_heading_.empty()) return;
  put_text(style::note, typesetter_.shortened(style::note.face, running_heading_, width()), {left(), y_ + 3});
  y_ += 5;
  rule(left(), right());
  y_ += 5;
}

void Flow::need(double height_mm) {
  if (y_ + height_mm > bottom() + 1e-9) new_page();
}

void Flow::put_text(const Style& style, std::string text, Point at, Align align) {
  if (text.empty()) return;
  put(Text{.at = at,
           .role = style.face.role,
           .size_pt = style.face.size_pt,
           .align = align,
           .ink = style.ink,
           .text = std::move(text)});
}

void Flow::put_lines(const Style& style, const std::vector<std::string>& lines, double left_mm) {
  // The baseline stands where capitals and descenders look centred in the line's share of the page.
  const double drop_mm = style.leading_mm / 2 + 0.30 * style.face.size_pt * mm_per_pt;
  for (const std::string& line : lines) {
    need(style.leading_mm);
    put_text(style, line, {left_mm, y_ + drop_mm});
    y_ += style.leading_mm;
  }
}

void Flow::paragraph(const Style& style, std::string_view text, double left_mm, double width_mm) {
  put_lines(style, wrap(style, text, width_mm), left_mm);
}

void Flow::rule(double left_mm, double right_mm, colour::Rgb ink, double weight_mm) {
  put(Path{.points = {{left_mm, y_}, {right_mm, y_}}, .stroke = Stroke{ink, weight_mm}});
}

std::vector<Drawing> Flow::finish() {
  const double baseline = size_.height_mm - 11;
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    std::string number = fmt::format(" · {}", i + 1);
    const double room_mm = width() - typesetter_.width_mm(style::caption.face, number);
    pages_[i].marks.push_back(
        Text{.at = {size_.width_mm / 2, baseline},
             .role = style::caption.face.role,
             .size_pt = style::caption.face.size_pt,
             .align = Align::centre,
             .ink = style::caption.ink,
             .text = typesetter_.shortened(style::caption.face, footer_title_, room_mm) + number});
  }
  return std::move(pages_);
}

}  // namespace evencount::page
