#pragma once
/// A bead's colour from a photograph that has a card of known reflectance beside it: docs/algorithms/bead_colour.md.
///
/// The card tells how much light there was in red, green and blue. Of the bead's pixels those that are clipped, in highlights, in deep
/// shadow or of another colour are left out; the mean of the middle half of the rest is its colour.
///
/// Properties (tests/picture/bead_colour_test.cpp), on made photographs with a cast, noise, highlights and shadows:
///  (1) the true colour is nearer than `uncertainty` in at least 95 of 100
///  (2) a cast up to most_cast and any exposure that leaves card and bead unclipped change the result by less than `uncertainty`
///  (3) more noise, fewer pixels and a less even card make `uncertainty` larger
///
/// Not in `uncertainty`: a card of another reflectance than said, light that differs between card and bead by more than it does across
/// the card, and what the camera's own picture-making did to the colours.

#include "base/result.hpp"
#include "colour/lab.hpp"
#include "picture/coverage.hpp"
#include "picture/image.hpp"

namespace evencount::picture {

/// What a card sends back of the light that falls on it, 0 .. 1, the same at all wavelengths.
inline constexpr double white_card = 0.90;  ///< matt white board or good paper, from memory (0.85 to 0.92)
inline constexpr double grey_card = 0.18;   ///< the photographers' grey card, common practice, no source

/// Greatest over least channel of the card's light. Tungsten light with a camera set for daylight has about 8, with its own correction 2
/// or less (from memory): past this so little blue is left that its steps spoil the colour, or it is no card.
inline constexpr double most_cast = 4;

struct BeadColour {
  colour::LabD65 lab;
  colour::Rgb rgb;       ///< clipped where the colour is none that sRGB can show
  colour::Linear light;  ///< of perfect white's; not clipped

  /// CIEDE2000, for 95 of 100: twice the root of the sum of the squares of the five `of_`.
  double uncertainty = 0;
  double of_bead = 0;      ///< the bead's spread over the root of the number of readings
  double of_card = 0;      ///< the card's, and how uneven the light on it is
  double of_steps = 0;     ///< of 8 bits, where the file has no more
  double of_left_out = 0;  ///< where much is left out, dim rims of highlights and shadows stay
  double of_sides = 0;     ///< mean against middle of what was kept

  /// Root mean square difference of the kept pixels from the colour: how even the bead is.
  double spread = 0;
  int pixels = 0;       ///< kept
  double left_out = 0;  ///< share of the bead's rectangle
};

/// Whole pixels inside the two rectangles are used; of more than 65,536 every so many. `reflectance` is the card's.
///
/// Errors: out_of_range (a rectangle outside the picture or with fewer than 64 pixels for the card or 36 for the bead; rectangles that
/// overlap; a reflectance outside 0.02 .. 1); bad_picture (a card that is clipped, too dark, too uneven or not neutral; a bead that is
/// clipped, or of which highlights and shadows leave less than a quarter).
[[nodiscard]] Result<BeadColour> measure_bead(const Image& image, const PictureRectangle& card,
                                              double reflectance, const PictureRectangle& bead);

}  // namespace evencount::picture
