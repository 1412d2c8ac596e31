#include "project/supply_list_collection.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "materials/supplies.hpp"
#include "project/supply_list_counts.hpp"

namespace evencount::project {
namespace {

using materials::Purchase;

/// A bead line in the making.
struct BeadGathering {
  BeadLine line;
  std::vector<materials::BeadPortion> portions;  ///< of one kit
  std::vector<materials::PackOffer> packs;       ///< of the projects
  std::optional<std::size_t> item;
};

struct GoodsGathering {
  GoodsLine line;
  std::optional<std::size_t> item;
};

/// Gathers what the projects take, line by line, then works out what is bought.
class Gatherer {
 public:
  explicit Gatherer(const SupplyRequest& request) : request_(request) {
    for (const materials::StockedItem& stocked : request.stock) free_.push_back(stocked.level.free());
  }

  Result<Done> add(const Project& project, std::size_t position) {
    const auto uses = band_uses(project);
    if (!uses) return uses.problem();
    const auto counts = legend_counts(project, *uses);
    if (!counts) return counts.problem();
    for (std::size_t i = 0; i < project.legend.size(); ++i)
      if (auto added = add_bead(project, position, project.legend[i], (*counts)[i]); !added) return added;
    const auto forms = form_counts(project);
    if (!forms) return forms.problem();
    for (const FormCount& form : *forms) {
      const FormEntry& entry = project.forms[form.form];
      add_goods(forms_, name_of(entry), "", static_cast<double>(form.count),
                find_form_item(request_.stock, entry));
    }
    Length thread;
    for (std::size_t i = 0; i < uses->size(); ++i)
      thread = thread + project.bands[i].copies * (*uses)[i].thread.cut;
    add_goods(threads_, project.thread.name, "mm", thread.mm(),
              find_thread_item(request_.stock, project.thread));
    const auto others = other_supplies(project, request_.size);
    if (!others) return others.problem();
    sizes_.push_back(size_strung_for(project, request_.size));
    for (const OtherSupply& other : *others)
      add_goods(findings_, other.name, other.unit, other.count, find_other_item(request_.stock, other));
    add_tools(project, *counts);
    return Done{};
  }

  Result<CollectionSupplies> finish() {
    CollectionSupplies list;
    list.kits = request_.kits;
    for (BeadGathering& bead : beads_) {
      if (auto bought = buy(bead); !bought) return bought.problem().within("bead " + bead.line.letter);
      list.beads.push_back(std::move(bead.line));
    }
    for (auto [from, to] : {std::pair(&forms_, &list.forms), std::pair(&threads_, &list.threads),
                            std::pair(&findings_, &list.findings)})
      for (GoodsGathering& goods : *from) {
        if (auto bought = buy(goods); !bought) return bought.problem().within(goods.line.name);
        to->push_back(std::move(goods.line));
      }
    list.sizes = std::move(sizes_);
    list.tools = std::move(tools_);
    list.tools.insert(list.tools.end(), needles_.begin(), needles_.end());
    if (auto added = add_total(list); !added) return added.problem();
    return list;
  }

 private:
  Result<Done> add_bead(const Project& project, std::size_t position, const LegendEntry& entry,
                        std::int64_t count) {
    const auto size = size_of(project, entry);
    if (!size) return size.problem();
    if (count == 0) return Done{};
    const auto known = std::find_if(beads_.begin(), beads_.end(), [&](const BeadGathering& bead) {
      return bead.line.size_id == entry.bead && bead.line.name == entry.name &&
             bead.line.finish == entry.finish && bead.line.colour == entry.colour;
    });
    const bool is_new = known == beads_.end();
    BeadGathering& bead = is_new ? beads_.emplace_back() : *known;
    if (is_new) {
      bead.line.name = entry.name;
      bead.line.size = bead::trade_name(*size);
      bead.line.size_id = entry.bead;
      bead.line.finish = entry.finish;
      bead.line.colour = entry.colour;
      bead.item = find_bead_item(request_.stock, entry);
    }
    bead.line.uses.push_back({position, entry.letter, count});
    bead.line.count += request_.kits * count;
    materials::BeadPortion portion{count, size->beads_per_gram, project.allowance};
    if (bead.item)
      portion.beads_per_gram = std::get<materials::BeadStock>(item(*bead.item).what)
                                   .beads_per_gram.value_or(portion.beads_per_gram);
    bead.portions.push_back(portion);
    if (entry.pack) add_pack(*entry.pack, bead.packs);
    return Done{};
  }

