#include "form/bezel.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>
#include <tuple>

#include "base/text.hpp"
#include "form/bezel_rounds.hpp"
#include "form/ring_start.hpp"
#include "form/sections.hpp"

namespace evencount::form {
namespace {

using std::numbers::pi;

std::pair<bead::Size, bead::Gauge> bead_of(const char* id) {
  const auto size = *bead::find_size(id);
  return {size, bead::default_gauge(size, bead::threads()[0])};
}

BezelRequest request(const char* stone, const char* wall = "cylinder-11", const char* inner = "round-15") {
  const auto [wall_bead, wall_gauge] = bead_of(wall);
  const auto [inner_bead, inner_gauge] = bead_of(inner);
  return {*parse_stone(stone), wall_bead, wall_gauge, {{inner_bead, inner_gauge}}};
}

constexpr const char* crystal = "stone:14,girdle=0.5,dome=2.2,back=2.3";

constexpr std::array stones{crystal,
                            "stone:14,dome=2.5,back=2.7",
                            "stone:14,girdle=1.5,dome=2.5,back=3",
                            "stone:12,girdle=0.5,dome=2,back=2.1",
                            "stone:8,girdle=0.4,dome=1.6,back=2.2",
                            "stone:18x13,girdle=1,dome=5,back=flat",
                            "stone:40x30,girdle=1.5,dome=6,back=flat",
                            "stone:10x14,girdle=0.3,dome=2,back=4",
                            "stone:14,girdle=0.5,dome=7,back=flat",
                            "stone:30,girdle=6,dome=1,back=12"};

std::vector<BezelRound> rounds_of(const Bezel& made, StoneSide side) {
  std::vector<BezelRound> rounds;
  for (const BezelRound& round : made.rounds)
    if (round.side == side) rounds.push_back(round);
  return rounds;
}

// Every stone with every choice of numbers, given and chosen.
template <typename Body>
void for_all(const Body& body) {
  for (const char* stone : stones) {
    for (const char* inner : {"round-15", "cylinder-15", "cylinder-11"}) {
      for (const auto& [wall, front, back] :
           {std::tuple{0, 0, 0}, {2, 2, 2}, {3, 1, 4}, {2, 6, 5}, {9, 3, 3}}) {
        SCOPED_TRACE(std::string(stone) + " " + inner + " wall " + std::to_string(wall));
        auto wanted = request(stone, "cylinder-11", inner);
        if (wall > 0) wanted.wall_rounds = wall, wanted.front_rounds = front, wanted.back_rounds = back;
        const auto made = bezel(wanted);
        ASSERT_TRUE(made.ok()) << message(made.problem());
        body(wanted, *made);
      }
    }
  }
}

TEST(Bezel, CountsAddUp) {
  for_all([](const BezelRequest& wanted, const Bezel& made) {
    EXPECT_EQ(made.ring_beads % 2, 0);
    ASSERT_EQ(static_cast<int>(made.rounds.size()), made.wall_rounds + made.front_rounds + made.back_rounds);
    int sum = 0;
    for (std::size_t i = 0; i < made.rounds.size(); ++i) {
      const BezelRound& round = made.rounds[i];
      EXPECT_EQ(round.number, static_cast<int>(i) + 1);
      EXPECT_EQ(round.beads, made.ring_beads / 2);
      EXPECT_EQ(round.role == RoundRole::start, i < 2);
      EXPECT_EQ(round.side.has_value(), round.role == RoundRole::draw_in);
      sum += round.beads;
    }
    EXPECT_EQ(sum, made.bead_count);
    int by_size = 0;
    for (const BezelBeads& one : made.beads) by_size += one.count;
    EXPECT_EQ(by_size, sum);
    EXPECT_EQ(made.beads.front().bead, wanted.bead.id);
    EXPECT_EQ(rounds_of(made, StoneSide::front).size(), static_cast<std::size_t>(made.front_rounds));
  });
}

TEST(Bezel, RadiiNeverGrowInwardsAndRingsNeverCloseBelowTheirBeads) {
  for_all([](const BezelRequest& wanted, const Bezel& made) {
    EXPECT_NEAR(made.rounds[1].height.mm() - made.rounds[0].height.mm(), wanted.gauge.edge.mm() / 2, 1e-12);
    for (const StoneSide side : {StoneSide::front, StoneSide::back}) {
      double radius = made.rounds[0].radius.mm();
      for (const BezelRound& round : rounds_of(made, side)) {
        EXPECT_LE(round.radius.mm(), radius + 1e-9);
        EXPECT_GE(round.strain, -1e-9);
        EXPECT_NEAR(round.strain, round.radius / round.natural - 1, 1e-12);
        radius = round.radius.mm();
      }
    }
  });
}

TEST(Bezel, RoundsOfAFabricStayHalfAnEdgeApart) {
  for_all([](const BezelRequest& wanted, const Bezel& made) {
    const double wall = wanted.gauge.edge.mm(), inner = wanted.draw_in[0].gauge.edge.mm();
    for (const StoneSide side : {StoneSide::front, StoneSide::back}) {
      const std::size_t last_wall = static_cast<std::size_t>(made.wall_rounds) - 1;
      BezelRound before = made.rounds[side == StoneSide::front ? last_wall : 0];
      double step = (wall + inner) / 4;
      for (const BezelRound& round : rounds_of(made, side)) {
        EXPECT_NEAR(std::hypot((round.radius - before.radius).mm(), (round.height - before.height).mm()),
                    step, 1e-9);
        step = inner / 2;
        before = round;
      }
    }
  });
}

// The oracle: the stone's meridian as many points, made from the sizes alone and without any offset.
double distance_to_stone(const Stone& stone, StoneSide side, double inset, double height) {
  const double b = std::min(stone.width, stone.height).mm() / 2, edge = stone.girdle.mm() / 2;
  const double x = b - inset, above = height - edge;
  const double dome = stone.dome.mm(), sphere = (b * b + dome * dome) / (2 * dome);
  double nearest = std::numeric_limits<double>::infinity();
  constexpr int points = 4000;
  for (int i = 0; i <= points; ++i) {
    double px = b * i / points, py = stone.back_depth.mm() * (1 - px / b);
    if (side == StoneSide::front) {
      const double angle = 2 * std::atan(dome / b) * i / points;
      px = sphere * std::sin(angle), py = sphere * std::cos(angle) - (sphere - dome);
    }
    nearest = std::min(nearest, std::hypot(px - x, py - above));
  }
  return nearest;
}

TEST(Bezel, NoBeadLiesInsideTheStone) {
  int touching = 0;
  for_all([&](const BezelRequest& wanted, const Bezel& made) {
    const double wall_bead = wanted.bead.diameter.mm() / 2, bead = wanted.draw_in[0].bead.diameter.mm() / 2;
    const auto outline = *ellipse(wanted.stone.width, wanted.stone.height);
    const double girdle = outline.perimeter().mm() / (2 * pi);
    EXPECT_GE(made.rounds[0].radius.mm(), girdle + wall_bead - 1e-9);
    for (const BezelRound& round : made.rounds) {
      if (!round.side) continue;
      const double sign = *round.side == StoneSide::front ? 1 : -1;
      const double inset = girdle - round.radius.mm(), height = sign * round.height.mm();
      const double apart = distance_to_stone(wanted.stone, *round.side, inset, height);
      EXPECT_GE(apart, bead - 1e-9) << "round " << round.number;
      if (inset > -bead && apart < bead + 1e-5) ++touching;
    }
  });
  EXPECT_GE(touching, 40);  // or nothing was ever near enough to be tested
}

TEST(Bezel, ClearHeightsJustTouchTheStone) {
  for (const char* text : stones) {
    const auto stone = *parse_stone(text);
    const Meridian meridian(stone, ellipse(stone.width, stone.height)->perimeter().mm());
    const double half = std::min(stone.width, stone.height).mm() / 2;
    for (const StoneSide side : {StoneSide::front, StoneSide::back}) {
      for (const double bead : {0.4, 0.8, 1.5}) {
        for (double inset = -0.999 * bead; inset <= half; inset += half / 50) {
          const double height = meridian.clear_height_mm(side, meridian.girdle_mm() - inset, bead);
          EXPECT_NEAR(distance_to_stone(stone, side, inset, height), bead, 2e-5)
              << text << " inset " << inset;
        }
        EXPECT_TRUE(std::isinf(meridian.clear_height_mm(side, meridian.girdle_mm() + bead, bead)));
      }
    }
  }
}

TEST(Bezel, RingsKeepTheEndsOfAnOvalRound) {
  auto wanted = request("stone:18x6,girdle=0.5,dome=2,back=flat");
  wanted.draw_in[0].fewer = 3;  // or the beads would touch before the ends are sharp
  wanted.wall_rounds = 20, wanted.front_rounds = wanted.back_rounds = 5;
  const auto made = *bezel(wanted);
  const double girdle = ellipse(millimetres(18), millimetres(6))->perimeter().mm() / (2 * pi);
  EXPECT_NEAR(rounds_of(made, StoneSide::front).back().radius.mm(), girdle - 3.0 * 3.0 / 9.0, 1e-9);
}

TEST(Bezel, WithoutRoundsDrawnInTheStoneFallsOut) {
  for (const char* stone : stones) {
    auto wanted = request(stone);
    wanted.front_rounds = 0;
    const auto open_front = *bezel(wanted);
    EXPECT_FALSE(open_front.holds_front) << stone;
    EXPECT_TRUE(open_front.holds_back) << stone;
    EXPECT_LE(open_front.capture_front.mm(), 1e-9);
    EXPECT_NE(open_front.reason_front.find("falls out at the front: nothing is drawn in"), std::string::npos);
    EXPECT_EQ(open_front.reason_back, "");
    EXPECT_FALSE(open_front.play.has_value());
    wanted.front_rounds.reset();
    wanted.draw_in.clear();
    const auto open = *bezel(wanted);
    EXPECT_EQ(open.front_rounds + open.back_rounds, 0);
    EXPECT_EQ(open.beads.size(), 1u);
    EXPECT_FALSE(open.holds_front || open.holds_back);
  }
}

// One round that reaches too little, or doesn't reach the girdle at all: the reason says by how much.
TEST(Bezel, AStoneThatFallsOutSaysByHowMuch) {
  int inside = 0, outside = 0;
  for (const char* stone : stones)
    for (const char* inner : {"round-15", "cylinder-11", "round-8"}) {
      auto wanted = request(stone, "round-15", inner);
      wanted.draw_in[0].fewer = 1;
      wanted.front_rounds = wanted.back_rounds = 1;
      wanted.wall_rounds = 2;
      const auto made = *bezel(wanted);
      if (made.holds_front) continue;
      const double capture = made.capture_front.mm();
      (capture > 0 ? inside : outside)++;
      const std::string figure = plain_number(std::abs(capture)) + " mm ";
      EXPECT_NE(made.reason_front.find(capture > 0 ? "reaches only " + figure + "inside"
                                                   : "stays " + figure + "outside"),
                std::string::npos)
          << stone << ": " << made.reason_front;
    }
  EXPECT_GT(inside, 0);
  EXPECT_GT(outside, 0);
}

TEST(Bezel, CaptureGrowsWithRoundsDrawnIn) {
  for (const char* stone : stones) {
    auto wanted = request(stone);
    wanted.wall_rounds = 40;  // high enough that nothing is pushed outwards
    Length before_front = millimetres(-100), before_back = before_front;
    for (int rounds = 0; rounds <= 7; ++rounds) {
      wanted.front_rounds = wanted.back_rounds = rounds;
      const auto made = *bezel(wanted);
      if (rounds <= 2) {
        EXPECT_GT(made.capture_front, before_front) << stone << rounds;
        EXPECT_GT(made.capture_back, before_back) << stone << rounds;
      }
      EXPECT_GE(made.capture_front.mm(), before_front.mm() - 1e-9) << stone << rounds;
      EXPECT_GE(made.capture_back.mm(), before_back.mm() - 1e-9) << stone << rounds;
      before_front = made.capture_front, before_back = made.capture_back;
    }
  }
}

TEST(Bezel, CaptureIsWhatTheLastRingLeavesOpen) {
  for (const char* stone : {crystal, "stone:12,girdle=0.5,dome=2,back=2.1"}) {
    const auto wanted = request(stone);
    const auto made = *bezel(wanted);
    const double girdle = wanted.stone.width.mm() / 2, bead = wanted.draw_in[0].bead.diameter.mm() / 2;
    EXPECT_NEAR(made.capture_front.mm(),
                girdle - (rounds_of(made, StoneSide::front).back().radius.mm() - bead), 1e-12);
    EXPECT_NEAR(made.capture_back.mm(), girdle - (rounds_of(made, StoneSide::back).back().radius.mm() - bead),
                1e-12);
  }
}

// What a wall has too much it has on both sides alike: its top rises as its bottom falls.
TEST(Bezel, TheSidesShareTheWallsPlay) {
  for (const char* stone : stones) {
    auto wanted = request(stone);
    wanted.front_rounds = wanted.back_rounds = 2;
    std::array<double, 2> top{}, bottom{};
    for (const int higher : {0, 1}) {
      wanted.wall_rounds = 40 + 4 * higher;
      const auto made = *bezel(wanted);
      bottom[higher] = made.rounds.front().height.mm(),
      top[higher] = made.rounds[made.wall_rounds - 1].height.mm();
    }
    EXPECT_GT(top[1], top[0] + 1) << stone;
    EXPECT_NEAR(top[1] - top[0], bottom[0] - bottom[1], 1e-9) << stone;
  }
}

TEST(Bezel, AWallTooLowPushesItsRoundsOutwards) {
  auto wanted = request("stone:14,girdle=3,dome=4,back=4");
  wanted.front_rounds = wanted.back_rounds = 2;
  wanted.wall_rounds = 7;
  const auto high = *bezel(wanted);
  EXPECT_GT(*high.play, Length{});
  wanted.wall_rounds = 3;
  const auto low = *bezel(wanted);
  EXPECT_LT(low.capture_front, high.capture_front);
  EXPECT_LT(low.capture_back, high.capture_back);
  EXPECT_GT(rounds_of(low, StoneSide::front)[1].strain, rounds_of(high, StoneSide::front)[1].strain);
}

TEST(Bezel, ScalesWithEverything) {
  for (const char* stone : stones) {
    auto small = request(stone), large = small;
    constexpr double k = 3;
    for (Length* length : {&large.stone.width, &large.stone.height, &large.stone.girdle, &large.stone.dome,
                           &large.stone.back_depth, &large.bead.diameter, &large.gauge.column,
                           &large.gauge.edge, &large.draw_in[0].bead.diameter, &large.draw_in[0].gauge.column,
                           &large.draw_in[0].gauge.edge, &large.least_margin, &large.most_play})
      *length = k * *length;
    const auto a = *bezel(small), b = *bezel(large);
    ASSERT_EQ(a.rounds.size(), b.rounds.size()) << stone;
    EXPECT_EQ(a.ring_beads, b.ring_beads);
    EXPECT_NEAR(k * a.capture_front.mm(), b.capture_front.mm(), 1e-7);
    for (std::size_t i = 0; i < a.rounds.size(); ++i) {
      EXPECT_EQ(a.rounds[i].bead, b.rounds[i].bead);
      EXPECT_NEAR(k * a.rounds[i].radius.mm(), b.rounds[i].radius.mm(), 1e-7);
      EXPECT_NEAR(k * a.rounds[i].height.mm(), b.rounds[i].height.mm(), 1e-7);
      EXPECT_NEAR(a.rounds[i].strain, b.rounds[i].strain, 1e-7);
    }
  }
}

TEST(Bezel, AnOvalWithEqualAxesIsARoundStone) {
  EXPECT_EQ(*parse_stone("stone:14x14,girdle=0.5,dome=2.2,back=2.3"), *parse_stone(crystal));
  const auto round = *bezel(request(crystal));
  const auto nearly = *bezel(request("stone:14.0001x14,girdle=0.5,dome=2.2,back=2.3"));
  ASSERT_EQ(round.rounds.size(), nearly.rounds.size());
  EXPECT_NEAR(round.capture_front.mm(), nearly.capture_front.mm(), 1e-3);
  // The axes may come in either order.
  const auto wide = *bezel(request("stone:14x10,girdle=0.3,dome=2,back=4"));
  const auto high = *bezel(request("stone:10x14,girdle=0.3,dome=2,back=4"));
  ASSERT_EQ(wide.rounds.size(), high.rounds.size());
  EXPECT_NEAR(wide.capture_back.mm(), high.capture_back.mm(), 1e-6);
}

TEST(Bezel, TheChoiceHoldsAndSits) {
  // Common practice, no source: ring, one or two more rounds of 11/0, two of 15/0 on each side.
  const auto made = *bezel(request(crystal));
  EXPECT_EQ(made.ring_beads, 36);
  EXPECT_GE(made.wall_rounds, 3);
  EXPECT_LE(made.wall_rounds, 4);
  EXPECT_EQ(made.front_rounds, 2);
  EXPECT_EQ(made.back_rounds, 2);
  EXPECT_TRUE(holds(made));
  EXPECT_EQ(made.reason_front + made.reason_back, "");
  EXPECT_LE(std::abs(made.play->mm()), 0.3);
  for (const char* stone : stones) EXPECT_TRUE(holds(*bezel(request(stone)))) << stone;
}

TEST(Bezel, TheChoiceIsTheFewestRoundsOfAllThatSit) {
  for (const char* stone : stones) {
    auto wanted = request(stone);
    const auto chosen = *bezel(wanted);
    const auto sits = [&](const Bezel& made) {
      return holds(made) && std::abs(made.play->mm()) <= wanted.most_play.mm();
    };
    for (int wall = 3; wall <= 14; ++wall) {
      for (int front = 2; front <= 5; ++front) {
        for (int back = 2; back <= 5; ++back) {
          wanted.wall_rounds = wall, wanted.front_rounds = front, wanted.back_rounds = back;
          const auto other = *bezel(wanted);
          if (!sits(other)) continue;
          EXPECT_TRUE(sits(chosen)) << stone;
          EXPECT_GE(other.rounds.size(), chosen.rounds.size()) << stone;
        }
      }
    }
  }
}

TEST(Bezel, AChosenWallIsAsHighAsTheStoneNeeds) {
  for (int tenths = 0; tenths <= 40; ++tenths) {
    auto wanted = request(crystal);
    wanted.stone.girdle = millimetres(0.4 + 0.1 * tenths);
    wanted.front_rounds = wanted.back_rounds = 2;
    const auto chosen = *bezel(wanted);
    ASSERT_TRUE(holds(chosen));
    for (int wall = 3; wall <= 12; ++wall) {
      wanted.wall_rounds = wall;
      const auto other = *bezel(wanted);
      if (holds(other) && std::abs(other.play->mm()) < 0.3) {
        EXPECT_LT(std::abs(chosen.play->mm()), 0.3) << tenths;
        EXPECT_LE(chosen.wall_rounds, wall) << tenths;
      } else if (std::abs(chosen.play->mm()) > 0.3 && holds(other)) {
        EXPECT_LE(std::abs(chosen.play->mm()), std::abs(other.play->mm()) + 0.3) << tenths;
      }
    }
  }
}

TEST(Bezel, FewerBeadsDrawInToo) {
  auto wanted = request(crystal, "cylinder-11", "cylinder-11");
  EXPECT_FALSE(holds(*bezel(wanted)));  // as many beads of the same size make a tube
  wanted.draw_in[0].fewer = 3;
  const auto made = *bezel(wanted);
  EXPECT_TRUE(holds(made));
  const auto front = rounds_of(made, StoneSide::front);
  for (std::size_t i = 0; i < front.size(); ++i)
    EXPECT_EQ(front[i].beads, 18 - 3 * (static_cast<int>(i) + 1));
  wanted.front_rounds = 6;  // 18 beads, three fewer each time: the sixth round has none
  EXPECT_EQ(bezel(wanted).problem().code, ProblemCode::too_few_beads);
  EXPECT_EQ(bezel(wanted).problem().where, "round 6 drawn in");
}

TEST(Bezel, BeadsOfSeveralSizesComeInTurn) {
  auto wanted = request(crystal, "round-8", "round-11");
  const auto [tiny, tiny_gauge] = bead_of("round-15");
  wanted.draw_in.push_back({tiny, tiny_gauge});
  wanted.front_rounds = wanted.back_rounds = 3;
  const auto made = *bezel(wanted);
  const auto front = rounds_of(made, StoneSide::front);
  EXPECT_EQ(front[0].bead, "round-11");
  EXPECT_EQ(front[1].bead, "round-15");
  EXPECT_EQ(front[2].bead, "round-15");
  ASSERT_EQ(made.beads.size(), 3u);
  EXPECT_EQ(made.beads[2], (BezelBeads{"round-15", 4 * made.ring_beads / 2}));
  // The ring of two rounds of different beads: half of its chords are of each.
  const double chord = (wanted.draw_in[0].gauge.column + tiny_gauge.column).mm() / 2;
  EXPECT_NEAR(front[1].natural.mm(), chord / (2 * std::sin(pi / made.ring_beads)), 1e-12);
}

TEST(Bezel, RefusesWhatMakesNoSense) {
  const auto code = [](const auto& change) {
    auto wanted = request(crystal);
    change(wanted);
    const auto made = bezel(wanted);
    return made ? std::optional<ProblemCode>() : made.problem().code;
  };
  using enum ProblemCode;
  EXPECT_EQ(code([](auto&) {}), std::nullopt);
  EXPECT_EQ(code([](auto& r) { r.stone = *parse_stone("stone:0.5,dome=0.2,back=flat"); }), std::nullopt);
  EXPECT_EQ(code([](auto& r) {
              r.stone = *parse_stone("stone:0.5,dome=0.2,back=flat");
              std::tie(r.bead, r.gauge) = bead_of("round-6");
              r.gauge.column = millimetres(5);
            }),
            too_few_beads);
  EXPECT_EQ(code([](auto& r) { r.ring_beads = 2; }), too_few_beads);
  EXPECT_EQ(code([](auto& r) { r.ring_beads = 35; }), out_of_range);
  EXPECT_EQ(code([](auto& r) { r.wall_rounds = 1; }), out_of_range);
  EXPECT_EQ(code([](auto& r) { r.front_rounds = -1; }), out_of_range);
  EXPECT_EQ(code([](auto& r) { r.back_rounds = most_given_rounds + 1; }), out_of_range);
  EXPECT_EQ(code([](auto& r) { r.draw_in.clear(), r.back_rounds = 1; }), out_of_range);
  EXPECT_EQ(code([](auto& r) { r.draw_in[0].fewer = -1; }), out_of_range);
  EXPECT_EQ(code([](auto& r) { r.draw_in[0].gauge.edge = Length{}; }), out_of_range);
  EXPECT_EQ(code([](auto& r) { r.gauge.column = millimetres(-1); }), out_of_range);
  EXPECT_EQ(code([](auto& r) { r.bead.diameter = millimetres(std::nan("")); }), out_of_range);
  EXPECT_EQ(code([](auto& r) { r.least_margin = Length{}; }), out_of_range);
  EXPECT_EQ(code([](auto& r) { r.most_play = millimetres(std::nan("")); }), out_of_range);
  EXPECT_EQ(code([](auto& r) { r.stone.dome = millimetres(std::nan("")); }), out_of_range);
  EXPECT_EQ(code([](auto& r) { r.stone.back = BackShape::flat; }), out_of_range);  // its depth is left
}

TEST(Bezel, AGivenRingIsJudgedAsItIs) {
  auto wanted = request(crystal);
  const double at_36 = (*bezel(wanted)).rounds[0].strain;
  wanted.ring_beads = 36;
  EXPECT_NEAR((*bezel(wanted)).rounds[0].strain, at_36, 1e-9);
  EXPECT_NEAR(at_36, 15.6 * std::sin(pi / 36) / 1.35 - 1, 1e-9);
  wanted.ring_beads = 38;  // stands off from the girdle, and so holds less
  const auto loose = *bezel(wanted);
  EXPECT_LT(loose.rounds[0].strain, 0);
  EXPECT_NEAR(loose.rounds[0].radius.mm(), 1.35 / (2 * std::sin(pi / 38)), 1e-9);
}

// A ring of a hundred thousand beads at the most.
TEST(Bezel, ARingStartHasItsLimit) {
  auto [bead, gauge] = bead_of("cylinder-11");
  const Form form = *parse_form("round:1000x20");
  const Length round = offset(*section(form), bead.diameter / 2).perimeter();
  gauge.column = round / 99'999.5;
  EXPECT_TRUE(ring_start(form, bead, gauge));
  gauge.column = round / 100'000.5;
  EXPECT_EQ(ring_start(form, bead, gauge).problem().expected, "beads large enough for this form");
}

// Every size is taken up to its limit and no further.
TEST(Stone, EverySizeHasItsLimits) {
  const Length tiny = millimetres(1e-6), half = largest_size / 2;
  const Stone good{largest_size, largest_size, largest_size, half, BackShape::pointed, largest_size};
  const auto fine = [&](auto change) {
    Stone stone = good;
    change(stone);
    return check_stone(stone).ok();
  };
  EXPECT_TRUE(fine([](Stone&) {}));
  for (auto Stone::*side : {&Stone::width, &Stone::height}) {
    EXPECT_FALSE(fine([&](Stone& s) { s.*side = largest_size + tiny; }));
    EXPECT_TRUE(fine([&](Stone& s) { s.*side = smallest_size, s.dome = smallest_size / 2; }));
    EXPECT_FALSE(fine([&](Stone& s) { s.*side = smallest_size - tiny, s.dome = smallest_size / 4; }));
  }
  EXPECT_TRUE(fine([](Stone& s) { s.girdle = Length{}; }));
  EXPECT_FALSE(fine([&](Stone& s) { s.girdle = -tiny; }));
  EXPECT_FALSE(fine([&](Stone& s) { s.girdle = largest_size + tiny; }));
  EXPECT_FALSE(fine([](Stone& s) { s.dome = Length{}; }));
  EXPECT_TRUE(fine([&](Stone& s) { s.dome = tiny; }));
  EXPECT_FALSE(fine([&](Stone& s) { s.dome = half + tiny; }));
  EXPECT_FALSE(fine([](Stone& s) { s.back_depth = Length{}; }));
  EXPECT_TRUE(fine([&](Stone& s) { s.back_depth = tiny; }));
  EXPECT_FALSE(fine([&](Stone& s) { s.back_depth = largest_size + tiny; }));
  EXPECT_FALSE(fine([](Stone& s) { s.back = BackShape::flat; }));
  EXPECT_TRUE(fine([](Stone& s) { s.back = BackShape::flat, s.back_depth = Length{}; }));
}

TEST(Stone, WrittenAndReadBack) {
  for (const char* text : stones) {
    const auto stone = *parse_stone(text);
    EXPECT_EQ(*parse_stone(to_notation(stone)), stone) << text;
    EXPECT_FALSE(describe(stone).empty());
  }
  EXPECT_EQ(to_notation(*parse_stone(" stone: 0.5in , back = flat, dome=3mm")),
            "stone:12.7,girdle=0,dome=3,back=flat");
}

}  // namespace
}  // namespace evencount::form
