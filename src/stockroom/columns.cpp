#include "stockroom/columns.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <vector>

#include "base/text.hpp"
#include "form/form.hpp"
#include "stockroom/amounts.hpp"

namespace evencount::stockroom {
namespace {

using materials::BeadStock;
using materials::CordStock;
using materials::FindingStock;
using materials::FormStock;
using materials::StockItem;
using materials::StockKind;
using materials::ThreadStock;

template <typename Kind>
Kind& what(StockItem& item) {
  return std::get<Kind>(item.what);
}
template <typename Kind>
const Kind& what(const StockItem& item) {
  return std::get<Kind>(item.what);
}

/// A text of the item; `place` finds it in one.
template <auto place>
Column item_text(std::string_view name, bool required = false) {
  return {.name = name,
          .required = required,
          .read = [](Draft& draft, std::string_view text, Numbers&) -> Result<Done> {
            place(draft.item) = std::string(text);
            return Done{};
          },
          .write = [](const Line& line) { return place(line.item); }};
}

/// A text of a pack.
template <auto place>
Column pack_text(std::string_view name) {
  return {.name = name,
          .part = ColumnPart::pack,
          .read = [](Draft& draft, std::string_view text, Numbers&) -> Result<Done> {
            place(draft.pack) = std::string(text);
            return Done{};
          },
          .write = [](const Line& line) { return line.pack ? place(*line.pack) : std::string(); }};
}

template <typename Kind>
Column colour_column() {
  return {.name = "colour",
          .read = [](Draft& draft, std::string_view text, Numbers&) -> Result<Done> {
            what<Kind>(draft.item).colour.reset();
            if (text.empty()) return Done{};
            const auto colour = colour::parse_hex(text);
            if (!colour) return Problem{ProblemCode::bad_text, "", quote(text), "a colour, #rrggbb"};
            what<Kind>(draft.item).colour = *colour;
            return Done{};
          },
          .write =
              [](const Line& line) {
                const auto& colour = what<Kind>(line.item).colour;
                return colour ? colour::to_hex(*colour) : std::string();
              }};
}

template <int decimals>
Column counted_column(std::string_view name) {
  return {.name = name,
          .part = ColumnPart::counted,
          .number = true,
          .read = [](Draft& draft, std::string_view text, Numbers& numbers) -> Result<Done> {
            draft.counted.reset();
            if (text.empty()) return Done{};
            const auto counted = numbers.scaled(text, decimals, most_amount);
            if (!counted) return counted.problem();
            draft.counted = *counted;
            return Done{};
          },
          .write = [](const Line& line) { return decimal_text(line.on_hand, decimals); }};
}

template <int decimals>
Column pack_column(std::string_view name) {
  return {.name = name,
          .part = ColumnPart::pack,
          .number = true,
          .read = [](Draft& draft, std::string_view text, Numbers& numbers) -> Result<Done> {
            const auto amount = numbers.scaled(text, decimals, most_amount);
            if (!amount) return amount.problem();
            draft.pack.amount = *amount;
            return Done{};
          },
          .write =
              [](const Line& line) {
                return line.pack ? decimal_text(line.pack->amount, decimals) : std::string();
              }};
}

Column price_column() {
  return {.name = "price",
          .part = ColumnPart::pack,
          .number = true,
          .read = [](Draft& draft, std::string_view text, Numbers& numbers) -> Result<Done> {
            draft.price.reset();
            if (text.empty()) return Done{};
            constexpr int cents = 2;
            const auto price = numbers.scaled(text, cents, most_price);
            if (!price) return price.problem();
            draft.price = *price;
            return Done{};
          },
          .write =
              [](const Line& line) {
                return line.pack && line.pack->price ? decimal_text(line.pack->price->minor, 2, true)
                                                     : std::string();
              }};
}

Column currency_column() {
  return {.name = "currency",
          .part = ColumnPart::pack,
          .read = [](Draft& draft, std::string_view text, Numbers&) -> Result<Done> {
            draft.currency = std::string(text);
            return Done{};
          },
          .write =
              [](const Line& line) {
                return line.pack && line.pack->price ? line.pack->price->currency : std::string();
              }};
}

void add_bead_columns(std::vector<Column>& columns) {
  columns.push_back(item_text<[](auto& item) -> auto& { return what<BeadStock>(item).size; }>("size", true));
  columns.push_back({.name = "finish",
                     .read = [](Draft& draft, std::string_view text, Numbers&) -> Result<Done> {
                       const auto finish = text.empty() ? bead::Finish::opaque : bead::parse_finish(text);
                       if (!finish) return finish.problem();
                       what<BeadStock>(draft.item).finish = *finish;
                       return Done{};
                     },
                     .write =
                         [](const Line& line) {
                           return std::string(bead::finish_name(what<BeadStock>(line.item).finish));
                         }});
  columns.push_back(colour_column<BeadStock>());
  columns.push_back({.name = "beads_per_gram",
                     .number = true,
                     .read = [](Draft& draft, std::string_view text, Numbers& numbers) -> Result<Done> {
                       what<BeadStock>(draft.item).beads_per_gram.reset();
                       if (text.empty()) return Done{};
                       const auto number = numbers.real(text);
                       if (!number) return number.problem();
                       what<BeadStock>(draft.item).beads_per_gram = *number;
                       return Done{};
                     },
                     .write =
                         [](const Line& line) {
                           const auto& number = what<BeadStock>(line.item).beads_per_gram;
                           return number ? fmt::format("{}", *number) : std::string();
                         }});
  columns.push_back({.name = "thousand_g",
                     .written = false,
                     .number = true,
                     .read = [](Draft& draft, std::string_view text, Numbers& numbers) -> Result<Done> {
                       what<BeadStock>(draft.item).beads_per_gram.reset();
                       if (text.empty()) return Done{};
                       const auto grams = numbers.real(text);
                       if (!grams) return grams.problem();
                       if (!(*grams > 0))
                         return Problem{ProblemCode::out_of_range, "", quote(text), "a weight above 0"};
                       what<BeadStock>(draft.item).beads_per_gram = 1000 / *grams;
                       return Done{};
                     }});
}

void add_cord_columns(std::vector<Column>& columns) {
  columns.push_back(item_text<[](auto& item) -> auto& { return what<CordStock>(item).cord; }>("cord", true));
  columns.push_back(
      {.name = "diameter_mm",
       .required = true,
       .number = true,
       .read = [](Draft& draft, std::string_view text, Numbers& numbers) -> Result<Done> {
         const auto number = numbers.real(text);
         if (!number) return number.problem();
         what<CordStock>(draft.item).diameter = millimetres(*number);
         return Done{};
       },
       .write =
           [](const Line& line) { return fmt::format("{}", what<CordStock>(line.item).diameter.mm()); }});
  columns.push_back(colour_column<CordStock>());
}

/// Notations that mean the same are kept in the same words.
Column form_column() {
  return {.name = "form",
          .required = true,
          .read = [](Draft& draft, std::string_view text, Numbers&) -> Result<Done> {
            const auto form = form::parse_form(text);
            if (!form) return form.problem();
            what<FormStock>(draft.item).form = form::to_notation(*form);
            return Done{};
          },
          .write = [](const Line& line) { return what<FormStock>(line.item).form; }};
}

void add_own_columns(std::vector<Column>& columns, StockKind kind) {
  switch (kind) {
    case StockKind::beads:
      return add_bead_columns(columns);
    case StockKind::cord:
      return add_cord_columns(columns);
    case StockKind::forms:
      columns.push_back(form_column());
      return columns.push_back(colour_column<FormStock>());
    case StockKind::thread:
      columns.push_back(
          item_text<[](auto& item) -> auto& { return what<ThreadStock>(item).thread; }>("thread", true));
      return columns.push_back(colour_column<ThreadStock>());
    case StockKind::findings:
      return columns.push_back(
          item_text<[](auto& item) -> auto& { return what<FindingStock>(item).what; }>("finding", true));
  }
}

std::vector<Column> make_columns(StockKind kind) {
  Column code = item_text < [](auto& item) -> auto& {
    return item.code;
  }
  > ("code", true);
  code.part = ColumnPart::code;
  std::vector<Column> columns{code, item_text < [](auto& item) -> auto& {return item.name;
}
> ("name", true)
};  // namespace
add_own_columns(columns, kind);
const bool beads = kind == StockKind::beads, pieces = decimals_of(kind) == 0;
columns.push_back(pieces ? counted_column<0>("counted")
                         : counted_column<3>(beads ? "counted_g" : "counted_m"));
columns.push_back(item_text<[](auto& item) -> auto& { return item.note; }>("note"));
columns.push_back(pieces ? pack_column<0>("pack") : pack_column<3>(beads ? "pack_g" : "pack_m"));
columns.push_back(price_column());
columns.push_back(currency_column());
columns.push_back(pack_text<[](auto& pack) -> auto& { return pack.supplier; }>("supplier"));
columns.push_back(pack_text<[](auto& pack) -> auto& { return pack.order_code; }>("order_code"));
columns.push_back(pack_text<[](auto& pack) -> auto& { return pack.address; }>("address"));
return columns;
}  // namespace evencount::stockroom

}  // namespace

Result<Done> Numbers::keep_to_one_sign(std::string_view text) {
  const auto at = text.find_first_of(".,");
  if (at == std::string_view::npos) return Done{};
  if (text.find_first_of(".,", at + 1) != std::string_view::npos)
    return Problem{ProblemCode::bad_text, "", quote(text), "one decimal sign and none between thousands"};
  if (sign_ == 0) {
    sign_ = text[at];
    first_line_ = line;
  }
  if (sign_ == text[at]) return Done{};
  return Problem{ProblemCode::bad_text, "", quote(text),
                 fmt::format("a decimal {}, as on line {}, and nothing between thousands",
                             sign_ == ',' ? "comma" : "point", first_line_)};
}

Result<std::int64_t> Numbers::scaled(std::string_view text, int decimals, std::int64_t most) {
  if (const auto one = keep_to_one_sign(text); !one) return one.problem();
  const auto value = parse_decimal(text, decimals);
  const bool too_many_digits =
      !value && text.size() > 15 && text.find_first_not_of("0123456789.,") == std::string_view::npos;
  if (!value && !too_many_digits) {
    const std::string expected = decimals == 0 ? "a whole number"
                                               : fmt::format("a number with at most {} digits after the {}",
                                                             decimals, sign_ == ',' ? "comma" : "point");
    return Problem{ProblemCode::bad_text, "", quote(text), expected};
  }
  if (too_many_digits || *value < 0 || *value > most)
    return Problem{ProblemCode::out_of_range, "", quote(text), "from 0 to " + decimal_text(most, decimals)};
  return *value;
}

Result<double> Numbers::real(std::string_view text) {
  if (const auto one = keep_to_one_sign(text); !one) return one.problem();
  std::string with_point(text);
  std::replace(with_point.begin(), with_point.end(), ',', '.');
  const auto value = parse_number(with_point);
  if (!value) return Problem{ProblemCode::bad_text, "", quote(text), "a number"};
  return *value;
}

std::span<const Column> columns_of(StockKind kind) {
  static const std::array tables{make_columns(StockKind::beads), make_columns(StockKind::forms),
                                 make_columns(StockKind::thread), make_columns(StockKind::cord),
                                 make_columns(StockKind::findings)};
  return tables[static_cast<std::size_t>(kind)];
}

const Column* find_column(StockKind kind, std::string_view name) {
  for (const Column& column : columns_of(kind))
    if (column.name == name) return &column;
  return nullptr;
}

std::string_view own_column(StockKind kind) {
  return columns_of(kind)[2].name;  // after code and name
}

StockItem empty_item(StockKind kind) {
  StockItem item;
  switch (kind) {
    case StockKind::beads:
      item.what = BeadStock{};
      break;
    case StockKind::forms:
      item.what = FormStock{};
      break;
    case StockKind::thread:
      item.what = ThreadStock{};
      break;
    case StockKind::cord:
      item.what = CordStock{};
      break;
    case StockKind::findings:
      item.what = FindingStock{};
      break;
  }
  return item;
}

}  // namespace evencount::stockroom
