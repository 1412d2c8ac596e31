#include "stockroom/item_table.hpp"

#include "base/text.hpp"
#include "stockroom/columns.hpp"

namespace evencount::stockroom {
namespace {

using materials::PackOffer;
using materials::StockItem;

constexpr const char* item_columns =
    "SELECT id, code, kind, name, what, finish, colour, beads_per_gram, diameter_mm, note, on_hand, reserved "
    "FROM item ";
enum ItemColumn {
  id,
  code,
  kind,
  name,
  what,
  finish,
  colour,
  beads_per_gram,
  diameter_mm,
  note,
  on_hand,
  reserved
};

Problem strange(const StockItem& item) {
  return {ProblemCode::file_unreadable, item.code, "an entry that this version doesn't know", "a stockroom"};
}

/// The parts that each kind has; `fill` reads them from a row, `bind` writes them.
struct KindParts {
  SQLite::Statement& row;

  Result<std::optional<colour::Rgb>> colour_of() const {
    const SQLite::Column text = row.getColumn(colour);
    if (text.isNull()) return std::optional<colour::Rgb>{};
    const auto parsed = colour::parse_hex(text.getString());
    if (!parsed) return parsed.problem();
    return std::optional(*parsed);
  }
  Result<Done> operator()(materials::BeadStock& beads) const {
    beads.size = row.getColumn(what).getString();
    const auto parsed = bead::parse_finish(row.getColumn(finish).getString());
    if (!parsed) return parsed.problem();
    beads.finish = *parsed;
    if (const SQLite::Column count = row.getColumn(beads_per_gram); !count.isNull())
      beads.beads_per_gram = count.getDouble();
    return take_colour(beads.colour);
  }
  Result<Done> operator()(materials::FormStock& form) const {
    form.form = row.getColumn(what).getString();
    return take_colour(form.colour);
  }
  Result<Done> operator()(materials::ThreadStock& thread) const {
    thread.thread = row.getColumn(what).getString();
    return take_colour(thread.colour);
  }
  Result<Done> operator()(materials::CordStock& cord) const {
    cord.cord = row.getColumn(what).getString();
    cord.diameter = millimetres(row.getColumn(diameter_mm).getDouble());
    return take_colour(cord.colour);
  }
  Result<Done> operator()(materials::FindingStock& finding) const {
    finding.what = row.getColumn(what).getString();
    return Done{};
  }
  Result<Done> take_colour(std::optional<colour::Rgb>& place) const {
    const auto read = colour_of();
    if (!read) return read.problem();
    place = *read;
    return Done{};
  }
};

Result<KeptItem> item_of(SQLite::Statement& row) {
  KeptItem kept;
  kept.id = row.getColumn(id).getInt64();
  StockItem& item = kept.held.item;
  const auto parsed = materials::parse_stock_kind(row.getColumn(kind).getString());
  if (parsed) item = empty_item(*parsed);
  item.code = row.getColumn(code).getString();
  item.name = row.getColumn(name).getString();
  item.note = row.getColumn(note).getString();
  if (!parsed || !std::visit(KindParts{row}, item.what)) return strange(item);
  kept.held.level = {row.getColumn(on_hand).getInt64(), row.getColumn(reserved).getInt64()};
  return kept;
}

PackOffer pack_of(SQLite::Statement& row) {
  PackOffer pack;
  pack.amount = row.getColumn(1).getInt64();
  if (!row.getColumn(2).isNull())
    pack.price = Money{row.getColumn(2).getInt64(), row.getColumn(3).getString()};
  pack.supplier = row.getColumn(4).getString();
  pack.order_code = row.getColumn(5).getString();
  pack.address = row.getColumn(6).getString();
  return pack;
}

constexpr const char* pack_columns =
    "SELECT item, amount, price_minor, currency, supplier, order_code, address FROM pack ";

/// Binds the parts of an item from `place` on: name, what, finish, colour, beads_per_gram, diameter_mm, note.
struct Binder {
  SQLite::Statement& statement;
  int place;

