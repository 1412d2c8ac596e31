// The rows of every technique, spelled from their cells by the tests' own hand, come back as the same chart.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "technique_words.hpp"
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

struct Layout {
  bool broken = false;  ///< rows go on in further lines
  std::size_t columns = 1, width = 40, lines_a_page = 1000, indent = 0;
  bool boxes = false, counts = false, prose = false;
};

Layout random_layout(Random& random) {
  Layout layout{.broken = pick(random, 0, 1) == 0,
                .width = static_cast<std::size_t>(pick(random, 20, 60)),
                .indent = static_cast<std::size_t>(pick(random, 0, 4)),
                .boxes = pick(random, 0, 2) == 0,
                .counts = pick(random, 0, 3) == 0,
                .prose = pick(random, 0, 2) == 0};
  if (pick(random, 0, 2) == 0) {
    layout.columns = static_cast<std::size_t>(pick(random, 1, 3));
    layout.lines_a_page = static_cast<std::size_t>(pick(random, 5, 60));
  }
  return layout;
}

/// Where a line may end: after a separator or a list, within a label after its direction, and between the words of what is worked
/// again.
bool may_break(const std::string& text, std::size_t blank, std::size_t label_end) {
  const char before = text[blank - 1];
  if (before == ',' || before == ';' || before == '*') return true;
  const std::size_t direction = text.find(')');
  if (blank < label_end) return direction < blank;
  return text.find("work") != std::string::npos;
}

/// A row as lines no longer than `width` where that can be, the later ones indented.
std::vector<std::string> broken_line(const std::string& text, std::size_t label_end, std::size_t width,
                                     std::size_t indent) {
  std::vector<std::string> lines{""};
  for (std::size_t start = 0; start < text.size();) {
    std::size_t end = text.find(' ', start);
    while (end != std::string::npos && !may_break(text, end, label_end)) end = text.find(' ', end + 1);
    const std::string part = text.substr(start, end - start);
    const bool begins = lines.back().find_first_not_of(' ') == std::string::npos;
    if (!begins && characters(lines.back()) + 1 + characters(part) > width)
      lines.push_back(std::string(indent, ' ') + part);
    else
      lines.back() += (begins ? "" : " ") + part;
    start = end == std::string::npos ? text.size() : end + 1;
  }
  return lines;
}

struct Cell {
  std::string text;
  bool begins_row = false;
  bool goes_on_with_head = false;  ///< with a label, or with what is worked again
};

/// The first rows' label stays whole where columns stand side by side: the second column's rows would come before there is a band.
std::vector<Cell> cells_of(const std::vector<SpelledLine>& lines, const Layout& layout) {
  std::vector<Cell> cells;
  for (const SpelledLine& line : lines) {
    const std::string box = layout.boxes ? "☐ " : "";
    const std::string text = box + line.label + ": " + line.beads;
    const bool breaks = layout.broken && (layout.columns == 1 || !cells.empty());
    const auto broken = breaks
                            ? broken_line(text, box.size() + line.label.size(), layout.width, layout.indent)
                            : std::vector{text};
    const bool again = line.beads.starts_with("work");
    std::size_t passed = 0;
    for (std::size_t i = 0; i < broken.size();
         passed += broken[i].size() - (i > 0 ? layout.indent : 0) + 1, ++i)
      cells.push_back({broken[i], i == 0, i > 0 && (again || passed < box.size() + line.label.size())});
    if (layout.counts && line.count > 0) cells.back().text += fmt::format("  {}", line.count);
  }
  return cells;
}

/// A row that runs on from the foot of one column to the head of the next is more than a page's text can tell; so is a label that
/// runs on to the next page.
bool splits_a_row(const std::vector<Cell>& cells, const Layout& layout) {
  for (std::size_t c = layout.lines_a_page; c < cells.size(); c += layout.lines_a_page)
    if (layout.columns > 1 ? !cells[c].begins_row : cells[c].goes_on_with_head) return true;
  return false;
}

const std::string prose[] = {"Row 3 needs a figure-8 turn: pick up 1 bead and pass down.",
                             "Work rows 3 to 10 as charted.",
                             "Rounds 1 and 2 are strung together.",
                             "New moon bracelet        page 4 of 9",
                             "Loom work: keep the warps tight.",
                             "17",
                             "\f"};

