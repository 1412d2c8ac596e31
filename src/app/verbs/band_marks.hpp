#pragma once
/// What the `band` verb draws on a chart: a motif's file, lettering, a stamp of another band.

#include <string_view>

#include "app/verbs.hpp"
#include "chart/edit.hpp"
#include "project/project.hpp"

namespace evencount::app {

/// Errors: unknown_name.
[[nodiscard]] Result<chart::Bead> bead_of_letter(const project::Project& project, std::string_view letter,
                                                 std::string_view where);

/// Whether anything is asked to be drawn.
[[nodiscard]] bool draws(const BandArguments& arguments);

/// The chart with the motif, then the stamp, then the text on it.
/// Errors: those of read_file, of chart::copy and press and of picture::write_text; wrong_size (a motif that is too large);
/// bad_usage, bad_text, unknown_name.
[[nodiscard]] Result<chart::Chart> drawn_on(const project::Project& project, const BandArguments& arguments,
                                            const chart::Grid& grid, chart::Chart chart);

}  // namespace evencount::app
