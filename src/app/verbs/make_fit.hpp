#pragma once
/// A fit with all that goes with it, for the `fit` verb and the studio.

#include "app/verbs.hpp"
#include "app/verbs/fit_report.hpp"

namespace evencount::app {

/// Errors: bad_usage (none), unknown_name.
[[nodiscard]] Result<bead::Size> bead_argument(const FitArguments& arguments);

/// The fit of one bead round a form, its faces and what keeps it on. Of the arguments, those that say what is drawn, kept or printed
/// are not looked at. `warning` is filled when measurements disagree.
/// Errors: those of fit_request, form::fit and form::ways_to_fix.
[[nodiscard]] Result<FitReport> make_fit(const FitArguments& arguments, const form::Form& form,
                                         std::string& warning);

}  // namespace evencount::app
