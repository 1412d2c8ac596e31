#include "project/series_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "base/csv.hpp"
#include "base/text.hpp"
#include "chart/letters.hpp"
#include "project/project.hpp"

namespace evencount::project {
namespace {

/// The columns that hold a text of their own.
struct TextColumn {
  std::string_view head;
  std::string SeriesRow::*field;
};
constexpr TextColumn text_columns[] = {
    {"name", &SeriesRow::name},
    {"front", &SeriesRow::front},
    {"back", &SeriesRow::back},
    {"front motif", &SeriesRow::front_motif},
    {"back motif", &SeriesRow::back_motif},
    {"letter", &SeriesRow::letter},
    {"note", &SeriesRow::note},
};
constexpr std::string_view copies_head = "copies", colour_head = "colour ";

/// A head as it is compared: small letters, single words.
std::string head_of(const std::string& field) {
  std::string head = lower_ascii(trim(field));
  std::ranges::replace(head, '_', ' ');
  return head;
}

std::string letter_of_head(const std::string& head) {
  return head.starts_with(colour_head) ? upper_ascii(trim(std::string_view(head).substr(colour_head.size())))
                                       : "";
}

Result<Done> check_heads(const std::vector<std::string>& heads) {
  std::set<std::string> seen;
  for (const std::string& head : heads) {
    const bool is_text = std::ranges::find(text_columns, head, &TextColumn::head) != std::end(text_columns);
    if (!is_text && head != copies_head && !chart::letter_position(letter_of_head(head)))
      return Problem{ProblemCode::unknown_name, "line 1", fmt::format("column {}", quote(head)),
                     "name, front, back, front motif, back motif, letter, note, copies or colour LETTER"};
    if (!seen.insert(head).second)
      return Problem{ProblemCode::duplicate_name, "line 1", fmt::format("column {}", quote(head)),
                     "each column once"};
  }
  if (seen.contains("name")) return Done{};
  return Problem{ProblemCode::missing_field, "line 1", "no column name",
                 "a first line with the heads of the columns, name among them"};
}

bool is_plain(std::string_view text) {
  return is_utf8(text) && text.size() <= longest_text && std::ranges::none_of(text, [](char c) {
           return (static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t') || c == 0x7f;
         });
}

Result<SeriesColour> read_colour(const std::string& text) {
  const std::string_view trimmed = trim(text);
  if (const std::string letter = upper_ascii(trimmed); chart::letter_position(letter))
    return SeriesColour{letter, {}, {}};
  const auto colon = trimmed.find(':');
  const auto colour = colour::parse_hex(trim(trimmed.substr(0, colon)));
  if (!colour) return Problem{ProblemCode::bad_text, "", quote(text), "a letter, #rrggbb or #rrggbb:NAME"};
  return SeriesColour{"", *colour,
                      colon == std::string_view::npos ? "" : std::string(trim(trimmed.substr(colon + 1)))};
}

/// A field of a row with its text.
class RowReader {
 public:
  RowReader(const std::vector<std::string>& heads, SeriesTable& table) : heads_(heads), table_(table) {}

  void read(const CsvRow& csv) {
    if (std::ranges::all_of(csv.fields, [](const std::string& field) { return trim(field).empty(); })) return;
    row_ = SeriesRow{};
    row_.line = csv.line;
    good_ = true;
    if (csv.fields.size() > heads_.size())
      bad("", ProblemCode::wrong_size, fmt::format("{} fields", csv.fields.size()),
          fmt::format("at most {}, as many as the first line has", heads_.size()));
    for (std::size_t i = 0; i < heads_.size() && i < csv.fields.size(); ++i)
      read_field(heads_[i], csv.fields[i]);
    if (row_.name.empty())
      bad("name", ProblemCode::missing_field, "nothing", "the band's name");
    else if (!names_.insert(row_.name).second)
      bad("name", ProblemCode::duplicate_name, quote(row_.name), "a name that no line above has");
    if (good_) table_.rows.push_back(std::move(row_));
  }

 private:
  void bad(const std::string& head, ProblemCode code, std::string found, std::string expected) {
    table_.problems.push_back({code,
                               fmt::format("line {}{}{}", row_.line, head.empty() ? "" : ", column ", head),
                               std::move(found), std::move(expected)});
    good_ = false;
  }

  void read_field(const std::string& head, std::string text) {
    // A line break between quotes may have been written either way.
    for (auto at = text.find("\r\n"); at != std::string::npos; at = text.find("\r\n", at)) text.erase(at, 1);
    std::ranges::replace(text, '\r', '\n');
    if (!is_plain(text))
      return bad(head, ProblemCode::bad_text, quote(text), "UTF-8 text without control characters");
    if (const auto* column = std::ranges::find(text_columns, head, &TextColumn::head);
        column != std::end(text_columns)) {
      row_.*(column->field) = head == "letter" ? upper_ascii(trim(text)) : text;
      return;
    }
    if (trim(text).empty()) return;
    if (head == copies_head) {
      const auto copies = parse_integer(trim(text));
      if (!copies || *copies < 1 || *copies > most_copies)
        return bad(head, ProblemCode::out_of_range, quote(text),
                   fmt::format("a whole number from 1 to {}", most_copies));
      row_.copies = static_cast<int>(*copies);
      return;
    }
    auto colour = read_colour(text);
    if (!colour) return bad(head, colour.problem().code, colour.problem().found, colour.problem().expected);
    row_.colours[letter_of_head(head)] = std::move(*colour);
  }

  const std::vector<std::string>& heads_;
  SeriesTable& table_;
  std::set<std::string> names_;
  SeriesRow row_;
  bool good_ = true;
};

int line_of(const Problem& problem) {
  constexpr std::string_view before = "line ";
  const std::string_view where = std::string_view(problem.where).substr(before.size());
  return static_cast<int>(parse_integer(where.substr(0, where.find(','))).value_or(0));
}

}  // namespace

Result<SeriesTable> parse_series_table(std::string_view text) {
  if (text.size() > longest_table)
    return Problem{ProblemCode::out_of_range, "", fmt::format("{} bytes", text.size()),
                   fmt::format("at most {}", longest_table)};
  CsvRows csv = read_csv_rows(text, longest_table_row);
  const bool first_is_bad =
      !csv.problems.empty() && (csv.rows.empty() || line_of(csv.problems.front()) < csv.rows.front().line);
  if (first_is_bad) return csv.problems.front();
  if (csv.rows.empty())
    return Problem{ProblemCode::missing_field, "line 1", "nothing",
                   "a first line with the heads of the columns, name among them"};
  std::vector<std::string> heads;
  for (const std::string& field : csv.rows.front().fields) heads.push_back(head_of(field));
  if (const auto sound = check_heads(heads); !sound) return sound.problem();
  if (csv.rows.size() > most_bands + 1)
    return Problem{ProblemCode::out_of_range, "", fmt::format("{} lines", csv.rows.size() - 1),
                   fmt::format("at most {}", most_bands)};
  SeriesTable table;
  table.problems = std::move(csv.problems);
  RowReader reader(heads, table);
  for (std::size_t i = 1; i < csv.rows.size(); ++i) reader.read(csv.rows[i]);
  std::ranges::stable_sort(table.problems, {}, line_of);
  return table;
}

}  // namespace evencount::project
