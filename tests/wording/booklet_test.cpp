// Word charts as a page's text comes out of a PDF: several columns of rows side by side, broken lines, furniture.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "random_chart.hpp"
#include "weave/technique.hpp"
#include "wording/reader.hpp"
#include "wording/words.hpp"

namespace evencount::wording {
namespace {

using namespace testing_support;

std::size_t characters(const std::string& text) {
  std::size_t count = 0;
  for (const char c : text) count += (static_cast<unsigned char>(c) & 0xC0) != 0x80 ? 1 : 0;
  return count;
}

/// A row as lines no longer than `width`, broken at blanks, the later ones indented.
std::vector<std::string> broken_line(const std::string& text, std::size_t width, std::size_t indent) {
  std::vector<std::string> lines{""};
  std::size_t start = 0;
  while (start < text.size()) {
    const std::size_t end = std::min(text.find(' ', start), text.size());
    const std::string word = text.substr(start, end - start);
    const bool label = lines.size() == 1 && text.find(':') != std::string::npos && start <= text.find(':');
    if (!label && characters(lines.back()) + 1 + characters(word) > width) lines.emplace_back(indent, ' ');
    const bool begins = lines.back().find_first_not_of(' ') == std::string::npos;
    lines.back() += (begins ? "" : " ") + word;
    start = end + 1;
  }
  return lines;
}

struct Layout {
  std::size_t columns, width, lines_a_page, indent;
  bool boxes, counts;
  std::string count_gap = "  ";  ///< before a row's count
};

std::vector<std::string> cells_of(const WordChart& words, const Layout& layout) {
  std::vector<std::string> cells;
  for (const WordLine& line : words.lines) {
    const std::string text = (layout.boxes ? "☐ " : "") + line.label + ": " + line.beads;
    for (const auto& part : broken_line(text, layout.width, layout.indent)) cells.push_back(part);
    if (layout.counts) cells.back() += fmt::format("{}{}", layout.count_gap, line.count);
  }
  return cells;
}

/// Pages of `columns` columns, filled one after the other, printed side by side.
std::string side_by_side(const WordChart& words, const Layout& layout) {
  const auto cells = cells_of(words, layout);
  const std::size_t a_page = layout.columns * layout.lines_a_page;
  std::string text = "New moon bracelet\n\n" + words.heading + "\n" + words.facts + "\n";
  for (std::size_t page = 0; page * a_page < cells.size(); ++page) {
    for (std::size_t y = 0; y < layout.lines_a_page; ++y) {
      std::string line;
      for (std::size_t x = 0; x < layout.columns; ++x) {
        const std::size_t cell = page * a_page + x * layout.lines_a_page + y;
        if (cell >= cells.size()) continue;
        const std::size_t from = x * (layout.width + 12);
        if (characters(line) < from) line.append(from - characters(line), ' ');
        line += cells[cell];
      }
      text += line + "\n";
    }
    text += fmt::format("\n   New moon bracelet                    {}\n\f", page + 1);
  }
  return text;
}

TEST(Booklet, ColumnsSideBySide) {
  Random random(99);
  for (int i = 0; i < 400; ++i) {
    const RandomChart made = random_chart(random, 14, 40, 4);
    const auto letters = legend_of(made.beads);
    const auto plan =
        weave::make_plan(weave::flat_peyote_for(made.chart.columns()).id, made.chart, {weave::Closure::open})
            .value();
    const auto words = write_words(plan, letters, "New moon");
    const Layout layout{.columns = static_cast<std::size_t>(pick(random, 1, 3)),
                        .width = static_cast<std::size_t>(pick(random, 24, 60)),
                        .lines_a_page = static_cast<std::size_t>(pick(random, 5, 60)),
                        .indent = static_cast<std::size_t>(pick(random, 0, 4)),
                        .boxes = pick(random, 0, 1) == 0,
                        .counts = pick(random, 0, 1) == 0,
                        .count_gap = pick(random, 0, 1) == 0 ? " " : "  "};
    // A row that runs on from the foot of one column to the head of the next is more than a page's text can tell.
    const std::string text = side_by_side(words, layout);
    bool splits = false;
    const auto cells = cells_of(words, layout);
    for (std::size_t c = layout.lines_a_page; c < cells.size(); c += layout.lines_a_page)
      splits = splits || cells[c].find("Row") == std::string::npos;
    if (splits && layout.columns > 1) continue;
    const auto read = read_words(text, {.legend = letters});
    ASSERT_TRUE(read) << message(read.problem()) << "\n" << text;
    ASSERT_EQ(read->front().chart, made.chart) << text;
    EXPECT_EQ(read->front().name, "New moon");
  }
}

// Two blanks are the least that parts columns; what goes on beyond them is the other column's row.
TEST(Booklet, ColumnsAsNearAsTheyMayBe) {
  for (const std::string_view gap : {"  ", "   "}) {
    const auto read = read_words(fmt::format("Rows 1-2: 8A {0}Row 4: 2A,\nRow 3: 2A, 2B{0}2B\n", gap));
    ASSERT_TRUE(read) << message(read.problem());
    EXPECT_EQ(read->front().rows, 4);
  }
}

}  // namespace
}  // namespace evencount::wording
