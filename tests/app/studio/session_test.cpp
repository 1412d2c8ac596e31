#include "app/studio/session.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <random>

#include "app/project_file.hpp"
#include "app/run.hpp"
#include "project/json.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::app::studio {
namespace {

using evencount::testing::slurp;
using evencount::testing::spill;
using evencount::testing::TemporaryFolder;

std::string two_bands() {
  std::string cells;
  for (int step = 0; step < 20; ++step) cells += fmt::format("{}\"10A\"", step == 0 ? "" : ",");
  const auto band = [&](const char* name) {
    return fmt::format(
        R"({{"name": "{}", "technique": "peyote-even-count", "bead": "cylinder-11", "closure": "open", "columns": 10, "edge": 20, "cells": [{}]}})",
        name, cells);
  };
  return fmt::format(R"({{"format": 1, "title": "Two", "beads": [{{"id": "cylinder-11"}}], "legend": [
    {{"letter": "A", "name": "night", "colour": "#101030", "bead": "cylinder-11"}}, {{"letter": "B", "name": "moon", "colour": "#ffffee", "bead": "cylinder-11"}}],
    "bands": [{}, {}]}})",
                     band("One"), band("Two"));
}

/// A project in a folder of its own, and the clock of its sessions.
struct Place {
  TemporaryFolder folder;
  std::string file = folder / "two.evencount.json";
  std::int64_t now = 1'000;
  Place() { spill(file, two_bands()); }
  [[nodiscard]] std::unique_ptr<Session> open() {
    auto session = Session::open(file, [this] { return now; });
    EXPECT_TRUE(session.ok()) << message(session.problem());
    return session ? std::move(*session) : nullptr;
  }
};

std::string set(int band, int column, int step, char letter = 'B') {
  return fmt::format(R"({{"do":"set","band":{},"cells":[[{},{}]],"letter":"{}"}})", band, column, step,
                     letter);
}

TEST(Session, WhatIsAcceptedIsInTheHistoryAndSoonInTheFile) {
  Place place;
  const std::string before = slurp(place.file);
  auto session = place.open();
  const auto done = session->operate(0, set(0, 1, 1));
  ASSERT_TRUE(done.ok()) << message(done.problem());
  EXPECT_EQ(done->revision, 1);
  EXPECT_EQ(done->undo, "drew 1 bead of B on One");
  EXPECT_EQ(slurp(place.file), before);
  EXPECT_EQ(load_project(place.file).value(), *session->state().project)
      << "the command line sees what is only in the history";
  session->tend(place.now, 700);
  EXPECT_EQ(slurp(place.file), before) << "not yet";
  place.now += 1000;
  session->tend(place.now, 700);
  EXPECT_EQ(slurp(place.file), project::to_json(*session->state().project));
  EXPECT_TRUE(session->is_saved());
}

TEST(Session, UndoAndRedoGoAllTheWayAlsoAfterARestart) {
  Place place;
  std::vector<project::Project> states;
  std::mt19937 random(3);
  {
    auto session = place.open();
    states.push_back(*session->state().project);
    for (int i = 0; i < 30; ++i) {
      const int step = static_cast<int>(random() % 19);
      ASSERT_TRUE(
          session->operate(session->revision(), set(i % 2, i % 10, step, i % 3 == 0 ? 'A' : 'B')).ok());
      if (*session->state().project != states.back()) states.push_back(*session->state().project);
    }
  }
  auto session = place.open();
  EXPECT_EQ(*session->state().project, states.back());
  for (std::size_t i = states.size() - 1; i-- > 0;) {
    ASSERT_TRUE(session->undo(session->revision()).ok());
    ASSERT_EQ(*session->state().project, states[i]);
  }
  EXPECT_EQ(session->undo(session->revision()).problem().code, ProblemCode::not_found);
  session.reset();
  session = place.open();
  for (std::size_t i = 1; i < states.size(); ++i) {
    ASSERT_TRUE(session->redo(session->revision()).ok());
    ASSERT_EQ(*session->state().project, states[i]);
  }
  EXPECT_EQ(session->redo(session->revision()).problem().code, ProblemCode::not_found);
}

