#include <fmt/format.h>
#include <gtest/gtest.h>

#include <array>
#include <random>

#include "project/case_file.hpp"
#include "project/json.hpp"
#include "project/operation.hpp"
#include "project/patch.hpp"
#include "project/strand_start.hpp"
#include "project/strung_sizes.hpp"

namespace evencount::project {
namespace {

Project demo(const std::string& name) {
  return *parse_project(testing::read_file(EVENCOUNT_SOURCE_DIR "/examples/" + name + ".evencount.json"));
}

/// A bracelet on a short layout with a comment.
Project strung_small() {
  Project project = demo("moonwatch");
  project.strand->layout =
      "# kept\ncords 2 of braided 0.6mm\nbead stop 6mm hole 1.5mm\n"
      "string stop, fill sides with round-8, between gaps with round-8 (\"New moon\", \"Full moon\"), fill "
      "sides with round-8, stop";
  return project;
}

/// Whatever is done can be read, saved and undone.
Applied done(const Project& project, const std::string& operation) {
  auto applied = apply_operation(project, operation);
  EXPECT_TRUE(applied.ok()) << operation << ": " << message(applied.problem());
  if (!applied) return {project, "failed"};
  const auto again = parse_project(to_json(applied->project));
  EXPECT_TRUE(again && *again == applied->project);
  const auto back = apply(applied->project, inverse(diff(project, applied->project)));
  EXPECT_TRUE(back && *back == project) << operation;
  return *applied;
}

std::string list_of(const Project& project) {
  const std::string& text = project.strand->layout;
  EXPECT_TRUE(strung_of(project)) << text;
  EXPECT_TRUE(text.starts_with("# kept\n"));
  return text.substr(text.find("string ") + 7);
}

TEST(StrandOperations, TheListChangesInItsPlaces) {
  const Project project = strung_small();
  EXPECT_EQ(list_of(done(project, R"({"do":"move_element","from":[0],"to":[1]})").project),
            "fill sides with round-8, stop, between gaps with round-8 (\"New moon\", \"Full moon\"),\n  fill "
            "sides with round-8, stop");
  EXPECT_NE(list_of(done(project, R"({"do":"move_element","from":[2,1],"to":[2,0]})").project)
                .find("(\"Full moon\", \"New moon\")"),
            std::string::npos);
  EXPECT_NE(list_of(done(project, R"({"do":"move_element","from":[2,1],"to":[0]})").project)
                .find("\"Full moon\", stop"),
            std::string::npos);
  EXPECT_NE(list_of(done(project, R"({"do":"duplicate_element","at":[2,0]})").project)
                .find("(\"New moon\", \"New moon\", \"Full moon\")"),
            std::string::npos);
  EXPECT_NE(list_of(done(project, R"({"do":"remove_element","at":[2,0]})").project).find("(\"Full moon\")"),
            std::string::npos);
  const Project one = done(project, R"({"do":"remove_element","at":[2,0]})").project;
  EXPECT_EQ(list_of(done(one, R"({"do":"remove_element","at":[2,0]})").project),
            "stop, fill sides with round-8, fill sides with round-8, stop");
  EXPECT_TRUE(list_of(done(project, R"({"do":"add_element","item":"\"Last quarter\""})").project)
                  .ends_with("stop, \"Last quarter\""));
  EXPECT_TRUE(
      list_of(done(project, R"({"do":"add_element","at":[0],"item":"2 big","part":"bead big 8mm hole 2mm"})")
                  .project)
          .starts_with("2 big, stop"));
  // Runs of one name change together.
  const std::string changed = list_of(
      done(project, R"({"do":"change_element","at":[1],"item":"fill sides with round-6 from 2"})").project);
  EXPECT_EQ(changed.find("fill sides with round-8"), std::string::npos) << changed;
  EXPECT_NE(changed.rfind("fill sides with round-6 from 2"), changed.find("fill sides with round-6 from 2"));
}

TEST(StrandOperations, WhateverIsDoneCanBeRead) {
  std::mt19937 random(11);
  const auto number = [&](int most) { return static_cast<int>(random() % static_cast<unsigned>(most)); };
  const auto path = [&] {
    return number(3) == 0 ? fmt::format("[{},{}]", number(6), number(4)) : fmt::format("[{}]", number(7));
  };
  const auto item = [&] {
    return std::array{"stop",
                      "2 round-8",
                      "both round-8",
                      "(stop, \\\"Full moon\\\")",
                      "fill sides with round-8",
                      "fill with (stop, round-8)",
                      "mirror (stop, fill ends with round-8)"}[static_cast<std::size_t>(number(7))];
  };
  Project project = strung_small();
  int accepted = 0;
  for (int i = 0; i < 400; ++i) {
    const std::string operation =
        std::array{fmt::format(R"({{"do":"move_element","from":{},"to":{}}})", path(), path()),
                   fmt::format(R"({{"do":"duplicate_element","at":{}}})", path()),
                   fmt::format(R"({{"do":"remove_element","at":{}}})", path()),
                   fmt::format(R"({{"do":"add_element","at":{},"item":"{}"}})", path(), item()),
                   fmt::format(R"({{"do":"change_element","at":{},"item":"{}"}})", path(),
                               item())}[static_cast<std::size_t>(number(5))];
    const auto applied = apply_operation(project, operation);
    if (!applied) continue;
    ++accepted;
    const auto layout =
        strand::parse_layout(applied->project.strand->layout, strand_catalogue(applied->project));
    ASSERT_TRUE(layout) << operation << "\n" << applied->project.strand->layout << message(layout.problem());
    EXPECT_TRUE(applied->project.strand->layout.starts_with("# kept\n"));
    // Lists that have grown long begin anew.
    project = layout->items.size() > 12 ? strung_small() : applied->project;
  }
  EXPECT_GT(accepted, 150);
}

TEST(StrandOperations, SaysWhatWasDone) {
  EXPECT_EQ(done(strung_small(), R"({"do":"move_element","from":[2,1],"to":[2,0]})").sentence,
            "moved \"Full moon\" on the strand");
  EXPECT_EQ(done(strung_small(), R"({"do":"remove_element","at":[0]})").sentence, "took stop off the strand");
  EXPECT_EQ(done(strung_small(), R"({"do":"change_strand","worn":"neck","ease_mm":15})").sentence,
            "changed the strand's what it is worn on, ease");
}

TEST(StrandOperations, RefusesWhatIsNoPlaceOrCantBeRead) {
  const auto refused = [&](const std::string& operation) {
    const auto applied = apply_operation(strung_small(), operation);
    EXPECT_FALSE(applied.ok()) << operation;
    return applied.ok() ? ProblemCode::bad_json : applied.problem().code;
  };
  EXPECT_EQ(refused(R"({"do":"move_element","from":[9],"to":[0]})"), ProblemCode::out_of_range);
  EXPECT_EQ(refused(R"({"do":"move_element","from":[0],"to":[5]})"),
            ProblemCode::out_of_range);  // four are left
  EXPECT_EQ(refused(R"({"do":"remove_element","at":[0,0]})"), ProblemCode::out_of_range);
  EXPECT_EQ(refused(R"({"do":"remove_element","at":[]})"), ProblemCode::wrong_type);
  EXPECT_EQ(refused(R"({"do":"remove_element","at":[-1]})"), ProblemCode::wrong_type);
  EXPECT_EQ(refused(R"({"do":"add_element","at":[0]})"), ProblemCode::missing_field);
  EXPECT_EQ(refused(R"({"do":"add_element","item":"nothing"})"), ProblemCode::unknown_name);
  EXPECT_EQ(refused(R"({"do":"add_element","item":"stop, stop"})"), ProblemCode::bad_text);
  EXPECT_EQ(refused(R"({"do":"add_element","item":"fill sides with round-6"})"), ProblemCode::bad_text);
  EXPECT_EQ(refused(R"({"do":"close_strand","with":"nothing"})"), ProblemCode::unknown_name);
  Project none = strung_small();
  none.strand.reset();
  EXPECT_EQ(apply_operation(none, R"({"do":"remove_element","at":[0]})").problem().code,
            ProblemCode::missing_field);
  EXPECT_EQ(apply_operation(none, R"({"do":"change_strand","worn":"neck"})").problem().code,
            ProblemCode::missing_field);
  Project alone = strung_small();
  alone.strand->layout = "string round-8";
  EXPECT_EQ(apply_operation(alone, R"({"do":"remove_element","at":[0]})").problem().code,
            ProblemCode::out_of_range);
}

TEST(StrandOperations, CordsClosingAndWearer) {
  const Project closed =
      done(strung_small(),
           R"({"do":"close_strand","with":"slide","part":"clasp slide 14mm holes 2 apart 9.6mm hole 1.5mm"})")
          .project;
  EXPECT_GE(strung_of(closed)->closing, 0);
  EXPECT_LT(strung_of(done(closed, R"({"do":"close_strand"})").project)->closing, 0);
  const Project elastic = done(closed, R"({"do":"change_cords","kind":"elastic"})").project;
  EXPECT_EQ(strung_of(elastic)->cord, (strand::Cord{strand::CordKind::elastic, millimetres(0.6)}));
  const Project longer =
      done(
          closed,
          R"({"do":"change_strand","worn":"length","ease_mm":null,"sizes":[{"name":"45 cm","measure_mm":450}]})")
          .project;
  EXPECT_EQ(wearers_of(*longer.strand).front().measure, millimetres(450));
  EXPECT_EQ(longer.strand->layout, closed.strand->layout);
}

TEST(StrandOperations, ABandKeepsItsPlaceByAnotherName) {
  const Project project = strung_small();
  const auto at = [&](const Project& of, const std::string& name) {
    return static_cast<int>(
        std::find_if(of.bands.begin(), of.bands.end(), [&](const Band& band) { return band.name == name; }) -
        of.bands.begin());
  };
  const std::string band = std::to_string(at(project, "Full moon"));
  const Project renamed =
      done(project, R"({"do":"change_band","band":)" + band + R"(,"name":"Harvest moon"})").project;
  EXPECT_NE(list_of(renamed).find("(\"New moon\", \"Harvest moon\")"), std::string::npos);
  EXPECT_TRUE(is_strung(renamed, "Harvest moon"));
  EXPECT_EQ(
      apply_operation(project, R"({"do":"change_band","band":)" + band + R"(,"name":"stop"})").problem().code,
      ProblemCode::duplicate_name);
  // Other fields, and bands that aren't strung, leave it alone.
  EXPECT_EQ(done(project, R"({"do":"change_band","band":)" + band + R"(,"note":"x"})").project.strand,
            project.strand);
  const std::string other = std::to_string(at(project, "Last quarter"));
  EXPECT_EQ(done(project, R"({"do":"change_band","band":)" + other + R"(,"name":"stop"})").project.strand,
            project.strand);
  EXPECT_EQ(done(project, R"({"do":"duplicate_band","band":)" + band + "}").project.strand, project.strand);
}

TEST(StrandOperations, ABandThatIsRemovedIsTakenOff) {
  Project project = strung_small();
  Applied removed = done(project, R"({"do":"remove_band","band":0})");
  EXPECT_NE(list_of(removed.project).find("(\"Full moon\")"), std::string::npos);
  EXPECT_EQ(removed.sentence, "removed New moon, from the strand too");
  project.strand->layout = "string \"New moon\"";
  EXPECT_FALSE(done(project, R"({"do":"remove_band","band":0})").project.strand);
  project.bands[1].name = "New moon";
  EXPECT_TRUE(done(project, R"({"do":"remove_band","band":0})").project.strand);
  project.strand->layout = "string small-carrier";
  project.bands.clear();
  EXPECT_EQ(apply_operation(project, R"({"do":"remove_form","id":"small-carrier"})").problem().code,
            ProblemCode::in_use);
}

TEST(StrandOperations, AStrandToBeginWithClosesAndHolds) {
  for (const char* name : {"moonwatch", "moonwatch-necklace"}) {
    Project project = demo(name);
    project.strand.reset();
    for (const char* worn : {"wrist", "neck", "length"}) {
      const Project begun =
          done(project, std::string(R"({"do":"begin_strand","worn":")") + worn + "\"}").project;
      const auto strung = strung_of(begun);
      ASSERT_TRUE(strung) << message(strung.problem());
      const auto sizes = strung_sizes(begun, *strung, wearers_of(*begun.strand));
      ASSERT_TRUE(sizes) << message(sizes.problem());
      for (const StrungSize& size : sizes->sizes) {
        EXPECT_EQ(size.findings.size(), 0u)
            << name << ": " << (size.findings.empty() ? "" : strand::message(size.findings.front()));
        EXPECT_TRUE(size.fit.closes) << name << " " << worn << " " << size.fit.wearer.name;
      }
      for (const Band& band : begun.bands) EXPECT_TRUE(is_strung(begun, band.name));
    }
  }
  Project bare = demo("moonwatch");
  bare.strand.reset(), bare.bands.clear();
  EXPECT_TRUE(is_strung(done(bare, R"({"do":"begin_strand"})").project, "small-carrier"));
  bare.forms.clear();
  EXPECT_EQ(apply_operation(bare, R"({"do":"begin_strand"})").problem().code, ProblemCode::missing_field);
}

}  // namespace
}  // namespace evencount::project
