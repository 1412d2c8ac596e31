#include <fmt/ostream.h>

#include "app/stock_verbs.hpp"
#include "app/verbs/stock_text.hpp"
#include "base/text.hpp"
#include "stockroom/amounts.hpp"

namespace evencount::app {
namespace {

using stockroom::Movement;
using stockroom::Run;
using stockroom::RunItem;
using stockroom::Stockroom;
using stockroom::Time;

/// Opens the stock, reads the amount in the item's unit, moves, and says what there is now.
template <typename Move>
int move(const StockMoveArguments& arguments, const Console& console, Move move_amount) {
  const auto at = time_argument(arguments.at);
  if (!at) return console.fail(at.problem());
  auto stock = open_stock(arguments.stock);
  if (!stock) return console.fail(stock.problem());
  const auto before = stock->item(arguments.code);
  if (!before) return console.fail(before.problem());
  const auto amount = stockroom::parse_amount(before->item, arguments.amount);
  if (!amount) return console.fail(amount.problem().within("amount"));
  const Result<std::optional<Movement>> movement = move_amount(*stock, *amount, *at);
  if (!movement) return console.fail(movement.problem());
  const auto after = stock->item(arguments.code);
  if (!after) return console.fail(after.problem());
  if (arguments.json) {
    print(console.out,
          {{"movement", *movement ? to_json(**movement) : Json(nullptr)}, {"item", to_json(*after)}});
    return exit_done;
  }
  const auto kind = kind_of(after->item);
  fmt::print(console.out, "{} {}: {} on hand{}\n", after->item.code, one_line(after->item.name),
             stockroom::amount_text(kind, after->level.on_hand),
             after->level.reserved == 0
                 ? ""
                 : ", " + stockroom::amount_text(kind, after->level.reserved) + " of it reserved");
  return exit_done;
}

Result<std::optional<Movement>> given(Result<Movement> movement) {
  if (!movement) return movement.problem();
  return std::optional(*movement);
}

/// "CODE=AMOUNT"; the last equals sign parts them.
Result<std::vector<RunItem>> run_items(const Stockroom& stock, const std::vector<std::string>& texts) {
  std::vector<RunItem> items;
  for (const std::string& text : texts) {
    const auto equals = text.rfind('=');
    if (equals == std::string::npos)
      return Problem{ProblemCode::bad_usage, "items", quote(text), "CODE=AMOUNT"};
    const std::string code(trim(text.substr(0, equals)));
    const auto item = stock.item(code);
    if (!item) return item.problem();
    const auto amount = stockroom::parse_amount(item->item, text.substr(equals + 1));
    if (!amount) return amount.problem().within(code);
    items.push_back({code, *amount});
  }
  return items;
}

/// "  C11-004  deep water  2.5 g" for each item.
Result<Done> print_run(const Stockroom& stock, const Run& run, std::ostream& out) {
  fmt::print(out, "{}: {} {}{}\n", run.name, run.closed ? stockroom::state_name(run.state) : "open since",
             stockroom::time_text(run.closed.value_or(run.opened)),
             run.note.empty() ? "" : ", " + one_line(run.note));
  std::vector<std::vector<std::string>> rows;
  for (const RunItem& reserved : run.items) {
    const auto held = stock.item(reserved.code);
    if (!held) return held.problem();
    rows.push_back({"  " + reserved.code, one_line(held->item.name),
                    stockroom::amount_text(kind_of(held->item), reserved.amount)});
  }
  print_rows(out, rows, {2});
  return Done{};
}

template <typename Act>
int run_verb(const StockRunArguments& arguments, const Console& console, Act act) {
  const auto at = time_argument(arguments.at);
  if (!at) return console.fail(at.problem());
  auto stock = open_stock(arguments.stock);
  if (!stock) return console.fail(stock.problem());
  const Result<Run> run = act(*stock, *at);
  if (!run) return console.fail(run.problem().within(arguments.run));
  if (arguments.json)
    print(console.out, to_json(*run));
  else if (const auto printed = print_run(*stock, *run, console.out); !printed)
    return console.fail(printed.problem());
  return exit_done;
}

}  // namespace

int stock_count_in_verb(const StockMoveArguments& arguments, const Console& console) {
  return move(arguments, console, [&](Stockroom& stock, std::int64_t amount, Time at) {
    return given(stock.count_in(arguments.code, amount, at, arguments.note));
  });
}

int stock_use_verb(const StockMoveArguments& arguments, const Console& console) {
  return move(arguments, console, [&](Stockroom& stock, std::int64_t amount, Time at) {
    return given(stock.use(arguments.code, amount, at, arguments.note));
  });
}

int stock_correct_verb(const StockMoveArguments& arguments, const Console& console) {
  return move(arguments, console, [&](Stockroom& stock, std::int64_t amount, Time at) {
    return stock.correct(arguments.code, amount, at, arguments.note);
  });
}

int stock_reserve_verb(const StockRunArguments& arguments, const Console& console) {
  return run_verb(arguments, console, [&](Stockroom& stock, Time at) -> Result<Run> {
    const auto items = run_items(stock, arguments.items);
    if (!items) return items.problem();
    return stock.reserve(arguments.run, *items, at, arguments.note);
  });
}

int stock_take_verb(const StockRunArguments& arguments, const Console& console) {
  return run_verb(arguments, console,
                  [&](Stockroom& stock, Time at) { return stock.take(arguments.run, at); });
}

int stock_release_verb(const StockRunArguments& arguments, const Console& console) {
  return run_verb(arguments, console,
                  [&](Stockroom& stock, Time at) { return stock.release(arguments.run, at); });
}

int stock_runs_verb(const StockViewArguments& arguments, const Console& console) {
  const auto stock = open_stock(arguments.stock);
  if (!stock) return console.fail(stock.problem());
  const auto runs = stock->runs();
  if (!runs) return console.fail(runs.problem());
  Json list = Json::array();
  for (const Run& run : *runs) {
    list.push_back(to_json(run));
    if (arguments.json) continue;
    if (const auto printed = print_run(*stock, run, console.out); !printed)
      return console.fail(printed.problem());
  }
  if (arguments.json) print(console.out, {{"runs", std::move(list)}});
  return exit_done;
}

}  // namespace evencount::app
