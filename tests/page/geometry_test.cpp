/// Pages looked over by measure: nothing clipped, nothing over something else.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "page/left_hand.hpp"
#include "page/sections.hpp"
#include "random_project.hpp"
#include "sheet_check.hpp"
#include "support/sanitized.hpp"
#include "weave/technique.hpp"

namespace evencount::page {
namespace {

constexpr double margin_mm = 8;

void expect_faultless(const project::Project& project, const BookletOptions& options, const std::string& which) {
  const auto booklet = make_booklet(project, options);
  ASSERT_TRUE(booklet.ok()) << which << ": " << message(booklet.problem());
  const auto typesetter = Typesetter::open();
  ASSERT_TRUE(typesetter.ok());
  for (std::size_t i = 0; i < booklet->pages.size(); ++i) {
    EXPECT_GE(booklet->pages[i].marks.size(), 3u) << which << ", page " << i + 1 << " is all but empty";
    for (const std::string& fault : faults_of(booklet->pages[i], *typesetter, margin_mm))
      ADD_FAILURE() << which << ", page " << i + 1 << ": " << fault;
  }
}

TEST(Geometry, TheCheckSeesFaults) {
  const auto typesetter = Typesetter::open();
  using drawing::Text;
  drawing::Drawing page{millimetres(100), millimetres(100), {}};
  page.marks = {Text{.at = {20, 20}, .size_pt = 10, .text = "first"},
                Text{.at = {50, 50}, .size_pt = 9, .text = "fine"}};
  EXPECT_TRUE(faults_of(page, *typesetter, 10).empty());
  page.marks.push_back(Text{.at = {22, 21}, .size_pt = 10, .text = "over it"});
  EXPECT_EQ(faults_of(page, *typesetter, 10).size(), 1u);
  page.marks.push_back(Text{.at = {85, 60}, .size_pt = 10, .text = "out of the page"});
  EXPECT_EQ(faults_of(page, *typesetter, 10).size(), 2u);
  page.marks.push_back(Text{.at = {20, 80}, .size_pt = 5, .text = "tiny"});
  EXPECT_EQ(faults_of(page, *typesetter, 10).size(), 3u);
  page.marks.push_back(drawing::Rectangle{.corner = {40, 40}, .width_mm = 3.4, .height_mm = 3, .stroke = drawing::Stroke{}});
  EXPECT_EQ(faults_of(page, *typesetter, 10).size(), 4u);
  page.marks.push_back(drawing::Circle{.centre = {50, 95}, .radius_mm = 2, .fill = colour::Rgb{}});
  EXPECT_EQ(faults_of(page, *typesetter, 10).size(), 5u);
}

/// 300 projects, a few at a time so that they are looked at side by side; fewer of them where a sanitizer makes each slow.
constexpr std::uint32_t batches = 12, batch_size = 25, every = sanitized ? 3 : 1;

bool both_hands(const project::Project& project) {
  return std::all_of(project.bands.begin(), project.bands.end(),
                     [](const project::Band& band) { return seen_plan(band, true).ok(); });
}

class RandomBooklets : public testing::TestWithParam<std::uint32_t> {};

TEST_P(RandomBooklets, AreFaultless) {
  for (std::uint32_t seed = GetParam() * batch_size + 1; seed <= (GetParam() + 1) * batch_size; seed += every) {
    const project::Project project = varied_project(seed);
    const language::Language& language = language::languages()[seed % language::languages().size()];
    expect_faultless(project,
                     {.paper = seed % 2 ? Paper::a4 : Paper::letter,
                      .signs = seed % 7 == 0 ? drawing::CellSigns::symbols : drawing::CellSigns::letters,
                      .language = &language,
                      .left_handed = seed / 2 % 2 == 0 && both_hands(project)},
                     fmt::format("seed {}, {}", seed, language.tag));
  }
}

INSTANTIATE_TEST_SUITE_P(Geometry, RandomBooklets, testing::Range(0u, batches));

/// What chance makes is all that a booklet can hold.
TEST(Geometry, RandomProjectsAreOfEveryKind) {
  constexpr std::uint32_t step = 3;
  int left_handed = 0, with_faces = 0, strung = 0;
  std::set<std::string> techniques;
  for (std::uint32_t seed = 1; seed <= batches * batch_size; seed += step) {
    const project::Project project = varied_project(seed);
    left_handed += both_hands(project) ? 1 : 0;
    with_faces += has_faces(project, project.bands.front()) ? 1 : 0;
    strung += project.strand ? 1 : 0;
    for (const project::Band& band : project.bands) techniques.insert(band.technique);
  }
  constexpr int tenth = batches * batch_size / step / 10;
  EXPECT_GE(left_handed, tenth);
  EXPECT_GE(with_faces, tenth);
  EXPECT_GE(strung, tenth);
  EXPECT_EQ(techniques.size(), weave::techniques().size());
}

TEST(Geometry, ExtremeBandsAreFaultless) {
  using weave::Closure;
  expect_faultless(one_band_project(2, 1, Closure::open, 1, 1), {.paper = Paper::a4}, "two beads");
  expect_faultless(one_band_project(300, 30, Closure::open, 40, 2), {.paper = Paper::letter}, "very wide");
  expect_faultless(one_band_project(4, 900, Closure::open, 5, 3), {.paper = Paper::a4}, "very long");
  expect_faultless(project_with_endless_rows(), {.paper = Paper::letter}, "rows longer than a page");
  expect_faultless(one_band_project(61, 61, Closure::open, 26, 4), {.paper = Paper::a4}, "square");
}

TEST(Geometry, LongTextsFlowOn) {
  project::Project project = one_band_project(6, 24, weave::Closure::zip, 4, 5);
  std::string text;
  for (int i = 0; i < 900; ++i) text += "water and more ";
  project.summary = project.finished_size = project.terms = project.bands[0].note = text;
  project.title = text.substr(0, 600);
  project.subtitle = text.substr(0, 900);
  project.designer = std::string(300, 'w');
  project.legend[0].name = text.substr(0, 300);
  project.assembly = {text, "short", text};
  project.findings = {{.name = text.substr(0, 2000)}};
  expect_faultless(project, {}, "long texts");
}

}  // namespace
}  // namespace evencount::page
