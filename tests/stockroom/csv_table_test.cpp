#include "stockroom/csv_table.hpp"

#include <gtest/gtest.h>

#include "stockroom/random_stock.hpp"

namespace evencount::stockroom {
namespace {

using evencount::testing::random_text;

std::vector<std::vector<std::string>> fields_of(const CsvTable& table) {
  std::vector<std::vector<std::string>> all{table.header.fields};
  for (const TableRow& row : table.rows) all.push_back(row.fields);
  return all;
}

TEST(CsvTable, WhatIsWrittenIsReadBack) {
  std::mt19937 random(11);
  for (int round = 0; round < 300; ++round) {
    const char separator = round % 2 == 0 ? ',' : ';';
    const int columns = 2 + round % 5;
    // Its header tells the separator; names of columns are plain.
    std::vector<std::vector<std::string>> rows{
        std::vector<std::string>(static_cast<std::size_t>(columns), "column")};
    for (int i = 0; i < round % 7; ++i) {
      rows.emplace_back();
      for (int j = 0; j < columns; ++j)
        rows.back().push_back(random() % 4 == 0 && j > 0 ? "" : random_text(random));
    }
    std::string text = round % 3 == 0 ? "\xEF\xBB\xBF" : "";
    for (const auto& row : rows) append_csv_row(text, row, separator);
    const auto table = read_csv(text);
    ASSERT_TRUE(table) << message(table.problem()) << "\n" << text;
    EXPECT_EQ(table->separator, separator);
    EXPECT_EQ(fields_of(*table), rows) << text;
  }
}

TEST(CsvTable, ARowsLineIsWhereItBegins) {
  for (const std::string end : {"\n", "\r\n", "\r"}) {
    const std::string text = "code,note" + end + "a,one" + end + end + "b,\"two" + end + end + "three\"" +
                             end + "c,four" + end + ",," + end + "d,five";
    const auto table = read_csv(text);
    ASSERT_TRUE(table) << message(table.problem());
    std::vector<int> lines;
    for (const TableRow& row : table->rows) lines.push_back(row.line);
    EXPECT_EQ(lines, (std::vector<int>{2, 4, 7, 9})) << "rows of empty fields are left out";
    EXPECT_EQ(table->rows[1].fields[1], "two" + end + end + "three");
  }
}

TEST(CsvTable, BlanksRoundAFieldDoNotBelongToIt) {
  const auto table = read_csv("code ; name\n a ;\" b\"\n");
  ASSERT_TRUE(table) << message(table.problem());
  EXPECT_EQ(table->separator, ';');
  EXPECT_EQ(fields_of(*table), (std::vector<std::vector<std::string>>{{"code", "name"}, {"a", " b"}}));
}

TEST(CsvTable, ASeparatorWithinQuotesDoesNotCount) {
  const auto table = read_csv("\"name, in full; and short; or not\",code\nx,y\n");
  ASSERT_TRUE(table);
  EXPECT_EQ(table->separator, ',');
}

TEST(CsvTable, FaultsStayWithTheirLines) {
  const auto table = read_csv(std::string("code,name\na,b,c\nd\ne,\"f\xff\"\ng,h\0h\ni,j\n", 35));
  ASSERT_TRUE(table) << message(table.problem());
  ASSERT_EQ(table->rows.size(), 5u);
  EXPECT_EQ(table->rows[0].fault->found, "3 fields");
  EXPECT_EQ(table->rows[1].fault->expected, "2, as in the first line");
  EXPECT_EQ(table->rows[2].fault->found, "bytes that are no UTF-8");
  EXPECT_EQ(table->rows[3].fault->found, "a NUL byte");
  EXPECT_FALSE(table->rows[4].fault);
}

TEST(CsvTable, BytesAtRandomAreRefusedOrRead) {
  std::mt19937 random(5);
  const std::string alphabet("\",;\r\n\0ab\xC3\xA4\xFF", 12);
  int read = 0, refused = 0;
  for (int round = 0; round < 20'000; ++round) {
    std::string text = "code,name\n";
    for (int left = static_cast<int>(random() % 30); left > 0; --left)
      text += alphabet[random() % alphabet.size()];
    const auto table = read_csv(text);
    ++(table ? read : refused);
    if (!table) {
      EXPECT_EQ(table.problem().where.substr(0, 5), "line ");
      continue;
    }
    for (const TableRow& row : table->rows) EXPECT_TRUE(row.fault || row.fields.size() == 2);
  }
  EXPECT_GT(read, 500);
  EXPECT_GT(refused, 500);
}

}  // namespace
}  // namespace evencount::stockroom