  void operator()(const materials::BeadStock& beads) const {
    statement.bind(place + 1, beads.size);
    statement.bind(place + 2, std::string(bead::finish_name(beads.finish)));
    bind_colour(beads.colour);
    if (beads.beads_per_gram) statement.bind(place + 4, *beads.beads_per_gram);
  }
  void operator()(const materials::FormStock& form) const {
    statement.bind(place + 1, form.form);
    bind_colour(form.colour);
  }
  void operator()(const materials::ThreadStock& thread) const {
    statement.bind(place + 1, thread.thread);
    bind_colour(thread.colour);
  }
  void operator()(const materials::CordStock& cord) const {
    statement.bind(place + 1, cord.cord);
    bind_colour(cord.colour);
    statement.bind(place + 5, cord.diameter.mm());
  }
  void operator()(const materials::FindingStock& finding) const { statement.bind(place + 1, finding.what); }
  void bind_colour(const std::optional<colour::Rgb>& colour) const {
    if (colour) statement.bind(place + 3, colour::to_hex(*colour));
  }
};

void bind_item(SQLite::Statement& statement, int place, const StockItem& item) {
  statement.reset();
  statement.clearBindings();
  statement.bind(place, item.name);
  std::visit(Binder{statement, place}, item.what);
  statement.bind(place + 6, item.note);
}

}  // namespace

Result<std::vector<KeptItem>> read_items(SQLite::Database& database,
                                         std::optional<materials::StockKind> wanted) {
  std::vector<KeptItem> items;
  SQLite::Statement rows(database,
                         std::string(item_columns) + (wanted ? "WHERE kind = ? " : "") + "ORDER BY code");
  if (wanted) rows.bind(1, std::string(kind_name(*wanted)));
  std::unordered_map<std::int64_t, std::size_t> place_of;
  while (rows.executeStep()) {
    auto item = item_of(rows);
    if (!item) return item.problem();
    place_of.emplace(item->id, items.size());
    items.push_back(std::move(*item));
  }
  SQLite::Statement packs(database, std::string(pack_columns) + "ORDER BY item, position");
  while (packs.executeStep())
    if (const auto place = place_of.find(packs.getColumn(0).getInt64()); place != place_of.end())
      items[place->second].held.item.packs.push_back(pack_of(packs));
  return items;
}

Result<KeptItem> read_item(SQLite::Database& database, const std::string& wanted) {
  SQLite::Statement rows(database, std::string(item_columns) + "WHERE code = ?");
  rows.bind(1, wanted);
  if (!rows.executeStep())
    return Problem{ProblemCode::unknown_name, "", quote(wanted), "the code of an item in stock"};
  auto item = item_of(rows);
  if (!item) return item.problem();
  SQLite::Statement packs(database, std::string(pack_columns) + "WHERE item = ? ORDER BY position");
  packs.bind(1, item->id);
  while (packs.executeStep()) item->held.item.packs.push_back(pack_of(packs));
  return item;
}

ItemWriter::ItemWriter(SQLite::Database& database)
    : database_(database),
      add_(database,
           "INSERT INTO item (code, kind, name, what, finish, colour, beads_per_gram, diameter_mm, note) "
           "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)"),
      replace_(database,
               "UPDATE item SET name = ?, what = ?, finish = ?, colour = ?, beads_per_gram = ?, diameter_mm "
               "= ?, note = ? "
               "WHERE id = ?"),
      remove_packs_(database, "DELETE FROM pack WHERE item = ?"),
      add_pack_(
          database,
          "INSERT INTO pack (item, position, amount, price_minor, currency, supplier, order_code, address) "
          "VALUES (?, ?, ?, ?, ?, ?, ?, ?)") {}

std::int64_t ItemWriter::add(const StockItem& item) {
  constexpr int after_code_and_kind = 3;
  bind_item(add_, after_code_and_kind, item);
  add_.bind(1, item.code);
  add_.bind(2, std::string(kind_name(kind_of(item))));
  add_.exec();
  const std::int64_t key = database_.getLastInsertRowid();
  add_packs(key, item);
  return key;
}

void ItemWriter::replace(std::int64_t key, const StockItem& item) {
  bind_item(replace_, 1, item);
  replace_.bind(8, key);
  replace_.exec();
  remove_packs_.reset();
  remove_packs_.bind(1, key);
  remove_packs_.exec();
  add_packs(key, item);
}

void ItemWriter::add_packs(std::int64_t key, const StockItem& item) {
  std::int64_t position = 0;
  for (const PackOffer& pack : item.packs) {
    add_pack_.reset();
    add_pack_.clearBindings();
    add_pack_.bind(1, key);
    add_pack_.bind(2, ++position);
    add_pack_.bind(3, pack.amount);
    if (pack.price) {
      add_pack_.bind(4, pack.price->minor);
      add_pack_.bind(5, pack.price->currency);
    }
    add_pack_.bind(6, pack.supplier);
    add_pack_.bind(7, pack.order_code);
    add_pack_.bind(8, pack.address);
    add_pack_.exec();
  }
}

}  // namespace evencount::stockroom
