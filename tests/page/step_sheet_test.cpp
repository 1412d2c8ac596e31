#include "page/step_sheet.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <map>

#include "page/sections.hpp"
#include "page/typesetter.hpp"
#include "random_project.hpp"
#include "sheet_check.hpp"
#include "weave/every_piece.hpp"
#include "weave/moments.hpp"

namespace evencount::page {
namespace {

using weave::testing_support::AnyPiece;

constexpr double margin_mm = 8;

project::Project project_of(const AnyPiece& piece) {
  project::Project project = one_band_project(4, 4, weave::Closure::open, 4, 3);
  project::Band& band = project.bands.front();
  band.name = piece.name;
  band.technique = piece.technique;
  band.closure = piece.making.closure;
  band.begin_at = piece.making.begin_at;
  band.chart = piece.chart;
  return project;
}

/// Some pieces of each technique, the first one that is wide, and one of a long thread.
std::vector<AnyPiece> some_pieces() {
  std::map<std::string, int> taken;
  std::vector<AnyPiece> pieces;
  for (AnyPiece& piece : weave::testing_support::every_piece()) {
    const bool usual = piece.chart.columns() >= 5 && piece.chart.columns() <= 9 && piece.chart.edge() >= 5;
    if ((usual && ++taken[piece.technique] <= 4) ||
        (piece.chart.columns() > 12 && ++taken[piece.technique + " wide"] <= 2))
      pieces.push_back(std::move(piece));
  }
  pieces.push_back({"long", "peyote-even-count", *chart::Chart::make(20, 80), {weave::Closure::zip}});
  return pieces;
}

std::vector<std::string> texts_of(const drawing::Drawing& sheet, bool in_picture) {
  std::vector<std::string> texts;
  for (const auto& mark : sheet.marks)
    if (const auto* text = std::get_if<drawing::Text>(&mark); text && text->in_picture == in_picture)
      texts.push_back(text->text);
  return texts;
}

TEST(StepSheet, EverySheetIsFaultless) {
  const auto typesetter = Typesetter::open();
  ASSERT_TRUE(typesetter.ok());
  for (const AnyPiece& piece : some_pieces()) {
    const project::Project project = project_of(piece);
    const auto sheet = step_sheet(project, project.bands.front());
    ASSERT_TRUE(sheet.ok()) << piece.name << ": " << message(sheet.problem());
    for (const std::string& fault : faults_of(*sheet, *typesetter, margin_mm))
      ADD_FAILURE() << piece.name << ": " << fault;
    for (const std::string& text : texts_of(*sheet, false))
      EXPECT_TRUE(typesetter->check({drawing::TextRole::label, 9}, text).ok()) << text;
  }
}

TEST(StepSheet, HoldsATitleForEachMoment) {
  for (const AnyPiece& piece : some_pieces()) {
    const project::Project project = project_of(piece);
    const auto sheet = step_sheet(project, project.bands.front());
    const auto texts = texts_of(*sheet, false);
    int number = 0;
    for (const weave::Moment& moment : weave::moments(piece.plan())) {
      if (piece.name == "long") break;  // a new thread, too
      EXPECT_NE(std::find(texts.begin(), texts.end(), fmt::format("{}  {}", ++number, moment.title)),
                texts.end());
    }
    EXPECT_FALSE(texts_of(*sheet, true).empty());
  }
}

TEST(StepSheet, ALongBandShowsWhereANewThreadBegins) {
  const AnyPiece piece = some_pieces().back();
  const project::Project project = project_of(piece);
  const auto labels = texts_of(*step_sheet(project, project.bands.front()), true);
  for (const char* label : {"new", "old", "tail", "row 160", "row 1"})
    EXPECT_NE(std::find(labels.begin(), labels.end(), label), labels.end()) << label;
}

std::size_t count_of(const Booklet& booklet, std::string_view text) {
  std::size_t count = 0;
  for (const auto& page : booklet.pages)
    for (const auto& one : texts_of(page, false)) count += one == text ? 1 : 0;
  return count;
}

TEST(StepSheet, ABookletDrawsEachMomentOfATechniqueOnce) {
  project::Project project =
      project_of({"One", "peyote-even-count", *chart::Chart::make(6, 12), {weave::Closure::open}});
  project::Band second = project.bands.front();
  second.name = "Two";
  second.closure = weave::Closure::zip;
  project.bands.push_back(second);
  const auto booklet = make_booklet(project);
  ASSERT_TRUE(booklet.ok()) << message(booklet.problem());
  EXPECT_EQ(count_of(*booklet, "1  The start"), 1u);
  EXPECT_EQ(count_of(*booklet, "1  The zip"), 1u);
  std::string all;
  for (const auto& page : booklet->pages)
    for (const std::string& text : texts_of(page, false)) all += text + " ";
  EXPECT_NE(all.find("How the needle goes is drawn with One; what is new here follows."), std::string::npos);
  const auto without = make_booklet(project, {.steps = false});
  EXPECT_EQ(count_of(*without, "Step by step"), 0u);
}

}  // namespace
}  // namespace evencount::page