  static void add_pack(const Pack& pack, std::vector<materials::PackOffer>& packs) {
    materials::PackOffer offer;
    offer.amount = std::llround(1000 * pack.mass.grams());
    offer.price = pack.price;
    if (std::find(packs.begin(), packs.end(), offer) == packs.end()) packs.push_back(std::move(offer));
  }

  void add_goods(std::vector<GoodsGathering>& goods, const std::string& name, const std::string& unit,
                 double count, std::optional<std::size_t> of_stock) {
    for (GoodsGathering& known : goods)
      if (known.line.name == name && known.line.unit == unit && known.item == of_stock) {
        known.line.count += request_.kits * count;
        return;
      }
    goods.push_back(
        {{name, request_.kits * count, unit, of_stock ? item(*of_stock).code : "", {}}, of_stock});
  }

  void add_tools(const Project& project, const std::vector<std::int64_t>& counts) {
    const auto add_once = [](std::vector<std::string>& to, const std::string& tool) {
      if (std::find(to.begin(), to.end(), tool) == to.end()) to.push_back(tool);
    };
    const std::vector<std::string> tools = tools_for(project, counts);
    for (std::size_t i = 0; i < tools.size(); ++i)
      add_once(i < project.tools.size() ? tools_ : needles_, tools[i]);
  }

  [[nodiscard]] const materials::StockItem& item(std::size_t position) const {
    return request_.stock[position].item;
  }

  /// Takes what there is of an item, so that no other line counts on it too.
  std::int64_t take(std::size_t position, std::int64_t needed) {
    const std::int64_t there = std::max<std::int64_t>(0, free_[position]);
    free_[position] = there - std::min(there, needed);
    return there;
  }

  Result<Done> weigh(BeadGathering& bead) const {
    std::vector<materials::BeadPortion> portions = bead.portions;
    Mass in_bags;
    for (materials::BeadPortion& portion : portions) {
      const auto bag = materials::bag_mass(portion);
      if (!bag) return bag.problem();
      in_bags = in_bags + *bag;
      portion.count *= request_.kits;
    }
    const auto together = materials::weigh(portions);
    if (!together) return together.problem();
    // Sums of tenths: made whole again.
    const std::int64_t mg =
        request_.in_bags ? request_.kits * materials::milligrams(in_bags) : materials::milligrams(*together);
    if (mg > materials::most_amount)
      return Problem{ProblemCode::out_of_range, "", fmt::format("{} g", mg / 1000),
                     "at most a million tonnes of one bead"};
    bead.line.mass = request_.in_bags ? grams(static_cast<double>(mg / 100) / 10) : *together;
    return Done{};
  }

  Result<Done> buy(BeadGathering& bead) {
    for (const LetterUse& use : bead.line.uses) {
      const auto known = split(bead.line.letter, ',');
      if (std::none_of(known.begin(), known.end(),
                       [&](std::string_view letter) { return trim(letter) == use.letter; }))
        bead.line.letter += (bead.line.letter.empty() ? "" : ", ") + use.letter;
    }
    if (auto weighed = weigh(bead); !weighed) return weighed;
    const std::int64_t needed = materials::milligrams(bead.line.mass);
    std::span<const materials::PackOffer> packs = bead.packs;
    std::int64_t on_hand = 0;
    if (bead.item) {
      bead.line.code = item(*bead.item).code;
      on_hand = take(*bead.item, needed);
      if (!item(*bead.item).packs.empty()) packs = item(*bead.item).packs;
    }
    auto bought = materials::purchase(needed, on_hand, packs, request_.currency);
    if (!bought) return bought.problem();
    bead.line.purchase = std::move(*bought);
    return Done{};
  }

