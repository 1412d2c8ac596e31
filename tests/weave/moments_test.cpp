#include "weave/moments.hpp"

#include <gtest/gtest.h>

#include <map>
#include <set>

#include "weave/every_piece.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

/// The figures in circles (U+2460 to U+2473) of a text, in order.
std::vector<int> circled_figures(const std::string& text) {
  std::vector<int> figures;
  for (std::size_t i = 0; i + 2 < text.size(); ++i) {
    const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(text[i + k]); };
    if (byte(0) == 0xE2 && byte(1) == 0x91 && byte(2) >= 0xA0 && byte(2) <= 0xB3)
      figures.push_back(byte(2) - 0xA0 + 1);
  }
  return figures;
}

std::set<std::string> kinds_of(const Plan& plan, std::span<const int> new_thread_rows = {}) {
  std::set<std::string> kinds;
  for (const Moment& moment : moments(plan, new_thread_rows)) kinds.emplace(moment_name(moment.kind));
  return kinds;
}

std::set<std::string> kinds_of(std::string_view technique, int columns, int edge, Closure closure) {
  Random random(7);
  const Lattice lattice = find_technique(technique)->lattice(columns, edge);
  return kinds_of(make_plan(technique, filled_chart(random, lattice), {closure}).value());
}

TEST(Moments, EveryTechniqueIsTried) {
  std::map<std::string, int> tried;
  for (const AnyPiece& piece : every_piece()) ++tried[piece.technique];
  for (const Technique& technique : techniques())
    EXPECT_GE(tried[std::string(technique.id)], 5) << technique.id;
}

// Property (1)
TEST(Moments, LieInThePlanAndGoThroughBeads) {
  for (const AnyPiece& piece : every_piece()) {
    const Plan plan = piece.plan();
    for (const Moment& moment : moments(plan)) {
      SCOPED_TRACE(piece.name + ", " + moment.title);
      ASSERT_LT(moment.first_stitch, moment.end_stitch);
      ASSERT_LE(moment.end_stitch, plan.stitches.size());
      const auto beads = visits(plan, moment.first_stitch, moment.end_stitch, moment.at_seam);
      EXPECT_GE(beads.size(), 1u);
      EXPECT_LE(beads.size(), static_cast<std::size_t>(most_beads_of_a_moment));
    }
  }
}

// Property (2)
TEST(Moments, ComeInTheirOrderAtMostTwoOfAKind) {
  for (const AnyPiece& piece : every_piece()) {
    const Plan plan = piece.plan();
    const auto all = moments(plan);
    SCOPED_TRACE(piece.name);
    ASSERT_GE(all.size(), 2u);
    EXPECT_EQ(all.front().kind, MomentKind::start);
    EXPECT_EQ(all.front().first_stitch, 0u);
    EXPECT_EQ(all.back().kind, MomentKind::finish);
    EXPECT_EQ(all.back().end_stitch, plan.stitches.size());
    std::map<MomentKind, int> count;
    for (std::size_t i = 0; i < all.size(); ++i) {
      EXPECT_LE(++count[all[i].kind], 2) << all[i].title;
      if (i > 0 && i + 1 < all.size()) {
        EXPECT_GE(all[i].first_stitch, all[i - 1].first_stitch) << all[i].title;
      }
    }
    EXPECT_EQ(count[MomentKind::start], 1);
    EXPECT_EQ(count[MomentKind::finish], 1);
  }
}

// Property (3), and (3) of unrolled.hpp
TEST(Moments, AllTheirBeadsLieInTheWindow) {
  for (const AnyPiece& piece : every_piece()) {
    const Plan plan = piece.plan();
    const Lattice& lattice = plan.lattice;
    for (const Moment& moment : moments(plan)) {
      SCOPED_TRACE(piece.name + ", " + moment.title);
      for (const Visit& visit : visits(plan, lead_in(plan, moment), moment.end_stitch, moment.at_seam)) {
        if (visit.stitch < moment.first_stitch) continue;
        const Cell unrolled = unrolled_cell(lattice, visit.middle);
        EXPECT_TRUE(moment.window.holds(unrolled)) << unrolled.column << "," << unrolled.step;
        EXPECT_EQ(shown_cell(lattice, unrolled, moment.at_seam), visit.cell);
      }
      const Window& window = moment.window;
      EXPECT_TRUE(lattice.round || (window.first_column >= 0 && window.end_column <= lattice.columns));
      const int past = moment.at_seam ? lattice.edge / 2 : 0, risen = lattice.rise > 0 ? 1 : 0;
      EXPECT_GE(window.first_step, past - risen);
      EXPECT_LE(window.end_step, lattice.edge + past);
    }
  }
}

