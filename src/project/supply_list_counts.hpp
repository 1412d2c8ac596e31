#pragma once
/// What every supply list starts from: each band's beads and thread, off its plan. Internal to the room.

#include <cstdint>
#include <vector>

#include "project/project.hpp"
#include "weave/thread_path.hpp"

namespace evencount::project {

struct BandUse {
  std::vector<int> beads;  ///< of one copy, by legend position; as long as the highest bead needs
  weave::ThreadUse thread;
};

/// One a band, in order, each plan made once. Errors: those of band_threads.
[[nodiscard]] Result<std::vector<BandUse>> band_uses(const Project& project);

/// How many of each legend entry one piece takes, all copies counted.
/// Errors: unknown_name (a chart's bead beyond the legend).
[[nodiscard]] Result<std::vector<std::int64_t>> legend_counts(const Project& project,
                                                              const std::vector<BandUse>& uses);

/// The forms of one piece: one a copy of each band. As positions in the project's forms and counts above 0.
/// Errors: unknown_name (a band's form that the project hasn't).
struct FormCount {
  std::size_t form = 0;
  std::int64_t count = 0;
};
[[nodiscard]] Result<std::vector<FormCount>> form_counts(const Project& project);

/// What one piece takes besides beads of bands, forms and thread: the project's findings, then what is strung for the size; what has one
/// name and unit is one entry. Errors: those of strung_supplies.
[[nodiscard]] Result<std::vector<OtherSupply>> other_supplies(const Project& project, const std::string& size);

/// The name of the size that a piece is strung for; empty for a project without a strand.
[[nodiscard]] std::string size_strung_for(const Project& project, const std::string& size);

/// As printed.
[[nodiscard]] std::string name_of(const FormEntry& entry);

/// The project's tools and the beading needle for the smallest hole that is used.
[[nodiscard]] std::vector<std::string> tools_for(const Project& project,
                                                 const std::vector<std::int64_t>& counts);

/// The size of a legend entry. Errors: unknown_name.
[[nodiscard]] Result<bead::Size> size_of(const Project& project, const LegendEntry& entry);

}  // namespace evencount::project
