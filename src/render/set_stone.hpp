#pragma once
/// The stone that a bezel holds: the given one, or where none is given the one that its rounds were made for.
///
/// A project keeps no stone, but a bezel says a lot about its own: beads strung as a ring close on one girdle only, and the rounds of the wall
/// are as high as one girdle. So the stone is found for which form::bezel gives the bezel's own rounds: a cabochon with a flat back.
///
/// Properties (tests/render/set_stone_test.cpp):
///  (1) of a bezel that form::bezel lays round a stone: the girdle's width within 3 % of the stone's
///  (2) no bead of the settled bezel lies in the stone by more than a tenth of its radius
///  (3) the solid is closed, as wide and as deep as the stone, its front towards +z
///  (4) a bezel's front is drawn in with its back and without; a tube isn't, nor a wall alone

#include <optional>
#include <span>

#include "fabric/fabric.hpp"
#include "project/project.hpp"
#include "render/mesh.hpp"

namespace evencount::render {

/// Whether a band worked round ends in front in a round shorter than its wall's, of fewer or smaller beads, so that it is a bezel even
/// where it has no back. False for what is not worked round.
[[nodiscard]] bool is_drawn_in(const project::Band& band, std::span<const bead::Size> sizes);

/// `sizes`: of each entry of the legend, in its order.
/// None for what is not worked round, given a stone or not; and for what has no back (a tube, a ring) where no stone is given.
/// A given stone is set in whatever is worked round, a tube too, as in a wall from which nothing is drawn in: whether it is meant for the
/// band is for the caller to say.
/// Errors, where a stone is given: out_of_range (an oval one; no ring of 4 beads or more with its wall, which an odd count never
/// has), those of form::bezel.
[[nodiscard]] Result<std::optional<fabric::SetStone>> set_stone(const project::Project& project,
                                                                const project::Band& band,
                                                                std::span<const bead::Size> sizes,
                                                                const std::optional<form::Stone>& given);

/// A round stone as a body of revolution about z, the middle of its girdle at 0.
[[nodiscard]] Mesh stone_mesh(const form::Stone& stone);

}  // namespace evencount::render