std::string on_pages(Random& random, const std::vector<Cell>& cells, const Layout& layout) {
  std::size_t widest = 0;
  for (const Cell& cell : cells) widest = std::max(widest, characters(cell.text));
  const std::size_t a_page = layout.columns * layout.lines_a_page;
  std::string text;
  for (std::size_t page = 0; page * a_page < cells.size(); ++page) {
    for (std::size_t y = 0; y < layout.lines_a_page; ++y) {
      std::string line;
      for (std::size_t x = 0; x < layout.columns; ++x) {
        const std::size_t cell = page * a_page + x * layout.lines_a_page + y;
        if (cell >= cells.size()) continue;
        const std::size_t from = x * (widest + 4);
        if (characters(line) < from) line.append(from - characters(line), ' ');
        line += cells[cell].text;
        const bool row_ended = cell + 1 == cells.size() || cells[cell + 1].begins_row;
        if (layout.prose && layout.columns == 1 && row_ended && pick(random, 0, 3) == 0)
          line += "\n" + prose[random() % std::size(prose)];
      }
      if (!line.empty()) text += line + "\n";
    }
    text += fmt::format("\n   New moon bracelet                    {}\n\f", page + 1);
  }
  return text;
}

/// The facts, sometimes in a narrow column.
std::string facts_text(Random& random, const Piece& piece) {
  if (pick(random, 0, 1) == 0) return piece.facts + "\n";
  std::string text;
  for (const std::string& line : broken_line(piece.facts, piece.facts.size(), 200, 0)) text += line + "\n";
  std::size_t width = 0;
  const std::size_t narrow = static_cast<std::size_t>(pick(random, 24, 60));
  for (std::size_t i = 0; i < text.size(); ++i, ++width) {
    const std::size_t next = std::min(text.find(' ', i + 1), text.size());
    if (text[i] == ' ' && width + (next - i) > narrow) text[i] = '\n';
    if (text[i] == '\n') width = 0;
  }
  return text;
}

class Techniques : public testing::TestWithParam<std::string> {};

TEST_P(Techniques, ComeBackFromEveryLayout) {
  Random random(static_cast<unsigned>(2024 + GetParam().size()));
  int read_in_columns = 0;
  for (int i = 0; i < 3000; ++i) {
    const Piece piece = random_piece(random, GetParam());
    const Layout layout = random_layout(random);
    const auto cells = cells_of(spelled_lines(random, piece, random_spelling(random)), layout);
    if (splits_a_row(cells, layout)) continue;
    const bool technique_by_facts = pick(random, 0, 3) > 0;
    std::string text = "New moon bracelet\n\nWord chart: New moon\n";
    if (technique_by_facts) text += facts_text(random, piece);
    text += on_pages(random, cells, layout);
    ReadOptions options{.legend = legend_of(piece.letters)};
    if (!technique_by_facts) options.technique = piece.technique;
    const auto read = read_words(text, options);
    ASSERT_TRUE(read) << message(read.problem()) << "\n" << text;
    ASSERT_EQ(read->size(), 1u) << text;
    const ReadBand& band = read->front();
    ASSERT_EQ(band.chart, piece.chart) << text;
    EXPECT_EQ(band.name, "New moon");
    EXPECT_EQ(band.technique, piece.technique);
    EXPECT_EQ(band.begin_at, piece.begin_at);
    EXPECT_EQ(band.rows, piece.rows.back().last);
    const bool closure_told = technique_by_facts || piece.rounds;
    EXPECT_EQ(band.closure, closure_told ? std::optional(piece.closure) : std::nullopt) << text;
    read_in_columns += layout.columns > 1 ? 1 : 0;
  }
  EXPECT_GT(read_in_columns, 100);
}

TEST_P(Techniques, WhatIsMissingIsNoticed) {
  Random random(static_cast<unsigned>(77 + GetParam().size()));
  int tried = 0;
  for (int i = 0; i < 600; ++i) {
    Piece piece = random_piece(random, GetParam());
    const std::size_t victim = random() % piece.rows.size();
    // How wide the first rows of a shaped piece are cannot be told from elsewhere.
    if (GetParam() == "peyote-shaped" && victim == 0 && i % 3 < 2) continue;
    PieceRow& row = piece.rows[victim];
    switch (i % 3) {
      case 0:
        row.beads.push_back(0);
        if (!row.unit_ends.empty()) ++row.unit_ends.back();
        break;
      case 1:
        if (row.beads.size() == 1) continue;
        row.beads.pop_back();
        if (!row.unit_ends.empty()) --row.unit_ends.back();
        break;
      default:
        if (piece.rows.size() == 1) continue;
        piece.rows.erase(piece.rows.begin() + static_cast<std::ptrdiff_t>(victim));
    }
    std::string text = piece.facts + "\n";
    for (const SpelledLine& line : spelled_lines(random, piece, {.runs = pick(random, 0, 3)}))
      text += line.label + ": " + line.beads + "\n";
    const auto read = read_words(text, {.legend = legend_of(piece.letters)});
    ASSERT_FALSE(read) << text;
    EXPECT_NE(message(read.problem()).find("line "), std::string::npos) << message(read.problem());
    ++tried;
  }
  EXPECT_GT(tried, 300);
}

