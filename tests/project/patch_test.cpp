#include "project/patch.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <chrono>
#include <cstdlib>
#include <random>

#include "project/json.hpp"
#include "project/outline.hpp"
#include "project/random_project.hpp"

namespace evencount::project {
namespace {

// The same cases in every run.
const int seeded = setenv("RC_PARAMS", "seed=1807 max_success=300", 0);

std::vector<chart::Chart> charts_of(const Project& project) {
  std::vector<chart::Chart> charts;
  for (const Band& band : project.bands) charts.push_back(band.chart);
  return charts;
}

/// A few cells, or a text, or a band that goes.
Project changed(Project project, std::mt19937& random) {
  const auto up_to = [&](int most) { return static_cast<int>(random() % static_cast<unsigned>(most)); };
  if (!project.bands.empty() && !project.legend.empty() && up_to(4) != 0) {
    chart::Chart& chart =
        project.bands[static_cast<std::size_t>(up_to(static_cast<int>(project.bands.size())))].chart;
    for (int i = up_to(20); i >= 0; --i)
      chart.set({up_to(chart.columns()), up_to(chart.edge())},
                static_cast<chart::Bead>(up_to(static_cast<int>(project.legend.size()))));
  }
  switch (up_to(6)) {
    case 0:
      project.title += "!";
      break;
    case 1:
      project.tools.emplace_back("scissors");
      break;
    case 2:
      if (!project.bands.empty())
        project.bands.erase(project.bands.begin() + up_to(static_cast<int>(project.bands.size())));
      break;
    case 3:
      if (!project.bands.empty()) project.bands.push_back(project.bands.front());
      break;
    case 4:
      if (!project.legend.empty()) project.legend.front().name = "other";
      break;
    default:
      break;
  }
  return project;
}

Project nearby(const Project& project, std::uint64_t seed) {
  std::mt19937 random(static_cast<std::mt19937::result_type>(seed));
  return changed(project, random);
}

RC_GTEST_PROP(outline, an_outline_and_the_charts_are_the_project, (std::uint64_t seed)) {
  const Project project = testing::random_project(seed);
  const auto again = with_outline(outline_of(project), charts_of(project));
  if (!again.ok()) RC_FAIL(message(again.problem()));
  RC_ASSERT(*again == project);
}

void check_patch(const Project& before, const Project& after) {
  const Patch patch = diff(before, after);
  const auto there = apply(before, patch);
  if (!there.ok()) RC_FAIL(message(there.problem()));
  RC_ASSERT(*there == after);
  const auto back = apply(after, inverse(patch));
  if (!back.ok()) RC_FAIL(message(back.problem()));
  RC_ASSERT(*back == before);
  RC_ASSERT(inverse(inverse(patch)) == patch);
  const auto read = parse_patch(to_json(patch));
  if (!read.ok()) RC_FAIL(message(read.problem()));
  RC_ASSERT(*read == patch);
  RC_ASSERT(patch.empty() == (before == after));
  if (!patch.empty()) {
    const auto refused = apply(after, patch);
    RC_ASSERT(!refused.ok());
    RC_ASSERT(refused.problem().code == ProblemCode::out_of_date);
  }
}

RC_GTEST_PROP(patch, leads_from_any_project_to_any_other_and_back, (std::uint64_t one, std::uint64_t other)) {
  check_patch(testing::random_project(one), testing::random_project(other));
}

RC_GTEST_PROP(patch, leads_to_a_changed_project_and_back, (std::uint64_t seed, std::uint64_t change)) {
  const Project before = testing::random_project(seed);
  check_patch(before, nearby(before, change));
}

RC_GTEST_PROP(patch, of_a_project_with_itself_is_empty, (std::uint64_t seed)) {
  const Project project = testing::random_project(seed);
  RC_ASSERT(diff(project, project).empty());
}

RC_GTEST_PROP(patch, independent_ones_can_be_applied_in_either_order,
              (std::uint64_t seed, std::uint64_t one, std::uint64_t other)) {
  const Project project = testing::random_project(seed);
  const Patch p = diff(project, nearby(project, one)), q = diff(project, nearby(project, other));
  RC_ASSERT(independent(p, q) == independent(q, p));
  RC_ASSERT(p.empty() || !independent(p, p));
  if (!independent(p, q)) return;
  const auto after_p = apply(project, p), after_q = apply(project, q);
  const auto pq = apply(*after_p, q), qp = apply(*after_q, p);
  RC_ASSERT(pq.ok() && qp.ok());
  RC_ASSERT(*pq == *qp);
}

Project large_project() {
  Project project =
      *parse_project(R"({"format": 1, "title": "Large", "beads": [{"id": "cylinder-11"}], "legend": [
    {"letter": "A", "name": "a", "colour": "#000000", "bead": "cylinder-11"}, {"letter": "B", "name": "b", "colour": "#ffffff", "bead": "cylinder-11"}],
    "bands": []})");
  Band band;
  band.name = "Band", band.technique = "peyote-even-count", band.bead = "cylinder-11";
  band.chart = *chart::Chart::make(200, 300, 0);
  project.bands.push_back(band);
  return project;
}

