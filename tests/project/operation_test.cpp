#include "project/operation.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <random>
#include <set>

#include "chart/edit.hpp"
#include "project/json.hpp"
#include "project/patch.hpp"
#include "weave/technique.hpp"

namespace evencount::project {
namespace {

Project small() {
  return *parse_project(R"({"format": 1, "title": "Small", "beads": [{"id": "cylinder-11"}], "legend": [
    {"letter": "A", "name": "night", "colour": "#101030", "bead": "cylinder-11"},
    {"letter": "B", "name": "moon", "colour": "#ffffee", "bead": "cylinder-11"},
    {"letter": "C", "name": "star", "colour": "#ffee00", "bead": "cylinder-11"}],
    "forms": [{"id": "carrier", "shape": "lens:17x5x9"}],
    "bands": [
      {"name": "One", "technique": "peyote-even-count", "bead": "cylinder-11", "form": "carrier", "closure": "zip", "columns": 6, "edge": 24,
       "cells": ["6A","6A","6A","6A","6A","6A","6A","6A","6A","6A","6A","6A","6A","6A","6A","6A","6A","6A","6A","6A","6A","6A","6A","6A"]},
      {"name": "Two", "technique": "square", "bead": "cylinder-11", "closure": "open", "columns": 5, "edge": 4,
       "cells": ["1A 3B 1A","5B","5B","1A 3B 1A"]}]})");
}

Applied done(const Project& project, const std::string& operation) {
  auto applied = apply_operation(project, operation);
  EXPECT_TRUE(applied.ok()) << operation << ": " << message(applied.problem());
  return applied ? *applied : Applied{project, "failed"};
}

std::string line(const Project& project, int band, int step) {
  std::string text;
  for (const chart::Bead bead : project.bands[static_cast<std::size_t>(band)].chart.step(step))
    text += bead == chart::no_bead ? "." : project.legend[bead].letter;
  return text;
}

TEST(operation, draws) {
  const Project project = small();
  EXPECT_EQ(line(done(project, R"({"do":"set","band":0,"cells":[[1,0],[2,0]],"letter":"B"})").project, 0, 0),
            "ABBAAA");
  EXPECT_EQ(line(done(project, R"({"do":"set","band":0,"cells":[[1,0]],"letter":"."})").project, 0, 0),
            "A.AAAA");
  EXPECT_EQ(
      line(done(project, R"({"do":"line","band":1,"from":[0,1],"to":[4,1],"letter":"C"})").project, 1, 1),
      "CCCCC");
  EXPECT_EQ(line(done(project, R"({"do":"rectangle","band":1,"from":[0,0],"to":[4,3],"letter":"C"})").project,
                 1, 1),
            "CBBBC");
  EXPECT_EQ(
      line(done(project, R"({"do":"rectangle","band":1,"from":[0,0],"to":[4,3],"letter":"C","filled":true})")
               .project,
           1, 1),
      "CCCCC");
  EXPECT_EQ(line(done(project, R"({"do":"fill","band":1,"at":[1,1],"letter":"C"})").project, 1, 0), "ACCCA");
  EXPECT_EQ(line(done(project, R"({"do":"replace_letter","from":"A","to":"C"})").project, 0, 5), "CCCCCC");
  EXPECT_EQ(line(done(project, R"({"do":"replace_letter","from":"A","to":"C","band":1})").project, 0, 5),
            "AAAAAA");
  EXPECT_EQ(line(done(project, R"({"do":"stamp","band":1,"from_band":1,"from":[0,0],"to":[1,0],"at":[3,2]})")
                     .project,
                 1, 2),
            "BBBAB");
  EXPECT_EQ(
      line(done(project, R"({"do":"press","band":1,"at":[1,1],"lines":["2C 1."],"shift":0})").project, 1, 1),
      "BCCBB");
  EXPECT_EQ(line(done(project, R"({"do":"shift","band":0,"steps":3})").project, 0, 3), "AAAAAA");
}

TEST(operation, says_what_was_done) {
  const Project project = small();
  EXPECT_EQ(done(project, R"({"do":"fill","band":1,"at":[1,1],"letter":"C"})").sentence,
            "filled 16 beads with C on Two");
  EXPECT_EQ(done(project, R"({"do":"set","band":0,"cells":[[1,0]],"letter":"B"})").sentence,
            "drew 1 bead of B on One");
  EXPECT_EQ(done(project, R"({"do":"remove_band","band":1})").sentence, "removed Two");
  EXPECT_EQ(
      done(
          project,
          R"({"do":"several","operations":[{"do":"change_texts","title":"x"},{"do":"set_allowance","allowance":0.2}]})")
          .sentence,
      "changed the title; changed the allowance");
}

