#include <fmt/format.h>

#include "base/text.hpp"
#include "project/neighbours.hpp"
#include "proof/better_bead.hpp"
#include "proof/checks.hpp"

namespace evencount::proof {
namespace {

using project::Band;
using project::LegendEntry;
using project::Neighbours;
using project::Project;

std::string pair_place(const LegendEntry& a, const LegendEntry& b) {
  return fmt::format("legend {} and {}", a.letter, b.letter);
}

}  // namespace

std::vector<bool> used_entries(const Project& project) {
  std::vector<bool> used(project.legend.size(), false);
  for (const Band& band : project.bands)
    for (const chart::Bead bead : band.chart.cells())
      if (bead < used.size()) used[bead] = true;
  return used;
}

void check_unused(const Project& project, Findings& findings) {
  const std::vector<bool> used = used_entries(project);
  for (std::size_t i = 0; i < used.size(); ++i)
    if (!used[i])
      findings.push_back(
          {Severity::note, "unused", "legend " + project.legend[i].letter,
           "No band uses this bead. It is left out of the supplies; take it off the legend if it "
           "is not needed."});
}

void check_colours(const Project& project, Findings& findings) {
  const std::vector<bool> used = used_entries(project);
  for (std::size_t low = 0; low < used.size(); ++low)
    for (std::size_t high = low + 1; high < used.size(); ++high) {
      const LegendEntry &a = project.legend[low], &b = project.legend[high];
      if (used[low] && used[high] && a.colour == b.colour)
        findings.push_back(
            {Severity::warning, "colours", pair_place(a, b),
             fmt::format("Both are {} on the chart, so nobody can tell which is which. Change one "
                         "colour, or make them one bead.",
                         colour::to_hex(a.colour))});
    }
}

void check_difference(const Subject& subject, Findings& findings) {
  const Project& project = subject.project;
  const Neighbours neighbours(project);
  const auto better = [&](std::size_t low, std::size_t high) -> std::string {
    const auto bead = better_bead(project, neighbours, low, high, subject.beside.stock);
    if (!bead) return "";
    return fmt::format(" In the stock, {} ({}) would do for {}; it is {} away from it.", bead->name, bead->code,
                       project.legend[bead->replaces].letter, fixed_number(bead->difference, 1));
  };
  for (std::size_t low = 0; low < project.legend.size(); ++low)
    for (std::size_t high = low + 1; high < project.legend.size(); ++high) {
      const LegendEntry &a = project.legend[low], &b = project.legend[high];
      if (!neighbours.meet(low, high) || a.colour == b.colour) continue;
      const Apart told = apart(a.colour, b.colour);
      if (told.difference < least_difference) {
        findings.push_back(
            {Severity::warning, "difference", pair_place(a, b),
             fmt::format("They lie side by side and are hard to tell apart (a colour difference of {}; beads of one tube "
                         "may differ by 2). Choose colours at least {} apart.{}",
                         fixed_number(told.difference, 1), plain_number(least_difference), better(low, high))});
      } else if (told.lost_to) {
        findings.push_back(
            {Severity::note, "difference", pair_place(a, b),
             fmt::format("They lie side by side, and people with {} colour vision can hardly tell them apart (a difference of {} is "
                         "left of {}). The letters in the cells still do; a lighter or darker colour would help.{}",
                         colour::deficiency_name(*told.lost_to), fixed_number(told.left, 1),
                         fixed_number(told.difference, 1), better(low, high))});
      }
    }
}

void check_contrast(const Project& project, Findings& findings) {
  const Neighbours neighbours(project);
  for (std::size_t low = 0; low < project.legend.size(); ++low)
    for (std::size_t high = low + 1; high < project.legend.size(); ++high) {
      const LegendEntry &a = project.legend[low], &b = project.legend[high];
      const double contrast = colour::contrast(a.colour, b.colour);
      if (!neighbours.meet(low, high) || a.colour == b.colour || contrast >= least_contrast) continue;
      findings.push_back(
          {Severity::warning, "contrast", pair_place(a, b),
           fmt::format(
               "They lie side by side and are nearly as light as each other (contrast {}), so the chart is "
               "hard to read in grey. Make one lighter or darker.",
               fixed_number(contrast, 2))});
    }
}

}  // namespace evencount::proof
