#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>

#include "base/text.hpp"
#include "page/sections.hpp"

namespace evencount::page {
namespace {

using namespace drawing;

constexpr double row_height_mm = 7.2;

/// Where the columns of the bead table stand; numbers are set against their right edges.
struct Columns {
  double swatch, letter, name, size, count, grams, packs;
};

Columns columns_of(const Flow& flow, bool packs) {
  const double left = flow.left(), right = flow.right();
  const double grams = packs ? right - 18 : right;
  return {left, left + 9, left + 19, left + 0.50 * flow.width(), grams - 22, grams, right};
}

void put_head(Flow& flow, const Columns& at, bool packs) {
  const double y = flow.y() + 4;
  flow.put_text(style::label, "Letter", {at.letter - 9, y});
  flow.put_text(style::label, "Bead", {at.name, y});
  flow.put_text(style::label, "Size", {at.size, y});
  flow.put_text(style::label, "Count", {at.count, y}, Align::right);
  flow.put_text(style::label, "Grams", {at.grams, y}, Align::right);
  if (packs) flow.put_text(style::label, "Packs", {at.packs, y}, Align::right);
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
  const auto sizes = flow.wrap(style::table, bead.size, at.count - 16 - at.size);
  const auto lines = static_cast<double>(std::max(names.size(), sizes.size()));
  const double height = row_height_mm + (lines - 1) * style::table.leading_mm;
  if (flow.room() < height) {
    flow.new_page();
    put_head(flow, at, packs);
  }
  const double top = flow.y(), baseline = top + 4.7;
  put_swatch(flow, subject, legend_place(subject.project, bead.letter), {at.swatch, top + row_height_mm / 2});
  flow.put_text(style::table_bold, bead.letter, {at.letter, baseline});
  for (std::size_t i = 0; i < names.size(); ++i)
    flow.put_text(style::table, names[i],
                  {at.name, baseline + static_cast<double>(i) * style::table.leading_mm});
  for (std::size_t i = 0; i < sizes.size(); ++i)
    flow.put_text(style::table, sizes[i],
                  {at.size, baseline + static_cast<double>(i) * style::table.leading_mm});
  flow.put_text(style::table, grouped(bead.count), {at.count, baseline}, Align::right);
  flow.put_text(style::table, fixed_number(bead.mass.grams(), 1), {at.grams, baseline}, Align::right);
  if (bead.packs) flow.put_text(style::table, grouped(*bead.packs), {at.packs, baseline}, Align::right);
  flow.move_to(top + height);
  flow.rule(flow.left(), flow.right());
}

void put_beads(Flow& flow, const Subject& subject) {
  const auto& beads = subject.supplies.beads.beads;
  const bool packs = std::any_of(beads.begin(), beads.end(), [](const auto& bead) { return bead.packs; });
  const Columns at = columns_of(flow, packs);
  put_head(flow, at, packs);
  for (const auto& bead : beads) put_bead_row(flow, at, subject, bead, packs);
  flow.skip(1.6);
  const double percent = 100 * subject.project.allowance;
  flow.paragraph(
      style::caption,
      fmt::format("The counts are exactly what the charts hold. The grams hold {} % more, for beads set "
                  "aside as uneven and beads lost.",
                  plain_number(percent, 1)),
      flow.left(), flow.width());
}

/// A heading at the side and its lines beside it.
void put_entry(Flow& flow, const std::string& label, const std::vector<std::string>& items) {
  if (items.empty()) return;
  constexpr double indent = 34;
  flow.skip(3);
  flow.need(2 * style::body.leading_mm);
  bool first = true;
  for (const std::string& item : items) {
    flow.need(style::body.leading_mm);
    if (first) flow.put_text(style::label, label, {flow.left(), flow.y() + 3.8});
    first = false;
    flow.paragraph(style::body, item, flow.left() + indent, flow.width() - indent);
    flow.skip(0.6);
  }
}

}  // namespace

std::vector<std::string> counted_items(const std::vector<project::CountedSupply>& supplies) {
  std::vector<std::string> items;
  for (const auto& supply : supplies)
    items.push_back(supply.unit.empty()
                        ? fmt::format("{} × {}", plain_number(supply.count), supply.name)
                        : fmt::format("{} {} of {}", plain_number(supply.count), supply.unit, supply.name));
  return items;
}

std::vector<std::string> thread_items(const Subject& subject) {
  std::vector<std::string> items{fmt::format("{}, {} in all, tails included.", subject.supplies.thread_name,
                                             metres_text(subject.supplies.thread))};
  const auto& bands = subject.bands;
  const bool alike = std::all_of(bands.begin(), bands.end(), [&](const BandSheet& sheet) {
    return metres_text(sheet.thread.cut) == metres_text(bands.front().thread.cut);
  });
  if (alike && bands.size() > 1)
    items.push_back(fmt::format("{} for each band.", metres_text(bands.front().thread.cut)));
  constexpr std::size_t few = 12;
  if (!alike && bands.size() <= few)
    for (const BandSheet& sheet : bands)
      items.push_back(fmt::format("{}: {}.", one_line(sheet.band->name), metres_text(sheet.thread.cut)));
  if (!alike && bands.size() > few) items.emplace_back("What each band takes stands on its page.");
  return items;
}

std::vector<std::string> finding_items(const Subject& subject) {
  std::vector<std::string> items = counted_items(subject.supplies.findings);
  if (!subject.supplies.size.empty() && !items.empty())
    items.push_back(fmt::format("What is strung is for size {}.", one_line(subject.supplies.size)));
  return items;
}

void put_supplies(Flow& flow, const Subject& subject) {
  flow.paragraph(style::heading, "Supplies", flow.left(), flow.width());
  flow.skip(3);
  put_beads(flow, subject);
  flow.skip(3);
  put_entry(flow, "Forms", counted_items(subject.supplies.forms));
  put_entry(flow, "Thread", thread_items(subject));
  put_entry(flow, "Findings", finding_items(subject));
  std::vector<std::string> tools;
  std::string all;
  for (const std::string& tool : subject.supplies.tools) all += (all.empty() ? "" : ", ") + one_line(tool);
  if (!all.empty()) tools.push_back(all + ".");
  put_entry(flow, "Tools", tools);
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
    for (const wording::WordLine& line : sheet.words.lines)
      seen.decreases = seen.decreases || line.beads.find("dec") != std::string::npos;
  }
  return seen;
}

