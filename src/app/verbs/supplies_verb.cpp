#include <fmt/ostream.h>

#include <algorithm>
#include <cmath>

#include "app/files.hpp"
#include "app/project_file.hpp"
#include "app/verbs/stock_text.hpp"
#include "app/verbs/supplies_answer.hpp"
#include "base/text.hpp"
#include "project/json.hpp"

namespace evencount::app {
namespace {

/// "18.50" as 1850. Errors: bad_text.
Result<std::int64_t> hundredths(const std::string& text, std::string_view where) {
  const auto number = parse_number(text);
  constexpr double most = 1e9, finest = 1e-6;
  if (!number || !(*number >= 0 && *number <= most) ||
      std::abs(100 * *number - std::round(100 * *number)) > finest)
    return Problem{ProblemCode::bad_text, std::string(where), quote(text),
                   "a number with at most two decimals, such as 18.50"};
  return std::llround(100 * *number);
}

/// The designer's own rule on the cost, from the options.
Result<Done> read_rule(const SuppliesArguments& arguments, materials::CostSettings& settings) {
  if (arguments.wholesale.empty() && arguments.retail.empty()) return Done{};
  materials::PriceRule rule;
  rule.name = "own rule";
  for (const auto& [text, where, factor] : {std::tuple(&arguments.wholesale, "--wholesale", &rule.wholesale),
                                            std::tuple(&arguments.retail, "--retail", &rule.retail)}) {
    if (text->empty()) continue;
    const auto times = hundredths(*text, where);
    if (!times) return times.problem();
    *factor = materials::Factor{*times};
  }
  settings.own_rule = std::move(rule);
  return Done{};
}

/// The usual rates, then the projects' own, then those of a file, then the options'.
Result<materials::CostSettings> read_settings(const SuppliesArguments& arguments,
                                              project::Collection projects) {
  materials::CostSettings settings = project::settings_of(projects);
  if (!arguments.costing.empty()) {
    const auto text = read_file(arguments.costing);
    if (!text) return text.problem();
    const auto costing = project::parse_costing(*text);
    if (!costing) return costing.problem().within(arguments.costing);
    settings = costing->settings;
  }
  if (!arguments.hour.empty()) {
    const auto hour = hundredths(arguments.hour, "--hour");
    if (!hour) return hour.problem();
    settings.hour_minor = *hour;
  }
  if (arguments.beads_a_day) settings.beads_a_day = *arguments.beads_a_day;
  if (auto done = read_rule(arguments, settings); !done) return done.problem();
  if (auto fine = materials::check(settings); !fine) return fine.problem();
  return settings;
}

Result<SuppliesAnswer> work_out(const SuppliesArguments& arguments, project::Stock stock) {
  SuppliesAnswer answer;
  for (const std::string& path : arguments.projects) {
    auto project = load_project(path);
    if (!project) return project.problem();
    answer.projects.push_back(std::move(*project));
  }
  auto settings = read_settings(arguments, answer.projects);
  if (!settings) return settings.problem();
  answer.settings = std::move(*settings);
  auto worked_out = work_out_supplies(std::move(answer), arguments, stock);
  if (!worked_out && arguments.projects.size() == 1) return worked_out.problem().within(arguments.projects.front());
  return worked_out;
}

/// What of the list is on hand: what a run of these kits would use.
std::vector<stockroom::RunItem> used_from_stock(const project::CollectionSupplies& list) {
  std::vector<stockroom::RunItem> items;
  const auto add = [&](const std::string& code, const materials::Purchase& purchase) {
    const std::int64_t used = std::min(purchase.needed, purchase.on_hand);
    if (!code.empty() && used > 0) items.push_back({code, used});
  };
  for (const project::BeadLine& bead : list.beads) add(bead.code, bead.purchase);
  for (const auto* goods : {&list.forms, &list.threads, &list.findings})
    for (const project::GoodsLine& line : *goods)
      if (line.purchase) add(line.code, *line.purchase);
  return items;
}

/// Promises what is on hand to the run. Errors: those of Stockroom::reserve; bad_usage (a stock that isn't a stockroom).
Result<Done> reserve(const SuppliesArguments& arguments, const SuppliesAnswer& answer, const Console& console) {
  if (arguments.reserve.empty()) return Done{};
  const auto at = time_argument("");
  if (!at) return at.problem();
  auto stock = open_stock(arguments.stock.file);
  if (!stock) return stock.problem();
  const auto run = stock->reserve(arguments.reserve, used_from_stock(answer.list), *at,
                                  fmt::format("{} kits", answer.list.kits));
  if (!run) return run.problem();
  fmt::print(console.err, "reserved for {}: {} items\n", run->name, run->items.size());
  return Done{};
}

}  // namespace

int supplies_from_stock(const SuppliesArguments& arguments, project::Stock stock, const Console& console) {
  if (!arguments.reserve.empty() && !arguments.stock.given())
    return console.fail({ProblemCode::bad_usage, "reserve", "no stock", "--my-stock, or --stock with a stockroom's file"});
  const auto answer = work_out(arguments, stock);
  if (!answer) return console.fail(answer.problem());
  if (const auto done = reserve(arguments, *answer, console); !done) return console.fail(done.problem());
  if (arguments.json)
    print(console.out, supplies_json(*answer));
  else
    print_supplies(*answer, console.out);
  return exit_done;
}

int supplies_verb(const SuppliesArguments& arguments, const Console& console) {
  const auto stock = stock_items(arguments.stock, "");
  if (!stock) return console.fail(stock.problem());
  return supplies_from_stock(arguments, *stock, console);
}

}  // namespace evencount::app
