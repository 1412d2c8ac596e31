#include <fmt/ostream.h>

#include <algorithm>
#include <cmath>

#include "app/verbs/supplies_answer.hpp"
#include "base/text.hpp"

namespace evencount::app {
namespace {

using materials::Purchase;

/// How amounts of the stock's own unit are written.
struct Measure {
  double per_unit;
  std::string_view unit;
};
constexpr Measure in_grams{1000, " g"}, in_metres{1000, " m"}, in_pieces{1, " pieces"};

std::string amount(std::int64_t whole, Measure measure) {
  if (whole == 1 && measure.per_unit == 1) return "1 piece";
  return plain_number(static_cast<double>(whole) / measure.per_unit, 3) + std::string(measure.unit);
}

std::string cents(std::int64_t minor) {
  const std::string_view sign = minor < 0 ? "-" : "";
  return fmt::format("{}{}.{:02}", sign, std::abs(minor) / 100, std::abs(minor) % 100);
}

/// "buy 1 × 5 g + 2 × 10 g", with the supplier where the stock has one.
std::string packs_in_words(const Purchase& purchase, Measure measure) {
  std::string words;
  for (const materials::BoughtPack& pack : purchase.packs) {
    words += fmt::format("{}{} × {}", words.empty() ? "buy " : " + ", pack.packs,
                         amount(pack.offer.amount, measure));
    if (!pack.offer.supplier.empty())
      words += fmt::format(" ({} {})", pack.offer.supplier, pack.offer.order_code);
  }
  return words;
}

/// What stands behind a line: nothing where there is neither a stock nor a pack.
std::string purchase_in_words(const Purchase& purchase, Measure measure, bool in_stock) {
  std::vector<std::string> parts;
  if (in_stock) parts.push_back(amount(purchase.on_hand, measure) + " on hand");
  if (!purchase.packs.empty()) {
    parts.push_back(packs_in_words(purchase, measure));
    parts.push_back(purchase.cost ? to_text(*purchase.cost) : "price unknown");
  } else if (in_stock && purchase.missing > 0) {
    parts.push_back(amount(purchase.missing, measure) + " short, no pack on offer");
  }
  if (purchase.left_over > 0 && !parts.empty())
    parts.push_back(amount(purchase.left_over, measure) + " left over");
  std::string words;
  for (const std::string& part : parts) words += (words.empty() ? "  " : ", ") + part;
  return words;
}

std::string allowance_in_words(const std::vector<project::Project>& projects) {
  const bool alike = std::all_of(projects.begin(), projects.end(), [&](const project::Project& project) {
    return project.allowance == projects.front().allowance;
  });
  return alike ? plain_number(100 * projects.front().allowance) + " %" : "each project's share";
}

void print_head(const SuppliesAnswer& answer, std::ostream& out) {
  std::string titles;
  for (const project::Project& project : answer.projects)
    titles += (titles.empty() ? "" : ", ") + project.title;
  const bool several = answer.projects.size() > 1;
  const int kits = answer.list.kits;
  const std::string what = kits == 1 ? (several ? "one piece of each" : "one piece")
                                     : fmt::format("{} kits{}", kits, several ? " of each" : "");
  fmt::print(out, "{}: supplies for {}\n\nBeads (grams with {} for culling and loss{})\n", titles, what,
             allowance_in_words(answer.projects), answer.kits.empty() ? "" : ", bag by bag");
}

void print_beads(const SuppliesAnswer& answer, std::ostream& out) {
  std::size_t widest = 3;
  for (const project::BeadLine& bead : answer.list.beads) widest = std::max(widest, bead.letter.size());
  for (const project::BeadLine& bead : answer.list.beads) {
    fmt::print(out, "  {:<{}} {:<28} {:<22} {:>6}  {:>6} g{}\n", bead.letter, widest, bead.name, bead.size,
               bead.count, fixed_number(bead.mass.grams(), 1),
               purchase_in_words(bead.purchase, in_grams, !bead.code.empty()));
    if (answer.projects.size() == 1) continue;
    std::string uses;
    for (const project::LetterUse& use : bead.uses)
      uses +=
          fmt::format("{}{} in {}", uses.empty() ? "" : ", ", use.letter, answer.projects[use.project].title);
    fmt::print(out, "      {}\n", uses);
  }
}

void print_goods(const std::vector<project::GoodsLine>& lines, std::ostream& out) {
  for (const project::GoodsLine& line : lines)
    fmt::print(
        out, "  {} {}{}{}{}\n", plain_number(line.count), line.unit, line.unit.empty() ? "" : " ", line.name,
        line.purchase ? purchase_in_words(*line.purchase, line.unit.empty() ? in_pieces : in_metres, true)
                      : "");
}

/// ", strung in size M"; " M and 45 cm" for a collection of several.
std::string sizes_in_words(const std::vector<std::string>& sizes) {
  std::string words;
  std::vector<std::string> said;
  for (const std::string& size : sizes) {
    if (size.empty() || std::find(said.begin(), said.end(), size) != said.end()) continue;
    words += (words.empty() ? ", strung in size " : " and ") + size;
    said.push_back(size);
  }
  return words;
}

void print_list(const SuppliesAnswer& answer, std::ostream& out) {
  const project::CollectionSupplies& list = answer.list;
  print_beads(answer, out);
  if (!list.forms.empty()) fmt::print(out, "\nForms\n");
  print_goods(list.forms, out);
  fmt::print(out, "\nThread\n");
  for (const project::GoodsLine& thread : list.threads)
    fmt::print(out, "  {} m of {}{}\n", fixed_number(thread.count / 1000, 2), thread.name,
               thread.purchase ? purchase_in_words(*thread.purchase, in_metres, true) : "");
  if (!list.findings.empty()) fmt::print(out, "\nFindings and the rest{}\n", sizes_in_words(list.sizes));
  print_goods(list.findings, out);
  if (!list.tools.empty()) fmt::print(out, "\nTools\n");
  for (const std::string& tool : list.tools) fmt::print(out, "  {}\n", tool);
  if (list.total) fmt::print(out, "\nTo buy in all: {}\n", to_text(*list.total));
}

std::string neighbour_in_words(const std::optional<project::NearestNeighbour>& nearest) {
  return nearest ? fmt::format("{} from {}", fixed_number(nearest->difference, 1), nearest->letter)
                 : "nothing beside it";
}

void print_substitutes(const SuppliesAnswer& answer, std::ostream& out) {
  if (answer.short_beads.empty()) return;
  fmt::print(out, "\nInstead of what is short (colour differences, CIEDE2000)\n");
  for (const SubstituteAnswer& one : answer.short_beads) {
    const project::BeadLine& bead = answer.list.beads[one.bead];
    fmt::print(out, "  {} {}: {} short; its nearest neighbour in the charts is {}\n", bead.letter, bead.name,
               amount(bead.purchase.missing, in_grams),
               one.substitutes.front().before
                   ? fmt::format("{} away, {}", fixed_number(one.substitutes.front().before->difference, 1),
                                 one.substitutes.front().before->letter)
                   : "none");
    for (const project::Substitute& substitute : one.substitutes)
      fmt::print(out, "    {} {}, {}: {} away, {} on hand{}; then {}\n", substitute.code, substitute.name,
                 bead::finish_name(substitute.finish), fixed_number(substitute.difference, 1),
                 amount(substitute.free, in_grams), substitute.covers ? ", enough" : "",
                 neighbour_in_words(substitute.after));
  }
}

void print_part(std::string_view name, const materials::CostPart& part, std::ostream& out) {
  if (part.lines.empty()) return;
  fmt::print(out, "  {}\n", name);
  for (const materials::CostLine& line : part.lines)
    fmt::print(out, "    {:<50} {:<44} {:>9}\n", line.what, line.how, cents(line.minor));
  fmt::print(out, "    {:<95} {:>9}\n", "together", cents(part.minor));
}

void print_price(const materials::Price& price, std::ostream& out) {
  fmt::print(out, "  {}: {}\n", price.rule, price.how);
  std::string words;
  if (price.wholesale) words = "wholesale " + cents(*price.wholesale);
  if (price.retail) words += fmt::format("{}retail {}", words.empty() ? "" : ", ", cents(*price.retail));
  if (price.retail_to)
    words += (price.retail ? " to " : (words.empty() ? "at the most " : ", at the most ")) +
             cents(*price.retail_to);
  fmt::print(out, "    {}\n", words.empty() ? "no factor of a price" : words);
}

void print_cost(const SuppliesAnswer& answer, std::ostream& out) {
  if (!answer.cost) return;
  const materials::CostSheet& sheet = *answer.cost;
  fmt::print(out, "\nCost of one kit in {}, at {} an hour{}\n", sheet.currency,
             cents(answer.settings.hour_minor),
             answer.list.kits == 1 ? "" : fmt::format(", materials bought for {} kits", answer.list.kits));
  print_part("Materials", sheet.materials, out);
  print_part("Labour", sheet.labour, out);
  print_part("Overhead", sheet.overhead, out);
  fmt::print(out, "  {:<97} {:>9}\n", "cost", cents(sheet.cost));
  if (!sheet.unpriced.empty()) fmt::print(out, "  not in it, for want of a price:\n");
  for (const std::string& what : sheet.unpriced) fmt::print(out, "    {}\n", what);
  fmt::print(out, "\nPrice of one kit in {}\n", sheet.currency);
  for (const materials::Price& price : sheet.prices) print_price(price, out);
}

void print_counted(const std::vector<project::CountedSupply>& supplies, std::ostream& out) {
  for (const project::CountedSupply& supply : supplies)
    fmt::print(out, "  [ ] {} {}{}{}\n", plain_number(supply.count), supply.unit,
               supply.unit.empty() ? "" : " ", supply.name);
}

void print_pick_list(const project::Kit& kit, int kits, std::ostream& out) {
  fmt::print(out, "\nPick list: one kit of {}{}\n", kit.title,
             kits == 1 ? "" : fmt::format(", to be packed {} times", kits));
  for (const project::KitBag& bag : kit.bags)
    fmt::print(out, "  [ ] bag {:<3} {:<28} {:<22} {:>6} beads  {:>6} g\n", bag.letter, bag.name, bag.size,
               bag.packed, fixed_number(bag.mass.grams(), 1));
  print_counted(kit.forms, out);
  for (const project::KitThread& thread : kit.threads)
    fmt::print(out, "  [ ] {} × {} m of {}\n", thread.count, fixed_number(thread.length.mm() / 1000, 2),
               kit.thread_name);
  print_counted(kit.findings, out);
}

void print_differences(const std::vector<project::CostDifference>& lines, std::ostream& out) {
  const auto side = [](const std::optional<std::int64_t>& minor) { return minor ? cents(*minor) : "-"; };
  for (const project::CostDifference& line : lines)
    fmt::print(out, "    {:<50} {:>9} {:>9}  {:>9}\n", line.what, side(line.before), side(line.after),
               cents(line.saved()));
}

void print_swap(const SwapAnswer& one, const SuppliesAnswer& answer, std::ostream& out) {
  const project::SwapSavings& savings = one.savings;
  fmt::print(out, "\nWith {} in place of {} (in {}: now, then, saved)\n", one.swap.by, one.swap.letter,
             answer.settings.currency);
  if (savings.packs.empty() && savings.kit.empty()) fmt::print(out, "  nothing changes\n");
  if (!savings.packs.empty())
    fmt::print(out, "  to buy for {}\n",
               answer.list.kits == 1 ? "one kit" : fmt::format("{} kits", answer.list.kits));
  print_differences(savings.packs, out);
  if (!savings.packs.empty()) fmt::print(out, "    {:<70}  {:>9}\n", "together", cents(savings.packs_saved));
  if (!savings.kit.empty()) fmt::print(out, "  cost of one kit\n");
  print_differences(savings.kit, out);
  if (!savings.kit.empty()) fmt::print(out, "    {:<70}  {:>9}\n", "together", cents(savings.kit_saved));
  std::string unpriced;
  for (const std::string& what : savings.unpriced) unpriced += (unpriced.empty() ? "" : "; ") + what;
  if (!unpriced.empty()) fmt::print(out, "  no price is known for {}\n", unpriced);
}

}  // namespace

void print_supplies(const SuppliesAnswer& answer, std::ostream& out) {
  print_head(answer, out);
  print_list(answer, out);
  print_substitutes(answer, out);
  print_cost(answer, out);
  for (const project::Kit& kit : answer.kits) print_pick_list(kit, answer.list.kits, out);
  for (const SwapAnswer& swap : answer.swaps) print_swap(swap, answer, out);
}

}  // namespace evencount::app
