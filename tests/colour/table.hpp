#pragma once
// Reads the published tables under tests/cases/colour: comma-separated, a line of headings, texts in double quotes may hold commas.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <string>
#include <vector>

#include "base/text.hpp"

namespace evencount::colour {

struct TableRow {
  std::string place;  // file and line, for messages
  std::map<std::string, std::string, std::less<>> fields;

  const std::string& text(std::string_view heading) const { return fields.find(heading)->second; }
  double number(std::string_view heading) const {
    const auto value = parse_number(text(heading));
    EXPECT_TRUE(value.has_value()) << place << ": " << heading << ": " << text(heading);
    return value.value_or(0);
  }
};

inline std::vector<std::string> comma_separated(const std::string& line) {
  std::vector<std::string> fields(1);
  bool in_quotes = false;
  for (const char c : line) {
    if (c == '"')
      in_quotes = !in_quotes;
    else if (c == ',' && !in_quotes)
      fields.emplace_back();
    else if (c != '\r')
      fields.back() += c;
  }
  return fields;
}

// Every row of the table; that there are `rows` of them is checked, so that none is skipped unseen.
inline std::vector<TableRow> read_table(const std::string& file, std::size_t rows) {
  std::ifstream stream(EVENCOUNT_CASES_DIR "/colour/" + file);
  std::vector<TableRow> table;
  std::vector<std::string> headings;
  int number = 0;
  for (std::string line; std::getline(stream, line);) {
    ++number;
    if (line.empty()) continue;
    const std::vector<std::string> fields = comma_separated(line);
    if (headings.empty()) {
      headings = fields;
      continue;
    }
    TableRow row{fmt::format("{}:{}", file, number), {}};
    EXPECT_EQ(fields.size(), headings.size()) << row.place;
    for (std::size_t i = 0; i < std::min(fields.size(), headings.size()); ++i)
      row.fields[headings[i]] = fields[i];
    table.push_back(std::move(row));
  }
  EXPECT_EQ(table.size(), rows) << file;
  return table;
}

}  // namespace evencount::colour
