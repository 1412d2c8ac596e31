#include "page/booklet.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sstream>

#include "drawing/symbols.hpp"
#include "page/sections.hpp"
#include "page/word_rows.hpp"
#include "project/json.hpp"
#include "random_project.hpp"
#include "wording/words.hpp"

namespace evencount::page {
namespace {

std::vector<std::string> texts_of(const Booklet& booklet) {
  std::vector<std::string> texts;
  for (const auto& page : booklet.pages)
    for (const auto& mark : page.marks)
      if (const auto* text = std::get_if<drawing::Text>(&mark)) texts.push_back(text->text);
  return texts;
}

TEST(Booklet, PaperHasItsNames) {
  EXPECT_EQ(*parse_paper("a4"), Paper::a4);
  EXPECT_EQ(*parse_paper("Letter"), Paper::letter);
  EXPECT_EQ(parse_paper("foolscap").problem().code, ProblemCode::unknown_name);
}

TEST(Booklet, HasOnlySoManyCells) {
  auto project = one_band_project(1'000, 1'000, weave::Closure::open, 3, 1);
  auto band = project.bands.front();
  band.name = "One bead more";
  band.chart = *chart::Chart::make(2, 1, 0);
  project.bands.push_back(band);
  const auto refused = print_booklet(project);
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(refused.problem().where, "booklet");
  EXPECT_EQ(make_booklet(project).problem().where, "booklet");
  if (const char* longer = std::getenv("EVENCOUNT_LONG"); !longer || std::string(longer) != "1") return;
  project.bands.pop_back();
  EXPECT_TRUE(make_booklet(project).ok()) << "at the limit it is laid out";
}

TEST(Booklet, PagesHaveThePapersSize) {
  const auto project = random_project(3);
  const auto a4 = make_booklet(project, {.paper = Paper::a4});
  for (const auto& page : a4->pages) {
    EXPECT_DOUBLE_EQ(page.width.mm(), 210);
    EXPECT_DOUBLE_EQ(page.height.mm(), 297);
  }
  const auto letter = make_booklet(project, {.paper = Paper::letter});
  for (const auto& page : letter->pages) {
    EXPECT_DOUBLE_EQ(page.width.inches(), 8.5);
    EXPECT_DOUBLE_EQ(page.height.inches(), 11);
  }
}

TEST(Booklet, OnlyADecreaseIsExplained) {
  const auto help_of = [](const std::string& file) {
    std::ifstream in(std::string(EVENCOUNT_SOURCE_DIR) + "/examples/techniques/" + file + ".evencount.json");
    std::ostringstream text;
    text << in.rdbuf();
    std::string all;
    for (const std::string& line : texts_of(*make_booklet(*project::parse_project(text.str())))) all += line + " ";
    return all.find("At dec pick up no bead") != std::string::npos;
  };
  EXPECT_TRUE(help_of("peyote-bezel"));
  EXPECT_FALSE(help_of("tubular-even-count"));
  EXPECT_FALSE(help_of("peyote-shaped"));
}

TEST(Booklet, OutlineLeadsToEachBand) {
  const auto project = random_project(11);
  const auto booklet = make_booklet(project);
  ASSERT_TRUE(booklet.ok());
  const auto& outline = booklet->info.outline;
  const auto listed = std::find_if(outline.begin(), outline.end(), [&](const OutlineEntry& entry) { return entry.title == project.bands[0].name; });
  ASSERT_GE(outline.end() - listed, static_cast<std::ptrdiff_t>(project.bands.size() + 1));
  for (std::size_t i = 0; i < project.bands.size(); ++i) {
    const OutlineEntry& entry = listed[static_cast<std::ptrdiff_t>(i)];
    EXPECT_EQ(entry.title, project.bands[i].name);
    ASSERT_LT(entry.page, booklet->pages.size());
    const auto& first = std::get<drawing::Text>(booklet->pages[entry.page].marks.front());
    EXPECT_TRUE(project.bands[i].name.starts_with(first.text)) << first.text;
  }
}

TEST(Booklet, EveryPageIsNumbered) {
  const auto booklet = make_booklet(random_project(5));
  ASSERT_TRUE(booklet.ok());
  for (std::size_t i = 0; i < booklet->pages.size(); ++i) {
    const auto& last = std::get<drawing::Text>(booklet->pages[i].marks.back());
    EXPECT_TRUE(last.text.ends_with(" · " + std::to_string(i + 1))) << last.text;
  }
}

void expect_words_of_the_writer(const project::Project& project) {
  const auto booklet = make_booklet(project);
  ASSERT_TRUE(booklet.ok()) << message(booklet.problem());
  std::string all;
  for (const std::string& text : texts_of(*booklet)) all += text + " ";
  for (const auto& band : project.bands) {
    const auto words = wording::write_words(*project::plan_of(band), project::letters_of(project), band.name);
    std::size_t at = all.find(words.heading);
    ASSERT_NE(at, std::string::npos);
    for (const auto& line : words.lines) {
      at = all.find(line.label + ": " + line.beads + " ", at);
      ASSERT_NE(at, std::string::npos) << line.label;
    }
  }
}

TEST(Booklet, PrintsTheWordsOfTheWriter) {
  expect_words_of_the_writer(random_project(8));
}

TEST(Booklet, ABrokenRowKeepsItsCommas) {
  expect_words_of_the_writer(one_band_project(80, 10, weave::Closure::open, 9, 1));
}

TEST(Booklet, ErrorsOfTheProofAreListed) {
  project::Project project = random_project(2);
  project.bands[0].chart.set({0, 0}, static_cast<chart::Bead>(project.legend.size() + 5));
  const auto booklet = make_booklet(project);
  ASSERT_FALSE(booklet.ok());
  EXPECT_EQ(booklet.problem().code, ProblemCode::proof_failed);
  EXPECT_FALSE(booklet.problem().found.empty());
}

// A bead beyond the symbols shows its letter in the chart, and so does what explains the chart.
TEST(Booklet, ASwatchShowsWhatStandsInTheChart) {
  const project::Project project = one_band_project(10, 40, weave::Closure::open, 40, 3);
  const auto booklet = make_booklet(project, {.signs = drawing::CellSigns::symbols});
  ASSERT_TRUE(booklet.ok()) << message(booklet.problem());
  const auto in_swatches = [&](const std::string& letter) {
    std::size_t count = 0;
    for (const drawing::Drawing& page : booklet->pages)
      for (std::size_t i = 1; i < page.marks.size(); ++i) {
        const auto* text = std::get_if<drawing::Text>(&page.marks[i]);
        const auto* box = std::get_if<drawing::Rectangle>(&page.marks[i - 1]);
        count += text && box && box->radius_mm > 0 && text->in_picture && text->text == letter;
      }
    return count;
  };
  EXPECT_EQ(in_swatches(project.legend[0].letter), 0u);
  EXPECT_EQ(in_swatches(project.legend[drawing::symbol_count].letter), 2u);  // among the supplies, and above the band's chart
}

TEST(Booklet, ACoverIsShownWholeAndInItsShape) {
  const project::Project project = random_project(2);
  for (const auto& [width, height] : {std::pair{40, 30}, std::pair{30, 40}, std::pair{4, 90}, std::pair{90, 4}}) {
    const auto pixels = std::make_shared<const drawing::Pixels>(
        drawing::Pixels{width, height, std::vector<std::uint8_t>(static_cast<std::size_t>(3 * width * height), 128)});
    const auto booklet = make_booklet(project, {.cover = pixels});
    ASSERT_TRUE(booklet.ok()) << message(booklet.problem());
    const drawing::Drawing& page = booklet->pages.front();
    const auto found = std::find_if(page.marks.begin(), page.marks.end(),
                                    [](const drawing::Mark& mark) { return std::holds_alternative<drawing::Picture>(mark); });
    ASSERT_NE(found, page.marks.end());
    const auto& picture = std::get<drawing::Picture>(*found);
    EXPECT_EQ(picture.pixels, pixels);
    EXPECT_NEAR(picture.width_mm / picture.height_mm, static_cast<double>(width) / height, 1e-9);
    constexpr double margin_mm = 15;
    EXPECT_GE(picture.corner.x_mm, margin_mm);
    EXPECT_GE(picture.corner.y_mm, margin_mm);
    EXPECT_LE(picture.corner.x_mm + picture.width_mm, page.width.mm() - margin_mm);
    EXPECT_LE(picture.corner.y_mm + picture.height_mm, page.height.mm() - margin_mm);
    EXPECT_GT(std::max(picture.width_mm, picture.height_mm), 60) << "as large as there is room";
  }
}

TEST(Booklet, ARowIsNotLeftBehindByItsBeads) {
  const auto typesetter = Typesetter::open();
  Flow flow(*typesetter, language::english(), Paper::a4, "Moonwatch");
  const std::vector<wording::WordLine> lines{{.label = "Row 3 (R)", .beads = "(2)A, (1)B", .count = 3}};
  const WordRows rows(*typesetter, language::english(), lines, 100);
  flow.move_to(flow.bottom() - 2);
  const std::size_t before = flow.sheet().marks.size();
  rows.put(flow, 0, 1, 1, flow.left(), flow.width());
  EXPECT_EQ(flow.page(), 1u);
  EXPECT_EQ(flow.sheet(0).marks.size(), before);
}

// Three dozen names would push the rows off the page that shows their chart.
TEST(Booklet, AKeyOfManyColoursLeavesTheRowsRoomBesideTheChart) {
  const project::Project project = one_band_project(8, 60, weave::Closure::open, 40, 5);
  const auto booklet = make_booklet(project, {});
  ASSERT_TRUE(booklet.ok()) << message(booklet.problem());
  const auto texts_on = [](const drawing::Drawing& page) {
    std::vector<std::string> texts;
    for (const drawing::Mark& mark : page.marks)
      if (const auto* text = std::get_if<drawing::Text>(&mark); text && !text->in_picture) texts.push_back(text->text);
    return texts;
  };
  const auto begins = [](std::string_view with) { return [with](const std::string& text) { return text.starts_with(with); }; };
  std::size_t words_begin = 0;
  for (const drawing::Drawing& page : booklet->pages) {
    const auto texts = texts_on(page);
    if (std::none_of(texts.begin(), texts.end(), begins("Word chart:"))) continue;
    ++words_begin;
    EXPECT_GE(std::count_if(texts.begin(), texts.end(), begins("Row ")), 15);
    EXPECT_TRUE(std::any_of(texts.begin(), texts.end(), begins("Band 1 of 1"))) << "not the page with the band's heading";
  }
  EXPECT_EQ(words_begin, 1u);
}

TEST(Booklet, AMissingGlyphStopsIt) {
  project::Project project = random_project(2);
  project.summary = "gems \U0001F48E";
  const auto booklet = make_booklet(project);
  ASSERT_FALSE(booklet.ok());
  EXPECT_EQ(booklet.problem().code, ProblemCode::proof_failed);
  EXPECT_NE(message(booklet.problem()).find("U+1F48E"), std::string::npos);
}

TEST(Booklet, SameProjectSameBytes) {
  const auto project = random_project(4);
  EXPECT_EQ(*booklet_pdf(project), *booklet_pdf(project));
  EXPECT_NE(*booklet_pdf(project, {.created_unix = 1}), *booklet_pdf(project, {.created_unix = 2}));
}

}  // namespace
}  // namespace evencount::page
