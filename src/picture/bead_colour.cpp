#include "picture/bead_colour.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <vector>

#include "base/text.hpp"
#include "colour/difference.hpp"

namespace evencount::picture {
namespace {

using Triple = std::array<double, 3>;
using Pixels = std::vector<Triple>;

// Where nothing else is said: chosen, from memory. The tests see what comes of them.
constexpr double clipped_at = 254.0 / 255;  // as encoded; a camera's own clipping is rarely smoother
constexpr double darkest_card = 0.02;       // of white's light: five stops under a white card
constexpr double most_uneven = 0.15;       // relative spread of a card's light; of an even one a few per cent
constexpr double readings_a_pixel = 0.25;  // neighbours share noise: colours are filled in from 2 x 2 pixels
constexpr std::size_t fewest_card = 64, fewest_bead = 36, fewest_kept = 12;  // pixels
/// See of_left_out; fitted to made photographs: docs/algorithms/bead_colour.md.
constexpr double share_of_hidden = 0.7;
/// The standard deviation of a normal distribution over its median distance from the middle.
constexpr double normal_deviation = 1.4826;

Problem unusable(std::string_view where, std::string found, std::string expected) {
  return {ProblemCode::bad_picture, std::string(where), std::move(found), std::move(expected)};
}

/// Whole pixels, from the first to before the last.
struct Box {
  int left = 0, top = 0, right = 0, bottom = 0;
  [[nodiscard]] std::size_t count() const {
    return right > left && bottom > top
               ? static_cast<std::size_t>(right - left) * static_cast<std::size_t>(bottom - top)
               : 0;
  }
};

Result<Box> box_of(std::string_view where, const PictureRectangle& rectangle, const Image& image,
                   std::size_t fewest) {
  const double right = rectangle.left + rectangle.width, bottom = rectangle.top + rectangle.height;
  if (!(rectangle.left >= 0 && rectangle.top >= 0 && rectangle.width >= 0 && rectangle.height >= 0 &&
        right <= image.width && bottom <= image.height))
    return out_of_range(where, "a rectangle that reaches outside the picture",
                        fmt::format("one within {} x {} pixels", image.width, image.height));
  const Box box{static_cast<int>(std::ceil(rectangle.left)), static_cast<int>(std::ceil(rectangle.top)),
                static_cast<int>(std::floor(right)), static_cast<int>(std::floor(bottom))};
  if (box.count() < fewest)
    return out_of_range(where, fmt::format("a rectangle of {} whole pixels", box.count()),
                        fmt::format("at least {}", fewest));
  return box;
}

bool overlap(const Box& a, const Box& b) {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/// All pixels of a box, or of a large one every so many across and down: enough for any mean.
Pixels pixels_of(const Image& image, const Box& box) {
  constexpr double enough = 65'536;
  const int step =
      std::max(1, static_cast<int>(std::ceil(std::sqrt(static_cast<double>(box.count()) / enough))));
  Pixels pixels;
  for (int y = box.top; y < box.bottom; y += step)
    for (int x = box.left; x < box.right; x += step) {
      const Pixel& pixel = image.at(x, y);
      pixels.push_back({double{pixel.red}, double{pixel.green}, double{pixel.blue}});
    }
  return pixels;
}

double light_of(double encoded) {
  return colour::to_linear(colour::Encoded{encoded, encoded, encoded}).red;
}

bool is_clipped(const Triple& pixel) {
  static const double limit = light_of(clipped_at);
  return std::any_of(pixel.begin(), pixel.end(), [](double channel) { return channel >= limit; });
}

double share_clipped(const Pixels& pixels) {
  return static_cast<double>(std::count_if(pixels.begin(), pixels.end(), is_clipped)) /
         static_cast<double>(pixels.size());
}

/// Of at least one value.
double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

double deviation_about(const std::vector<double>& values, double centre) {
  std::vector<double> distances;
  for (const double value : values) distances.push_back(std::abs(value - centre));
  return normal_deviation * median(std::move(distances));
}

/// The mean of the middle half: no more moved by outliers than a median is, and not bound to the steps of 8 bits.
double middle_mean(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t from = values.size() / 4, to = values.size() - from;
  double sum = 0;
  for (std::size_t i = from; i < to; ++i) sum += values[i];
  return sum / static_cast<double>(to - from);
}

std::vector<double> channel_of(const Pixels& pixels, std::size_t channel) {
  std::vector<double> values;
  values.reserve(pixels.size());
  for (const Triple& pixel : pixels) values.push_back(pixel[channel]);
  return values;
}

Triple middle_of(const Pixels& pixels) {
  return {middle_mean(channel_of(pixels, 0)), middle_mean(channel_of(pixels, 1)),
          middle_mean(channel_of(pixels, 2))};
}

colour::Linear linear(const Triple& light) {
  return {light[0], light[1], light[2]};
}
colour::LabD65 lab(const Triple& light) {
  return colour::to_lab_d65(linear(light));
}

/// What small errors of the channels do to a colour. Errors of their own add up as squares; those that come and go together, as shade
/// does, are one error. The worse of the two is taken.
double difference_by(const Triple& light, const Triple& error) {
  const colour::LabD65 centre = lab(light);
  double squares = 0;
  Triple all = light;
  for (std::size_t channel = 0; channel < 3; ++channel) {
    Triple one = light;
    one[channel] += error[channel];
    all[channel] += error[channel];
    const double difference = colour::ciede2000(centre, lab(one));
    squares += difference * difference;
  }
  return std::max(std::sqrt(squares), colour::ciede2000(centre, lab(all)));
}

/// The standard error of light that was rounded to the steps of 8 bits: a step over the root of 12.
double step_error(double light) {
  const double encoded = std::clamp(colour::to_encoded(colour::Linear{light, light, light}).red, 0.0, 1.0);
  return (light_of(encoded + 0.5 / 255) - light_of(encoded - 0.5 / 255)) / std::sqrt(12.0);
}

/// The light that fell on the card, and how sure that is, as shares of it.
struct CardLight {
  Triple light{};  // of a card that sends back everything
  Triple error{};
  Triple step{};
};

Triple quarters_apart(const Image& image, const Box& box, const Triple& middle) {
  const int x = (box.left + box.right) / 2, y = (box.top + box.bottom) / 2;
  Triple squares{};
  for (const Box& quarter : {Box{box.left, box.top, x, y}, Box{x, box.top, box.right, y},
                             Box{box.left, y, x, box.bottom}, Box{x, y, box.right, box.bottom}}) {
    if (quarter.count() == 0) continue;
    const Triple light = middle_of(pixels_of(image, quarter));
    for (std::size_t channel = 0; channel < 3; ++channel)
      squares[channel] += std::pow(light[channel] / middle[channel] - 1, 2) / 3;
  }
  for (double& square : squares) square = std::sqrt(square);
  return squares;
}

Result<CardLight> measure_card(const Image& image, const Box& box, double reflectance) {
  const Pixels pixels = pixels_of(image, box);
  if (const double clipped = share_clipped(pixels); clipped > 0.01)
    return unusable("card",
                    fmt::format("{} % of its pixels at the end of the scale", plain_number(100 * clipped, 0)),
                    "a photograph with less exposure");
  const Triple middle = middle_of(pixels);
  const auto [least, most] = std::minmax_element(middle.begin(), middle.end());
  if (*most < darkest_card)
    return unusable("card", "almost no light on it", "a photograph with more exposure");
  if (!(*most <= most_cast * *least))
    return unusable(
        "card",
        fmt::format("light of {} : {} : {} in red, green and blue", plain_number(middle[0] / *most),
                    plain_number(middle[1] / *most), plain_number(middle[2] / *most)),
        fmt::format("a neutral card, its channels within {} times each other", plain_number(most_cast)));
  const Triple apart = quarters_apart(image, box, middle);
  CardLight card;
  for (std::size_t channel = 0; channel < 3; ++channel) {
    const double spread = deviation_about(channel_of(pixels, channel), middle[channel]) / middle[channel];
    if (spread > most_uneven)
      return unusable("card",
                      fmt::format("light that differs by {} % across it", plain_number(100 * spread, 0)),
                      "an evenly lit card and nothing else");
    card.light[channel] = middle[channel] / reflectance;
    card.error[channel] =
        std::hypot(spread / std::sqrt(static_cast<double>(pixels.size()) * readings_a_pixel), apart[channel]);
    card.step[channel] = image.bits == 8 ? step_error(middle[channel]) / middle[channel] : 0;
  }
  return card;
}

/// The pixels of the bead itself, in the light of a perfect white: without highlights, shadows and reflections of other things.
Pixels keep_body(Pixels pixels) {
  constexpr double far = 2.5;         // deviations; 99 % of a normal distribution are nearer
  constexpr double least_spread = 1;  // of L*: below that nothing is an outlier
  for (int round = 0; round < 20; ++round) {
    std::vector<double> lightness;
    for (const Triple& pixel : pixels) lightness.push_back(lab(pixel).lightness);
    const double centre = median(lightness);
    const double reach = far * std::max(least_spread, deviation_about(lightness, centre));
    Pixels kept;
    for (std::size_t i = 0; i < pixels.size(); ++i)
      if (std::abs(lightness[i] - centre) <= reach) kept.push_back(pixels[i]);
    const bool settled = kept.size() == pixels.size();
    pixels = std::move(kept);
    if (settled) break;
  }
  const colour::LabD65 middle = lab(middle_of(pixels));
  std::vector<double> differences;
  for (const Triple& pixel : pixels) differences.push_back(colour::ciede2000(middle, lab(pixel)));
  const double reach = 3 * std::max(least_spread, median(differences));
  Pixels kept;
  for (std::size_t i = 0; i < pixels.size(); ++i)
    if (differences[i] <= reach) kept.push_back(pixels[i]);
  return kept;
}

BeadColour colour_of(const Pixels& kept, double left_out, const CardLight& card, bool eight_bits) {
  const Triple light = middle_of(kept);
  BeadColour bead;
  bead.light = linear(light);
  bead.lab = lab(light);
  bead.rgb = colour::to_rgb(bead.light);
  bead.pixels = static_cast<int>(kept.size());
  bead.left_out = left_out;
  Triple mean{}, card_error{}, step{};
  double squares = 0;
  for (const Triple& pixel : kept) {
    const double difference = colour::ciede2000(bead.lab, lab(pixel));
    squares += difference * difference;
    for (std::size_t channel = 0; channel < 3; ++channel)
      mean[channel] += pixel[channel] / static_cast<double>(kept.size());
  }
  for (std::size_t channel = 0; channel < 3; ++channel) {
    card_error[channel] = light[channel] * card.error[channel];
    const double own =
        eight_bits ? step_error(light[channel] * card.light[channel]) / card.light[channel] : 0;
    step[channel] = std::hypot(own, light[channel] * card.step[channel]);
  }
  bead.spread = std::sqrt(squares / static_cast<double>(kept.size()));
  // The middle half's mean is 1.1 times as unsure as the mean of all, for a normal distribution (from memory).
  bead.of_bead = 1.1 * bead.spread / std::sqrt(static_cast<double>(kept.size()) * readings_a_pixel);
  bead.of_card = difference_by(light, card_error);
  bead.of_steps = difference_by(light, step);
  bead.of_sides = colour::ciede2000(bead.lab, lab(mean));
  bead.of_left_out = share_of_hidden * bead.spread * left_out;
  double sum = 0;
  for (const double part : {bead.of_bead, bead.of_card, bead.of_steps, bead.of_left_out, bead.of_sides})
    sum += part * part;
  bead.uncertainty = 2 * std::sqrt(sum);
  return bead;
}

}  // namespace

Result<BeadColour> measure_bead(const Image& image, const PictureRectangle& card, double reflectance,
                                const PictureRectangle& bead) {
  if (!(reflectance >= 0.02 && reflectance <= 1))
    return out_of_range("card", plain_number(reflectance) + " of the light sent back", "0.02 to 1");
  const auto card_box = box_of("card", card, image, fewest_card);
  if (!card_box) return card_box.problem();
  const auto bead_box = box_of("bead", bead, image, fewest_bead);
  if (!bead_box) return bead_box.problem();
  if (overlap(*card_box, *bead_box))
    return out_of_range("bead", "a rectangle that overlaps the card's", "two that lie apart");
  const auto card_light = measure_card(image, *card_box, reflectance);
  if (!card_light) return card_light.problem();

  const Pixels all = pixels_of(image, *bead_box);
  if (share_clipped(all) > 0.5)
    return unusable("bead", "most of its pixels at the end of the scale", "a photograph with less exposure");
  Pixels balanced;
  for (const Triple& pixel : all) {
    if (is_clipped(pixel)) continue;
    balanced.push_back(
        {pixel[0] / card_light->light[0], pixel[1] / card_light->light[1], pixel[2] / card_light->light[2]});
  }
  const Pixels kept = keep_body(std::move(balanced));
  if (kept.size() < fewest_kept || 4 * kept.size() < all.size())
    return unusable("bead",
                    fmt::format("highlights and shadows on all but {} of {} pixels", kept.size(), all.size()),
                    "softer light, or a rectangle on the bead alone");
  const double left_out = 1 - static_cast<double>(kept.size()) / static_cast<double>(all.size());
  return colour_of(kept, left_out, *card_light, image.bits == 8);
}

}  // namespace evencount::picture
