#pragma once
/// Cords: what a strand is strung on, and how long to cut it.
///
/// Properties (tests/strand/cord_test.cpp):
///  (1) the cut is the strung length and every allowance, to the micrometre
///  (2) a longer strung length gives as much longer a cut

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.hpp"
#include "base/units.hpp"

namespace evencount::strand {

enum class CordKind { elastic, wire, braided, leather };

[[nodiscard]] std::string_view cord_kind_name(CordKind kind);
[[nodiscard]] std::optional<CordKind> find_cord_kind(std::string_view name);

struct Cord {
  CordKind kind = CordKind::braided;
  Length diameter = millimetres(0.6);
  bool operator==(const Cord&) const = default;
};
/// A cord is thinner than the thickest leather that is strung.
inline constexpr Length thickest_cord = millimetres(10);

/// Something that a length of cord is cut longer for.
struct Allowance {
  std::string what;  ///< "tails"
  int count = 1;
  Length each;
  std::string source;
  bool operator==(const Allowance&) const = default;
};

/// One length of cord to cut.
struct CordLength {
  Length strung;  ///< from the first thing strung to the last
  std::vector<Allowance> allowances;
  Length cut;  ///< all together
  bool operator==(const CordLength&) const = default;
};

/// How its two ends are made fast.
enum class EndFinish { crimped, knotted };

/// The length to cut for one cord that is strung over that length, ends made fast that way, with so many knots
/// tied between.
///
/// beading wire, crimped: 10 in beyond the strung length (published: a 16 in necklace with a 0.75 in clasp is
/// cut 25.25 in, "How to String
/// Beads with Beading Wire", thesprucecraftsaj.pages.dev/posts/how-to-string-beads-with-beading-wire), the two
/// crimps and loops in it.
/// elastic: tails of 4 cm (published, no address kept) and 10 thicknesses in the knot, from memory.
/// braided thread and cord: tails of 20 cm as on bracelets (common practice, no source), 10 thicknesses a
/// knot, from memory; 5 mm a crimp and loop.
/// leather: tails of 10 cm, from memory; 12 thicknesses a knot, from memory.
/// Errors: out_of_range (a length not above zero, a cord not above zero or thicker than thickest_cord, knots
/// below 0).
[[nodiscard]] Result<CordLength> cord_to_cut(const Cord& cord, Length strung, EndFinish finish,
                                             int knots_between = 0);

/// Each crimp and its loop (published: about 5 mm).
inline constexpr Length crimp_and_loop = millimetres(5);

}  // namespace evencount::strand
