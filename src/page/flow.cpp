#include "page/flow.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "language/texts.hpp"

namespace evencount::page {

using namespace drawing;

PaperSize size_of(Paper paper) {
  if (paper == Paper::letter) return {8.5 * 25.4, 11 * 25.4};  // ANSI/ASME Y14.1, size A
  return {210, 297};                                           // ISO 216
}

Flow::Flow(const Typesetter& typesetter, const language::Language& language, Paper paper, std::string footer_title)
    : typesetter_(typesetter), language_(language), size_(size_of(paper)), footer_title_(std::move(footer_title)) {
  new_page();
}

void Flow::new_page() {
  close_all();
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

void Flow::open(Part part, std::string text) {
  open_.push_back(sheet().regions.size());
  sheet().regions.push_back({part, sheet().marks.size(), sheet().marks.size(), std::move(text)});
}

void Flow::close() {
  sheet().regions[open_.back()].end_mark = sheet().marks.size();
  open_.pop_back();
}

void Flow::close_all() {
  while (!open_.empty()) close();
}

void Flow::put_figure(const Drawing& figure, Point at, std::string alt, double scale) {
  open(Part::figure, std::move(alt));
  place(sheet(), figure, at, scale);
  close();
}

namespace {

Part part_of(const Style& style) {
  if (style.face.role == TextRole::title) return Part::title;
  if (style.face.role != TextRole::heading) return Part::paragraph;
  return style.face.size_pt >= style::heading.face.size_pt ? Part::heading : Part::subheading;
}

}  // namespace

void Flow::put_lines(const Style& style, const std::vector<std::string>& lines, double left_mm) {
  // The baseline stands where capitals and descenders look centred in the line's share of the page.
  const double drop_mm = style.leading_mm / 2 + 0.30 * style.face.size_pt * mm_per_pt;
  const std::size_t outer = open_.size();
  // Within a paragraph that is open lines are of it; within a link or a place they are a part of their own.
  const bool within = std::any_of(open_.begin(), open_.end(), [&](std::size_t region) {
    const Part part = sheet().regions[region].part;
    return part != Part::link && part != Part::place;
  });
  std::optional<std::size_t> own;
  for (const std::string& line : lines) {
    need(style.leading_mm);
    if (own && open_.empty()) own.reset();  // a new page has closed it
    if (!within && !own) {
      open(part_of(style));
      own = outer;
    }
    put_text(style, line, {left_mm, y_ + drop_mm});
    y_ += style.leading_mm;
  }
  if (own && !open_.empty()) close();
}

void Flow::paragraph(const Style& style, std::string_view text, double left_mm, double width_mm) {
  put_lines(style, wrap(style, text, width_mm), left_mm);
}

void Flow::rule(double left_mm, double right_mm, colour::Rgb ink, double weight_mm) {
  put(Path{.points = {{left_mm, y_}, {right_mm, y_}}, .stroke = Stroke{ink, weight_mm}});
}

std::vector<Drawing> Flow::finish() {
  close_all();
  const double baseline = size_.height_mm - 11;
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    const auto line = [&](std::string_view title) {
      return language_.say(&language::Texts::page_number, {{"title", title}, {"n", i + 1}});
    };
    const double room_mm = width() - typesetter_.width_mm(style::caption.face, line(""));
    pages_[i].marks.push_back(
        Text{.at = {size_.width_mm / 2, baseline},
             .role = style::caption.face.role,
             .size_pt = style::caption.face.size_pt,
             .align = Align::centre,
             .ink = style::caption.ink,
             .text = line(typesetter_.shortened(style::caption.face, footer_title_, room_mm))});
  }
  return std::move(pages_);
}

}  // namespace evencount::page
