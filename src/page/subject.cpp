#include <fmt/format.h>

#include <map>

#include "page/sections.hpp"
#include "proof/proof.hpp"

namespace evencount::page {
namespace {

Result<BandSheet> make_sheet(const project::Project& project, const project::Band& band) {
  auto plan = project::plan_of(band);
  if (!plan) return plan.problem();
  BandSheet sheet;
  sheet.band = &band;
  sheet.plan = std::move(*plan);
  sheet.gauge = project::gauge_of(project, band);
  sheet.words = wording::write_words(sheet.plan, project::letters_of(project), one_line(band.name));
  return sheet;
}

/// Bands of one technique are stitched alike: each moment is drawn with the first of them that has it.
void give_steps(std::vector<BandSheet>& bands) {
  std::map<std::pair<std::string, weave::MomentKind>, std::size_t> drawn_with;
  for (std::size_t i = 0; i < bands.size(); ++i) {
    BandSheet& sheet = bands[i];
    for (weave::Moment& moment : weave::moments(sheet.plan, sheet.thread.new_thread_rows)) {
      const std::size_t with = drawn_with.emplace(std::pair{sheet.plan.technique, moment.kind}, i).first->second;
      if (with == i)
        sheet.steps.push_back(std::move(moment));
      else if (sheet.steps_with.empty())
        sheet.steps_with = one_line(bands[with].band->name);
    }
  }
}

}  // namespace

Result<Done> check_proof(const project::Project& project, std::string_view what) {
  const auto findings = proof::proof(project);
  if (!proof::has_errors(findings)) return Done{};
  constexpr std::size_t most_listed = 3;
  std::string listed;
  std::size_t errors = 0;
  for (const proof::Finding& finding : findings) {
    if (finding.severity != proof::Severity::error) continue;
    if (++errors <= most_listed)
      listed += fmt::format("{}{}: {}", listed.empty() ? "" : "; ", finding.where, finding.message);
  }
  if (errors > most_listed) listed += fmt::format("; and {} more", errors - most_listed);
  return Problem{ProblemCode::proof_failed, "proof", listed, fmt::format("no errors before {} is made", what)};
}

Result<Subject> make_subject(const project::Project& project, const BookletOptions& options) {
  auto supplies = project::supply_list(project);
  if (!supplies) return supplies.problem();
  const auto threads = project::band_threads(project);
  if (!threads) return threads.problem();
  Subject subject{project, options, {}, std::move(*supplies)};
  for (std::size_t i = 0; i < project.bands.size(); ++i) {
    auto sheet = make_sheet(project, project.bands[i]);
    if (!sheet) return sheet.problem();
    sheet->thread = (*threads)[i].use;
    subject.bands.push_back(std::move(*sheet));
  }
  if (options.steps) give_steps(subject.bands);
  return subject;
}

}  // namespace evencount::page
