#include "picture/light_rows.hpp"

#include <lcms2.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstring>
#include <new>

#include "colour/srgb.hpp"

namespace evencount::picture {
namespace {

struct FreeContext {
  void operator()(cmsContext context) const { cmsDeleteContext(context); }
};
struct FreeProfile {
  void operator()(void* profile) const { cmsCloseProfile(profile); }
};
struct FreeTransform {
  void operator()(void* transform) const { cmsDeleteTransform(transform); }
};
struct FreeCurve {
  void operator()(cmsToneCurve* curve) const { cmsFreeToneCurve(curve); }
};
using Context = std::unique_ptr<std::remove_pointer_t<cmsContext>, FreeContext>;
using Profile = std::unique_ptr<void, FreeProfile>;
using Curve = std::unique_ptr<cmsToneCurve, FreeCurve>;

Profile rgb_profile(cmsContext context, const GammaAndPrimaries& gamma) {
  const Curve curve(cmsBuildGamma(context, gamma.exponent));
  if (!curve) return nullptr;
  cmsToneCurve* const curves[] = {curve.get(), curve.get(), curve.get()};
  const cmsCIExyY white{gamma.white[0], gamma.white[1], 1};
  const cmsCIExyYTRIPLE primaries{{gamma.red[0], gamma.red[1], 1},
                                  {gamma.green[0], gamma.green[1], 1},
                                  {gamma.blue[0], gamma.blue[1], 1}};
  return Profile(cmsCreateRGBProfileTHR(context, &white, &primaries, curves));
}

int colours_of(cmsColorSpaceSignature space) {
  switch (space) {
    case cmsSigGrayData:
      return 1;
    case cmsSigRgbData:
      return 3;
    case cmsSigCmykData:
      return 4;
    default:
      return 0;
  }
}

bool describes_a_device(cmsProfileClassSignature kind) {
  return kind == cmsSigInputClass || kind == cmsSigDisplayClass || kind == cmsSigOutputClass ||
         kind == cmsSigColorSpaceClass;
}

cmsUInt32Number numbers_of(int colours) {
  switch (colours) {
    case 1:
      return TYPE_GRAY_FLT;
    case 3:
      return TYPE_RGB_FLT;
    default:
      return TYPE_CMYK_FLT;
  }
}

constexpr std::size_t piece = 1024;  // pixels handed to lcms at once; any number gives the same

float sane(float light) {
  return std::isfinite(light) ? std::clamp(light, -2.0F, 4.0F) : 0.0F;
}

}  // namespace

struct RowsToLight::Transform {
  Context context;
  std::unique_ptr<void, FreeTransform> transform;
  int colours = 3;  // what the profile takes; 3 for grey rows too where the profile is of red, green and blue

  /// None where nothing is said, or what is said can't be followed.
  static std::unique_ptr<Transform> make(const Samples& samples, const ColourTags& tags);
  [[nodiscard]] Light light_of(const std::array<float, 3>& shares) const;
};

std::unique_ptr<RowsToLight::Transform> RowsToLight::Transform::make(const Samples& samples,
                                                                     const ColourTags& tags) {
  if (tags.profile.empty() && !tags.gamma) return nullptr;
  auto made = std::make_unique<Transform>();
  made->context.reset(cmsCreateContext(nullptr, nullptr));
  if (!made->context) throw std::bad_alloc();
  const cmsContext context = made->context.get();
  const Profile profile(tags.profile.empty() ? rgb_profile(context, *tags.gamma)
                                             : Profile(cmsOpenProfileFromMemTHR(
                                                   context, tags.profile.data(),
                                                   static_cast<cmsUInt32Number>(tags.profile.size()))));
  const Profile light = rgb_profile(context, {.exponent = 1});
  if (!profile || !light || !describes_a_device(cmsGetDeviceClass(profile.get()))) return nullptr;
  made->colours = colours_of(cmsGetColorSpace(profile.get()));
  if (made->colours != samples.colours && !(made->colours == 3 && samples.colours == 1)) return nullptr;
  made->transform.reset(cmsCreateTransformTHR(context, profile.get(), numbers_of(made->colours), light.get(),
                                              TYPE_RGBA_FLT, INTENT_RELATIVE_COLORIMETRIC,
                                              cmsFLAGS_BLACKPOINTCOMPENSATION | cmsFLAGS_NOCACHE));
  return made->transform ? std::move(made) : nullptr;
}

RowsToLight::Light RowsToLight::Transform::light_of(const std::array<float, 3>& shares) const {
  Pixel light;
  cmsDoTransform(transform.get(), shares.data(), &light, 1);
  return {sane(light.red), sane(light.green), sane(light.blue)};
}

RowsToLight::RowsToLight(RowsToLight&&) noexcept = default;
RowsToLight& RowsToLight::operator=(RowsToLight&&) noexcept = default;
RowsToLight::~RowsToLight() = default;

/// Numbers of a row as shares 0 .. 1, before they were multiplied by alpha.
class RowsToLight::Shares {
 public:
  Shares(const Samples& samples, const std::uint8_t* row)
      : samples_(samples), row_(row), channels_(static_cast<std::size_t>(samples.channels())) {}

