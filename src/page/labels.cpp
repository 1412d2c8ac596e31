#include "page/labels.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/text.hpp"
#include "drawing/symbols.hpp"
#include "language/texts.hpp"
#include "page/kit_papers.hpp"

namespace evencount::page {
namespace {

using namespace drawing;
using language::Language;
using language::Texts;

constexpr double inset_mm = 2.2;  ///< within a label: printers and punches are not exact, from memory

/// A bead's swatch or symbol, `side` mm wide.
void put_bead(Drawing& sheet, const project::Project& project, const project::KitBag& bag, Point at, double side,
              CellSigns signs) {
  constexpr colour::Rgb edge{0x30, 0x30, 0x30};
  const bool symbols = signs == CellSigns::symbols;
  const colour::Rgb fill = symbols ? ink::white : bag.colour;
  sheet.marks.push_back(Rectangle{.corner = at, .width_mm = side, .height_mm = side, .radius_mm = 1.0, .fill = fill,
                                  .stroke = Stroke{colour::mix(fill, edge, 0.45), 0.2}});
  const auto entry = std::find_if(project.legend.begin(), project.legend.end(),
                                  [&](const auto& one) { return one.letter == bag.letter; });
  const auto place = entry - project.legend.begin();
  if (!symbols || place >= symbol_count) return;
  for (Mark& mark : symbol_marks(static_cast<int>(place), {at.x_mm + side / 2, at.y_mm + side / 2}, 0.75 * side))
    sheet.marks.push_back(std::move(mark));
}

/// Lines set from the top of a label down, as many as it holds, each shortened to its width.
class LabelText {
 public:
  LabelText(Drawing& sheet, const Typesetter& typesetter, Point top_left, double width_mm, double height_mm)
      : sheet_(sheet), typesetter_(typesetter), at_(top_left), width_(width_mm), foot_(top_left.y_mm + height_mm) {}

  void put(const Style& style, const std::string& text) {
    if (text.empty() || at_.y_mm + style.leading_mm > foot_ + 1e-6) return;
    const double drop_mm = style.leading_mm / 2 + 0.30 * style.face.size_pt * mm_per_pt;
    sheet_.marks.push_back(Text{.at = {at_.x_mm, at_.y_mm + drop_mm}, .role = style.face.role,
                                .size_pt = style.face.size_pt, .ink = style.ink,
                                .text = typesetter_.shortened(style.face, text, width_)});
    at_.y_mm += style.leading_mm;
  }

  /// A text that is no use in part: in as many lines as it takes, or not at all.
  void put_whole(const Style& style, std::string_view text) {
    const auto lines = typesetter_.wrap(style.face, text, width_);
    if (at_.y_mm + style.leading_mm * static_cast<double>(lines.size()) > foot_ + 1e-6) return;
    for (const std::string& line : lines) put(style, line);
  }

