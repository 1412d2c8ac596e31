#include "app/verbs/supplies_answer.hpp"

namespace evencount::app {
namespace {

Result<Done> work_out_cost(const SuppliesArguments& arguments, SuppliesAnswer& answer) {
  if (!arguments.price) return Done{};
  const auto use = project::piece_use(answer.projects, answer.list);
  if (!use) return use.problem();
  auto sheet = materials::cost_sheet(*use, answer.settings);
  if (!sheet) return sheet.problem();
  answer.cost = std::move(*sheet);
  return Done{};
}

Result<Done> pick_kits(const SuppliesArguments& arguments, SuppliesAnswer& answer) {
  if (!arguments.pick) return Done{};
  for (const project::Project& project : answer.projects) {
    auto kit = project::kit_of(project, arguments.size);
    if (!kit) return kit.problem();
    answer.kits.push_back(std::move(*kit));
  }
  return Done{};
}

Result<Done> try_swaps(const SuppliesArguments& arguments, const project::SupplyRequest& request,
                       SuppliesAnswer& answer) {
  for (const std::string& text : arguments.swaps) {
    const auto swap = project::parse_swap(text);
    if (!swap) return swap.problem();
    auto savings = project::swap_savings(answer.projects, request, answer.settings, *swap);
    if (!savings) return savings.problem();
    answer.swaps.push_back({*swap, std::move(*savings)});
  }
  return Done{};
}

}  // namespace

Result<SuppliesAnswer> work_out_supplies(SuppliesAnswer answer, const SuppliesArguments& arguments,
                                         project::Stock stock) {
  const project::SupplyRequest request{arguments.kits, stock, answer.settings.currency, arguments.pick,
                                       arguments.size};
  auto list = project::collection_supplies(answer.projects, request);
  if (!list) return list.problem();
  answer.list = std::move(*list);
  for (std::size_t i = 0; i < answer.list.beads.size() && !stock.empty(); ++i) {
    const project::BeadLine& bead = answer.list.beads[i];
    if (bead.purchase.missing == 0) continue;
    if (auto found = project::substitutes(answer.projects, answer.list, bead, stock); !found.empty())
      answer.short_beads.push_back({i, std::move(found)});
  }
  if (auto done = work_out_cost(arguments, answer); !done) return done.problem();
  if (auto done = pick_kits(arguments, answer); !done) return done.problem();
  if (auto done = try_swaps(arguments, request, answer); !done) return done.problem();
  return answer;
}

}  // namespace evencount::app
