#include <fmt/ostream.h>

#include "app/files.hpp"
#include "app/stock_verbs.hpp"
#include "app/verbs/stock_text.hpp"
#include "base/text.hpp"
#include "bead/bead_size.hpp"
#include "stockroom/amounts.hpp"
#include "stockroom/search.hpp"
#include "stockroom/stock_file.hpp"
#include "stockroom/stock_table.hpp"

namespace evencount::app {
namespace {

using materials::StockedItem;
using stockroom::NearItem;

bool is_size(const StockedItem& held, const std::string& size) {
  const auto* beads = std::get_if<materials::BeadStock>(&held.item.what);
  return beads != nullptr && beads->size == size;
}

/// The items of a kind, and of a size when one is given.
Result<std::vector<StockedItem>> chosen_items(const std::string& file, const std::string& kind_text,
                                           const std::string& size) {
  const auto kind = kind_argument(kind_text);
  if (!kind) return kind.problem();
  const auto stock = open_stock(file);
  if (!stock) return stock.problem();
  auto items = stock->items(*kind);
  if (items && !size.empty()) {
    if (const auto known = bead::find_size(size); !known) return known.problem();
    std::erase_if(*items, [&](const StockedItem& held) { return !is_size(held, size); });
  }
  return items;
}

std::string about_beads(const StockedItem& held) {
  const auto per_gram = stockroom::beads_per_gram(held.item);
  if (!per_gram || held.level.on_hand == 0) return "";
  return fmt::format("about {:.0f} beads", static_cast<double>(held.level.on_hand) / 1000 * *per_gram);
}

void print_items(const std::vector<NearItem>& items, bool with_difference, std::ostream& out) {
  std::vector<std::vector<std::string>> rows;
  for (const auto& [held, difference] : items) {
    const auto kind = kind_of(held.item);
    const auto colour = stockroom::colour_of(held.item);
    std::vector<std::string> row{held.item.code, one_line(held.item.name), describe(held.item),
                                 colour ? colour::to_hex(*colour) : ""};
    if (with_difference) row.push_back(fixed_number(difference, 1));
    row.push_back(stockroom::amount_text(kind, held.level.on_hand));
    row.push_back(about_beads(held));
    row.push_back(held.level.reserved == 0 ? ""
                                           : stockroom::amount_text(kind, held.level.reserved) + " reserved");
    rows.push_back(std::move(row));
  }
  if (with_difference)
    print_rows(out, rows, {4, 5});
  else
    print_rows(out, rows, {4});
}

}  // namespace

int stock_list_verb(const StockListArguments& arguments, const Console& console) {
  const auto items = chosen_items(arguments.stock, arguments.kind, arguments.size);
  if (!items) return console.fail(items.problem());
  const auto found = stockroom::with_words(*items, arguments.words);
  std::vector<NearItem> shown;
  if (arguments.near.empty()) {
    for (const StockedItem& held : found) shown.push_back({held, 0});
  } else {
    const auto colour = colour::parse_hex(arguments.near);
    if (!colour) return console.fail(colour.problem().within("near"));
    shown = stockroom::nearest(found, *colour, static_cast<std::size_t>(arguments.count));
  }
  if (arguments.json) {
    Json list = Json::array();
    for (const auto& [held, difference] : shown) {
      list.push_back(to_json(held));
      if (!arguments.near.empty()) list.back()["difference"] = rounded(difference, 3);
    }
    print(console.out, {{"items", std::move(list)}});
  } else {
    print_items(shown, !arguments.near.empty(), console.out);
    fmt::print(console.err, "{} {}\n", shown.size(), shown.size() == 1 ? "item" : "items");
  }
  return exit_done;
}

int stock_export_verb(const StockExportArguments& arguments, const Console& console) {
  const auto items =
      chosen_items(arguments.stock, arguments.palette ? "beads" : arguments.kind, arguments.size);
  if (!items) return console.fail(items.problem());
  std::string text;
  if (arguments.palette) {
    std::vector<stockroom::NamedColour> colours;
    for (const StockedItem& held : *items)
      if (const auto colour = stockroom::colour_of(held.item))
        colours.push_back({held.item.name, *colour, 0});
    text = stockroom::write_palette(colours,
                                    arguments.size.empty() ? "beads in stock" : arguments.size + " in stock");
  } else {
    const auto kind = materials::parse_stock_kind(arguments.kind);
    if (!kind) return console.fail(kind.problem().within("kind"));
    text = stockroom::write_table(
        *items, *kind, {.semicolons = arguments.semicolons, .byte_order_mark = arguments.byte_order_mark});
  }
  if (arguments.output.empty()) {
    console.out << text;
    return exit_done;
  }
  if (const auto written = write_file(arguments.output, text); !written)
    return console.fail(written.problem());
  fmt::print(console.err, "wrote {}\n", arguments.output);
  return exit_done;
}

int stock_journal_verb(const StockJournalArguments& arguments, const Console& console) {
  const auto stock = open_stock(arguments.stock);
  if (!stock) return console.fail(stock.problem());
  const auto given = [](const std::string& text) {
    return text.empty() ? std::nullopt : std::optional(text);
  };
  const auto movements = stock->journal(given(arguments.code), given(arguments.run));
  if (!movements) return console.fail(movements.problem());
  Json list = Json::array();
  std::vector<std::vector<std::string>> rows;
  for (const stockroom::Movement& movement : *movements) {
    list.push_back(to_json(movement));
    rows.push_back({stockroom::time_text(movement.at), movement.code,
                    std::string(stockroom::cause_name(movement.cause)),
                    (movement.amount > 0 ? "+" : "") + stockroom::amount_text(movement.kind, movement.amount),
                    movement.run, one_line(movement.note)});
  }
  if (arguments.json)
    print(console.out, {{"movements", std::move(list)}});
  else
    print_rows(console.out, rows, {3});
  return exit_done;
}

int stock_check_verb(const StockViewArguments& arguments, const Console& console) {
  const auto stock = open_stock(arguments.stock);
  if (!stock) return console.fail(stock.problem());
  const auto faults = stock->check();
  if (!faults) return console.fail(faults.problem());
  if (arguments.json) {
    print(console.out, {{"faults", *faults}});
  } else {
    for (const std::string& fault : *faults) fmt::print(console.out, "{}\n", fault);
    if (faults->empty())
      fmt::print(console.out, "the file is whole, and every quantity is the sum of its movements\n");
  }
  return faults->empty() ? exit_done : exit_findings;
}

}  // namespace evencount::app
