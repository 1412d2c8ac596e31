#include <CLI/CLI.hpp>
#include <memory>

#include "app/stock_verbs.hpp"

namespace evencount::app {
namespace {

class StockDeclarer {
 public:
  StockDeclarer(CLI::App& stock, const Console& console, std::function<int()>& chosen)
      : stock_(stock), console_(console), chosen_(chosen) {}

  /// A verb with the option that all have.
  template <typename Arguments>
  CLI::App* verb(const std::string& name, const std::string& summary, std::shared_ptr<Arguments> arguments,
                 int (*run)(const Arguments&, const Console&)) {
    CLI::App* verb = stock_.add_subcommand(name, summary);
    verb->add_option("--stock", arguments->stock,
                     "the stockroom's file; evencount/stock.sqlite in the user's data folder, if left out")->type_name("FILE");
    verb->callback([this_chosen = &chosen_, console = console_, arguments, run] {
      *this_chosen = [console, arguments, run] { return run(*arguments, console); };
    });
    return verb;
  }

 private:
  CLI::App& stock_;
  const Console& console_;
  std::function<int()>& chosen_;
};

void add_when(CLI::App* verb, std::string& at, std::string& note) {
  verb->add_option("--at", at,
                   "when it happened, '2024-03-01' or '2024-03-01 10:05' (UTC); now, if left out");
  verb->add_option("--note", note, "a few words for the journal");
}

void declare_import(StockDeclarer& declarer) {
  auto a = std::make_shared<StockImportArguments>();
  CLI::App* verb =
      declarer.verb("import", "read a table (CSV) or a palette into the stock", a, stock_import_verb);
  verb->add_option("FILE", a->file,
                   "a table as docs/stock.md describes it, or a palette of colours; - for standard input")
      ->required();
  verb->add_option("--kind", a->kind, "beads, forms, thread, cord or findings, when the columns don't tell");
  verb->add_option("--map", a->map,
                   "'THEIR HEADER=COLUMN', or 'THEIR HEADER=' to leave one out; may be repeated");
  verb->add_option("--map-file", a->map_file, "a file of such lines")->type_name("FILE");
  verb->add_option("--set", a->set, "COLUMN=VALUE for every line, such as size=cylinder-11; may be repeated");
  verb->add_option("--size", a->size, "the size of a palette's beads");
  verb->add_option("--currency", a->currency, "of prices that stand without one");
  verb->add_flag("--dry-run", a->dry_run, "only list what would change");
  verb->add_flag("--skip-bad", a->skip_bad, "import the good items in spite of bad lines");
  add_when(verb, a->at, a->note);
  verb->add_flag("--json", a->json, "answer in JSON");
}

void declare_views(StockDeclarer& declarer) {
  auto list = std::make_shared<StockListArguments>();
  CLI::App* verb = declarer.verb("list", "what there is", list, stock_list_verb);
  verb->add_option("WORDS", list->words, "only items that have all of these words");
  verb->add_option("--kind", list->kind, "beads, forms, thread, cord or findings");
  verb->add_option("--size", list->size, "only beads of this size");
  verb->add_option("--near", list->near, "the items whose colour is nearest to this one, #rrggbb");
  verb->add_option("--count", list->count, "how many of the nearest")->check(CLI::Range(1, 10'000));
  verb->add_flag("--json", list->json, "answer in JSON");

  auto out = std::make_shared<StockExportArguments>();
  verb = declarer.verb("export", "write one kind as a table (CSV), or colours as a palette", out,
                       stock_export_verb);
  verb->add_option("--kind", out->kind, "beads, forms, thread, cord or findings");
  verb->add_option("-o,--output", out->output, "a file to write instead of printing")->type_name("FILE");
  verb->add_option("--size", out->size, "only beads of this size");
  verb->add_flag("--palette", out->palette, "the beads' colours as a palette file (GPL)");
  verb->add_flag("--semicolons", out->semicolons, "semicolons between fields, and decimal commas");
  verb->add_flag("--bom", out->byte_order_mark, "begin with a byte order mark, as some spreadsheets want");

  auto journal = std::make_shared<StockJournalArguments>();
  verb = declarer.verb("journal", "every movement", journal, stock_journal_verb);
  verb->add_option("CODE", journal->code, "of one item");
  verb->add_option("--run", journal->run, "of one run of kits");
  verb->add_flag("--json", journal->json, "answer in JSON");

  auto check = std::make_shared<StockViewArguments>();
  verb = declarer.verb("check", "look the file over: is it whole, do the sums hold", check, stock_check_verb);
  verb->add_flag("--json", check->json, "answer in JSON");
}

void declare_measure(StockDeclarer& declarer) {
  auto a = std::make_shared<StockMeasureArguments>();
  CLI::App* verb = declarer.verb("measure", "a bead's colour from a photograph with a white or grey card beside it", a, stock_measure_verb);
  verb->add_option("IMAGE", a->image, "the photograph: PNG, JPEG, WebP or TIFF")->required()->type_name("FILE");
  verb->add_option("--card", a->card, "where the card is: LEFT,TOP,WIDTH,HEIGHT in pixels")->required();
  verb->add_option("--bead", a->bead, "where the bead or its tube is, likewise")->required();
  verb->add_option("--card-is", a->card_is, "white, grey, or how much of the light it sends back, such as 0.85");
  verb->add_option("--for", a->code, "the item of the stock that gets this colour");
  verb->add_flag("--json", a->json, "answer in JSON");
}

void declare_moves(StockDeclarer& declarer) {
  const auto move = [&](const char* name, const char* summary, const char* amount,
                        int (*run)(const StockMoveArguments&, const Console&)) {
    auto a = std::make_shared<StockMoveArguments>();
    CLI::App* verb = declarer.verb(name, summary, a, run);
    verb->add_option("CODE", a->code, "the item's code")->required();
    verb->add_option("AMOUNT", a->amount, amount)->required();
    add_when(verb, a->at, a->note);
    verb->add_flag("--json", a->json, "answer in JSON");
  };
  move("count-in", "bought or found", "how much more: 12.5g or '800 beads', 3m, 12 pieces",
       stock_count_in_verb);
  move("use", "taken out, not for a run", "how much of it: 12.5g or '800 beads', 3m, 12 pieces",
       stock_use_verb);
  move("correct", "counted afresh", "how much there really is: 12.5g or '800 beads', 3m, 12 pieces",
       stock_correct_verb);
}

void declare_runs(StockDeclarer& declarer) {
  const auto named = [&](const char* name, const char* summary,
                         int (*run)(const StockRunArguments&, const Console&)) {
    auto a = std::make_shared<StockRunArguments>();
    CLI::App* verb = declarer.verb(name, summary, a, run);
    verb->add_option("RUN", a->run, "the run's name")->required();
    verb->add_flag("--json", a->json, "answer in JSON");
    return std::pair(verb, a);
  };
  const auto [reserve, a] =
      named("reserve", "promise stock to a run of kits; to an open run it is added", stock_reserve_verb);
  reserve->add_option("ITEMS", a->items, "CODE=AMOUNT each: all of them are reserved, or none")->required();
  add_when(reserve, a->at, a->note);
  const auto [take, b] = named("take", "the kits are made: use what is reserved", stock_take_verb);
  take->add_option("--at", b->at, "when it happened; now, if left out");
  const auto [release, c] = named("release", "give back what is reserved", stock_release_verb);
  release->add_option("--at", c->at, "when it happened; now, if left out");
  auto runs = std::make_shared<StockViewArguments>();
  CLI::App* verb = declarer.verb("runs", "runs of kits, and what each has reserved", runs, stock_runs_verb);
  verb->add_flag("--json", runs->json, "answer in JSON");
}

}  // namespace

void declare_stock(CLI::App& app, const Console& console, std::function<int()>& chosen) {
  CLI::App* stock =
      app.add_subcommand("stock", "the stockroom: import, list, export, count in and out, reserve for kits");
  stock->require_subcommand(1);
  StockDeclarer declarer(*stock, console, chosen);
  declare_import(declarer);
  declare_views(declarer);
  declare_measure(declarer);
  declare_moves(declarer);
  declare_runs(declarer);
}

}  // namespace evencount::app
