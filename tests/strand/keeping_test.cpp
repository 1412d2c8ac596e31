#include "strand/keeping.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "bead/thread.hpp"
#include "layouts.hpp"
#include "random_runs.hpp"

namespace evencount::strand {
namespace {

std::vector<Finding> findings(const std::string& text, int count = 1) {
  const Strung strung = strung_of(text);
  const auto found = findings_of(strung, Counts(strung.runs.size(), count));
  EXPECT_TRUE(found) << text;
  return *found;
}
bool has(const std::vector<Finding>& findings, FindingCode code) {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) { return f.code == code; });
}
std::string all_messages(const std::vector<Finding>& findings) {
  std::string text;
  for (const Finding& finding : findings) text += message(finding) + "\n";
  return text;
}
const std::string two = "cords 2 of braided 0.6mm ", ends = " crimp t 2mm string t, ", out = ", t";

TEST(Keeping, TheDemosHold) {
  for (const std::string& text : {bracelet_text, necklace_text}) {
    const Strung strung = strung_of(text);
    Counts counts;
    for (const strand::Run& run : strung.runs)
      counts.push_back(strung.groups[static_cast<std::size_t>(run.group)].name == "gaps" ? 1 : 20);
    EXPECT_EQ(all_messages(*findings_of(strung, counts)), "");
  }
}

TEST(Keeping, BandsWithoutStopsAreFound) {
  auto found = findings(two + "string 10 round-8, moon, 10 round-8");
  ASSERT_EQ(found.size(), 2u) << all_messages(found);  // one for each side
  EXPECT_EQ(found[0].code, FindingCode::band_not_held);
  EXPECT_EQ(found[0].where, "moon band (piece 11), before");
  EXPECT_NEAR(found[0].size.mm(), 5.34, 0.015);  // docs/algorithms/staying_on.md
  found = findings(two + "bead s 4mm string s, moon, s");
  EXPECT_EQ(found[0].code, FindingCode::stop_only_catches) << all_messages(found);
  EXPECT_TRUE(findings(two + "bead s 4mm string s, fixed, s").empty());
}

TEST(Keeping, StopsOfTheSizeNamedHold) {
  const auto found = findings(two + "string 10 round-8, moon, 10 round-8");
  const std::string size = std::to_string(found[0].size.mm());
  EXPECT_TRUE(findings(two + "bead s " + size + "mm hole 1mm string s, moon, s").empty());
  EXPECT_FALSE(
      findings(two + "bead s " + std::to_string(found[0].size.mm() - 0.03) + "mm hole 1mm string s, moon, s")
          .empty());
  // One on both cords, where two have no room: the usual holes of this carrier are 6.4 mm apart.
  auto near = catalogue();
  near[0] = *form_element("moon", "moon band",
                          {*form::parse_form("lens:16x5x9"), 1, cylinder_band(6, 24), form::Use::sliding});
  const auto strung = lay_strung(*parse_layout("cords 2 of braided 0.6mm string moon", near), near);
  const auto asked = findings_of(*strung, {});
  ASSERT_EQ(asked->size(), 2u);
  EXPECT_NE((*asked)[0].mend.find("both cords together"), std::string::npos) << message((*asked)[0]);
  EXPECT_NEAR((*asked)[0].size.mm(), 11.57, 0.02);
  const auto mended = lay_strung(
      *parse_layout("cords 2 of braided 0.6mm bead s 11.6mm hole 2mm string both s, moon, both s", near),
      near);
  EXPECT_EQ(all_messages(*findings_of(*mended, {})), "");
}

TEST(Keeping, ABandIsJudgedByItselfWhateverElseHangsThere) {
  auto all = catalogue();
  const auto band = [&](const std::string& id, const char* notation, form::SlidingBand round) {
    all.push_back(*form_element(id, id, {*form::parse_form(notation), 1, std::move(round), form::Use::sliding}));
  };
  const char* moon = "lens:16x5x9,holes=9.6,hole=2";
  form::SlidingBand coarse = cylinder_band(6, 24), loose = cylinder_band(6, 24);
  coarse.bead = *bead::find_size("round-11"), loose.gauge.edge = 1.02 * loose.gauge.edge;
  band("equal", moon, cylinder_band(6, 24));
  band("thicker", "lens:16x9x9,holes=9.6,hole=2", cylinder_band(6, 24));
  band("nearer", "lens:16x5x9,holes=8,hole=2", cylinder_band(6, 24));
  band("longer", moon, cylinder_band(6, 25));
  band("coarse", moon, coarse);
  band("loose", moon, loose);
  const auto sizes = [&](const std::string& list) {
    const auto layout = parse_layout(two + "string 10 round-8, " + list + ", 10 round-8", all);
    EXPECT_TRUE(layout) << (layout ? "" : message(layout.problem()));
    const auto strung = lay_strung(*layout, all);
    const auto found = findings_of(*strung, {}).value();
    std::vector<double> needed;
    for (const Finding& finding : found) needed.push_back(finding.size.mm());
    return needed;
  };
  const auto of_the_moon = sizes("moon");
  ASSERT_EQ(of_the_moon.size(), 2u);
  for (const std::string other : {"equal", "thicker", "nearer", "longer", "coarse", "loose"}) {
    const auto alone = sizes(other), both = sizes("moon, 20 round-8, " + other);
    ASSERT_EQ(both.size(), 4u) << other;
    EXPECT_EQ(std::vector(both.begin(), both.begin() + 2), of_the_moon) << other;
    EXPECT_EQ(std::vector(both.begin() + 2, both.end()), alone) << other;
    EXPECT_EQ(alone == of_the_moon, other == "equal") << other;
  }
}

