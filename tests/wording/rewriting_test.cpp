// The same rows as other makers would write them, among prose: the reader gets the same chart.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "base/text.hpp"
#include "random_chart.hpp"
#include "weave/technique.hpp"
#include "wording/reader.hpp"

namespace evencount::wording {
namespace {

using namespace testing_support;

constexpr int run_styles = 9;

std::string write_run(int style, int count, const std::string& letter) {
  switch (style) {
    case 0:
      return fmt::format("({}){}", count, letter);
    case 1:
      return fmt::format("{}{}", count, letter);
    case 2:
      return fmt::format("{}{}", letter, count);
    case 3:
      return fmt::format("{} x {}", count, letter);
    case 4:
      return fmt::format("{}×{}", count, letter);
    case 5:
      return fmt::format("{} x {}", letter, count);
    case 6:
      return fmt::format("{}x{}", count, letter);
    case 7:
      return fmt::format("{} {}", count, letter);
    default: {
      std::string beads = letter;
      for (int i = 1; i < count; ++i) beads += ", " + letter;
      return beads;
    }
  }
}

constexpr int label_styles = 8;

std::string write_label(int style, int first, int last) {
  const bool left = last % 2 == 0;
  const std::string number = first == last ? fmt::format("{}", first) : fmt::format("{}-{}", first, last);
  switch (style) {
    case 0:
      return fmt::format("Row{} {} ({}):", first == last ? "" : "s", number, left ? "L" : "R");
    case 1:
      return fmt::format("Row {}:", number);
    case 2:
      return fmt::format("Row {} {}", number, left ? "←" : "→");
    case 3:
      return first == last ? fmt::format("Row {} ({}):", first, left ? "R to L" : "L to R")
                           : fmt::format("Rows {} & {} ({})", first, last, left ? "R to L" : "L to R");
    case 4:
      return fmt::format("R{}:", number);
    case 5:
      return fmt::format("{}:", number);
    case 6:
      return fmt::format("☐ ROW {} ({}):", number, left ? "left" : "right");
    default:
      return fmt::format("Row {} {}:", number, left ? "L" : "R");
  }
}

const std::string prose[] = {
    "",
    "Row 3 needs a figure-8 turn: pick up 1 bead and pass down.",
    "Work rows 3 to 10 as charted.",
    "Rows are counted in a zigzag up two columns.",
    "New moon bracelet        page 4 of 9",
    "17",
    "String a stop bead; row 5. Then go on with row 7: turn the work.",
    "\f",
    "“A” is the dark bead, B the light one.",
};

struct Style {
  int run, label;
  std::string separator;
  bool lower, crlf, with_prose, wrapped, shuffled, joined;
};

Style random_style(Random& random) {
  const std::string separators[] = {", ", "; ", ",", " ,  "};
  return {pick(random, 0, run_styles - 1), pick(random, 0, label_styles - 1), separators[pick(random, 0, 3)],
          pick(random, 0, 2) == 0,         pick(random, 0, 4) == 0,           pick(random, 0, 1) == 0,
          pick(random, 0, 2) == 0,         pick(random, 0, 4) == 0,           pick(random, 0, 2) == 0};
}

/// The letters of the rows, straight from the lattice: no plan is asked.
struct SpelledRow {
  int first, last;
  std::vector<chart::Bead> beads;
};

std::vector<SpelledRow> spelled_rows(const chart::Chart& chart) {
  const int columns = chart.columns();
  std::vector<SpelledRow> rows{{1, 2, {}}};
  for (int column = columns - 1; column >= 0; --column) rows[0].beads.push_back(chart.at({column, 0}));
  for (int step = 1; step < chart.edge(); ++step) {
    SpelledRow odd{2 * step + 1, 2 * step + 1, {}}, even{2 * step + 2, 2 * step + 2, {}};
    for (int column = 0; column < columns; column += 2) odd.beads.push_back(chart.at({column, step}));
    for (int column = columns - 1; column > 0; --column)
      if (column % 2 == 1) even.beads.push_back(chart.at({column, step}));
    rows.push_back(odd);
    if (even.beads.front() != chart::no_bead) rows.push_back(even);
  }
  return rows;
}

std::string write_row(Random& random, const SpelledRow& row, const Style& style,
                      const std::vector<std::string>& letters) {
  std::string text = write_label(style.label, row.first, row.last);
  for (std::size_t i = 0; i < row.beads.size();) {
    std::size_t end = i;
    // Runs need not be as long as they could be.
    while (end < row.beads.size() && row.beads[end] == row.beads[i] && (end == i || pick(random, 0, 5) > 0))
      ++end;
    const bool broken = style.wrapped && i > 0 && pick(random, 0, 3) == 0;
    if (i > 0) text += broken ? std::string(",\n") : style.separator;
    text += (i == 0 ? " " : "") + write_run(style.run, static_cast<int>(end - i), letters[row.beads[i]]);
    i = end;
  }
  return text + "\n";
}

std::string rewrite(Random& random, const RandomChart& made, const Style& style) {
  const auto letters = legend_of(made.beads);
  auto rows = spelled_rows(made.chart);
  if (style.shuffled)
    for (std::size_t i = rows.size() - 1; i > 1; --i) std::swap(rows[i], rows[1 + random() % i]);
  std::string text;
  for (const SpelledRow& row : rows) {
    if (style.with_prose && text.ends_with('\n')) text += prose[random() % std::size(prose)] + "\n";
    text += write_row(random, row, style, letters);
    if (style.joined && pick(random, 0, 2) > 0) text.replace(text.size() - 1, 1, pick(random, 1, 3), ' ');
  }
  if (style.lower) text = lower_ascii(text);
  if (!style.crlf) return text;
  std::string crlf;
  for (const char c : text) crlf += c == '\n' ? std::string("\r\n") : std::string(1, c);
  return crlf;
}

TEST(Rewriting, TwoThousandRandomCharts) {
  Random random(42);
  for (int i = 0; i < 2000; ++i) {
    const RandomChart made = random_chart(random, 16, 30, 30);
    Style style = random_style(random);
    // Rows 1-2 that break in the middle of bare letters can't be told from prose without knowing the width.
    ReadOptions options{.legend = legend_of(made.beads)};
    if (style.wrapped) options.columns = made.chart.columns();
    const std::string text = rewrite(random, made, style);
    const auto read = read_words(text, options);
    ASSERT_TRUE(read) << message(read.problem()) << "\nrun style " << style.run << ", label style "
                      << style.label << "\n"
                      << text.substr(0, 1500);
    ASSERT_EQ(read->size(), 1u);
    ASSERT_EQ(read->front().chart, made.chart) << text.substr(0, 1500);
  }
}

// Taking any one row away, or any one bead, is always noticed.
TEST(Rewriting, WhatIsMissingIsNoticed) {
  Random random(43);
  for (int i = 0; i < 500; ++i) {
    const RandomChart made = random_chart(random, 10, 12, 4);
    const Style style = random_style(random);
    const auto letters = legend_of(made.beads);
    auto rows = spelled_rows(made.chart);
    const int last = rows.back().last;
    if (rows.size() < 3) continue;
    const std::size_t victim = 1 + random() % (rows.size() - 1);
    if (i % 2 == 0)
      rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(victim));
    else if (rows[victim].beads.size() > 1)
      rows[victim].beads.pop_back();
    else
      rows[victim].beads.push_back(rows[victim].beads.front());
    std::string text;
    for (const SpelledRow& row : rows) text += write_row(random, row, style, letters);
    const auto read = read_words(text, {.legend = letters, .columns = made.chart.columns(), .rows = last});
    ASSERT_FALSE(read) << text;
    EXPECT_NE(message(read.problem()).find("row"), std::string::npos);
  }
}

}  // namespace
}  // namespace evencount::wording
