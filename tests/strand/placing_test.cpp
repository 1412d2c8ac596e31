#include "strand/placing.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "strand/layouts.hpp"
#include "strand/seats.hpp"

namespace evencount::strand {
namespace {

double dot(Place3 a, Place3 b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

struct Fitted {
  Strung strung;
  StrandFit fit;
  TwoCords curve;
};

Fitted fitted(const std::string& text, const Wearer& wearer, double lean) {
  const Strung strung = strung_of(text);
  const auto fit = fit_strand(strung, {.wearer = wearer});
  EXPECT_TRUE(fit);
  return {strung, *fit, *two_cords(strung, fit->best.counts, lean)};
}

const Wearer wrist{"M", Worn::wrist, millimetres(165), millimetres(20)};
const Wearer long_one{"45 cm", Worn::length, millimetres(450), {}};

void expect_sound(const Fitted& one, const PlacedStrand& placed) {
  std::vector<std::int64_t> count(one.strung.elements.size(), 0),
      used = use_of(one.strung, one.fit.best.counts);
  for (const OuterExtra& extra : one.curve.extras)
    used[static_cast<std::size_t>(extra.element)] += extra.count;
  for (const PlacedThing& thing : placed.things) {
    ++count[static_cast<std::size_t>(thing.element)];
    EXPECT_NEAR(dot(thing.along, thing.along), 1, 1e-9);
    EXPECT_NEAR(dot(thing.outwards, thing.outwards), 1, 1e-9);
    EXPECT_NEAR(dot(thing.along, thing.outwards), 0, 1e-9);
    if (one.strung.cords == 1 || one.strung.elements[static_cast<std::size_t>(thing.element)].holes == 2) {
      EXPECT_EQ(thing.cord, 0);
    }
  }
  EXPECT_EQ(count, used);
  EXPECT_EQ(placed.cords.size(), static_cast<std::size_t>(one.strung.cords));
}

TEST(Placing, FlatLiesInARow) {
  const Fitted one = fitted(bracelet_text, wrist, bracelet_lean);
  const PlacedStrand flat = placed_flat(one.strung, one.fit, one.curve);
  expect_sound(one, flat);
  double inner = 0, before = 1e9;
  for (const PlacedThing& thing : flat.things) {
    if (thing.cord == 2) continue;
    inner += thing.length.mm();
    EXPECT_LT(thing.middle.x, before);  // from left to right is along -x
    before = thing.middle.x;
    EXPECT_GE(thing.middle.z, 0);  // the inner cord above
  }
  EXPECT_NEAR(inner, one.fit.best.length.mm(), 1e-3);
}

TEST(Placing, OnAWristTheMiddleIsInFrontAndFacesLookOutwards) {
  const Fitted one = fitted(bracelet_text, wrist, bracelet_lean);
  const auto worn = placed_worn(one.strung, one.fit, one.curve, bracelet_lean);
  ASSERT_TRUE(worn);
  expect_sound(one, *worn);
  EXPECT_LT(worn->things.back().middle.y, -15);  // the clasp at the back
  for (const PlacedThing& thing : worn->things) {
    EXPECT_GT(dot(thing.middle, thing.outwards), 0);
    EXPECT_NEAR(thing.outwards.z, 0, 1e-9);
  }
  // The two cords run side by side and are equally long.
  const auto length = [](const std::vector<Place3>& line) {
    double sum = 0;
    for (std::size_t i = 1; i < line.size(); ++i)
      sum += std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y, line[i].z - line[i - 1].z);
    return sum;
  };
  EXPECT_NEAR(length(worn->cords[0]), length(worn->cords[1]), 1e-9);
}

// Each cord ends at its own hole of a closing that has two.
TEST(Placing, CordsEndInTheClosingsHoles) {
  const Fitted one = fitted(bracelet_text, wrist, bracelet_lean);
  const double apart = one.strung.elements[static_cast<std::size_t>(one.strung.closing)].apart.mm();
  ASSERT_NEAR(apart, 9.6, 1e-9);
  for (const PlacedStrand& placed : {*placed_worn(one.strung, one.fit, one.curve, bracelet_lean),
                                     placed_on_table(one.strung, one.fit, one.curve)}) {
    ASSERT_EQ(placed.cords.size(), 2u);
    for (const auto& [a, b] : {std::pair(placed.cords[0].front(), placed.cords[1].front()),
                               std::pair(placed.cords[0].back(), placed.cords[1].back())})
      EXPECT_NEAR(std::hypot(a.x - b.x, a.y - b.y, a.z - b.z), apart, 1e-6);
  }
}

// Laid flat the strand's middle is the middle; and where two pieces meet a cord has one point.
TEST(Placing, ARowLiesEvenlyAndCordsHaveOnePointAMeeting) {
  const Fitted one = fitted(bracelet_text, wrist, bracelet_lean);
  const PlacedStrand flat = placed_flat(one.strung, one.fit, one.curve);
  double low = 1e9, high = -1e9;
  for (const PlacedThing& thing : flat.things) {
    if (thing.element == one.strung.closing) continue;
    low = std::min(low, thing.middle.x - thing.length.mm() / 2);
    high = std::max(high, thing.middle.x + thing.length.mm() / 2);
  }
  EXPECT_NEAR(low, -high, 1e-9);
  const auto worn = placed_worn(one.strung, one.fit, one.curve, bracelet_lean);
  ASSERT_TRUE(worn);
  const std::size_t pieces = pieces_of(one.strung, one.fit.best.counts).size();
  for (const auto& line : worn->cords) EXPECT_EQ(line.size(), pieces + 1 + 2);  // and both ends in the closing
}

TEST(Placing, AFinishedLengthHangsInARing) {
  const Fitted one = fitted(necklace_text, long_one, necklace_lean);
  ASSERT_FALSE(one.curve.extras.empty());
  const auto worn = placed_worn(one.strung, one.fit, one.curve, necklace_lean);
  ASSERT_TRUE(worn);
  expect_sound(one, *worn);
  const double radius = one.fit.best.length.mm() / (2 * std::numbers::pi);
  int on_outer = 0;
  for (const PlacedThing& thing : worn->things) {
    const Element& element = one.strung.elements[static_cast<std::size_t>(thing.element)];
    const Place3 o = thing.outwards, a = thing.along;
    const Place3 inner{o.y * a.z - o.z * a.y, o.z * a.x - o.x * a.z, o.x * a.y - o.y * a.x};
    const double off = element.apart.mm() / 2;
    const double from = std::hypot(thing.middle.x + off * inner.x, thing.middle.z + off * inner.z);
    if (thing.cord == 1 || (thing.cord == 0 && thing.element != one.strung.closing)) {
      EXPECT_NEAR(from, radius, 1e-6);
    }
    if (thing.cord == 2) {
      EXPECT_GE(from, radius - 1e-3);
      ++on_outer;
    }
    EXPECT_NEAR(thing.outwards.y, std::cos(necklace_lean * std::numbers::pi / 180), 1e-9);
  }
  EXPECT_GT(on_outer, 0);
  EXPECT_NEAR(worn->things.back().middle.x, 0, 1e-9);  // the closing above
  EXPECT_NEAR(worn->things.back().middle.z, radius, 2);
  const auto seen_from_front = [&](const PlacedThing& thing) {
    return thing.middle.z < -radius + 1 && std::abs(thing.middle.x) < 10;
  };
  EXPECT_TRUE(std::any_of(worn->things.begin(), worn->things.end(), seen_from_front));
}

/// The nearest that a cord comes to a place, between its points too.
double nearest_to(const std::vector<std::vector<Place3>>& cords, Place3 place) {
  double nearest = 1e9;
  for (const auto& line : cords)
    for (std::size_t i = 1; i < line.size(); ++i) {
      const Place3 a = line[i - 1], way{line[i].x - a.x, line[i].y - a.y, line[i].z - a.z},
                   to{place.x - a.x, place.y - a.y, place.z - a.z};
      const double share = std::clamp(dot(to, way) / std::max(dot(way, way), 1e-12), 0.0, 1.0);
      nearest =
          std::min(nearest, std::hypot(to.x - share * way.x, to.y - share * way.y, to.z - share * way.z));
    }
  return nearest;
}

/// What the outer cord has more hangs on it.
void expect_on_outer_cord(const PlacedStrand& placed) {
  for (const PlacedThing& thing : placed.things) {
    if (thing.cord != 2) continue;
    EXPECT_LE(nearest_to({placed.cords[1]}, thing.middle), 0.3);
  }
}

void expect_cords_through_holes(const Fitted& one, const PlacedStrand& placed, const std::string& which) {
  for (const PlacedThing& thing : placed.things) {
    const Element& element = one.strung.elements[static_cast<std::size_t>(thing.element)];
    if (thing.element == one.strung.closing) continue;
    const Place3 o = thing.outwards, a = thing.along;
    const Place3 inner{o.y * a.z - o.z * a.y, o.z * a.x - o.x * a.z, o.x * a.y - o.y * a.x};
    for (const double side : element.holes == 2 ? std::vector{0.5, -0.5} : std::vector{0.0})
      for (const double mouth : {-0.5, 0.0, 0.5}) {
        const double off = side * element.apart.mm(), on = mouth * thing.length.mm();
        const Place3 hole{thing.middle.x + off * inner.x + on * a.x,
                          thing.middle.y + off * inner.y + on * a.y,
                          thing.middle.z + off * inner.z + on * a.z};
        EXPECT_LE(nearest_to(placed.cords, hole), element.hole.mm() / 2)
            << element.id << ", " << which << ", " << mouth;
      }
  }
}

// (5)
TEST(Placing, CordsRunThroughTheHoles) {
  for (const bool necklace : {false, true}) {
    const Fitted one = necklace ? fitted(necklace_text, long_one, necklace_lean)
                                : fitted(bracelet_text, wrist, bracelet_lean);
    const double lean = necklace ? necklace_lean : bracelet_lean;
    const std::string which = necklace ? "necklace" : "bracelet";
    expect_cords_through_holes(one, placed_flat(one.strung, one.fit, one.curve), which + " flat");
    expect_on_outer_cord(placed_flat(one.strung, one.fit, one.curve));
    expect_on_outer_cord(*placed_worn(one.strung, one.fit, one.curve, lean));
    expect_cords_through_holes(one, placed_on_table(one.strung, one.fit, one.curve), which + " on a table");
    expect_cords_through_holes(one, *placed_worn(one.strung, one.fit, one.curve, lean), which + " worn");
  }
}

// Long gaps of beads of two sizes on a bent cord: what the outer cord has lies on it, in each gap as far from one bead to the next.
TEST(Placing, TheOuterCordsBeadsLieEvenly) {
  const Fitted one = fitted(R"(cords 2 of braided 0.6mm
    bead stop 8mm hole 1.5mm
    bead big 5mm hole 1.2mm
    crimp tube 5mm hole 1.3mm across 2mm thick 2mm
    clasp hook 15mm hole 2mm
    close with hook
    string mirror (tube, fill sides with round-8, stop, 2 ("Big moon", 9 round-8, 4 big)) about "Big moon")",
                            long_one, necklace_lean);
  ASSERT_FALSE(one.curve.extras.empty());
  const PlacedStrand worn = *placed_worn(one.strung, one.fit, one.curve, necklace_lean);
  expect_on_outer_cord(worn);
  int pairs = 0;
  std::optional<double> space;
  for (std::size_t i = 1; i < worn.things.size(); ++i) {
    const PlacedThing &a = worn.things[i - 1], &b = worn.things[i];
    const Place3 way{b.middle.x - a.middle.x, b.middle.y - a.middle.y, b.middle.z - a.middle.z};
    const double between = std::sqrt(dot(way, way)) - (a.length + b.length).mm() / 2;
    if (a.cord != 2 || b.cord != 2 || between > 5) {  // over something that both cords go through
      space.reset();
      continue;
    }
    EXPECT_NEAR(between, 0, 0.2);  // it is as long as its beads, within one in a gap of 16
    if (space) {
      EXPECT_NEAR(between, *space, 0.01);
      ++pairs;
    }
    space = between;
  }
  EXPECT_GT(pairs, 20);
}

// (8)
TEST(Placing, OnATableABeadLeansAsTheMiddlesBesideIt) {
  // Ends that lie open beside something thick, of the same length and of another.
  for (const char* strung : {"tube, big, 3 tube, fill sides with round-8, big, 2 round-8",
                             "round-8, big, fill sides with round-8, big, tube",
                             "2 tube, flat, big, fill sides with round-8, 2 big, flat"}) {
    const Fitted one = fitted(std::string(R"(cords 1 of braided 0.6mm
      bead big 14mm hole 1.5mm
      bead flat 9mm thick 1.4mm across 6mm hole 1mm
      crimp tube 5mm hole 1.3mm across 2mm thick 2mm
      string )") + strung,
                              wrist, bracelet_lean);
    const auto table = placed_on_table(one.strung, one.fit, one.curve);
    const std::vector<PlacedThing>& row = table.things;
    expect_cords_through_holes(one, table, strung);
    int leaning = 0;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const PlacedThing &before = row[i == 0 ? 0 : i - 1], &after = row[std::min(i + 1, row.size() - 1)];
      const double rise = after.middle.y - before.middle.y, way = before.middle.x - after.middle.x;
      EXPECT_NEAR(row[i].along.y * way, -row[i].along.x * rise, 1e-9) << strung << " " << i;
      leaning += row[i].along.y != 0;
    }
    EXPECT_GT(leaning, 1) << strung;
  }
}

