#include "render/render.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>

#include "render/crew.hpp"
#include "render/film.hpp"

namespace evencount::render {
namespace {

constexpr int tile = 16;         ///< pixels on a side
constexpr int preview_step = 4;  ///< one sample for so many pixels by so many
constexpr int samples_a_pass = 4;

Result<Done> check(const Options& o) {
  const bool sizes = o.width >= 1 && o.height >= 1 && std::int64_t{o.width} * o.height <= most_pixels;
  if (!sizes)
    return Problem{ProblemCode::out_of_range, "size", fmt::format("{} x {}", o.width, o.height),
                   "1 to 50 million pixels"};
  if (o.samples < 1 || o.samples > most_samples)
    return Problem{ProblemCode::out_of_range, "samples", std::to_string(o.samples), "1 to 4096"};
  const std::int64_t most = std::max<std::int64_t>(1, most_samples_in_all / (std::int64_t{o.width} * o.height));
  if (o.samples > most)
    return Problem{ProblemCode::out_of_range, "samples",
                   std::to_string(o.samples) + " for each of " + std::to_string(std::int64_t{o.width} * o.height) + " pixels",
                   "at most " + std::to_string(most) + " in a picture of this size"};
  if (o.threads < 0 || o.threads > most_threads)
    return Problem{ProblemCode::out_of_range, "threads", std::to_string(o.threads), "0 to 256"};
  return Done{};
}

/// A tent over two pixels: the distance from the pixel's middle.
double tent(double u) {
  return u < 0.5 ? std::sqrt(2 * u) - 1 : 1 - std::sqrt(2 - 2 * u);
}

class Maker {
 public:
  Maker(const Scene& scene, const Tracer& tracer, const Options& options, const Watch& watch)
      : scene_(scene),
        tracer_(tracer),
        options_(options),
        watch_(watch),
        threads_(threads_for(options.threads)),
        film_(options.width, options.height) {
    tiles_x_ = (options.width + tile - 1) / tile;
    tiles_ = tiles_x_ * ((options.height + tile - 1) / tile);
    to_do_ = static_cast<double>(options.samples) * tiles_ + preview_cost();
  }

  Result<Rendered> make() {
    bool goes_on = preview();
    const int even = (options_.samples + 1) / 2;
    for (int done = 0; goes_on && done < even; done += samples_a_pass) {
      const int count = std::min(samples_a_pass, even - done);
      goes_on = pass(std::vector<int>(static_cast<std::size_t>(tiles_), count));
      if (goes_on && done + count < options_.samples) {
        const Picture so_far = developed(film_, options_.exposure, rows());
        goes_on = !called_off_ && show(so_far);
      }
    }
    if (goes_on && even < options_.samples) goes_on = pass(where_noisy(options_.samples - even));
    if (!goes_on) return called_off();
    Rendered done{options_.filter ? filtered(film_, options_.exposure, rows())
                                  : developed(film_, options_.exposure, rows()),
                  rays_};
    if (called_off_ || (watch_ && !watch_({1, &done.picture}))) return called_off();
    return done;
  }

 private:
  [[nodiscard]] double preview_cost() const {
    return static_cast<double>(tiles_) / (preview_step * preview_step);
  }

  static Problem called_off() { return {ProblemCode::cancelled, "render", "called off", ""}; }

  /// What is half done when the watch says stop is thrown away.
  RunRows rows() {
    return [this](int count, const std::function<void(int)>& job) {
      if (!called_off_) called_off_ = !share_out(threads_, count, job, [this] { return tell(); });
    };
  }

  bool show(const Picture& picture) { return !watch_ || watch_({share(), &picture}); }
  bool tell() { return !watch_ || watch_({share(), nullptr}); }
  [[nodiscard]] double share() const { return std::min(1.0, done_.load() / to_do_); }

