#include "page/fonts.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "page/output.hpp"
#include "page/sections.hpp"
#include "random_project.hpp"
#include "support/sanitized.hpp"

namespace evencount::page {
namespace {

using proof::Typeface;

std::string utf8(unsigned code) {  // of the basic plane, beyond U+07FF
  return {static_cast<char>(0xE0 | code >> 12), static_cast<char>(0x80 | (code >> 6 & 0x3F)), static_cast<char>(0x80 | (code & 0x3F))};
}

/// A character that one typeface has and the other has not.
std::string only_in(const proof::FirstUnshown& first_unshown, Typeface has, Typeface lacks) {
  for (unsigned code = 0x1E00; code < 0x2C00; ++code) {
    const std::string character = utf8(code);
    if (first_unshown(character, has).empty() && !first_unshown(character, lacks).empty()) return character;
  }
  return {};
}

/// A project with every text that is printed, each to be written by a function here.
struct Written {
  std::string where;
  std::function<void(project::Project&, const std::string&)> write;
  bool strung = false;
};

std::vector<Written> texts() {
  using project::Project;
  return {{"title", [](Project& project, const std::string& text) { project.title = text; }},
          {"subtitle", [](Project& project, const std::string& text) { project.subtitle = text; }},
          {"designer", [](Project& project, const std::string& text) { project.designer = text; }},
          {"summary", [](Project& project, const std::string& text) { project.summary = text; }},
          {"finished size", [](Project& project, const std::string& text) { project.finished_size = text; }},
          {"terms", [](Project& project, const std::string& text) { project.terms = text; }},
          {"legend A", [](Project& project, const std::string& text) { project.legend[0].name = text; }},
          {"band", [](Project& project, const std::string& text) { project.bands[0].name = text; }},
          {"note", [](Project& project, const std::string& text) { project.bands[0].note = text; }},
          {"form", [](Project& project, const std::string& text) { project.forms[0].name = text; }},
          {"findings", [](Project& project, const std::string& text) { project.findings.push_back({.name = text}); }},
          {"unit", [](Project& project, const std::string& text) { project.findings.push_back({.name = "cord", .unit = text}); }},
          {"tools", [](Project& project, const std::string& text) { project.tools.push_back(text); }},
          {"assembly", [](Project& project, const std::string& text) { project.assembly.push_back(text); }},
          {"thread", [](Project& project, const std::string& text) { project.thread.name = text; }},
          {"strand", [](Project& project, const std::string& text) {
             std::string& layout = project.strand->layout;
             layout.replace(layout.find("\"clasp\""), 7, "\"" + text + "\"");
           }, true},
          {"size", [](Project& project, const std::string& text) { project.strand->sizes[0].name = text; }, true}};
}

/// Whether the pages can be written, whatever the proof says.
bool printable(const project::Project& project) {
  const BookletOptions options;
  const auto subject = make_subject(project, options);
  const auto booklet = subject ? lay_out(*subject) : Result<Booklet>(subject.problem());
  return booklet.ok() && to_pdf(booklet->pages, booklet->info).ok();
}

project::Project project_with_everything() {
  constexpr int few_beads = 700;
  for (std::uint32_t seed = 1;; ++seed) {
    project::Project project = varied_project(seed);
    int beads = 0;
    for (const project::Band& band : project.bands) beads += band.chart.edge() * band.chart.columns();
    if (project.strand && !project.forms.empty() && beads < few_beads) return project;
  }
}

TEST(Fonts, AProofRefusesExactlyWhatCannotBePrinted) {
  const auto first_unshown = page::first_unshown();
  ASSERT_TRUE(first_unshown.ok());
  const std::string in_none = "\U0001F319", only_serif = only_in(*first_unshown, Typeface::serif, Typeface::sans),
                    only_sans = only_in(*first_unshown, Typeface::sans, Typeface::serif),
                    upright = only_in(*first_unshown, Typeface::serif, Typeface::italic);
  const project::Project base = project_with_everything();
  ASSERT_TRUE(printable(base));
  for (const Written& text : texts())
    for (const std::string& character : {in_none, only_serif, only_sans, upright}) {
      if (character.empty()) continue;  // one typeface may have all that the other has
      if (sanitized && character != in_none && character != only_serif) continue;
      project::Project project = base;
      if (!text.strung) project.strand.reset();  // which takes the longest
      text.write(project, "a " + character);
      const auto findings = proof::proof(project, {.first_unshown = *first_unshown});
      EXPECT_EQ(proof::has_errors(findings), !printable(project)) << text.where << " with " << character;
      if (!proof::has_errors(findings)) continue;
      const auto printed = print_booklet(project, {});
      EXPECT_EQ(printed.problem().code, ProblemCode::proof_failed) << text.where;
      EXPECT_NE(message(printed.problem()).find(character), std::string::npos) << text.where;
    }
}

TEST(Fonts, WhatCanBeShownAloneButNotTogetherIsNamed) {
  const auto first_unshown = page::first_unshown();
  for (const Typeface typeface : proof::typefaces)
    for (unsigned mark = 0x0300; mark < 0x0370; ++mark) {  // combining marks, on a letter that has few of them ready-made
      const std::string marked = std::string("q") + static_cast<char>(0xC0 | mark >> 6) + static_cast<char>(0x80 | (mark & 0x3F));
      const std::string named = (*first_unshown)("Moonwatch " + marked + " and tides", typeface);
      EXPECT_TRUE(named.empty() || marked.find(named) != std::string::npos) << marked << ": " << named;
    }
}

TEST(Fonts, TheFirstThatIsMissingIsNamed) {
  const auto first_unshown = page::first_unshown();
  for (const Typeface typeface : proof::typefaces) {
    EXPECT_EQ((*first_unshown)("Łódź, 月 and Ÿ", typeface), "");
    EXPECT_EQ((*first_unshown)("", typeface), "");
    EXPECT_EQ((*first_unshown)("one 🌙 and ⚽", typeface), "🌙");
  }
}

}  // namespace
}  // namespace evencount::page