// Round the beads there is a margin, and enough of the piece to know it by, as far as there is a piece.
TEST(Moments, WindowsShowWhatLiesRoundTheBeads) {
  for (const AnyPiece& piece : every_piece()) {
    const Plan plan = piece.plan();
    const Lattice& lattice = plan.lattice;
    const int unit = lattice.holes == Holes::round_squares ? 2 : 1;
    for (const Moment& moment : moments(plan)) {
      SCOPED_TRACE(piece.name + ", " + moment.title);
      const Window& window = moment.window;
      const int wide = window.end_column - window.first_column, high = window.end_step - window.first_step;
      const int enough = !lattice.round && lattice.columns <= 8 ? 8 : 6;
      EXPECT_GE(wide, std::min(enough, lattice.columns));
      EXPECT_GE(high, std::min(3 * unit, lattice.edge));
      int first = 1'000'000, end = -1'000'000;
      for (const Visit& visit : visits(plan, lead_in(plan, moment), moment.end_stitch, moment.at_seam)) {
        if (visit.stitch < moment.first_stitch && moment.at_seam) continue;
        const int column = unrolled_cell(lattice, visit.middle).column;
        first = std::min(first, column), end = std::max(end, column + 1);
      }
      if (lattice.round) {
        // A margin on either side, but never a bead twice, unless the beads themselves go round.
        EXPECT_LE(wide, std::max(lattice.columns, end - first) + 2 * unit);
        if (end - first + 2 * unit <= lattice.columns) {
          EXPECT_LE(window.first_column, first - unit);
          EXPECT_GE(window.end_column, end + unit);
        }
      } else {
        EXPECT_LE(window.first_column, std::max(0, first - unit));
        EXPECT_GE(window.end_column, std::min(lattice.columns, end + unit));
      }
    }
  }
}

/// The figures of a text with those between "② to ④".
std::set<int> figures_and_between(const std::string& text) {
  std::set<int> all;
  const auto figures = circled_figures(text);
  std::size_t at = 0;
  for (std::size_t i = 0; i < figures.size(); ++i) {
    all.insert(figures[i]);
    at = text.find("\xE2\x91", at) + 3;
    if (i + 1 == figures.size() || text.compare(at, 6, " to \xE2\x91") != 0) continue;
    EXPECT_NE(figures[i], figures[i + 1]) << text;
    const auto [low, high] = std::minmax(figures[i], figures[i + 1]);
    for (int between = low; between <= high; ++between) all.insert(between);
  }
  return all;
}

// Property (4)
TEST(Moments, TheirTextsNumberEveryBead) {
  for (const AnyPiece& piece : every_piece()) {
    const Plan plan = piece.plan();
    for (const Moment& moment : moments(plan)) {
      SCOPED_TRACE(piece.name + ", " + moment.text);
      const auto beads = visits(plan, moment.first_stitch, moment.end_stitch, moment.at_seam);
      std::set<int> every;
      for (int i = 1; i <= static_cast<int>(beads.size()); ++i) every.insert(i);
      EXPECT_EQ(figures_and_between(moment.text), every);
    }
  }
}

