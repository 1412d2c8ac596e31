#include "page/sheet_check.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace evencount::page {
namespace {

using namespace drawing;

struct SetText {
  const Text* text;
  InkBox box;
};

bool outside(const InkBox& box, const Drawing& page, double margin_mm) {
  constexpr double rounding_mm = 0.02;
  return box.left_mm < margin_mm - rounding_mm || box.top_mm < margin_mm - rounding_mm ||
         box.right_mm > page.width.mm() - margin_mm + rounding_mm ||
         box.bottom_mm > page.height.mm() - margin_mm + rounding_mm;
}

bool overlap(const InkBox& a, const InkBox& b) {
  constexpr double touch_mm = 0.05;  // ink that just touches
  return a.left_mm + touch_mm < b.right_mm && b.left_mm + touch_mm < a.right_mm &&
         a.top_mm + touch_mm < b.bottom_mm && b.top_mm + touch_mm < a.bottom_mm;
}

/// A chart's cells are the only boxes with corners and an outline.
bool is_cell(const Rectangle& box) {
  return box.radius_mm == 0 && box.stroke && !box.stroke->dashed;
}

}  // namespace

std::vector<std::string> faults_of(const Drawing& page, const Typesetter& typesetter, double margin_mm) {
  std::vector<std::string> faults;
  const Bounds bounds = bounds_of(page);
  const bool any = bounds.right_mm > bounds.left_mm || bounds.bottom_mm > bounds.top_mm;
  if (any && outside({bounds.left_mm, bounds.top_mm, bounds.right_mm, bounds.bottom_mm}, page, margin_mm))
    faults.push_back(fmt::format("marks from {:.2f},{:.2f} to {:.2f},{:.2f}", bounds.left_mm, bounds.top_mm,
                                 bounds.right_mm, bounds.bottom_mm));
  std::vector<SetText> texts;
  for (const Mark& mark : page.marks) {
    if (const auto* box = std::get_if<Rectangle>(&mark); box && is_cell(*box) && std::max(box->width_mm, box->height_mm) < 3.5 - 1e-9)
      faults.push_back(fmt::format("a cell of {:.2f} by {:.2f} mm", box->width_mm, box->height_mm));
    const auto* text = std::get_if<Text>(&mark);
    if (!text) continue;
    const InkBox box = typesetter.ink_box(*text);
    if (box.empty()) continue;
    if (outside(box, page, margin_mm))
      faults.push_back(fmt::format("'{}' leaves the page: {:.2f} to {:.2f}, {:.2f} to {:.2f}", text->text,
                                   box.left_mm, box.right_mm, box.top_mm, box.bottom_mm));
    if (text->size_pt < 8 - 1e-9)
      faults.push_back(fmt::format("'{}' is only {} pt", text->text, text->size_pt));
    texts.push_back({text, box});
  }
  std::sort(texts.begin(), texts.end(),
            [](const SetText& a, const SetText& b) { return a.box.top_mm < b.box.top_mm; });
  for (std::size_t i = 0; i < texts.size(); ++i)
    for (std::size_t j = i + 1; j < texts.size() && texts[j].box.top_mm < texts[i].box.bottom_mm; ++j)
      if (overlap(texts[i].box, texts[j].box))
        faults.push_back(fmt::format("'{}' lies over '{}'", texts[i].text->text, texts[j].text->text));
  return faults;
}

}  // namespace evencount::page
