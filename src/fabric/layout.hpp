#pragma once
/// The beads of a plan on their lattice at the gauge: what every layout starts from. Internal to the room.

#include <optional>

#include "fabric/fabric.hpp"
#include "form/point.hpp"

namespace evencount::fabric {

/// A place on the flat piece, in millimetres: `x` across from column 0, `y` along from step 0.
struct FlatPoint {
  double x = 0, y = 0;
};

class Layout {
 public:
  /// Errors: those of settle_flat.
  static Result<Layout> make(const weave::Plan& plan, std::span<const bead::Size> sizes,
                             const bead::Gauge& gauge);

  /// In the order of stringing; the shapes have their sizes, but no place yet.
  [[nodiscard]] const std::vector<SettledBead>& beads() const { return beads_; }
  [[nodiscard]] std::optional<std::size_t> bead_at(Cell cell) const;
  [[nodiscard]] const weave::Lattice& lattice() const { return lattice_; }
  [[nodiscard]] double column_mm() const { return column_mm_; }
  [[nodiscard]] double edge_mm() const { return edge_mm_; }

  [[nodiscard]] weave::Site site(std::size_t bead) const { return lattice_.site(beads_[bead].cell); }
  /// A bead's middle in the flat piece.
  [[nodiscard]] FlatPoint flat(std::size_t bead) const { return flat(site(bead).middle); }
  [[nodiscard]] FlatPoint flat(weave::Spot spot) const {
    return {spot.across * column_mm_ / 2, spot.along * edge_mm_ / 2};
  }

  /// The shape of the bead whose size is nearest to the gauge: the one that the piece is mostly made of, or a ring begins with.
  [[nodiscard]] const Cylinder& main_shape() const { return beads_[main_].shape; }
  [[nodiscard]] bool several_sizes() const { return several_sizes_; }
  /// How much further out than the main bead a bead stands on a form.
  [[nodiscard]] double stands_out_mm(std::size_t bead) const {
    return beads_[bead].shape.radius_mm - main_shape().radius_mm;
  }

 private:
  weave::Lattice lattice_;
  double column_mm_ = 0, edge_mm_ = 0;
  std::vector<SettledBead> beads_;
  std::vector<std::size_t> by_cell_;  ///< one more than the bead's place; 0 for none
  std::size_t main_ = 0;
  bool several_sizes_ = false;
};

/// The flat piece rolled up into a tube, without shear: a piece that rises is rolled up slantwise.
class Roll {
 public:
  /// The piece must be round, with 3 columns or more.
  explicit Roll(const Layout& layout);

  /// The radius at which a column's way round, straight across, is `chord_mm`.
  [[nodiscard]] double radius_mm(double chord_mm) const;
  /// The shape moved to a place of the flat piece, on a tube of that radius.
  [[nodiscard]] Cylinder placed(Cylinder shape, FlatPoint at, weave::Axis axis, double radius_mm) const;
  /// The column pitch, or where neighbours would meet at their inner rims as much more as parts them.
  [[nodiscard]] double easy_chord_mm() const;

 private:
  [[nodiscard]] double round(FlatPoint p) const { return p.x * cosine_ - p.y * sine_; }
  [[nodiscard]] double up(FlatPoint p) const { return p.x * sine_ + p.y * cosine_; }

  const Layout& layout_;
  double turn_mm_, cosine_, sine_;
};

/// The thread of a plan whose beads are laid out.
[[nodiscard]] std::vector<Link> thread_links(const weave::Plan& plan, const Layout& layout);

/// The beads in their places, with their thread and what it leaves to be desired.
[[nodiscard]] Fabric finished(const weave::Plan& plan, const Layout& layout, std::vector<SettledBead> beads,
                              bool closed);

[[nodiscard]] Problem wrong_closure(const weave::Plan& plan, std::string expected);

[[nodiscard]] inline Vec3 in_section(form::Point p, double z) {
  return {p.x_mm, p.y_mm, z};
}

struct Extent {
  double low = 1e300, high = -1e300;
  void add(double at) {
    low = std::min(low, at);
    high = std::max(high, at);
  }
  [[nodiscard]] double middle() const { return (low + high) / 2; }
};

}  // namespace evencount::fabric
