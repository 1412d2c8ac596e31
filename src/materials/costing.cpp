#include "materials/costing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <limits>

#include "base/text.hpp"
#include "materials/supplies.hpp"

namespace evencount::materials {
namespace {

__extension__ using Wide = __int128;

/// The nearest whole number, a half upwards. Neither is below 0.
Wide divide_nearest(Wide amount, Wide part) {
  return (2 * amount + part) / (2 * part);
}

std::string plain(Factor factor) {
  return plain_number(static_cast<double>(factor.hundredths) / 100);
}
std::string plain(Percent share) {
  return plain_number(static_cast<double>(share.hundredths) / 100) + " %";
}
std::string amount_text(std::int64_t minor) {
  return fmt::format("{}.{:02}", minor / 100, minor % 100);
}

std::string hours_and_minutes(Wide minutes) {
  const auto whole = static_cast<std::int64_t>(minutes);
  if (whole < 60) return fmt::format("{} min", whole);
  return fmt::format("{} h {:02} min", whole / 60, whole % 60);
}

/// Adds lines up and remembers when money can't hold a sum.
class Adder {
 public:
  void add(CostPart& part, std::string what, std::string how, Wide minor) {
    part.lines.push_back({std::move(what), std::move(how), held(minor)});
    part.minor = held(Wide{part.minor} + part.lines.back().minor);
  }
  std::int64_t held(Wide minor) {
    constexpr Wide most = std::numeric_limits<std::int64_t>::max();
    if (minor > most) overflowed_ = true;
    return static_cast<std::int64_t>(std::min(minor, most));
  }
  [[nodiscard]] bool overflowed() const { return overflowed_; }

