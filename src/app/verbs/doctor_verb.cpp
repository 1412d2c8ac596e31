#include <fmt/ostream.h>

#include <algorithm>

#include "app/doctor.hpp"
#include "app/json_text.hpp"
#include "app/verbs.hpp"

namespace evencount::app {
namespace {

std::ptrdiff_t count(const std::vector<Check>& checks, Health health) {
  return std::count_if(checks.begin(), checks.end(), [health](const Check& check) { return check.health == health; });
}

Json json_of(const std::vector<Check>& checks) {
  Json list = Json::array();
  for (const Check& check : checks)
    list.push_back({{"check", check.id}, {"state", health_name(check.health)}, {"found", check.found}, {"remedy", check.remedy}});
  return {{"faults", count(checks, Health::fault)}, {"notes", count(checks, Health::note)}, {"checks", std::move(list)}};
}

}  // namespace

int doctor_verb(const DoctorArguments& arguments, const Console& console) {
  Surroundings here = this_machine();
  if (!arguments.projects.empty()) here.projects = arguments.projects;
  if (!arguments.page_files.empty()) here.page_folder = arguments.page_files;
  const std::vector<Check> checks = examine(here);
  const auto faults = count(checks, Health::fault);
  if (arguments.json) {
    print(console.out, json_of(checks));
  } else {
    for (const Check& check : checks) {
      fmt::print(console.out, "{:<6} {}\n", health_name(check.health), check.found);
      if (!check.remedy.empty()) fmt::print(console.out, "       {}\n", check.remedy);
    }
    fmt::print(console.out, "{}\n", faults == 0 ? "Nothing is wrong with this machine." : faults == 1 ? "One fault." : fmt::format("{} faults.", faults));
  }
  return faults == 0 ? exit_done : exit_findings;
}

}  // namespace evencount::app
