#include "project/new_band.hpp"

#include <gtest/gtest.h>

#include "project/json.hpp"

namespace evencount::project {
namespace {

Project with_a_form() {
  return *parse_project(R"({"format": 1, "title": "Small", "beads": [{"id": "cylinder-11"}],
    "legend": [{"letter": "A", "name": "a", "colour": "#101030", "bead": "cylinder-11"}, {"letter": "B", "name": "b", "colour": "#101030", "bead": "cylinder-11"}],
    "forms": [{"id": "carrier", "shape": "lens:17x5x9"}], "bands": []})");
}

TEST(new_band, every_technique_makes_a_blank_piece_that_can_be_stitched) {
  const Project project = with_a_form();
  for (const weave::Technique& technique : weave::techniques())
    for (const auto& [columns, edge] : {std::pair{6, 8}, {7, 9}, {8, 9}, {12, 6}}) {
      const bool squares = technique.lattice(3, 3).holes == weave::Holes::round_squares;
      if (!technique.check_size(squares ? 2 * columns + 1 : columns, squares ? 2 * edge + 1 : edge)) continue;
      const auto band = new_band(project, {.technique = std::string(technique.id),
                                           .bead = "cylinder-11",
                                           .columns = columns,
                                           .edge = edge,
                                           .ground = 1});
      ASSERT_TRUE(band.ok()) << technique.id << ": " << message(band.problem());
      const auto lattice = technique.lattice(band->chart.columns(), band->chart.edge());
      for (int step = 0; step < band->chart.edge(); ++step)
        for (int column = 0; column < band->chart.columns(); ++column)
          EXPECT_EQ(band->chart.at({column, step}),
                    lattice.holds_bead({column, step}) ? chart::Bead{1} : chart::no_bead);
    }
}

TEST(new_band, takes_what_fits_its_form) {
  const auto band = new_band(with_a_form(), {.bead = "cylinder-11", .form = "carrier"});
  ASSERT_TRUE(band.ok()) << message(band.problem());
  EXPECT_EQ(band->chart.columns(), 6);
  EXPECT_EQ(band->chart.edge(), 24);
  EXPECT_EQ(band->closure, weave::Closure::zip);
}

TEST(new_band, an_odd_number_of_rows_leaves_out_the_last) {
  const auto band = new_band(
      with_a_form(), {.bead = "cylinder-11", .closure = weave::Closure::open, .columns = 6, .rows = 9});
  ASSERT_TRUE(band.ok());
  EXPECT_EQ(band->chart.edge(), 5);
  EXPECT_EQ(band->chart.at({1, 4}), chart::no_bead);
  EXPECT_EQ(band->chart.at({0, 4}), 0);
}

TEST(new_band, what_can_not_be_is_said) {
  const Project project = with_a_form();
  EXPECT_EQ(new_band(project, {.bead = "round-8", .columns = 2, .edge = 2}).problem().code,
            ProblemCode::unknown_name);
  EXPECT_EQ(new_band(project, {.bead = "cylinder-11", .form = "other"}).problem().code,
            ProblemCode::unknown_name);
  EXPECT_EQ(new_band(project, {.bead = "cylinder-11"}).problem().code, ProblemCode::bad_usage);
  EXPECT_EQ(new_band(project, {.bead = "cylinder-11", .columns = 0, .edge = 2}).problem().code,
            ProblemCode::out_of_range);
  EXPECT_EQ(new_band(project, {.bead = "cylinder-11", .columns = 2'000'000'000, .edge = 2}).problem().code,
            ProblemCode::out_of_range);
  EXPECT_EQ(new_band(project, {.technique = "magic", .bead = "cylinder-11", .columns = 2, .edge = 2})
                .problem()
                .code,
            ProblemCode::unknown_name);
}

}  // namespace
}  // namespace evencount::project
