#pragma once
/// A bead's finish and measured colour as a surface.
///
/// The measured colour is what a bead shows in even white light: what its coat reflects and what comes back from below together,
/// averaged over its side as it is seen across the hole; glass is measured among its like (glass_walk.hpp). So the ground is made as much
/// darker as the coat adds. A glossy coat alone throws back more (4 to 9 %) than some dark colours have in all; there it is weakened until
/// the colour is met within `colour_tolerance`.
///
/// That is a choice, not physics: glass can't have a coat of a fifth of its strength, and a dark bead in the hand glistens more. An
/// instrument that leaves gloss out would need no such thing, but a legend's colours are what a maker sees, gloss and all, and a
/// picture that shows another colour than the legend is of no use to her. At full strength black would come out at CIEDE2000 20 from
/// itself, the navy #17233f at 18.5. Strengths: 1 for #606060 and lighter, 0.9 for #3a6ea5, 0.56 for #303030, 0.18 for #17233f, 0.06
/// for black.
///
/// Properties (tests/render/finishes_test.cpp):
///  (1) opaque, matte, metallic and galvanised show the measured colour within CIEDE2000 3, for all colours tried
///  (2) lustre, pearl, rainbow within 10 where they are not darker than their own film; glass: glass_walk.hpp
///  (3) the same bead gives the same surface

#include "bead/bead_size.hpp"
#include "bead/finish.hpp"
#include "colour/rgb.hpp"
#include "render/surface.hpp"

namespace evencount::render {

/// CIEDE2000, of a finish without a film of its own colour. 3 is what is promised; the rest is left to the scene.
inline constexpr double colour_tolerance = 2;

[[nodiscard]] Surface surface_of(bead::Finish finish, colour::Rgb colour, const bead::Size& size);

/// What the surface shows in even white light, averaged over a bead's side across its hole; not for glass.
[[nodiscard]] Spectrum shown_by(const Surface& surface);

}  // namespace evencount::render
