#include "project/supply_list.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "project/case_file.hpp"
#include "project/json.hpp"
#include "project/random_project.hpp"
#include "weave/technique.hpp"

namespace evencount::project {
namespace {

Project small_project() {
  return *parse_project(testing::read_file(EVENCOUNT_SOURCE_DIR "/tests/project/data/small.evencount.json"));
}

TEST(supply_list, counts_grams_packs_forms_thread_and_tools_of_three_kits) {
  const auto list = supply_list(small_project(), 3);
  ASSERT_TRUE(list.ok()) << message(list.problem());
  // 24 cells, 16 of A and 8 of B; two copies; three kits.
  ASSERT_EQ(list->beads.beads.size(), 2u);
  EXPECT_EQ(list->beads.beads[0].letter, "A");
  EXPECT_EQ(list->beads.beads[0].count, 3 * 2 * 16);
  EXPECT_EQ(list->beads.beads[0].size, "11/0 cylinder bead");
  EXPECT_EQ(list->beads.beads[0].packs, 1);
  EXPECT_EQ(list->beads.beads[0].cost, (Money{320, "EUR"}));
  EXPECT_EQ(list->beads.beads[1].count, 3 * 2 * 8);
  EXPECT_EQ(list->beads.total, std::nullopt);  // B has no pack
  EXPECT_EQ(list->forms, (std::vector<CountedSupply>{{"carrier bead", 6, ""}}));
  // What the project lists itself, then what its strand takes.
  ASSERT_EQ(list->findings.size(), 3u);
  EXPECT_EQ(list->findings[0], (CountedSupply{"elastic cord", 7.5, "m"}));
  EXPECT_EQ(list->findings[1].name, "8/0 round bead");
  EXPECT_EQ(list->findings[2].name, "elastic cord, 0.8 mm");
  EXPECT_EQ(list->tools, (std::vector<std::string>{"scissors", "beading needle, size #12"}));
  const auto threads = band_threads(small_project());
  ASSERT_TRUE(threads.ok());
  ASSERT_EQ(threads->size(), 1u);
  EXPECT_EQ(threads->front().band, "Stripe");
  EXPECT_NEAR(list->thread.mm(), 6 * threads->front().use.cut.mm(), 1e-9);
}

TEST(supply_list, the_needle_is_for_the_smallest_hole_that_is_used) {
  Project project = small_project();
  project.beads.push_back(*bead::find_size("round-15"));
  project.legend.push_back(project.legend.back());
  project.legend.back().letter = "C";
  project.legend.back().bead = "round-15";
  EXPECT_EQ(supply_list(project)->tools.back(), "beading needle, size #12");
  project.bands[0].chart.set({0, 0}, 2);
  EXPECT_EQ(supply_list(project)->tools.back(), "beading needle, size #13");
}

TEST(supply_list, a_project_without_bands_needs_nothing) {
  Project project = small_project();
  project.bands.clear();
  const auto list = supply_list(project, 5);
  ASSERT_TRUE(list.ok());
  EXPECT_TRUE(list->beads.beads.empty());
  EXPECT_TRUE(list->forms.empty());
  EXPECT_EQ(list->thread, Length{});
  EXPECT_EQ(list->tools, project.tools);
}

TEST(supply_list, a_form_without_a_name_is_described) {
  Project project = small_project();
  project.forms[0].name.clear();
  EXPECT_EQ(supply_list(project)->forms[0].name, form::describe(project.forms[0].form));
}

TEST(supply_list, what_can_not_be_counted_is_a_problem_with_its_place) {
  const auto problem_of = [](auto change) {
    Project project = small_project();
    change(project);
    const auto list = supply_list(project);
    EXPECT_FALSE(list.ok());
    return list.ok() ? Problem{} : list.problem();
  };
  const auto is = [](const Problem& problem, ProblemCode code, std::string_view where) {
    EXPECT_EQ(problem.code, code) << message(problem);
    EXPECT_TRUE(problem.where.starts_with(where)) << message(problem);
  };
  is(problem_of([](Project& p) {
       p.bands[0].chart.set({0, 0}, 7);
     }),
     ProblemCode::unknown_name, "band Stripe");
  is(problem_of([](Project& p) { p.bands[0].bead = "none"; }), ProblemCode::unknown_name, "band Stripe");
  is(problem_of([](Project& p) { p.bands[0].form = "none"; }), ProblemCode::unknown_name, "band Stripe");
  is(problem_of([](Project& p) { p.legend[1].bead = "none"; }), ProblemCode::unknown_name, "legend B");
  is(problem_of([](Project& p) { p.bands[0].chart = *chart::Chart::make(3, 4); }), ProblemCode::wrong_size,
     "band Stripe");
  is(problem_of([](Project& p) { p.thread_habits.working_length = millimetres(1); }),
     ProblemCode::out_of_range, "band Stripe");
  EXPECT_EQ(supply_list(small_project(), 0).problem().where, "kits");
}

RC_GTEST_PROP(supply_list_properties, every_bead_of_every_copy_is_counted_once, (std::uint64_t seed)) {
  Project project = testing::random_project(seed);
  std::int64_t cells = 0;
  for (Band& band : project.bands) {
    // A size and a technique that agree, with every cell filled.
    auto chart = *chart::Chart::make(2 + band.chart.columns() % 9, 3 + band.chart.edge() % 20);
    for (int step = 0; step < chart.edge(); ++step)
      for (int column = 0; column < chart.columns() && !project.legend.empty(); ++column)
        chart.set({column, step},
                  static_cast<chart::Bead>((column * 31u + step * 17u + seed % 7) % project.legend.size()));
    band.chart = chart;
    band.technique = weave::flat_peyote_for(chart.columns()).id;
    if (band.closure != weave::Closure::open) band.closure = weave::Closure::zip;
    cells += std::int64_t{band.copies} * chart.columns() * chart.edge();
  }
  if (project.legend.empty()) project.bands.clear();
  for (bead::Size& size : project.beads) size.beads_per_gram = 195;
  for (LegendEntry& entry : project.legend) entry.pack.reset();
  RC_PRE(!project.bands.empty());
  project.thread_habits = {millimetres(100), millimetres(1'000'000)};
  project.strand.reset();  // a random one can't be read
  const int kits = *rc::gen::inRange(1, 50);
  const auto list = supply_list(project, kits);
  if (!list.ok()) RC_FAIL(message(list.problem()));
  std::int64_t counted = 0;
  for (const auto& bead : list->beads.beads) counted += bead.count;
  RC_ASSERT(counted == kits * cells);
}

}  // namespace
}  // namespace evencount::project
