#pragma once
/// A new band: a blank piece of the size that fits its form, or of the size asked for.
///
/// Properties (tests/project/new_band_test.cpp):
///  (1) a new band has a size that its technique can make, and every cell that can hold a bead holds the ground
///  (2) without a size it is the one that fits its form best

#include <optional>
#include <string>

#include "project/project.hpp"
#include "weave/technique.hpp"

namespace evencount::project {

struct NewBand {
  std::string name;
  std::string technique;  ///< an id; empty for flat peyote, even or odd count as the columns have it
  std::string bead;       ///< the id of one of the project's beads
  std::optional<std::string> form;  ///< the id of one of the project's forms
  form::Use use = form::Use::fixed;
  std::optional<weave::Closure>
      closure;  ///< else the technique's usual one, sewn round a form where it can be
  int begin_at = 0;
  std::optional<bead::Gauge> gauge;
  std::optional<int> columns, edge, rows;  ///< units in right-angle weave; what fits where they are left out
  chart::Bead ground = 0;
};

/// The usual way its ends are joined.
[[nodiscard]] weave::Closure usual_closure(const weave::Technique& technique, bool round_a_form);

/// A blank piece: cells that can't hold a bead are empty, as is the last shifted row when `rows` is odd.
/// Errors: those of fitting_size; unknown_name (technique, bead, form), bad_usage (rows and edge together; neither a form nor a size),
/// out_of_range (a size below 1, or beyond the largest chart).
[[nodiscard]] Result<Band> new_band(const Project& project, const NewBand& wanted);

}  // namespace evencount::project
