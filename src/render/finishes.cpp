#include "render/finishes.hpp"

#include <array>

#include "colour/difference.hpp"
#include "render/glass_walk.hpp"

namespace evencount::render {
namespace {

using bead::Finish;

constexpr int film_rows = 12;

/// A mirror over a ground. Densities and thicknesses from memory, chosen to look like the finish: no maker publishes them.
struct CoatRecipe {
  double alpha;         ///< roughness of its mirrors
  double film_density;  ///< 0: bare glass
  double thinnest_nm, thickest_nm;
  double tolerance;       ///< CIEDE2000 that it may add
  double least_strength;  ///< the finish must still be seen
};

CoatRecipe recipe_of(Finish finish) {
  switch (finish) {
    case Finish::matte:
      return {0.45, 0, 0, 0, colour_tolerance, 0};
    case Finish::lustre:
      return {0.05, 1.9, 60, 90, 6, 0.3};
    case Finish::pearl:
      return {0.3, 2.0, 50, 120, 6, 0.3};
    case Finish::rainbow:
      return {0.06, 2.2, 250, 380, 9, 0.35};
    default:
      return {0.06, 0, 0, 0, colour_tolerance, 0};  // fire-polished glass
  }
}

AngleTable mirror_for(const CoatRecipe& recipe, double strength) {
  if (recipe.film_density == 0) return glass_mirror(bead_glass, strength);
  return AngleTable(film_rows, [&](double cosine, int row) {
    const double share = static_cast<double>(row) / (film_rows - 1);
    const Film film{recipe.film_density, bead_glass,
                    recipe.thinnest_nm + share * (recipe.thickest_nm - recipe.thinnest_nm)};
    return strength * film_colour(film, cosine);
  });
}

/// The mean over a bead's side of a value by cosine and film: all places across the hole alike.
template <typename Value>
Spectrum over_side(Value value) {
  constexpr int places = 48, films = 12;
  Spectrum sum;
  for (int i = 0; i < places; ++i) {
    const double x = (i + 0.5) / places;
    for (int k = 0; k < films; ++k) sum += value(std::sqrt(1 - x * x), (k + 0.5) / films);
  }
  return (1.0 / (places * films)) * sum;
}

double difference(Spectrum a, Spectrum b) {
  return colour::ciede2000(colour::to_lab_d65(to_linear(a)), colour::to_lab_d65(to_linear(b)));
}

Spectrum within_white(Spectrum s) {
  return {std::clamp(s.r, 0.0, 1.0), std::clamp(s.g, 0.0, 1.0), std::clamp(s.b, 0.0, 1.0)};
}

Surface coat_over(const CoatRecipe& recipe, Spectrum colour) {
  // The tables are proportional to the strength, so the strength is found from those at 1.
  const Surface full = coated(colour, recipe.alpha, mirror_for(recipe, 1));
  const Spectrum thrown = over_side([&](double c, double film) { return full.thrown.at(c, film); });
  const auto ground = [&](double strength) {
    return within_white((colour - strength * thrown) / (grey(1) - strength * thrown));
  };
  const auto off = [&](double strength) {
    return difference(strength * thrown + (grey(1) - strength * thrown) * ground(strength), colour);
  };
  double strength = 1;
  if (off(1) > recipe.tolerance) {
    double low = 0, high = 1;
    for (int i = 0; i < 30; ++i) (off((low + high) / 2) > recipe.tolerance ? high : low) = (low + high) / 2;
    strength = std::max(low, recipe.least_strength);
  }
  return coated(ground(strength), recipe.alpha, mirror_for(recipe, strength));
}

/// The colour square on that makes a metal show `colour`, its roughness and its reflectance at grazing being given.
void let_show(Surface& metal, Spectrum colour) {
  Spectrum low, high = grey(1);
  for (int i = 0; i < 14; ++i) {
    metal.base = 0.5 * (low + high);
    const Spectrum shows = shown_by(metal);
    for (int c = 0; c < 3; ++c) (shows[c] > colour[c] ? high : low)[c] = metal.base[c];
  }
}

Surface metal_of(Spectrum colour, double alpha) {
  Surface made = metal(colour, alpha);
  for (double edge = 1; edge > 0.05; edge *= 0.6) {
    made.edge = edge;
    let_show(made, colour);
    // A metal changes more with the side it is seen from: half is left to that.
    if (difference(shown_by(made), colour) <= colour_tolerance / 2) return made;
  }
  made.edge = 0;
  let_show(made, colour);
  return made;
}

Surface glass_of(Spectrum colour, bool lined, const bead::Size& size) {
  const GlassBead alone{size.diameter.mm() / 2, size.length.mm() / 2, size.hole.mm() / 2, bead_glass};
  const auto ways = glass_ways(alone, lined, 1024);
  if (!lined) return glass(absorption_for(ways, colour));
  return glass({}, lining_for(ways, colour));
}

}  // namespace

Spectrum shown_by(const Surface& surface) {
  if (surface.make != Make::metal)
    return over_side([&](double c, double film) { return albedo(surface, c, film); });
  constexpr int places = 12;  // a metal has no film, and its albedo takes longer
  Spectrum sum;
  for (int i = 0; i < places; ++i) {
    const double x = (i + 0.5) / places;
    sum += (1.0 / places) * albedo(surface, std::sqrt(1 - x * x), 0);
  }
  return sum;
}

Surface surface_of(Finish finish, colour::Rgb colour, const bead::Size& size) {
  const Spectrum light = of(colour);
  switch (finish) {
    case Finish::metallic:
      return metal_of(light, 0.25);  // roughness from memory
    case Finish::galvanised:
      return metal_of(light, 0.13);
    case Finish::transparent:
      return glass_of(light, false, size);
    case Finish::lined:
      return glass_of(light, true, size);
    default:
      return coat_over(recipe_of(finish), light);
  }
}

}  // namespace evencount::render
