#pragma once
/// What the `band` verb draws on a chart: a motif's file, lettering, a stamp of another band.

#include <string_view>
#include <vector>

#include "app/verbs.hpp"
#include "chart/edit.hpp"
#include "picture/legibility.hpp"
#include "project/project.hpp"

namespace evencount::app {

/// Errors: unknown_name.
[[nodiscard]] Result<chart::Bead> bead_of_letter(const project::Project& project, std::string_view letter,
                                                 std::string_view where);

/// Whether anything is asked to be drawn.
[[nodiscard]] bool draws(const BandArguments& arguments);

/// What a chart is drawn on.
struct Ground {
  const project::Project& project;
  chart::Grid grid;
  bead::Gauge gauge;
};

struct Drawn {
  chart::Chart chart;
  std::vector<picture::Likeness> doubtful;  ///< letters of the text that can be taken for others
};

/// The chart with the motif, then the stamp, then the text on it.
/// Errors: those of read_file, of chart::copy and press, of picture::write_text and letter_in_font and of page::font_text; wrong_size
/// (a motif that is too large); bad_usage, bad_text, unknown_name.
[[nodiscard]] Result<Drawn> drawn_on(const Ground& ground, const BandArguments& arguments, chart::Chart chart);

}  // namespace evencount::app
