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

#include <optional>

#include "fabric/fabric.hpp"
#include "project/project.hpp"
#include "render/mesh.hpp"

namespace evencount::render {

/// None for what is not worked round, and for what has no back and no stone is given: a tube, a ring.
/// Errors, where a stone is given: out_of_range (an oval one; fewer than 4 beads round it), those of form::bezel.
[[nodiscard]] Result<std::optional<fabric::SetStone>> set_stone(const project::Project& project,
                                                                const project::Band& band,
                                                                std::span<const bead::Size> sizes,
                                                                const std::optional<form::Stone>& given);

/// A round stone as a body of revolution about z, the middle of its girdle at 0.
[[nodiscard]] Mesh stone_mesh(const form::Stone& stone);

}  // namespace evencount::render
