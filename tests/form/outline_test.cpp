#include "form/outline.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>

#include "form/closure.hpp"

namespace evencount::form {
namespace {

// Points on a section about as far apart as a person measures them, moved by the scatter of the measurement.
std::vector<Point> measured(const char* notation, double scatter_mm, unsigned seed = 1) {
  std::mt19937_64 random(seed);
  const auto off = [&] { return scatter_mm * (static_cast<double>(random() >> 11) * 0x1p-52 - 1); };
  std::vector<Point> points;
  for (const Point p : sample(*section(*parse_form(notation)), millimetres(0.01)))
    points.push_back({p.x_mm + off() + 100, p.y_mm + off() - 40});  // measured from somewhere else
  return points;
}

double perimeter_mm(const Form& form) {
  return section(form)->perimeter().mm();
}

// The greatest distance along any of many directions by which `inner` reaches out of `outer`.
double sticks_out_mm(const std::vector<Point>& inner, const std::vector<Point>& outer, Point shift) {
  double most = -1e9;
  for (int i = 0; i < 720; ++i) {
    const Point way = direction(i * std::numbers::pi / 360);
    double in = -1e9, out = -1e9;
    for (const Point p : inner) in = std::max(in, dot(p - shift, way));
    for (const Point p : outer) out = std::max(out, dot(p, way));
    most = std::max(most, in - out);
  }
  return most;
}

constexpr std::array shapes{"lens:17x5x9", "round:12x20", "oval:18x13x5", "bar:20x4x10", "dome:20x6x10"};

TEST(Outline, KnownSectionsComeBack) {
  for (const std::string shape : shapes) {
    const bool sharp = shape.starts_with("lens") || shape.starts_with("dome");
    const double near = sharp ? 0.006 : 0.001;
    const auto form = form_from_outline("a", measured(shape.c_str(), 0), millimetres(9));
    ASSERT_TRUE(form.ok()) << shape << message(form.problem());
    EXPECT_LE(form->outline->bridged.mm(), 1e-9) << shape;
    const ConvexCurve exact = offset(*section(*parse_form(shape)), millimetres(0.8));
    const ConvexCurve found = offset(*section(*form), millimetres(0.8));
    const int n = static_cast<int>(exact.perimeter().mm() / 1.66);
    for (const int beads : {n, n + 1}) {
      const auto wanted = closing_range(exact, beads), range = closing_range(found, beads);
      ASSERT_TRUE(range.ok()) << shape;
      EXPECT_NEAR(range->smallest / wanted->smallest, 1, near) << shape << beads;
      EXPECT_NEAR(range->largest / wanted->largest, 1, near) << shape << beads;
    }
  }
}

// Seen from within, every corner lies further round than the one before it, and whatever lies inside changes nothing.
TEST(Outline, HullRunsCounterclockwiseFromAnyOrder) {
  std::mt19937 random(17);
  for (const int corners : {3, 4, 5, 9}) {
    std::vector<Point> round;
    for (int i = 0; i < corners; ++i) round.push_back(5.0 * direction(2 * std::numbers::pi * i / corners));
    for (int order = 0; order < 20; ++order) {
      std::vector<Point> points = round;
      for (int i = 0; i < order % 4; ++i) points.push_back(0.1 * (i + 1) * round[static_cast<std::size_t>(i) % round.size()]);
      for (std::size_t i = points.size() - 1; i > 0; --i) std::swap(points[i], points[random() % (i + 1)]);
      const auto hull = convex_hull(points);
      ASSERT_EQ(hull.size(), round.size());
      const auto at = std::find(round.begin(), round.end(), hull.front()) - round.begin();
      for (std::size_t i = 0; i < hull.size(); ++i)
        EXPECT_EQ(hull[i], round[(static_cast<std::size_t>(at) + i) % round.size()]) << corners << " " << order;
    }
  }
  EXPECT_LT(convex_hull({{0, 0}, {1, 1}, {2, 2}, {1, 1}}).size(), 3u);
}

TEST(Outline, SectionLiesInTheHullWithinItsError) {
  for (const char* shape : shapes) {
    for (const double scatter : {0.0, 0.05, 0.1}) {
      const auto points = measured(shape, scatter);
      const auto form = form_from_outline("a", points, std::nullopt);
      ASSERT_TRUE(form.ok()) << shape << message(form.problem());
      const auto curve = sample(*section(*form), millimetres(1e-4));
      // The section was moved to the middle of its own box: find by how much from the first corner that both have lowest.
      const auto hull = convex_hull(points);
      double best = 1e9;
      for (double x = 99.7; x < 100.3; x += 0.05)
        for (double y = -40.3; y < -39.7; y += 0.05)
          best = std::min(best, sticks_out_mm(curve, hull, {-x, -y}));
      EXPECT_LE(best, 0.03) << shape << scatter;
      EXPECT_GT(form->outline->smoothing_error.mm(), 0) << shape;
      EXPECT_LT(form->outline->smoothing_error.mm(), 0.2) << shape;
    }
  }
}

TEST(Outline, ScatterChangesLittle) {
  for (const char* shape : shapes) {
    const double exact = perimeter_mm(*parse_form(shape));
    for (unsigned seed = 1; seed <= 5; ++seed) {
      const auto form = form_from_outline("a", measured(shape, 0.05, seed), std::nullopt);
      ASSERT_TRUE(form.ok()) << shape;
      EXPECT_NEAR(perimeter_mm(*form) / exact, 1, 0.012) << shape << seed;
    }
  }
}

TEST(Outline, OrderAndRepetitionDoNotMatter) {
  const auto points = measured("lens:17x5x9", 0.05);
  const auto form = form_from_outline("a", points, std::nullopt);
  auto other = points;
  std::mt19937_64 random(7);
  for (std::size_t i = other.size(); i > 1; --i) std::swap(other[i - 1], other[random() % i]);
  other.push_back(other.front());
  const auto shuffled = form_from_outline("a", other, std::nullopt);
  EXPECT_EQ(*section(*shuffled), *section(*form));
  EXPECT_EQ(shuffled->outline->bridged, form->outline->bridged);
  for (Point& p : other) p = quarter_turn(p);
  const auto turned = form_from_outline("a", other, std::nullopt);
  EXPECT_NEAR(perimeter_mm(*turned) / perimeter_mm(*form), 1, 2e-3);
  EXPECT_NEAR(turned->width / form->thickness, 1, 0.01);
  EXPECT_NEAR(turned->outline->bridged.mm(), form->outline->bridged.mm(), 1e-9);
}

TEST(Outline, BeginsOnTheXAxisAndIsCentred) {
  for (const char* shape : shapes) {
    const auto form = form_from_outline("a", measured(shape, 0.05), std::nullopt);
    const auto curve = section(*form);
    const Placed begin = curve->at({0, 0});
    EXPECT_NEAR(begin.at.y_mm, 0, 1e-4) << shape;
    EXPECT_GT(begin.at.x_mm, 0) << shape;
    const Box box = curve->box();
    EXPECT_NEAR(box.low.x_mm + box.high.x_mm, 0, 1e-9);
    EXPECT_NEAR(box.low.y_mm + box.high.y_mm, 0, 1e-9);
    EXPECT_NEAR(box.high.x_mm - box.low.x_mm, form->width.mm(), 1e-9);
    EXPECT_NEAR(box.high.y_mm - box.low.y_mm, form->thickness.mm(), 1e-9);
  }
}

TEST(Outline, DentsAreNamedOrBridged) {
  std::vector<Point> dented{{0, 0}, {20, 0}, {20, 10}, {10, 9}, {0, 10}};
  const auto refused = form_from_outline("heart", dented, std::nullopt);
  ASSERT_FALSE(refused.ok());
  EXPECT_EQ(refused.problem().code, ProblemCode::not_convex);
  EXPECT_EQ(message(refused.problem()),
            "outline at point 4: found a dent of 1 mm at (10, 9), which beads would bridge, expected dents "
            "of at most "
            "0.4 mm");
  const auto bridged = form_from_outline("heart", dented, std::nullopt, Dents::bridge);
  ASSERT_TRUE(bridged.ok());
  EXPECT_NEAR(bridged->outline->bridged.mm(), 1, 1e-9);
  dented[3] = {10, 9.65};  // within 2 % of 20 mm
  EXPECT_TRUE(form_from_outline("heart", dented, std::nullopt).ok());
  dented[3] = {10, 9.55};
  EXPECT_FALSE(form_from_outline("heart", dented, std::nullopt).ok());
}

TEST(Outline, UnsoundPointsAreRefused) {
  using Points = std::vector<Point>;
  const double nan = std::nan(""), inf = std::numeric_limits<double>::infinity();
  for (const Points& points :
       {Points{}, Points{{0, 0}, {1, 1}}, Points{{0, 0}, {1, 1}, {2, 2}, {3, 3}},
        Points{{1, 1}, {1, 1}, {1, 1}}, Points{{0, 0}, {10, nan}, {5, 5}}, Points{{0, 0}, {inf, 0}, {5, 5}},
        Points{{0, 0}, {1e300, 0}, {5, 5}}, Points{{0, 0}, {3000, 0}, {5, 50}},
        Points{{0, 0}, {0.1, 0}, {0.05, 0.1}}, Points{{0, 0}, {10, 1e-13}, {20, 0}},
        Points(most_outline_points + 1, Point{1, 2})}) {
    const auto form = form_from_outline("a", points, std::nullopt);
    ASSERT_FALSE(form.ok());
    EXPECT_EQ(form.problem().code, ProblemCode::out_of_range);
  }
  const Points square{{0, 0}, {10, 0}, {10, 10}, {0, 10}};
  for (const char* name : {"", "a,b", "a b", "a:b", "\xC3\xA4"})
    EXPECT_EQ(form_from_outline(name, square, std::nullopt).problem().code, ProblemCode::bad_text) << name;
  EXPECT_EQ(form_from_outline("a", square, millimetres(nan)).problem().code, ProblemCode::out_of_range);
}

TEST(Outline, NotationTravelsWithItsPoints) {
  const auto form = form_from_outline("stone-1", measured("oval:18x13x5", 0.05), millimetres(5));
  EXPECT_EQ(to_notation(*form), "outline:stone-1,length=5");
  EXPECT_EQ(*parse_form(to_notation(*form), form->outline->points), *form);
  EXPECT_EQ(parse_form(to_notation(*form)).problem().code, ProblemCode::missing_field);
  auto drilled = *form;
  drilled.hole_spacing = millimetres(6);
  drilled.hole = millimetres(1.5);
  EXPECT_EQ(*parse_form(to_notation(drilled), drilled.outline->points), drilled);
  drilled.hole_spacing = millimetres(17);
  EXPECT_EQ(check(drilled).problem().code, ProblemCode::out_of_range);
  Form bare;
  bare.kind = FormKind::outline;
  EXPECT_EQ(check(bare).problem().code, ProblemCode::missing_field);
}

TEST(OutlineCsv, ReadsWhatSpreadsheetsWrite) {
  const std::vector<Point> wanted{{8.5, -0.25}, {0, 3}, {-8.5, 0}};
  for (const char* text : {"8.5,-0.25\n0,3\n-8.5,0\n", "x,y\n8.5,-0.25\n0,3\n-8.5,0",
                           "\xEF\xBB\xBFx;y\r\n8,5;-0,25\r\n0;3\r\n-8,5;0\r\n",
                           "# a stone\n\n 8.5 , -0.25 # the tip\n0,3\n\n-8.5,0",
                           "width mm;height mm\n8.5;-0.25\n0;3\n-8.5;0", "8.5\t-0.25\n0\t3\n-8.5\t0"}) {
    const auto points = parse_outline_csv(text);
    ASSERT_TRUE(points.ok()) << text << message(points.problem());
    EXPECT_EQ(*points, wanted) << text;
  }
  EXPECT_TRUE(parse_outline_csv("")->empty());
}

TEST(OutlineCsv, NamesTheLineThatIsWrong) {
  const auto where = [](std::string_view text) {
    const auto points = parse_outline_csv(text);
    return points ? std::string("read") : points.problem().where;
  };
  EXPECT_EQ(where("1,2\n3\n4,5"), "line 2 of the outline");
  EXPECT_EQ(where("x,y\n1,2\n3,4,5"), "line 3 of the outline");
  EXPECT_EQ(where("1,2\nx,y\n"), "line 2 of the outline");     // a heading comes first
  EXPECT_EQ(where("x,y\nx,y\n1,2"), "line 2 of the outline");  // and once
  EXPECT_EQ(where("1,nan"), "line 1 of the outline");
  EXPECT_EQ(where("#\n1,1e999"), "line 2 of the outline");
  EXPECT_EQ(where("1,5,2,5"), "line 1 of the outline");  // commas can't be both
  std::string many;
  for (std::size_t i = 0; i <= most_outline_points; ++i) many += "1,2\n";
  EXPECT_EQ(where(many), "line 2001 of the outline");
}

}  // namespace
}  // namespace evencount::form
