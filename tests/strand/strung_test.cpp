#include "strand/strung.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "layouts.hpp"
#include "random_runs.hpp"

namespace evencount::strand {
namespace {

std::string names(const Strung& strung, const Counts& counts) {
  std::string text;
  for (const Piece& piece : pieces_of(strung, counts))
    text += strung.elements[static_cast<std::size_t>(piece.element)].id + " ";
  return text;
}
const std::string head =
    "cords 2 of braided 0.6mm bead a 2mm bead b 3mm cap c 2mm joiner j 5mm holes 2 apart 5mm string ";

TEST(Strung, RepeatsHalvesAndRuns) {
  EXPECT_EQ(names(strung_of(head + "2 a, 2 (a, b)"), {}), "a a a b a b ");
  EXPECT_EQ(names(strung_of(head + "mirror (a, fill with (a, b)) about c"), {2}), "a a b a b c b a b a a ");
  EXPECT_EQ(names(strung_of(head + "between with a (2 b, (b, c), 2 (c))"), {1, 0, 2, 1}),
            "b a b b c a a c a c ");
  EXPECT_EQ(names(strung_of(head + "fill with a, b, fill with a"), {1, 2}), "a b a a ");
  EXPECT_EQ(strung_of(head + "fill with a, b, fill with a").groups.size(), 2u);
  EXPECT_EQ(strung_of(head + "fill x with a, b, fill x with a").groups.size(), 1u);
  EXPECT_EQ(strung_of(head + "3 (fill with a, b)").groups.size(), 1u);
  EXPECT_EQ(strung_of(head + "mirror (fill with a, b, fill with a)").runs,
            (std::vector<strand::Run>{{0, 2}, {1, 2}}));
}

TEST(Strung, LengthsAndBeadsAddUp) {
  Random random(6);
  const std::vector<std::string> texts{bracelet_text, necklace_text,
                                       head + "a, c, fill with (c, a, c), b, c, mirror (fill with b, 2 c, a)",
                                       head + "a, j, fill with a, both b, fill with b, j, fill with (a, a)"};
  for (const std::string& text : texts) {
    const Strung strung = strung_of(text);
    for (int i = 0; i < 50; ++i) {
      Counts counts;
      std::int64_t length = fixed_um(strung);
      std::vector<std::int64_t> use = fixed_use(strung);
      for (const strand::Run& run : strung.runs) {
        counts.push_back(pick(random, 9));
        const Group& group = strung.groups[static_cast<std::size_t>(run.group)];
        length += std::int64_t{counts.back()} * run.places * unit_um(strung, group);
        const auto in_unit = unit_use(strung, group);
        for (std::size_t e = 0; e < use.size(); ++e)
          use[e] += std::int64_t{counts.back()} * run.places * in_unit[e];
      }
      EXPECT_EQ(strung_length_um(strung, counts), length);
      EXPECT_EQ(use_of(strung, counts), use);
      const std::int64_t closing =
          strung.closing < 0 ? 0
                             : micrometres(strung.elements[static_cast<std::size_t>(strung.closing)].width);
      EXPECT_EQ(piece_starts_um(strung, counts).back() + closing, length);
      EXPECT_EQ(piece_starts_um(strung, counts).size(), pieces_of(strung, counts).size() + 1);
    }
  }
}

TEST(Strung, MirroredReadsTheSameFromBothEnds) {
  for (const std::string& text :
       {head + "mirror (a, fill with (a, b), c, b)", head + "mirror (j, fill with a, 3 (a, c)) about b"}) {
    const Strung strung = strung_of(text);
    const Counts counts(strung.runs.size(), 3);
    auto pieces = pieces_of(strung, counts);
    const auto forwards = pieces;
    std::reverse(pieces.begin(), pieces.end());
    EXPECT_EQ(pieces, forwards);
  }
}

TEST(Strung, CountsBeadsOnEveryCord) {
  const Strung strung = strung_of(head + "a, j, 2 a, moon, both a, j, a");
  std::vector<int> beads, passes;
  for (const Piece& piece : pieces_of(strung, {})) {
    beads.push_back(beads_of(strung, piece));
    passes.push_back(passes_of(strung, piece));
  }
  EXPECT_EQ(beads, (std::vector{1, 1, 2, 2, 1, 1, 1, 1}));
  EXPECT_EQ(passes, (std::vector{1, 1, 1, 1, 1, 2, 1, 1}));
}

TEST(Strung, RefusesWhatCannotBe) {
  const auto all = catalogue();
  const auto problem_of = [&](const std::string& text) {
    const auto strung = lay_strung(*parse_layout(text, all), all);
    return strung ? "" : message(strung.problem());
  };
  EXPECT_EQ(problem_of("cords 1 of wire 1mm joiner j 5mm string j, j"),
            "string: found a joiner, expected two cords for it to join");
  EXPECT_EQ(problem_of("cords 2 of wire 1mm joiner j 5mm string j, moon"),
            "string: found 1 joiners, expected as many that part the cord as bring the two together");
  EXPECT_EQ(problem_of("cords 1 of wire 1mm string both round-8"),
            "both round-8: found one cord, expected two cords and one hole");
  EXPECT_EQ(problem_of("cords 2 of wire 1mm string both moon"),
            "both moon: found two holes, one for each cord, expected two cords and one hole");
  EXPECT_EQ(
      problem_of("cords 2 of wire 1mm joiner j 5mm string fill x with round-8, j, fill x with round-8, j"),
      "run x: found one cord in one place and two in another, expected two runs with names of their own");
  EXPECT_EQ(lay_strung(*parse_layout("string moon", all), {}).problem().code, ProblemCode::unknown_name);
}

}  // namespace
}  // namespace evencount::strand