  Seen sample(int x, int y, int number) const {
    const auto pixel = static_cast<std::uint32_t>(y) * static_cast<std::uint32_t>(options_.width) +
                       static_cast<std::uint32_t>(x);
    const auto index = static_cast<std::uint32_t>(number);
    const Four at = spread_point(pixel, index, 0, options_.seed);
    const PicturePoint point{(x + 0.5 + tent(at[0])) / options_.width,
                             (y + 0.5 + tent(at[1])) / options_.height};
    const double aspect = static_cast<double>(options_.width) / options_.height;
    return look_along(scene_, tracer_, ray_through(scene_.camera, aspect, point, on_disc(at[2], at[3])),
                      {pixel, index, options_.seed}, options_.path);
  }

  template <typename Job>
  void for_pixels(int number, Job job) const {
    const int left = number % tiles_x_ * tile, top = number / tiles_x_ * tile;
    for (int y = top; y < std::min(top + tile, options_.height); ++y)
      for (int x = left; x < std::min(left + tile, options_.width); ++x) job(x, y);
  }

  bool preview() {
    Picture small{options_.width, options_.height,
                  std::vector<std::uint8_t>(std::size_t{3} * static_cast<std::size_t>(options_.width) *
                                            static_cast<std::size_t>(options_.height))};
    const auto fill = [&](int left, int top, colour::Rgb rgb) {
      for (int y = top; y < std::min(top + preview_step, options_.height); ++y)
        for (int x = left; x < std::min(left + preview_step, options_.width); ++x) {
          std::uint8_t* out =
              small.rgb.data() + 3 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(options_.width) +
                                      static_cast<std::size_t>(x));
          out[0] = rgb.red, out[1] = rgb.green, out[2] = rgb.blue;
        }
    };
    const bool all = share_out(
        threads_, tiles_,
        [&](int number) {
          for_pixels(number, [&](int x, int y) {
            if (x % preview_step == 0 && y % preview_step == 0)
              fill(x, y,
                   shown_as(sample(std::min(x + preview_step / 2, options_.width - 1),
                                   std::min(y + preview_step / 2, options_.height - 1), 0)
                                .light,
                            options_.exposure));
          });
          done_.fetch_add(preview_cost() / tiles_);
        },
        [this] { return tell(); });
    return all && show(small);
  }

  bool pass(const std::vector<int>& samples) {
    return share_out(
        threads_, tiles_,
        [&](int number) {
          const int count = samples[static_cast<std::size_t>(number)];
          std::int64_t rays = 0;
          for_pixels(number, [&](int x, int y) {
            const int first = film_.at(x, y).samples;
            for (int i = 0; i < count; ++i) {
              const Seen seen = sample(x, y, first + i);
              rays += seen.rays;
              film_.add(x, y, seen);
            }
          });
          rays_ += rays;
          done_.fetch_add(count);
        },
        [this] { return tell(); });
  }

  /// As many samples as `each` for every tile, given to the tiles by how noisy they are; none gets more than 6 times as many.
  std::vector<int> where_noisy(int each) const {
    std::vector<double> noise;
    double sum = 0;
    for (int number = 0; number < tiles_; ++number) {
      double variance = 0;
      int pixels = 0;
      for_pixels(number, [&](int x, int y) { variance += variance_of(film_.at(x, y)), ++pixels; });
      noise.push_back(std::sqrt(variance / pixels));
      sum += noise.back();
    }
    std::vector<int> samples;
    for (const double one : noise)
      samples.push_back(
          sum > 0 ? static_cast<int>(std::min(6.0 * each, std::round(each * tiles_ * one / sum))) : each);
    return samples;
  }

  const Scene& scene_;
  const Tracer& tracer_;
  const Options& options_;
  const Watch& watch_;
  const int threads_;
  LightFilm film_;
  int tiles_x_ = 0, tiles_ = 0;
  bool called_off_ = false;
  double to_do_ = 1;
  std::atomic<double> done_ = 0;
  std::atomic<std::int64_t> rays_ = 0;
};

}  // namespace

Result<Rendered> render(const Scene& scene, const Options& options, const Watch& watch) {
  if (auto sound = check(options); !sound) return sound.problem();
  const auto tracer = Tracer::build(scene);
  if (!tracer) return tracer.problem();
  return Maker(scene, *tracer, options, watch).make();
}

}  // namespace evencount::render
