#include "app/verbs/fit_request.hpp"

#include "app/project_file.hpp"
#include "base/text.hpp"
#include "bead/gauge_evidence.hpp"
#include "bead/thread.hpp"
#include "form/calibration.hpp"

namespace evencount::app {
namespace {

Result<form::Ends> ends_of(const std::string& stitch) {
  if (stitch == "peyote") return form::Ends::zipped;
  if (stitch == "square" || stitch == "brick") return form::Ends::sewn;
  return Problem{ProblemCode::unknown_name, "stitch", quote(stitch), "peyote, square or brick"};
}

Result<form::Parity> parity_of(const std::string& parity, form::Ends ends) {
  if (parity.empty()) return ends == form::Ends::zipped ? form::Parity::even : form::Parity::any;
  if (parity == "even") return form::Parity::even;
  if (parity == "odd") return form::Parity::odd;
  if (parity == "any") return form::Parity::any;
  return Problem{ProblemCode::unknown_name, "parity", quote(parity), "even, odd or any"};
}

bead::Gauge default_for(const std::string& stitch, const bead::Size& size, const bead::Thread& thread) {
  if (stitch == "square") return bead::square_gauge(size, thread);
  if (stitch == "brick") return bead::brick_gauge(size, thread);
  return bead::default_gauge(size, thread);
}

Result<bead::Gauge> saved_gauge(const FitArguments& arguments, const bead::Size& size,
                                const bead::Thread& thread) {
  const auto project = load_project(arguments.from);
  if (!project) return project.problem();
  for (const project::SavedGauge& saved : project->gauges) {
    const bead::NamedGauge& named = saved.named;
    if (named.bead == size.id && named.thread == thread.id &&
        (arguments.hand.empty() || named.hand == arguments.hand))
      return named.gauge;
  }
  return Problem{ProblemCode::unknown_name, arguments.from,
                 "no saved gauge for " + size.id + " on " + thread.id, "one that was kept with fit --keep"};
}

}  // namespace

Result<Done> keep_gauge(const FitArguments& arguments, const bead::Size& size, const bead::Gauge& gauge) {
  const auto thread = thread_argument(arguments);
  if (!thread) return thread.problem();
  auto project = load_project(arguments.keep);
  if (!project) return project.problem();
  if (project::find_bead(*project, size.id) == nullptr) project->beads.push_back(size);
  std::erase_if(project->gauges, [&](const project::SavedGauge& saved) {
    return saved.named.bead == size.id && saved.named.thread == thread->id &&
           saved.named.hand == arguments.hand;
  });
  project->gauges.insert(project->gauges.begin(),
                         project::SavedGauge{{arguments.hand, thread->id, size.id, gauge}, {}, {}});
  return save_project(arguments.keep, *project);
}

Result<bead::Thread> thread_argument(const FitArguments& arguments) {
  if (arguments.thread.empty()) return bead::threads().front();
  return bead::find_thread(arguments.thread);
}

Result<bead::Gauge> gauge_argument(const FitArguments& arguments, const bead::Size& size,
                                   std::string& warning) {
  const int named = (arguments.gauge.empty() ? 0 : 1) + (arguments.swatch.empty() ? 0 : 1) +
                    (arguments.from.empty() ? 0 : 1);
  if (named > 1)
    return Problem{ProblemCode::bad_usage, "gauge", "several of --gauge, --swatch and --from", "one of them"};
  const auto thread = thread_argument(arguments);
  if (!thread) return thread.problem();
  if (!arguments.from.empty()) return saved_gauge(arguments, size, *thread);
  auto base = arguments.gauge.empty() ? Result<bead::Gauge>(default_for(arguments.stitch, size, *thread))
                                      : bead::parse_gauge(arguments.gauge);
  if (!arguments.swatch.empty()) base = bead::parse_swatch(arguments.swatch);
  if (!base || arguments.finished.empty()) return base;

  std::vector<bead::GaugeEvidence> evidence;
  if (!arguments.gauge.empty() || !arguments.swatch.empty()) evidence.push_back(bead::evidence_of(*base));
  for (const std::string& text : arguments.finished) {
    const auto piece = form::parse_finished(text, size);
    if (!piece) return piece.problem().within("finished piece");
    const auto shown = form::gauge_from_finished(*piece);
    if (!shown) return shown.problem().within("finished piece");
    evidence.push_back(*shown);
  }
  const auto combined = bead::combine(evidence);
  if (!combined) return combined.problem();
  warning = combined->warning;
  return bead::with_edge(*base, *combined);
}

Result<form::FitRequest> fit_request(const FitArguments& arguments, const form::Form& form,
                                     const bead::Size& size, std::string& warning) {
  const auto ends = ends_of(arguments.stitch);
  if (!ends) return ends.problem();
  const auto parity = parity_of(arguments.parity, *ends);
  if (!parity) return parity.problem();
  const auto use = form::parse_use(arguments.use);
  if (!use) return use.problem();
  const auto gauge = gauge_argument(arguments, size, warning);
  if (!gauge) return gauge.problem();
  form::FitRequest request;
  request.form = form;
  request.bead = size;
  request.gauge = *gauge;
  request.use = *use;
  request.columns = arguments.columns;
  request.parity = *parity;
  request.forms_together = arguments.together;
  request.ends = *ends;
  if (!arguments.reveal.empty()) {
    const auto reveal = parse_length(arguments.reveal);
    if (!reveal) return reveal.problem().within("reveal");
    request.least_reveal = *reveal;
  }
  return request;
}

}  // namespace evencount::app
