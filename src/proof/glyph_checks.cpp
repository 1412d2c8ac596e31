#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "project/supply_list.hpp"
#include "proof/checks.hpp"

namespace evencount::proof {
namespace {

/// A text that is printed, and in what.
struct PrintedText {
  std::string where, text;
  std::vector<Typeface> in;
};

std::vector<PrintedText> printed_texts(const project::Project& project) {
  const std::vector<Typeface> prose{Typeface::serif}, aside{Typeface::italic}, table{Typeface::sans}, name{Typeface::serif, Typeface::sans};
  const bool signs = !trim(project.terms).empty();  // the terms, in italics
  std::vector<PrintedText> texts{{"title", project.title, {typefaces.begin(), typefaces.end()}},
                                 {"subtitle", project.subtitle, aside},
                                 {"designer", project.designer, signs ? std::vector{Typeface::italic, Typeface::sans} : table},
                                 {"summary", project.summary, prose},
                                 {"finished size", project.finished_size, prose},
                                 {"terms", project.terms, prose}};
  for (const auto& entry : project.legend) texts.push_back({"legend " + entry.letter, entry.name + entry.letter, table});
  for (const auto& band : project.bands) {
    texts.push_back({band_place(band), band.name, {typefaces.begin(), typefaces.end()}});
    texts.push_back({band_place(band) + ", note", band.note, aside});
  }
  for (const auto& form : project.forms) texts.push_back({"form " + form.id, form.name, name});
  for (const auto& finding : project.findings) texts.push_back({"findings", finding.name + finding.unit, prose});
  for (const auto& tool : project.tools) texts.push_back({"tools", tool, prose});
  for (std::size_t i = 0; i < project.assembly.size(); ++i)
    texts.push_back({fmt::format("assembly, step {}", i + 1), project.assembly[i], prose});
  texts.push_back({"thread", project.thread.name, prose});
  if (!project.strand) return texts;
  // The names of what is strung stand in a layout; what is wrong with that is for another check to say.
  if (const auto supplies = project::supply_list(project))
    for (const auto& finding : supplies->findings) texts.push_back({"strand", finding.name, prose});
  for (const auto& size : project.strand->sizes) texts.push_back({"size " + size.name, size.name, name});
  return texts;
}

}  // namespace

void check_glyphs(const Subject& subject, Findings& findings) {
  const FirstUnshown& first_unshown = subject.beside.first_unshown;
  if (!first_unshown) return;
  const auto texts = printed_texts(subject.project);
  // Nearly always all is well, which one question for each typeface tells.
  const bool all_shown = std::all_of(typefaces.begin(), typefaces.end(), [&](Typeface typeface) {
    std::string all;
    for (const PrintedText& text : texts)
      if (std::find(text.in.begin(), text.in.end(), typeface) != text.in.end()) all += text.text + "\n";
    return first_unshown(all, typeface).empty();
  });
  if (all_shown) return;
  for (const PrintedText& text : texts) {
    std::string unshown;
    for (const Typeface typeface : text.in)
      if (unshown.empty()) unshown = first_unshown(text.text, typeface);
    if (!unshown.empty())
      findings.push_back({Severity::error, "glyphs", text.where,
                          fmt::format("The booklet's fonts have no {} ({}) and would print a box. Write it another way.", unshown,
                                      code_point_name(unshown))});
  }
}

}  // namespace evencount::proof
