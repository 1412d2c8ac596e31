#include "page/labels.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "page/flow.hpp"
#include "page/kit_papers.hpp"
#include "page/pdf_text.hpp"
#include "project/supply_list_kits.hpp"
#include "random_project.hpp"
#include "sheet_check.hpp"
#include "support/sanitized.hpp"

namespace evencount::page {
namespace {

TEST(Labels, StandOnTheirSheet) {
  for (const LabelSheet& sheet : label_sheets()) {
    const PaperSize paper = size_of(sheet.paper);
    EXPECT_LE(sheet.left_mm + (sheet.columns - 1) * sheet.across_mm + sheet.width_mm, paper.width_mm + 0.01) << sheet.name;
    EXPECT_LE(sheet.top_mm + (sheet.rows - 1) * sheet.down_mm + sheet.height_mm, paper.height_mm + 0.01) << sheet.name;
    EXPECT_GE(sheet.across_mm, sheet.width_mm) << sheet.name;
    EXPECT_GE(sheet.down_mm, sheet.height_mm) << sheet.name;
    EXPECT_EQ(find_label_sheet(sheet.name)->name, sheet.name);
  }
  EXPECT_EQ(find_label_sheet("a4").problem().code, ProblemCode::unknown_name);
}

std::size_t times_in(const std::string& text, const std::string& part) {
  std::size_t times = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++times;
  return times;
}

TEST(Labels, ThereIsOneABagAndKit) {
  auto project = random_project(4);
  project.title = "Unmistakable";
  const auto kit = project::kit_of(project);
  ASSERT_TRUE(kit.ok());
  for (const LabelSheet& sheet : label_sheets()) {
    if (sheet.height_mm < 30) continue;  // smaller ones have no room for the title
    const auto pdf = bag_labels(project, sheet, 2, {.kits = 3});
    ASSERT_TRUE(pdf.ok()) << message(pdf.problem());
    EXPECT_EQ(times_in(*pdf_text(*pdf), "Unmistakable"), 3 * kit->bags.size()) << sheet.name;
  }
}

TEST(Labels, NothingStandsOverTheEdgeOfItsLabel) {
  const auto typesetter = Typesetter::open();
  for (std::uint32_t seed = 1; seed <= 12; ++seed) {
    const language::Language& language = language::languages()[seed % language::languages().size()];
    for (const LabelSheet& sheet : label_sheets()) {
      const auto pages = label_pages(random_project(seed), sheet, 0, {.kits = 2, .language = &language}, *typesetter);
      ASSERT_TRUE(pages.ok()) << message(pages.problem());
      for (const drawing::Drawing& page : *pages)
        for (const std::string& fault : faults_of(page, *typesetter, 0)) ADD_FAILURE() << sheet.name << ", seed " << seed << ": " << fault;
      for (const drawing::Drawing& page : *pages)
        for (const drawing::Mark& mark : page.marks) {
          const auto* text = std::get_if<drawing::Text>(&mark);
          if (!text) continue;
          const InkBox ink = typesetter->ink_box(*text);
          const int column = static_cast<int>((ink.left_mm - sheet.left_mm) / sheet.across_mm);
          const int row = static_cast<int>((ink.top_mm - sheet.top_mm) / sheet.down_mm);
          const double left = sheet.left_mm + column * sheet.across_mm, top = sheet.top_mm + row * sheet.down_mm;
          EXPECT_GE(ink.left_mm, left + 1) << sheet.name << ": " << text->text;
          EXPECT_GE(ink.top_mm, top + 1) << sheet.name << ": " << text->text;
          EXPECT_LE(ink.right_mm, left + sheet.width_mm - 1) << sheet.name << ": " << text->text;
          EXPECT_LE(ink.bottom_mm, top + sheet.height_mm - 1) << sheet.name << ": " << text->text;
        }
    }
  }
}

TEST(Labels, ThePickListIsForAllKits) {
  const auto project = random_project(6);
  const auto kit = project::kit_of(project);
  const auto& english = language::english();
  const std::string list = *pdf_text(*pick_list(project, {.kits = 7})), slip = *pdf_text(*packing_slip(project, {}));
  for (const project::KitBag& bag : kit->bags) {
    EXPECT_NE(list.find(fmt::format("{} {} ", english.count(bag.packed), english.count(7 * bag.packed))), std::string::npos)
        << bag.letter << list;
    EXPECT_NE(slip.find(fmt::format("{} {} ", english.count(bag.count), english.count(bag.packed))), std::string::npos) << slip;
  }
}

TEST(Labels, EveryLanguageAndPaper) {
  const auto project = random_project(9);
  for (const language::Language& language : language::languages())
    for (const Paper paper : {Paper::a4, Paper::letter}) {
      if (sanitized && paper == Paper::letter) continue;
      const KitOptions options{.kits = 2, .paper = paper, .language = &language, .price = "48.00 EUR"};
      EXPECT_TRUE(pick_list(project, options).ok()) << language.tag;
      EXPECT_TRUE(packing_slip(project, options).ok()) << language.tag;
      const auto cards = price_cards(project, options);
      ASSERT_TRUE(cards.ok()) << language.tag << message(cards.problem());
      EXPECT_EQ(times_in(*pdf_text(*cards), "48.00 EUR"), 8u);
    }
}

TEST(Labels, RefusesWhatIsBeyondTheSheet) {
  const auto project = random_project(4);
  const auto sheet = *find_label_sheet("a4-63.5x38.1");
  EXPECT_EQ(bag_labels(project, sheet, 21, {}).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(bag_labels(project, sheet, 0, {.kits = 0}).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(*bag_labels(project, sheet, 0, {}), *bag_labels(project, sheet, 0, {}));
}

}  // namespace
}  // namespace evencount::page