  /// In pieces or millimetres. Nothing for a unit that is neither.
  static std::optional<double> in_stock_unit(const GoodsLine& line, materials::StockKind kind) {
    const bool by_length = materials::unit_of(kind) == "mm";
    if (!by_length) return line.unit.empty() ? std::optional(line.count) : std::nullopt;
    if (line.unit == "mm") return line.count;
    if (line.unit == "cm") return 10 * line.count;
    if (line.unit == "m") return 1000 * line.count;
    return {};
  }

  Result<Done> buy(GoodsGathering& goods) {
    if (!goods.item) return Done{};
    const materials::StockItem& found = item(*goods.item);
    const auto amount = in_stock_unit(goods.line, materials::kind_of(found));
    if (!amount) return Done{};
    if (!(*amount <= static_cast<double>(materials::most_amount)))
      return Problem{ProblemCode::out_of_range, "", plain_number(*amount), "a smaller amount"};
    constexpr double rounding = 1e-6;  // the errors of a few sums of lengths, far below a millimetre
    const auto needed = static_cast<std::int64_t>(std::ceil(*amount - rounding));
    auto bought = materials::purchase(needed, take(*goods.item, needed), found.packs, request_.currency);
    if (!bought) return bought.problem();
    goods.line.purchase = std::move(*bought);
    return Done{};
  }

  static Result<Done> add_total(CollectionSupplies& list) {
    std::vector<const std::optional<Money>*> costs;
    for (const BeadLine& bead : list.beads) {
      if (!bead.purchase.cost) return Done{};
      costs.push_back(&bead.purchase.cost);
    }
    for (const auto* lines : {&list.forms, &list.threads, &list.findings})
      for (const GoodsLine& line : *lines)
        if (line.purchase && line.purchase->cost) costs.push_back(&line.purchase->cost);
    std::optional<Money> total;
    for (const std::optional<Money>* cost : costs) {
      if (!total) total = Money{0, (*cost)->currency};
      if (total->currency != (*cost)->currency) return Done{};
      if (__builtin_add_overflow(total->minor, (*cost)->minor, &total->minor))
        return Problem{ProblemCode::out_of_range, "total", "more than can be written down", "a smaller sum"};
    }
    list.total = std::move(total);
    return Done{};
  }

  const SupplyRequest& request_;
  std::vector<std::int64_t> free_;  ///< of each item of the stock, not yet taken
  std::vector<BeadGathering> beads_;
  std::vector<GoodsGathering> forms_, threads_, findings_;
  std::vector<std::string> sizes_;
  std::vector<std::string> tools_, needles_;
};

}  // namespace

std::string describe(const BeadLine& bead) {
  const std::string finish =
      bead.finish == bead::Finish::opaque ? "" : fmt::format(", {}", bead::finish_name(bead.finish));
  return fmt::format("{}{}, {}", bead.name, finish, bead.size);
}

Result<CollectionSupplies> collection_supplies(Collection projects, const SupplyRequest& request) {
  if (request.kits < 1 || request.kits > materials::most_kits)
    return Problem{ProblemCode::out_of_range, "kits", fmt::format("{}", request.kits),
                   fmt::format("from 1 to {}", materials::most_kits)};
  Gatherer gatherer(request);
  for (std::size_t i = 0; i < projects.size(); ++i)
    if (auto added = gatherer.add(projects[i], i); !added)
      return projects.size() == 1 ? added.problem() : added.problem().within(projects[i].title);
  return gatherer.finish();
}

}  // namespace evencount::project
