#include "project/series_table.hpp"

#include <csv.h>
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace evencount::project {
namespace {

SeriesTable table(std::string_view text) {
  auto read = parse_series_table(text);
  EXPECT_TRUE(read.ok()) << message(read.problem());
  return read ? *read : SeriesTable{};
}

TEST(series_table, a_line_of_every_column) {
  const auto read = table(
      "Name,Front,Back,Front Motif,back_motif,letter,colour b,colour AA,note,copies\n"
      "Day 1,1,\"one, \"\"two\"\"\nthree\",a.txt,b.txt,d,#FF0000:brick red, c ,a note,3\n");
  ASSERT_EQ(read.rows.size(), 1u);
  EXPECT_TRUE(read.problems.empty());
  const SeriesRow& row = read.rows[0];
  EXPECT_EQ(row.line, 2);
  EXPECT_EQ(row.name, "Day 1");
  EXPECT_EQ(row.front, "1");
  EXPECT_EQ(row.back, "one, \"two\"\nthree");
  EXPECT_EQ(row.front_motif, "a.txt");
  EXPECT_EQ(row.back_motif, "b.txt");
  EXPECT_EQ(row.letter, "D");
  EXPECT_EQ(row.note, "a note");
  EXPECT_EQ(row.copies, 3);
  ASSERT_EQ(row.colours.size(), 2u);
  EXPECT_EQ(row.colours.at("B"), (SeriesColour{"", colour::Rgb{255, 0, 0}, "brick red"}));
  EXPECT_EQ(row.colours.at("AA"), (SeriesColour{"C", {}, ""}));
}

/// A field as CSV writes it, by the library's own writer.
std::string written(const std::string& text) {
  std::string out(2 * text.size() + 2, '\0');
  out.resize(csv_write(out.data(), out.size(), text.data(), text.size()));
  return out;
}

TEST(series_table, what_is_written_is_read_back) {
  std::mt19937 random(1);
  const std::vector<std::string> pieces{"a", " ", ",", ";", "\"", "\n", "é", "12", "月", "\t"};
  for (int round = 0; round < 200; ++round) {
    std::string text = "name,front,back\n";
    std::vector<SeriesRow> rows;
    int line = 2;
    for (int i = 0; i < 5; ++i) {
      SeriesRow row;
      row.line = line;
      row.name = fmt::format("band {}", i);
      for (std::string* field : {&row.front, &row.back})
        for (auto piece = random() % 6; piece > 0; --piece) *field += pieces[random() % pieces.size()];
      text += written(row.name) + "," + written(row.front) + "," + written(row.back) +
              (round % 2 == 0 ? "\n" : "\r\n");
      line += 1 + static_cast<int>(std::ranges::count(row.front, '\n') + std::ranges::count(row.back, '\n'));
      rows.push_back(row);
    }
    const auto read = table(text);
    EXPECT_EQ(read.rows, rows) << text;
    EXPECT_TRUE(read.problems.empty());
  }
}

TEST(series_table, semicolons_tabs_marks_and_line_ends) {
  for (const std::string_view text : {"name;front\nA;1,5\n", "\xEF\xBB\xBFname;front\r\nA;1,5\r\n",
                                      "name\tfront\rA\t1,5\r", "name;front\n\n \n;\nA;1,5"}) {
    const auto read = table(text);
    ASSERT_EQ(read.rows.size(), 1u) << text;
    EXPECT_EQ(read.rows[0].name, "A");
    EXPECT_EQ(read.rows[0].front, "1,5");
  }
}

struct BadLine {
  std::string_view line;
  std::string_view where;
  ProblemCode code;
};

TEST(series_table, a_bad_line_is_named_and_the_others_are_read) {
  const std::string good_before = "name,front,copies,colour B\nfirst,1,2,#102030\n",
                    good_after = "last,9,,C\n";
  const SeriesTable all_good = table(good_before + good_after);
  ASSERT_EQ(all_good.rows.size(), 2u);
  for (const BadLine& bad :
       std::vector<BadLine>{{"bad,\"1,2,#102030", "line 3", ProblemCode::bad_text},
                            {"bad,1\"2,2,", "line 3", ProblemCode::bad_text},
                            {"bad,\"1\"2,2,", "line 3", ProblemCode::bad_text},
                            {",1,2,", "line 3, column name", ProblemCode::missing_field},
                            {"first,1,2,", "line 3, column name", ProblemCode::duplicate_name},
                            {"bad,1,two,", "line 3, column copies", ProblemCode::out_of_range},
                            {"bad,1,0,", "line 3, column copies", ProblemCode::out_of_range},
                            {"bad,1,2,#12", "line 3, column colour b", ProblemCode::bad_text},
                            {"bad,1,2,C,more", "line 3", ProblemCode::wrong_size},
                            {"bad,\xFF,2,", "line 3, column front", ProblemCode::bad_text},
                            {"bad,\x01,2,", "line 3, column front", ProblemCode::bad_text}}) {
    const auto read = table(good_before + std::string(bad.line) + "\n" + good_after);
    ASSERT_EQ(read.problems.size(), 1u) << bad.line;
    EXPECT_EQ(read.problems[0].where, bad.where) << bad.line;
    EXPECT_EQ(read.problems[0].code, bad.code) << bad.line;
    EXPECT_FALSE(read.problems[0].found.empty());
    EXPECT_FALSE(read.problems[0].expected.empty());
    ASSERT_EQ(read.rows.size(), 2u) << bad.line;
    EXPECT_EQ(read.rows[0], all_good.rows[0]);
    SeriesRow last = read.rows[1];
    EXPECT_EQ(last.line, 4);
    last.line = 3;
    EXPECT_EQ(last, all_good.rows[1]);
  }
}

TEST(series_table, several_faults_are_all_named_in_order) {
  const auto read = table("name,copies\na,x\n\"b,1\nc,1\n,7\n");
  std::vector<std::string> where;
  for (const Problem& problem : read.problems) where.push_back(problem.where);
  EXPECT_EQ(where, (std::vector<std::string>{"line 2, column copies", "line 3", "line 5, column name"}));
  ASSERT_EQ(read.rows.size(), 1u);
  EXPECT_EQ(read.rows[0].name, "c");
}

TEST(series_table, tables_that_are_none) {
  EXPECT_EQ(parse_series_table("").problem().code, ProblemCode::missing_field);
  EXPECT_EQ(parse_series_table("front,back\n1,2\n").problem().code, ProblemCode::missing_field);
  EXPECT_EQ(parse_series_table("name,size\n").problem().code, ProblemCode::unknown_name);
  EXPECT_EQ(parse_series_table("name,front,Front\n").problem().code, ProblemCode::duplicate_name);
  EXPECT_EQ(parse_series_table("name,colour 7\n").problem().code, ProblemCode::unknown_name);
  EXPECT_EQ(parse_series_table("\"name,front\n1,2\n").problem().code, ProblemCode::bad_text);
  EXPECT_EQ(parse_series_table(std::string(longest_table + 1, 'a')).problem().code,
            ProblemCode::out_of_range);
  std::string many = "name\n";
  for (int i = 0; i < 1001; ++i) many += fmt::format("band {}\n", i);
  EXPECT_EQ(parse_series_table(many).problem().code, ProblemCode::out_of_range);
}

TEST(series_table, any_bytes_are_read_without_harm) {
  std::mt19937 random(2);
  const std::string alphabet = "name,;\"\"\"\n\r\t #1a\xC3\xA9\xFF";
  int read_any = 0;
  for (int round = 0; round < 3000; ++round) {
    std::string text = round % 2 == 0 ? "name,front\n" : "";
    for (auto i = random() % 80; i > 0; --i) text += alphabet[random() % alphabet.size()];
    const auto read = parse_series_table(text);
    if (!read) continue;
    for (const SeriesRow& row : read->rows) {
      EXPECT_GE(row.line, 2);
      ++read_any;
    }
    for (const Problem& problem : read->problems) EXPECT_TRUE(problem.where.starts_with("line "));
  }
  EXPECT_GT(read_any, 100);
}

TEST(series_table, a_quote_that_is_never_closed_does_not_run_on) {
  // Every line begins a field that doesn't end within a row's length: each is looked at so far and no further.
  std::string text = "name,front\n";
  for (int i = 0; i < 300; ++i)
    text += fmt::format("band {},\"{}\n", i, std::string(100, i % 2 == 0 ? 'x' : 'y'));
  const auto read = table(text);
  EXPECT_EQ(read.rows.size(), 0u);
  EXPECT_FALSE(read.problems.empty());
}

}  // namespace
}  // namespace evencount::project
