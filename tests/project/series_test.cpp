#include "project/series.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "form/faces.hpp"
#include "project/case_file.hpp"
#include "project/json.hpp"
#include "project/palette.hpp"

namespace evencount::project {
namespace {

const std::string folder = EVENCOUNT_SOURCE_DIR "/examples/series/";

Project night() {
  return *parse_project(testing::read_file(folder + "moon-template.evencount.json"));
}

SeriesTable table(const std::string& text) {
  return *parse_series_table(text);
}
SeriesTable moons() {
  return table(testing::read_file(folder + "moon.csv"));
}

MotifTexts motifs_for(const SeriesTable& from) {
  MotifTexts motifs;
  for (const std::string& name : motifs_of(from)) motifs.emplace(name, testing::read_file(folder + name));
  return motifs;
}

SeriesOptions options() {
  SeriesOptions options;
  options.letter = "D";
  options.style.running = picture::Running::down;
  return options;
}

Series series_of(const SeriesTable& from, const std::optional<Project>& onto = {},
                 const SeriesOptions& with = options()) {
  auto series = make_series(night(), from, motifs_for(from), with, onto);
  EXPECT_TRUE(series.ok()) << message(series.problem());
  return *series;
}

std::vector<SeriesOutcome> outcomes(const Series& series) {
  std::vector<SeriesOutcome> all;
  for (const SeriesBand& band : series.bands) all.push_back(band.outcome);
  return all;
}

TEST(series, thirty_days_of_the_moon) {
  const Series series = series_of(moons());
  EXPECT_TRUE(series.problems.empty());
  ASSERT_EQ(series.project.bands.size(), 30u);
  const Project source = night();
  const Band& base = source.bands.front();
  const auto faces = *form::faces(source.forms[0].form, source.beads[0].diameter, base.chart.edge());
  std::set<std::vector<chart::Bead>> fronts;
  for (const Band& band : series.project.bands) {
    EXPECT_TRUE(plan_of(band).ok()) << band.name;
    EXPECT_EQ(band.series_mark, mark_of(series.project, band));
    bool front = false, back = false;
    for (int step = 0; step < band.chart.edge(); ++step)
      for (int column = 0; column < band.chart.columns(); ++column) {
        if (band.chart.at({column, step}) == base.chart.at({column, step})) continue;
        const form::Side side = form::seat_of(faces, column, step).side;
        EXPECT_NE(side, form::Side::edge) << band.name;
        (side == form::Side::front ? front : back) = true;
      }
    EXPECT_TRUE(front && back) << band.name;
    fronts.insert({band.chart.cells().begin(), band.chart.cells().begin() + 14 * 8});
  }
  EXPECT_EQ(fronts.size(), 30u);
  // Five days have their number in silver, which is one new letter.
  EXPECT_EQ(series.project.legend.size(), source.legend.size() + 1);
  EXPECT_EQ(series.project.legend.back().letter, "E");
  EXPECT_EQ(series.project.legend.back().name, "moonlit silver");
  EXPECT_EQ(series.project.bands[14].note, "Full moon");
  EXPECT_EQ(parse_project(to_json(series.project)).value(), series.project);
}

struct BadLine {
  std::string line;
  std::string where;
  ProblemCode code;
};

TEST(series, a_bad_line_is_named_and_the_rest_untouched) {
  const std::string head = "name,front,back,front motif,back motif,letter,colour C\n",
                    one = "One,1,,,phases/day-05.txt,,#ffffff:white\n",
                    two = "Two,2,,,phases/day-09.txt,A,B\n";
  const Series good = series_of(table(head + one + two));
  ASSERT_EQ(good.bands.size(), 2u);
  for (const BadLine& bad :
       std::vector<BadLine>{{"Bad,1234567890,,,,,", "line 3, column front", ProblemCode::wrong_size},
                            {"Bad,,1234567890,,,,", "line 3, column back", ProblemCode::wrong_size},
                            {"Bad,\xE6\x9C\x88,,,,,", "line 3, column front", ProblemCode::unknown_name},
                            {"Bad,1,,,,Q,", "line 3, column front", ProblemCode::unknown_name},
                            {"Bad,,,tall,,,", "line 3, column front motif", ProblemCode::wrong_size},
                            {"Bad,,,wide,,,", "line 3, column front motif", ProblemCode::wrong_size},
                            {"Bad,,,,strange,,", "line 3, column back motif", ProblemCode::unknown_name},
                            {"Bad,,,,absent,,", "line 3, column back motif", ProblemCode::file_not_found},
                            {"Bad,,,holes,,,", "line 3", ProblemCode::wrong_size},
                            {"Bad,1,,,,,Q", "line 3, column colour: C", ProblemCode::unknown_name}}) {
    const SeriesTable rows = table(head + one + bad.line + "\n" + two);
    MotifTexts motifs = {{"tall", std::string("A\nA\nA\nA\nA\nA\nA\nA\nA\nA\nA\nA\nA\nA\nA\n")},
                         {"wide", std::string("AAAAAAAAA\n")},
                         {"strange", std::string("AAQA\n")},
                         {"holes", std::string("_\n")},
                         {"absent", Problem{ProblemCode::file_not_found, "absent", "no such file", "a file"}},
                         {"phases/day-05.txt", testing::read_file(folder + "phases/day-05.txt")},
                         {"phases/day-09.txt", testing::read_file(folder + "phases/day-09.txt")}};
    const auto series = make_series(night(), rows, motifs, options());
    ASSERT_TRUE(series.ok());
    ASSERT_EQ(series->problems.size(), 1u) << bad.line;
    EXPECT_TRUE(series->problems[0].where.starts_with(bad.where)) << series->problems[0].where;
    EXPECT_EQ(series->problems[0].code, bad.code) << bad.line << message(series->problems[0]);
    EXPECT_EQ(series->project, good.project) << bad.line;
  }
}

TEST(series, made_again_nothing_changes) {
  const Series first = series_of(moons());
  const Series again = series_of(moons(), first.project);
  EXPECT_EQ(again.project, first.project);
  EXPECT_EQ(outcomes(again), std::vector<SeriesOutcome>(30, SeriesOutcome::same));
  EXPECT_TRUE(again.no_line.empty());
}

TEST(series, a_changed_table_replaces_what_was_not_edited_and_keeps_what_was) {
  const std::string head = "name,front\n";
  Project project = series_of(table(head + "One,1\nTwo,2\nThree,3\nFour,4\n")).project;
  // Two is edited by hand; a band of the designer's own is called Five; Four loses its line.
  project.bands[1].chart.set({0, 5}, 1);
  project.bands[1].unknown["later"] = "1";
  project.bands[0].unknown["later"] = "2";
  Band own = project.bands[0];
  own.name = "Five";
  own.series_mark.clear();
  project.bands.push_back(own);
  const SeriesTable changed = table(head + "One,11\nTwo,12\nThree,3\nFive,15\nSix,16\n");
  const Series series = series_of(changed, project);
  using enum SeriesOutcome;
  EXPECT_EQ(outcomes(series), (std::vector<SeriesOutcome>{replaced, kept, same, kept, made}));
  EXPECT_EQ(series.no_line, (std::vector<std::string>{"Four"}));
  ASSERT_EQ(series.project.bands.size(), 6u);
  EXPECT_EQ(series.project.bands[0].unknown, project.bands[0].unknown);
  EXPECT_NE(series.project.bands[0].chart, project.bands[0].chart);
  for (const std::size_t i : {1u, 2u, 3u, 4u}) EXPECT_EQ(series.project.bands[i], project.bands[i]) << i;
  // Asked for plainly, edited ones are replaced too.
  SeriesOptions all = options();
  all.replace_edited = true;
  EXPECT_EQ(outcomes(series_of(changed, project, all)),
            (std::vector<SeriesOutcome>{replaced, replaced, same, replaced, made}));
}

TEST(series, any_edit_of_a_band_breaks_its_mark) {
  const Project project = series_of(table("name,front\nOne,1\n")).project;
  const Band band = project.bands.front();
  const std::vector<void (*)(Band&)> edits{
      [](Band& b) {
        b.chart.set({3, 3}, 2);
      },
      [](Band& b) { b.note = "new"; },
      [](Band& b) { b.copies = 2; },
      [](Band& b) { b.use = form::Use::fixed; },
      [](Band& b) { b.closure = weave::Closure::open; },
      [](Band& b) { b.form.reset(); },
      [](Band& b) {
        b.gauge = bead::Gauge{millimetres(1.3), millimetres(1.6), "", {}};
      },
      [](Band& b) { b.begin_at = 1; },
      [](Band& b) { b.bead = "cylinder-10"; }};
  std::set<std::string> marks{mark_of(project, band)};
  for (const auto edit : edits) {
    Band edited = band;
    edit(edited);
    EXPECT_TRUE(marks.insert(mark_of(project, edited)).second);
  }
  Band renamed = band;
  renamed.name = "Other";
  EXPECT_EQ(mark_of(project, renamed), mark_of(project, band));
}

TEST(series, letters_are_those_of_the_project_it_goes_into) {
  // The same letters in another order, and one of them for another bead.
  const Series alone = series_of(table("name,front\nOne,1\n"));
  Project onto = night();
  onto.bands.clear();
  std::ranges::reverse(onto.legend);
  const Series there = series_of(table("name,front\nOne,1\n"), onto);
  const auto letters = letters_of(there.project), alone_letters = letters_of(alone.project);
  const auto &one = alone.project.bands[0].chart.cells(), &other = there.project.bands[0].chart.cells();
  for (std::size_t i = 0; i < one.size(); ++i) EXPECT_EQ(alone_letters[one[i]], letters[other[i]]);
  EXPECT_EQ(there.project.bands[0].series_mark, alone.project.bands[0].series_mark);
  onto.legend[0].colour = {1, 2, 3};
  EXPECT_EQ(make_series(night(), table("name\nOne\n"), {}, options(), onto).problem().code,
            ProblemCode::duplicate_name);
}

TEST(series, two_letters_change_places) {
  const Series series = series_of(table("name,colour A,colour C\nOne,C,A\n"));
  const chart::Chart before = night().bands[0].chart, &after = series.project.bands[0].chart;
  for (std::size_t i = 0; i < before.cells().size(); ++i) {
    const chart::Bead bead = before.cells()[i];
    EXPECT_EQ(after.cells()[i], bead == 0 ? 2 : bead == 2 ? 0 : bead);
  }
}

TEST(series, a_flat_band_has_a_front_and_the_steps_it_is_given) {
  Project flat = night();
  flat.bands[0].form.reset();
  flat.bands[0].closure = weave::Closure::open;
  SeriesOptions with = options();
  EXPECT_EQ(make_series(flat, table("name,back\nOne,1\n"), {}, with)->problems.at(0).code,
            ProblemCode::wrong_size);
  with.back = StepSpan{15, 13};
  with.front = StepSpan{0, 14};
  const auto series = make_series(flat, table("name,front,back\nOne,1,2\n"), {}, with);
  EXPECT_TRUE(series->problems.empty());
  with.back = StepSpan{20, 13};
  EXPECT_EQ(make_series(flat, table("name\nOne\n"), {}, with).problem().code, ProblemCode::out_of_range);
}

TEST(series, what_it_refuses) {
  Project two = night();
  two.bands.push_back(two.bands.front());
  two.bands.back().name = "Day";
  EXPECT_EQ(make_series(two, table("name\nOne\n"), {}, options()).problem().code, ProblemCode::bad_usage);
  SeriesOptions with = options();
  with.band = "Day";
  EXPECT_TRUE(make_series(two, table("name\nOne\n"), {}, with).ok());
  with.band = "Dusk";
  EXPECT_EQ(make_series(two, table("name\nOne\n"), {}, with).problem().code, ProblemCode::unknown_name);
}

TEST(palette, letters_that_mean_other_beads_are_named) {
  const Project one = night();
  Project other = one, third = one;
  EXPECT_TRUE(palette_conflicts({one, other, third}).empty());
  other.legend[1].name = "Elfenbein";
  other.beads[0].source = "measured";
  EXPECT_TRUE(palette_conflicts({one, other}).empty());
  other.legend[1].colour = {0, 0, 0};
  third.legend[0].finish = bead::Finish::metallic;
  third.beads[0].diameter = millimetres(2);
  const auto conflicts = palette_conflicts({one, other, third});
  ASSERT_EQ(conflicts.size(), 1 + one.legend.size());
  EXPECT_EQ(conflicts[0], (PaletteConflict{"A", 2, 0, "finish, bead"}));
  EXPECT_EQ(conflicts[1], (PaletteConflict{"B", 1, 0, "colour"}));
  // A letter that only some have is no conflict.
  other.legend.erase(other.legend.begin() + 1);
  EXPECT_TRUE(palette_conflicts({one, other}).empty());
}

}  // namespace
}  // namespace evencount::project
