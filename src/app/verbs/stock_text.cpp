#include "app/verbs/stock_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>

#include "app/places.hpp"
#include "base/text.hpp"
#include "stockroom/amounts.hpp"

namespace evencount::app {
namespace {

using materials::StockItem;

Json json_of(const std::optional<colour::Rgb>& colour) {
  return colour ? Json(colour::to_hex(*colour)) : Json(nullptr);
}

void add_kind(Json& json, const materials::BeadStock& beads) {
  json["size"] = beads.size;
  json["finish"] = bead::finish_name(beads.finish);
  json["colour"] = json_of(beads.colour);
  json["beads_per_gram"] = beads.beads_per_gram ? Json(*beads.beads_per_gram) : Json(nullptr);
}
void add_kind(Json& json, const materials::FormStock& form) {
  json["form"] = form.form;
  json["colour"] = json_of(form.colour);
}
void add_kind(Json& json, const materials::ThreadStock& thread) {
  json["thread"] = thread.thread;
  json["colour"] = json_of(thread.colour);
}
void add_kind(Json& json, const materials::CordStock& cord) {
  json["cord"] = cord.cord;
  json["diameter_mm"] = cord.diameter.mm();
  json["colour"] = json_of(cord.colour);
}
void add_kind(Json& json, const materials::FindingStock& finding) {
  json["finding"] = finding.what;
}

Json to_json(const materials::PackOffer& pack) {
  return {{"amount", pack.amount},
          {"price", pack.price ? Json{{"minor", pack.price->minor}, {"currency", pack.price->currency}}
                               : Json(nullptr)},
          {"supplier", pack.supplier},
          {"order_code", pack.order_code},
          {"address", pack.address}};
}

std::string words_of(const materials::BeadStock& beads) {
  return beads.size + ", " + std::string(bead::finish_name(beads.finish));
}
std::string words_of(const materials::FormStock& form) {
  return form.form;
}
std::string words_of(const materials::ThreadStock& thread) {
  return thread.thread;
}
std::string words_of(const materials::CordStock& cord) {
  return cord.cord + ", " + plain_number(cord.diameter.mm()) + " mm";
}
std::string words_of(const materials::FindingStock& finding) {
  return finding.what;
}

/// Characters, as a terminal counts most of them.
std::size_t width_of(const std::string& text) {
  return static_cast<std::size_t>(std::count_if(
      text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

}  // namespace

Result<stockroom::Stockroom> open_stock(const std::string& file) {
  if (!file.empty()) return stockroom::Stockroom::open(file);
  const auto data = data_folder("--stock FILE");
  if (!data) return data.problem();
  return stockroom::Stockroom::open((*data / "stock.sqlite").string());
}

Result<stockroom::Time> time_argument(const std::string& text) {
  if (text.empty()) return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
  auto time = stockroom::parse_time(text);
  if (!time) return time.problem().within("at");
  return time;
}

Result<std::optional<materials::StockKind>> kind_argument(const std::string& text) {
  if (text.empty()) return std::optional<materials::StockKind>{};
  const auto kind = materials::parse_stock_kind(text);
  if (!kind) return kind.problem().within("kind");
  return std::optional(*kind);
}

std::string describe(const StockItem& item) {
  return std::visit([](const auto& what) { return words_of(what); }, item.what);
}

std::string one_line(std::string text) {
  std::replace_if(
      text.begin(), text.end(), [](char c) { return c == '\n' || c == '\t'; }, ' ');
  return text;
}

void print_rows(std::ostream& out, const std::vector<std::vector<std::string>>& rows,
                const std::vector<std::size_t>& right) {
  std::vector<std::size_t> widths;
  for (const auto& row : rows) {
    if (row.size() > widths.size()) widths.resize(row.size(), 0);
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], width_of(row[i]));
  }
  for (const auto& row : rows) {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const std::string blanks(widths[i] - width_of(row[i]), ' ');
      const bool to_the_right = std::find(right.begin(), right.end(), i) != right.end();
      line += (i == 0 ? "" : "  ") + (to_the_right ? blanks + row[i] : row[i] + blanks);
    }
    line.erase(line.find_last_not_of(' ') + 1);
    out << line << '\n';
  }
}

Json to_json(const materials::StockedItem& held) {
  Json json{{"code", held.item.code}, {"kind", kind_name(kind_of(held.item))}, {"name", held.item.name}};
  std::visit([&](const auto& what) { add_kind(json, what); }, held.item.what);
  json["unit"] = unit_of(kind_of(held.item));
  json["on_hand"] = held.level.on_hand;
  json["reserved"] = held.level.reserved;
  json["free"] = held.level.free();
  json["packs"] = Json::array();
  for (const materials::PackOffer& pack : held.item.packs) json["packs"].push_back(to_json(pack));
  json["note"] = held.item.note;
  return json;
}

Json to_json(const stockroom::Movement& movement) {
  return {{"number", movement.number},
          {"at", stockroom::time_text(movement.at)},
          {"code", movement.code},
          {"cause", stockroom::cause_name(movement.cause)},
          {"amount", movement.amount},
          {"unit", unit_of(movement.kind)},
          {"run", movement.run.empty() ? Json(nullptr) : Json(movement.run)},
          {"note", movement.note}};
}

Json to_json(const stockroom::Run& run) {
  Json items = Json::array();
  for (const stockroom::RunItem& item : run.items)
    items.push_back({{"code", item.code}, {"amount", item.amount}});
  return {{"run", run.name},
          {"state", stockroom::state_name(run.state)},
          {"opened", stockroom::time_text(run.opened)},
          {"closed", run.closed ? Json(stockroom::time_text(*run.closed)) : Json(nullptr)},
          {"items", std::move(items)},
          {"note", run.note}};
}

}  // namespace evencount::app
