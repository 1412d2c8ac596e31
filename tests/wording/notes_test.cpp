#include <gtest/gtest.h>

#include "weave/technique.hpp"
#include "wording/reader.hpp"
#include "wording/words.hpp"

namespace evencount::wording {
namespace {

weave::Plan blank_plan(int columns, int edge, weave::Closure closure) {
  return weave::make_plan(weave::flat_peyote_for(columns).id, chart::Chart::make(columns, edge).value(),
                          {closure})
      .value();
}

TEST(Notes, ClosingSaysWhichRowsMeet) {
  EXPECT_EQ(closing_note(blank_plan(6, 24, weave::Closure::zip)),
            "Bring the ends together so that the beads of row 1 and of row 48 interlock, and zip them: pass "
            "through "
            "6 beads to the right, one from each end in turn, and draw the thread tight. Then come back once "
            "through "
            "the same beads.");
  EXPECT_EQ(closing_note(blank_plan(6, 24, weave::Closure::open)), "");
}

TEST(Notes, TurnsOfEvenCountArePlain) {
  EXPECT_EQ(turn_note(blank_plan(6, 24, weave::Closure::open)), "");
  EXPECT_EQ(turn_note(blank_plan(6, 24, weave::Closure::zip)), "");
}

TEST(Notes, TurnsOfOddCount) {
  EXPECT_EQ(turn_note(blank_plan(5, 1, weave::Closure::open)), "");
  const std::string eight =
      "Row 3 ends with a figure-8 turn: go down through the beads below the last one, turn, and come back up "
      "through it from the other side, so that it is held.";
  const std::string loop =
      " with a loop: slip the needle under the thread that lies along the edge, then pass back through the "
      "last "
      "bead.";
  EXPECT_EQ(turn_note(blank_plan(5, 2, weave::Closure::open)), eight);
  EXPECT_EQ(turn_note(blank_plan(3, 3, weave::Closure::open)), eight + " Row 5 ends" + loop);
  EXPECT_EQ(turn_note(blank_plan(5, 9, weave::Closure::zip)),
            eight + " Row 5 and every second row after it, to row 17, end" + loop);
}

weave::Plan whole_plan(const weave::Technique& technique, int columns, int edge, weave::Closure closure) {
  const weave::Lattice lattice = technique.lattice(columns, edge);
  chart::Chart chart = chart::Chart::make(columns, edge).value();
  for (int step = 0; step < edge; ++step)
    for (int column = 0; column < columns; ++column)
      if (!lattice.holds_bead({column, step})) chart.set({column, step}, chart::no_bead);
  return weave::make_plan(technique.id, chart, {closure}).value();
}

// Rows that end with many a turn have no figure-8 for that: it is the turn of the odd counts alone.
TEST(Notes, OnlyOddCountsAndShapesHaveTurnsOfTheirOwn) {
  int without = 0;
  for (const weave::Technique& technique : weave::techniques())
    for (int columns = 1; columns <= 12; ++columns)
      for (const int edge : {3, 4, 7}) {
        if (!technique.check_size(columns, edge)) continue;
        for (const weave::Closure closure : technique.closures) {
          if (closure == weave::Closure::sew && edge < 3) continue;
          const std::string note = turn_note(whole_plan(technique, columns, edge, closure));
          const bool odd = technique.id.find("odd-count") != std::string_view::npos && !technique.id.starts_with("tubular");
          const bool shaped = technique.id == "peyote-shaped" && columns % 2 == 1;
          EXPECT_EQ(!note.empty(), odd || shaped) << technique.id << " " << columns << " x " << edge << ": " << note;
          without += note.empty();
        }
      }
  EXPECT_GT(without, 100);
  const auto eights = whole_plan(*weave::find_technique("peyote-odd-count-figure-8"), 7, 5, weave::Closure::open);
  EXPECT_TRUE(turn_note(eights).starts_with("Row 3 and every second row after it, to row 9, end with a figure-8 turn"));
  const auto few = whole_plan(*weave::find_technique("peyote-odd-count-figure-8"), 7, 3, weave::Closure::open);
  EXPECT_TRUE(turn_note(few).starts_with("Rows 3 and 5 end with a figure-8 turn")) << turn_note(few);
}

// Wherever a page breaks the notes into lines, they are prose to the reader.
TEST(Notes, AreNotTakenForRows) {
  const auto plan = blank_plan(5, 9, weave::Closure::zip);
  const std::string notes = turn_note(plan) + " " + closing_note(plan);
  const std::string rows = to_text(write_words(plan, std::vector<std::string>{"A"}, "Ring"));
  for (std::size_t blank = notes.find(' '); blank != std::string::npos; blank = notes.find(' ', blank + 1)) {
    const std::string broken = notes.substr(0, blank) + "\n" + notes.substr(blank + 1) + "\n";
    for (const std::string& text : {broken + rows, rows + broken}) {
      const auto read = read_words(text);
      ASSERT_TRUE(read) << message(read.problem()) << "\n" << broken;
      EXPECT_EQ(read->size(), 1u);
    }
  }
}

}  // namespace
}  // namespace evencount::wording