 private:
  Drawing& sheet_;
  const Typesetter& typesetter_;
  Point at_;
  double width_, foot_;
};

void put_label(Drawing& sheet, const Typesetter& typesetter, const project::Project& project,
               const project::Kit& kit, const project::KitBag& bag, Point corner, const LabelSheet& label,
               const KitOptions& options) {
  const Language& language = *options.language;
  const double width = label.width_mm - 2 * inset_mm, height = label.height_mm - 2 * inset_mm;
  const bool small = height < 20;
  const double side = small ? 8 : std::min(14.0, 0.32 * height + 2);
  const Point at{corner.x_mm + inset_mm, corner.y_mm + inset_mm};
  put_bead(sheet, project, bag, at, side, options.signs);
  constexpr Style letter{{TextRole::label_bold, 15}, 6.4, ink::text};
  if (!small)
    sheet.marks.push_back(Text{.at = {at.x_mm + side / 2, at.y_mm + side + 5.6}, .role = letter.face.role,
                               .size_pt = letter.face.size_pt, .align = Align::centre, .ink = letter.ink,
                               .text = bag.letter});
  constexpr Style name{{TextRole::label_bold, 9.5}, 4.4}, plain{{TextRole::label, 8}, 3.7},
      quiet{{TextRole::label, 8}, 3.7, ink::quiet};
  LabelText text(sheet, typesetter, {at.x_mm + side + 2.2, at.y_mm}, width - side - 2.2, height);
  const std::string grams = language.say(&Texts::grams, {{"n", language.fixed(bag.mass.grams(), 1)}});
  const std::string amount = language.say(&Texts::bag_beads, {language.counted("n", bag.packed), {"grams", grams}});
  text.put(name, small ? bag.letter + "  " + one_line(bag.name) : one_line(bag.name));
  text.put(plain, supply_name(language, bag.size));
  text.put(plain, amount);
  text.put(quiet, one_line(kit.title));
  text.put_whole(quiet, language.text(&Texts::small_parts_short));
  text.put(quiet, one_line(project.designer));
}

}  // namespace

// Common practice, no source; every measure from memory.
std::span<const LabelSheet> label_sheets() {
  static constexpr std::array<LabelSheet, 7> sheets{{
      {"a4-38.1x21.2", Paper::a4, 38.1, 21.2, 5, 13, 4.75, 10.7, 40.6, 21.2},
      {"a4-63.5x38.1", Paper::a4, 63.5, 38.1, 3, 7, 7.25, 15.15, 66.0, 38.1},
      {"a4-70x37", Paper::a4, 70, 37, 3, 8, 0, 0.5, 70, 37},
      {"a4-99.1x67.7", Paper::a4, 99.1, 67.7, 2, 4, 4.65, 13.1, 101.6, 67.7},
      {"letter-66.7x25.4", Paper::letter, 66.7, 25.4, 3, 10, 4.8, 12.7, 69.85, 25.4},
      {"letter-101.6x33.9", Paper::letter, 101.6, 33.9, 2, 7, 4.0, 21.2, 106.4, 33.9},
      {"letter-101.6x50.8", Paper::letter, 101.6, 50.8, 2, 5, 4.0, 12.7, 106.4, 50.8},
  }};
  return sheets;
}

Result<LabelSheet> find_label_sheet(std::string_view name) {
  std::string names;
  for (const LabelSheet& sheet : label_sheets()) {
    if (sheet.name == name) return sheet;
    names += (names.empty() ? "" : ", ") + std::string(sheet.name);
  }
  return Problem{ProblemCode::unknown_name, "label sheet", quote(name), "one of " + names};
}

Result<std::vector<Drawing>> label_pages(const project::Project& project, const LabelSheet& label, int first,
                                         const KitOptions& options, const Typesetter& typesetter) {
  const auto kit = checked_kit(project, options);
  if (!kit) return kit.problem();
  const int a_sheet = label.columns * label.rows;
  if (first < 0 || first >= a_sheet)
    return Problem{ProblemCode::out_of_range, "first label", fmt::format("{}", first + 1),
                   fmt::format("1 to {}", a_sheet)};
  const PaperSize size = size_of(label.paper);
  std::vector<Drawing> pages;
  int place = first;
  for (int number = 0; number < options.kits; ++number)
    for (const project::KitBag& bag : kit->bags) {
      if (pages.empty() || place == a_sheet) {
        if (!pages.empty()) place = 0;
        pages.push_back({millimetres(size.width_mm), millimetres(size.height_mm), {}});
      }
      const Point corner{label.left_mm + place % label.columns * label.across_mm,
                         label.top_mm + place / label.columns * label.down_mm};
      put_label(pages.back(), typesetter, project, *kit, bag, corner, label, options);
      ++place;
    }
  return pages;
}

Result<std::string> bag_labels(const project::Project& project, const LabelSheet& label, int first,
                               const KitOptions& options) {
  const auto typesetter = Typesetter::open();
  if (!typesetter) return typesetter.problem();
  const auto pages = label_pages(project, label, first, options, *typesetter);
  if (!pages) return pages.problem();
  return kit_pdf(*pages, project, options, *typesetter);
}

}  // namespace evencount::page