// (6)
TEST(Placing, OnATableEverythingRests) {
  for (const bool necklace : {false, true}) {
    const Fitted one = necklace ? fitted(necklace_text, long_one, necklace_lean)
                                : fitted(bracelet_text, wrist, bracelet_lean);
    const PlacedStrand table = placed_on_table(one.strung, one.fit, one.curve);
    int resting = 0, halves = 0;
    for (const PlacedThing& thing : table.things) {
      const Element& element = one.strung.elements[static_cast<std::size_t>(thing.element)];
      const double above = thing.middle.y - element.thickness.mm() / 2;
      EXPECT_GE(above, -1e-9) << element.id;
      EXPECT_GT(thing.outwards.y, 0.9);
      if (element.kind == ElementKind::form) {
        EXPECT_NEAR(above, 0, 1e-9);
        EXPECT_NEAR(thing.outwards.y, 1, 1e-9);
      }
      resting += above < 1e-6;
      halves += thing.half != ClaspHalf::both;
    }
    EXPECT_GT(resting, static_cast<int>(table.things.size()) / 2);  // the sides lie on it
    EXPECT_EQ(halves, necklace ? 0 : 2);
    EXPECT_EQ(table.cords.size(), 2u);
  }
}

// (7)
TEST(Placing, TheBodyHangsInTheLoop) {
  for (const Worn worn : {Worn::wrist, Worn::neck}) {
    const Wearer wearer{"one", worn, millimetres(worn == Worn::wrist ? 165 : 380), millimetres(30)};
    const double lean = worn == Worn::wrist ? bracelet_lean : necklace_lean;
    const Fitted one = fitted(bracelet_text, wearer, lean);
    const PlacedStrand placed = *placed_worn(one.strung, one.fit, one.curve, lean);
    ASSERT_TRUE(placed.body);
    const Body& body = *placed.body;
    const double half_width = std::sqrt(dot(body.half_width, body.half_width)),
                 half_depth = std::sqrt(dot(body.half_depth, body.half_depth));
    double round = 0;  // its circumference, by chords
    constexpr int chords = 20'000;
    for (int i = 0; i < chords; ++i) {
      const double a = 2 * std::numbers::pi * i / chords, b = 2 * std::numbers::pi * (i + 1) / chords;
      round += std::hypot(half_width * (std::cos(b) - std::cos(a)), half_depth * (std::sin(b) - std::sin(a)));
    }
    EXPECT_NEAR(round, wearer.measure.mm(), 1e-3 * round);
    double nearest = 1e9;
    int level = 0;
    for (const PlacedThing& thing : placed.things) {
      const Place3 from{thing.middle.x - body.middle.x, thing.middle.y - body.middle.y,
                        thing.middle.z - body.middle.z};
      const double u = dot(from, body.half_width) / (half_width * half_width),
                   v = dot(from, body.half_depth) / (half_depth * half_depth);
      EXPECT_GT(std::hypot(u, v), 1);
      if (thing.cord == 0) {  // in the plane of the loop
        ++level;
        EXPECT_NEAR(dot(from, cross(body.half_width, body.half_depth)) / (half_width * half_depth), 0, 1e-9);
      }
      nearest = std::min(nearest, (std::hypot(u, v) - 1) * half_depth - one.fit.thickness.mm() / 2);
    }
    EXPECT_GT(level, 0);
    EXPECT_LT(nearest, 2);  // the ease is on the other side
    EXPECT_FALSE(placed_flat(one.strung, one.fit, one.curve).body);
  }
}

TEST(Placing, OneCordThatBecomesTwo) {
  const Fitted one = fitted(R"(cords 2 of braided 0.6mm
    joiner y 6mm holes 2 apart 9.6mm hole 1.2mm
    clasp hook 15mm hole 2mm
    close with hook
    string fill sides with round-8, y, fill inner with round-8, moon, fill inner with round-8, y, fill sides with round-8)",
                            wrist, bracelet_lean);
  const auto worn = placed_worn(one.strung, one.fit, one.curve, bracelet_lean);
  ASSERT_TRUE(worn);
  expect_sound(one, *worn);
  EXPECT_GT(worn->cords[0].size(), worn->cords[1].size());
}

}  // namespace
}  // namespace evencount::strand
