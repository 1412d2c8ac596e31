#pragma once
/// The verbs of `evencount stock`: the stockroom's file from the command line. Like those of verbs.hpp.
///
/// `stock` is the stockroom's file; empty for the one in the user's data folder. `at` is when it happened; empty for now.

#include <functional>
#include <string>
#include <vector>

#include "app/console.hpp"

namespace CLI {
class App;
}

namespace evencount::app {

/// Declares `stock` and what stands under it; the one that is parsed leaves its action in `chosen`.
void declare_stock(CLI::App& app, const Console& console, std::function<int()>& chosen);

struct StockImportArguments {
  std::string stock;
  std::string file;                  ///< a table, or a palette
  std::string kind;                  ///< beads, forms, thread, cord, findings; empty when the columns tell
  std::vector<std::string> map;      ///< THEIR HEADER=COLUMN
  std::string map_file;              ///< the same, a line each
  std::vector<std::string> set;      ///< COLUMN=VALUE, on every line
  std::string size = "cylinder-11";  ///< of a palette's beads
  std::string currency = "EUR";
  std::string at, note;
  bool dry_run = false, skip_bad = false, json = false;
};
int stock_import_verb(const StockImportArguments& arguments, const Console& console);

struct StockListArguments {
  std::string stock;
  std::vector<std::string> words;
  std::string kind;
  std::string size;
  std::string near;  ///< a colour, #rrggbb
  int count = 10;    ///< of the nearest
  bool json = false;
};
int stock_list_verb(const StockListArguments& arguments, const Console& console);

struct StockExportArguments {
  std::string stock;
  std::string kind = "beads";
  std::string output;  ///< empty prints it
  std::string size;    ///< only beads of this size
  bool palette = false, semicolons = false, byte_order_mark = false;
};
int stock_export_verb(const StockExportArguments& arguments, const Console& console);

struct StockMoveArguments {
  std::string stock;
  std::string code, amount;
  std::string at, note;
  bool json = false;
};
int stock_count_in_verb(const StockMoveArguments& arguments, const Console& console);
int stock_use_verb(const StockMoveArguments& arguments, const Console& console);
int stock_correct_verb(const StockMoveArguments& arguments, const Console& console);

struct StockJournalArguments {
  std::string stock;
  std::string code, run;  ///< empty for all
  bool json = false;
};
int stock_journal_verb(const StockJournalArguments& arguments, const Console& console);

struct StockRunArguments {
  std::string stock;
  std::string run;
  std::vector<std::string> items;  ///< CODE=AMOUNT
  std::string at, note;
  bool json = false;
};
int stock_reserve_verb(const StockRunArguments& arguments, const Console& console);
int stock_take_verb(const StockRunArguments& arguments, const Console& console);
int stock_release_verb(const StockRunArguments& arguments, const Console& console);

struct StockViewArguments {
  std::string stock;
  bool json = false;
};
int stock_runs_verb(const StockViewArguments& arguments, const Console& console);
int stock_check_verb(const StockViewArguments& arguments, const Console& console);

struct StockMeasureArguments {
  std::string stock;
  std::string image;
  std::string card, bead;         ///< LEFT,TOP,WIDTH,HEIGHT in pixels
  std::string card_is = "white";  ///< white, grey, or its reflectance
  std::string code;               ///< the item that gets the colour; empty for none
  bool json = false;
};
int stock_measure_verb(const StockMeasureArguments& arguments, const Console& console);

}  // namespace evencount::app
