#include "render/set_stone.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

namespace evencount::render {
namespace {

/// One round of a bezel as its chart has it.
struct ChartRound {
  int beads = 0;
  chart::Bead bead = 0;  ///< the most frequent
};

/// A bezel's chart told apart: the ring and the wall, and what is drawn in on both sides, from the wall inwards.
struct ChartBezel {
  int ring_beads = 0, wall_rounds = 0;
  chart::Bead bead = 0;  ///< of the ring
  std::vector<ChartRound> front, back;
};

ChartRound round_of(const chart::Chart& chart, int row) {
  std::map<chart::Bead, int> counts;
  ChartRound round;
  for (int column = row % 2; column < chart.columns(); column += 2)
    if (const chart::Bead bead = chart.at({column, row / 2}); bead != chart::no_bead)
      ++counts[bead], ++round.beads;
  int most = 0;
  for (const auto& [bead, count] : counts)
    if (count > most) most = count, round.bead = bead;
  return round;
}

ChartBezel told_apart(const project::Band& band, std::span<const bead::Size> sizes) {
  const chart::Chart& chart = band.chart;
  ChartBezel bezel{.ring_beads = chart.columns(), .bead = round_of(chart, band.begin_at).bead};
  const auto alike = [&](const ChartRound& round) {
    return sizes[static_cast<std::size_t>(round.bead)].id == sizes[static_cast<std::size_t>(bezel.bead)].id &&
           round.beads == chart.columns() / 2;
  };
  for (int row = band.begin_at; row < 2 * chart.edge(); ++row) {
    const ChartRound round = round_of(chart, row);
    if (round.beads == 0) break;
    if (bezel.front.empty() && alike(round))
      ++bezel.wall_rounds;
    else
      bezel.front.push_back(round);
  }
  for (int row = band.begin_at - 1; row >= 0; --row)
    if (const ChartRound round = round_of(chart, row); round.beads > 0) bezel.back.push_back(round);
  return bezel;
}

std::vector<form::DrawIn> draw_in_of(const std::vector<ChartRound>& side, int in_wall_round,
                                     const project::Project& project, std::span<const bead::Size> sizes) {
  std::vector<form::DrawIn> all;
  int before = in_wall_round;
  for (const ChartRound& round : side) {
    const bead::Size& size = sizes[static_cast<std::size_t>(round.bead)];
    all.push_back({size, bead::default_gauge(size, project.thread), std::max(0, before - round.beads)});
    before = round.beads;
  }
  return all;
}

/// The bezel of that chart round a stone. Each side is laid by itself, since a request's rounds are the same on both.
class Laying {
 public:
  Laying(const project::Project& project, const project::Band& band, std::span<const bead::Size> sizes)
      : chart_(told_apart(band, sizes)) {
    request_.bead = sizes[static_cast<std::size_t>(chart_.bead)];
    request_.gauge = project::gauge_of(project, band);
    request_.ring_beads = chart_.ring_beads;
    request_.wall_rounds = chart_.wall_rounds;
    const int in_wall_round = chart_.ring_beads / 2;
    front_ = draw_in_of(chart_.front, in_wall_round, project, sizes);
    back_ = draw_in_of(chart_.back, in_wall_round, project, sizes);
  }
  [[nodiscard]] bool can_be_laid() const { return chart_.ring_beads >= 4 && chart_.wall_rounds >= 2; }
  [[nodiscard]] const bead::Size& bead() const { return request_.bead; }
  [[nodiscard]] double pitch_mm() const { return request_.gauge.column.mm(); }
  [[nodiscard]] const ChartBezel& chart() const { return chart_; }

  Result<form::Bezel> front(const form::Stone& stone) const {
    return side(stone, front_, static_cast<int>(front_.size()), 0);
  }
  Result<form::Bezel> back(const form::Stone& stone) const {
    return side(stone, back_, 0, static_cast<int>(back_.size()));
  }
  /// All rounds in the order worked.
  Result<std::vector<form::BezelRound>> rounds(const form::Stone& stone) const {
    const auto in_front = front(stone);
    if (!in_front) return in_front.problem();
    std::vector<form::BezelRound> all = in_front->rounds;
    if (back_.empty()) return all;
    const auto behind = back(stone);
    if (!behind) return behind.problem();
    for (const form::BezelRound& round : behind->rounds)
      if (round.side == form::StoneSide::back) all.push_back(round);
    return all;
  }

