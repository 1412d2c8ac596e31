#include "app/verbs/string_report.hpp"

#include <fmt/ostream.h>

#include <algorithm>

#include "app/json_text.hpp"
#include "base/text.hpp"

namespace evencount::app {
namespace {

using strand::Counts;
using project::StrungSize;
using project::StrungSizes;
using strand::StrandFit;
using strand::Strung;

Json mm(Length length) {
  return rounded(length.mm(), 3);
}

std::vector<int> counts_in(const Strung& strung, const Counts& counts, std::size_t group) {
  std::vector<int> found;
  for (std::size_t i = 0; i < counts.size(); ++i)
    if (static_cast<std::size_t>(strung.runs[i].group) == group) found.push_back(counts[i]);
  return found;
}

/// "21" for all alike, else "21 22 22 21".
std::string counts_text(const std::vector<int>& counts) {
  if (std::all_of(counts.begin(), counts.end(), [&](int c) { return c == counts.front(); }))
    return fmt::format("{}", counts.front());
  std::string text;
  for (const int count : counts) text += (text.empty() ? "" : " ") + fmt::format("{}", count);
  return text;
}

// ---- JSON

Json choice_json(const Strung& strung, const strand::Choice& choice) {
  Json runs = Json::array();
  for (std::size_t g = 0; g < strung.groups.size(); ++g)
    runs.push_back({{"name", strung.groups[g].name}, {"counts", counts_in(strung, choice.counts, g)}});
  return {{"length_mm", mm(choice.length)}, {"error_mm", mm(choice.error)}, {"runs", std::move(runs)}};
}

Json cords_json(const std::vector<strand::CutCord>& cords) {
  Json list = Json::array();
  for (const strand::CutCord& cord : cords) {
    Json allowances = Json::array();
    for (const strand::Allowance& allowance : cord.length.allowances)
      allowances.push_back({{"what", allowance.what},
                            {"count", allowance.count},
                            {"each_mm", mm(allowance.each)},
                            {"source", allowance.source}});
    list.push_back({{"cord", cord.cord},
                    {"strung_mm", mm(cord.length.strung)},
                    {"cut_mm", mm(cord.length.cut)},
                    {"allowances", std::move(allowances)}});
  }
  return list;
}

Json curve_json(const Strung& strung, const strand::TwoCords& curve) {
  Json extras = Json::array();
  for (const strand::OuterExtra& extra : curve.extras)
    extras.push_back({{"after_piece", extra.after + 1},
                      {"bead", strung.elements[static_cast<std::size_t>(extra.element)].id},
                      {"count", extra.count}});
  Json faces = Json::array();
  for (const strand::Drape& drape : curve.faces)
    faces.push_back({{"piece", drape.piece + 1}, {"hanging", strand::hanging_name(drape.hanging)}});
  return {{"outer_longer_mm", mm(curve.needed)},
          {"extras_mm", mm(curve.given)},
          {"extras", std::move(extras)},
          {"lean_without", curve.lean_without ? Json(rounded(*curve.lean_without, 1)) : Json(nullptr)},
          {"lean_with", curve.lean_with ? Json(rounded(*curve.lean_with, 1)) : Json(nullptr)},
          {"faces", std::move(faces)}};
}

Json size_json(const Strung& strung, const StrungSize& size) {
  const StrandFit& fit = size.fit;
  Json json = choice_json(strung, fit.best);
  Json changes = Json::array(), findings = Json::array(), strung_things = Json::array();
  for (const strand::Change& change : fit.changes)
    changes.push_back({{"remedy", strand::remedy_name(change.remedy)},
                       {"name", change.name},
                       {"count", change.count},
                       {"length_mm", mm(change.length)},
                       {"words", strand::describe(change)}});
  for (const strand::Finding& finding : size.findings)
    findings.push_back({{"code", strand::finding_name(finding.code)},
                        {"piece", finding.piece + 1},
                        {"where", finding.where},
                        {"found", finding.found},
                        {"expected", finding.expected},
                        {"mend", finding.mend}});
  const auto use = project::uses_of(strung, size);
  for (std::size_t i = 0; i < use.size(); ++i)
    if (use[i] > 0)
      strung_things.push_back(
          {{"id", strung.elements[i].id}, {"name", strung.elements[i].name}, {"count", use[i]}});
  Json result{{"size", fit.wearer.name},
              {"worn", strand::worn_name(fit.wearer.worn)},
              {"measure_mm", mm(fit.wearer.measure)},
              {"ease_mm", mm(fit.wearer.ease)},
              {"thickness_mm", mm(fit.thickness)},
              {"wanted_mm", mm(fit.wanted)},
              {"tolerance_mm", mm(fit.tolerance)},
              {"closes", fit.closes}};
  result.update(json);
  result["shorter"] = fit.shorter ? choice_json(strung, *fit.shorter) : Json(nullptr);
  result["longer"] = fit.longer ? choice_json(strung, *fit.longer) : Json(nullptr);
  result["changes"] = std::move(changes);
  result["girth_by_formula_mm"] = mm(fit.girth_by_formula);
  result["girth_by_chain_mm"] = fit.girth_by_chain ? mm(*fit.girth_by_chain) : Json(nullptr);
  result["worn_up_to_mm"] = mm(fit.worn_up_to);
  result["strung"] = std::move(strung_things);
  result["cords"] = cords_json(size.cords);
  result["curve"] = curve_json(strung, size.curve);
  result["findings"] = std::move(findings);
  return result;
}

// ---- for people

std::string shown(Length length, int decimals = 1) {
  return fixed_number(length.mm(), decimals) + " mm";
}

void print_table(const StrungSizes& report, std::ostream& out) {
  std::size_t widest = 6;
  for (const StrungSize& size : report.sizes) widest = std::max(widest, size.fit.wearer.name.size());
  fmt::print(out, "  {:<{}}  {:>9}  {:>9}  {:>8}  {:>8}", "size", widest, "wanted", "length", "error",
             "closes");
  for (const strand::Group& group : report.strung.groups) fmt::print(out, "  {:>8}", group.name);
  fmt::print(out, "\n");
  for (const StrungSize& size : report.sizes) {
    const StrandFit& fit = size.fit;
    fmt::print(out, "  {:<{}}  {:>9}  {:>9}  {:>+8.2f}  {:>8}", fit.wearer.name, widest, shown(fit.wanted),
               shown(fit.best.length), fit.best.error.mm(), fit.closes ? "yes" : "no");
    for (std::size_t g = 0; g < report.strung.groups.size(); ++g)
      fmt::print(out, "  {:>8}", counts_text(counts_in(report.strung, fit.best.counts, g)));
    fmt::print(out, "\n");
  }
}

void print_misfit(const Strung& strung, const StrandFit& fit, std::ostream& out) {
  if (fit.closes) return;
  fmt::print(out, "\n{} does not close: it is to be within {} of {}\n", fit.wearer.name,
             shown(fit.tolerance, 2), shown(fit.wanted));
  const auto nearest = [&](const char* what, const std::optional<strand::Choice>& choice) {
    if (!choice) return fmt::print(out, "  nothing is {}\n", what);
    fmt::print(out, "  the nearest that is {}: {}", what, shown(choice->length, 2));
    for (std::size_t g = 0; g < strung.groups.size(); ++g)
      fmt::print(out, ", {} {}", strung.groups[g].name, counts_text(counts_in(strung, choice->counts, g)));
    fmt::print(out, "\n");
  };
  nearest("shorter", fit.shorter);
  nearest("longer", fit.longer);
  for (const strand::Change& change : fit.changes)
    fmt::print(out, "  to mend it: {}\n", strand::describe(change));
}

void print_details(const StrungSizes& report, const StrungSize& size, std::ostream& out) {
  const StrandFit& fit = size.fit;
  if (fit.wearer.worn != strand::Worn::length) {
    fmt::print(out, "\n{} lies round {} by the formula", fit.wearer.name, shown(fit.girth_by_formula));
    if (fit.girth_by_chain)
      fmt::print(out, ", round {} as a chain of rigid parts: {} of ease is left", shown(*fit.girth_by_chain),
                 shown(*fit.girth_by_chain - fit.wearer.measure));
    fmt::print(out, "\n");
  }
  if (fit.worn_up_to > fit.best.length)
    fmt::print(out, "\nWorn up to {} long with its chain let out\n", shown(fit.worn_up_to));
  fmt::print(out, "\nStrung in size {}\n", fit.wearer.name);
  const auto use = project::uses_of(report.strung, size);
  for (std::size_t i = 0; i < use.size(); ++i)
    if (use[i] > 0) fmt::print(out, "  {:>5}  {}\n", use[i], report.strung.elements[i].name);
  fmt::print(out, "\nCord: {} of {} thickness\n", strand::cord_kind_name(report.strung.cord.kind),
             plain_number(report.strung.cord.diameter.mm()) + " mm");
  for (const strand::CutCord& cord : size.cords)
    fmt::print(out, "  {}: {} strung, cut {}\n",
               cord.cord == 1                 ? "one length"
               : size.curve.needed > Length{} ? "the outer"
                                              : "another",
               shown(cord.length.strung), shown(cord.length.cut));
  if (report.strung.cords == 2 && size.curve.needed > Length{}) {
    fmt::print(out, "\nThe outer cord runs {} further round; {} of beads make that up\n",
               shown(size.curve.needed), shown(size.curve.given));
    for (const strand::OuterExtra& extra : size.curve.extras)
      fmt::print(out, "  {} more {} on the outer cord after piece {}\n", extra.count,
                 report.strung.elements[static_cast<std::size_t>(extra.element)].name, extra.after + 1);
    fmt::print(out, "  faces stand at {:.0f} degrees, {:.0f} without\n", *size.curve.lean_with,
               *size.curve.lean_without);
  }
}

void print_people(const std::string& title, const StrungSizes& report, std::ostream& out) {
  fmt::print(out, "{}: on {} of {} {}, {} at its thickest\n\n", title,
             report.strung.cords == 1 ? "one cord" : "two cords",
             plain_number(report.strung.cord.diameter.mm()) + " mm",
             strand::cord_kind_name(report.strung.cord.kind), shown(report.sizes.front().fit.thickness));
  print_table(report, out);
  for (const StrungSize& size : report.sizes) print_misfit(report.strung, size.fit, out);
  print_details(report, report.sizes[report.sizes.size() / 2], out);
  std::vector<std::string> said;
  for (const StrungSize& size : report.sizes)
    for (const strand::Finding& finding : size.findings) {
      std::string text = strand::message(finding);
      if (std::find(said.begin(), said.end(), text) == said.end()) said.push_back(std::move(text));
    }
  if (said.empty()) fmt::print(out, "\nEverything holds: bands, cords and ends\n");
  if (!said.empty()) fmt::print(out, "\nFound\n");
  for (const std::string& text : said) fmt::print(out, "  {}\n", text);
}

}  // namespace

Json string_json(const std::string& title, const StrungSizes& report) {
  Json sizes = Json::array();
  for (const StrungSize& size : report.sizes) sizes.push_back(size_json(report.strung, size));
  return {{"title", title},
          {"cords", report.strung.cords},
          {"cord",
           {{"kind", strand::cord_kind_name(report.strung.cord.kind)},
            {"diameter_mm", mm(report.strung.cord.diameter)}}},
          {"lean", report.lean},
          {"sizes", std::move(sizes)}};
}

void print_string(const std::string& title, const StrungSizes& report, bool json, const Console& console) {
  if (json)
    print(console.out, string_json(title, report));
  else
    print_people(title, report, console.out);
}

}  // namespace evencount::app