std::string word_help(const RowsSeen& seen) {
  std::string text =
      "The same rows in words; follow either. A number in brackets and a letter say how many beads of which kind to "
      "pick up, in that order. (R) is a row worked towards the right, (L) one worked towards the left";
  if (seen.along) text += ", (D) one worked downwards, (U) one worked upwards";
  text += ", with the chart the right way up.";
  if (seen.rounds) text += " Rounds all go the same way.";
  if (seen.together) text += " The beads of the first two rows are strung together and written as one line.";
  if (seen.units) text += " A semicolon parts one unit from the next.";
  if (seen.decreases) text += " At dec pick up no bead and go through the next two.";
  return text + " Tick off each row as you finish it.";
}

std::string counting_help(const RowsSeen& seen) {
  if (!seen.shifted) return {};
  return "In peyote a row is every other bead across the band. Count the rows in a zigzag up two neighbouring columns, "
         "or count the beads along one edge and double them.";
}

namespace {

std::string chart_help(const RowsSeen& seen) {
  std::string text = "The chart is read from the top.";
  if (seen.shifted) text += " The columns that lie half a bead lower belong to the even rows.";
  if (seen.along) text += " In brick stitch each column of the chart is a row.";
  if (seen.units) text += " In right-angle weave four beads round a square are a unit.";
  text += " Each row's number stands at the side where the row starts";
  return text + (seen.along && !seen.shifted ? "." : ", and a stepped line follows every tenth row.");
}

}  // namespace

void put_reading_help(Flow& flow, const Subject& subject) {
  const RowsSeen seen = rows_seen(subject);
  const weave::ThreadHabits& habits = subject.project.thread_habits;
  std::vector<std::pair<std::string, std::string>> entries{
      {"Chart", chart_help(seen)},
      {"Word chart", word_help(seen)},
      {"Counting", counting_help(seen)},
      {"Thread",
       fmt::format(
           "Leave a tail of {} cm at each end of a thread, and work with no more than {} m at once. Join a "
           "new "
           "thread by weaving it through the beads on a slanting path, and weave the tails in likewise. Keep "
           "an even, firm tension.",
           plain_number(habits.tail.mm() / 10, 1), plain_number(habits.working_length.mm() / 1000, 2))},
  };
  std::erase_if(entries, [](const auto& entry) { return entry.second.empty(); });
  double height = style::subheading.leading_mm + 2;
  constexpr double indent = 34;
  for (const auto& [label, text] : entries)
    height += flow.height_of(style::body, text, flow.width() - indent) + 3.6;
  flow.skip(7);
  flow.need(height);
  flow.paragraph(style::subheading, "How to read the charts", flow.left(), flow.width());
  for (const auto& [label, text] : entries) put_entry(flow, label, {text});
}

}  // namespace evencount::page
