/// The many faces of `fit`.

#include <gtest/gtest.h>

#include <cmath>

#include "app/run.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::app {
namespace {

using namespace evencount::testing;
using nlohmann::json;

TEST(FitVerb, TheTableHoldsEverySize) {
  const Ran ran = run({"fit", "lens:17x5x9", "--table", "--json"});
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  const json table = ran.json();
  ASSERT_EQ(table["fits"].size(), 8u);
  for (const json& row : table["fits"]) {
    const std::string bead = row["bead"];
    const json alone = run({"fit", "lens:17x5x9", "--bead", bead, "--json"}).json();
    for (const char* field : {"edge", "columns", "verdict", "candidates"})
      EXPECT_EQ(row[field], alone[field]) << bead << ' ' << field;
  }
}

TEST(FitVerb, FacesAndStopBeadsOfASlidingBand) {
  const Ran ran =
      run({"fit", "lens:16x5x9,holes=9.6,hole=2", "--bead", "cylinder-11", "--use", "sliding", "--json"});
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  const json fit = ran.json();
  EXPECT_EQ(fit["faces"]["half_steps"].size(), 48u);
  EXPECT_EQ(fit["faces"]["windows"][0]["side"], "front");
  EXPECT_EQ(std::abs(fit["faces"]["windows"][1]["slide_to_front"].get<int>()), 12);
  const double smallest = fit["staying_on"]["stop_bead"]["smallest_mm"];
  EXPECT_GT(smallest, 5) << "larger than the form is thick";
  EXPECT_LT(smallest, 6) << "the demo's 6 mm stop beads hold";
  // "Carrier bead mania": cord of 2 mm or thinner, zinio.com/ch-de/explore/beadbutton/june-2018-i388547/carrier-bead-mania-a9620.
  EXPECT_LE(fit["staying_on"]["widest_cord_mm"].get<double>(), 2);
}

TEST(FitVerb, TwoFormsTogetherTakeTwiceTheColumns) {
  // Common practice, no source: two small carriers under one band, twice the columns, the same length.
  const json one = run({"fit", "lens:16x5x9", "--bead", "cylinder-11", "--use", "sliding", "--json"}).json();
  const json two =
      run({"fit", "lens:16x5x9", "--bead", "cylinder-11", "--use", "sliding", "--together", "2", "--json"})
          .json();
  EXPECT_EQ(two["columns"], 2 * one["columns"].get<int>());
  EXPECT_EQ(two["edge"], one["edge"]);
}

TEST(FitVerb, ARingStartIsCountedAtTheColumnPitch) {
  // "Hollow peyote beads", facetjewelry.com/stitching/projects/2017/05/hollow-peyote-beads: 3/4 in mandrel, 48 cylinders.
  const Ran ran = run({"fit", "round:0.75inx1in", "--bead", "cylinder-11", "--ring", "--json"});
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  EXPECT_EQ(ran.json()["ring_beads"], 48);
}

TEST(FitVerb, AStoneThatWouldFallOutIsAFinding) {
  EXPECT_EQ(run({"fit", "stone:14,girdle=0.5,dome=2.2,back=2.3", "--bead", "cylinder-11"}).status, exit_done);
  const Ran loose = run({"fit", "stone:14,girdle=0.5,dome=2.2,back=2.3", "--bead", "cylinder-11", "--draw-in",
                         "cylinder-8", "--json"});
  EXPECT_EQ(loose.status, exit_findings) << loose.out;
  EXPECT_FALSE(loose.json()["holds"].get<bool>());
}

TEST(FitVerb, AMeasuredOutlineFitsLikeTheFormItWasTakenFrom) {
  const TemporaryFolder folder;
  std::string table = "x,y\n";
  for (int i = 0; i < 72; ++i) {
    const double angle = 6.283185307179586 * i / 72;
    table += std::to_string(9 * std::cos(angle)) + "," + std::to_string(6.5 * std::sin(angle)) + "\n";
  }
  spill(folder / "oval.csv", table);
  const Ran traced =
      run({"fit", "outline:" + (folder / "oval.csv") + ",length=9", "--bead", "cylinder-11", "--json"});
  ASSERT_EQ(traced.status, exit_done) << traced.err;
  const json oval = run({"fit", "oval:18x13x9", "--bead", "cylinder-11", "--json"}).json();
  const json measured = traced.json();
  EXPECT_EQ(measured["columns"], oval["columns"]);
  const auto strain_of = [](const json& fit, int edge) {
    for (const json& candidate : fit["candidates"])
      if (candidate["edge"] == edge) return candidate["strain"].get<double>();
    return 1e9;
  };
  for (const int edge : {32, 33})
    EXPECT_NEAR(strain_of(measured, edge), strain_of(oval, edge), 0.005) << edge;

  // The points travel with the project.
  const std::string project = folder / "p.evencount.json";
  ASSERT_EQ(run({"band", project, "--form", "outline:" + (folder / "oval.csv") + ",length=9"}).status,
            exit_done);
  const json saved = json::parse(slurp(project));
  EXPECT_EQ(saved["forms"][0]["points"].size(), 72u);
  EXPECT_EQ(run({"proof", project}).status, exit_done);
}

TEST(FitVerb, ADentIsNamed) {
  const TemporaryFolder folder;
  spill(folder / "bean.csv", "0 ; 0\n10 ; 0\n10 ; 5\n5 ; 2\n0 ; 5\n");
  const Ran ran = run({"fit", "outline:" + (folder / "bean.csv"), "--bead", "cylinder-11"});
  EXPECT_EQ(ran.status, exit_bad_input);
  EXPECT_NE(ran.err.find("bean.csv"), std::string::npos) << ran.err;
  EXPECT_NE(ran.err.find("dent"), std::string::npos) << ran.err;
  EXPECT_NE(run({"fit", "outline:" + (folder / "bean.csv"), "--bead", "cylinder-11", "--bridge"}).status,
            exit_bad_input);
  spill(folder / "bad.csv", "0,0\n1,zero\n");
  const Ran bad = run({"fit", "outline:" + (folder / "bad.csv"), "--bead", "cylinder-11"});
  EXPECT_EQ(bad.status, exit_bad_input);
  EXPECT_NE(bad.err.find("line 2"), std::string::npos) << bad.err;
}

TEST(FitVerb, AGaugeIsMeasuredKeptAndUsed) {
  const TemporaryFolder folder;
  const std::string project = folder / "p.evencount.json";
  ASSERT_EQ(run({"band", project, "--columns", "6", "--edge", "24"}).status, exit_done);
  const Ran kept = run({"fit", "lens:17x5x9", "--bead", "cylinder-11", "--swatch",
                        "12 columns = 16.1 mm, 20 along the edge = 33.4 mm", "--finished",
                        "lens:17x5x9 took 24, snug", "--keep", project, "--hand", "tight hand", "--json"});
  ASSERT_EQ(kept.status, exit_done) << kept.err;
  const json gauge = kept.json()["gauge"];
  EXPECT_NEAR(gauge["column_mm"].get<double>(), 16.1 / 12, 1e-3);
  EXPECT_NEAR(gauge["edge_mm"].get<double>(), 1.67, 0.02);
  EXPECT_GT(gauge["uncertainty"].get<double>(), 0);
  const json used = run({"fit", "round:12x20", "--bead", "cylinder-11", "--from", project, "--hand",
                         "tight hand", "--json"})
                        .json();
  EXPECT_EQ(used["gauge"], gauge);
  const Ran none =
      run({"fit", "round:12x20", "--bead", "cylinder-11", "--from", project, "--hand", "loose hand"});
  EXPECT_EQ(none.status, exit_bad_input);
  EXPECT_NE(none.err.find("no saved gauge"), std::string::npos) << none.err;
}

TEST(FitVerb, ExplainsAndDraws) {
  const TemporaryFolder folder;
  const Ran ran =
      run({"fit", "lens:17x5x9", "--bead", "cylinder-11", "--explain", "--draw", folder / "s.svg"});
  ASSERT_EQ(ran.status, exit_done) << ran.err;
  EXPECT_NE(ran.out.find("divided by 1.66"), std::string::npos) << ran.out;
  EXPECT_NE(slurp(folder / "s.svg").find("<svg"), std::string::npos);
}

TEST(FitVerb, ThreeBeadsAreNoRing) {
  const Ran ran = run({"fit", "round:0.5x20", "--bead", "cylinder-8", "--gauge", "2.65x4"});
  EXPECT_EQ(ran.status, exit_bad_input) << ran.out;
  EXPECT_NE(ran.err.find("at least 4"), std::string::npos) << ran.err;
}

}  // namespace
}  // namespace evencount::app
