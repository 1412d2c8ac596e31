#include "app/verbs/supplies_answer.hpp"
#include "project/json.hpp"

namespace evencount::app {
namespace {

using materials::Purchase;

Json money(const std::optional<Money>& money) {
  return money ? Json{{"minor", money->minor}, {"currency", money->currency}} : Json(nullptr);
}

Json minor(const std::optional<std::int64_t>& amount) {
  return amount ? Json(*amount) : Json(nullptr);
}

/// Whether something has to be bought that no pack is on offer for.
bool has_no_offer(const Purchase& purchase) {
  return purchase.missing > 0 && purchase.packs.empty();
}

/// Amounts in grams, metres or pieces, as `per_unit` of the stock's own unit.
Json to_json(const Purchase& purchase, double per_unit) {
  const auto amount = [&](std::int64_t whole) { return rounded(static_cast<double>(whole) / per_unit, 3); };
  Json packs = Json::array();
  for (const materials::BoughtPack& pack : purchase.packs)
    packs.push_back({{"packs", pack.packs},
                     {"holds", amount(pack.offer.amount)},
                     {"price", money(pack.offer.price)},
                     {"supplier", pack.offer.supplier},
                     {"order_code", pack.offer.order_code}});
  return {{"needed", amount(purchase.needed)},
          {"on_hand", amount(purchase.on_hand)},
          {"short", amount(purchase.missing)},
          {"buy", std::move(packs)},
          {"still_short", amount(purchase.still_missing)},
          {"left_over", amount(purchase.left_over)},
          {"cost", money(purchase.cost)},
          {"cheapest", purchase.cheapest}};
}

Json to_json(const project::BeadLine& bead, const std::vector<project::Project>& projects) {
  Json letters = Json::array();
  for (const project::LetterUse& use : bead.uses)
    letters.push_back(
        {{"project", projects[use.project].title}, {"letter", use.letter}, {"count", use.count}});
  std::int64_t packs = 0;
  for (const materials::BoughtPack& pack : bead.purchase.packs) packs += pack.packs;
  return {{"letter", bead.letter},
          {"name", bead.name},
          {"size", bead.size},
          {"count", bead.count},
          {"grams", rounded(bead.mass.grams(), 1)},
          {"packs", has_no_offer(bead.purchase) ? Json(nullptr) : Json(packs)},
          {"cost", money(bead.purchase.cost)},
          {"finish", bead::finish_name(bead.finish)},
          {"colour", colour::to_hex(bead.colour)},
          {"code", bead.code},
          {"letters", std::move(letters)},
          {"purchase", to_json(bead.purchase, 1000)}};
}

Json to_json(const std::vector<project::GoodsLine>& lines) {
  Json list = Json::array();
  for (const project::GoodsLine& line : lines) {
    Json one{{"name", line.name}, {"count", rounded(line.count, 3)}, {"unit", line.unit}};
    if (line.purchase) {
      one["code"] = line.code;
      one["purchase"] = to_json(*line.purchase, line.unit.empty() ? 1 : 1000);
    }
    list.push_back(std::move(one));
  }
  return list;
}

/// All thread in one object; `threads` has the lines where there are several kinds.
Json thread(const std::vector<project::GoodsLine>& threads) {
  std::string names;
  double cut_mm = 0;
  for (const project::GoodsLine& line : threads) {
    names += (names.empty() ? "" : ", ") + line.name;
    cut_mm += line.count;
  }
  return {{"name", names}, {"cut_mm", rounded(cut_mm, 1)}};
}

Json to_json(const materials::CostPart& part) {
  Json lines = Json::array();
  for (const materials::CostLine& line : part.lines)
    lines.push_back({{"what", line.what}, {"how", line.how}, {"minor", line.minor}});
  return {{"lines", std::move(lines)}, {"minor", part.minor}};
}

Json to_json(const materials::CostSheet& sheet, const materials::CostSettings& settings) {
  Json prices = Json::array();
  for (const materials::Price& price : sheet.prices)
    prices.push_back({{"rule", price.rule},
                      {"how", price.how},
                      {"wholesale", minor(price.wholesale)},
                      {"retail", minor(price.retail)},
                      {"retail_to", minor(price.retail_to)}});
  return {{"currency", sheet.currency},
          {"materials", to_json(sheet.materials)},
          {"labour", to_json(sheet.labour)},
          {"overhead", to_json(sheet.overhead)},
          {"cost", sheet.cost},
          {"prices", std::move(prices)},
          {"unpriced", sheet.unpriced},
          {"rates", Json::parse(project::to_json(project::Costing{settings, {}, {}}))}};
}

Json to_json(const std::vector<project::CountedSupply>& supplies) {
  Json list = Json::array();
  for (const project::CountedSupply& supply : supplies)
    list.push_back({{"name", supply.name}, {"count", rounded(supply.count, 3)}, {"unit", supply.unit}});
  return list;
}

Json to_json(const project::Kit& kit) {
  Json bags = Json::array(), threads = Json::array();
  for (const project::KitBag& bag : kit.bags)
    bags.push_back({{"letter", bag.letter},
                    {"name", bag.name},
                    {"size", bag.size},
                    {"finish", bead::finish_name(bag.finish)},
                    {"colour", colour::to_hex(bag.colour)},
                    {"count", bag.count},
                    {"packed", bag.packed},
                    {"grams", rounded(bag.mass.grams(), 1)}});
  for (const project::KitThread& length : kit.threads)
    threads.push_back({{"length_mm", rounded(length.length.mm(), 1)}, {"count", length.count}});
  return {{"title", kit.title},
          {"bags", std::move(bags)},
          {"forms", to_json(kit.forms)},
          {"thread", {{"name", kit.thread_name}, {"lengths", std::move(threads)}}},
          {"findings", to_json(kit.findings)}};
}

Json to_json(const std::vector<project::CostDifference>& lines) {
  Json list = Json::array();
  for (const project::CostDifference& line : lines)
    list.push_back({{"what", line.what},
                    {"before", minor(line.before)},
                    {"after", minor(line.after)},
                    {"saved", line.saved()}});
  return list;
}

Json to_json(const std::optional<project::NearestNeighbour>& nearest) {
  if (!nearest) return nullptr;
  return {{"difference", rounded(nearest->difference, 2)}, {"letter", nearest->letter}};
}

Json to_json(const project::Substitute& substitute) {
  return {{"code", substitute.code},
          {"name", substitute.name},
          {"colour", colour::to_hex(substitute.colour)},
          {"finish", bead::finish_name(substitute.finish)},
          {"difference", rounded(substitute.difference, 2)},
          {"on_hand", rounded(static_cast<double>(substitute.free) / 1000, 3)},
          {"covers", substitute.covers},
          {"neighbour_before", to_json(substitute.before)},
          {"neighbour_after", to_json(substitute.after)}};
}

template <typename List>
Json all(const List& list) {
  Json items = Json::array();
  for (const auto& item : list) items.push_back(to_json(item));
  return items;
}

}  // namespace

Json supplies_json(const SuppliesAnswer& answer) {
  Json titles = Json::array(), beads = Json::array(), shorts = Json::array(), swaps = Json::array();
  for (const project::Project& project : answer.projects) titles.push_back(project.title);
  for (const project::BeadLine& bead : answer.list.beads) beads.push_back(to_json(bead, answer.projects));
  Json json{{"kits", answer.list.kits},
            {"projects", std::move(titles)},
            {"beads", std::move(beads)},
            {"forms", to_json(answer.list.forms)},
            {"thread", thread(answer.list.threads)},
            {"threads", to_json(answer.list.threads)},
            {"findings", to_json(answer.list.findings)},
            {"sizes", answer.list.sizes},
            {"tools", answer.list.tools},
            {"total", money(answer.list.total)}};
  for (const SubstituteAnswer& bead : answer.short_beads)
    shorts.push_back({{"letter", answer.list.beads[bead.bead].letter},
                      {"name", answer.list.beads[bead.bead].name},
                      {"substitutes", all(bead.substitutes)}});
  if (!shorts.empty()) json["short"] = std::move(shorts);
  if (answer.cost) json["price"] = to_json(*answer.cost, answer.settings);
  if (!answer.kits.empty()) json["pick"] = all(answer.kits);
  for (const SwapAnswer& one : answer.swaps)
    swaps.push_back({{"letter", one.swap.letter},
                     {"by", one.swap.by},
                     {"packs", to_json(one.savings.packs)},
                     {"packs_saved", one.savings.packs_saved},
                     {"kit", to_json(one.savings.kit)},
                     {"kit_saved", one.savings.kit_saved},
                     {"unpriced", one.savings.unpriced}});
  if (!swaps.empty()) json["swaps"] = std::move(swaps);
  return json;
}

}  // namespace evencount::app
