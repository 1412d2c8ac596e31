#include "stockroom/import.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "stockroom/amounts.hpp"
#include "stockroom/import_layout.hpp"
#include "stockroom/item_check.hpp"

namespace evencount::stockroom {
namespace {

using materials::PackOffer;
using materials::StockItem;

/// Spreadsheets end the lines within a field with CR LF.
std::string tidy(std::string_view field) {
  std::string text(trim(field));
  for (std::size_t at = 0; (at = text.find("\r\n", at)) != std::string::npos;) text.erase(at, 1);
  return text;
}

std::string text_of(materials::StockKind kind, const std::vector<PackOffer>& packs) {
  std::string text;
  for (const PackOffer& pack : packs) {
    if (!text.empty()) text += "; ";
    text += amount_text(kind, pack.amount);
    if (pack.price) text += " " + to_text(*pack.price);
    for (const std::string& word : {pack.supplier, pack.order_code, pack.address})
      if (!word.empty()) text += " " + word;
  }
  return text;
}

class Planner {
 public:
  Planner(const CsvTable& table, const ItemsByCode& held, const ImportOptions& options, Layout layout)
      : table_(table), held_(held), options_(options), layout_(std::move(layout)) {
    report_.kind = layout_.kind;
  }

  Result<ImportReport> plan() {
    for (const TableRow& row : table_.rows) {
      numbers_.line = row.line;
      if (const auto read = read_row(row); !read) return read.problem();
    }
    for (Entry& entry : entries_)
      if (entry.good) finish(entry);
    std::stable_sort(report_.faults.begin(), report_.faults.end(),
                     [](const LineFault& a, const LineFault& b) { return a.line < b.line; });
    report_.fault_count = report_.faults.size();
    if (report_.faults.size() > most_faults) report_.faults.resize(most_faults);
    return std::move(report_);
  }

 private:
  struct Entry {
    int line = 0;
    bool good = true;
    Draft draft;
  };

  void blame(int line, Problem problem) { report_.faults.push_back({line, std::move(problem)}); }

  /// Errors: a column that a new item needs isn't there at all.
  Result<Done> read_row(const TableRow& row) {
    const std::size_t code_at = layout_.code_at;
    const std::string code = code_at < row.fields.size() ? tidy(row.fields[code_at]) : std::string();
    const auto seen = entry_of_.find(code);
    Entry* entry = seen == entry_of_.end() ? nullptr : &entries_[seen->second];
    if (row.fault) {
      blame(row.line, *row.fault);
      if (entry != nullptr) entry->good = false;
      return Done{};
    }
    if (entry != nullptr) {
      add_line(*entry, row);
      return Done{};
    }
    if (!layout_.missing.empty() && !held_.contains(code))
      return Problem{ProblemCode::missing_field, fmt::format("line {}", table_.header.line),
                     "no column " + layout_.missing,
                     fmt::format("what new items need, such as {} on line {}", quote(code), row.line)};
    entry_of_.emplace(code, entries_.size());
    entries_.push_back(begin(code, row));
    return Done{};
  }

  /// The first line of an item.
  Entry begin(const std::string& code, const TableRow& row) {
    Entry entry{.line = row.line, .good = true, .draft = {}};
    const auto held = held_.find(code);
    entry.draft.item = held == held_.end() ? empty_item(layout_.kind) : held->second.item;
    if (kind_of(entry.draft.item) != layout_.kind) {
      blame(row.line, {ProblemCode::wrong_type, "code",
                       quote(code) + ", which is of the " + std::string(kind_name(kind_of(entry.draft.item))),
                       "a code of the " + std::string(kind_name(layout_.kind))});
      entry.good = false;
      return entry;
    }
    if (layout_.has_packs) entry.draft.item.packs.clear();
    for (const Field& field : layout_.fields)
      if (field.column->part != ColumnPart::pack) read_field(entry, row, field);
    if (entry.good && holds_pack(row)) read_pack(entry, row);
    if (!entry.good) return entry;
    if (auto checked = check(entry.draft.item); !checked) {
      blame(row.line, checked.problem());
      entry.good = false;
    }
    return entry;
  }

  /// A further line with the same code.
  void add_line(Entry& entry, const TableRow& row) {
    const bool only_pack = std::all_of(layout_.fields.begin(), layout_.fields.end(), [&](const Field& field) {
      const bool of_item =
          field.column->part == ColumnPart::item || field.column->part == ColumnPart::counted;
      return !of_item || field.is_constant() || trim(row.fields[*field.at]).empty();
    });
    if (!only_pack || !holds_pack(row)) {
      const std::string& code = row.fields[layout_.code_at];
      return blame(row.line,
                   {ProblemCode::duplicate_name, "code",
                    fmt::format("{} again, as on line {}", quote(code), entry.line),
                    "each code once; a line that holds nothing but a code and a pack adds the pack"});
    }
    if (entry.good) read_pack(entry, row);
    if (entry.good && entry.draft.item.packs.size() > most_packs) {
      entry.good = false;
      blame(row.line, {ProblemCode::out_of_range, "code", "another pack",
                       fmt::format("at most {} of one item", most_packs)});
    }
  }