 private:
  Result<form::Bezel> side(const form::Stone& stone, const std::vector<form::DrawIn>& draw_in, int in_front,
                           int behind) const {
    form::BezelRequest request = request_;
    request.stone = stone;
    request.draw_in = draw_in;
    request.front_rounds = in_front, request.back_rounds = behind;
    return form::bezel(request);
  }

  ChartBezel chart_;
  form::BezelRequest request_;
  std::vector<form::DrawIn> front_, back_;
};

/// A cabochon of that girdle; its dome rises by 0.3 of its width, from memory of calibrated ones.
form::Stone cabochon(double width_mm, double girdle_mm) {
  const Length width = millimetres(width_mm);
  return {width, width, millimetres(girdle_mm), millimetres(0.3 * width_mm), form::BackShape::flat, {}};
}

/// The cabochon on whose girdle the ring closes without strain, its girdle as high as the wall leaves room for.
form::Stone stone_for(const Laying& laying) {
  // The polygon of the ring's beads, moved inwards by half a bead.
  const double ring_radius = laying.pitch_mm() / 2 / std::sin(std::numbers::pi / laying.chart().ring_beads);
  const double width = 2 * ring_radius - laying.bead().diameter.mm();
  // Rounds lie half a bead higher each; the first and the last lap the girdle's edges.
  const double rise = laying.bead().diameter.mm() / 2;
  return cabochon(std::max(width, 0.5), std::max(0.4, rise * (laying.chart().wall_rounds - 2)));
}

}  // namespace

bool is_drawn_in(const project::Band& band, std::span<const bead::Size> sizes) {
  if (band.closure != weave::Closure::round) return false;
  const ChartBezel bezel = told_apart(band, sizes);
  if (bezel.front.empty()) return false;
  const auto length = [&](chart::Bead bead, int beads) {  // their holes run round
    return beads * sizes[static_cast<std::size_t>(bead)].length.mm();
  };
  const ChartRound& last = bezel.front.back();
  return length(last.bead, last.beads) < length(bezel.bead, bezel.ring_beads / 2);
}

Result<std::optional<fabric::SetStone>> set_stone(const project::Project& project, const project::Band& band,
                                                  std::span<const bead::Size> sizes,
                                                  const std::optional<form::Stone>& given) {
  const std::optional<fabric::SetStone> none;
  const bool has_back = band.begin_at > 0;
  if (band.closure != weave::Closure::round || (!has_back && !given)) return none;
  const Laying laying(project, band, sizes);
  if (given && !form::is_round(*given))
    return Problem{ProblemCode::out_of_range, "stone", form::describe(*given), "a round stone"};
  if (!laying.can_be_laid()) {
    if (!given) return none;
    return Problem{ProblemCode::out_of_range, "stone", band.name,
                   "a bezel: a ring of 4 beads or more and its wall"};
  }
  const form::Stone stone = given ? *given : stone_for(laying);
  const auto rounds = laying.rounds(stone);
  if (!rounds) return given ? Result<std::optional<fabric::SetStone>>(rounds.problem()) : none;
  return std::optional(fabric::SetStone{stone, *rounds});
}

Mesh stone_mesh(const form::Stone& stone) {
  const double radius = stone.width.mm() / 2, top = stone.girdle.mm() / 2, dome = stone.dome.mm();
  // The dome is a cap of a ball, as obstacle_of has it; its apex first, down to the girdle, to the back's middle.
  const double ball = (radius * radius + dome * dome) / (2 * dome),
               half_angle = std::asin(std::min(1.0, radius / ball));
  const double opening = dome > radius ? std::numbers::pi - half_angle : half_angle;
  std::vector<ProfilePoint> profile;
  const auto add = [&](double along, double away, double n_along, double n_away) {
    profile.push_back({along, away, n_along, n_away});
  };
  constexpr int steps = 48;
  constexpr double least_away = 1e-4;  // a solid of revolution has a hole: this one can't be seen
  for (int i = steps; i >= 1; --i) {
    const double angle = opening * i / steps, c = std::cos(angle), s = std::sin(angle);
    add(top + dome - ball + ball * c, ball * s, c, s);
  }
  add(top + dome, least_away, 1, 0);
  if (stone.back == form::BackShape::flat) {
    add(-top, least_away, -1, 0);
    add(-top, radius, -1, 0);
  } else {
    const double depth = stone.back_depth.mm(), slope = std::hypot(depth, radius);
    add(-top - depth, least_away, -radius / slope, depth / slope);
    add(-top, radius, -radius / slope, depth / slope);
  }
  add(-top, radius, 0, 1);
  if (stone.girdle.mm() > 0) add(top, radius, 0, 1);
  return turned(profile, 96);
}

}  // namespace evencount::render