// Property (4)
TEST(Moments, TheirTextsNumberTheBeads) {
  for (const AnyPiece& piece : every_piece()) {
    const Plan plan = piece.plan();
    for (const Moment& moment : moments(plan)) {
      SCOPED_TRACE(piece.name + ", " + moment.text);
      const auto beads = visits(plan, moment.first_stitch, moment.end_stitch, moment.at_seam);
      const auto figures = circled_figures(moment.text);
      ASSERT_FALSE(figures.empty());
      EXPECT_EQ(figures.front(), 1);
      EXPECT_EQ(*std::max_element(figures.begin(), figures.end()), static_cast<int>(beads.size()));
      EXPECT_EQ(moment.text.find("  "), std::string::npos);
      EXPECT_EQ(moment.text.back(), '.');
      EXPECT_FALSE(moment.title.empty());
    }
  }
}

TEST(Moments, ConsecutiveBeadsAreNeighboursOnTheUnrolledPiece) {
  for (const AnyPiece& piece : every_piece()) {
    const Plan plan = piece.plan();
    if (!plan.lattice.round) continue;
    const auto all = visits(plan, 0, plan.stitches.size(), false);
    for (std::size_t i = 1; i < all.size(); ++i) {
      const Spot from = all[i - 1].middle, to = all[i].middle;
      ASSERT_LE(std::abs(to.across - from.across), 4) << piece.name;
      ASSERT_LE(std::abs(to.along - from.along), 2) << piece.name;
    }
  }
}

// (1) and (2) of unrolled.hpp
TEST(Unrolled, CellsAndMiddlesAreOneAnothersInverse) {
  for (const Technique& technique : techniques())
    for (const int columns : {6, 7, 8, 11}) {
      if (!technique.check_size(columns, 5)) continue;
      const Lattice lattice = technique.lattice(columns, 5);
      for (int column = -3 * columns; column < 3 * columns; ++column)
        for (int step = -4; step < 12; ++step) {
          EXPECT_EQ(unrolled_cell(lattice, middle_of(lattice, {column, step})), (Cell{column, step}));
          const bool inside = column >= 0 && column < columns && step >= 0 && step < 5;
          if (lattice.round) continue;
          EXPECT_EQ(shown_cell(lattice, {column, step}, false).has_value(),
                    inside && lattice.holds_bead({column, step}));
        }
    }
}

TEST(Moments, TheKindsOfEachTechnique) {
  using Kinds = std::set<std::string>;
  EXPECT_EQ(kinds_of("peyote-even-count", 8, 10, Closure::zip),
            (Kinds{"start", "turn", "stitch", "zip", "finish"}));
  EXPECT_EQ(kinds_of("peyote-odd-count", 7, 10, Closure::open),
            (Kinds{"start", "turn", "stitch", "figure-8", "loop", "finish"}));
  EXPECT_EQ(kinds_of("peyote-odd-count-figure-8", 7, 10, Closure::open),
            (Kinds{"start", "turn", "stitch", "figure-8", "finish"}));
  EXPECT_EQ(kinds_of("two-drop-even-count", 8, 10, Closure::zip),
            (Kinds{"start", "turn", "stitch", "zip", "finish"}));
  EXPECT_EQ(kinds_of("two-drop-odd-count", 10, 10, Closure::open),
            (Kinds{"start", "turn", "stitch", "figure-8", "loop", "finish"}));
  EXPECT_EQ(kinds_of("tubular-even-count", 10, 6, Closure::round),
            (Kinds{"start", "ring", "stitch", "step up", "finish"}));
  EXPECT_EQ(kinds_of("tubular-odd-count", 11, 6, Closure::round),
            (Kinds{"start", "ring", "stitch", "finish"}));
  EXPECT_EQ(kinds_of("brick", 6, 8, Closure::sew), (Kinds{"start", "turn", "under", "sewn join", "finish"}));
  EXPECT_EQ(kinds_of("square", 6, 8, Closure::sew),
            (Kinds{"start", "turn", "stitch", "sewn join", "finish"}));
  EXPECT_EQ(kinds_of("loom", 8, 8, Closure::open), (Kinds{"start", "weft", "turn", "finish"}));
  EXPECT_EQ(kinds_of("herringbone", 8, 6, Closure::open), (Kinds{"start", "turn", "stitch", "finish"}));
  EXPECT_EQ(kinds_of("right-angle", 9, 9, Closure::open), (Kinds{"start", "turn", "stitch", "finish"}));
}

