#pragma once
/// What `fit` says: tables for people, JSON for programs.

#include <optional>
#include <ostream>
#include <vector>

#include "app/json_text.hpp"
#include "form/bezel.hpp"
#include "form/faces.hpp"
#include "form/fit.hpp"
#include "form/staying_on.hpp"

namespace evencount::app {

/// What keeps a band on, as far as its form has holes.
struct Keeping {
  form::Holes holes;
  bool holes_given = false;  ///< by the form; else the usual ones
  Length widest_cord;
  std::optional<form::StopBead> stop;      ///< of a sliding band
  std::vector<bead::Size> stops;           ///< the sizes that suffice
  std::vector<form::WayToFix> fastenings;  ///< of a fixed band that needs one
};

/// Everything that is known of one fit. Faces and keeping are left out where the band doesn't close or the form can't say.
struct FitReport {
  form::Fit fit;
  bead::Size bead;
  std::optional<form::Faces> faces;
  std::optional<Keeping> keeping;
};

[[nodiscard]] Json to_json(const FitReport& report);
[[nodiscard]] Json faces_json(const form::Faces& faces);
void print(const FitReport& report, std::ostream& out);

/// One line a bead size.
[[nodiscard]] Json to_json(const std::vector<form::Fit>& fits);
void print(const std::vector<form::Fit>& fits, std::ostream& out);

[[nodiscard]] Json to_json(const form::Bezel& bezel);
void print(const form::Bezel& bezel, const form::Stone& stone, std::ostream& out);

}  // namespace evencount::app
