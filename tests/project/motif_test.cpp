#include "project/motif.hpp"

#include <gtest/gtest.h>

namespace evencount::project {
namespace {

const std::vector<std::string> letters{"A", "B", "C"};

TEST(motif, lines_stand_in_the_middle_from_the_first_step_on) {
  const chart::Chart ground = *chart::Chart::make(5, 6, 0);
  const auto drawn = with_motif(ground, "bcb\n  .C. \n_\n\n \n", letters, {2, 3});
  ASSERT_TRUE(drawn.ok()) << message(drawn.problem());
  chart::Chart expected = ground;
  for (const auto& [column, step, bead] : std::vector<std::tuple<int, int, chart::Bead>>{
           {1, 2, 1}, {2, 2, 2}, {3, 2, 1}, {2, 3, 2}, {2, 4, chart::no_bead}})
    expected.set({column, step}, bead);
  EXPECT_EQ(*drawn, expected);
  EXPECT_EQ(motif_lines("A\n.\n\n  \n").size(), 2u);
}

TEST(motif, what_does_not_fit_or_has_no_bead_is_named_by_its_line) {
  const chart::Chart ground = *chart::Chart::make(3, 4, 0);
  EXPECT_EQ(with_motif(ground, "A\nAAAA\n", letters, {0, 4}).problem().where, "line 2");
  EXPECT_EQ(with_motif(ground, "A\nA\nA\n", letters, {1, 2}).problem().where, "line 3");
  EXPECT_EQ(with_motif(ground, "A\n", letters, {-1, 2}).problem().code, ProblemCode::wrong_size);
  EXPECT_EQ(with_motif(ground, "A\nA\n", letters, {3, 9}).problem().where, "line 2");
  const Problem strange = with_motif(ground, "A\nA\nBZB\n", letters, {0, 4}).problem();
  EXPECT_EQ(strange.where, "line 3");
  EXPECT_EQ(strange.code, ProblemCode::unknown_name);
}

}  // namespace
}  // namespace evencount::project