TEST(Moments, AShapedPieceShowsWhereItGrowsAndShrinks) {
  const auto grows = kinds_of(make_plan("peyote-shaped", triangle(6, true, false), {Closure::open}).value());
  EXPECT_TRUE(grows.contains("increase"));
  EXPECT_FALSE(grows.contains("decrease"));
  const auto both = kinds_of(make_plan("peyote-shaped", triangle(6, true, true), {Closure::open}).value());
  EXPECT_TRUE(both.contains("increase") && both.contains("decrease"));
}

TEST(Moments, ABezelShowsTheBeadLeftOut) {
  Random random(3);
  chart::Chart chart = filled_chart(random, find_technique("peyote-bezel")->lattice(12, 4));
  EXPECT_FALSE(kinds_of(make_plan("peyote-bezel", chart, {Closure::round}).value()).contains("decrease"));
  chart.set({7, 3}, chart::no_bead);
  EXPECT_TRUE(kinds_of(make_plan("peyote-bezel", chart, {Closure::round}).value()).contains("decrease"));
}

TEST(Moments, ANewThreadComesInThroughTheLastBeads) {
  const Plan plan =
      make_plan("peyote-even-count", chart::Chart::make(6, 20).value(), {Closure::open}).value();
  const auto all = moments(plan, std::array{17, 30});
  const auto joins =
      std::find_if(all.begin(), all.end(), [](const Moment& m) { return m.kind == MomentKind::new_thread; });
  ASSERT_NE(joins, all.end());
  const auto row =
      std::find_if(plan.rows.begin(), plan.rows.end(), [](const Row& r) { return r.first_number == 17; });
  EXPECT_LE(joins->new_from, row->first_stitch);
  EXPECT_EQ(visits(plan, joins->first_stitch, joins->new_from, false).size(), 3u);
  EXPECT_NE(joins->text.find("row 17"), std::string::npos) << joins->text;
  std::set<int> every;
  for (int i = 1; i <= static_cast<int>(visits(plan, joins->first_stitch, joins->end_stitch, false).size()); ++i) every.insert(i);
  EXPECT_EQ(figures_and_between(joins->text), every) << joins->text;
  EXPECT_FALSE(kinds_of(plan).contains("new thread"));
}

TEST(Moments, TheirFiguresComeFromThePlan) {
  const Plan plan = make_plan("peyote-even-count", chart::Chart::make(8, 12).value(), {Closure::zip}).value();
  std::map<MomentKind, Moment> by_kind;
  for (const Moment& moment : moments(plan)) by_kind[moment.kind] = moment;
  EXPECT_EQ(by_kind[MomentKind::start].text,
            "String 8 beads ① to ⑧ and leave a tail. They become rows 1 and 2.");
  EXPECT_EQ(by_kind[MomentKind::turn].text,
            "Row 3 goes to the right. Turn, string a bead ① and go through a bead of rows 1 and 2 ②.");
  EXPECT_EQ(
      by_kind[MomentKind::stitch].text,
      "String a bead ① and go through a bead of rows 1 and 2 ②. Go on in the same way: row 3 takes 4 beads.");
  EXPECT_EQ(by_kind[MomentKind::zip].last_end, "row 24");
  EXPECT_EQ(by_kind[MomentKind::zip].first_end, "row 1");
  EXPECT_TRUE(
      by_kind[MomentKind::zip].text.starts_with("Bring row 24 to row 1 so that their beads interlock"));
}

TEST(Moments, AWideRowIsShownInPartAndToldWhole) {
  const Plan plan =
      make_plan("peyote-even-count", chart::Chart::make(40, 5).value(), {Closure::open}).value();
  const Moment start = moments(plan).front();
  EXPECT_EQ(visits(plan, start.first_stitch, start.end_stitch, false).size(),
            static_cast<std::size_t>(shown_of_run));
  EXPECT_TRUE(start.text.starts_with("String 40 beads (the first 7 are ① to ⑦) and leave a tail."))
      << start.text;
}

}  // namespace
}  // namespace evencount::weave
