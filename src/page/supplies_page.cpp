#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>

#include "language/texts.hpp"
#include "page/sections.hpp"

namespace evencount::page {
namespace {

using namespace drawing;
using language::Language;
using language::Texts;

constexpr double row_height_mm = 7.2;

/// Where the columns of the bead table stand; numbers are set against their right edges.
struct Columns {
  double swatch, letter, name, size, count, grams, packs;
};

/// Columns of numbers are as wide as their heads and what stands in them.
Columns columns_of(const Flow& flow, bool packs) {
  const double left = flow.left(), right = flow.right();
  const auto width_of = [&](language::Text head, double least) {
    return std::max(least, flow.typesetter().width_mm(style::label.face, flow.language().text(head)) + 4);
  };
  const double grams = packs ? right - width_of(&Texts::column_packs, 18) : right;
  const double letter = left + 9;
  const double name = std::max(left + 19, left + width_of(&Texts::column_letter, 10) + 2);
  return {left, letter, name, left + 0.48 * flow.width(), grams - width_of(&Texts::column_grams, 22), grams, right};
}

void put_head(Flow& flow, const Columns& at, bool packs) {
  const double y = flow.y() + 4;
  const auto put = [&](language::Text text, double x, Align align = Align::left) {
    flow.put_text(style::label, std::string(flow.language().text(text)), {x, y}, align);
  };
  flow.open(Part::paragraph);
  put(&Texts::column_letter, at.swatch);
  put(&Texts::column_bead, at.name);
  put(&Texts::column_size, at.size);
  put(&Texts::column_count, at.count, Align::right);
  put(&Texts::column_grams, at.grams, Align::right);
  if (packs) put(&Texts::column_packs, at.packs, Align::right);
  flow.close();
  flow.skip(6);
  flow.rule(flow.left(), flow.right(), ink::accent, 0.3);
}

/// The place of a letter in the legend; every supply's letter is there.
std::size_t legend_place(const project::Project& project, const std::string& letter) {
  const auto letters = project::letters_of(project);
  const auto found = std::find(letters.begin(), letters.end(), letter);
  assert(found != letters.end());
  return static_cast<std::size_t>(found - letters.begin());
}

void put_bead_row(Flow& flow, const Columns& at, const Subject& subject, const materials::BeadSupply& bead,
                  bool packs) {
  const auto names = flow.wrap(style::table, bead.name, at.size - at.name - 4);
  const auto sizes = flow.wrap(style::table, supply_name(flow.language(), bead.size), at.count - 16 - at.size);
  const auto lines = static_cast<double>(std::max(names.size(), sizes.size()));
  const double height = row_height_mm + (lines - 1) * style::table.leading_mm;
  if (flow.room() < height) {
    flow.new_page();
    put_head(flow, at, packs);
  }
  const double top = flow.y(), baseline = top + 4.7;
  flow.open(Part::paragraph);
  put_swatch(flow, subject, legend_place(subject.project, bead.letter), {at.swatch, top + row_height_mm / 2});
  flow.put_text(style::table_bold, bead.letter, {at.letter, baseline});
  // The first line is whole before what runs on below it, so that it is read as one.
  const auto put_line = [&](const std::vector<std::string>& words, std::size_t i, double x) {
    if (i < words.size())
      flow.put_text(style::table, words[i], {x, baseline + static_cast<double>(i) * style::table.leading_mm});
  };
  put_line(names, 0, at.name);
  put_line(sizes, 0, at.size);
  flow.put_text(style::table, flow.language().count(bead.count), {at.count, baseline}, Align::right);
  flow.put_text(style::table, flow.language().fixed(bead.mass.grams(), 1), {at.grams, baseline}, Align::right);
  if (bead.packs) flow.put_text(style::table, flow.language().count(*bead.packs), {at.packs, baseline}, Align::right);
  for (std::size_t i = 1; i < std::max(names.size(), sizes.size()); ++i) {
    put_line(names, i, at.name);
    put_line(sizes, i, at.size);
  }
  flow.close();
  flow.move_to(top + height);
  flow.rule(flow.left(), flow.right());
}

void put_beads(Flow& flow, const Subject& subject) {
  const auto& beads = subject.supplies.beads.beads;
  const bool packs = std::any_of(beads.begin(), beads.end(), [](const auto& bead) { return bead.packs; });
  const Columns at = columns_of(flow, packs);
  put_head(flow, at, packs);
  for (const auto& bead : beads) put_bead_row(flow, at, subject, bead, packs);
  const Language& language = flow.language();
  if (beads.size() > 1) {
    flow.need(row_height_mm);
    const double baseline = flow.y() + 4.7;
    flow.open(Part::paragraph);
    flow.put_text(style::table_bold, std::string(language.text(&Texts::total)), {at.name, baseline});
    flow.put_text(style::table_bold, language.count(beads_in_all(subject)), {at.count, baseline}, Align::right);
    flow.close();
    flow.skip(row_height_mm);
  }
  flow.skip(1.6);
  flow.paragraph(style::caption,
                 language.say(&Texts::counts_are_exact, {{"percent", language.number(100 * subject.project.allowance, 1)}}),
                 flow.left(), flow.width());
}

/// A heading at the side and its lines beside it. A short entry stays together, so that no page holds its last line alone.
void put_entry(Flow& flow, language::Text label, const std::vector<std::string>& items) {
  if (items.empty()) return;
  constexpr double indent = 34;
  flow.skip(3);
  double whole_mm = 0;
  for (const std::string& item : items) whole_mm += flow.height_of(style::body, item, flow.width() - indent) + 0.6;
  flow.need(whole_mm <= 12 * style::body.leading_mm ? whole_mm : 2 * style::body.leading_mm);
  bool first = true;
  for (const std::string& item : items) {
    flow.need(style::body.leading_mm);
    if (first) flow.put_text(style::label, std::string(flow.language().text(label)), {flow.left(), flow.y() + 3.8});
    first = false;
    flow.paragraph(style::body, item, flow.left() + indent, flow.width() - indent);
    flow.skip(0.6);
  }
}

}  // namespace

std::vector<std::string> counted_items(const Language& language,
                                       const std::vector<project::CountedSupply>& supplies) {
  std::vector<std::string> items;
  for (const auto& supply : supplies)
    items.push_back(language.say(supply.unit.empty() ? &Texts::pieces_of : &Texts::units_of,
                                 {{"n", language.number(supply.count)},
                                  {"unit", one_line(supply.unit)},
                                  {"name", supply_name(language, supply.name)}}));
  return items;
}

std::vector<std::string> thread_items(const Subject& subject) {
  const Language& language = subject.language;
  std::vector<std::string> items{
      language.say(&Texts::thread_in_all, {{"name", language::capitalised(supply_name(language, subject.supplies.thread_name))},
                                           {"length", metres_text(language, subject.supplies.thread)}})};
  const auto& bands = subject.bands;
  const auto cut = [&](const BandSheet& sheet) { return metres_text(language, sheet.thread.cut); };
  const bool alike =
      std::all_of(bands.begin(), bands.end(), [&](const BandSheet& sheet) { return cut(sheet) == cut(bands.front()); });
  if (alike && bands.size() > 1)
    items.push_back(language.say(&Texts::thread_each_band, {{"length", cut(bands.front())}}));
  constexpr std::size_t few = 12;
  if (!alike && bands.size() <= few)
    for (const BandSheet& sheet : bands)
      items.push_back(
          language.say(&Texts::thread_of_band, {{"name", one_line(sheet.band->name)}, {"length", cut(sheet)}}));
  if (!alike && bands.size() > few) items.emplace_back(language.text(&Texts::thread_with_bands));
  return items;
}

std::vector<std::string> finding_items(const Subject& subject) {
  const Language& language = subject.language;
  std::vector<std::string> items = counted_items(language, subject.supplies.findings);
  if (!subject.supplies.size.empty() && !items.empty())
    items.push_back(language.say(&Texts::strung_for_size, {{"size", one_line(subject.supplies.size)}}));
  return items;
}

std::vector<std::string> technique_names(const Subject& subject) {
  std::vector<std::string> names;
  for (const BandSheet& sheet : subject.bands) {
    std::string name = wording::technique_name(sheet.plan, subject.language);
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(std::move(name));
  }
  return names;
}

void put_supplies(Flow& flow, const Subject& subject) {
  const Language& language = subject.language;
  flow.paragraph(style::heading, language.text(&Texts::supplies), flow.left(), flow.width());
  flow.skip(3);
  put_beads(flow, subject);
  flow.skip(3);
  put_entry(flow, &Texts::forms, counted_items(language, subject.supplies.forms));
  put_entry(flow, &Texts::thread, thread_items(subject));
  put_entry(flow, &Texts::findings, finding_items(subject));
  std::string all;
  for (const std::string& tool : subject.supplies.tools) {
    if (!all.empty()) all += language.text(&Texts::list_comma);
    all += supply_name(language, tool);
  }
  if (!all.empty()) put_entry(flow, &Texts::tools, {language::capitalised(all)});
  std::vector<std::string> techniques;
  for (const std::string& name : technique_names(subject)) techniques.push_back(language::capitalised(name));
  put_entry(flow, &Texts::techniques_used, techniques);
}

RowsSeen rows_seen(const Subject& subject) {
  RowsSeen seen;
  for (const BandSheet& sheet : subject.bands) {
    const weave::Plan& plan = sheet.plan;
    const weave::Row& first = plan.rows.front();
    const bool along = weave::axis_of(first.travel) == weave::Axis::along;
    seen.along = seen.along || along;
    seen.rounds = seen.rounds || first.kind == weave::RowKind::round;
    seen.shifted = seen.shifted || (plan.lattice.drop > 0 && !along);
    seen.together = seen.together || first.last_number > first.first_number;
    seen.units = seen.units || plan.lattice.holes == weave::Holes::round_squares;
    seen.faces = seen.faces || has_faces(subject.project, *sheet.band);
    const std::string_view sign = subject.language.text(&Texts::decrease_sign);
    for (const wording::WordLine& line : sheet.words.lines)
      seen.decreases = seen.decreases || line.beads.find(sign) != std::string::npos;
  }
  return seen;
}

std::string word_help(const Language& language, const RowsSeen& seen, bool with_counts) {
  std::string text = language.say(&Texts::words_help, {{"right", language.text(&Texts::side_right)},
                                                       {"left", language.text(&Texts::side_left)}});
  if (seen.along)
    text += language.say(&Texts::words_help_along, {{"down", language.text(&Texts::side_down)},
                                                    {"up", language.text(&Texts::side_up)}});
  text += language.text(&Texts::words_help_upright);
  if (seen.rounds) text += language.text(&Texts::words_help_rounds);
  if (seen.together) text += language.text(&Texts::words_help_together);
  if (seen.units) text += language.text(&Texts::words_help_units);
  if (seen.decreases) text += language.text(&Texts::words_help_decrease);
  if (with_counts) text += language.text(&Texts::words_help_count);
  text += language.text(&Texts::words_help_tick);
  return text;
}

std::string counting_help(const Language& language, const RowsSeen& seen) {
  return seen.shifted ? std::string(language.text(&Texts::counting_help)) : std::string();
}

namespace {

std::string chart_help(const Language& language, const RowsSeen& seen) {
  std::string text(language.text(&Texts::chart_from_top));
  if (seen.shifted) text += language.text(&Texts::chart_shifted);
  if (seen.along) text += language.text(&Texts::chart_along);
  if (seen.units) text += language.text(&Texts::chart_units);
  text += language.text(seen.along && !seen.shifted ? &Texts::chart_numbers : &Texts::chart_numbers_stepped);
  if (seen.faces) text += language.text(&Texts::chart_faces);
  return text;
}

}  // namespace

void put_reading_help(Flow& flow, const Subject& subject) {
  const Language& language = subject.language;
  const RowsSeen seen = rows_seen(subject);
  const weave::ThreadHabits& habits = subject.project.thread_habits;
  const std::string tail = language.say(&Texts::centimetres, {{"n", language.number(habits.tail.mm() / 10, 1)}});
  const std::string most =
      language.say(&Texts::metres, {{"n", language.number(habits.working_length.mm() / 1000, 2)}});
  std::vector<std::pair<language::Text, std::string>> entries{
      {&Texts::chart, chart_help(language, seen)},
      {&Texts::words, word_help(language, seen, true)},
      {&Texts::counting, counting_help(language, seen)},
      {&Texts::thread, language.say(&Texts::thread_help, {{"tail", tail}, {"most", most}})},
  };
  std::erase_if(entries, [](const auto& entry) { return entry.second.empty(); });
  double height = style::subheading.leading_mm + 2;
  constexpr double indent = 34;
  for (const auto& [label, text] : entries)
    height += flow.height_of(style::body, text, flow.width() - indent) + 3.6;
  flow.skip(7);
  flow.need(height);
  flow.paragraph(style::subheading, language.text(&Texts::how_to_read), flow.left(), flow.width());
  for (const auto& [label, text] : entries) put_entry(flow, label, {text});
}

}  // namespace evencount::page
