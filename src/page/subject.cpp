#include <fmt/format.h>

#include <map>

#include "page/along_hand.hpp"
#include "page/counts.hpp"
#include "page/fonts.hpp"
#include "page/sections.hpp"
#include "proof/proof.hpp"

namespace evencount::page {
namespace {

Result<BandSheet> make_sheet(const project::Project& project, const project::Band& band,
                             const BookletOptions& options) {
  auto hand = make_hand(project, band, options.left_handed ? Side::left : Side::right, *options.language);
  if (!hand) return hand.problem();
  BandSheet sheet;
  sheet.band = &band;
  sheet.left_handed = options.left_handed;
  sheet.worked = std::move(hand->band);
  sheet.plan = std::move(hand->plan);
  sheet.gauge = project::gauge_of(project, band);
  sheet.words = std::move(hand->words);
  sheet.thread = std::move(hand->thread);
  return sheet;
}

/// Bands of one technique are stitched alike: each moment is drawn with the first of them that has it.
void give_steps(std::vector<BandSheet>& bands, const BookletOptions& options) {
  std::map<std::pair<std::string, weave::MomentKind>, std::size_t> drawn_with;
  const weave::MomentStyle style{options.language, options.left_handed};
  for (std::size_t i = 0; i < bands.size(); ++i) {
    BandSheet& sheet = bands[i];
    for (weave::Moment& moment : weave::moments(sheet.plan, sheet.thread.new_thread_rows, style)) {
      const std::size_t with = drawn_with.emplace(std::pair{sheet.plan.technique, moment.kind}, i).first->second;
      if (with == i)
        sheet.steps.push_back(std::move(moment));
      else if (!sheet.steps_with)
        sheet.steps_with = with;
    }
  }
}

/// The sizes that the strand is offered in; none where it can't be laid out, which the proof has warned of.
std::optional<project::StrungSizes> sizes_of_strand(const project::Project& project) {
  if (!project.strand) return std::nullopt;
  const auto strung = project::strung_of(project);
  if (!strung) return std::nullopt;
  auto sizes = project::strung_sizes(project, *strung, project::wearers_of(*project.strand));
  if (!sizes || sizes->sizes.empty()) return std::nullopt;
  return std::move(*sizes);
}

}  // namespace

Result<Done> check_proof(const project::Project& project, std::string_view what, bool printed) {
  const auto fonts = printed ? first_unshown() : Result<proof::FirstUnshown>(nullptr);
  if (!fonts) return fonts.problem();
  const auto findings = proof::proof(project, {.first_unshown = *fonts});
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
  Subject subject{project, options, *options.language, {}, std::move(*supplies), sizes_of_strand(project)};
  subject.bands.reserve(project.bands.size());
  for (const project::Band& band : project.bands) {
    auto sheet = make_sheet(project, band, options);
    if (!sheet) return sheet.problem();
    subject.bands.push_back(std::move(*sheet));
  }
  if (auto ok = check_counts(subject); !ok) return ok.problem();
  if (options.steps) give_steps(subject.bands, options);
  return subject;
}

std::int64_t beads_in_all(const Subject& subject) {
  std::int64_t beads = 0;
  for (const auto& bead : subject.supplies.beads.beads) beads += bead.count;
  return beads;
}

}  // namespace evencount::page
