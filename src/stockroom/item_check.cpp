#include "stockroom/item_check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <initializer_list>

#include "base/text.hpp"
#include "bead/bead_size.hpp"
#include "bead/thread.hpp"
#include "form/form.hpp"
#include "stockroom/amounts.hpp"

namespace evencount::stockroom {
namespace {

constexpr double most_beads_per_gram = 1e5;        // a bead of a hundredth of a milligram
constexpr Length thickest_cord = millimetres(50);  // a rope, from memory

Problem named(Problem problem, std::string_view field) {
  problem.where = field;
  return problem;
}

bool is_control(char c) {
  return (static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t') || c == 0x7F;
}

Result<Done> check_word(std::string_view field, std::string_view text) {
  if (text.empty()) return Problem{ProblemCode::missing_field, std::string(field), "nothing", "a name"};
  return check_text(field, text);
}

Result<Done> check_what(const materials::BeadStock& beads) {
  if (beads.size.empty())
    return Problem{ProblemCode::missing_field, "size", "nothing", "a bead's size, such as cylinder-11"};
  if (const auto size = bead::find_size(beads.size); !size) return named(size.problem(), "size");
  if (beads.beads_per_gram && !(*beads.beads_per_gram > 0 && *beads.beads_per_gram <= most_beads_per_gram))
    return Problem{ProblemCode::out_of_range, "beads_per_gram", fmt::format("{}", *beads.beads_per_gram),
                   "above 0, at most 100,000"};
  return Done{};
}

Result<Done> check_what(const materials::FormStock& stock) {
  if (stock.form.empty())
    return Problem{ProblemCode::missing_field, "form", "nothing", "a form, such as lens:17x5x9"};
  if (const auto form = form::parse_form(stock.form); !form) return form.problem().within("form");
  return check_text("form", stock.form);
}

Result<Done> check_what(const materials::ThreadStock& stock) {
  if (stock.thread.empty())
    return Problem{ProblemCode::missing_field, "thread", "nothing", "a thread, such as braided-6lb"};
  if (const auto thread = bead::find_thread(stock.thread); !thread) return named(thread.problem(), "thread");
  return Done{};
}

Result<Done> check_what(const materials::CordStock& cord) {
  if (const auto word = check_word("cord", cord.cord); !word) return word;
  if (!(cord.diameter > Length{} && cord.diameter <= thickest_cord))
    return Problem{ProblemCode::out_of_range, "diameter_mm", plain_number(cord.diameter.mm(), 4),
                   "above 0, at most 50 mm"};
  return Done{};
}

Result<Done> check_what(const materials::FindingStock& finding) {
  return check_word("finding", finding.what);
}

}  // namespace

Result<Done> check_text(std::string_view field, std::string_view text) {
  const auto wrong = [&](ProblemCode code, std::string found, std::string expected) {
    return Problem{code, std::string(field), std::move(found), std::move(expected)};
  };
  if (text.size() > longest_text)
    return wrong(ProblemCode::out_of_range, fmt::format("{} bytes", text.size()),
                 fmt::format("at most {} bytes", longest_text));
  if (!is_utf8(text)) return wrong(ProblemCode::bad_text, "bytes that are no UTF-8", "text in UTF-8");
  if (std::any_of(text.begin(), text.end(), is_control))
    return wrong(ProblemCode::bad_text, "control characters", "text");
  if (trim(text).size() != text.size())
    return wrong(ProblemCode::bad_text, quote(text), "no blanks at either end");
  return Done{};
}

Result<Done> check_key(std::string_view field, std::string_view text) {
  const std::string where(field);
  if (text.empty()) return Problem{ProblemCode::missing_field, where, "nothing", "a name of its own"};
  if (text.size() > longest_code)
    return Problem{ProblemCode::out_of_range, where, quote(text),
                   fmt::format("at most {} bytes", longest_code)};
  if (text.find_first_of("\n\t") != std::string_view::npos)
    return Problem{ProblemCode::bad_text, where, quote(text), "one line without tabs"};
  return check_text(field, text);
}

Result<Done> check_currency(std::string_view currency) {
  constexpr std::size_t letters = 3;  // ISO 4217
  const bool good = currency.size() == letters && std::all_of(currency.begin(), currency.end(),
                                                              [](char c) { return c >= 'A' && c <= 'Z'; });
  if (!good)
    return Problem{ProblemCode::bad_text, "currency", quote(currency), "three capital letters, such as EUR"};
  return Done{};
}

Result<Done> check_pack(materials::StockKind kind, const materials::PackOffer& pack) {
  const std::string where = decimals_of(kind) == 0 ? "pack" : "pack_" + std::string(written_unit(kind));
  if (pack.amount < 1 || pack.amount > most_amount)
    return Problem{ProblemCode::out_of_range, where, amount_text(kind, pack.amount),
                   "above 0, at most " + amount_text(kind, most_amount)};
  if (pack.price) {
    if (pack.price->minor < 0 || pack.price->minor > most_price)
      return Problem{ProblemCode::out_of_range, "price", decimal_text(pack.price->minor, 2, true),
                     "from 0 to 1,000,000.00"};
    if (const auto currency = check_currency(pack.price->currency); !currency) return currency;
  }
  const std::initializer_list<std::pair<std::string_view, std::string_view>> texts{
      {"supplier", pack.supplier}, {"order_code", pack.order_code}, {"address", pack.address}};
  for (const auto& [field, text] : texts)
    if (const auto done = check_text(field, text); !done) return done;
  return Done{};
}

Result<Done> check(const materials::StockItem& item) {
  if (const auto code = check_key("code", item.code); !code) return code;
  if (const auto name = check_word("name", item.name); !name) return name;
  if (const auto what = std::visit([](const auto& kind) { return check_what(kind); }, item.what); !what)
    return what;
  if (const auto note = check_text("note", item.note); !note) return note;
  if (item.packs.size() > most_packs)
    return Problem{ProblemCode::out_of_range, "pack", fmt::format("{} packs", item.packs.size()),
                   fmt::format("at most {}", most_packs)};
  for (const materials::PackOffer& pack : item.packs)
    if (const auto done = check_pack(kind_of(item), pack); !done) return done;
  return Done{};
}

}  // namespace evencount::stockroom
