#pragma once
/// Where the things on a strand lie in space.
///
/// A piece's own directions: z along the cord, y to the viewer of its face, x to the inner cord (to higher x of a form's section, as the
/// fabric lays bands round it).
///
/// Properties (tests/render/strung_layout_test.cpp):
///  (1) every placement is turned only: its columns are unit and at right angles, right-handed
///  (2) neighbours lie as far apart as the strand says, along the row within 1e-9 mm
///  (3) cords run through the holes: no cord point of a piece is farther from its hole's line than the hole is wide

#include "project/project.hpp"
#include "render/piece.hpp"
#include "strand/fitting.hpp"

namespace evencount::render {

/// One thing in its place.
struct StrungPiece {
  int element = 0;      ///< in Strung::elements
  int beads = 1;        ///< 2: one on each cord
  double apart_mm = 0;  ///< of the cords there
  double width_mm = 0;  ///< along the cord
  bool closing = false;
  Placement placement;  ///< its middle
};

struct StrungLayout {
  std::vector<StrungPiece> pieces;  ///< in order, the closing last
  bool loop = false;
  double body_half_x_mm = 0,
         body_half_y_mm = 0;  ///< worn: the oval it lies round, in the xy plane; 0 for none
  Vec3 body_middle;
};

/// A row along x, its faces up; the closing at its right end.
[[nodiscard]] StrungLayout in_a_row(const strand::Strung& strung, const strand::StrandFit& fit);
/// A ring on the table, faces up, the closing far from the viewer (at +y).
[[nodiscard]] StrungLayout in_a_ring(const strand::Strung& strung, const strand::StrandFit& fit);
/// The chain of rigid parts round the wearer, the loop level and its faces outwards; the middle of the strand lies towards -y.
/// Errors: those of strand::chain_round; out_of_range (a finished length).
[[nodiscard]] Result<StrungLayout> round_wearer(const strand::Strung& strung, const strand::StrandFit& fit);

/// The points that each cord goes through, in order: two lists where two cords run all along; sections of one cord are in both.
[[nodiscard]] std::vector<std::vector<Vec3>> cord_ways(const strand::Strung& strung,
                                                       const StrungLayout& layout);

}  // namespace evencount::render
