#pragma once
/// How long a strand must be for its wearer.
///
/// A bracelet lies on the wrist with its inside and is measured along its middle, half its thickness further out. Round any convex
/// section the middle is longer than the inside by pi x thickness (Steiner), whence
///   length = wrist + ease + pi x thickness
/// (the trade's formula: jewelsinfiber.blogspot.com/2016/05/bracelet-length-versus-wrist-size.html;
/// orchid.ganoksin.com/t/calculating-length-of-metal-for-bangles/49084). What that leaves out, the straightness of rigid parts, is
/// chain_round.hpp's.
///
/// Properties (tests/strand/wearer_test.cpp):
///  (1) a millimetre more of measure or ease is a millimetre more of length; of thickness, pi
///  (2) inside_of(length_for(w)) == measure + ease

#include <span>
#include <string>
#include <string_view>

#include "base/result.hpp"
#include "base/units.hpp"

namespace evencount::strand {

enum class Worn {
  wrist,   ///< the measure is the wrist's girth
  neck,    ///< the neck's girth
  length,  ///< the measure is the finished length itself, clasp closed: ease and thickness change nothing
};
[[nodiscard]] std::string_view worn_name(Worn worn);
/// Errors: unknown_name.
[[nodiscard]] Result<Worn> parse_worn(std::string_view name);

struct Wearer {
  std::string name;  ///< "M", "165 mm"
  Worn worn = Worn::wrist;
  Length measure;
  Length ease;  ///< added to the girth; none for a finished length
  bool operator==(const Wearer&) const = default;
};

/// Eases by taste (published, shops differ): snug 0.5-1 cm, ordinary 1.5-2 cm, loose 2.5-3 cm. A wrist of 17 cm with an ordinary
/// ease of 2 cm wears 19 cm (sizelist.com/jewelry/bracelet-size-wrist/), which is the default.
inline constexpr Length snug_ease = millimetres(10), ordinary_ease = millimetres(20), loose_ease = millimetres(30);

/// A neck's breadth over its depth, from memory. A wrist's is form::wrist_ratio.
inline constexpr double neck_ratio = 1.1;
[[nodiscard]] double ratio_of(Worn worn);

inline constexpr Length smallest_measure = millimetres(50), largest_measure = millimetres(2000);

/// Errors: out_of_range (a measure outside smallest_measure to largest_measure, an ease not from 0 to 200 mm, a thickness below 0).
[[nodiscard]] Result<Length> length_for(const Wearer& wearer, Length thickness);
/// The girth that a strand of that length lies round, by the same formula.
[[nodiscard]] Length inside_of(Length length, Length thickness);

/// XS to XL: wrists of 145 to 185 mm, 10 mm apart. The averages 16.5 and 18.5 cm are published (sizelist.com), the steps from memory.
[[nodiscard]] std::span<const Wearer> wrist_sizes();
/// The middles of the trade's necklace lengths, collar to opera (glossaria.net/en/jewellery/pearl-necklace-lengths).
[[nodiscard]] std::span<const Wearer> necklace_sizes();

}  // namespace evencount::strand
