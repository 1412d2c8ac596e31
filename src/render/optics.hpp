#pragma once
/// What a smooth boundary reflects: glass, and glass with a thin film on it.
///
/// Properties (tests/render/optics_test.cpp):
///  (1) glass: ((n - 1) / (n + 1))^2 square on, 1 at grazing; no reflection of light polarised in the plane at Brewster's angle;
///      the same from both sides along one ray
///  (2) hemispherical mean of n = 1.5: 0.0918 from outside, 0.5964 from inside (closed form)
///  (3) a film of no thickness, or as dense as what it lies on, changes nothing; a quarter wave and a half wave as the textbooks say
///  (4) reflectance is from 0 to 1 for every wavelength, angle and film
///  (5) film_colour of a reflectance that is the same for all wavelengths is that grey

#include <functional>

#include "render/spectrum.hpp"

namespace evencount::render {

/// Soda-lime glass, of which seed beads are made (from memory, 1.51 to 1.52).
inline constexpr double bead_glass = 1.515;

/// Unpolarised reflectance of a boundary seen under that cosine (0 to 1). `density` is the refractive index beyond it, relative to this
/// side: below 1 from inside.
[[nodiscard]] double fresnel(double cosine, double density);

/// The same averaged over a hemisphere of even light, in closed form (J. W. T. Walsh 1926 as usually quoted, from memory); density > 1.
[[nodiscard]] double fresnel_mean(double density);

/// A film between air and what it lies on.
struct Film {
  double density = 1.5;       ///< refractive index of the film
  double below = bead_glass;  ///< of what it lies on
  double thickness_nm = 0;
};

/// Unpolarised reflectance for one wavelength, all reflections within the film summed (G. B. Airy; any optics textbook).
[[nodiscard]] double film_reflectance(const Film& film, double cosine, double wavelength_nm);

/// A reflectance over the visible spectrum as it looks in daylight (D65), each channel kept within 0 to 1.
[[nodiscard]] Spectrum film_colour(const std::function<double(double wavelength_nm)>& reflectance);

/// Both together, each channel as it looks in daylight.
[[nodiscard]] Spectrum film_colour(const Film& film, double cosine);

/// Chromaticity of the daylight that film_colour is reckoned with: near (0.3127, 0.3290).
struct Chromaticity {
  double x = 0, y = 0;
};
[[nodiscard]] Chromaticity daylight();

}  // namespace evencount::render
