#include "stockroom/stockroom.hpp"

#include <fmt/format.h>
#include <sqlite3.h>

#include <filesystem>
#include <thread>

#include "base/text.hpp"
#include "stockroom/amounts.hpp"
#include "stockroom/check.hpp"
#include "stockroom/item_check.hpp"
#include "stockroom/item_table.hpp"
#include "stockroom/journal_table.hpp"
#include "stockroom/run_table.hpp"
#include "stockroom/schema.hpp"

namespace evencount::stockroom {

struct Stockroom::Inside {
  std::string file;
  SQLite::Database database;

  explicit Inside(const std::string& name)
      : file(name),
        database(name, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, static_cast<int>(patience.count())) {}

  /// One movement of one item; `amount_of` works out by how much, from what there is.
  template <typename AmountOf>
  Result<std::optional<Movement>> move(const std::string& code, Cause cause, Time at, const std::string& note,
                                       AmountOf amount_of) {
    return in_transaction(database, file, [&]() -> Result<std::optional<Movement>> {
      if (const auto checked = check_text("note", note); !checked) return checked.problem();
      const auto item = read_item(database, code);
      if (!item) return item.problem();
      const Result<std::int64_t> amount = amount_of(kind_of(item->held.item), item->held.level);
      if (!amount) return amount.problem().within(code);
      if (*amount == 0) return std::optional<Movement>{};
      const std::int64_t number =
          MovementWriter(database).add({item->id, cause, *amount, at, note, std::nullopt});
      return std::optional(Movement{number, at, code, kind_of(item->held.item), cause, *amount, "", note});
    });
  }
};

namespace {

using materials::StockKind;
using materials::StockLevel;

Problem beyond(StockKind kind, std::int64_t amount, std::string expected) {
  return {ProblemCode::out_of_range, "", amount_text(kind, amount), std::move(expected)};
}

Result<Movement> moved(Result<std::optional<Movement>> result) {
  if (!result) return result.problem();
  return **result;
}

Result<Done> make_folder(const std::string& file) {
  const std::filesystem::path folder = std::filesystem::path(file).parent_path();
  std::error_code error;
  if (!folder.empty()) std::filesystem::create_directories(folder, error);
  if (error)
    return Problem{ProblemCode::file_unwritable, folder.string(), error.message(),
                   "a folder for the stockroom"};
  return Done{};
}

/// Readers and one writer side by side. Nobody else may be reading while the file changes over, and SQLite doesn't wait for
/// that by itself: it would be a deadlock if two did.
void change_over_to_wal(SQLite::Database& database) {
  constexpr std::chrono::milliseconds nap{5};
  for (std::chrono::milliseconds waited{0};; waited += nap) {
    try {
      database.exec("PRAGMA journal_mode = WAL");
      return;
    } catch (const SQLite::Exception& error) {
      if (error.getErrorCode() != SQLITE_BUSY || waited >= patience) throw;
    }
    std::this_thread::sleep_for(nap);
  }
}

void write_plan(SQLite::Database& database, const ImportReport& report,
                const std::unordered_map<std::string, std::int64_t>& keys, Time at, const std::string& note) {
  ItemWriter items(database);
  MovementWriter movements(database);
  for (const ImportedItem& imported : report.items) {
    if (imported.effect == ImportEffect::unchanged) continue;
    const bool added = imported.effect == ImportEffect::added;
    const std::int64_t key = added ? items.add(imported.item) : keys.at(imported.item.code);
    if (!added) items.replace(key, imported.item);
    if (imported.movement != 0)
      movements.add(
          {key, added ? Cause::counted_in : Cause::corrected, imported.movement, at, note, std::nullopt});
  }
}

}  // namespace

Stockroom::Stockroom(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Stockroom::Stockroom(Stockroom&&) noexcept = default;
Stockroom& Stockroom::operator=(Stockroom&&) noexcept = default;
Stockroom::~Stockroom() = default;

Result<Stockroom> Stockroom::open(const std::string& file) {
  if (const auto made = make_folder(file); !made) return made.problem();
  return guarded(file, [&]() -> Result<Stockroom> {
    auto inside = std::make_unique<Inside>(file);
    inside->database.exec("PRAGMA foreign_keys = ON");
    if (const auto ready = bring_up_to_date(inside->database, file, migrations()); !ready)
      return ready.problem();
    change_over_to_wal(inside->database);
    inside->database.exec("PRAGMA synchronous = FULL");  // what was done stays done when the power fails
    return Stockroom(std::move(inside));
  });
}

Result<std::vector<materials::StockedItem>> Stockroom::items(std::optional<StockKind> kind) const {
  return in_snapshot(inside_->database, inside_->file, [&]() -> Result<std::vector<materials::StockedItem>> {
    auto kept = read_items(inside_->database, kind);
    if (!kept) return kept.problem().within(inside_->file);
    std::vector<materials::StockedItem> items;
    items.reserve(kept->size());
    for (KeptItem& item : *kept) items.push_back(std::move(item.held));
    return items;
  });
}

Result<materials::StockedItem> Stockroom::item(const std::string& code) const {
  return in_snapshot(inside_->database, inside_->file, [&]() -> Result<materials::StockedItem> {
    auto kept = read_item(inside_->database, code);
    if (!kept) return kept.problem();
    return std::move(kept->held);
  });
}

Result<Done> Stockroom::put(const materials::StockItem& item) {
  if (const auto checked = stockroom::check(item); !checked) return checked.problem().within(item.code);
  return in_transaction(inside_->database, inside_->file, [&]() -> Result<Done> {
    ItemWriter writer(inside_->database);
    const auto kept = read_item(inside_->database, item.code);
    if (!kept) {
      static_cast<void>(writer.add(item));
      return Done{};
    }
    if (kind_of(kept->held.item) != kind_of(item))
      return Problem{ProblemCode::wrong_type, item.code, std::string(kind_name(kind_of(item))),
                     std::string(kind_name(kind_of(kept->held.item))) + ", as it is in stock"};
    writer.replace(kept->id, item);
    return Done{};
  });
}

Result<Movement> Stockroom::count_in(const std::string& code, std::int64_t amount, Time at,
                                     const std::string& note) {
  return moved(inside_->move(code, Cause::counted_in, at, note,
                             [&](StockKind kind, const StockLevel& level) -> Result<std::int64_t> {
                               if (amount < 1) return beyond(kind, amount, "more than nothing");
                               if (amount > most_amount - level.on_hand)
                                 return beyond(kind, amount,
                                               "at most " + amount_text(kind, most_amount) + " in all");
                               return amount;
                             }));
}

Result<Movement> Stockroom::use(const std::string& code, std::int64_t amount, Time at,
                                const std::string& note) {
  return moved(inside_->move(
      code, Cause::used, at, note, [&](StockKind kind, const StockLevel& level) -> Result<std::int64_t> {
        if (amount < 1) return beyond(kind, amount, "more than nothing");
        if (amount > level.free())
          return beyond(kind, amount, "at most " + amount_text(kind, level.free()) + ", which is free");
        return -amount;
      }));
}

Result<std::optional<Movement>> Stockroom::correct(const std::string& code, std::int64_t counted, Time at,
                                                   const std::string& note) {
  return inside_->move(
      code, Cause::corrected, at, note, [&](StockKind kind, const StockLevel& level) -> Result<std::int64_t> {
        if (counted > most_amount) return beyond(kind, counted, "at most " + amount_text(kind, most_amount));
        if (counted < level.reserved)
          return beyond(kind, counted,
                        level.reserved > 0
                            ? "at least " + amount_text(kind, level.reserved) + ", which is reserved"
                            : "0 or more");
        return counted - level.on_hand;
      });
}

Result<std::vector<Movement>> Stockroom::journal(const std::optional<std::string>& code,
                                                 const std::optional<std::string>& run) const {
  return in_snapshot(inside_->database, inside_->file, [&]() -> Result<std::vector<Movement>> {
    std::optional<std::int64_t> item_key, run_key;
    if (code) {
      const auto item = read_item(inside_->database, *code);
      if (!item) return item.problem();
      item_key = item->id;
    }
    if (run) {
      const auto kept = read_run(inside_->database, *run);
      if (!kept) return kept.problem();
      run_key = kept->id;
    }
    return read_movements(inside_->database, item_key, run_key);
  });
}

Result<Run> Stockroom::reserve(const std::string& run, const std::vector<RunItem>& items, Time at,
                               const std::string& note) {
  return in_transaction(inside_->database, inside_->file,
                        [&] { return stockroom::reserve(inside_->database, run, items, at, note); });
}

Result<Run> Stockroom::release(const std::string& run, Time at) {
  return in_transaction(inside_->database, inside_->file,
                        [&] { return close(inside_->database, run, at, false); });
}

Result<Run> Stockroom::take(const std::string& run, Time at) {
  return in_transaction(inside_->database, inside_->file,
                        [&] { return close(inside_->database, run, at, true); });
}

Result<std::vector<Run>> Stockroom::runs() const {
  return in_snapshot(inside_->database, inside_->file, [&]() -> Result<std::vector<Run>> {
    auto kept = read_runs(inside_->database);
    if (!kept) return kept.problem().within(inside_->file);
    std::vector<Run> runs;
    for (KeptRun& run : *kept) runs.push_back(std::move(run.run));
    return runs;
  });
}

Result<ImportReport> Stockroom::import_table(const CsvTable& table, const ImportOptions& options, Time at) {
  if (const auto checked = check_text("note", options.note); !checked) return checked.problem();
  std::unordered_map<std::string, std::int64_t> keys;
  const auto plan = [&]() -> Result<ImportReport> {
    auto kept = read_items(inside_->database);
    if (!kept) return kept.problem().within(inside_->file);
    ItemsByCode held;
    for (KeptItem& item : *kept) {
      keys.emplace(item.held.item.code, item.id);
      held.emplace(item.held.item.code, std::move(item.held));
    }
    return plan_import(table, held, options);
  };
  if (options.dry_run) return in_snapshot(inside_->database, inside_->file, plan);
  return in_transaction(inside_->database, inside_->file, [&]() -> Result<ImportReport> {
    auto report = plan();
    if (!report || (report->fault_count > 0 && !options.skip_bad)) return report;
    write_plan(inside_->database, *report, keys, at, options.note);
    report->written = true;
    return report;
  });
}

Result<std::vector<std::string>> Stockroom::check() const {
  return in_snapshot(inside_->database, inside_->file,
                     [&]() -> Result<std::vector<std::string>> { return look_over(inside_->database); });
}

}  // namespace evencount::stockroom
