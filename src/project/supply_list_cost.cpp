#include "project/supply_list_cost.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "weave/technique.hpp"

namespace evencount::project {
namespace {

using materials::PieceUse;

Result<Done> add_stitching(const Project& project, PieceUse& use) {
  for (const Band& band : project.bands) {
    const auto plan = plan_of(band);
    if (!plan) return plan.problem();
    std::int64_t beads = 0;
    for (const int count : weave::count_beads(*plan)) beads += count;
    use.bands += band.copies;
    const auto known = std::find_if(use.stitching.begin(), use.stitching.end(), [&](const auto& stitching) {
      return stitching.technique == band.technique;
    });
    if (known != use.stitching.end()) {
      known->beads += beads * band.copies;
      continue;
    }
    const auto technique = weave::find_technique(band.technique);
    use.stitching.push_back(
        {band.technique, technique ? std::string(technique->name) : band.technique, beads * band.copies});
  }
  return Done{};
}

void add_goods(const std::vector<GoodsLine>& lines, int kits, PieceUse& use) {
  for (const GoodsLine& line : lines) {
    const double each = line.count / kits;
    const std::string how = line.unit == "mm" ? fmt::format("{} m", fixed_number(each / 1000, 2))
                                              : fmt::format("{}{}{}", plain_number(each),
                                                            line.unit.empty() ? "" : " ", line.unit);
    if (line.count == 0) continue;
    use.materials.push_back({line.name, how, line.purchase ? line.purchase->needed : 0,
                             line.purchase ? line.purchase->rate : std::nullopt});
  }
}

bool same_bead(const LegendEntry& a, const LegendEntry& b) {
  return a.bead == b.bead && a.name == b.name && a.finish == b.finish && a.colour == b.colour;
}

const LegendEntry* find_letter(Collection projects, std::string_view letter) {
  for (const Project& project : projects)
    for (const LegendEntry& entry : project.legend)
      if (entry.letter == letter) return &entry;
  return nullptr;
}

Result<LegendEntry> replacement(Collection projects, Stock stock, const Swap& swap, const LegendEntry& old) {
  if (const auto position = find_code(stock, swap.by)) {
    const materials::StockItem& item = stock[*position].item;
    const auto* bead = std::get_if<materials::BeadStock>(&item.what);
    if (!bead || bead->size != old.bead)
      return Problem{ProblemCode::bad_usage, "swap " + swap.letter,
                     fmt::format("{}, {}", quote(swap.by),
                                 bead ? bead->size : std::string(materials::kind_name(kind_of(item)))),
                     "a bead of the same size, " + old.bead};
    LegendEntry entry = old;
    entry.name = item.name;
    entry.finish = bead->finish;
    entry.colour = bead->colour.value_or(old.colour);
    entry.pack.reset();
    return entry;
  }
  const LegendEntry* other = find_letter(projects, swap.by);
  if (!other)
    return Problem{ProblemCode::unknown_name, "swap " + swap.letter, quote(swap.by),
                   "the code of an item of the stock, or another letter of the legend"};
  if (other->bead != old.bead)
    return Problem{ProblemCode::bad_usage, "swap " + swap.letter, fmt::format("{}, {}", swap.by, other->bead),
                   "a bead of the same size, " + old.bead};
  return *other;
}

/// The lines of two lists side by side, those that differ. Lines of one name are paired in order.
struct Line {
  std::string what;
  std::int64_t minor = 0;
};
std::vector<CostDifference> differences(const std::vector<Line>& before, std::vector<Line> after) {
  std::vector<CostDifference> found;
  for (const Line& line : before) {
    const auto same =
        std::find_if(after.begin(), after.end(), [&](const Line& other) { return other.what == line.what; });
    if (same == after.end()) {
      found.push_back({line.what, line.minor, {}});
      continue;
    }
    if (same->minor != line.minor) found.push_back({line.what, line.minor, same->minor});
    after.erase(same);
  }
  for (const Line& line : after) found.push_back({line.what, {}, line.minor});
  return found;
}

std::int64_t sum_saved(const std::vector<CostDifference>& lines) {
  std::int64_t sum = 0;
  for (const CostDifference& line : lines) sum += line.saved();
  return sum;
}

std::vector<Line> lines_bought(const CollectionSupplies& list, const std::string& currency) {
  std::vector<Line> lines;
  for (const BeadLine& bead : list.beads)
    if (bead.purchase.cost && bead.purchase.cost->currency == currency)
      lines.push_back({describe(bead), bead.purchase.cost->minor});
  return lines;
}

/// The beads of one list that the other doesn't take as many of, where their price is unknown.
void add_unpriced(const CollectionSupplies& list, const CollectionSupplies& other,
                  const std::string& currency, std::vector<std::string>& unpriced) {
  for (const BeadLine& bead : list.beads) {
    const std::string what = describe(bead);
    const bool same = std::any_of(other.beads.begin(), other.beads.end(), [&](const BeadLine& line) {
      return line.count == bead.count && describe(line) == what;
    });
    const bool priced = bead.purchase.cost && bead.purchase.cost->currency == currency;
    if (!same && !priced && std::find(unpriced.begin(), unpriced.end(), what) == unpriced.end())
      unpriced.push_back(what);
  }
}

std::vector<Line> lines_of(const materials::CostSheet& sheet) {
  std::vector<Line> lines;
  for (const auto* part : {&sheet.materials, &sheet.labour, &sheet.overhead})
    for (const materials::CostLine& line : part->lines) lines.push_back({line.what, line.minor});
  return lines;
}

}  // namespace

Result<PieceUse> piece_use(Collection projects, const CollectionSupplies& list) {
  PieceUse use;
  use.kits = list.kits;
  use.pieces = static_cast<std::int64_t>(projects.size());
  for (const BeadLine& bead : list.beads)
    use.materials.push_back({describe(bead), fmt::format("{} beads", bead.count / list.kits),
                             bead.purchase.needed, bead.purchase.rate});
  for (const auto* lines : {&list.forms, &list.threads, &list.findings}) add_goods(*lines, list.kits, use);
  for (const Project& project : projects)
    if (auto added = add_stitching(project, use); !added) return added.problem();
  return use;
}

materials::CostSettings settings_of(Collection projects) {
  for (const Project& project : projects)
    if (project.costing) return project.costing->settings;
  return {};
}

Result<Swap> parse_swap(std::string_view text) {
  const auto sign = text.find('=');
  if (sign == std::string_view::npos || sign == 0 || sign + 1 == text.size())
    return Problem{ProblemCode::bad_text, "swap", quote(text), "LETTER=CODE, such as B=C-104"};
  return Swap{std::string(trim(text.substr(0, sign))), std::string(trim(text.substr(sign + 1)))};
}

Result<std::vector<Project>> swapped(Collection projects, Stock stock, const Swap& swap) {
  const LegendEntry* old = find_letter(projects, swap.letter);
  if (!old) return Problem{ProblemCode::unknown_name, "swap", quote(swap.letter), "a letter of the legend"};
  const auto by = replacement(projects, stock, swap, *old);
  if (!by) return by.problem();
  std::vector<Project> changed(projects.begin(), projects.end());
  for (Project& project : changed)
    for (LegendEntry& entry : project.legend) {
      if (entry.letter != swap.letter) continue;
      if (!same_bead(entry, *old))
        return Problem{ProblemCode::bad_usage, "swap " + swap.letter,
                       fmt::format("{} and {}", quote(old->name), quote(entry.name)),
                       "a letter that means one bead in all projects; give one project at a time"};
      entry.name = by->name;
      entry.finish = by->finish;
      entry.colour = by->colour;
      entry.pack = by->pack;
    }
  return changed;
}

Result<SwapSavings> swap_savings(Collection projects, const SupplyRequest& request,
                                 const materials::CostSettings& settings, const Swap& swap) {
  const auto after = swapped(projects, request.stock, swap);
  if (!after) return after.problem();
  struct Side {
    CollectionSupplies list;
    materials::CostSheet sheet;
  };
  const auto work_out = [&](Collection side) -> Result<Side> {
    auto list = collection_supplies(side, request);
    if (!list) return list.problem();
    const auto use = piece_use(side, *list);
    if (!use) return use.problem();
    auto sheet = materials::cost_sheet(*use, settings);
    if (!sheet) return sheet.problem();
    return Side{std::move(*list), std::move(*sheet)};
  };
  const auto now = work_out(projects);
  if (!now) return now.problem();
  const auto then = work_out(*after);
  if (!then) return then.problem();
  SwapSavings savings;
  savings.packs =
      differences(lines_bought(now->list, request.currency), lines_bought(then->list, request.currency));
  savings.kit = differences(lines_of(now->sheet), lines_of(then->sheet));
  add_unpriced(now->list, then->list, request.currency, savings.unpriced);
  add_unpriced(then->list, now->list, request.currency, savings.unpriced);
  savings.packs_saved = sum_saved(savings.packs);
  savings.kit_saved = sum_saved(savings.kit);
  return savings;
}

}  // namespace evencount::project