 private:
  bool overflowed_ = false;
};

void add_materials(const PieceUse& use, const CostSettings& settings, CostSheet& sheet, Adder& adder) {
  for (const MaterialUse& material : use.materials) {
    if (!material.rate || material.rate->cost.currency != settings.currency) {
      sheet.unpriced.push_back(material.what);
      continue;
    }
    adder.add(sheet.materials, material.what, material.how,
              divide_nearest(Wide{material.rate->cost.minor} * material.amount,
                             Wide{material.rate->amount} * use.kits));
  }
  if (settings.other_materials_minor > 0)
    adder.add(sheet.materials, "other materials", "as set",
              Wide{settings.other_materials_minor} * use.pieces);
  if (settings.waste.hundredths > 0 && sheet.materials.minor > 0)
    adder.add(sheet.materials, "waste", plain(settings.waste) + " of the materials",
              divide_nearest(Wide{sheet.materials.minor} * settings.waste.hundredths, 10'000));
}

void add_labour(const PieceUse& use, const CostSettings& settings, CostSheet& sheet, Adder& adder) {
  const auto pay = [&](Wide minutes, Wide part) {
    return divide_nearest(minutes * settings.hour_minor, part * 60);
  };
  for (const StitchingUse& stitching : use.stitching) {
    const Percent slower = technique_percent(settings, stitching.technique);
    const Wide minutes = Wide{stitching.beads} * settings.minutes_a_day * slower.hundredths;
    const Wide part = Wide{settings.beads_a_day} * 10'000;
    adder.add(
        sheet.labour, "stitching, " + stitching.name,
        fmt::format(
            "{} beads, {} in {} min{}: {}", stitching.beads, settings.beads_a_day, settings.minutes_a_day,
            slower == percent(100) ? "" : fmt::format(", {} of the time of flat peyote", plain(slower)),
            hours_and_minutes(divide_nearest(minutes, part))),
        pay(minutes, part));
  }
  const auto add_minutes = [&](std::string what, std::int64_t count, std::string_view of,
                               std::int64_t minutes) {
    if (count == 0 || minutes == 0) return;
    const std::string how = count == 1 ? hours_and_minutes(minutes)
                                       : fmt::format("{} {}, {} min each: {}", count, of, minutes,
                                                     hours_and_minutes(Wide{count} * minutes));
    adder.add(sheet.labour, std::move(what), how, pay(Wide{count} * minutes, 1));
  };
  add_minutes("finishing", use.bands, "bands", settings.finishing_minutes);
  add_minutes("assembly", use.pieces, "pieces", settings.assembly_minutes);
}

void add_overhead(const PieceUse& use, const CostSettings& settings, CostSheet& sheet, Adder& adder) {
  if (settings.overhead.hundredths > 0)
    adder.add(sheet.overhead, "overhead", plain(settings.overhead) + " of materials and labour",
              divide_nearest(
                  (Wide{sheet.materials.minor} + sheet.labour.minor) * settings.overhead.hundredths, 10'000));
  if (settings.overhead_minor > 0)
    adder.add(sheet.overhead, "fixed overhead", "as set", Wide{settings.overhead_minor} * use.pieces);
}

/// "4 × 2.00 + 3.00".
std::string sum_in_words(const CostSheet& sheet, const PriceRule& rule) {
  std::string words;
  const auto add = [&](Factor factor, std::string_view what, std::int64_t minor) {
    if (factor.hundredths == 0) return;
    words += fmt::format("{}{}{} {}", words.empty() ? "" : " + ",
                         factor.hundredths == 100 ? "" : plain(factor) + " × ", what, amount_text(minor));
  };
  add(rule.materials, "materials", sheet.materials.minor);
  add(rule.labour, "labour", sheet.labour.minor);
  add(rule.overhead, "overhead", sheet.overhead.minor);
  return words.empty() ? "nothing" : words;
}

Price price_by(const PriceRule& rule, const CostSheet& sheet, Adder& adder) {
  const Wide hundredths = Wide{sheet.materials.minor} * rule.materials.hundredths +
                          Wide{sheet.labour.minor} * rule.labour.hundredths +
                          Wide{sheet.overhead.minor} * rule.overhead.hundredths;
  Price price{rule.name, "", {}, {}, {}};
  std::string factors;
  const auto times = [&](const std::optional<Factor>& factor,
                         std::string_view name) -> std::optional<std::int64_t> {
    if (!factor) return {};
    factors += fmt::format("{}× {} {}", factors.empty() ? "" : ", ", plain(*factor), name);
    return adder.held(divide_nearest(hundredths * factor->hundredths, 10'000));
  };
  price.wholesale = times(rule.wholesale, "wholesale");
  price.retail = times(rule.retail, "retail");
  price.retail_to = times(rule.retail_to, "at the most");
  price.how = fmt::format("({}) {}", sum_in_words(sheet, rule), factors);
  return price;
}

Problem out_of_range(std::string_view where, std::int64_t found, std::int64_t least, std::int64_t most) {
  return {ProblemCode::out_of_range, std::string(where), fmt::format("{}", found),
          fmt::format("from {} to {}", least, most)};
}

struct Range {
  std::string_view name;
  std::int64_t value, least, most;
};

Result<Done> check_ranges(std::initializer_list<Range> ranges) {
  for (const Range& range : ranges)
    if (range.value < range.least || range.value > range.most)
      return out_of_range(range.name, range.value, range.least, range.most);
  return Done{};
}

Result<Done> check(const PriceRule& rule) {
  const auto of = [](const std::optional<Factor>& factor) { return factor ? factor->hundredths : 0; };
  return check_ranges({{"rule/materials", rule.materials.hundredths, 0, most_hundredths},
                       {"rule/labour", rule.labour.hundredths, 0, most_hundredths},
                       {"rule/overhead", rule.overhead.hundredths, 0, most_hundredths},
                       {"rule/wholesale", of(rule.wholesale), 0, most_hundredths},
                       {"rule/retail", of(rule.retail), 0, most_hundredths},
                       {"rule/retail_to", of(rule.retail_to), 0, most_hundredths}});
}

Result<Done> check(const PieceUse& use) {
  if (auto fine = check_ranges({{"kits", use.kits, 1, most_kits},
                                {"bands", use.bands, 0, most_beads_a_piece},
                                {"pieces", use.pieces, 0, most_kits}});
      !fine)
    return fine;
  for (const StitchingUse& stitching : use.stitching)
    if (auto fine = check_ranges({{"beads", stitching.beads, 0, most_beads_a_piece}}); !fine) return fine;
  for (const MaterialUse& material : use.materials) {
    const auto& rate = material.rate;
    if (auto fine =
            check_ranges({{"amount", material.amount, 0, most_amount},
                          {"rate", rate ? rate->cost.minor : 0, 0, std::numeric_limits<std::int64_t>::max()},
                          {"rate", rate ? rate->amount : 1, 1, 2 * most_amount}});
        !fine)
      return fine;
  }
  return Done{};
}

}  // namespace

PriceRule multiple_of_cost() {
  return {"cost × 2", {100}, {100}, {100}, Factor{200}, Factor{250}, Factor{300}};
}

PriceRule materials_four_times() {
  return {"4 × materials", {400}, {100}, {0}, {}, Factor{110}, {}};
}

Percent technique_percent(const CostSettings& settings, std::string_view technique) {
  for (const TechniqueTime& own : settings.technique_time)
    if (own.technique == technique) return own.time;
  struct Slower {
    std::string_view technique;
    std::int64_t percent;
  };
  constexpr std::array table{
      Slower{"two-drop-even-count", 70},         // two beads a stitch; from memory
      Slower{"two-drop-odd-count", 75},          // from memory
      Slower{"peyote-odd-count", 110},           // its turns; from memory
      Slower{"peyote-odd-count-figure-8", 110},  // from memory
      Slower{"peyote-shaped", 115},              // from memory
      Slower{"tubular-even-count", 110},         // from memory
      Slower{"tubular-odd-count", 110},          // from memory
      Slower{"peyote-bezel", 130},               // from memory
      Slower{"brick", 120},                      // two passes a bead; from memory
      Slower{"brick-shaped", 125},               // from memory
      Slower{"square", 170},                     // three passes a bead; from memory
      Slower{"loom", 50},                        // a row at a time; from memory
      Slower{"herringbone", 80},                 // two beads a stitch; from memory
      Slower{"right-angle", 130},                // from memory
  };
  for (const Slower& row : table)
    if (row.technique == technique) return percent(row.percent);
  return percent(100);
}

Result<Done> check(const CostSettings& settings) {
  if (auto fine =
          check_ranges({{"hour_minor", settings.hour_minor, 0, most_setting_minor},
                        {"beads_a_day", settings.beads_a_day, 1, most_setting_minor},
                        {"minutes_a_day", settings.minutes_a_day, 0, most_minutes},
                        {"finishing_minutes", settings.finishing_minutes, 0, most_minutes},
                        {"assembly_minutes", settings.assembly_minutes, 0, most_minutes},
                        {"other_materials_minor", settings.other_materials_minor, 0, most_setting_minor},
                        {"waste_percent", settings.waste.hundredths, 0, most_hundredths},
                        {"overhead_percent", settings.overhead.hundredths, 0, most_hundredths},
                        {"overhead_minor", settings.overhead_minor, 0, most_setting_minor}});
      !fine)
    return fine;
  for (const TechniqueTime& own : settings.technique_time)
    if (auto fine =
            check_ranges({{"technique_percent/" + own.technique, own.time.hundredths, 0, most_hundredths}});
        !fine)
      return fine;
  return settings.own_rule ? check(*settings.own_rule) : Result<Done>(Done{});
}

Result<CostSheet> cost_sheet(const PieceUse& use, const CostSettings& settings) {
  if (const auto fine = check(settings); !fine) return fine.problem();
  if (const auto fine = check(use); !fine) return fine.problem();
  CostSheet sheet;
  sheet.currency = settings.currency;
  Adder adder;
  add_materials(use, settings, sheet, adder);
  add_labour(use, settings, sheet, adder);
  add_overhead(use, settings, sheet, adder);
  sheet.cost = adder.held(Wide{sheet.materials.minor} + sheet.labour.minor + sheet.overhead.minor);
  std::vector<PriceRule> rules{multiple_of_cost(), materials_four_times()};
  if (settings.own_rule) rules.push_back(*settings.own_rule);
  for (const PriceRule& rule : rules) sheet.prices.push_back(price_by(rule, sheet, adder));
  if (adder.overflowed())
    return Problem{ProblemCode::out_of_range, "cost", "more than can be written down", "a smaller sum"};
  return sheet;
}

}  // namespace evencount::materials
