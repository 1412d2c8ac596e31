#include <fmt/ostream.h>

#include "app/json_text.hpp"
#include "app/project_file.hpp"
#include "app/verbs.hpp"
#include "base/text.hpp"
#include "project/supply_list.hpp"

namespace evencount::app {
namespace {

Json to_json(const Money& money) {
  return {{"minor", money.minor}, {"currency", money.currency}};
}

Json to_json(const std::vector<project::CountedSupply>& supplies) {
  Json list = Json::array();
  for (const project::CountedSupply& supply : supplies)
    list.push_back({{"name", supply.name}, {"count", rounded(supply.count, 3)}, {"unit", supply.unit}});
  return list;
}

Json to_json(const project::SupplyList& supplies) {
  Json beads = Json::array();
  for (const materials::BeadSupply& bead : supplies.beads.beads) {
    beads.push_back({{"letter", bead.letter},
                     {"name", bead.name},
                     {"size", bead.size},
                     {"count", bead.count},
                     {"grams", rounded(bead.mass.grams(), 1)},
                     {"packs", bead.packs ? Json(*bead.packs) : Json(nullptr)},
                     {"cost", bead.cost ? to_json(*bead.cost) : Json(nullptr)}});
  }
  return {{"kits", supplies.kits},
          {"beads", std::move(beads)},
          {"forms", to_json(supplies.forms)},
          {"thread", {{"name", supplies.thread_name}, {"cut_mm", rounded(supplies.thread.mm(), 1)}}},
          {"findings", to_json(supplies.findings)},
          {"tools", supplies.tools},
          {"total", supplies.beads.total ? to_json(*supplies.beads.total) : Json(nullptr)}};
}

void print_counted(const std::vector<project::CountedSupply>& supplies, std::ostream& out) {
  for (const project::CountedSupply& supply : supplies)
    fmt::print(out, "  {} {}{}{}\n", plain_number(supply.count), supply.unit, supply.unit.empty() ? "" : " ",
               supply.name);
}

void print_list(const project::Project& project, const project::SupplyList& supplies, std::ostream& out) {
  fmt::print(out, "{}: supplies for {}\n\nBeads (grams with {} % for culling and loss)\n", project.title,
             supplies.kits == 1 ? "one piece" : fmt::format("{} kits", supplies.kits),
             plain_number(100 * project.allowance));
  for (const materials::BeadSupply& bead : supplies.beads.beads) {
    fmt::print(out, "  {:<3} {:<28} {:<22} {:>6}  {:>6} g", bead.letter, bead.name, bead.size, bead.count,
               fixed_number(bead.mass.grams(), 1));
    if (bead.packs) fmt::print(out, "  {:>3} {}", *bead.packs, *bead.packs == 1 ? "pack" : "packs");
    if (bead.cost) fmt::print(out, "  {}", to_text(*bead.cost));
    fmt::print(out, "\n");
  }
  if (!supplies.forms.empty()) fmt::print(out, "\nForms\n");
  print_counted(supplies.forms, out);
  fmt::print(out, "\nThread\n  {} m of {}\n", fixed_number(supplies.thread.mm() / 1000, 2),
             supplies.thread_name);
  if (!supplies.findings.empty()) fmt::print(out, "\nFindings and the rest\n");
  print_counted(supplies.findings, out);
  if (!supplies.tools.empty()) fmt::print(out, "\nTools\n");
  for (const std::string& tool : supplies.tools) fmt::print(out, "  {}\n", tool);
  if (supplies.beads.total) fmt::print(out, "\nBeads in all: {}\n", to_text(*supplies.beads.total));
}

}  // namespace

int supplies_verb(const SuppliesArguments& arguments, const Console& console) {
  const auto project = load_project(arguments.project);
  if (!project) return console.fail(project.problem());
  const auto supplies = project::supply_list(*project, arguments.kits);
  if (!supplies) return console.fail(supplies.problem().within(arguments.project));
  if (arguments.json)
    print(console.out, to_json(*supplies));
  else
    print_list(*project, *supplies, console.out);
  return exit_done;
}

}  // namespace evencount::app
