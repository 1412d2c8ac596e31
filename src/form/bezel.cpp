#include "form/bezel.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <tuple>

#include "base/text.hpp"
#include "form/bezel_rounds.hpp"
#include "form/closure.hpp"
#include "form/ring_start.hpp"
#include "form/sections.hpp"
#include "form/track.hpp"

namespace evencount::form {
namespace {

constexpr int fewest_ring_beads = 4, fewest_in_a_round = 2;

std::string shown(Length length) {
  return plain_number(length.mm()) + " mm";
}

Result<Done> check_beads(const bead::Size& bead, const bead::Gauge& gauge) {
  const auto positive = [](Length l) { return std::isfinite(l.mm()) && l > Length{}; };
  if (!positive(bead.diameter))
    return out_of_range("diameter of the bead " + bead.id, shown(bead.diameter), "above 0");
  if (!positive(gauge.column) || !positive(gauge.edge))
    return out_of_range("gauge of the bead " + bead.id, bead::to_notation(gauge), "above 0");
  return Done{};
}

Result<Done> check_rounds(std::string_view what, const std::optional<int>& rounds, int fewest) {
  if (!rounds || (*rounds >= fewest && *rounds <= most_given_rounds)) return Done{};
  return out_of_range(fmt::format("{} rounds", what), fmt::format("{}", *rounds),
                      fmt::format("from {} to {}", fewest, most_given_rounds));
}

Result<Done> check_request(const BezelRequest& request) {
  if (const auto sound = check_stone(request.stone); !sound) return sound;
  if (const auto sound = check_beads(request.bead, request.gauge); !sound) return sound;
  for (const DrawIn& draw : request.draw_in) {
    if (const auto sound = check_beads(draw.bead, draw.gauge); !sound) return sound;
    if (draw.fewer < 0)
      return out_of_range("beads fewer in a round", fmt::format("{}", draw.fewer), "0 or more");
  }
  for (const auto& [what, length] :
       {std::pair{"least margin", request.least_margin}, std::pair{"most play", request.most_play}})
    if (!(std::isfinite(length.mm()) && length > Length{}))
      return out_of_range(what, shown(length), "above 0");
  if (const auto sound = check_rounds("wall", request.wall_rounds, 2); !sound) return sound;
  for (const auto& [what, rounds] :
       {std::pair{"front", request.front_rounds}, std::pair{"back", request.back_rounds}}) {
    if (const auto sound = check_rounds(what, rounds, 0); !sound) return sound;
    if (rounds.value_or(0) > 0 && request.draw_in.empty())
      return out_of_range(fmt::format("{} rounds", what), fmt::format("{}", *rounds),
                          "0 where no beads are given to draw in with");
  }
  return Done{};
}

RoundBeads round_beads(int beads, const bead::Size& bead, const bead::Gauge& gauge) {
  return {beads, gauge.column.mm(), gauge.edge.mm(), bead.diameter.mm() / 2};
}

const DrawIn& drawn_in(const BezelRequest& request, std::size_t index) {
  return request.draw_in[std::min(index, request.draw_in.size() - 1)];
}

// Everything about a bezel but its numbers of rounds.
struct Setting {
  const BezelRequest& request;
  RingStart ring;
  Meridian stone;
  RoundBeads wall;
  double wall_mm = 0;              // the wall's radius
  double natural_mm = 0;           // the radius its beads would have without the stone
  std::vector<RoundBeads> rounds;  // that can be drawn in, from the wall inwards
};

Result<RingStart> ring_of(const BezelRequest& request, const ConvexCurve& outline) {
  if (!request.ring_beads) {
    Form girdle;
    girdle.kind = is_round(request.stone) ? FormKind::round : FormKind::oval;
    girdle.width = request.stone.width;
    girdle.thickness = request.stone.height;
    girdle.length_along_holes = request.stone.width;  // every section has a length; a ring asks for none
    return ring_start(girdle, request.bead, request.gauge);
  }
  const int beads = *request.ring_beads;
  if (beads < fewest_ring_beads)
    return Problem{ProblemCode::too_few_beads, "ring", fmt::format("{} beads", beads), "at least 4"};
  constexpr int most = 100000;
  if (beads % 2 != 0 || beads > most)
    return out_of_range("ring", fmt::format("{} beads", beads),
                        fmt::format("an even number, at most {}", most));
  const auto range = closing_range(offset(outline, request.bead.diameter / 2), beads);
  if (!range) return range.problem();
  return RingStart{beads, range->largest / request.gauge.column - 1};
}

std::vector<RoundBeads> possible_rounds(const BezelRequest& request, int first, int most) {
  std::vector<RoundBeads> rounds;
  if (request.draw_in.empty()) return rounds;
  int beads = first;
  for (int i = 0; i < most; ++i) {
    const DrawIn& draw = drawn_in(request, rounds.size());
    beads -= std::min(draw.fewer, beads);
    if (beads < fewest_in_a_round) break;
    rounds.push_back(round_beads(beads, draw.bead, draw.gauge));
  }
  return rounds;
}

Result<Setting> setting(const BezelRequest& request) {
  const auto outline = ellipse(request.stone.width, request.stone.height);
  if (!outline) return outline.problem();
  const auto ring = ring_of(request, *outline);
  if (!ring) return ring.problem();
  Setting made{request, *ring, {request.stone, outline->perimeter().mm()}, {}, 0, 0, {}};
  made.wall = round_beads(ring->beads / 2, request.bead, request.gauge);
  made.natural_mm = natural_radius_mm(made.wall, made.wall);
  // A ring that is longer than its way round stands off from the girdle.
  made.wall_mm = std::max(made.stone.girdle_mm() + made.wall.half_bead_mm, made.natural_mm);
  const int given = std::max(request.front_rounds.value_or(0), request.back_rounds.value_or(0));
  made.rounds = possible_rounds(request, made.wall.beads, std::max(given, most_chosen_draw_in_rounds));
  if (given > static_cast<int>(made.rounds.size()))
    return Problem{ProblemCode::too_few_beads, fmt::format("round {} drawn in", made.rounds.size() + 1),
                   "fewer than 2 beads", "at least 2: fewer rounds, or fewer beads left out in each"};
  return made;
}

struct Choice {
  int wall = 0;
  int front = 0;
  int back = 0;
};

// One choice of rounds, laid over the stone.
struct Laid {
  Choice choice;
  double wall_top_mm = 0;  // of the last wall round above the girdle's middle
  std::vector<LaidRound> front;
  std::vector<LaidRound> back;  // heights towards the back
  double capture_front_mm = 0;
  double capture_back_mm = 0;
  double play_mm = 0;
};

double wall_height_mm(const Setting& set, int wall) {
  return (wall - 1) * set.wall.edge_mm / 2;
}

std::span<const RoundBeads> first_rounds(const Setting& set, int count) {
  return std::span(set.rounds).first(static_cast<std::size_t>(count));
}

double needed_mm(const Setting& set, StoneSide side, int count) {
  const auto rounds = first_rounds(set, count);
  return wall_needed_mm(set.stone, side, lay_free(set.stone, set.wall, set.wall_mm, rounds), rounds);
}

double capture_mm(const Setting& set, const std::vector<LaidRound>& laid) {
  const double radius = laid.empty() ? set.wall_mm : laid.back().radius_mm;
  const double half_bead = laid.empty() ? set.wall.half_bead_mm : set.rounds[laid.size() - 1].half_bead_mm;
  return set.stone.girdle_mm() - (radius - half_bead);
}

// What the wall has too much or too little, the two sides share.
Laid lay(const Setting& set, const Choice& choice, double front_needed_mm, double back_needed_mm) {
  Laid laid{choice, 0, {}, {}, 0, 0, 0};
  const double height = wall_height_mm(set, choice.wall);
  laid.play_mm = height - front_needed_mm - back_needed_mm;
  laid.wall_top_mm = front_needed_mm + laid.play_mm / 2;
  laid.front = lay_over(set.stone, StoneSide::front, set.wall, set.wall_mm, laid.wall_top_mm,
                        first_rounds(set, choice.front));
  laid.back = lay_over(set.stone, StoneSide::back, set.wall, set.wall_mm, height - laid.wall_top_mm,
                       first_rounds(set, choice.back));
  laid.capture_front_mm = capture_mm(set, laid.front);
  laid.capture_back_mm = capture_mm(set, laid.back);
  return laid;
}

// Smaller is better: does not hold, does not sit, then what each class is chosen by.
using Rank = std::tuple<int, double, double, double>;

Rank rank(const Setting& set, const Laid& laid) {
  const double margin = set.request.least_margin.mm();
  const double capture = std::min(laid.capture_front_mm, laid.capture_back_mm);
  const double play = std::abs(laid.play_mm);
  const int rounds = laid.choice.wall + laid.choice.front + laid.choice.back;
  if (capture < margin) return {2, -capture, play, 0};
  // Past the most play a small difference isn't worth a round: it counts in steps.
  const double most = set.request.most_play.mm();
  if (play > most) return {1, std::ceil(play / most), rounds, play};
  return {0, rounds, play, 0};
}

// The walls next to the height that is needed, unless one is given.
std::pair<int, int> walls_to_try(const Setting& set, double needed) {
  if (set.request.wall_rounds) return {*set.request.wall_rounds, *set.request.wall_rounds};
  const double steps = std::max(0.0, std::floor(needed / (set.wall.edge_mm / 2)));
  const int below = 1 + static_cast<int>(std::min(steps, 1.0 * most_given_rounds));
  return {std::max(below, fewest_chosen_wall_rounds), std::max(below + 1, fewest_chosen_wall_rounds)};
}

Laid choose(const Setting& set) {
  const int possible = static_cast<int>(set.rounds.size());
  const int fewest = std::min(possible, fewest_chosen_draw_in_rounds);
  const int most = std::min(possible, most_chosen_draw_in_rounds);
  const auto counts = [&](const std::optional<int>& given) {
    return std::pair(given.value_or(fewest), given.value_or(most));
  };
  const auto fronts = counts(set.request.front_rounds), backs = counts(set.request.back_rounds);
  std::optional<Laid> best;
  for (int front = fronts.first; front <= fronts.second; ++front) {
    const double front_needed = needed_mm(set, StoneSide::front, front);
    for (int back = backs.first; back <= backs.second; ++back) {
      const double back_needed = needed_mm(set, StoneSide::back, back);
      const auto walls = walls_to_try(set, front_needed + back_needed);
      for (int wall = walls.first; wall <= walls.second; ++wall) {
        Laid laid = lay(set, {wall, front, back}, front_needed, back_needed);
        if (!best || rank(set, laid) < rank(set, *best)) best = std::move(laid);
      }
    }
  }
  return *best;
}

void add_wall(const Setting& set, const Laid& laid, Bezel& made) {
  for (int i = 0; i < laid.choice.wall; ++i) {
    const double below = wall_height_mm(set, laid.choice.wall) - wall_height_mm(set, i + 1);
    made.rounds.push_back({i + 1, set.request.bead.id, set.wall.beads,
                           i < 2 ? RoundRole::start : RoundRole::wall, std::nullopt, millimetres(set.wall_mm),
                           millimetres(set.natural_mm), millimetres(laid.wall_top_mm - below),
                           set.ring.strain});
  }
}

void add_drawn_in(const Setting& set, StoneSide side, const std::vector<LaidRound>& laid, Bezel& made) {
  for (std::size_t i = 0; i < laid.size(); ++i) {
    const double height = side == StoneSide::front ? laid[i].height_mm : -laid[i].height_mm;
    made.rounds.push_back({static_cast<int>(made.rounds.size()) + 1, drawn_in(set.request, i).bead.id,
                           set.rounds[i].beads, RoundRole::draw_in, side, millimetres(laid[i].radius_mm),
                           millimetres(laid[i].natural_mm), millimetres(height),
                           laid[i].radius_mm / laid[i].natural_mm - 1});
  }
}

void count_beads(Bezel& made) {
  for (const BezelRound& round : made.rounds) {
    const auto found = std::find_if(made.beads.begin(), made.beads.end(),
                                    [&](const BezelBeads& b) { return b.bead == round.bead; });
    if (found == made.beads.end()) {
      made.beads.push_back({round.bead, round.beads});
    } else {
      found->count += round.beads;
    }
    made.bead_count += round.beads;
  }
}

std::string falls_out(std::string_view side, Length capture, Length least, int rounds) {
  const std::string seen =
      rounds == 0          ? std::string("nothing is drawn in")
      : capture > Length{} ? fmt::format("the last round reaches only {} inside the girdle, {} is the least",
                                         shown(capture), shown(least))
                           : fmt::format("the last round stays {} outside the girdle", shown(-1.0 * capture));
  return fmt::format("the stone falls out at the {}: {}", side, seen);
}

}  // namespace

std::string_view role_name(RoundRole role) {
  switch (role) {
    case RoundRole::start:
      return "start";
    case RoundRole::wall:
      return "wall";
    case RoundRole::draw_in:
      break;
  }
  return "draw_in";
}

Result<Bezel> bezel(const BezelRequest& request) {
  if (const auto sound = check_request(request); !sound) return sound.problem();
  const auto set = setting(request);
  if (!set) return set.problem();
  const Laid laid = choose(*set);
  Bezel made;
  made.ring_beads = set->ring.beads;
  made.wall_rounds = laid.choice.wall;
  made.front_rounds = laid.choice.front;
  made.back_rounds = laid.choice.back;
  add_wall(*set, laid, made);
  add_drawn_in(*set, StoneSide::front, laid.front, made);
  add_drawn_in(*set, StoneSide::back, laid.back, made);
  count_beads(made);
  made.capture_front = millimetres(laid.capture_front_mm);
  made.capture_back = millimetres(laid.capture_back_mm);
  made.holds_front = made.capture_front >= request.least_margin;
  made.holds_back = made.capture_back >= request.least_margin;
  if (!made.holds_front)
    made.reason_front = falls_out("front", made.capture_front, request.least_margin, laid.choice.front);
  if (!made.holds_back)
    made.reason_back = falls_out("back", made.capture_back, request.least_margin, laid.choice.back);
  if (holds(made)) made.play = millimetres(laid.play_mm);
  return made;
}

}  // namespace evencount::form