TEST_P(Techniques, AWrongDirectionIsNoticed) {
  Random random(static_cast<unsigned>(5 + GetParam().size()));
  int tried = 0;
  for (int i = 0; i < 200; ++i) {
    Piece piece = random_piece(random, GetParam());
    if (piece.rows.size() < 3) continue;
    PieceRow& row = piece.rows[1 + random() % (piece.rows.size() - 1)];
    const std::string others = std::string("LRDU");
    row.direction = others[(others.find(row.direction) + 1 + random() % 3) % 4];
    std::string text = piece.facts + "\n";
    for (const SpelledLine& line : spelled_lines(random, piece, {}))
      text += line.label + ": " + line.beads + "\n";
    const auto read = read_words(text, {.legend = legend_of(piece.letters)});
    ASSERT_FALSE(read) << text;
    EXPECT_NE(message(read.problem()).find("direction"), std::string::npos) << message(read.problem());
    ++tried;
  }
  EXPECT_GT(tried, 100);
}

/// The writer's words of the same pieces, folded or not, in the same layouts.
TEST_P(Techniques, OurOwnWordsComeBackFromEveryLayout) {
  Random random(static_cast<unsigned>(404 + GetParam().size()));
  int written = 0;
  for (int i = 0; i < 600; ++i) {
    const Piece piece = random_piece(random, GetParam());
    const auto plan = weave::make_plan(piece.technique, piece.chart, {piece.closure, piece.begin_at});
    if (!plan) continue;  // not every piece has thread to hang on
    const auto words =
        write_words(*plan, legend_of(piece.letters), "New moon",
                    {.fold_runs = pick(random, 0, 1) == 0, .fold_rows = pick(random, 0, 1) == 0});
    std::vector<SpelledLine> lines;
    for (const WordLine& line : words.lines) lines.push_back({line.label, line.beads, line.count});
    const Layout layout = random_layout(random);
    const auto cells = cells_of(lines, layout);
    if (splits_a_row(cells, layout)) continue;
    const std::string text = words.heading + "\n" + words.facts + "\n" + on_pages(random, cells, layout);
    const auto read = read_words(text, {.legend = legend_of(piece.letters)});
    ASSERT_TRUE(read) << message(read.problem()) << "\n" << text;
    ASSERT_EQ(read->size(), 1u) << text;
    ASSERT_EQ(read->front().chart, piece.chart) << text;
    EXPECT_EQ(read->front().technique, piece.technique);
    EXPECT_EQ(read->front().begin_at, piece.begin_at);
    EXPECT_EQ(read->front().closure, piece.closure);
    ++written;
  }
  EXPECT_GT(written, 300);
}

INSTANTIATE_TEST_SUITE_P(Every, Techniques, testing::ValuesIn(piece_techniques()), [](const auto& parameter) {
  std::string name = parameter.param;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
});

/// Several techniques in one text, each known by its facts.
TEST(TechniquesTogether, StandInOneText) {
  Random random(31);
  for (int i = 0; i < 200; ++i) {
    std::string text;
    std::vector<Piece> pieces;
    for (int count = pick(random, 2, 5); count > 0; --count) {
      pieces.push_back(random_piece(random, piece_techniques()[random() % piece_techniques().size()]));
      text += fmt::format("Word chart: Piece {}\n", pieces.size()) + facts_text(random, pieces.back());
      for (const SpelledLine& line : spelled_lines(random, pieces.back(), random_spelling(random)))
        text += line.label + ": " + line.beads + "\n";
      text += "Weave in the tails.\n";
    }
    const auto read = read_words(text, {.legend = legend_of(5)});
    ASSERT_TRUE(read) << message(read.problem()) << "\n" << text;
    ASSERT_EQ(read->size(), pieces.size());
    for (std::size_t p = 0; p < pieces.size(); ++p) {
      EXPECT_EQ((*read)[p].chart, pieces[p].chart) << text;
      EXPECT_EQ((*read)[p].technique, pieces[p].technique);
    }
  }
}

}  // namespace
}  // namespace evencount::wording