TEST(patch, a_stroke_is_a_few_runs) {
  const Project before = large_project();
  Project after = before;
  for (int column = 10; column < 20; ++column) after.bands[0].chart.set({column, 7}, 1);
  after.bands[0].chart.set({3, 9}, 1);
  const Patch patch = diff(before, after);
  EXPECT_EQ(patch.cells, (std::vector<BandCells>{{0, {{7 * 200 + 10, 10, 0, 1}, {9 * 200 + 3, 1, 0, 1}}}}));
  EXPECT_EQ(to_json(patch), R"({"cells":[{"band":0,"runs":[1410,10,0,1,1803,1,0,1]}]})");
}

TEST(patch, a_text_is_one_value) {
  const Project before = large_project();
  Project after = before;
  after.bands[0].name = "Moon/half~";
  after.subtitle = "new";
  EXPECT_EQ(
      to_json(diff(before, after)),
      R"({"values":[{"at":"/bands/0/name","before":"Band","after":"Moon/half~"},{"at":"/subtitle","after":"new"}]})");
}

TEST(patch, a_band_of_another_size_is_kept_whole) {
  const Project before = large_project();
  Project after = before;
  after.bands[0].chart = *chart::Chart::make(2, 2, 1);
  after.bands[0].chart.set({1, 1}, chart::no_bead);
  const std::string text = to_json(diff(before, after));
  EXPECT_NE(text.find(R"("cells":[60000,0])"), std::string::npos) << text;
  EXPECT_NE(text.find(R"("cells":[3,1,1,-1])"), std::string::npos) << text;
}

TEST(patch, bad_patches_are_refused) {
  const Project project = large_project();
  for (const char* text :
       {"[]", "{", R"({"cells":[{"band":0}]})", R"({"cells":[{"band":0,"runs":[1,2,3]}]})",
        R"({"cells":[{"band":0,"runs":[5,1,0,1,5,1,0,1]}]})", R"({"cells":[{"band":0,"runs":[5,0,0,1]}]})",
        R"({"cells":[{"band":0,"runs":[5,1,0,5000]}]})", R"({"bands":[{"at":0,"of":1,"before":[]}]})",
        R"({"bands":[{"at":0,"of":1,"before":[],"after":[{"columns":2,"edge":2,"cells":[3,1]}]}]})",
        R"({"bands":[{"at":0,"of":1,"before":[],"after":[{"columns":2,"edge":2,"cells":[5,1]}]}]})",
        R"({"values":[{"before":1}]})"})
    EXPECT_FALSE(parse_patch(text).ok()) << text;
  for (const char* text :
       {R"({"cells":[{"band":1,"runs":[5,1,0,1]}]})", R"({"cells":[{"band":0,"runs":[59999,2,0,1]}]})",
        R"({"cells":[{"band":0,"runs":[5,1,0,2]}]})", R"({"cells":[{"band":0,"runs":[5,1,1,0]}]})",
        R"({"values":[{"at":"","before":1,"after":2}]})", R"({"values":[{"at":"/nowhere/x","after":2}]})",
        R"({"values":[{"at":"/title","before":"Other","after":"x"}]})",
        R"({"values":[{"at":"/title","before":"Large","after":3}]})",
        R"({"values":[{"at":"/title","before":"Large"}]})",
        R"({"values":[{"at":"/bands/7/name","before":"Band","after":"x"}]})"}) {
    const auto patch = parse_patch(text);
    ASSERT_TRUE(patch.ok()) << text << message(patch.problem());
    EXPECT_FALSE(apply(project, *patch).ok()) << text;
  }
}

TEST(patch, costs_little) {
  const Project before = large_project();
  Project after = before;
  after.bands[0].chart.set({3, 9}, 1);
  constexpr int times = 100;
  const auto begin = std::chrono::steady_clock::now();
  std::size_t runs = 0;
  for (int i = 0; i < times; ++i) runs += diff(before, after).cells.size();
  const auto end = std::chrono::steady_clock::now();
  EXPECT_EQ(runs, std::size_t{times});
  fmt::print("diff of 60,000 cells: {:.3f} ms\n",
             std::chrono::duration<double, std::milli>(end - begin).count() / times);
}

}  // namespace
}  // namespace evencount::project