  [[nodiscard]] float alpha(std::size_t pixel) const {
    return samples_.alpha ? raw(pixel, channels_ - 1) : 1.0F;
  }
  [[nodiscard]] float colour(std::size_t pixel, std::size_t channel, float alpha) const {
    const float share = raw(pixel, channel);
    return !samples_.associated ? share : alpha > 0 ? std::min(share / alpha, 1.0F) : 0.0F;
  }

 private:
  [[nodiscard]] float raw(std::size_t pixel, std::size_t channel) const {
    const std::size_t index = pixel * channels_ + channel;
    if (samples_.bits == 8) return static_cast<float>(row_[index]) / 255.0F;
    std::uint16_t number;
    std::memcpy(&number, row_ + 2 * index, 2);
    return static_cast<float>(number) / 65535.0F;
  }

  const Samples& samples_;
  const std::uint8_t* row_;
  std::size_t channels_;
};

RowsToLight::RowsToLight(Samples samples, const ColourTags& tags) : samples_(samples) {
  assert(samples.bits == 8 || samples.bits == 16);
  transform_ = Transform::make(samples, tags);
  if (transform_) {
    light_from_ = tags.profile.empty() ? LightFrom::gamma : LightFrom::profile;
    numbers_.resize(piece * static_cast<std::size_t>(transform_->colours));
    if (!fill_tables_by_profile()) adds_ = {};
  } else {
    if (samples.colours == 4) light_from_ = LightFrom::inks;
    fill_tables_as_srgb();
  }
}

/// Inks are multiplied and associated colours divided before they become light, so theirs is the finer table.
std::size_t RowsToLight::table_size() const {
  return samples_.bits == 8 && samples_.colours != 4 && !samples_.associated ? 256 : 65536;
}

void RowsToLight::fill_tables_as_srgb() {
  const std::size_t size = table_size();
  for (std::size_t number = 0; number < size; ++number) {
    const double encoded = static_cast<double>(number) / static_cast<double>(size - 1);
    const auto light = static_cast<float>(colour::to_linear(colour::Encoded{encoded, encoded, encoded}).red);
    if (samples_.colours == 1) {
      adds_[0].push_back({light, light, light});
      continue;
    }
    adds_[0].push_back({light, 0, 0});
    adds_[1].push_back({0, light, 0});
    adds_[2].push_back({0, 0, light});
  }
}

/// With most profiles each channel has its curve, and the three lights add up. Then three tables give in no time what lcms works
/// out for every pixel. Whether it is so is seen by trying; false when it is not.
bool RowsToLight::fill_tables_by_profile() {
  if (samples_.colours == 4) return false;
  const std::size_t size = table_size();
  const auto colours = static_cast<std::size_t>(samples_.colours);
  black_ = transform_->light_of({0, 0, 0});
  for (std::size_t channel = 0; channel < colours; ++channel)
    for (std::size_t number = 0; number < size; ++number) {
      const float share = static_cast<float>(number) / static_cast<float>(size - 1);
      std::array<float, 3> shares{};
      if (colours == 1)
        shares.fill(share);
      else
        shares[channel] = share;
      const Light light = transform_->light_of(shares);
      adds_[channel].push_back(
          {light.red - black_.red, light.green - black_.green, light.blue - black_.blue});
    }
  if (colours == 1) return true;
  constexpr std::array tried{0.0F, 0.2F, 0.4F, 0.6F, 0.8F, 1.0F};  // numbers of every table
  constexpr float as_good_as_equal = 5e-5F;  // of white; 16 bits in the darks are finer, prints are not
  for (const float red : tried)
    for (const float green : tried)
      for (const float blue : tried) {
        const Light by_lcms = transform_->light_of({red, green, blue}), by_tables = added({red, green, blue});
        const auto far = [](float a, float b) { return !(std::abs(a - b) <= as_good_as_equal); };
        if (far(by_lcms.red, by_tables.red) || far(by_lcms.green, by_tables.green) ||
            far(by_lcms.blue, by_tables.blue))
          return false;
      }
  return true;
}

RowsToLight::Light RowsToLight::added(const std::array<float, 3>& shares) const {
  Light light = black_;
  for (std::size_t channel = 0; channel < 3 && !adds_[channel].empty(); ++channel) {
    const auto& table = adds_[channel];
    const Light& add =
        table[static_cast<std::size_t>(shares[channel] * static_cast<float>(table.size() - 1) + 0.5F)];
    light.red += add.red, light.green += add.green, light.blue += add.blue;
  }
  return light;
}

void RowsToLight::convert(const std::uint8_t* row, std::size_t count, Pixel* light) {
  for (std::size_t done = 0; done < count; done += piece) {
    const std::uint8_t* from = row + done * samples_.bytes_a_pixel();
    const std::size_t some = std::min(piece, count - done);
    if (adds_[0].empty())
      convert_by_lcms(from, some, light + done);
    else
      convert_by_tables(from, some, light + done);
  }
}

void RowsToLight::convert_by_lcms(const std::uint8_t* row, std::size_t count, Pixel* light) {
  const Shares shares(samples_, row);
  const auto wanted = static_cast<std::size_t>(transform_->colours),
             last = static_cast<std::size_t>(samples_.colours - 1);
  const float scale = wanted == 4 ? 100.0F : 1.0F;  // lcms counts ink in per cent
  for (std::size_t i = 0; i < count; ++i) {
    light[i].alpha = shares.alpha(i);
    for (std::size_t channel = 0; channel < wanted; ++channel)
      numbers_[i * wanted + channel] = scale * shares.colour(i, std::min(channel, last), light[i].alpha);
  }
  cmsDoTransform(transform_->transform.get(), numbers_.data(), light, static_cast<cmsUInt32Number>(count));
  for (std::size_t i = 0; i < count; ++i)
    light[i] = {sane(light[i].red), sane(light[i].green), sane(light[i].blue), light[i].alpha};
}

void RowsToLight::convert_by_tables(const std::uint8_t* row, std::size_t count, Pixel* light) {
  const Shares shares(samples_, row);
  const auto colours = static_cast<std::size_t>(samples_.colours);
  for (std::size_t i = 0; i < count; ++i) {
    const float alpha = shares.alpha(i);
    std::array<float, 3> share{};
    for (std::size_t channel = 0; channel < std::min<std::size_t>(colours, 3); ++channel)
      share[channel] = shares.colour(i, channel, alpha);
    if (colours == 4)
      for (float& one : share) one = (1 - one) * (1 - shares.colour(i, 3, alpha));
    const Light sum = added(share);
    light[i] = {sane(sum.red), sane(sum.green), sane(sum.blue), alpha};
  }
}

ImageRows::ImageRows(int width, int height, Orientation orientation, RowsToLight to_light)
    : width_(width), places_(places(orientation, width, height)), to_light_(std::move(to_light)) {
  image_.width = swaps_sides(orientation) ? height : width;
  image_.height = swaps_sides(orientation) ? width : height;
  image_.has_alpha = to_light_.samples().alpha;
  image_.bits = to_light_.samples().bits;
  image_.light_from = to_light_.light_from();
  image_.pixels.resize(static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
  light_.resize(static_cast<std::size_t>(width));
}

void ImageRows::put(int x, int y, std::size_t count, const std::uint8_t* row) {
  assert(x >= 0 && count <= static_cast<std::size_t>(width_ - x));
  to_light_.convert(row, count, light_.data());
  Pixel* place = image_.pixels.data() + places_.origin + x * places_.by_column + y * places_.by_row;
  for (std::size_t i = 0; i < count; ++i) {
    *place = light_[i];
    if (i + 1 < count) place += places_.by_column;
  }
}

}  // namespace evencount::picture
