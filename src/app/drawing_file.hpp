#pragma once
/// A drawing on disk: the file's ending chooses SVG, PNG or PDF.

#include <optional>
#include <string>

#include "app/console.hpp"
#include "drawing/marks.hpp"
#include "page/output.hpp"

namespace evencount::app {

/// Writes the file, says so on err, and returns the exit status.
int write_drawing(const drawing::Drawing& drawing, const std::string& title, const std::string& path,
                  std::optional<double> dots_per_inch, const Console& console, const page::PictureForWeb& web = {});

}  // namespace evencount::app