TEST(operation, mirrored_strokes_keep_the_symmetry) {
  std::mt19937 random(5);
  Project project = small();
  const auto number = [&](int most) { return static_cast<int>(random() % static_cast<unsigned>(most)); };
  for (int i = 0; i < 40; ++i) {
    const std::string figure =
        std::array{"line", "rectangle", "ellipse"}[static_cast<std::size_t>(number(3))];
    project =
        done(
            project,
            fmt::format(
                R"({{"do":"{}","band":1,"from":[{},{}],"to":[{},{}],"letter":"{}","mirror":["mirror_across","mirror_along"]}})",
                figure, number(5), number(4), number(5), number(4), "ABC"[number(3)]))
            .project;
    for (const auto symmetry :
         {chart::Symmetry::mirror_across, chart::Symmetry::mirror_along, chart::Symmetry::half_turn})
      EXPECT_TRUE(chart::apply(project.bands[1].chart, {0, false, false}, symmetry)->changes.empty());
  }
  const Project turned =
      done(small(), R"({"do":"set","band":0,"cells":[[0,0]],"letter":"B","mirror":["half_turn"]})").project;
  const auto cells = turned.bands[0].chart.cells();
  EXPECT_EQ(std::count(cells.begin(), cells.end(), chart::Bead{1}), 2);
  const auto refused = apply_operation(
      small(), R"({"do":"set","band":0,"cells":[[0,0]],"letter":"B","mirror":["mirror_across"]})");
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, ProblemCode::wrong_size);
}

