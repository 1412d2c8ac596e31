#pragma once
/// What the views of one band begin with.

#include "app/studio/api.hpp"
#include "drawing/marks.hpp"

namespace evencount::app::studio {

/// A project as it is, and one of its bands.
struct BandView {
  State state;
  int position = 0;
  [[nodiscard]] const project::Project& project() const { return *state.project; }
  [[nodiscard]] const project::Band& band() const {
    return state.project->bands[static_cast<std::size_t>(position)];
  }
};

/// {project} and {band} of the address. Errors: not_found, those of Library::session.
[[nodiscard]] Result<BandView> band_view(Studio& studio, const Call& call);

/// A drawing as SVG, or why there is none.
[[nodiscard]] Response svg_response(const Result<drawing::Drawing>& drawing);

/// Names the revision that an answer was computed from.
[[nodiscard]] inline Response of_revision(Response response, std::int64_t revision) {
  response.fields.emplace_back("X-Evencount-Revision", std::to_string(revision));
  return response;
}

/// The address of a view: project, band, and what `view` makes of them.
template <typename View>
[[nodiscard]] Response of_band(Studio& studio, const Call& call, View view) {
  const auto there = band_view(studio, call);
  if (!there) return problem_response(there.problem());
  return of_revision(view(*there), there->state.revision);
}

}  // namespace evencount::app::studio
