#include <fmt/format.h>

#include "base/text.hpp"
#include "proof/checks.hpp"

namespace evencount::proof {
namespace {

using project::Band;
using project::LegendEntry;
using project::Project;

/// Contrast ratio below which two beads look alike in grey print: from memory.
constexpr double least_contrast = 1.2;

std::string pair_place(const LegendEntry& a, const LegendEntry& b) {
  return fmt::format("legend {} and {}", a.letter, b.letter);
}

/// Which pairs of legend entries (the lower position first) lie side by side in some chart.
class Neighbours {
 public:
  explicit Neighbours(const Project& project) : entries_(project.legend.size()) {
    pairs_.assign(entries_ * entries_, false);
    for (const Band& band : project.bands) add(band.chart);
  }
  [[nodiscard]] bool meet(std::size_t low, std::size_t high) const { return pairs_[low * entries_ + high]; }

 private:
  void add(const chart::Chart& chart) {
    for (int step = 0; step < chart.edge(); ++step)
      for (int column = 0; column < chart.columns(); ++column) {
        if (column + 1 < chart.columns()) add(chart.at({column, step}), chart.at({column + 1, step}));
        if (step + 1 < chart.edge()) add(chart.at({column, step}), chart.at({column, step + 1}));
      }
  }
  void add(chart::Bead a, chart::Bead b) {
    if (a < entries_ && b < entries_) pairs_[std::min(a, b) * entries_ + std::max(a, b)] = true;
  }

  std::size_t entries_;
  std::vector<bool> pairs_;
};

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
