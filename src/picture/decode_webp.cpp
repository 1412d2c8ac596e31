#include <webp/decode.h>
#include <webp/demux.h>

#include <memory>
#include <vector>

#include "picture/decoders.hpp"

namespace evencount::picture {
namespace {

constexpr std::string_view format = "WebP";

struct FreeDemuxer {
  void operator()(WebPDemuxer* demuxer) const { WebPDemuxDelete(demuxer); }
};
using Demuxer = std::unique_ptr<WebPDemuxer, FreeDemuxer>;

/// The first chunk of this name; it points into the file.
std::string_view chunk(const WebPDemuxer* demuxer, const char* name) {
  WebPChunkIterator found;
  std::string_view bytes;
  if (WebPDemuxGetChunk(demuxer, name, 1, &found) != 0) bytes = as_bytes(found.chunk.bytes, found.chunk.size);
  WebPDemuxReleaseChunkIterator(&found);
  return bytes;
}

std::string_view how(VP8StatusCode status) {
  switch (status) {
    case VP8_STATUS_NOT_ENOUGH_DATA:
    case VP8_STATUS_SUSPENDED:
      return "it ends early";
    case VP8_STATUS_OUT_OF_MEMORY:
      return "no memory";
    default:
      return "its picture can't be made out";
  }
}

}  // namespace

Result<Image> decode_webp(std::string_view bytes, const DecodeLimits& limits) {
  const auto* data = reinterpret_cast<const std::uint8_t*>(bytes.data());
  WebPDecoderConfig config;
  if (WebPInitDecoderConfig(&config) == 0) return damaged(format, "another version of its library");
  if (const auto status = WebPGetFeatures(data, bytes.size(), &config.input); status != VP8_STATUS_OK)
    return damaged(format, how(status));
  if (config.input.has_animation != 0) return unreadable_kind(format, "an animation", "a still picture");
  const int width = config.input.width, height = config.input.height;
  if (auto problem = check_size(format, static_cast<unsigned>(width), static_cast<unsigned>(height), limits))
    return *problem;
  const WebPData all{data, bytes.size()};
  const Demuxer demuxer(WebPDemux(&all));
  if (!demuxer) return damaged(format, "it ends early");

  const Samples samples{.colours = 3, .alpha = config.input.has_alpha != 0, .bits = 8};
  const std::size_t row_length = samples.bytes_a_pixel() * static_cast<std::size_t>(width);
  std::vector<std::uint8_t> rows(row_length * static_cast<std::size_t>(height));
  config.output.colorspace = samples.alpha ? MODE_RGBA : MODE_RGB;
  config.output.is_external_memory = 1;
  config.output.u.RGBA = {rows.data(), static_cast<int>(row_length), rows.size()};
  if (const auto status = WebPDecode(data, bytes.size(), &config); status != VP8_STATUS_OK)
    return damaged(format, how(status));

  ImageRows image(width, height, exif_orientation(chunk(demuxer.get(), "EXIF")),
                  RowsToLight(samples, {.profile = chunk(demuxer.get(), "ICCP")}));
  for (int y = 0; y < height; ++y) image.put_row(y, rows.data() + static_cast<std::size_t>(y) * row_length);
  return std::move(image).take();
}

}  // namespace evencount::picture
