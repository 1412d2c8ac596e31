#pragma once
/// The sizes of beads: what a designer can name on the command line and copy into a project.

#include <span>
#include <string>
#include <string_view>

#include "base/units.hpp"

namespace evencount::bead {

/// How a bead is made, which settles its outline: a cylinder is cut with flat ends; a round bead is tumbled
/// to a barrel.
enum class Kind { cylinder, round };

/// A bead's size. All lengths are positive; `diameter` is the outer one, `length` runs along the hole.
///
/// Makers, lots and finishes differ by several percent: every figure is a default that a measured swatch
/// (`gauge_from_swatch`) or the designer's own bead replaces.
struct Size {
  std::string id;  ///< KIND-SIZE as written on the command line: "cylinder-11"
  Kind kind = Kind::cylinder;
  Length diameter;
  Length length;
  Length hole;
  double beads_per_gram = 0;
  double scatter =
      0;  ///< standard deviation of one bead's size about its lot's mean, as a fraction of the size
  double lot_shift =
      0;  ///< standard deviation of a lot's mean about the nominal size, as a fraction of the size
  std::string source;  ///< where the figures come from

  bool operator==(const Size&) const = default;
};

/// Every size that is known, cylinders first, small to large.
[[nodiscard]] std::span<const Size> sizes();

/// Errors: unknown_name (the message lists the ids).
[[nodiscard]] Result<Size> find_size(std::string_view id);

/// The radius to which the rims of its ends are rounded. Cylinders are cut with flat ends and tumbled a little: a tenth of the
/// diameter, 0.16 mm of an 11/0 bead, from memory. Round beads have no flat ends: half of the smaller of length and diameter.
[[nodiscard]] Length rim(const Size& size);

/// "11/0 cylinder bead" from the id "cylinder-11"; an id of another shape comes back as it is.
[[nodiscard]] std::string trade_name(const Size& size);

[[nodiscard]] std::string_view kind_name(Kind kind);
[[nodiscard]] Result<Kind> parse_kind(std::string_view name);

}  // namespace evencount::bead
