#include <fmt/format.h>

#include <set>

#include "base/text.hpp"
#include "project/strung_sizes.hpp"
#include "proof/checks.hpp"

namespace evencount::proof {
namespace {

using strand::FindingCode;

/// A piece that comes apart or loses a band must not be published; one that only hangs badly may.
Severity severity_of(FindingCode code) {
  switch (code) {
    case FindingCode::band_not_held:
    case FindingCode::cord_does_not_pass:
    case FindingCode::knot_slips:
    case FindingCode::end_not_fast:
    case FindingCode::wire_not_closed:
      return Severity::error;
    case FindingCode::stop_only_catches:
    case FindingCode::stops_push_apart:
    case FindingCode::holes_apart_differ:
      return Severity::warning;
  }
  return Severity::error;
}

void check_closing(const strand::StrandFit& fit, Findings& findings) {
  if (fit.closes) return;
  std::string mend;
  for (const strand::Change& change : fit.changes) {
    if (!mend.empty() && change.remedy != fit.changes.front().remedy) break;
    mend += (mend.empty() ? " To mend it: " : "; ") + strand::describe(change);
  }
  findings.push_back({Severity::warning, "strand", "strand, size " + fit.wearer.name,
                      fmt::format("It comes out {} mm too {} of the {} mm it should have.{}",
                                  fixed_number(std::abs(fit.best.error.mm()), 1), fit.best.error > Length{} ? "long" : "short",
                                  fixed_number(fit.wanted.mm(), 1), mend.empty() ? "" : mend + ".")});
}

}  // namespace

void check_strand(const project::Project& project, Findings& findings) {
  if (!project.strand) return;
  const auto broken = [&](const Problem& problem) {
    findings.push_back({Severity::error, "strand", problem.where, fmt::format("It can't be strung: {}.", sentence(problem))});
  };
  const auto strung = project::strung_of(project);
  if (!strung) return broken(strung.problem());
  const auto sizes = project::strung_sizes(project, *strung, project::wearers_of(*project.strand));
  if (!sizes) return broken(sizes.problem());
  // The same fault in every size is said once.
  std::set<std::pair<FindingCode, std::string>> said;
  for (const project::StrungSize& size : sizes->sizes) {
    check_closing(size.fit, findings);
    for (const strand::Finding& found : size.findings)
      if (said.insert({found.code, found.mend}).second)
        findings.push_back({severity_of(found.code), "strand", fmt::format("strand, size {}, {}", size.fit.wearer.name, found.where),
                            fmt::format("{}; expected {}. {}.", found.found, found.expected, found.mend)});
  }
}

}  // namespace evencount::proof
