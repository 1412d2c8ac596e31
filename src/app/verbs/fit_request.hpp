#pragma once
/// From the arguments of `fit` to what the engine is asked.

#include "app/verbs.hpp"
#include "form/fit.hpp"

namespace evencount::app {

/// The thread, or the default.
[[nodiscard]] Result<bead::Thread> thread_argument(const FitArguments& arguments);

/// The gauge for a bead: given, from a swatch, from finished pieces, from all of these together, or the stitch's default.
/// `warning` is filled when measurements disagree.
[[nodiscard]] Result<bead::Gauge> gauge_argument(const FitArguments& arguments, const bead::Size& size,
                                                 std::string& warning);

/// Puts the gauge first among the saved ones of the project `keep`, in place of the same hand's older one.
[[nodiscard]] Result<Done> keep_gauge(const FitArguments& arguments, const bead::Size& size,
                                      const bead::Gauge& gauge);

[[nodiscard]] Result<form::FitRequest> fit_request(const FitArguments& arguments, const form::Form& form,
                                                   const bead::Size& size, std::string& warning);

}  // namespace evencount::app
