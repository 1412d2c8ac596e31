#include "page/read_back.hpp"

#include <fmt/format.h>
#include <glib.h>

#include <array>
#include <optional>
#include <span>

#include "base/text.hpp"
#include "page/counts.hpp"
#include "page/pdf_text.hpp"
#include "wording/reader.hpp"

namespace evencount::page {
namespace {

Problem fault(std::string where, std::string found, std::string expected) {
  return {ProblemCode::bad_plan, std::move(where), std::move(found), std::move(expected)};
}

/// A text without its blanks, its accents and what shows nothing, and where each byte stood: how a name was broken into lines and what a blank is in a PDF
/// says nothing of it.
struct Letters {
  std::string bytes;
  std::vector<std::size_t> places;
};

Letters letters_alone(const std::string& text) {
  Letters letters;
  constexpr gunichar soft_hyphen = 0xAD;
  constexpr gsize longest_parts = G_UNICHAR_MAX_DECOMPOSITION_LENGTH, longest_bytes = 6;
  for (std::size_t at = 0; at < text.size(); at = static_cast<std::size_t>(g_utf8_next_char(text.data() + at) - text.data())) {
    // A letter and its accent may have been set as one sign.
    std::array<gunichar, longest_parts> parts{};
    const gsize count = g_unichar_fully_decompose(g_utf8_get_char(text.data() + at), FALSE, parts.data(), parts.size());
    for (const gunichar part : std::span(parts).first(count)) {
      if (part <= 0x20 || part == soft_hyphen || g_unichar_isspace(part) || g_unichar_iszerowidth(part)) continue;
      std::array<char, longest_bytes> bytes{};
      const auto size = static_cast<std::size_t>(g_unichar_to_utf8(part, bytes.data()));
      letters.bytes.append(bytes.data(), size);
      letters.places.insert(letters.places.end(), size, at);
    }
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

/// The chart that the words of a band must make, and the way its first row goes: off the project, not off what was laid out.
chart::Chart chart_to_read(const BandSheet& sheet) {
  return sheet.left_handed ? chart::mirrored(sheet.band->chart) : sheet.band->chart;
}

weave::Travel travel_to_read(const BandSheet& sheet) {
  const weave::Travel travel = sheet.plan.rows.front().travel;
  return sheet.left_handed && weave::axis_of(travel) == weave::Axis::across ? weave::opposite(travel) : travel;
}

Result<Done> check_band(const BandSheet& sheet, const wording::ReadBand& read) {
  const std::string where = "band " + sheet.band->name;
  if (read.chart != chart_to_read(sheet)) return fault(where, "words that make another chart", "words that read back to its chart");
  if (read.technique != sheet.band->technique) return fault(where, "words of " + quote(read.technique), sheet.band->technique);
  if (read.first_travel != travel_to_read(sheet)) return fault(where, "rows that go the other way", "the way of its plan");
  return Done{};
}

/// One past the number where the text says it behind `before`, from `from` on, and not as the beginning of a longer one.
std::size_t after_number(std::string_view text, const std::string& before, std::int64_t number, std::size_t from) {
  const std::string said = before + " " + fmt::format("{}", number);
  for (std::size_t at = text.find(said, from); at != std::string_view::npos; at = text.find(said, at + 1)) {
    const std::size_t end = at + said.size();
    if (end == text.size() || text[end] < '0' || text[end] > '9') return end;
  }
  return std::string_view::npos;
}

std::string last_run(const std::string& beads) {
  const std::size_t comma = beads.rfind(", ");
  return comma == std::string::npos ? beads : beads.substr(comma + 2);
}

/// What the reader of words passes over: each row's number of beads stands behind it, in order.
Result<Done> check_row_counts(const BandSheet& sheet, const language::Language& language, const std::string& words) {
  const std::string text = plain_blanks(words);
  std::size_t from = 0;
  for (const wording::WordLine& line : sheet.words.lines) {
    const std::size_t label = text.find(plain_blanks(wording::ended(line.label, language)), from);
    const std::size_t end = label == std::string::npos
                                ? label
                                : after_number(text, plain_blanks(last_run(line.beads)), line.count, label);
    if (end == std::string::npos)
      return fault("band " + sheet.band->name, line.label + " without its number of beads", fmt::format("{}", line.count));
    from = end;
  }
  return Done{};
}

/// The part of the pages' text that is each band's words: from its heading with its facts to the sum behind its rows. What a designer wrote
/// elsewhere, of rows perhaps, is nobody's chart.
Result<std::vector<std::string>> words_of_bands(const Subject& subject, const std::string& text) {
  const Letters letters = letters_alone(text);
  std::vector<std::string> words;
  std::size_t from = 0;
  const auto place_of = [&](const std::string& printed) -> std::optional<std::size_t> {
    const std::string sought = letters_alone(printed).bytes;
    for (std::size_t at = letters.bytes.find(sought, from); at != std::string::npos; at = letters.bytes.find(sought, at + 1)) {
      const std::size_t place = letters.places[at];
      if (place > 0 && static_cast<unsigned char>(text[place - 1]) > 0x20) continue;  // the end of a longer number or word
      from = at + sought.size();
      return place;
    }
    return std::nullopt;
  };
  for (const BandSheet& sheet : subject.bands) {
    const std::string heading = sheet.words.heading + " " + sheet.words.facts, sum = sum_of_rows(subject.language, sheet.plan);
    const auto begin = place_of(heading);
    if (!begin) return fault("band " + sheet.band->name, "pages without its heading", quote(heading));
    const auto end = place_of(sum);
    if (!end) return fault("band " + sheet.band->name, "pages without the sum of its rows", quote(sum));
    words.push_back(text.substr(*begin, *end - *begin));
  }
  return words;
}

/// The beads that the words of a band hold, when they are what they must be.
Result<Counts> read_band(const Subject& subject, const BandSheet& sheet, const std::string& words) {
  const std::string where = "band " + sheet.band->name;
  const auto read = wording::read_words(words, {.legend = project::letters_of(subject.project)});
  if (!read) return fault(where, message(read.problem()), "words that read back to its chart");
  if (read->size() != 1) return fault(where, fmt::format("{} word charts", read->size()), "one");
  if (auto ok = check_band(sheet, read->front()); !ok) return ok.problem();
  if (auto ok = check_row_counts(sheet, subject.language, words); !ok) return ok.problem();
  return counts_in_chart(subject.project, read->front().chart);
}

}  // namespace

Result<Done> read_back(const std::string& pdf, const Subject& subject) {
  const auto text = pdf_text(pdf);
  if (!text) return fault("the finished pages", message(text.problem()), "text that can be read");
  if (!is_utf8(*text)) return fault("the finished pages", "bytes that are no text", "text that can be read");
  const auto words = words_of_bands(subject, *text);
  if (!words) return words.problem();
  Counts counts;
  for (std::size_t i = 0; i < words->size(); ++i) {
    const auto read = read_band(subject, subject.bands[i], (*words)[i]);
    if (!read) return read.problem();
    add(counts, *read, subject.bands[i].band->copies);
  }
  if (counts != counts_of_supplies(subject.supplies))
    return fault("the finished pages", "words of other beads", "the beads of the supplies");
  const auto lines = split(*text, '\n');
  for (std::size_t bead = 0; bead < subject.supplies.beads.beads.size(); ++bead)
    if (!is_listed(lines, subject.supplies, bead, subject.language))
      return fault("the finished pages", "no line for " + quote(subject.supplies.beads.beads[bead].letter),
                   "each bead with its count among the supplies");
  return Done{};
}

}  // namespace evencount::page
