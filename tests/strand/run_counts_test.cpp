#include "strand/run_counts.hpp"

#include <gtest/gtest.h>

#include "oracle/run_counts_oracle.hpp"
#include "random_runs.hpp"

namespace evencount::strand {
namespace {

/// Counts and what is said of them agree.
void expect_sound(const RunProblem& problem, const RunCounts& answer) {
  const auto rank = oracle::rank_of(problem, answer.counts);
  ASSERT_TRUE(rank);  // (2)
  EXPECT_EQ(answer.length_um, rank->length_um);
  EXPECT_EQ(answer.error_um, rank->length_um - problem.room_um);
  EXPECT_EQ(answer.spread, rank->spread);
  EXPECT_EQ(answer.beads, rank->beads);
  for (const auto& counts : answer.counts) {  // (3)
    if (counts.empty()) continue;
    const auto [low, high] = std::minmax_element(counts.begin(), counts.end());
    EXPECT_LE(*high - *low, 1);
  }
}

void expect_rank(const RunProblem& problem, const std::optional<RunCounts>& answer,
                 const std::optional<oracle::Rank>& rank) {
  ASSERT_EQ(answer.has_value(), rank.has_value());
  if (!answer) return;
  expect_sound(problem, *answer);
  EXPECT_EQ(oracle::rank_of(problem, answer->counts), rank);
}

/// As many units as the room and one more would take.
int highest_count(const RunProblem& problem) {
  std::int64_t most = 0;
  for (const RunGroup& group : problem.groups)
    most = std::max(most, std::max<std::int64_t>(0, problem.room_um) / group.unit_um + 2 + group.least);
  return static_cast<int>(most);
}
double combinations(const RunProblem& problem, int highest) {
  double product = 1;
  for (const RunGroup& group : problem.groups)
    for (std::size_t r = 0; r < group.places.size(); ++r)
      product *= std::min(group.most, highest) - group.least + 1;
  return product;
}

TEST(RunCounts, ThousandSmallProblemsAreAsGoodAsTryingAll) {
  Random random(20);
  int tried = 0, none = 0, exact = 0;
  while (tried < 1000) {
    RunProblem problem =
        random_runs(random, {.most_groups = 3, .most_runs = 2, .longest = 60, .most_count = 6});
    const int highest = highest_count(problem);
    if (combinations(problem, highest) > 30'000) continue;
    ++tried;
    const auto answers = solve_runs(problem);
    const auto ranks = oracle::best_ranks(problem, highest);
    if (!answers) {
      ++none;
      EXPECT_EQ(answers.problem().code, ProblemCode::too_few_beads);
      EXPECT_FALSE(ranks.not_longer || ranks.not_shorter);
      continue;
    }
    SCOPED_TRACE(tried);
    expect_rank(problem, answers->not_longer, ranks.not_longer);
    expect_rank(problem, answers->not_shorter, ranks.not_shorter);
    const auto best = oracle::rank_of(problem, answers->best().counts);
    for (const auto& rank : {ranks.not_longer, ranks.not_shorter}) {
      if (rank) {
        EXPECT_LE(*best, *rank);
      }
    }
    exact += answers->best().error_um == 0;
  }
  EXPECT_GT(none, 5);
  EXPECT_GT(exact, 20);
}

RunGroup spacers(double unit_mm, std::vector<int> places) {
  RunGroup group;
  group.unit_um = static_cast<std::int64_t>(1000 * unit_mm);
  group.unit_beads = 2;
  group.places = std::move(places);
  return group;
}

TEST(RunCounts, LargerCountsStandSymmetrically) {
  RunProblem problem{.room_um = 7 * 2300 * 3 + 3 * 2300, .groups = {spacers(2.3, std::vector<int>(7, 1))}};
  auto answers = solve_runs(problem);
  ASSERT_TRUE(answers);
  EXPECT_EQ(answers->best().counts[0], (std::vector{4, 3, 3, 4, 3, 3, 4}));
  problem.room_um -= 2300;
  answers = solve_runs(problem);
  EXPECT_EQ(answers->best().counts[0], (std::vector{4, 3, 3, 3, 3, 3, 4}));
}

TEST(RunCounts, MirroredHalvesChangeByTwo) {
  const RunProblem problem{.room_um = 23'000 + 2'300, .groups = {spacers(2.3, {2})}};
  const auto answers = solve_runs(problem);
  ASSERT_TRUE(answers && answers->not_longer && answers->not_shorter);
  EXPECT_EQ(answers->not_longer->counts[0], std::vector{5});
  EXPECT_EQ(answers->not_shorter->counts[0], std::vector{6});
  EXPECT_EQ(answers->best(), *answers->not_longer);  // as far, fewer beads
}

TEST(RunCounts, BothSidesMayBeMissing) {
  RunProblem problem{.room_um = 10'000, .groups = {spacers(2, {1})}};
  problem.groups[0].most = 3;
  auto answers = solve_runs(problem);
  ASSERT_TRUE(answers);
  EXPECT_FALSE(answers->not_shorter);
  EXPECT_EQ(answers->best().error_um, -4'000);
  problem.groups[0].least = problem.groups[0].most = 6;
  answers = solve_runs(problem);
  EXPECT_FALSE(answers->not_longer);
  EXPECT_EQ(answers->best().error_um, 2'000);
  problem.room_um = -5'000;
  EXPECT_EQ(solve_runs(problem)->best().error_um, 17'000);
  EXPECT_EQ(solve_runs({.room_um = 700})->best().error_um, -700);  // no run at all
}

TEST(RunCounts, SameForAllScales) {
  Random random(4);
  for (int i = 0; i < 100; ++i) {
    RunProblem problem = random_runs(random, {.most_groups = 4});
    const auto once = solve_runs(problem);
    for (RunGroup& group : problem.groups) group.unit_um *= 7;
    problem.room_um *= 7;
    const auto scaled = solve_runs(problem);
    ASSERT_EQ(once.ok(), scaled.ok());
    if (once) {
      EXPECT_EQ(once->best().counts, scaled->best().counts);
    }
  }
}

TEST(RunCounts, MoreOnHandIsNeverWorse) {
  Random random(5);
  int compared = 0;
  for (int i = 0; i < 300; ++i) {
    RunProblem problem = random_runs(random, {.most_groups = 4});
    if (problem.on_hand.empty()) continue;
    const auto few = solve_runs(problem);
    for (auto& count : problem.on_hand) count += 2;
    for (RunGroup& group : problem.groups)
      if (group.most < most_units) ++group.most;
    const auto more = solve_runs(problem);
    if (!few) continue;
    ASSERT_TRUE(more);
    EXPECT_LE(std::abs(more->best().error_um), std::abs(few->best().error_um));
    ++compared;
  }
  EXPECT_GT(compared, 50);
}

// The least of all runs, in all their places, may be as long as twice the longest room.
TEST(RunCounts, TheLeastOfEveryRunHasALimit) {
  const auto said = [](std::vector<RunGroup> groups) {
    const auto answers = solve_runs({.room_um = longest_room_um, .groups = std::move(groups)});
    return answers ? std::string("fine") : message(answers.problem());
  };
  const auto group = [](int least, std::vector<int> places) {
    return RunGroup{.unit_um = 1'000'000, .unit_beads = 1, .least = least, .places = std::move(places)};
  };
  EXPECT_EQ(said({group(5, {2})}), "fine");
  EXPECT_EQ(said({group(6, {2})}), "the least of every run: found 12000000, expected at most 10000000 micrometres");
  EXPECT_EQ(said({group(2, {2, 1}), group(4, {1})}), "fine");
  EXPECT_EQ(said({group(2, {2, 1}), group(5, {1})}),
            "the least of every run: found 11000000, expected at most 10000000 micrometres");
}

TEST(RunCounts, RefusesWhatIsOutOfRange) {
  const RunProblem good{.room_um = 10'000, .groups = {spacers(2, {1})}, .on_hand = {5}};
  ASSERT_TRUE(solve_runs(good));
  const auto code_of = [&](auto change) {
    RunProblem problem = good;
    change(problem);
    const auto answers = solve_runs(problem);
    return answers ? std::nullopt : std::optional(answers.problem().code);
  };
  const auto range = std::optional(ProblemCode::out_of_range);
  EXPECT_EQ(code_of([](RunProblem& p) { p.groups[0].unit_um = 0; }), range);
  EXPECT_EQ(code_of([](RunProblem& p) { p.groups[0].least = -1; }), range);
  EXPECT_EQ(code_of([](RunProblem& p) { p.groups[0].least = 5, p.groups[0].most = 4; }), range);
  EXPECT_EQ(code_of([](RunProblem& p) { p.groups[0].places = {3}; }), range);
  EXPECT_EQ(code_of([](RunProblem& p) { p.groups[0].takes = {{1, 1}}; }), range);
  EXPECT_EQ(code_of([](RunProblem& p) { p.groups[0].takes = {{0, 0}}; }), range);
  EXPECT_EQ(code_of([](RunProblem& p) { p.room_um = longest_room_um + 1; }), range);
  EXPECT_EQ(code_of([](RunProblem& p) { p.groups[0].places.assign(501, 1); }), range);
  EXPECT_EQ(code_of([](RunProblem& p) {
              p.groups[0].takes = {{0, 3}}, p.groups[0].least = 2;
            }),
            std::optional(ProblemCode::too_few_beads));
}

}  // namespace
}  // namespace evencount::strand
