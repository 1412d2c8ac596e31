#include <fmt/format.h>

#include <cmath>

#include "base/text.hpp"
#include "drawing/symbols.hpp"
#include "page/sections.hpp"

namespace evencount::page {

std::string both_units(Length length) {
  return fmt::format("{} mm ({} in)", plain_number(length.mm(), 1), plain_number(length.inches(), 2));
}

std::string grouped(std::int64_t count) {
  std::string digits = fmt::format("{}", count);
  for (auto place = static_cast<std::ptrdiff_t>(digits.size()) - 3; place > 0; place -= 3)
    digits.insert(static_cast<std::size_t>(place), ",");
  return digits;
}

std::string counted(std::int64_t count, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", grouped(count), count == 1 ? one : many);
}

std::string metres_text(Length length) {
  // Rounded up: a thread that is cut short can't be mended.
  return fmt::format("{} m", fixed_number(std::ceil(length.mm() / 10 - 1e-9) / 100, 2));
}

std::string band_size(const BandSheet& sheet) {
  const weave::Box extent = weave::extent(sheet.plan.lattice);
  const std::string across = both_units(extent.width * sheet.gauge.column);
  const std::string along = both_units(extent.height * sheet.gauge.edge);
  switch (sheet.plan.closure) {
    case weave::Closure::open:
      return fmt::format("{} wide, {} long", across, along);
    case weave::Closure::zip:
    case weave::Closure::sew:
      return fmt::format("{} wide, {} round", across, both_units(sheet.plan.lattice.edge * sheet.gauge.edge));
    case weave::Closure::round:
      return fmt::format("{} round, {} long", across, along);
  }
  return {};
}

std::int64_t beads_in(const weave::Plan& plan) {
  std::int64_t sum = 0;
  for (const int count : weave::count_beads(plan)) sum += count;
  return sum;
}

std::vector<std::string> band_facts(const Subject& subject, std::size_t index) {
  const BandSheet& sheet = subject.bands[index];
  const project::Band& band = *sheet.band;
  std::string first = fmt::format("Band {} of {}  ·  {}  ·  {}", index + 1, subject.bands.size(),
                                  band_size(sheet), counted(beads_in(sheet.plan), "bead", "beads"));
  if (const bead::Size* size = project::find_bead(subject.project, band.bead))
    first += ", " + bead::trade_name(*size);
  if (band.copies > 1) first += fmt::format("  ·  make {} of it", grouped(band.copies));
  std::vector<std::string> lines{first};
  if (const auto* form = band.form ? project::find_form(subject.project, *band.form) : nullptr)
    lines.push_back(fmt::format("{} the form: {}",
                                band.use == form::Use::sliding ? "Slides on" : "Fixed on",
                                one_line(form->name)));
  return lines;
}

std::string thread_note(const weave::ThreadUse& thread) {
  const auto& lengths = thread.lengths;
  if (lengths.size() == 1) return fmt::format("Cut {}, tails included.", metres_text(thread.cut));
  const bool many = lengths.size() > 6;
  std::string text =
      fmt::format("Cut {} in {} lengths, tails included", metres_text(thread.cut), lengths.size());
  for (std::size_t i = 0; i < lengths.size() && !many; ++i)
    text += (i == 0 ? ": " : i + 1 == lengths.size() ? " and " : ", ") + metres_text(lengths[i]);
  text += ".";
  if (!many && thread.new_thread_rows.size() + 1 == lengths.size()) {
    text += " Begin a new length at row";
    if (lengths.size() > 2) text += "s";
    for (std::size_t i = 0; i < thread.new_thread_rows.size(); ++i)
      text += fmt::format("{} {}",
                          i == 0                    ? ""
                          : i + 2 == lengths.size() ? " and"
                                                    : ",",
                          thread.new_thread_rows[i]);
    text += ".";
  }
  return text;
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
  if (!symbols || bead >= static_cast<std::size_t>(drawing::symbol_count)) return;
  for (drawing::Mark& mark : drawing::symbol_marks(static_cast<int>(bead), {at.x_mm + width / 2, at.y_mm}, 0.8 * height))
    flow.put(std::move(mark));
}

}  // namespace evencount::page
