#pragma once
/// How a bead is finished, apart from its colour: it changes how the colour is shown, never what it was measured to be.

#include <array>
#include <string_view>

#include "base/result.hpp"

namespace evencount::bead {

enum class Finish {
  opaque,
  transparent,
  lined,       ///< clear glass over a coloured hole
  metallic,    ///< a metal coat
  galvanised,  ///< a metal coat laid on by a current, brighter than metallic and soon worn
  matte,       ///< etched or tumbled dull
  lustre,      ///< a thin clear coat
  pearl,       ///< a thin milky coat
  rainbow,     ///< a thin coat that shows interference colours
};

inline constexpr std::array finishes{Finish::opaque,     Finish::transparent, Finish::lined,
                                     Finish::metallic,   Finish::galvanised,  Finish::matte,
                                     Finish::lustre,     Finish::pearl,       Finish::rainbow};

[[nodiscard]] std::string_view finish_name(Finish finish);
/// Errors: unknown_name (the message lists the finishes).
[[nodiscard]] Result<Finish> parse_finish(std::string_view name);

}  // namespace evencount::bead
