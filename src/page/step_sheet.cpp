#include "page/step_sheet.hpp"

#include <algorithm>

#include "language/texts.hpp"
#include "page/steps.hpp"
#include "wording/words.hpp"

namespace evencount::page {
namespace {

using namespace drawing;

constexpr double margin_mm = 12, column_mm = 80, row_gap_mm = 9;

Text head_line(const Style& style, std::string text, double y_mm) {
  return {.at = {margin_mm, y_mm},
          .role = style.face.role,
          .size_pt = style.face.size_pt,
          .ink = style.ink,
          .text = std::move(text)};
}

Result<std::vector<weave::Moment>> moments_of(const project::Project& project, const project::Band& band,
                                              const weave::Plan& plan, const language::Language& language) {
  std::vector<int> new_thread_rows;
  if (const bead::Size* size = project::find_bead(project, band.bead)) {
    const auto use = weave::thread_use(plan, *size, project::gauge_of(project, band), project.thread,
                                       project.thread_habits);
    if (!use) return use.problem().within("band " + band.name);
    new_thread_rows = use->new_thread_rows;
  }
  return weave::moments(plan, new_thread_rows, {&language});
}

}  // namespace

Result<Drawing> step_sheet(const project::Project& project, const project::Band& band,
                           const language::Language& language) {
  const auto plan = project::plan_of(band);
  if (!plan) return plan.problem();
  const auto typesetter = Typesetter::open();
  if (!typesetter) return typesetter.problem();
  const auto moments = moments_of(project, band, *plan, language);
  if (!moments) return moments.problem();

  const auto blocks = step_blocks(*typesetter, {project, band, *plan, false, language}, *moments, column_mm);
  const std::size_t columns = std::clamp<std::size_t>((blocks.size() + 1) / 2, 2, 3);
  Drawing sheet;
  const double width_mm =
      2 * margin_mm + static_cast<double>(columns) * (column_mm + step_gutter_mm) - step_gutter_mm;
  const double inside_mm = width_mm - 2 * margin_mm;
  const Style heading{{TextRole::heading, 20}, 8, ink::accent}, facts{{TextRole::label, 9}, 4.6, ink::quiet};
  sheet.marks.push_back(head_line(
      heading, typesetter->shortened(heading.face, language.say(&language::Texts::step_sheet_title, {{"name", one_line(band.name)}}), inside_mm),
      margin_mm + 6));
  const auto [across, along] = wording::sizes_text(*plan, language);
  const std::string size = language::capitalised(wording::technique_name(*plan, language)) +
                           std::string(language.text(&language::Texts::list_comma)) + across +
                           std::string(language.text(&language::Texts::list_comma)) + along;
  sheet.marks.push_back(head_line(facts, typesetter->shortened(facts.face, size, inside_mm), margin_mm + 12));
  double y = margin_mm + 14;
  put_step_key(sheet, *typesetter, language, {margin_mm, y});
  y += key_height_mm + 6;
  for (std::size_t i = 0; i < blocks.size(); i += columns) {
    const std::span row = std::span(blocks).subspan(i, std::min(columns, blocks.size() - i));
    put_blocks(sheet, row, {margin_mm, y}, column_mm);
    y += height_of(row) + row_gap_mm;
  }
  sheet.width = millimetres(width_mm);
  sheet.height = millimetres(y - row_gap_mm + margin_mm);
  return sheet;
}

}  // namespace evencount::page
