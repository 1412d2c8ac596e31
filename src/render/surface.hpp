#pragma once
/// How a surface throws light back: plain (matt), coated (a mirror over a matt ground), metal, glass.
///
/// Directions are local: +z is the normal on the side that the ray comes from; `out` leads back along the ray, `in` to where light comes from.
/// `film` (0 to 1) says where along the coat's range of thickness the spot lies.
///
/// A coated surface reflects R(angle) in each small mirror of its roughness. What its mirrors don't throw back, by a table E worked out
/// beforehand, comes back evenly from the ground times its colour: (1 - E(out)) (1 - E(in)) / (pi (1 - mean E)), which loses and gains nothing
/// whatever R and roughness are (after C. Kelemen, L. Szirmay-Kalos 2001). A metal gives back what its mirrors throw at each other in the
/// same way (C. Kulla, A. Conty 2017). Both from memory.
///
/// Properties (tests/render/surface_test.cpp):
///  (1) white furnace: what loses nothing by itself throws all light back, within 1 %, from every side
///  (2) no surface throws back more than it gets, within 1 %, in any channel
///  (3) reflected(out, in) in.z^-1 is the same with out and in exchanged
///  (4) bounce: weight x density == reflected, and the density integrates to 1 or less
///  (5) glass: what bounces back and what goes through keep Snell's law and fresnel's shares

#include <optional>
#include <vector>

#include "render/optics.hpp"
#include "render/sampling.hpp"

namespace evencount::render {

/// Reflectance by the cosine of the angle and by film, kept at nodes that lie closer towards grazing.
class AngleTable {
 public:
  AngleTable() = default;
  /// `rows` thicknesses of film, at least 1.
  template <typename Value>
  AngleTable(int rows, Value value) : rows_(rows) {
    for (int row = 0; row < rows; ++row)
      for (int node = 0; node < nodes; ++node) values_.push_back(value(cosine_of(node), row));
    average();
  }
  [[nodiscard]] Spectrum at(double cosine, double film) const;
  /// 2 x the integral of at(c) c dc: of even light from all sides.
  [[nodiscard]] Spectrum hemisphere(double film) const;
  [[nodiscard]] int rows() const { return rows_; }

 private:
  static constexpr int nodes = 32;
  static double cosine_of(int node) {
    const double share = static_cast<double>(node) / (nodes - 1);
    return std::max(1e-4, share * share);
  }
  void average();
  int rows_ = 0;
  std::vector<Spectrum> values_, means_;
};

enum class Make { plain, coated, metal, glass };

struct Surface {
  Make make = Make::plain;
  Spectrum base{0.5, 0.5, 0.5};    ///< the ground's colour; of a metal its colour square on
  double alpha = 0.1;              ///< roughness of the mirrors
  AngleTable mirror;               ///< coated: R. Others: none
  AngleTable thrown;               ///< coated: E. Metal: E of mirrors that lose nothing
  double edge = 1;                 ///< metal: its reflectance at grazing
  double density = bead_glass;     ///< glass
  Spectrum absorbed_per_mm;        ///< glass
  std::optional<Spectrum> lining;  ///< glass: paint on the wall of its hole
};

[[nodiscard]] Surface plain(Spectrum base);
/// `mirror` as AngleTable; alpha from 0.02 to 1.
[[nodiscard]] Surface coated(Spectrum base, double alpha, AngleTable mirror);
[[nodiscard]] Surface metal(Spectrum base, double alpha, double edge = 1);
[[nodiscard]] Surface glass(Spectrum absorbed_per_mm, std::optional<Spectrum> lining = {},
                            double density = bead_glass);

/// The mirror of bare glass.
[[nodiscard]] AngleTable glass_mirror(double density, double strength = 1);

/// Light thrown from `in` to `out`, the cosine of `in` counted in. Nothing for glass: its light comes by bounce only.
[[nodiscard]] Spectrum reflected(const Surface& surface, Vec3 out, Vec3 in, double film);
/// The density with which bounce chooses `in`, per solid angle.
[[nodiscard]] double density_of(const Surface& surface, Vec3 out, Vec3 in, double film);

struct Bounce {
  Vec3 towards;
  Spectrum weight;     ///< reflected / density
  double density = 0;  ///< per solid angle; 0 for the sharp ones of glass
  bool sharp = false;
};
/// Where the path goes on. None: absorbed. `within`: the ray comes from inside the glass.
[[nodiscard]] std::optional<Bounce> bounce(const Surface& surface, Vec3 out, double film, bool within,
                                           const Four& at);

/// Both ways that light goes on from glass. Local directions.
struct GlassSplit {
  double mirrored_share = 0;  ///< the rest goes through
  Vec3 mirrored, through;
};
[[nodiscard]] GlassSplit split_by_glass(const Surface& surface, Vec3 out, bool within);

/// All light thrown back to `out` of even light from everywhere: by the tables for coated and plain, by points for metal.
[[nodiscard]] Spectrum albedo(const Surface& surface, double cosine, double film);

}  // namespace evencount::render
