// Everything that is printed, in every language.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>

#include "along_text.hpp"
#include "page/alternative.hpp"
#include "page/booklet.hpp"
#include "page/sections.hpp"
#include "page/stitch_along.hpp"
#include "project/json.hpp"
#include "random_project.hpp"
#include "sheet_check.hpp"
#include "support/sanitized.hpp"
#include "wording/reader.hpp"

namespace evencount::page {
namespace {

constexpr double margin_mm = 8;

project::Project example(const std::string& name) {
  std::ifstream in(std::string(EVENCOUNT_SOURCE_DIR) + "/examples/" + name + ".evencount.json");
  std::ostringstream text;
  text << in.rdbuf();
  return *project::parse_project(text.str());
}

const std::vector<std::string>& all_examples() {
  static const std::vector<std::string> names{"moonwatch", "moonwatch-necklace", "techniques/peyote-bezel",
                                              "techniques/brick", "techniques/right-angle", "techniques/peyote-shaped",
                                              "techniques/loom", "techniques/herringbone", "techniques/square",
                                              "techniques/two-drop-even-count", "techniques/tubular-odd-count",
                                              "techniques/peyote-odd-count-figure-8"};
  return names;
}

TEST(Languages, EveryTextOfABookletCanBeShown) {
  std::size_t number = 0;
  for (const language::Language& language : language::languages())
    for (const std::string& name : all_examples()) {
      if (sanitized && ++number % 6 != 0) continue;
      const auto printed = print_booklet(example(name), {.language = &language});
      EXPECT_TRUE(printed.ok()) << language.tag << ", " << name << ": " << message(printed.problem());
    }
}

/// Whether a page has nothing but a few lines: no figure, few texts. The last one may.
bool is_scrap(const drawing::Drawing& page) {
  std::size_t texts = 0;
  for (const auto& mark : page.marks) texts += std::holds_alternative<drawing::Text>(mark) ? 1 : 0;
  const bool figures = std::any_of(page.regions.begin(), page.regions.end(),
                                   [](const drawing::Region& region) { return region.part == drawing::Part::figure; });
  return !figures && texts < 8;
}

TEST(Languages, NoPageIsLeftForAScrap) {
  for (const language::Language& language : language::languages())
    for (const auto paper : {Paper::a4, Paper::letter})
      for (const bool left_handed : {false, true})
        for (const char* name : {"moonwatch", "moonwatch-necklace"}) {
          if (sanitized && left_handed == (paper == Paper::a4)) continue;
          const auto booklet = make_booklet(example(name), {.paper = paper,
                                                            .signs = drawing::CellSigns::symbols,
                                                            .language = &language,
                                                            .left_handed = left_handed});
          ASSERT_TRUE(booklet.ok()) << language.tag << ", " << name << ": " << message(booklet.problem());
          for (std::size_t i = 0; i + 1 < booklet->pages.size(); ++i)
            EXPECT_FALSE(is_scrap(booklet->pages[i])) << language.tag << ", " << name << ", page " << i + 1;
        }
}

TEST(Languages, TheNamesOfColoursStandInFull) {
  for (const language::Language& language : language::languages()) {
    const auto project = example("moonwatch-necklace");
    const auto booklet = make_booklet(project, {.language = &language});
    ASSERT_TRUE(booklet.ok()) << message(booklet.problem());
    for (const auto& page : booklet->pages)
      for (const auto& mark : page.marks)
        if (const auto* text = std::get_if<drawing::Text>(&mark)) {
          EXPECT_EQ(text->text.find("…"), std::string::npos) << language.tag << ": " << text->text;
        }
  }
}

TEST(Languages, OneBandIsSaidAsOne) {
  const auto booklet = make_booklet(example("techniques/loom"));
  ASSERT_TRUE(booklet.ok()) << message(booklet.problem());
  std::string last;
  for (const auto& mark : booklet->pages.back().marks)
    if (const auto* text = std::get_if<drawing::Text>(&mark)) last += text->text + " ";
  EXPECT_NE(last.find("the chart of the band exactly"), std::string::npos) << last;
}

TEST(Languages, NothingLiesOverSomethingElse) {
  const auto typesetter = Typesetter::open();
  for (const language::Language& language : language::languages())
    for (const bool left_handed : {false, true})
      for (const char* name : {"moonwatch", "moonwatch-necklace"}) {
        if (sanitized && left_handed == (name == std::string("moonwatch"))) continue;
        const auto booklet =
            make_booklet(example(name), {.paper = Paper::letter, .language = &language, .left_handed = left_handed});
        ASSERT_TRUE(booklet.ok()) << language.tag << ", " << name << ": " << message(booklet.problem());
        for (std::size_t i = 0; i < booklet->pages.size(); ++i)
          for (const std::string& fault : faults_of(booklet->pages[i], *typesetter, margin_mm))
            ADD_FAILURE() << language.tag << ", " << name << ", page " << i + 1 << ": " << fault;
      }
}

// What is said in one language is not left over in another: no text of the English catalogue longer than a few words is found.
TEST(Languages, NothingStaysEnglish) {
  for (const language::Language& language : language::languages()) {
    if (language.tag == "en") continue;
    for (const char* name : {"moonwatch", "techniques/peyote-bezel", "techniques/brick"}) {
      project::Project project = example(name);  // without the designer's own words
      project.summary = project.finished_size = project.terms = "";
      project.assembly.clear(), project.tools.clear();
      for (project::Band& band : project.bands) band.note.clear();
      const auto booklet = make_booklet(project, {.language = &language});
      ASSERT_TRUE(booklet.ok());
      std::string all;
      for (const auto& page : booklet->pages)
        for (const auto& mark : page.marks)
          if (const auto* text = std::get_if<drawing::Text>(&mark)) all += text->text + " ";
      for (const char* word : {" the thread", "Row ", "Rows ", "Round ", "string ", "Leave a ", "tails included", "cylinder bead", "Supplies", " is worked"})
        EXPECT_EQ(all.find(word), std::string::npos) << language.tag << ", " << name << ": " << word << " at " << all.substr(all.find(word) == std::string::npos ? 0 : all.find(word), 60);
    }
  }
}

TEST(Languages, TheStitchAlongPageReadsBack) {
  for (const language::Language& language : language::languages()) {
    const auto project = example("moonwatch");
    const auto along = stitch_along(project, language);
    ASSERT_TRUE(along.ok()) << message(along.problem());
    EXPECT_NE(along->html.find(fmt::format("<html lang=\"{}\">", language.tag)), std::string::npos);
    EXPECT_EQ(along->html.find("{{text"), std::string::npos);
    for (const char* hand : {"right", "left"}) {
      const auto read = wording::read_words(words_on_page(along->html, 0, hand), {.legend = project::letters_of(project)});
      ASSERT_TRUE(read.ok()) << language.tag << ": " << message(read.problem());
      EXPECT_EQ(read->front().chart, hand[0] == 'r' ? project.bands[0].chart : chart::mirrored(project.bands[0].chart));
    }
  }
}

TEST(Languages, PicturesAreDescribed) {
  const auto project = example("moonwatch");
  const auto plan = *project::plan_of(project.bands[0]);
  for (const language::Language& language : language::languages()) {
    const std::string chart = alternative_of_chart(project, project.bands[0], plan, language);
    EXPECT_NE(chart.find("New moon"), std::string::npos) << chart;
    EXPECT_NE(chart.find("144"), std::string::npos) << chart;
    EXPECT_EQ(chart.find('{'), std::string::npos) << chart;
    const auto piece = alternative_of_piece(project, language);
    ASSERT_TRUE(piece.ok());
    EXPECT_NE(piece->find("Moonwatch"), std::string::npos) << *piece;
  }
}

}  // namespace
}  // namespace evencount::page
