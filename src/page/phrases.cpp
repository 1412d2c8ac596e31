#include <fmt/format.h>

#include <array>
#include <cmath>

#include "base/text.hpp"
#include "drawing/symbols.hpp"
#include "form/faces.hpp"
#include "language/texts.hpp"
#include "page/sections.hpp"

namespace evencount::page {

using language::Language;
using language::Texts;

std::string metres_text(const Language& language, Length length) {
  // Rounded up: a thread that is cut short can't be mended.
  return language.say(&Texts::metres, {{"n", language.fixed(std::ceil(length.mm() / 10 - 1e-9) / 100, 2)}});
}

std::string bead_name(const Language& language, const bead::Size& size) {
  const std::string prefix = std::string(bead::kind_name(size.kind)) + "-";
  if (!size.id.starts_with(prefix) || !parse_integer(size.id.substr(prefix.size()))) return bead::trade_name(size);
  return language.say(size.kind == bead::Kind::cylinder ? &Texts::cylinder_bead : &Texts::round_bead,
                      {{"size", size.id.substr(prefix.size())}});
}

std::string supply_name(const Language& language, std::string_view name) {
  static constexpr std::array<std::pair<std::string_view, language::Text>, 4> threads{
      {{"braided-6lb", &Texts::thread_braided_6lb},
       {"braided-4lb", &Texts::thread_braided_4lb},
       {"nylon-d", &Texts::thread_nylon_d},
       {"nylon-b", &Texts::thread_nylon_b}}};
  for (const bead::Size& size : bead::sizes())
    if (name == bead::trade_name(size)) return bead_name(language, size);
  for (const bead::Thread& thread : bead::threads())
    for (const auto& [id, text] : threads)
      if (name == thread.name && id == thread.id) return std::string(language.text(text));
  const std::string_view needle = "beading needle, size ";  // as project::supply_list adds it
  if (name.starts_with(needle)) return language.say(&Texts::needle_tool, {{"size", name.substr(needle.size())}});
  return one_line(name);
}

std::string band_size(const Language& language, const BandSheet& sheet) {
  const weave::Box extent = weave::extent(sheet.plan.lattice);
  const std::string across = language.both_units(extent.width * sheet.gauge.column);
  const std::string along = language.both_units(extent.height * sheet.gauge.edge);
  const auto say = [&](language::Text text, const std::string& length) {
    return language.say(text, {{"across", across}, {"along", length}});
  };
  switch (sheet.plan.closure) {
    case weave::Closure::open:
      return say(&Texts::wide_and_long, along);
    case weave::Closure::zip:
    case weave::Closure::sew:
      return say(&Texts::wide_and_round, language.both_units(sheet.plan.lattice.edge * sheet.gauge.edge));
    case weave::Closure::round:
      return say(&Texts::round_and_long, along);
  }
  return {};
}

std::int64_t beads_in(const weave::Plan& plan) {
  std::int64_t sum = 0;
  for (const int count : weave::count_beads(plan)) sum += count;
  return sum;
}

std::string sum_of_rows(const Language& language, const weave::Plan& plan) {
  const std::string beads = language.say(&Texts::beads_counted, {language.counted("n", beads_in(plan))});
  return language.say(&Texts::sum_of_rows, {{"rows", wording::rows_text(plan, language)}, {"beads", beads}});
}

std::vector<std::string> band_facts(const Subject& subject, std::size_t index) {
  const Language& language = subject.language;
  const BandSheet& sheet = subject.bands[index];
  const project::Band& band = *sheet.band;
  std::string beads = language.say(&Texts::beads_counted, {language.counted("n", beads_in(sheet.plan))});
  if (const bead::Size* size = project::find_bead(subject.project, band.bead))
    beads = language.say(&Texts::beads_of_size, {{"beads", beads}, {"size", bead_name(language, *size)}});
  std::string first = language.say(&Texts::band_of_bands, {{"n", index + 1}, {"all", subject.bands.size()}});
  first += "  ·  " + band_size(language, sheet) + "  ·  " + beads;
  if (band.copies > 1) first += "  ·  " + language.say(&Texts::make_copies, {language.counted("n", band.copies)});
  std::vector<std::string> lines{first};
  if (const auto* form = band.form ? project::find_form(subject.project, *band.form) : nullptr)
    lines.push_back(language.say(band.use == form::Use::sliding ? &Texts::slides_on_form : &Texts::fixed_on_form,
                                 {{"form", one_line(form->name)}}));
  return lines;
}

std::string thread_note(const Language& language, const weave::ThreadUse& thread) {
  const auto& lengths = thread.lengths;
  const std::string all = metres_text(language, thread.cut);
  if (lengths.size() == 1) return language.say(&Texts::thread_cut, {{"length", all}});
  const bool many = lengths.size() > 6;
  if (many) return language.say(&Texts::thread_cut_lengths, {{"length", all}, {"n", lengths.size()}});
  std::vector<std::string> each, rows;
  for (const Length length : lengths) each.push_back(metres_text(language, length));
  std::string text = language.say(&Texts::thread_cut_these,
                                  {{"length", all}, {"n", lengths.size()}, {"list", language.list(each)}});
  if (thread.new_thread_rows.size() + 1 != lengths.size()) return text;
  for (const int row : thread.new_thread_rows) rows.push_back(fmt::format("{}", row));
  return text + language.say(&Texts::thread_new_rows, {{"n", rows.size()}, {"list", language.list(rows)}});
}

bool has_faces(const project::Project& project, const project::Band& band) {
  const auto* form = band.form ? project::find_form(project, *band.form) : nullptr;
  const bead::Size* bead = project::find_bead(project, band.bead);
  const bool closed = band.closure == weave::Closure::zip || band.closure == weave::Closure::sew;
  if (form == nullptr || bead == nullptr || !closed) return false;
  const auto faces = form::faces(form->form, bead->diameter, band.chart.edge());
  return faces && !faces->windows.empty();
}

std::string band_place(std::size_t index) {
  return fmt::format("band-{}", index + 1);
}

void put_swatch(Flow& flow, const Subject& subject, std::size_t bead, drawing::Point at) {
  constexpr double width = 5.4, height = 3.6;
  constexpr colour::Rgb white{255, 255, 255}, edge{0x30, 0x30, 0x30};
  const bool symbols = subject.options.signs == drawing::CellSigns::symbols;
  const colour::Rgb colour = symbols ? white : subject.project.legend[bead].colour;
  flow.put(drawing::Rectangle{.corner = {at.x_mm, at.y_mm - height / 2},
                              .width_mm = width,
                              .height_mm = height,
                              .radius_mm = 0.8,
                              .fill = colour,
                              .stroke = drawing::Stroke{colour::mix(colour, edge, 0.45), 0.15}});
  if (!symbols) return;
  if (bead >= static_cast<std::size_t>(drawing::symbol_count)) {  // its letter stands in the chart
    constexpr double size_pt = 8, half_capital_mm = 0.36 * size_pt * mm_per_pt;
    flow.put(drawing::Text{.at = {at.x_mm + width / 2, at.y_mm + half_capital_mm},
                           .role = drawing::TextRole::label,
                           .size_pt = size_pt,
                           .align = drawing::Align::centre,
                           .text = subject.project.legend[bead].letter,
                           .in_picture = true});
    return;
  }
  for (drawing::Mark& mark : drawing::symbol_marks(static_cast<int>(bead), {at.x_mm + width / 2, at.y_mm}, 0.8 * height))
    flow.put(std::move(mark));
}

}  // namespace evencount::page
