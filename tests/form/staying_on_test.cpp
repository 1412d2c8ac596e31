#include "form/staying_on.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "form/closure.hpp"
#include "form/sections.hpp"

namespace evencount::form {
namespace {

using std::numbers::pi;

SlidingBand band_of(int edge, const char* bead = "cylinder-11", int columns = 6) {
  const auto size = *bead::find_size(bead);
  return {size, bead::default_gauge(size, bead::threads()[0]), edge, columns};
}

struct Piece {
  const char* form;
  int edge;
  Holes holes;
};

// Bands that slide on their forms, with the usual holes and others.
std::vector<Piece> pieces() {
  const auto pair = [](double mm) { return Holes{2, millimetres(mm), usual_hole}; };
  const Holes one{1, {}, usual_hole};
  return {{"lens:16x5x9", 24, pair(6.4)}, {"lens:16x5x9", 24, pair(9.6)}, {"lens:16x5x9", 24, one},
          {"lens:17x5x9", 25, pair(6.8)}, {"lens:17x5x9", 25, pair(11)},  {"lens:19.5x5x11.5", 28, pair(7.8)},
          {"bar:20x4x10", 31, pair(8)},   {"bar:20x4x10", 31, one},       {"round:12x20", 27, one},
          {"round:12x20", 27, pair(4)},   {"oval:18x13x5", 33, pair(7)}};
}

StopBead stop_of(const Piece& piece, const SlidingBand& band, double margin_mm = 0.5) {
  const auto stop = smallest_stop_bead(*parse_form(piece.form), piece.holes, band, millimetres(margin_mm));
  EXPECT_TRUE(stop.ok()) << piece.form;
  return *stop;
}

std::vector<Point> circle_points(Point centre, double radius, int count) {
  std::vector<Point> points;
  for (int i = 0; i < count; ++i) points.push_back(centre + radius * direction(2 * pi * i / count));
  return points;
}

// The convex hull by wrapping: from each corner to the point that leaves all others on the left.
std::vector<Point> slow_hull(const std::vector<Point>& points) {
  Point here =
      *std::min_element(points.begin(), points.end(), [](Point a, Point b) { return a.x_mm < b.x_mm; });
  std::vector<Point> hull;
  do {
    hull.push_back(here);
    Point next = points.front() == here ? points.back() : points.front();
    for (const Point& p : points) {
      const double side = cross(next - here, p - here);
      if (side < -1e-15 || (std::abs(side) <= 1e-15 && distance(here, p) > distance(here, next))) next = p;
    }
    here = next;
  } while (!(here == hull.front()));
  return hull;
}

double perimeter_mm(const std::vector<Point>& corners) {
  double sum = 0;
  for (std::size_t i = 0; i < corners.size(); ++i)
    sum += distance(corners[i], corners[(i + 1) % corners.size()]);
  return sum;
}

std::vector<Point> stop_points(const Holes& holes, double diameter_mm, int count) {
  auto points = circle_points({holes.spacing.mm() / 2, 0}, diameter_mm / 2, count);
  const auto others = circle_points({-holes.spacing.mm() / 2, 0}, diameter_mm / 2, count);
  if (holes.count == 2) points.insert(points.end(), others.begin(), others.end());
  return points;
}

TEST(StayingOn, HullPerimeterAgainstThePolygon) {
  for (const Holes& holes : {Holes{1, {}, usual_hole}, Holes{2, millimetres(6.4), usual_hole},
                             Holes{2, millimetres(2), usual_hole}})
    for (const double d : {0.5, 2.8, 7.0}) {
      const double found = hull_perimeter(holes, millimetres(d)).mm();
      EXPECT_NEAR(perimeter_mm(slow_hull(stop_points(holes, d, 4000))) / found, 1, 1e-6);
    }
}

TEST(StayingOn, EachHoldsMoreThanTheOneBefore) {
  for (const Piece& piece : pieces())
    for (const double margin : {0.0, 0.5, 3.0}) {
      const StopBead stop = stop_of(piece, band_of(piece.edge), margin);
      EXPECT_GT(stop.catches, Length{});
      EXPECT_LE(stop.catches, stop.holds_straight) << piece.form;
      EXPECT_LE(stop.holds_straight, stop.holds_bent) << piece.form;
      EXPECT_TRUE(stop.smallest == stop.holds_straight || stop.smallest == stop.holds_bent);
    }
}

TEST(StayingOn, GrowsWithMarginAndBand) {
  for (const Piece& piece : pieces()) {
    const SlidingBand band = band_of(piece.edge);
    const StopBead stop = stop_of(piece, band), wider = stop_of(piece, band, 1.0);
    EXPECT_EQ(stop.catches, wider.catches);
    EXPECT_LT(stop.holds_straight, wider.holds_straight) << piece.form;
    EXPECT_LT(stop.holds_bent, wider.holds_bent) << piece.form;
    const StopBead longer = stop_of(piece, band_of(piece.edge + 1));
    EXPECT_LT(stop.holds_straight, longer.holds_straight) << piece.form;
    EXPECT_LT(stop.holds_bent, longer.holds_bent) << piece.form;
    auto loose = band;
    loose.gauge.edge = 1.01 * loose.gauge.edge;
    EXPECT_LT(stop.holds_straight, stop_of(piece, loose).holds_straight) << piece.form;
    EXPECT_LT(stop.holds_bent, stop_of(piece, loose).holds_bent) << piece.form;
  }
}

TEST(StayingOn, OneHoleIsTheRingOnACircle) {
  const Holes one{1, {}, usual_hole};
  for (const int edge : {26, 27, 30}) {
    const SlidingBand band = band_of(edge);
    const LoosestBand loose = at_its_loosest(band);
    const StopBead stop = stop_of({"round:12x20", edge, one}, band, 0);
    EXPECT_NEAR(stop.catches.mm(), 12, 1e-3);
    EXPECT_NEAR(stop.holds_bent.mm(), loose.pitch.mm() / std::sin(pi / edge) - loose.diameter.mm(), 1e-9);
    const auto round = circle(stop.holds_bent + loose.diameter);
    EXPECT_NEAR(closing_chord(*round, edge)->mm(), loose.pitch.mm(), 1e-9);
    // A tube's stop is larger than the tube: straight or bent is the same.
    EXPECT_NEAR(stop.holds_straight / stop.holds_bent, 1, 1e-3);
    EXPECT_NEAR(band_opening(one, band)->mm(), pi * stop.holds_bent.mm(), 1e-9);
  }
}

TEST(StayingOn, LoosestBand) {
  const SlidingBand band = band_of(25);
  const double grown = 1 + 2 * std::hypot(0.010, 0.015 / 5);
  EXPECT_NEAR(at_its_loosest(band).pitch.mm(), 1.66 * grown * 1.005, 1e-12);
  EXPECT_NEAR(at_its_loosest(band).diameter.mm(), 1.6 * grown, 1e-12);
}

// The smallest chord of a ring of the band's beads round an outline, against its loosest pitch: 0 or more
// holds.
double lack_mm(const ConvexCurve& outline, const SlidingBand& band) {
  const LoosestBand loose = at_its_loosest(band);
  const auto range = closing_range(offset(outline, loose.diameter / 2), band.edge);
  EXPECT_TRUE(range.ok());
  return (range->smallest - loose.pitch).mm();
}

TEST(StayingOn, NoRingGoesRoundTheStopsThatHold) {
  for (const Piece& piece : pieces()) {
    const SlidingBand band = band_of(piece.edge);
    const double bent = stop_of(piece, band, 0).holds_bent.mm();
    const auto round_stops = [&](double d) {
      return *rounded_bar(millimetres(piece.holes.spacing.mm() + d), millimetres(d), millimetres(d / 2));
    };
    EXPECT_GT(lack_mm(round_stops(bent + 0.1), band), 0) << piece.form;
    EXPECT_LT(lack_mm(round_stops(bent - 0.1), band), 0) << piece.form;
  }
}

TEST(StayingOn, NoRingGoesRoundFormAndStopsThatHold) {
  for (const Piece& piece : pieces()) {
    const SlidingBand band = band_of(piece.edge);
    const auto outline = section(*parse_form(piece.form));
    const double straight = stop_of(piece, band, 0).holds_straight.mm();
    const auto round_both = [&](double d) {
      auto points = sample(*outline, millimetres(1e-3));
      const auto stops = stop_points(piece.holes, d, 200);
      points.insert(points.end(), stops.begin(), stops.end());
      return *polygon(slow_hull(points));
    };
    EXPECT_GT(lack_mm(round_both(straight + 0.02), band), 0) << piece.form;
    EXPECT_LT(lack_mm(round_both(straight - 0.02), band), 0) << piece.form;
  }
}

TEST(StayingOn, CatchesWhereItSticksOut) {
  // On a lens the outline at the hole is a circle's arc: the largest circle inside touches it along that
  // circle's radius.
  const double radius = (8 * 8 + 2.5 * 2.5) / 5;
  for (const double spacing : {0.0, 6.4, 9.6}) {
    const Holes holes{spacing > 0 ? 2 : 1, millimetres(spacing), usual_hole};
    const double expected = 2 * (radius - std::hypot(spacing / 2, radius - 2.5));
    EXPECT_NEAR(stop_of({"lens:16x5x9", 24, holes}, band_of(24)).catches.mm(), expected, 3e-3);
  }
  EXPECT_NEAR(stop_of({"bar:20x4x10", 31, {2, millimetres(8), usual_hole}}, band_of(31)).catches.mm(), 4,
              1e-3);
}

TEST(StayingOn, ScalesWithEverything) {
  const Form form = *parse_form("lens:16x5x9");
  Form large = form;
  for (Length* size : {&large.width, &large.thickness}) *size = 3 * *size;
  auto band = band_of(24), large_band = band;
  large_band.bead.diameter = 3 * band.bead.diameter;
  large_band.gauge.edge = 3 * band.gauge.edge;
  large_band.gauge.column = 3 * band.gauge.column;
  const auto small = smallest_stop_bead(form, {2, millimetres(6.4), usual_hole}, band, millimetres(0.5));
  const auto grown =
      smallest_stop_bead(large, {2, millimetres(19.2), usual_hole}, large_band, millimetres(1.5));
  EXPECT_NEAR(grown->catches / small->catches, 3, 3e-5);
  EXPECT_NEAR(grown->holds_straight / small->holds_straight, 3, 3e-5);
  EXPECT_NEAR(grown->holds_bent / small->holds_bent, 3, 3e-5);
  EXPECT_NEAR(grown->smallest / small->smallest, 3, 3e-5);
}

TEST(StayingOn, NarrowBandsNeedTheLargerStop) {
  const Piece piece{"lens:16x5x9", 24, {2, millimetres(6.4), usual_hole}};
  const StopBead wide = stop_of(piece, band_of(24, "cylinder-11", 6)),
                 narrow = stop_of(piece, band_of(24, "cylinder-11", 2));
  EXPECT_EQ(wide.smallest, wide.holds_straight);
  EXPECT_EQ(narrow.smallest, narrow.holds_bent);
  EXPECT_EQ(wide.holds_bent, narrow.holds_bent);
}

TEST(StayingOn, SeedBeadsDontHoldABandOnACarrier) {
  const auto round8 = bead::find_size("round-8")->diameter;
  for (const Piece& piece : {pieces()[0], pieces()[3], pieces()[5]}) {
    const StopBead stop = stop_of(piece, band_of(piece.edge));
    EXPECT_EQ(holding(stop, round8), Holding::runs_over) << piece.form;
    EXPECT_EQ(holding(stop, bead::find_size("round-6")->diameter), Holding::runs_over) << piece.form;
    EXPECT_TRUE(stops_that_suffice(stop, millimetres(0.5)).empty());
  }
}

TEST(StayingOn, StandardBeadsOnASmallTube) {
  const StopBead stop = stop_of({"round:2x20", 7, {1, {}, millimetres(1)}}, band_of(7), 0.2);
  EXPECT_LT(stop.smallest, bead::find_size("round-6")->diameter);
  std::vector<std::string> ids;
  for (const bead::Size& size : stops_that_suffice(stop, millimetres(0.8))) ids.push_back(size.id);
  EXPECT_EQ(ids, (std::vector<std::string>{"cylinder-8", "round-8", "round-6"}));
  // 0.9 x 1.3 mm is the room in an 8/0 cylinder.
  ids.clear();
  for (const bead::Size& size : stops_that_suffice(stop, millimetres(1.2))) ids.push_back(size.id);
  EXPECT_EQ(ids, (std::vector<std::string>{"round-6"}));
  EXPECT_TRUE(stops_that_suffice(stop, millimetres(1.4)).empty());
}

TEST(StayingOn, HoldingInOrder) {
  const StopBead stop{millimetres(4), millimetres(5), millimetres(6), millimetres(5)};
  EXPECT_EQ(holding(stop, millimetres(4)), Holding::runs_over);
  EXPECT_EQ(holding(stop, millimetres(4.1)), Holding::catches);
  EXPECT_EQ(holding(stop, millimetres(5)), Holding::while_straight);
  EXPECT_EQ(holding(stop, millimetres(6)), Holding::cannot_pass);
  EXPECT_EQ(holding_name(Holding::while_straight), "while_straight");
  EXPECT_EQ(holding_text(Holding::cannot_pass), "the band can't pass");
}

TEST(StayingOn, SideBySide) {
  EXPECT_TRUE(side_by_side({1, {}, usual_hole}, millimetres(50)));
  EXPECT_TRUE(side_by_side({2, millimetres(6), usual_hole}, millimetres(6)));
  EXPECT_FALSE(side_by_side({2, millimetres(6), usual_hole}, millimetres(6.1)));
}

TEST(StayingOn, ABandTooShortForTheHolesIsHeldByAnything) {
  // 6 beads reach 10 mm round: not even round two cords 12 mm apart.
  const Piece piece{"lens:16x5x9", 6, {2, millimetres(12), usual_hole}};
  const StopBead stop = stop_of(piece, band_of(6));
  EXPECT_EQ(stop.holds_bent, stop.catches);
  EXPECT_FALSE(band_opening(piece.holes, band_of(6)).has_value());
}

TEST(StayingOn, UsualAndGivenHoles) {
  const Holes carrier = *holes_of(*parse_form("lens:17x5x9"));
  EXPECT_EQ(carrier.count, 2);
  EXPECT_NEAR(carrier.spacing.mm(), 6.8, 1e-12);
  EXPECT_EQ(carrier.diameter, usual_hole);
  EXPECT_EQ(*holes_of(*parse_form("round:12x20")), (Holes{1, {}, usual_hole}));
  auto form = *parse_form("bar:20x4x10");
  form.hole_spacing = millimetres(9);
  form.hole = millimetres(1.5);
  EXPECT_EQ(*holes_of(form), (Holes{2, millimetres(9), millimetres(1.5)}));
  auto single = *parse_form("lens:17x5x9");
  single.hole = millimetres(1);
  EXPECT_EQ(*holes_of(single), (Holes{1, {}, millimetres(1)}));
  for (const char* worn : {"ring:54", "wrist:165", "bangle:66x12"})
    EXPECT_EQ(holes_of(*parse_form(worn)).problem().code, ProblemCode::out_of_range) << worn;
}

TEST(StayingOn, Cord) {
  // "cord 2 mm or thinner": zinio.com/ch-de/explore/beadbutton/june-2018-i388547/carrier-bead-mania-a9620
  EXPECT_GE(widest_cord(usual_hole)->mm(), 2.0);
  EXPECT_LE(widest_cord(usual_hole)->mm(), 2.05);
  double before = 1e300;
  for (int passes = 1; passes <= 7; ++passes) {
    const double cord = widest_cord(millimetres(2), passes)->mm();
    EXPECT_LE(cord, before);
    before = cord;
    // So many circles never cover more than the hole, and all of them lie beside the wall or in the middle.
    EXPECT_LE(passes * cord * cord, 0.9 * 0.9 * 4 + 1e-12);
    const int at_the_wall = passes == 7 ? 6 : passes;
    if (at_the_wall < 2) continue;
    const double ring = 1.8 - cord;  // diameter of the ring of middles
    EXPECT_NEAR(ring * std::sin(pi / at_the_wall), cord, 1e-9);
  }
  EXPECT_EQ(widest_cord(millimetres(2), 0).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(widest_cord(millimetres(2), 8).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(widest_cord(millimetres(0)).problem().code, ProblemCode::out_of_range);
}

TEST(StayingOn, WaysToFix) {
  const Form form = *parse_form("lens:17x5x9");
  const Holes holes = *holes_of(form);
  const auto how = [&](const Form& f, double cord) {
    std::vector<Fastening> found;
    const auto ways = ways_to_fix(f, holes, millimetres(8.1), millimetres(cord), bead::threads()[0].diameter);
    for (const WayToFix& way : *ways) found.push_back(way.fastening);
    return found;
  };
  using enum Fastening;
  EXPECT_EQ(how(form, 1.5), (std::vector{stitch_through_hole, stitch_over_end, glue}));
  EXPECT_EQ(how(form, 1.9), (std::vector{stitch_over_end, glue}));
  EXPECT_EQ(how(*parse_form("ring:54"), 1), (std::vector{glue}));
  EXPECT_EQ(how(*parse_form("bangle:66x12"), 1), (std::vector{glue}));
  EXPECT_EQ(ways_to_fix(form, holes, millimetres(-1), {}, {}).problem().code, ProblemCode::out_of_range);

  const double covered = covered_square_mm(*section(*parse_form("round:10x20")), millimetres(8));
  EXPECT_NEAR(covered, 80 * pi, 1e-9);
  const auto round = ways_to_fix(*parse_form("round:10x7"), holes, millimetres(8), {}, {});
  EXPECT_NE(round->back().words.find("220 square mm"), std::string::npos);  // 70 pi: cut to the form's 7 mm
  EXPECT_TRUE(needs_fastening(Verdict::easy));
  EXPECT_FALSE(needs_fastening(Verdict::snug));
  EXPECT_FALSE(needs_fastening(Verdict::too_loose));
  EXPECT_EQ(fastening_name(stitch_over_end), "stitch_over_end");
}

TEST(StayingOn, Refusals) {
  const Form form = *parse_form("lens:16x5x9");
  const Holes holes{2, millimetres(6.4), usual_hole};
  const auto code = [&](const Holes& h, const SlidingBand& b, double margin) {
    return smallest_stop_bead(form, h, b, millimetres(margin)).problem().code;
  };
  const SlidingBand band = band_of(24);
  EXPECT_EQ(code({3, millimetres(4), usual_hole}, band, 0), ProblemCode::out_of_range);
  EXPECT_EQ(code({1, millimetres(4), usual_hole}, band, 0), ProblemCode::out_of_range);
  EXPECT_EQ(code({2, millimetres(-4), usual_hole}, band, 0), ProblemCode::out_of_range);
  EXPECT_EQ(code({2, millimetres(17), usual_hole}, band, 0), ProblemCode::out_of_range);
  EXPECT_EQ(code(holes, band, -0.1), ProblemCode::out_of_range);
  EXPECT_EQ(code(holes, band_of(2), 0), ProblemCode::too_few_beads);
  EXPECT_EQ(code(holes, band_of(24, "cylinder-11", 0), 0), ProblemCode::out_of_range);
  auto flat = band;
  flat.gauge.edge = {};
  EXPECT_EQ(code(holes, flat, 0), ProblemCode::out_of_range);
  flat = band;
  flat.bead.diameter = {};
  EXPECT_EQ(code(holes, flat, 0), ProblemCode::out_of_range);
}

}  // namespace
}  // namespace evencount::form