TEST(Session, AnOlderViewsChangeIsPutOnTopWhereItCan) {
  Place place;
  auto session = place.open();
  ASSERT_TRUE(session->operate(0, set(0, 1, 1)).ok());
  ASSERT_TRUE(session->operate(0, set(1, 1, 1)).ok()) << "another band";
  ASSERT_TRUE(session->operate(0, set(0, 2, 1)).ok()) << "another cell";
  ASSERT_TRUE(session->operate(1, R"({"do":"change_texts","title":"New"})").ok()) << "a text";
  const auto refused = session->operate(0, set(0, 1, 1, 'B'));
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, ProblemCode::out_of_date);
  EXPECT_EQ(session->operate(3, R"({"do":"change_texts","title":"Other"})").problem().code,
            ProblemCode::out_of_date);
  ASSERT_TRUE(session->operate(4, R"({"do":"reorder_legend","letters":["B","A"]})").ok());
  EXPECT_EQ(session->operate(4, set(0, 5, 5)).problem().code, ProblemCode::out_of_date)
      << "positions in the legend have moved";
  ASSERT_TRUE(session->operate(5, R"({"do":"remove_band","band":0})").ok());
  EXPECT_EQ(session->operate(5, set(1, 5, 5)).problem().code, ProblemCode::out_of_date) << "bands have moved";
  EXPECT_EQ(session->undo(5).problem().code, ProblemCode::out_of_date);
  EXPECT_EQ(session->operate(99, set(0, 5, 5)).problem().code, ProblemCode::out_of_date);
  EXPECT_EQ(session->revision(), 6);
}

TEST(Session, StepsLeadAnOldViewToTheNewState) {
  Place place;
  auto session = place.open();
  project::Project view = *session->state().project;
  for (int i = 0; i < 10; ++i) ASSERT_TRUE(session->operate(session->revision(), set(0, i, i)).ok());
  ASSERT_TRUE(session->undo(10).ok());
  const auto steps = session->steps_after(4);
  ASSERT_TRUE(steps.ok());
  EXPECT_EQ(steps->size(), 7u);
  const auto all = session->steps_after(0);
  for (const Step& step : *all) view = project::apply(view, *project::parse_patch(step.patch)).value();
  EXPECT_EQ(view, *session->state().project);
  EXPECT_EQ(session->steps_after(12).problem().code, ProblemCode::not_found);
}

TEST(Session, APreviewChangesNothingAndIsWhatTheChangeThenDoes) {
  Place place;
  const auto session = place.open();
  const State before = session->state();
  const std::string fill = R"({"do":"replace_letter","from":"A","to":"B"})";
  const auto would = session->preview(before.revision, fill);
  ASSERT_TRUE(would) << message(would.problem());
  EXPECT_EQ(session->state().revision, before.revision);
  EXPECT_EQ(*session->state().project, *before.project);
  const auto did = session->operate(before.revision, fill);
  ASSERT_TRUE(did) << message(did.problem());
  EXPECT_EQ(would->patch, did->patch);
  EXPECT_EQ(would->sentence, did->sentence);
}

TEST(Session, WhatChangesNothingIsNoRevision) {
  Place place;
  auto session = place.open();
  const auto done = session->operate(0, set(0, 1, 1, 'A'));
  ASSERT_TRUE(done.ok());
  EXPECT_EQ(done->revision, 0);
}

TEST(Session, AFileThatWasChangedWhileClosedIsAnEditThatCanBeUndone) {
  Place place;
  { ASSERT_TRUE(place.open()->operate(0, set(0, 1, 1)).ok()); }
  const auto ours = load_project(place.file);
  auto theirs = *ours;
  theirs.title = "Theirs";
  spill(place.file, project::to_json(theirs));
  auto session = place.open();
  EXPECT_EQ(*session->state().project, theirs);
  EXPECT_EQ(session->state().undo, "changed by another program");
  ASSERT_TRUE(session->undo(session->revision()).ok());
  EXPECT_EQ(*session->state().project, *ours);
}

TEST(Session, AFileThatIsChangedWhileOpenKeepsBothChanges) {
  Place place;
  auto session = place.open();
  ASSERT_TRUE(session->operate(0, set(0, 1, 1)).ok());  // not in the file yet
  auto theirs = *project::parse_project(two_bands());
  theirs.title = "Theirs";
  spill(place.file, project::to_json(theirs));
  const State state = session->state();
  EXPECT_EQ(state.project->title, "Theirs");
  EXPECT_EQ(state.project->bands[0].chart.at({1, 1}), 1);
  EXPECT_EQ(state.revision, 2);
  EXPECT_EQ(slurp(place.file), project::to_json(*state.project));
}