TEST(Keeping, NeighboursHoldWhenNearEnough) {
  const std::string stops = two + "bead s 6mm hole 1.5mm string s, between with round-8 from ";
  EXPECT_EQ(all_messages(findings(stops + "1 to 1 (3 moon), s", 1)), "");
  const auto found = findings(stops + "2 to 2 (3 moon), s", 2);
  ASSERT_EQ(found.size(), 4u) << all_messages(found);
  EXPECT_EQ(found[0].code, FindingCode::band_not_held);
  EXPECT_NEAR(found[0].size.mm(), 8.1 / 2 - 0.45,
              0.011);  // half of the band less what is bare beside the neighbour's
  EXPECT_FALSE(findings(two + "bead s 6mm hole 1.5mm string s, moon, round-8, carrier, s")
                   .empty());  // it slides on to a bare one
}

TEST(Keeping, AStopFurtherOffMustBeLarger) {
  EXPECT_TRUE(findings(two + "bead s 5.4mm hole 1mm string s, moon, s").empty());
  EXPECT_FALSE(findings(two + "bead s 5.4mm hole 1mm string s, 2 round-11, moon, 2 round-11, s").empty());
  EXPECT_TRUE(findings(two + "bead s 5.6mm hole 1mm string s, 2 round-11, moon, 2 round-11, s")
                  .empty());  // not even bent
  EXPECT_FALSE(findings(two + "bead s 5.6mm hole 1mm string s, 4 round-11, moon, 4 round-11, s").empty());
}

TEST(Keeping, CordsPassAsOftenAsTheyMust) {
  auto found = findings("cords 1 of leather 1.5mm string round-8, tube-band");
  ASSERT_TRUE(has(found, FindingCode::cord_does_not_pass)) << all_messages(found);
  const std::string take = "take a cord of ";
  ASSERT_TRUE(found[0].mend.starts_with(take)) << found[0].mend;
  const double thinner_mm = std::stod(found[0].mend.substr(take.size()));
  for (const double more_mm : {0.0, 0.01})
    EXPECT_EQ(has(findings("cords 1 of leather " + std::to_string(thinner_mm + more_mm) + "mm string round-8"),
                  FindingCode::cord_does_not_pass),
              more_mm > 0)
        << found[0].mend;
  // A crimp takes it twice, and on wire so do the beads that hide the tail.
  EXPECT_FALSE(has(
      findings("cords 1 of wire 0.8mm crimp t 2mm clasp c 9mm hole 2mm close with c string t, 20 round-8, t"),
      FindingCode::end_not_fast));
  found =
      findings("cords 1 of wire 0.7mm crimp t 2mm clasp c 9mm hole 2mm close with c string t, 20 round-8, t");
  ASSERT_EQ(found.size(), 1u) << all_messages(found);
  EXPECT_EQ(found[0].code, FindingCode::cord_does_not_pass);
  EXPECT_EQ(found[0].piece, 1);
  EXPECT_NE(found[0].found.find("goes once through its hole"), std::string::npos) << found[0].found;
  EXPECT_EQ(found[0].expected, "twice");
  EXPECT_TRUE(
      findings("cords 1 of wire 0.6mm crimp t 2mm clasp c 9mm hole 2mm close with c string t, 20 round-8, t")
          .empty());
  EXPECT_TRUE(has(findings(two + "string both round-11"), FindingCode::cord_does_not_pass));
}

// On wire the tail lies in the beads of the last 20 mm before a crimp, and in no others.
TEST(Keeping, TailsLieBesideTheirCrimp) {
  const Strung strung = strung_of("cords 1 of wire 0.4mm crimp t 2mm string t, 30 round-8, t");
  const std::vector<int> passes = cord_passes(strung, {});
  ASSERT_EQ(passes.size(), 32u);
  for (int i = 1; i <= 30; ++i) {
    const double to_crimp_mm = std::min(i - 1, 30 - i) * 2.3;
    EXPECT_EQ(passes[static_cast<std::size_t>(i)], to_crimp_mm < 20 ? 2 : 1) << i;
  }
}

