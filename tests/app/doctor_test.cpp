#include "app/doctor.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <map>

#include "app/run.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::app {
namespace {

using namespace evencount::testing;

/// A machine where all is well: true fonts, everything else made up in a folder.
Surroundings good_machine(const TemporaryFolder& folder) {
  std::filesystem::create_directories(folder.path() / "page");
  std::filesystem::create_directories(folder.path() / "programs");
  std::filesystem::create_directories(folder.path() / "projects");
  spill(folder / "page/index.html", "<!doctype html>");
  for (const char* program : {"programs/firefox", "programs/xdg-open", "programs/pdftotext"}) {
    spill(folder / program, "#!/bin/sh\n");
    std::filesystem::permissions(folder / program, std::filesystem::perms::owner_all);
  }
  Surroundings here = this_machine();
  here.families = {"Some Serif"};
  here.projects = folder / "projects";
  here.page_folder = folder / "page";
  here.search_path = "/nowhere:" + folder / "programs";
  here.locale = "de_DE.UTF-8";
  return here;
}

std::vector<Check> of_id(const std::vector<Check>& checks, const std::string& id) {
  std::vector<Check> found;
  std::copy_if(checks.begin(), checks.end(), std::back_inserter(found), [&](const Check& check) { return check.id == id; });
  return found;
}

TEST(Doctor, NothingIsWrongWithAGoodMachine) {
  const TemporaryFolder folder;
  const auto checks = examine(good_machine(folder));
  EXPECT_EQ(of_id(checks, "font").size(), page::booklet_fonts().size());
  for (const char* id : {"projects", "space", "page", "loopback", "browser", "opener", "pdftotext", "lettering", "locale"})
    EXPECT_EQ(of_id(checks, id).size(), 1u) << id;
  for (const Check& check : checks) {
    if (check.id == "space") continue;  // the machine's own
    EXPECT_EQ(check.health, Health::good) << check.found;
    EXPECT_EQ(check.remedy, "") << check.found;
  }
}

struct Spoiled {
  const char* id;
  Health health;
  const char* remedy;  ///< words of it
  void (*spoil)(Surroundings&, const TemporaryFolder&);
};

TEST(Doctor, EachThingThatIsMissingIsSaidWithItsRemedyAndChangesNothingElse) {
  const std::vector<Spoiled> all{
      {"font", Health::fault, "apt install fonts-lato", [](Surroundings& s, const TemporaryFolder&) { s.fonts[2].path = "/nowhere/Lato-Regular.ttf"; }},
      {"font", Health::fault, "apt install fonts-ebgaramond", [](Surroundings& s, const TemporaryFolder&) { s.fonts[0].path = s.fonts[2].path; }},  // another font
      {"font", Health::fault, "apt install fonts-ebgaramond",
       [](Surroundings& s, const TemporaryFolder& f) { spill(s.fonts[1].path = f / "no-font.otf", "no font"); }},
      {"projects", Health::fault, "--projects FOLDER", [](Surroundings& s, const TemporaryFolder& f) { spill(s.projects = f / "taken", ""); }},
      {"projects", Health::fault, "--projects FOLDER", [](Surroundings& s, const TemporaryFolder&) { s.projects = "/proc/evencount"; }},
      {"page", Health::fault, "tools/page", [](Surroundings& s, const TemporaryFolder&) { s.page_folder = ""; }},
      {"page", Health::fault, "tools/page", [](Surroundings& s, const TemporaryFolder& f) { s.page_folder = f / "programs"; }},
      // An address that is set aside for documents (RFC 5737), so that no machine has it.
      {"loopback", Health::fault, "ip link set lo up", [](Surroundings& s, const TemporaryFolder&) { s.loopback = "192.0.2.1"; }},
      {"browser", Health::note, "apt install firefox-esr", [](Surroundings&, const TemporaryFolder& f) { std::filesystem::remove(f / "programs/firefox"); }},
      {"browser", Health::note, "apt install firefox-esr",
       [](Surroundings&, const TemporaryFolder& f) { std::filesystem::permissions(f / "programs/firefox", std::filesystem::perms::owner_read); }},
      {"opener", Health::note, "apt install xdg-utils", [](Surroundings&, const TemporaryFolder& f) { std::filesystem::remove(f / "programs/xdg-open"); }},
      {"pdftotext", Health::note, "apt install poppler-utils", [](Surroundings&, const TemporaryFolder& f) { std::filesystem::remove(f / "programs/pdftotext"); }},
      {"lettering", Health::note, "apt install", [](Surroundings& s, const TemporaryFolder&) { s.families.clear(); }},
      {"locale", Health::note, "LANG=C.UTF-8", [](Surroundings& s, const TemporaryFolder&) { s.locale = "C"; }},
      {"locale", Health::note, "LANG=C.UTF-8", [](Surroundings& s, const TemporaryFolder&) { s.locale = ""; }},
  };
  for (const Spoiled& spoiled : all) {
    const TemporaryFolder folder;
    Surroundings here = good_machine(folder);
    const auto before = examine(here);
    spoiled.spoil(here, folder);
    const auto after = examine(here);
    ASSERT_EQ(before.size(), after.size());
    int changed = 0;
    for (std::size_t i = 0; i < after.size(); ++i) {
      if (after[i].health == before[i].health || after[i].id == "space") continue;  // another folder may lie on another disk
      ++changed;
      EXPECT_EQ(after[i].id, spoiled.id);
      EXPECT_EQ(after[i].health, spoiled.health) << after[i].found;
      EXPECT_NE(after[i].remedy.find(spoiled.remedy), std::string::npos) << after[i].remedy;
    }
    EXPECT_EQ(changed, 1) << spoiled.id << ": " << spoiled.remedy;
  }
}

TEST(Doctor, AFolderThatIsNotThereYetIsTriedAndTakenAwayAgain) {
  const TemporaryFolder folder;
  Surroundings here = good_machine(folder);
  here.projects = folder / "a/b/c";
  const Check check = of_id(examine(here), "projects").front();
  EXPECT_EQ(check.health, Health::good) << check.found;
  EXPECT_NE(check.found.find("can be made"), std::string::npos);
  EXPECT_FALSE(std::filesystem::exists(folder / "a"));
  here.projects = folder / "projects";
  spill(folder / "projects/mine.evencount.json", "{}");
  EXPECT_EQ(of_id(examine(here), "projects").front().health, Health::good);
  EXPECT_EQ(slurp(folder / "projects/mine.evencount.json"), "{}");
  EXPECT_EQ(std::distance(std::filesystem::directory_iterator(folder / "projects"), {}), 1);
}

TEST(Doctor, LittleRoomIsANoteAndNoneIsAFault) {
  EXPECT_EQ(check_space(10'000'000'000, "here").health, Health::good);
  EXPECT_EQ(check_space(100'000'000, "here").health, Health::note);
  EXPECT_EQ(check_space(0, "here").health, Health::fault);
  EXPECT_NE(check_space(0, "here").remedy, "");
}

TEST(Doctor, AnswersInJson) {
  const TemporaryFolder folder;
  good_machine(folder);
  const Ran good = run({"doctor", "--projects", folder / "projects", "--studio-files", folder / "page", "--json"});
  EXPECT_EQ(good.status, exit_done) << good.out;
  EXPECT_EQ(good.json()["faults"], 0);
  const Ran bad = run({"doctor", "--projects", folder / "page/index.html", "--studio-files", folder / "page", "--json"});
  EXPECT_EQ(bad.status, exit_findings) << bad.out;
  const auto answer = bad.json();
  EXPECT_EQ(answer["faults"], 1);
  std::map<std::string, int> states;
  for (const auto& check : answer["checks"]) {
    ++states[check["state"].get<std::string>()];
    EXPECT_EQ(check["remedy"].get<std::string>().empty(), check["state"] == "ok") << check;
  }
  EXPECT_EQ(states["fault"], 1);
}

}  // namespace
}  // namespace evencount::app
