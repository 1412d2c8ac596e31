#include "page/read_back.hpp"

#include <fmt/format.h>

#include "base/text.hpp"
#include "page/counts.hpp"
#include "page/pdf_text.hpp"
#include "wording/reader.hpp"

namespace evencount::page {
namespace {

Problem fault(std::string where, std::string found, std::string expected) {
  return {ProblemCode::bad_plan, std::move(where), std::move(found), std::move(expected)};
}

/// Without blanks: how a name was broken into lines and what a blank is in a PDF says nothing of it.
std::string letters_alone(std::string_view text) {
  std::string letters;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (static_cast<unsigned char>(text[i]) <= 0x20) continue;
    if (text.substr(i).starts_with("\u00A0")) {
      ++i;
      continue;
    }
    letters += text[i];
  }
  return letters;
}

/// With plain blanks: a font may give the no-break space as one.
std::string plain_blanks(std::string_view text) {
  std::string plain(text);
  for (std::size_t at = 0; (at = plain.find("\u00A0", at)) != std::string::npos;) plain.replace(at, 2, " ");
  return plain;
}

/// Whether a line of the supply list says the count: "A midnight blue 11/0 cylinder bead 1,152 5.9".
bool is_listed(const std::vector<std::string_view>& lines, const project::SupplyList& supplies, std::size_t bead,
               const language::Language& language) {
  const auto& supply = supplies.beads.beads[bead];
  std::string ends = " " + language.count(supply.count) + " " + language.fixed(supply.mass.grams(), 1);
  if (supply.packs) ends += " " + language.count(*supply.packs);
  ends = plain_blanks(ends);
  for (const std::string_view line : lines)
    if (line.starts_with(supply.letter + " ") && plain_blanks(line).ends_with(ends)) return true;
  return false;
}

}  // namespace

Result<Done> read_back(const std::string& pdf, const Subject& subject) {
  const auto text = pdf_text(pdf);
  if (!text) return fault("the finished pages", message(text.problem()), "text that can be read");
  const auto read = wording::read_words(*text, {.legend = project::letters_of(subject.project)});
  if (!read) return fault("the finished pages", message(read.problem()), "the words of every band");
  if (read->size() != subject.bands.size())
    return fault("the finished pages", fmt::format("{} word charts", read->size()), fmt::format("{}", subject.bands.size()));
  Counts counts;
  for (std::size_t i = 0; i < read->size(); ++i) {
    const BandSheet& sheet = subject.bands[i];
    const wording::ReadBand& band = (*read)[i];
    if (band.chart != sheet.worked.chart)
      return fault("band " + sheet.band->name, "words that make another chart", "words that read back to its chart");
    if (!letters_alone(sheet.band->name).starts_with(letters_alone(band.name)))
      return fault("band " + sheet.band->name, "words headed " + quoted(band.name), "its name");
    add(counts, counts_in_chart(subject.project, band.chart), sheet.band->copies);
  }
  if (counts != counts_of_supplies(subject.supplies))
    return fault("the finished pages", "words of other beads", "the beads of the supplies");
  const auto lines = split(*text, '\n');
  for (std::size_t bead = 0; bead < subject.supplies.beads.beads.size(); ++bead)
    if (!is_listed(lines, subject.supplies, bead, subject.language))
      return fault("the finished pages", "no line for " + quoted(subject.supplies.beads.beads[bead].letter),
                   "each bead with its count among the supplies");
  return Done{};
}

}  // namespace evencount::page