TEST(Keeping, TheChangesOfCordMend) {
  for (double hole = 0.4; hole < 3; hole += 0.13)
    for (const int passes : {1, 2, 3}) {
      const Length cord = thickest_for(millimetres(hole), passes);
      EXPECT_EQ(bead::passes_that_fit(millimetres(hole), 0.9999 * cord, 0.9999 * cord), passes);
      EXPECT_LT(bead::passes_that_fit(millimetres(hole), 1.0001 * cord, 1.0001 * cord), passes);
      EXPECT_NEAR(smallest_hole_for(cord, passes).mm(), hole, 1e-9);
    }
}

TEST(Keeping, KnotsEndsAndNeighbours) {
  EXPECT_TRUE(has(findings("cords 1 of braided 0.5mm knot k 1mm string round-8, k, round-8"),
                  FindingCode::knot_slips));
  EXPECT_FALSE(has(findings("cords 1 of braided 0.5mm knot k 1.2mm string round-8, k, round-8"),
                   FindingCode::knot_slips));
  EXPECT_TRUE(has(findings("cords 1 of wire 0.4mm string 9 round-8"), FindingCode::wire_not_closed));
  EXPECT_FALSE(has(findings("cords 1 of elastic 0.7mm string 9 round-8"), FindingCode::wire_not_closed));
  EXPECT_TRUE(has(findings("cords 1 of wire 0.4mm clasp c 9mm close with c string 9 round-8"),
                  FindingCode::end_not_fast));
  EXPECT_TRUE(has(findings(two + "bead s 10mm hole 1mm string s, moon, s"), FindingCode::stops_push_apart));
  EXPECT_FALSE(has(findings(two + "bead s 9mm hole 1mm string s, moon, s"), FindingCode::stops_push_apart));
  EXPECT_TRUE(has(findings(two + "spacer b 3mm holes 2 apart 5mm hole 1mm string b, fixed"),
                  FindingCode::holes_apart_differ));
  EXPECT_FALSE(has(findings(two + "spacer b 3mm holes 2 apart 5mm hole 1mm string b, round-8, fixed"),
                   FindingCode::holes_apart_differ));
}

TEST(Keeping, MoreOfItNeverHurts) {
  const auto count = [](const std::string& text, FindingCode code) {
    const auto found = findings(text);
    return std::count_if(found.begin(), found.end(), [&](const Finding& f) { return f.code == code; });
  };
  std::ptrdiff_t unheld = 2, blocked = 100;
  for (double size = 2; size < 9; size += 0.5) {
    const std::string text = two + "bead s " + std::to_string(size) + "mm hole 0.9mm string s, moon, s";
    const auto now = count(text, FindingCode::band_not_held) + count(text, FindingCode::stop_only_catches);
    EXPECT_LE(now, unheld) << size;
    unheld = now;
  }
  EXPECT_EQ(unheld, 0);
  for (double cord = 1.6; cord > 0.2; cord -= 0.1) {
    const auto now = count("cords 2 of braided " + std::to_string(cord) +
                               "mm crimp t 2mm string t, round-8, both round-6, moon, round-11, t",
                           FindingCode::cord_does_not_pass);
    EXPECT_LE(now, blocked) << cord;
    blocked = now;
  }
  EXPECT_EQ(blocked, 0);
}

/// The list from its other end.
std::string reversed_list(std::vector<std::string> names) {
  std::reverse(names.begin(), names.end());
  std::string text;
  for (const auto& name : names) text += (text.empty() ? "" : ", ") + name;
  return text;
}

TEST(Keeping, TheSameFromTheOtherEnd) {
  Random random(12);
  const std::vector<std::string> things{"moon",  "round-8", "round-8",  "s",   "big",
                                        "fixed", "carrier", "both big", "bar", "round-11"};
  int found_any = 0;
  for (int i = 0; i < 150; ++i) {
    std::vector<std::string> names;
    for (int n = 2 + pick(random, 8); n > 0; --n)
      names.push_back(things[static_cast<std::size_t>(pick(random, 10))]);
    std::string list = reversed_list(names);
    std::reverse(names.begin(), names.end());
    const std::string head =
        two +
        "bead s 4.5mm hole 1mm bead big 7mm hole 1mm spacer bar 3mm holes 2 apart 9.6mm hole 1mm string ";
    const auto forwards = findings(head + list), backwards = findings(head + reversed_list(names));
    const auto last = static_cast<int>(names.size()) - 1;
    const auto count = [&](const std::vector<Finding>& all, int piece, FindingCode code) {
      return std::count_if(all.begin(), all.end(),
                           [&](const Finding& f) { return f.piece == piece && f.code == code; });
    };
    for (const FindingCode code :
         {FindingCode::band_not_held, FindingCode::stop_only_catches, FindingCode::stops_push_apart})
      for (int p = 0; p <= last; ++p) {
        EXPECT_EQ(count(forwards, p, code), count(backwards, last - p, code)) << list;
        found_any += count(forwards, p, code) > 0;
      }
  }
  EXPECT_GT(found_any, 100);
}

}  // namespace
}  // namespace evencount::strand
