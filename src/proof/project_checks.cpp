#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "proof/checks.hpp"
#include "weave/technique.hpp"

namespace evencount::proof {
namespace {

using project::Band;
using project::Project;

/// The first bead of a chart that the legend hasn't.
std::optional<chart::Cell> cell_beyond_legend(const Project& project, const Band& band) {
  for (int step = 0; step < band.chart.edge(); ++step)
    for (int column = 0; column < band.chart.columns(); ++column) {
      const chart::Bead bead = band.chart.at({column, step});
      if (bead != chart::no_bead && bead >= project.legend.size()) return chart::Cell{column, step};
    }
  return std::nullopt;
}

}  // namespace

std::string band_place(const Band& band) {
  // A place is one line, whatever the name holds.
  std::string place = "band " + band.name;
  std::replace_if(
      place.begin(), place.end(), [](char c) { return c == '\n' || c == '\t'; }, ' ');
  return place;
}

bool is_sound(const Project& project, const Band& band) {
  const bool entries_sound =
      std::all_of(project.legend.begin(), project.legend.end(),
                  [&](const auto& entry) { return project::find_bead(project, entry.bead) != nullptr; });
  return entries_sound && weave::find_technique(band.technique).ok() &&
         project::find_bead(project, band.bead) && (!band.form || project::find_form(project, *band.form)) &&
         !cell_beyond_legend(project, band);
}

void check_title(const Project& project, Findings& findings) {
  if (trim(project.title).empty())
    findings.push_back(
        {Severity::warning, "title", "project", "The design has no title. Give it the name to be printed."});
}

void check_bands(const Project& project, Findings& findings) {
  if (project.bands.empty())
    findings.push_back(
        {Severity::error, "bands", "project", "There is no band, so there is nothing to make. Add one."});
  for (std::size_t i = 0; i < project.bands.size(); ++i) {
    const Band& band = project.bands[i];
    if (trim(band.name).empty())
      findings.push_back({Severity::error, "bands", fmt::format("band {} in order", i + 1),
                          "It has no name, so the words can't say which band they are for. Name it."});
    const auto first = std::find_if(project.bands.begin(), project.bands.begin() + i,
                                    [&](const Band& other) { return other.name == band.name; });
    if (first != project.bands.begin() + i && !trim(band.name).empty())
      findings.push_back(
          {Severity::error, "bands", band_place(band),
           "Two bands have this name. Rename one of them, so that the words say which is meant."});
  }
}

void check_references(const Project& project, Findings& findings) {
  const auto add = [&](std::string where, std::string message) {
    findings.push_back({Severity::error, "references", std::move(where), std::move(message)});
  };
  for (const project::LegendEntry& entry : project.legend)
    if (!project::find_bead(project, entry.bead))
      add("legend " + entry.letter,
          fmt::format("Its bead size {} is not among the project's beads. Add it, or choose another.",
                      quote(entry.bead)));
  for (const Band& band : project.bands) {
    const std::string where = band_place(band);
    if (const auto technique = weave::find_technique(band.technique); !technique)
      add(where, fmt::format("Its technique {} is unknown. Choose {}.", technique.problem().found,
                             technique.problem().expected));
    if (!project::find_bead(project, band.bead))
      add(where, fmt::format("Its bead size {} is not among the project's beads. Add it, or choose another.",
                             quote(band.bead)));
    if (band.form && !project::find_form(project, *band.form))
      add(where, fmt::format("Its form {} is not among the project's forms. Add it, or choose another.",
                             quote(*band.form)));
    if (const auto cell = cell_beyond_legend(project, band))
      add(fmt::format("{}, column {}, step {}", where, cell->column, cell->step),
          "This cell takes a bead that the legend hasn't. Add it to the legend, or recolour the cell.");
  }
}

}  // namespace evencount::proof
