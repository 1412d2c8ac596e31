#include "project/strand.hpp"

#include <gtest/gtest.h>

#include "project/case_file.hpp"
#include "project/json.hpp"
#include "strand/keeping.hpp"
#include "strand/two_cords.hpp"

namespace evencount::project {
namespace {

Project demo(const std::string& name) {
  const auto project =
      parse_project(testing::read_file(EVENCOUNT_SOURCE_DIR "/examples/" + name + ".evencount.json"));
  EXPECT_TRUE(project) << (project ? "" : message(project.problem()));
  return *project;
}

const std::vector<std::string> demos{"moonwatch", "moonwatch-necklace"};

std::vector<strand::Wearer> wrists() {
  std::vector<strand::Wearer> wearers;
  for (int mm = 140; mm <= 210; mm += 5)
    wearers.push_back({std::to_string(mm), strand::Worn::wrist, millimetres(mm), strand::ordinary_ease});
  return wearers;
}

TEST(ProjectStrand, DemosCloseForEveryWristAndSize) {
  for (const std::string& name : demos) {
    const Project project = demo(name);
    const auto strung = strung_of(project);
    ASSERT_TRUE(strung) << message(strung.problem());
    for (const auto& wearers : {wrists(), wearers_of(*project.strand)}) {
      const auto fits = strand::fit_sizes(*strung, wearers);
      ASSERT_TRUE(fits) << message(fits.problem());
      for (const strand::StrandFit& fit : *fits) {
        EXPECT_TRUE(fit.closes) << name << " " << fit.wearer.name;
        EXPECT_LE(std::abs(fit.best.error.mm()), 1.15 + 1e-9);  // half an 8/0 bead
        EXPECT_TRUE(strand::findings_of(*strung, fit.best.counts)->empty());
        EXPECT_TRUE(strand::two_cords(*strung, fit.best.counts, lean_of(*project.strand)));
      }
    }
  }
}

TEST(ProjectStrand, DemosNeedFourStopBeads) {
  for (const std::string& name : demos) {
    Project project = demo(name);
    std::string& layout = project.strand->layout;
    for (std::size_t at; (at = layout.find(" stop,")) != std::string::npos;) layout.erase(at, 6);
    const auto strung = strung_of(project);
    ASSERT_TRUE(strung) << message(strung.problem());
    const auto fit = strand::fit_strand(*strung, {.wearer = wearers_of(*project.strand)[2]});
    EXPECT_EQ(strand::findings_of(*strung, fit->best.counts)->size(),
              2u);  // the outer side of the first and the last band
  }
}

TEST(ProjectStrand, NamesWhatItHas) {
  Project project = demo("moonwatch");
  const auto catalogue = strand_catalogue(project);
  ASSERT_EQ(catalogue.size(), 8u + 1 + 1);
  EXPECT_EQ(catalogue[0].id, "New moon");
  EXPECT_EQ(catalogue[0].carrier->band->edge, 24);
  EXPECT_EQ(catalogue[8].id, "small-carrier");
  EXPECT_EQ(catalogue[9].id, "cylinder-11");
  project.strand->layout = "string round-8,\n  \"Old moon\"";
  EXPECT_EQ(strung_of(project).problem().where, "strand: line 2, column 3");
  project.strand.reset();
  EXPECT_EQ(strung_of(project).problem().code, ProblemCode::missing_field);
  EXPECT_EQ(wearers_of({.worn = strand::Worn::length}).size(), strand::necklace_sizes().size());
  EXPECT_EQ(wearers_of({.worn = strand::Worn::wrist, .ease = millimetres(10)})[2].ease, millimetres(10));
}

}  // namespace
}  // namespace evencount::project