  void read_field(Entry& entry, const TableRow& row, const Field& field) {
    const Column& column = *field.column;
    const std::string text = field.is_constant() ? field.constant : tidy(row.fields[*field.at]);
    Result<Done> read = Problem{ProblemCode::missing_field, "", "nothing", "what every item has"};
    if (!text.empty() || !column.required) read = column.read(entry.draft, text, numbers_);
    if (read) return;
    blame(row.line, read.problem().within(column.name));
    entry.good = false;
  }

  [[nodiscard]] bool holds_pack(const TableRow& row) const {
    return std::any_of(layout_.fields.begin(), layout_.fields.end(), [&](const Field& field) {
      return field.column->part == ColumnPart::pack && !field.is_constant() &&
             !trim(row.fields[*field.at]).empty();
    });
  }

  void read_pack(Entry& entry, const TableRow& row) {
    Draft& draft = entry.draft;
    draft.pack = {};
    draft.price.reset();
    draft.currency.clear();
    for (const Field& field : layout_.fields)
      if (field.column->part == ColumnPart::pack) read_field(entry, row, field);
    if (!entry.good) return;
    if (draft.currency.empty()) draft.currency = options_.currency;
    if (draft.price) draft.pack.price = Money{*draft.price, draft.currency};
    auto checked = check_currency(draft.currency);
    if (checked) checked = check_pack(layout_.kind, draft.pack);
    if (checked) return draft.item.packs.push_back(draft.pack);
    blame(row.line, checked.problem());
    entry.good = false;
  }

  /// All its lines are read: what does it change?
  void finish(Entry& entry) {
    Draft& draft = entry.draft;
    const auto found = held_.find(draft.item.code);
    const materials::StockedItem* held = found == held_.end() ? nullptr : &found->second;
    const std::int64_t on_hand = held ? held->level.on_hand : 0;
    ImportedItem imported{
        .line = entry.line, .effect = ImportEffect::added, .item = {}, .movement = 0, .changes = {}};
    if (draft.counted) {
      imported.movement = *draft.counted - on_hand;
      if (held && *draft.counted < held->level.reserved)
        return blame(
            entry.line,
            {ProblemCode::out_of_range, counted_column(), amount_text(layout_.kind, *draft.counted),
             "at least " + amount_text(layout_.kind, held->level.reserved) + ", which are reserved"});
    }
    if (held) {
      imported.changes = changes(*held, draft.item, imported.movement);
      imported.effect = imported.changes.empty() ? ImportEffect::unchanged : ImportEffect::changed;
    }
    imported.item = std::move(draft.item);
    report_.items.push_back(std::move(imported));
  }

  [[nodiscard]] std::string counted_column() const {
    for (const Field& field : layout_.fields)
      if (field.column->part == ColumnPart::counted) return std::string(field.column->name);
    return "counted";
  }

  [[nodiscard]] std::vector<FieldChange> changes(const materials::StockedItem& held, const StockItem& item,
                                                 std::int64_t movement) const {
    std::vector<FieldChange> all;
    const Line before{held.item, held.level.on_hand}, after{item, held.level.on_hand + movement};
    for (const Column& column : columns_of(layout_.kind)) {
      if (!column.written || column.part == ColumnPart::pack) continue;
      std::string was = column.write(before), is = column.write(after);
      if (was != is) all.push_back({std::string(column.name), std::move(was), std::move(is)});
    }
    if (held.item.packs != item.packs)
      all.push_back({"packs", text_of(layout_.kind, held.item.packs), text_of(layout_.kind, item.packs)});
    return all;
  }

  const CsvTable& table_;
  const ItemsByCode& held_;
  const ImportOptions& options_;
  Layout layout_;
  Numbers numbers_;
  std::vector<Entry> entries_;
  std::unordered_map<std::string, std::size_t> entry_of_;
  ImportReport report_;
};

}  // namespace

std::size_t ImportReport::count(ImportEffect effect) const {
  return static_cast<std::size_t>(std::count_if(
      items.begin(), items.end(), [&](const ImportedItem& item) { return item.effect == effect; }));
}

Result<ImportReport> plan_import(const CsvTable& table, const ItemsByCode& held,
                                 const ImportOptions& options) {
  if (const auto currency = check_currency(options.currency); !currency) return currency.problem();
  auto layout = lay_out(table, options);
  if (!layout) return layout.problem();
  return Planner(table, held, options, std::move(*layout)).plan();
}

}  // namespace evencount::stockroom
