#pragma once
/// Marks to PDF, SVG and PNG.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "drawing/marks.hpp"

namespace evencount::page {

/// A line of the outline that a reader shows beside the pages.
struct OutlineEntry {
  std::string title;
  std::size_t page = 0;  ///< from 0
  bool operator==(const OutlineEntry&) const = default;
};

struct DocumentInfo {
  std::string title;
  std::string author;
  std::string language = "en";
  /// Seconds since 1970 UTC, written as the creation date. None: the document carries no date, so that the same
  /// input gives the same bytes.
  std::optional<std::int64_t> created_unix;
  std::vector<OutlineEntry> outline;
};

/// What a picture on a page of the web carries.
struct PictureForWeb {
  std::optional<int> pixels;  ///< its width; its size in millimetres, or at the resolution asked for, where left out
  std::string description;    ///< for whoever does not see it: an SVG's title, a PNG's text "Description"
};

/// Everything here returns the bytes of a file; the same marks give the same bytes.
/// Texts are set in EB Garamond (title, heading, body) and Lato (label), from Debian's packages and nowhere else.
/// Errors: missing_font (names the package), missing_glyph (names the text and the character), out_of_range (a
/// PNG of more than 100 million pixels, 10 to 2400 dots per inch), system_failure.
[[nodiscard]] Result<std::string> to_svg(const drawing::Drawing& drawing, const PictureForWeb& web = {});
[[nodiscard]] Result<std::string> to_png(const drawing::Drawing& drawing, double dots_per_inch = 150,
                                         const PictureForWeb& web = {});

/// Errors: out_of_range (sizes that are not those of the bytes, or of a PNG above), system_failure.
[[nodiscard]] Result<std::string> to_png(const drawing::Pixels& pixels, double dots_per_inch = 150);

/// One page a drawing, each of its own size, numbered from 1. Text stays text: it can be searched and copied.
/// `info.language` is written as the language of the document. An outline entry beyond the pages is left out. The pages' regions
/// become tags, links and places; a link to a place that is on no page leads nowhere and is left out.
[[nodiscard]] Result<std::string> to_pdf(const std::vector<drawing::Drawing>& pages,
                                         const DocumentInfo& info);

}  // namespace evencount::page
