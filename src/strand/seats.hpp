#pragma once
/// Where each piece of a strand lies as a straight stretch, before it is told apart into beads. Internal to the room; placing.hpp says what
/// the ways of lying are.

#include <cmath>

#include "strand/placing.hpp"

namespace evencount::strand {

[[nodiscard]] constexpr Place3 operator+(Place3 a, Place3 b) {
  return {a.x + b.x, a.y + b.y, a.z + b.z};
}
[[nodiscard]] constexpr Place3 operator-(Place3 a, Place3 b) {
  return {a.x - b.x, a.y - b.y, a.z - b.z};
}
[[nodiscard]] constexpr Place3 operator*(double k, Place3 a) {
  return {k * a.x, k * a.y, k * a.z};
}
[[nodiscard]] constexpr Place3 cross(Place3 a, Place3 b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
[[nodiscard]] inline double norm(Place3 a) {
  return std::sqrt(a.x * a.x + a.y * a.y + a.z * a.z);
}

/// Where a piece lies, and how long it is along the cord.
struct Seat {
  Place3 middle, along, outwards;
  double length_mm = 0;
  /// `by` along the cord, `inner` towards the inner one.
  [[nodiscard]] Place3 at(double by, double inner) const {
    return middle + by * along + inner * cross(outwards, along);
  }
};

/// The seats of a strand: one a piece in order, then those of the closing.
struct Seats {
  std::vector<Seat> pieces;
  std::vector<Seat> closing;  ///< none; one; or two for an opened clasp, the half after the last piece first
  bool loop = false;          ///< the last piece meets the first, by the closing where there is one
  std::optional<Body> body;
};

[[nodiscard]] Seats seats_in_row(const Strung& strung, const Counts& counts);
[[nodiscard]] Seats seats_in_ring(const Strung& strung, const StrandFit& fit, double lean);
/// Errors: those of chain_round.
[[nodiscard]] Result<Seats> seats_on_body(const Strung& strung, const StrandFit& fit, double lean);
[[nodiscard]] Seats seats_on_table(const Strung& strung, const StrandFit& fit);

/// The loop's plane turned to the viewer, what was in front below.
[[nodiscard]] Seats hung_up(Seats seats);

}  // namespace evencount::strand
