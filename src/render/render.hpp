#pragma once
/// A scene's picture.
///
/// First a small preview, then passes over all pixels that add samples until half of them are spent, then the other half where the
/// picture is still noisy, tile by tile. The picture is the same to the byte for any number of threads, and every time: a pixel's
/// samples depend on the pixel and the seed only. On a processor of another kind Embree may round otherwise, and single pixels differ
/// in their last bits.
///
/// Properties (tests/render/render_test.cpp):
///  (1) the same bytes with 1 and 2 threads, and again
///  (2) the share of progress rises from 0 to 1; preview and passes come as whole pictures of the asked size
///  (3) cancelling gives `cancelled`, whenever it is done, and no further tile or row is begun
///  (4) depth of field: what lies at the focused distance stays as sharp as without, what lies off it doesn't
///  (5) the filter keeps the mean of every colour within CIEDE2000 0.5, and takes noise away

#include <functional>

#include "render/path.hpp"
#include "render/picture.hpp"

namespace evencount::render {

struct Options {
  int width = 1600, height = 1200;
  int samples = 24;  ///< a pixel, on average
  std::uint32_t seed = 1;
  int threads = 0;      ///< 0: as many as the machine runs at once
  double exposure = 1;  ///< 1: white paper on the table is white
  bool filter = true;   ///< smooth what is only noise
  PathOptions path;
};

inline constexpr int most_pixels = 50'000'000, most_samples = 4096, most_threads = 256;
/// Of all pixels together: about three hours of two cores (docs/rendering.md). A printed page of 9 million pixels may have a thousand each.
inline constexpr std::int64_t most_samples_in_all = 10'000'000'000;

struct Progress {
  double share = 0;                  ///< of the work, 0 to 1
  const Picture* picture = nullptr;  ///< a new whole picture, where one has come about; else none
};
/// Called on the caller's own thread, once for every tile that it renders itself and every row that it develops or filters. Return false to cancel.
using Watch = std::function<bool(const Progress&)>;

struct Rendered {
  Picture picture;
  std::int64_t rays = 0;
  bool operator==(const Rendered&) const = default;
};

/// Errors: out_of_range (sizes, samples or threads not from 1 to their most, or too many samples in all), cancelled, those of Tracer::build.
[[nodiscard]] Result<Rendered> render(const Scene& scene, const Options& options, const Watch& watch = {});

}  // namespace evencount::render
