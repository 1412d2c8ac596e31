#include <fmt/ostream.h>

#include "app/project_file.hpp"
#include "app/reports.hpp"
#include "app/verbs.hpp"
#include "page/fonts.hpp"
#include "proof/proof.hpp"

namespace evencount::app {

int proof_verb(const ProofArguments& arguments, const Console& console) {
  const auto project = load_project(arguments.project);
  if (!project) return console.fail(project.problem());
  const auto stock = stock_items(arguments.stock, project->beads.empty() ? "" : project->beads.front().id);
  if (!stock) return console.fail(stock.problem());
  const auto findings = page::proof_for_print(*project, *stock);
  if (arguments.json) {
    print(console.out, proof_json(*project, findings));
  } else {
    for (const proof::Finding& finding : findings)
      fmt::print(console.out, "{:<8} {}: {}  [{}]\n", proof::severity_name(finding.severity), finding.where,
                 finding.message, finding.check);
    if (findings.empty())
      fmt::print(console.out, "{}: {} checks, nothing found\n", project->title, proof::checks().size());
  }
  return proof::has_errors(findings) ? exit_findings : exit_done;
}

}  // namespace evencount::app