TEST(operation, the_legend_changes_and_the_drawing_stays) {
  const Project project = small();
  const Project added =
      done(
          project,
          R"({"do":"add_legend_entry","at":0,"entry":{"name":"red","colour":"#ff0000","bead":"cylinder-11"}})")
          .project;
  EXPECT_EQ(added.legend[0].letter, "D");
  EXPECT_EQ(line(added, 1, 0), "ABBBA");
  const Project reordered = done(project, R"({"do":"reorder_legend","letters":["C","A","B"]})").project;
  EXPECT_EQ(line(reordered, 1, 0), "ABBBA");
  EXPECT_EQ(reordered.legend[0].name, "star");
  const Project larger =
      done(project, R"({"do":"add_legend_entry","entry":{"name":"red","colour":"#ff0000","bead":"round-8"}})").project;
  EXPECT_EQ(larger.beads.back().id, "round-8") << "a known size comes with the entry";
  EXPECT_EQ(done(project, R"({"do":"change_legend_entry","letter":"C","entry":{"bead":"round-8"}})").project.beads.size(),
            project.beads.size() + 1);
  EXPECT_EQ(apply_operation(project, R"({"do":"change_legend_entry","letter":"C","entry":{"bead":"x"}})").problem().where,
            "/entry/bead");
  const Project merged = done(project, R"({"do":"remove_legend_entry","letter":"A","instead":"C"})").project;
  EXPECT_EQ(line(merged, 1, 0), "CBBBC");
  EXPECT_EQ(merged.legend.size(), 2u);
  EXPECT_EQ(done(project, R"({"do":"remove_legend_entry","letter":"C"})").project.legend.size(), 2u);
  EXPECT_EQ(apply_operation(project, R"({"do":"remove_legend_entry","letter":"A"})").problem().code,
            ProblemCode::missing_field);
  const Project changed =
      done(project, R"({"do":"change_legend_entry","letter":"A","entry":{"letter":"Z","finish":"matte"}})")
          .project;
  EXPECT_EQ(line(changed, 1, 0), "ZBBBZ");
  EXPECT_EQ(apply_operation(project, R"({"do":"change_legend_entry","letter":"A","entry":{"letter":"B"}})")
                .problem()
                .code,
            ProblemCode::duplicate_name);
}

TEST(operation, bands_come_go_and_change) {
  const Project project = small();
  const Project added =
      done(project, R"({"do":"add_band","name":"Three","form":"carrier","letter":"B"})").project;
  ASSERT_EQ(added.bands.size(), 3u);
  EXPECT_EQ(added.bands[2].chart.columns(), 6);
  EXPECT_EQ(added.bands[2].chart.edge(), 24);
  EXPECT_EQ(line(added, 2, 0), "BBBBBB");
  EXPECT_EQ(done(project, R"({"do":"add_band","columns":5,"edge":9})").project.bands[2].technique,
            weave::flat_peyote_for(5).id);
  const Project squares =
      done(project, R"({"do":"add_band","technique":"right-angle","columns":3,"edge":4})").project;
  EXPECT_EQ(squares.bands[2].chart.columns(), 7);
  EXPECT_TRUE(plan_of(squares.bands[2]).ok());
  EXPECT_EQ(done(project, R"({"do":"duplicate_band","band":0})").project.bands[1].name, "One 2");
  EXPECT_EQ(done(project, R"({"do":"move_band","band":0,"to":1})").project.bands[1].name, "One");
  const Project noted =
      done(project, R"({"do":"change_band","band":0,"note":"twice","copies":2,"form":null})").project;
  EXPECT_EQ(noted.bands[0].copies, 2);
  EXPECT_FALSE(noted.bands[0].form.has_value());
  EXPECT_EQ(done(project, R"({"do":"change_band","band":1,"bead":"round-8"})").project.beads.size(), 2u);
  EXPECT_FALSE(
      apply_operation(project, R"({"do":"change_band","band":0,"technique":"peyote-odd-count"})").ok());
  const Project resized =
      done(project, R"({"do":"resize_band","band":1,"columns":7,"edge":6,"letter":"C"})").project;
  EXPECT_EQ(line(resized, 1, 0), "CCCCCCC");
  EXPECT_EQ(line(resized, 1, 1), "CABBBAC");
  EXPECT_EQ(
      done(project, R"({"do":"resize_band","band":0,"columns":7,"edge":24})").project.bands[0].technique,
      weave::flat_peyote_for(7).id);
  EXPECT_EQ(done(project, R"({"do":"insert_steps","band":1,"at":0,"count":2,"letter":"C"})")
                .project.bands[1]
                .chart.edge(),
            6);
  EXPECT_EQ(
      done(project, R"({"do":"delete_columns","band":1,"at":0,"count":1})").project.bands[1].chart.columns(),
      4);
}

TEST(operation, the_rest_of_the_project_changes) {
  const Project project = small();
  EXPECT_EQ(done(project, R"({"do":"add_form","shape":"ring:54"})").project.forms.back().id, "form-2");
  EXPECT_EQ(done(project, R"({"do":"change_form","id":"carrier","shape":"lens:20x6x10"})")
                .project.forms[0]
                .form.width.mm(),
            20);
  const Project ring = done(project, R"({"do":"add_form","id":"ring","shape":"ring:54"})").project;
  const Project wrist = done(ring, R"({"do":"change_form","id":"ring","shape":"wrist:165"})").project;
  EXPECT_EQ(wrist.forms.back().name, form::describe(wrist.forms.back().form)) << "the usual name goes with the shape";
  const Project called = done(ring, R"({"do":"change_form","id":"ring","name":"thumb"})").project;
  EXPECT_EQ(done(called, R"({"do":"change_form","id":"ring","shape":"wrist:165"})").project.forms.back().name, "thumb");
  EXPECT_EQ(apply_operation(project, R"({"do":"remove_form","id":"carrier"})").problem().code,
            ProblemCode::in_use);
  EXPECT_EQ(done(project, R"({"do":"change_thread","thread":{"id":"braided-6lb","tail_mm":200}})")
                .project.thread_habits.tail.mm(),
            200);
  EXPECT_EQ(done(project, R"({"do":"set_findings","findings":[{"name":"clasp","count":1}]})")
                .project.findings.size(),
            1u);
  EXPECT_EQ(done(project, R"({"do":"set_assembly","assembly":["string it"]})").project.assembly.size(), 1u);
  Project other = project;
  other.title = "Other";
  EXPECT_EQ(done(project, fmt::format(R"({{"do":"replace","project":{},"sentence":"made from a picture"}})",
                                      to_json(other)))
                .project,
            other);
}

TEST(operation, malformed_ones_are_refused_with_their_place) {
  const Project project = small();
  const auto refused = [&](const std::string& operation, ProblemCode code, const std::string& where) {
    const auto applied = apply_operation(project, operation);
    ASSERT_FALSE(applied.ok()) << operation;
    EXPECT_EQ(applied.problem().code, code) << operation << ": " << message(applied.problem());
    EXPECT_EQ(applied.problem().where, where) << operation;
  };
  refused("", ProblemCode::bad_json, "line 1, column 1");
  refused("[]", ProblemCode::wrong_type, "");
  refused(R"({"do":"explode"})", ProblemCode::unknown_name, "/do");
  refused(R"({"do":"fill","band":0,"at":[0,0],"letter":"B","colour":"red"})", ProblemCode::unknown_name,
          "/colour");
  refused(R"({"do":"fill","band":2,"at":[0,0],"letter":"B"})", ProblemCode::out_of_range, "/band");
  refused(R"({"do":"fill","band":0,"at":[0],"letter":"B"})", ProblemCode::wrong_type, "/at");
  refused(R"({"do":"fill","band":0,"at":[0,-1],"letter":"B"})", ProblemCode::out_of_range, "/at/1");
  refused(R"({"do":"fill","band":0,"at":[0,0.5],"letter":"B"})", ProblemCode::wrong_type, "/at/1");
  refused(R"({"do":"fill","band":0,"at":[0,0],"letter":"Q"})", ProblemCode::unknown_name, "/letter");
  refused(R"({"do":"set","band":0,"cells":[[0,0],[99,0]],"letter":"B"})", ProblemCode::out_of_range,
          "/cells");
  refused(
      R"({"do":"several","operations":[{"do":"set_allowance","allowance":0.2},{"do":"several","operations":[]}]})",
      ProblemCode::unknown_name, "/operations/1/do");
  refused(R"({"do":"set_allowance","allowance":7})", ProblemCode::out_of_range, "/allowance");
  EXPECT_EQ(apply_operation(project, std::string(100'000, '[')).problem().code, ProblemCode::bad_json);
}

/// An operation with fields drawn from a seed; many of them are refused.
std::string random_operation(std::mt19937& random, const Project& project) {
  const auto number = [&](int most) { return static_cast<int>(random() % static_cast<unsigned>(most)); };
  const auto names = operation_names();
  const std::string cell = fmt::format("[{},{}]", number(7), number(25)), letter(1, "ABCDZ"[number(5)]),
                    other(1, "ABC"[number(3)]);
  std::string text =
      fmt::format(R"({{"do":"{}","band":{})",
                  names[static_cast<std::size_t>(number(static_cast<int>(names.size())))], number(3));
  const std::pair<const char*, std::string> fields[] = {
      {"letter", '"' + letter + '"'},
      {"at", number(2) ? cell : std::to_string(number(5))},
      {"from", number(2) ? cell : '"' + letter + '"'},
      {"to", number(2) ? cell : '"' + other + '"'},
      {"to_", ""},
      {"count", std::to_string(number(4))},
      {"cells", "[" + cell + "]"},
      {"columns", std::to_string(1 + number(9))},
      {"edge", std::to_string(1 + number(9))},
      {"steps", std::to_string(number(9) - 4)},
      {"mirror", R"(["half_turn"])"},
      {"instead", '"' + other + '"'},
      {"title", R"("T")"},
      {"text", R"("O")"},
      {"from_band", std::to_string(number(2))},
      {"id", R"("carrier")"},
      {"shape", R"("oval:18x13x5")"},
      {"symmetry", R"("half_turn")"},
      {"entry", R"({"name":"n","colour":"#123456","bead":"cylinder-11"})"},
      {"form", R"("carrier")"},
      {"allowance", "0.3"},
      {"lines", R"(["1A 2B"])"},
      {"shift", "0"},
      {"closure", R"("open")"},
      {"copies", "3"}};
  // The names of fields are guessed until the operation takes them, or not.
  for (int tries = 0; tries < 60; ++tries) {
    const auto applied = apply_operation(project, text + "}");
    if (applied) return text + "}";
    const Problem& problem = applied.problem();
    const auto field = std::find_if(std::begin(fields), std::end(fields), [&](const auto& f) {
      return problem.where == "/" + std::string(f.first);
    });
    if (problem.code == ProblemCode::missing_field && field != std::end(fields))
      text += fmt::format(R"(,"{}":{})", field->first, field->second);
    else if (problem.code == ProblemCode::unknown_name && problem.where == "/band")
      text = text.substr(0, text.find(",\"band\""));
    else
      return text + "}";
  }
  return text + "}";
}

TEST(operation, whatever_comes_of_any_can_be_saved_and_undone) {
  std::mt19937 random(17);
  Project project = small();
  std::set<std::string> taken;
  for (int i = 0; i < 1200; ++i) {
    const std::string operation = random_operation(random, project);
    const auto applied = apply_operation(project, operation);
    if (!applied) continue;
    taken.insert(operation.substr(0, operation.find(',')));
    const auto read = parse_project(to_json(applied->project));
    ASSERT_TRUE(read.ok()) << operation << ": " << message(read.problem());
    ASSERT_EQ(*read, applied->project) << operation;
    ASSERT_FALSE(applied->sentence.empty()) << operation;
    const auto undone = apply(applied->project, inverse(diff(project, applied->project)));
    ASSERT_TRUE(undone.ok()) << operation << ": " << message(undone.problem());
    ASSERT_EQ(*undone, project) << operation;
    if (applied->project.bands.size() >= 2 && applied->project.bands.size() < 6) project = applied->project;
    if (project.legend.size() < 2 || project.bands.size() < 2) project = small();
  }
  EXPECT_GE(taken.size(), 15u);
}

}  // namespace
}  // namespace evencount::project