TEST(Session, TheirChangeWinsWhereBothChangedTheSameAndOursIsInTheHistory) {
  Place place;
  auto session = place.open();
  ASSERT_TRUE(session->operate(0, set(0, 1, 1)).ok());
  const auto ours = *session->state().project;
  auto theirs = *project::parse_project(two_bands());
  theirs.bands[0].chart.set({1, 1}, chart::no_bead);
  spill(place.file, project::to_json(theirs));
  EXPECT_EQ(*session->state().project, theirs);
  ASSERT_TRUE(session->undo(2).ok());
  EXPECT_EQ(*session->state().project, ours);
}

TEST(Session, AFileThatCanNotBeReadIsNotOverwritten) {
  Place place;
  auto session = place.open();
  spill(place.file, "{ half");
  ASSERT_TRUE(session->operate(0, set(0, 1, 1)).ok()) << "what is done is still kept";
  EXPECT_FALSE(session->save().ok());
  EXPECT_EQ(slurp(place.file), "{ half");
  EXPECT_NE(session->state().file_problem, "");
  spill(place.file, two_bands());
  EXPECT_EQ(session->state().file_problem, "");
  ASSERT_TRUE(session->save().ok());
  EXPECT_EQ(load_project(place.file).value(), *session->state().project);
}

TEST(Session, AClockThatIsSetBackHoldsNothingUp) {
  Place place;
  auto session = place.open();
  ASSERT_TRUE(session->operate(0, set(0, 1, 1)).ok());
  session->tend(10'000, 700);
  place.now = -3'600'000;  // the wall clock, from here on an hour before it began
  ASSERT_TRUE(session->operate(1, set(0, 2, 2)).ok());
  ASSERT_TRUE(session->undo(2).ok());
  ASSERT_TRUE(session->redo(3).ok());
  session->tend(10'250, 700);
  session->tend(11'000, 700);
  EXPECT_TRUE(session->is_saved());
  const auto all = session->list(100, 100);
  ASSERT_TRUE(all.ok());
  ASSERT_EQ(all->size(), 4u);
  for (std::size_t i = 0; i < all->size(); ++i) EXPECT_EQ(all->at(i).number, static_cast<std::int64_t>(4 - i)) << "numbers, not times, are the order";
  EXPECT_LT(all->front().at, all->back().at);
}

TEST(Session, AChangeIsSeenWhateverItsTime) {
  Place place;
  auto session = place.open();
  const auto before = std::filesystem::last_write_time(place.file);
  std::string text = two_bands();
  text.replace(text.find("Two"), 3, "Six");  // as long as it was
  spill(place.file, text);
  std::filesystem::last_write_time(place.file, before);
  EXPECT_EQ(session->state().project->title, "Six") << "of the same size and the same time";
  text.replace(text.find("Six"), 3, "Ten");
  spill(place.file, text);
  std::filesystem::last_write_time(place.file, before - std::chrono::hours(24 * 365));
  EXPECT_EQ(session->state().project->title, "Ten") << "a year older";
}

TEST(Session, ADeletedFileIsWrittenAgainWithTheNextChange) {
  Place place;
  auto session = place.open();
  ASSERT_TRUE(session->operate(0, set(0, 1, 1)).ok());
  ASSERT_TRUE(session->save().ok());
  std::filesystem::remove(place.file);
  EXPECT_NE(session->state().file_problem, "");
  session->tend(0, 0);
  EXPECT_FALSE(std::filesystem::exists(place.file)) << "nothing changed since";
  ASSERT_TRUE(session->operate(1, set(0, 2, 2)).ok());
  session->tend(0, 0);
  EXPECT_EQ(load_project(place.file).value(), *session->state().project);
  EXPECT_EQ(session->state().file_problem, "");
  std::filesystem::remove(place.file);
  ASSERT_TRUE(session->save().ok()) << "asked for";
  EXPECT_TRUE(std::filesystem::exists(place.file));
  std::filesystem::remove(place.file);
  session.reset();
  EXPECT_FALSE(std::filesystem::exists(place.file)) << "deleted, and nothing changed since";
}

TEST(Session, AFolderInTheFilesPlaceIsLeftAlone) {
  Place place;
  auto session = place.open();
  std::filesystem::remove(place.file);
  std::filesystem::create_directory(place.file);
  ASSERT_TRUE(session->operate(0, set(0, 1, 1)).ok()) << "what is done is still kept";
  EXPECT_NE(session->state().file_problem, "");
  EXPECT_FALSE(session->save().ok());
  EXPECT_TRUE(std::filesystem::is_directory(place.file));
  std::filesystem::remove(place.file);
  ASSERT_TRUE(session->save().ok());
  EXPECT_EQ(load_project(place.file).value(), *session->state().project);
}

TEST(Session, ALinkInTheFilesPlaceIsFollowed) {
  Place place;
  auto session = place.open();
  std::string text = two_bands();
  text.replace(text.find("Two"), 3, "Six");
  spill(place.folder / "elsewhere.json", text);
  std::filesystem::remove(place.file);
  std::filesystem::create_symlink("elsewhere.json", place.file);
  EXPECT_EQ(session->state().project->title, "Six") << "what it leads to is a change by another program";
  ASSERT_TRUE(session->operate(session->revision(), set(0, 1, 1)).ok());
  ASSERT_TRUE(session->save().ok());
  EXPECT_TRUE(std::filesystem::is_symlink(place.file));
  EXPECT_EQ(slurp(place.folder / "elsewhere.json"), project::to_json(*session->state().project));
}

TEST(Session, WithoutItsHistoryNothingIsAccepted) {
  Place place;
  auto session = place.open();
  ASSERT_TRUE(session->operate(0, set(0, 1, 1)).ok());
  std::filesystem::rename(history_file(place.file), place.folder / "away");
  const auto refused = session->operate(1, set(0, 2, 2));
  ASSERT_FALSE(refused.ok()) << "it would be lost with the session";
  EXPECT_EQ(refused.problem().code, ProblemCode::file_unwritable);
  EXPECT_EQ(session->revision(), 1);
  std::filesystem::rename(place.folder / "away", history_file(place.file));
  EXPECT_TRUE(session->operate(1, set(0, 2, 2)).ok());
}

TEST(Session, ALaggingFileIsBroughtUpToItsHistory) {
  Place place;
  const std::string before = slurp(place.file);
  project::Project after;
  {
    auto session = place.open();
    ASSERT_TRUE(session->operate(0, set(0, 1, 1)).ok());
    after = *session->state().project;
    // As a kill leaves it: the history as it is, the file as it was. Copies, since the end of the session saves.
    std::filesystem::copy_file(history_file(place.file), place.folder / "lag.evencount.history");
    std::filesystem::copy_file(history_file(place.file) + "-wal", place.folder / "lag.evencount.history-wal");
    spill(place.folder / "lag.evencount.json", before);
  }
  const std::string lag = place.folder / "lag.evencount.json";
  EXPECT_EQ(load_project(lag).value(), after);
  auto session = Session::open(lag, [] { return std::int64_t{5}; });
  ASSERT_TRUE(session.ok()) << message(session.problem());
  EXPECT_EQ(*(*session)->state().project, after);
  EXPECT_EQ((*session)->revision(), 1);
  EXPECT_EQ(slurp(lag), project::to_json(after));
}

TEST(Session, ASecondOneIsRefused) {
  Place place;
  auto session = place.open();
  const auto second = Session::open(place.file, [] { return std::int64_t{0}; });
  ASSERT_FALSE(second.ok());
  EXPECT_EQ(second.problem().code, ProblemCode::in_use);
}

TEST(Session, AnUnreadableProjectLeavesNoHistoryBehind) {
  const TemporaryFolder folder;
  spill(folder / "bad.evencount.json", "{}");
  EXPECT_FALSE(Session::open(folder / "bad.evencount.json", [] { return std::int64_t{0}; }).ok());
  EXPECT_FALSE(std::filesystem::exists(folder / "bad.evencount.history"));
}

TEST(Session, CostsLittle) {
  Place place;
  project::Project large = *project::parse_project(two_bands());
  large.bands[0].chart = *chart::Chart::make(200, 300, 0);
  spill(place.file, project::to_json(large));
  auto session = place.open();
  std::vector<double> times;
  for (int i = 0; i < 200; ++i) {
    const auto begin = std::chrono::steady_clock::now();
    ASSERT_TRUE(session->operate(session->revision(), set(0, i % 200, i % 300)).ok());
    times.push_back(
        std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count());
  }
  std::sort(times.begin(), times.end());
  fmt::print("an operation on 200 x 300 cells, to disk: median {:.2f} ms, 95 % below {:.2f} ms\n", times[100],
             times[190]);
}

}  // namespace
}  // namespace evencount::app::studio
