#include "app/verbs/make_fit.hpp"

#include <fmt/format.h>

#include "app/verbs/fit_request.hpp"
#include "base/text.hpp"

namespace evencount::app {
namespace {

Result<std::optional<Keeping>> keeping_of(const form::Fit& fit, const bead::Size& size,
                                          const FitArguments& arguments) {
  const auto holes = form::holes_of(fit.form);
  if (!holes) return std::optional<Keeping>{};  // a form that is not strung keeps a band otherwise
  const auto widest = form::widest_cord(holes->diameter);
  if (!widest) return widest.problem();
  Keeping keeping{*holes, fit.form.hole.has_value() || fit.form.hole_spacing.has_value(), *widest, {}, {},
                  {}};
  Length cord = *widest;
  if (!arguments.cord.empty()) {
    const auto given = parse_length(arguments.cord);
    if (!given) return given.problem().within("cord");
    if (*given > *widest)
      return Problem{ProblemCode::out_of_range, "cord", plain_number(given->mm()) + " mm",
                     fmt::format("at most {} mm to pass a hole of {} mm", plain_number(widest->mm()),
                                 plain_number(holes->diameter.mm()))};
    cord = *given;
  }
  if (fit.use == form::Use::sliding) {
    auto stop = form::smallest_stop_bead(fit.form, *holes, {size, fit.gauge, fit.edge, fit.columns});
    if (!stop) return stop.problem();
    keeping.stops = form::stops_that_suffice(*stop, cord);
    keeping.stop = *stop;
  } else if (form::needs_fastening(fit.verdict)) {
    const auto thread = thread_argument(arguments);
    if (!thread) return thread.problem();
    auto ways = form::ways_to_fix(fit.form, *holes, fit.width, cord, thread->diameter);
    if (!ways) return ways.problem();
    keeping.fastenings = std::move(*ways);
  }
  return std::optional<Keeping>{std::move(keeping)};
}

}  // namespace

Result<bead::Size> bead_argument(const FitArguments& arguments) {
  if (arguments.bead.empty())
    return Problem{ProblemCode::bad_usage, "bead", "none",
                   "--bead KIND-SIZE, such as cylinder-11, or --table for every size"};
  return bead::find_size(arguments.bead);
}

Result<FitReport> make_fit(const FitArguments& arguments, const form::Form& form, std::string& warning) {
  const auto size = bead_argument(arguments);
  if (!size) return size.problem();
  const auto request = fit_request(arguments, form, *size, warning);
  if (!request) return request.problem();
  const auto fit = form::fit(*request);
  if (!fit) return fit.problem();
  FitReport report{*fit, *size, {}, {}};
  if (!form::closes(fit->verdict)) return report;
  if (const auto faces = form::faces(form, size->diameter, fit->edge)) report.faces = *faces;
  auto keeping = keeping_of(*fit, *size, arguments);
  if (!keeping) return keeping.problem();
  report.keeping = std::move(*keeping);
  return report;
}

}  // namespace evencount::app
