#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "base/text.hpp"
#include "project/supply_list.hpp"
#include "proof/checks.hpp"
#include "weave/replay.hpp"
#include "wording/reader.hpp"
#include "wording/words.hpp"

namespace evencount::proof {
namespace {

using project::Band;
using project::Project;

/// For measuring a plan without asking whether its rows fit a length of thread.
constexpr weave::ThreadHabits endless_thread{millimetres(0), millimetres(1e12)};

/// Where in a band a problem of `project::plan_of` lies.
std::string place_within(const Band& band, const Problem& problem) {
  const std::string outer = "band " + band.name + ": ";
  return band_place(band) +
         (problem.where.starts_with(outer) ? ", " + problem.where.substr(outer.size()) : std::string());
}

/// What the reader makes of the words; nothing when it makes the chart.
std::optional<std::string> misreading(const weave::Plan& plan, const Band& band,
                                      const std::vector<std::string>& letters) {
  const std::string text = to_text(wording::write_words(plan, letters, band.name));
  const auto read = wording::read_words(
      text, {.legend = letters, .columns = band.chart.columns(), .rows = weave::row_count(plan)});
  if (!read) return message(read.problem());
  if (read->size() != 1) return fmt::format("they read as {} bands", read->size());
  if (read->front().chart != band.chart) return "they make another chart";
  return std::nullopt;
}

std::map<std::string, std::int64_t> count_cells(const Project& project) {
  std::map<std::string, std::int64_t> counts;
  for (const Band& band : project.bands)
    for (const chart::Bead bead : band.chart.cells())
      if (bead != chart::no_bead) counts[project.legend[bead].letter] += band.copies;
  return counts;
}

/// How many passes each legend entry's bead takes.
std::vector<int> capacities(const Project& project) {
  std::vector<int> capacity;
  for (const project::LegendEntry& entry : project.legend) {
    const Length hole = project::find_bead(project, entry.bead)->hole;
    capacity.push_back(bead::passes_that_fit(hole, project.thread.diameter, bead::needle_for(hole).diameter));
  }
  return capacity;
}

/// The cell with the least room left, and how many cells have none.
struct Tightest {
  chart::Cell cell;
  int passes = 0;
  int capacity = 0;
  int over = 0;
  int full = 0;
};

std::optional<Tightest> tightest_cell(const Band& band, const weave::ThreadUse& use,
                                      const std::vector<int>& capacity) {
  std::optional<Tightest> tightest;
  int over = 0, full = 0;
  for (int step = 0; step < band.chart.edge(); ++step)
    for (int column = 0; column < band.chart.columns(); ++column) {
      const chart::Bead bead = band.chart.at({column, step});
      if (bead == chart::no_bead) continue;
      const int passes = use.passes[static_cast<std::size_t>(step) * band.chart.columns() + column];
      over += passes > capacity[bead] ? 1 : 0;
      full += passes == capacity[bead] ? 1 : 0;
      if (!tightest || capacity[bead] - passes < tightest->capacity - tightest->passes)
        tightest = Tightest{{column, step}, passes, capacity[bead]};
    }
  if (tightest) {
    tightest->over = over;
    tightest->full = full;
  }
  return tightest;
}

}  // namespace

std::string sentence(const Problem& problem) {
  std::string text = problem.found;
  if (!problem.expected.empty()) text += (text.empty() ? "it needs " : "; it needs ") + problem.expected;
  return text;
}

std::optional<weave::Plan> plan_if_any(const Project& project, const Band& band) {
  if (!is_sound(project, band)) return std::nullopt;
  auto plan = project::plan_of(band);
  if (!plan) return std::nullopt;
  return std::move(*plan);
}

void check_plan(const Project& project, Findings& findings) {
  for (const Band& band : project.bands) {
    if (!is_sound(project, band)) continue;
    const auto plan = project::plan_of(band);
    if (!plan) {
      findings.push_back({Severity::error, "plan", place_within(band, plan.problem()),
                          fmt::format("It can't be stitched: {}.", sentence(plan.problem()))});
      continue;
    }
    const auto chart = weave::replay(*plan);
    if (!chart)
      findings.push_back(
          {Severity::error, "plan", fmt::format("{}, {}", band_place(band), chart.problem().where),
           fmt::format("The stitching plan does not work: {}. This is a fault of the program; report it.",
                       sentence(chart.problem()))});
    else if (*chart != band.chart)
      findings.push_back(
          {Severity::error, "plan", band_place(band),
           "Stitching the plan makes another chart. This is a fault of the program; report it."});
  }
}

void check_words(const Project& project, Findings& findings) {
  const std::vector<std::string> letters = project::letters_of(project);
  for (const Band& band : project.bands) {
    const auto plan = plan_if_any(project, band);
    if (!plan) continue;
    if (const auto wrong = misreading(*plan, band, letters))
      findings.push_back(
          {Severity::error, "words", band_place(band),
           fmt::format(
               "The written rows do not rebuild the chart: {}. Give every bead a letter of its own, A to Z, "
               "then AA and on, and the band a plain name.",
               *wrong)});
  }
}

void check_supplies(const Project& project, Findings& findings) {
  Project counted = project;
  std::erase_if(counted.bands, [&](const Band& band) { return !plan_if_any(project, band); });
  if (counted.bands.empty()) return;
  counted.thread_habits = endless_thread;
  counted.strand.reset();  // has a check of its own
  const auto list = project::supply_list(counted);
  if (!list) {
    findings.push_back({Severity::error, "supplies", list.problem().where,
                        fmt::format("The supplies can't be worked out: {}.", sentence(list.problem()))});
    return;
  }
  std::map<std::string, std::int64_t> listed;
  for (const materials::BeadSupply& bead : list->beads.beads) listed[bead.letter] += bead.count;
  const auto stitched = count_cells(counted);
  for (const project::LegendEntry& entry : project.legend) {
    const auto of = [&](const auto& counts) {
      const auto found = counts.find(entry.letter);
      return found == counts.end() ? std::int64_t{0} : found->second;
    };
    if (of(listed) != of(stitched))
      findings.push_back(
          {Severity::error, "supplies", "legend " + entry.letter,
           fmt::format(
               "The supply list has {} of it, the charts {}. This is a fault of the program; report it.",
               of(listed), of(stitched))});
  }
}

void check_thread(const Project& project, Findings& findings) {
  const weave::ThreadHabits& habits = project.thread_habits;
  if (!(habits.tail.mm() >= 0 && habits.working_length.mm() > 0 &&
        habits.working_length >= 4 * habits.tail)) {
    findings.push_back(
        {Severity::error, "thread", "thread",
         fmt::format(
             "A working length of {} mm leaves too little between tails of {} mm. Make it at least four "
             "tails, or leave shorter tails.",
             plain_number(habits.working_length.mm()), plain_number(habits.tail.mm()))});
    return;
  }
  for (const Band& band : project.bands) {
    const auto plan = plan_if_any(project, band);
    if (!plan) continue;
    const auto use = weave::thread_use(*plan, *project::find_bead(project, band.bead),
                                       project::gauge_of(project, band), project.thread, habits);
    if (!use)
      findings.push_back({Severity::error, "thread", band_place(band),
                          fmt::format("A row is longer than a working length of {} mm allows. Work with {}.",
                                      plain_number(habits.working_length.mm()), use.problem().expected)});
  }
}

void check_passes(const Project& project, Findings& findings) {
  for (const Band& band : project.bands) {
    const auto plan = plan_if_any(project, band);
    if (!plan) continue;
    const auto use = weave::thread_use(*plan, *project::find_bead(project, band.bead),
                                       project::gauge_of(project, band), project.thread, endless_thread);
    if (!use) continue;
    const auto tightest = tightest_cell(band, *use, capacities(project));
    if (!tightest || tightest->passes < tightest->capacity) continue;
    const bool over = tightest->passes > tightest->capacity;
    findings.push_back(
        {over ? Severity::error : Severity::warning, "passes",
         fmt::format("{}, column {}, step {}", band_place(band), tightest->cell.column, tightest->cell.step),
         fmt::format("The thread goes through this bead {} times and its hole takes {} ({} such beads). {}",
                     tightest->passes, tightest->capacity, over ? tightest->over : tightest->full,
                     over ? "Use a thinner thread or beads with a wider hole."
                          : "Nothing is left for weaving in the tails there; a thinner thread would help.")});
  }
}

}  // namespace evencount::proof
