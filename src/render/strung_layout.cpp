#include "render/strung_layout.hpp"

#include <numbers>

#include "strand/chain_round.hpp"
#include "strand/placing.hpp"

namespace evencount::render {
namespace {

/// All things in order, not yet placed.
StrungLayout things_of(const strand::Strung& strung, const strand::StrandFit& fit) {
  StrungLayout layout;
  const auto pieces = strand::pieces_of(strung, fit.best.counts);
  const auto widths = strand::links_of(strung, fit.best.counts);
  const auto apart = strand::apart_in_loop(strung, pieces, strand::piece_starts_um(strung, fit.best.counts));
  for (std::size_t i = 0; i < pieces.size(); ++i)
    layout.pieces.push_back(
        {pieces[i].element, strand::beads_of(strung, pieces[i]), apart[i].mm(), widths[i].mm(), false, {}});
  if (strung.closing >= 0) {
    const strand::Element& closing = strung.elements[static_cast<std::size_t>(strung.closing)];
    layout.pieces.push_back(
        {strung.closing, 1, closing.holes == 2 ? closing.apart.mm() : 0.0, widths.back().mm(), true, {}});
  }
  return layout;
}

/// A thing that lies at a middle, its cord running that way, its face looking out.
Placement facing(Vec3 along, Vec3 out, Vec3 middle) {
  return {cross(out, along), out, along, middle};
}

}  // namespace

StrungLayout in_a_row(const strand::Strung& strung, const strand::StrandFit& fit) {
  StrungLayout layout = things_of(strung, fit);
  double length = 0, so_far = 0;
  for (const StrungPiece& piece : layout.pieces) length += piece.width_mm;
  for (StrungPiece& piece : layout.pieces) {
    piece.placement = facing({1, 0, 0}, {0, 0, 1}, {so_far + piece.width_mm / 2 - length / 2, 0, 0});
    so_far += piece.width_mm;
  }
  return layout;
}

StrungLayout in_a_ring(const strand::Strung& strung, const strand::StrandFit& fit) {
  StrungLayout layout = things_of(strung, fit);
  layout.loop = true;
  double length = 0;
  for (const StrungPiece& piece : layout.pieces) length += piece.width_mm;
  const double turn = 2 * std::numbers::pi / length, radius = 1 / turn;
  double so_far = layout.pieces.back().closing ? layout.pieces.back().width_mm / 2 : 0;
  for (StrungPiece& piece : layout.pieces) {  // from the top, counterclockwise
    const double angle = std::numbers::pi / 2 + turn * (so_far + piece.width_mm / 2);
    piece.placement = facing({-std::sin(angle), std::cos(angle), 0}, {0, 0, 1},
                             {radius * std::cos(angle), radius * std::sin(angle), 0});
    so_far += piece.width_mm;
  }
  return layout;
}

Result<StrungLayout> round_wearer(const strand::Strung& strung, const strand::StrandFit& fit) {
  if (fit.wearer.worn == strand::Worn::length)
    return Problem{ProblemCode::out_of_range, "worn", "a strand of finished length",
                   "one for a wrist or neck"};
  StrungLayout layout = things_of(strung, fit);
  const auto chain = strand::chain_round(strand::links_of(strung, fit.best.counts), fit.thickness,
                                         strand::ratio_of(fit.wearer.worn));
  if (!chain) return chain.problem();
  layout.loop = true;
  const double body = fit.wearer.measure / chain->girth;
  layout.body_half_x_mm = body * chain->half_width.mm(),
  layout.body_half_y_mm = body * chain->half_height.mm();
  const std::size_t count = chain->joints.size();
  for (std::size_t i = 0; i < layout.pieces.size(); ++i) {
    const form::Point a = chain->joints[i], b = chain->joints[(i + 1) % count];
    const Vec3 along = unit({b.x_mm - a.x_mm, b.y_mm - a.y_mm, 0});
    layout.pieces[i].placement =
        facing(along, {along.y, -along.x, 0}, {(a.x_mm + b.x_mm) / 2, (a.y_mm + b.y_mm) / 2, 0});
  }
  // The middle of the strand comes to -y, by half a turn where it isn't there: an oval is alike then.
  if (layout.pieces[layout.pieces.size() / 2].placement.origin.y > 0) {
    const Placement half_turn{{-1, 0, 0}, {0, -1, 0}, {0, 0, 1}, {}};
    for (StrungPiece& piece : layout.pieces) piece.placement = piece.placement.then(half_turn);
  }
  // It hangs on the body: what it is worn on touches the strand's middle from within, the ease is on the other side.
  layout.body_middle = {0, -(chain->half_height.mm() - layout.body_half_y_mm), 0};
  return layout;
}

std::vector<std::vector<Vec3>> cord_ways(const strand::Strung& strung, const StrungLayout& layout) {
  std::vector<std::vector<Vec3>> ways;
  for (const double side : strung.cords == 2 ? std::vector<double>{0.5, -0.5} : std::vector<double>{0.0}) {
    std::vector<Vec3> way;
    for (std::size_t i = 0; i < layout.pieces.size(); ++i) {
      const StrungPiece& piece = layout.pieces[i];
      if (piece.closing) continue;
      const double off = side * piece.apart_mm;
      for (const double along : {-0.45, 0.45})
        way.push_back(piece.placement.point({off, 0, along * piece.width_mm}));
    }
    if (!layout.pieces.empty() && layout.pieces.back().closing) {
      const StrungPiece& closing = layout.pieces.back();
      const double off = side * closing.apart_mm, reach = 0.42 * closing.width_mm;
      way.push_back(closing.placement.point({off, 0, -reach}));
      if (layout.loop) way.insert(way.begin(), closing.placement.point({off, 0, reach}));
    } else if (layout.loop && !way.empty()) {
      way.push_back(way.front());
    }
    ways.push_back(std::move(way));
  }
  return ways;
}

}  // namespace evencount::render
