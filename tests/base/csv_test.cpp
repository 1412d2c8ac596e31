#include "base/csv.hpp"

#include <gtest/gtest.h>

#include <random>

namespace evencount {
namespace {

using Random = std::mt19937;

std::string random_field(Random& random) {
  static constexpr std::string_view pieces[] = {"a", "B", " ", ",", ";", "\t", "\"", "\n", "\r\n", "\xC3\xA4", "\xF0\x9F\x8C\x99", "12.5"};
  std::string text;
  for (auto left = random() % 6; left > 0; --left) text += pieces[random() % std::size(pieces)];
  // Blanks at the ends of a field without quotes do not belong to it.
  const bool quoted = text.find_first_of(",;\t\"\r\n") != std::string::npos;
  return quoted || text.find_first_not_of(' ') == std::string::npos ? (quoted ? text : "") : "x" + text + "x";
}

std::vector<std::vector<std::string>> fields_of(const CsvRows& read) {
  std::vector<std::vector<std::string>> all;
  for (const CsvRow& row : read.rows) all.push_back(row.fields);
  return all;
}

TEST(Csv, WhatIsWrittenIsReadBack) {
  Random random(1);
  for (int trial = 0; trial < 2'000; ++trial) {
    const char separator = std::string_view(",;\t")[random() % 3];
    const std::size_t columns = 2 + random() % 4;
    std::vector<std::vector<std::string>> rows{std::vector<std::string>(columns, "head")};
    for (auto left = random() % 6; left > 0; --left) {
      rows.emplace_back();
      for (std::size_t i = 0; i < columns; ++i) rows.back().push_back(random_field(random));
    }
    std::string text = trial % 3 == 0 ? "\xEF\xBB\xBF" : "";
    for (const auto& row : rows) append_csv_row(text, row, separator);
    const CsvRows read = read_csv_rows(text, 10'000);
    EXPECT_EQ(read.separator, separator);
    EXPECT_TRUE(read.problems.empty()) << text;
    EXPECT_EQ(fields_of(read), rows) << text;
  }
}

TEST(Csv, ARowsLineIsWhereItBegins) {
  for (const std::string end : {"\n", "\r\n", "\r"}) {
    const std::string text =
        "code,note" + end + "a,one" + end + end + "b,\"two" + end + end + "three\"" + end + "c,four";
    std::vector<int> lines;
    const CsvRows read = read_csv_rows(text, 1'000);
    for (const CsvRow& row : read.rows) lines.push_back(row.line);
    EXPECT_EQ(lines, (std::vector<int>{1, 2, 4, 7}));
    EXPECT_EQ(read.rows[2].fields[1], "two" + end + end + "three");
  }
}

TEST(Csv, ABadRowIsNamedAndTheOthersRead) {
  const CsvRows read = read_csv_rows("a,b\nc,d\"e\nf,g\nh,\"i\n", 1'000);
  EXPECT_EQ(fields_of(read), (std::vector<std::vector<std::string>>{{"a", "b"}, {"f", "g"}}));
  ASSERT_EQ(read.problems.size(), 2u);
  EXPECT_EQ(read.problems[0].where, "line 2");
  EXPECT_EQ(read.problems[1].where, "line 4");
}

TEST(Csv, ARowTooLongIsBadAndManyBadOnesEndTheReading) {
  const CsvRows read = read_csv_rows("a,b\n" + std::string(300, 'x') + ",y\nc,d\n", 200);
  EXPECT_EQ(read.problems.size(), 1u);
  EXPECT_EQ(fields_of(read).back(), (std::vector<std::string>{"c", "d"}));
  std::string open;
  for (int i = 0; i < 1'000; ++i) open += "a,\"b\n";
  EXPECT_EQ(read_csv_rows("a,b\n" + open, 10'000'000).problems.size(), most_csv_problems);
}

TEST(Csv, TheSeparatorIsTheFirstLinesOwn) {
  EXPECT_EQ(csv_separator("\"in full, and short, or not\";code\nx,y,z\n"), ';');
  EXPECT_EQ(csv_separator("a\tb\tc,d\n"), '\t');
  EXPECT_EQ(csv_separator("name\n"), ',');
  EXPECT_EQ(csv_separator(""), ',');
}

TEST(Csv, AnyBytesAreReadOrNamed) {
  Random random(5);
  const std::string alphabet("\",;\r\n\0ab\xC3\xA4\xFF", 12);
  for (int trial = 0; trial < 20'000; ++trial) {
    std::string text;
    for (auto left = random() % 40; left > 0; --left) text += alphabet[random() % alphabet.size()];
    const CsvRows read = read_csv_rows(text, 100);
    int last = 0;
    for (const CsvRow& row : read.rows) {
      EXPECT_GT(row.line, last) << testing::PrintToString(text);
      last = row.line;
    }
  }
}

}  // namespace
}  // namespace evencount
