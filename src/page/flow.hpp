#pragma once
/// The pages of a booklet as they fill: frame, cursor, footer. Private to this room.

#include <functional>

#include "language/language.hpp"
#include "page/booklet.hpp"
#include "page/typesetter.hpp"

namespace evencount::page {

namespace ink {
inline constexpr colour::Rgb text{0x22, 0x28, 0x2b}, accent{0x1d, 0x4e, 0x5f}, quiet{0x66, 0x6e, 0x71},
    rule{0xcd, 0xc8, 0xbc}, panel{0xf5, 0xf1, 0xe8}, white{0xff, 0xff, 0xff};
}  // namespace ink

/// A way of setting text. Its lines stand `leading_mm` apart.
struct Style {
  Face face;
  double leading_mm = 5;
  colour::Rgb ink = ink::text;
};

namespace style {
using drawing::TextRole;
inline constexpr Style heading{{TextRole::heading, 25}, 10.5, ink::accent},
    subheading{{TextRole::heading, 15}, 7.0, ink::accent}, body{{TextRole::body, 11.5}, 5.25},
    note{{TextRole::body_italic, 12}, 5.5}, table{{TextRole::label, 9}, 4.6},
    table_bold{{TextRole::label_bold, 9}, 4.6}, caption{{TextRole::label, 8}, 3.9, ink::quiet},
    label{{TextRole::label_bold, 8}, 3.9, ink::accent};
}  // namespace style

struct PaperSize {
  double width_mm = 0, height_mm = 0;
};
[[nodiscard]] PaperSize size_of(Paper paper);

/// Fills pages from the top down. `y()` is where the next thing begins; nothing is put below `bottom()`.
class Flow {
 public:
  /// The typesetter and the language must outlive it.
  Flow(const Typesetter& typesetter, const language::Language& language, Paper paper, std::string footer_title);

  static constexpr double side_margin_mm = 19, top_margin_mm = 20, bottom_margin_mm = 21;

  [[nodiscard]] const Typesetter& typesetter() const { return typesetter_; }
  [[nodiscard]] const language::Language& language() const { return language_; }
  [[nodiscard]] double left() const { return side_margin_mm; }
  [[nodiscard]] double right() const { return size_.width_mm - side_margin_mm; }
  [[nodiscard]] double width() const { return right() - left(); }
  [[nodiscard]] double top() const { return top_margin_mm; }
  [[nodiscard]] double bottom() const { return size_.height_mm - bottom_margin_mm; }
  [[nodiscard]] double y() const { return y_; }
  [[nodiscard]] double room() const { return bottom() - y_; }
  [[nodiscard]] std::size_t page() const { return pages_.size() - 1; }
  [[nodiscard]] drawing::Drawing& sheet() { return pages_.back(); }
  [[nodiscard]] drawing::Drawing& sheet(std::size_t page) { return pages_[page]; }

  void move_to(double y_mm) { y_ = y_mm; }
  void skip(double mm) { y_ += mm; }

  /// Begins a page, headed by the running heading if there is one.
  void new_page();
  void set_running_heading(std::string heading) { running_heading_ = std::move(heading); }
  /// A new page unless so much room is left on this one.
  void need(double height_mm);

  void put(drawing::Mark mark) { sheet().marks.push_back(std::move(mark)); }
  /// What is put from here on is a part of that kind, until it is closed or the page ends.
  void open(drawing::Part part, std::string text = {});
  void close();
  void close_all();
  /// A drawing with its upper left corner at a place, as a figure described by `alt`.
  void put_figure(const drawing::Drawing& figure, drawing::Point at, std::string alt, double scale = 1);
  /// One line of text with its baseline at (x, y).
  void put_text(const Style& style, std::string text, drawing::Point at,
                drawing::Align align = drawing::Align::left);
  /// Lines from the cursor down, over pages if they must; the cursor ends below them.
  void put_lines(const Style& style, const std::vector<std::string>& lines, double left_mm);
  void paragraph(const Style& style, std::string_view text, double left_mm, double width_mm);
  void rule(double left_mm, double right_mm, colour::Rgb ink = ink::rule, double weight_mm = 0.2);

  [[nodiscard]] std::vector<std::string> wrap(const Style& style, std::string_view text,
                                              double width_mm) const {
    return typesetter_.wrap(style.face, text, width_mm);
  }
  [[nodiscard]] double height_of(const Style& style, std::string_view text, double width_mm) const {
    return style.leading_mm * static_cast<double>(wrap(style, text, width_mm).size());
  }

  /// The pages with their footers.
  [[nodiscard]] std::vector<drawing::Drawing> finish();

 private:
  const Typesetter& typesetter_;
  const language::Language& language_;
  PaperSize size_;
  std::string footer_title_, running_heading_;
  std::vector<std::size_t> open_;  ///< regions of the last page that are not closed yet
  std::vector<drawing::Drawing> pages_;
  double y_ = 0;
};

}  // namespace evencount::page
