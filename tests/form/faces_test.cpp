#include "form/faces.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "form/closure.hpp"
#include "form/sections.hpp"

namespace evencount::form {
namespace {

using std::numbers::pi;

struct Band {
  const char* form;
  double diameter_mm;
  int edge;
};

constexpr std::array bands{
    Band{"lens:16x5x9", 1.6, 24},      Band{"lens:16x5x9", 1.6, 23},  Band{"lens:17x5x9", 1.6, 25},
    Band{"lens:19.5x5x11.5", 1.6, 28}, Band{"lens:9x6x9", 1.6, 14},   Band{"round:12x20", 1.6, 26},
    Band{"bar:20x4x10", 1.6, 30},      Band{"oval:18x13x5", 1.6, 33}, Band{"oval:8x15x5", 2.2, 16},
    Band{"ring:54", 1.6, 36},          Band{"lens:30x2x9", 1.6, 38},  Band{"round:2x20", 1.6, 6},
};

ConvexCurve outline(const Band& band) {
  return *section(*parse_form(band.form));
}

Faces faces_of(const Band& band) {
  const auto found = faces(*parse_form(band.form), millimetres(band.diameter_mm), band.edge);
  EXPECT_TRUE(found.ok()) << band.form;
  return *found;
}

int steps(const Faces& faces, Side side) {
  for (const Window& window : faces.windows)
    if (window.side == side) return window.steps;
  return 0;
}

bool wholly(const Faces& faces, Side side, int step) {
  return seat_of(faces, 0, step).side == side && seat_of(faces, 1, step).side == side;
}

TEST(Faces, EveryCellOnOneSide) {
  for (const Band& band : bands) {
    const Faces found = faces_of(band);
    ASSERT_EQ(found.edge, band.edge);
    ASSERT_EQ(found.seats.size(), static_cast<std::size_t>(2 * band.edge));
    int cells = 0;
    for (const Side side : {Side::front, Side::edge, Side::back}) cells += beads_on(found, side, 5);
    EXPECT_EQ(cells, 5 * band.edge) << band.form;
    for (const Seat& seat : found.seats) {
      EXPECT_GE(seat.foreshortening, 0);
      EXPECT_LE(seat.foreshortening, 1);
      EXPECT_NEAR(norm(seat.normal), 1, 1e-12);
      EXPECT_NEAR(seat.foreshortening, std::abs(seat.normal.y_mm), 1e-12);
      EXPECT_EQ(seat.side == Side::edge, seat.foreshortening < square_on_from - 1e-9);
      if (seat.side != Side::edge) {
        EXPECT_EQ(seat.side == Side::front, seat.normal.y_mm > 0);
      }
    }
  }
}

double distance_to_segment(Point p, Point a, Point b) {
  const double length = dot(b - a, b - a);
  const double share = length > 0 ? std::clamp(dot(p - a, b - a) / length, 0.0, 1.0) : 0;
  return distance(p, (1 - share) * a + share * b);
}

TEST(Faces, SeatsLieHalfABeadOutsideTheSection) {
  for (const Band& band : bands) {
    const auto points = sample(outline(band), millimetres(1e-5));
    for (const Seat& seat : faces_of(band).seats) {
      const Point foot = seat.centre - band.diameter_mm / 2 * seat.normal;
      double nearest = 1e300, farthest_along = -1e300;
      for (std::size_t i = 0; i < points.size(); ++i) {
        const Point &p = points[i], &next = points[(i + 1) % points.size()];
        nearest = std::min(nearest, distance_to_segment(seat.centre, p, next));
        farthest_along = std::max(farthest_along, dot(p, seat.normal));
      }
      EXPECT_NEAR(nearest, band.diameter_mm / 2, 1e-3) << band.form;
      EXPECT_NEAR(farthest_along, dot(foot, seat.normal), 1e-3) << band.form;
    }
  }
}

TEST(Faces, BothParitiesAreRingsOfEqualChords) {
  for (const Band& band : bands) {
    const ConvexCurve round = offset(outline(band), millimetres(band.diameter_mm / 2));
    const bool closes = close_ring(round, band.edge, seam_place(outline(band))).ok();
    const Faces found = faces_of(band);
    for (const int parity : {0, 1}) {
      const double chord = distance(seat_of(found, parity, 0).centre, seat_of(found, parity, 1).centre);
      double turned = 0;
      for (int k = 0; k < band.edge; ++k) {
        const Seat &here = seat_of(found, parity, k), &next = seat_of(found, parity, (k + 1) % band.edge);
        if (closes || k + 1 < band.edge) {
          EXPECT_NEAR(distance(here.centre, next.centre), chord, 1e-7) << band.form << " " << k;
        }
        turned += std::atan2(cross(here.normal, next.normal), dot(here.normal, next.normal));
      }
      EXPECT_NEAR(turned, 2 * pi, 1e-6) << band.form;
    }
  }
}

TEST(Faces, OddBeadsLieBetweenEvenOnes) {
  for (const Band& band : bands) {
    const Faces found = faces_of(band);
    double lead = 0;
    for (int k = 0; k < band.edge; ++k) {
      const Point odd = seat_of(found, 1, k).centre;
      const double behind = distance(odd, seat_of(found, 0, k).centre),
                   ahead = distance(odd, seat_of(found, 0, (k + 1) % band.edge).centre);
      // The two rings' chords differ by up to 7 % on the thinnest of these forms.
      EXPECT_GT(std::min(behind, ahead), 0.25 * (behind + ahead)) << band.form << " " << k;
      lead += behind - ahead;
    }
    EXPECT_NEAR(lead, 0, 1e-8) << band.form;
  }
}

TEST(Faces, SeamHidesOnATipOrAtTheBack) {
  for (const char* form : {"lens:16x5x9", "bar:20x4x10", "oval:18x13x5"}) {
    const Seat first = faces_of({form, 1.6, 30}).seats[0];
    EXPECT_NEAR(first.centre.x_mm, parse_form(form)->width.mm() / 2 + 0.8, 1e-9) << form;
    EXPECT_NEAR(first.centre.y_mm, 0, 1e-9) << form;
    EXPECT_EQ(first.side, Side::edge);
  }
  for (const char* form : {"round:12x20", "ring:54", "oval:13x12x5", "oval:8x15x5"}) {
    const Seat first = faces_of({form, 1.6, 30}).seats[0];
    EXPECT_NEAR(first.centre.x_mm, 0, 1e-9) << form;
    EXPECT_NEAR(first.centre.y_mm, -parse_form(form)->thickness.mm() / 2 - 0.8, 1e-9) << form;
    EXPECT_EQ(first.side, Side::back);
  }
  // The middle of a flat, in one piece or in two, wherever the list of pieces begins.
  const auto box = rounded_bar(millimetres(12), millimetres(6), millimetres(1));
  EXPECT_EQ(box->at(seam_place(*box)).at, (Point{6, 0}));
  const std::vector<Point> wedge{{-5, -1}, {5, -3}, {5, 2}, {-5, 1}};
  const auto polygonal = polygon(wedge);
  EXPECT_NEAR(polygonal->at(seam_place(*polygonal)).at.y_mm, -0.5, 1e-12);
  // A corner that turns past the direction; an ellipse's arc that faces it between its ends.
  const auto turned_square = rotated(*rounded_bar(millimetres(9), millimetres(3), millimetres(0)), 0.2);
  EXPECT_NEAR(turned_square.at(seam_place(turned_square)).at.x_mm, turned_square.box().high.x_mm, 1e-9);
  const auto turned_oval = rotated(*ellipse(millimetres(9), millimetres(3)), 0.2);
  EXPECT_NEAR(turned_oval.at(seam_place(turned_oval)).at.x_mm, turned_oval.box().high.x_mm, 1e-9);
}

TEST(Faces, MirrorSymmetry) {
  for (const Band& band : bands) {
    const Faces found = faces_of(band);
    const bool at_back = found.seats[0].side == Side::back;
    const ConvexCurve round = offset(outline(band), millimetres(band.diameter_mm / 2));
    if (!close_ring(round, band.edge, seam_place(outline(band)))) continue;
    for (int h = 1; h < 2 * band.edge; ++h) {
      const Seat &a = found.seats[h], &b = found.seats[2 * band.edge - h];
      const Point mirror =
          at_back ? Point{-b.centre.x_mm, b.centre.y_mm} : Point{b.centre.x_mm, -b.centre.y_mm};
      EXPECT_NEAR(distance(a.centre, mirror), 0, 1e-6) << band.form << " " << h;
      EXPECT_NEAR(a.foreshortening, b.foreshortening, 1e-5);
    }
    if (!at_back) {
      EXPECT_EQ(beads_on(found, Side::front, 2), beads_on(found, Side::back, 2)) << band.form;
    }
  }
}

// The length of the round whose normals face the viewer, by brute force.
double facing_mm(const ConvexCurve& round) {
  double sum = 0;
  for (int piece = 0; piece < static_cast<int>(round.pieces().size()); ++piece) {
    constexpr int parts = 4000;
    for (int i = 0; i < parts; ++i)
      if (round.at({piece, (i + 0.5) / parts}).normal.y_mm >= square_on_from)
        sum += distance(round.at({piece, 1.0 * i / parts}).at, round.at({piece, (i + 1.0) / parts}).at);
  }
  return sum;
}

TEST(Faces, FrontBeadsFillTheFront) {
  for (const Band& band : bands) {
    const Faces found = faces_of(band);
    const double length = facing_mm(offset(outline(band), millimetres(band.diameter_mm / 2)));
    for (const int parity : {0, 1}) {
      const double chord = distance(seat_of(found, parity, 0).centre, seat_of(found, parity, 1).centre);
      int beads = 0;
      for (int k = 0; k < band.edge; ++k) beads += seat_of(found, parity, k).side == Side::front;
      EXPECT_NEAR(beads, length / chord, 1) << band.form;
    }
  }
}

TEST(Faces, SlidingIsARotationOfTheSteps) {
  for (const Band& band : bands) {
    const Faces found = faces_of(band);
    EXPECT_EQ(slid_by(found, 0), found);
    EXPECT_EQ(slid_by(found, band.edge), found);
    EXPECT_EQ(slid_by(found, -2 * band.edge), found);
    EXPECT_EQ(slid_by(slid_by(found, 3), 5), slid_by(found, 8));
    EXPECT_EQ(slid_by(slid_by(found, 3), -3), found);
    const Faces slid = slid_by(found, 2);
    for (int step = 0; step + 2 < band.edge; ++step)
      for (const int column : {0, 1})
        EXPECT_EQ(seat_of(slid, column, step), seat_of(found, column, step + 2));
  }
}

TEST(Faces, SlidingHalfWaySwapsTheFaces) {
  for (const Band& band : bands) {
    if (band.edge % 2 != 0) continue;
    const Faces found = faces_of(band), slid = slid_by(found, band.edge / 2);
    for (std::size_t h = 0; h < found.seats.size(); ++h) {
      const Side here = found.seats[h].side, there = slid.seats[h].side;
      EXPECT_EQ(here == Side::front, there == Side::back) << band.form << " " << h;
      EXPECT_EQ(here == Side::edge, there == Side::edge) << band.form << " " << h;
    }
  }
}

TEST(Faces, WindowsAreLargestRunsOfTheirFace) {
  for (const Band& band : bands) {
    for (const int slide : {0, 1, 5}) {
      const Faces found = slid_by(faces_of(band), slide);
      std::vector<bool> taken(static_cast<std::size_t>(band.edge), false);
      for (const Window& window : found.windows) {
        ASSERT_GE(window.first_step, 0);
        ASSERT_LE(window.first_step + window.steps, band.edge);
        for (int s = window.first_step; s < window.first_step + window.steps; ++s) {
          EXPECT_FALSE(taken[s]) << band.form;
          taken[s] = true;
          EXPECT_TRUE(wholly(found, window.side, s)) << band.form;
        }
      }
      for (const Side side : {Side::front, Side::back})
        for (int first = 0; first < band.edge; ++first) {
          int run = 0;
          while (first + run < band.edge && wholly(found, side, first + run)) ++run;
          EXPECT_LE(run, steps(found, side)) << band.form;
        }
    }
  }
}

TEST(Faces, Carriers) {
  const Faces small = faces_of({"lens:16x5x9", 1.6, 24});
  EXPECT_EQ(small.windows, (std::vector<Window>{{Side::front, 1, 11}, {Side::back, 13, 11}}));
  EXPECT_EQ(seat_of(small, 0, 0).side, Side::edge);
  EXPECT_EQ(seat_of(small, 0, 12).side, Side::edge);
  EXPECT_EQ(slide_to_front(small, small.windows[0]), 0);
  EXPECT_EQ(slide_to_front(small, small.windows[1]), 12);
  EXPECT_EQ(slid_by(small, 12).windows[0], (Window{Side::front, 13, 11}));
  EXPECT_EQ(slide_to_front(small, {Side::edge, 0, 1}), 6);
  EXPECT_EQ(slide_to_front(small, {Side::edge, 11, 2}), -6);
  const Faces large = faces_of({"lens:19.5x5x11.5", 1.6, 28});
  EXPECT_EQ(large.windows, (std::vector<Window>{{Side::front, 1, 13}, {Side::back, 15, 13}}));
  // A tube's seam parts its back into halves, 3 steps each: the first is taken.
  const Faces tube = faces_of({"round:12x20", 1.6, 26});
  EXPECT_EQ(tube.windows, (std::vector<Window>{{Side::front, 10, 6}, {Side::back, 0, 3}}));
}

TEST(Faces, AFaceWithoutRoomHasNoWindow) {
  // A needle seen along its width: only bits of the round ends face the viewer.
  const Faces found = faces_of({"oval:0.5x20x5", 1.6, 25});
  EXPECT_LE(steps(found, Side::front), 1);
  EXPECT_LE(found.windows.size(), 2u);
}

TEST(Faces, Refusals) {
  const auto form = *parse_form("lens:16x5x9");
  EXPECT_EQ(faces(form, millimetres(0), 24).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(faces(form, millimetres(NAN), 24).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(faces(form, millimetres(1.6), 2).problem().code, ProblemCode::too_few_beads);
  auto broken = form;
  broken.thickness = millimetres(99);
  EXPECT_EQ(faces(broken, millimetres(1.6), 24).problem().code, ProblemCode::out_of_range);
}

TEST(Faces, SideNames) {
  EXPECT_EQ(side_name(Side::front), "front");
  EXPECT_EQ(side_name(Side::edge), "edge");
  EXPECT_EQ(side_name(Side::back), "back");
}

}  // namespace
}  // namespace evencount::form
