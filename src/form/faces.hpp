#pragma once
/// Which beads of a closed band are seen from which side of its form.
///
/// The viewer stands far off at +y and looks along -y, the form's width lies along x. The beads run
/// counterclockwise in the section plane: on the front from +x to -x. A bead's place along the edge is
/// counted in half steps: 2 k is step k of the even columns, 2 k + 1 step k of the odd ones, half a bead
/// further on. All columns of one parity lie alike, so the 2 N half steps stand for every cell. The model:
/// docs/algorithms/faces.md.
///
/// Properties (tests/form/faces_test.cpp):
///  (1) every cell lies on exactly one side, and foreshortening is from 0 to 1
///  (2) the even seats are N equal chords, and so are the odd ones, within 1e-7 mm, where `close_ring` closes
///  (3) seats h and 2 N - h mirror each other in the seam's axis, on a section that is a mirror image there
///  (4) slid_by(f, 0) == slid_by(f, edge) == f; sliding by j and then by k is sliding by j + k
///  (5) on a section that half a turn maps to itself, for even N: sliding by N / 2 swaps front and back
///  (6) windows hold cells of their own side only, do not overlap, and can't grow by a step
///  (7) the beads in front number (length of the round whose normals face the viewer) / chord, within 1

#include <optional>
#include <vector>

#include "form/form.hpp"

namespace evencount::form {

/// front: seen square on; back: seen square on from behind; edge: neither.
enum class Side { front, edge, back };

/// A bead whose normal lies within 45 degrees of the line of sight shows more of its face than of its side:
/// there the cosine is 0.7071. Half way between square on and edge on, so that front, back and the two edges
/// have equal shares of a round form. Tapered carriers do not depend on it: their faces stay within 35
/// degrees and their tips begin beyond.
inline constexpr double square_on_from = 0.70710678118654752;

/// A form has edges to hide a seam on when it is this much wider than thick; below, it looks alike all round.
/// From memory.
inline constexpr double edged_from = 1.25;

/// Where one bead sits, the form at rest.
struct Seat {
  Point centre;  ///< in the section plane
  Point normal;  ///< unit, outwards
  Side side = Side::edge;
  double foreshortening = 0;  ///< |cosine| of normal and line of sight: 1 square on, 0 edge on
  bool operator==(const Seat&) const = default;
};

/// A rectangle of cells (all columns) that lies wholly on one face. It never reaches across the seam.
struct Window {
  Side side = Side::front;
  int first_step = 0;
  int steps = 0;  ///< at least 1
  bool operator==(const Window&) const = default;
};

struct Faces {
  int edge = 0;                 ///< beads along the edge
  std::vector<Seat> seats;      ///< 2 x edge; seats[h] is where the beads of half step h are
  std::vector<Window> windows;  ///< the largest on each face, front before back; none for a face without room
  bool operator==(const Faces&) const = default;
};

/// Where a seam hides best: on a section at least `edged_from` times as wide as thick, the middle of its edge
/// at +x (a carrier's tip); else opposite the front, at the back.
[[nodiscard]] Position seam_place(const ConvexCurve& section);

/// The faces of a band with its first bead at `seam_place`: the seam lies beside the first bead, between it
/// and the last bead of the odd columns. Errors: those of section; out_of_range (a bead's diameter not above
/// zero); too_few_beads; cannot_close.
[[nodiscard]] Result<Faces> faces(const Form& form, Length bead_diameter, int edge);
/// The same with the first bead at another place of the section.
[[nodiscard]] Result<Faces> faces(const ConvexCurve& section, Length bead_diameter, int edge, Position seam);

/// The seat of a cell; the column and step must exist.
[[nodiscard]] const Seat& seat_of(const Faces& faces, int column, int step);

/// How many beads of a band that many columns wide lie on a side.
[[nodiscard]] int beads_on(const Faces& faces, Side side, int columns);

/// The band slid along by k beads, counterclockwise for k > 0: step s comes to lie where step s + k lay.
[[nodiscard]] Faces slid_by(const Faces& faces, int k);

/// How far to slide so that a window's cells are seen best from the front, in beads: the k nearest to 0,
/// above zero rather than below, for which their normals point most towards the viewer. A window that is in
/// the middle of the front already: 0.
[[nodiscard]] int slide_to_front(const Faces& faces, const Window& window);

/// "front", "edge", "back".
[[nodiscard]] std::string_view side_name(Side side);

}  // namespace evencount::form
