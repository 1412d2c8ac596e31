#include <fmt/format.h>

#include "language/texts.hpp"
#include "page/along_markup.hpp"
#include "page/along_parts.hpp"

namespace evencount::page {
namespace {

using language::Language;
using language::Texts;

/// "<TAG>TEXT</TAG>" for each paragraph of a person's text.
std::string paragraphs(std::string_view text, std::string_view tag = "p") {
  std::string html;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    if (const std::string line = shown(text.substr(0, end)); !line.empty())
      html += fmt::format("<{0} dir=\"auto\">{1}</{0}>\n", tag, line);
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return html;
}

std::string list(std::string_view tag, std::string_view items) {
  return items.empty() ? std::string() : fmt::format("<{0}>\n{1}</{0}>\n", tag, items);
}

std::string entry(std::string_view label, std::string_view text) {
  return text.empty() ? std::string() : fmt::format("<dt>{}</dt><dd>{}</dd>\n", escaped(label), shown(text));
}

std::string rows_of(const Hand& hand, const Language& language) {
  std::string rows;
  for (const WorkedLine& line : hand.lines)
    rows += fmt::format(
        "<li><i class=\"box\"></i><button type=\"button\" class=\"label\">{}</button> <span class=\"beads\">{}</span></li>\n",
        escaped(wording::ended(line.words.label, language)), escaped(line.words.beads));
  return rows;
}

std::string hand_part(const Hand& hand, language::Text heading, const Language& language) {
  std::string notes = entry(language.text(&Texts::note_stitch), wording::technique_note(hand.seen, language));
  notes += entry(language.text(&Texts::note_joining), wording::closing_note(hand.seen, language));
  notes += entry(language.text(&Texts::note_turns), wording::turn_note(hand.seen, language));
  notes += entry(language.text(&Texts::thread), thread_note(language, hand.thread));
  return fmt::format(
      "<div class=\"words\" data-hand=\"{}\">\n<p class=\"hand\">{}</p>\n<h3>{}</h3>\n<p class=\"facts\">{}</p>\n"
      "<ol class=\"rows\">\n{}</ol>\n{}</div>\n",
      hand.side == Side::left ? "left" : "right", escaped(language.text(heading)), shown(hand.words.heading),
      shown(hand.words.facts), rows_of(hand, language), list("dl", notes));
}

}  // namespace

std::string title_part(const project::Project& project) {
  std::string html = fmt::format("<h1 dir=\"auto\">{}</h1>\n", shown(project.title));
  html += paragraphs(project.subtitle);
  return html;
}

std::string words_part(const Subject& subject, const std::vector<AlongBand>& bands) {
  const Language& language = subject.language;
  std::string html;
  for (std::size_t i = 0; i < bands.size(); ++i) {
    const project::Band& band = *subject.bands[i].band;
    html += fmt::format("<article class=\"band\" data-band=\"{0}\" aria-labelledby=\"band-{0}\">\n<h2 id=\"band-{0}\" dir=\"auto\">{1}</h2>\n", i,
                        shown(band.name));
    html += paragraphs(band.note);
    for (const std::string& line : band_facts(subject, i)) html += fmt::format("<p class=\"facts\">{}</p>\n", shown(line));
    html += hand_part(bands[i].right, &Texts::right_handed, language);
    if (bands[i].left) html += hand_part(*bands[i].left, &Texts::left_handed, language);
    html += "</article>\n";
  }
  const RowsSeen seen = rows_seen(subject);
  html += fmt::format("<h3>{}</h3>\n<p>{}</p>\n", escaped(language.text(&Texts::how_to_read_words)),
                      shown(word_help(language, seen, false)));
  if (const std::string counting = counting_help(language, seen); !counting.empty()) html += fmt::format("<p>{}</p>\n", shown(counting));
  return html;
}

std::string supplies_part(const Subject& subject) {
  const Language& language = subject.language;
  std::string html = paragraphs(subject.project.summary);
  if (const std::string size = paragraphs(subject.project.finished_size); !size.empty())
    html += fmt::format("<h3>{}</h3>\n", escaped(language.text(&Texts::finished_size))) + size;
  std::string rows;
  for (const auto& bead : subject.supplies.beads.beads) {
    std::size_t place = 0;
    while (place + 1 < subject.project.legend.size() && subject.project.legend[place].letter != bead.letter) ++place;
    rows += fmt::format(
        "<tr><td><span class=\"swatch bead-{}\"></span></td><th scope=\"row\">{}</th><td dir=\"auto\">{}<br><small>{}</small></td>"
        "<td class=\"number\">{}</td><td class=\"number\">{}</td></tr>\n",
        place, shown(bead.letter), shown(bead.name), shown(supply_name(language, bead.size)), language.count(bead.count),
        language.fixed(bead.mass.grams(), 1));
  }
  const auto head = [&](language::Text text) { return escaped(language.text(text)); };
  html += fmt::format(
      "<table>\n<thead><tr><td></td><th scope=\"col\">{}</th><th scope=\"col\">{}</th><th scope=\"col\" class=\"number\">{}</th>"
      "<th scope=\"col\" class=\"number\">{}</th></tr></thead>\n<tbody>\n{}</tbody>\n</table>\n<p class=\"facts\">{}</p>\n",
      head(&Texts::column_letter), head(&Texts::column_bead), head(&Texts::column_count), head(&Texts::column_grams), rows,
      head(&Texts::counts_and_some_more));
  const auto listed = [&](language::Text name, const std::vector<std::string>& items) {
    std::string all;
    for (const std::string& item : items) all += fmt::format("<li dir=\"auto\">{}</li>\n", shown(item));
    if (!all.empty()) html += fmt::format("<h3>{}</h3>\n", head(name)) + list("ul", all);
  };
  std::vector<std::string> tools;
  for (const std::string& tool : subject.supplies.tools) tools.push_back(supply_name(language, tool));
  listed(&Texts::forms, counted_items(language, subject.supplies.forms));
  listed(&Texts::thread, thread_items(subject));
  listed(&Texts::findings, finding_items(subject));
  listed(&Texts::tools, tools);
  return html;
}

std::string closing_part(const Subject& subject) {
  const project::Project& project = subject.project;
  const Language& language = subject.language;
  std::string html, assembly;
  const auto heading = [&](language::Text name) { return fmt::format("<h2>{}</h2>\n", escaped(language.text(name))); };
  const auto points = [&](std::span<const language::Text> all) {
    std::string items;
    for (const language::Text point : all) items += fmt::format("<li>{}</li>\n", shown(language.text(point)));
    return list("ul", items);
  };
  for (const std::string& step : project.assembly) assembly += fmt::format("<li dir=\"auto\">{}</li>\n", shown(step));
  if (!assembly.empty()) html += heading(&Texts::assembly) + list("ol", assembly);
  html += heading(&Texts::care) + points(care()) + heading(&Texts::safety) + points(cautions());
  if (const std::string terms = paragraphs(project.terms); !terms.empty())
    html += heading(&Texts::terms) + terms + paragraphs(project.designer);
  return html;
}

}  // namespace evencount::page
