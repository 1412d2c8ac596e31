#include "proof/proof.hpp"

#include <algorithm>
#include <array>

#include "proof/checks.hpp"

namespace evencount::proof {

namespace {

/// A check that looks at the project alone.
template <void (*check)(const project::Project&, Findings&)>
void on_project(const Subject& subject, Findings& findings) {
  check(subject.project, findings);
}

}  // namespace

std::string_view severity_name(Severity severity) {
  switch (severity) {
    case Severity::error:
      return "error";
    case Severity::warning:
      return "warning";
    case Severity::note:
      return "note";
  }
  return "note";
}

std::span<const Check> checks() {
  static constexpr std::array<Check, 16> table{{
      {"title", "The design has a title.", on_project<check_title>},
      {"bands", "There is at least one band, and every band has a name of its own.", on_project<check_bands>},
      {"references", "Every technique, bead, form and letter that is named is there.", on_project<check_references>},
      {"plan", "Every band can be stitched in its technique, and stitching it makes its chart.", on_project<check_plan>},
      {"words", "The written rows, read back, make the chart.", on_project<check_words>},
      {"supplies", "The supply list counts exactly the beads of the charts.", on_project<check_supplies>},
      {"fit", "Every zipped band closes round its form and stays on it.", on_project<check_fit>},
      {"width", "Every band is narrower than its form.", on_project<check_width>},
      {"strand", "What is strung closes in every size, and its bands, cords and ends hold.", on_project<check_strand>},
      {"thread", "Every row can be worked with one length of thread.", on_project<check_thread>},
      {"passes", "No bead is passed more often than its hole allows.", on_project<check_passes>},
      {"unused", "Every bead of the legend is used.", on_project<check_unused>},
      {"colours", "No two beads in use have the same colour.", on_project<check_colours>},
      {"difference", "Beads side by side differ enough in colour, for colour-blind eyes as well.", check_difference},
      {"contrast", "Beads side by side can be told apart by their lightness.", on_project<check_contrast>},
      {"glyphs", "The booklet's fonts can print every text.", check_glyphs},
  }};
  return table;
}

std::vector<Finding> proof(const project::Project& project, const Beside& beside) {
  std::vector<Finding> findings;
  for (const Check& check : checks()) check.run({project, beside}, findings);
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding& a, const Finding& b) { return a.severity < b.severity; });
  return findings;
}

bool has_errors(std::span<const Finding> findings) {
  return std::any_of(findings.begin(), findings.end(),
                     [](const Finding& f) { return f.severity == Severity::error; });
}

}  // namespace evencount::proof
