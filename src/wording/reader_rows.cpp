#include "wording/reader_rows.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "wording/reader_tokens.hpp"

namespace evencount::wording::reader {

std::string WholeBand::place(int number) const {
  const WholeRow& here = rows[static_cast<std::size_t>(number) - 1];
  if (here.row->first_row <= number && number <= here.row->last_row) return place_text(*here.row, "");
  return fmt::format("line {}, {} ({} again)", here.line, row_text(number, number, here.row->round),
                     row_text(*here.row));
}

std::span<const RowRules* const> all_rules() {
  static const std::vector<const RowRules*> all = [] {
    std::vector<const RowRules*> rules;
    for (const auto family : {peyote_rules(), round_rules(), brick_rules(), square_rules(), unit_rules()})
      for (const RowRules& one : family) rules.push_back(&one);
    return rules;
  }();
  return all;
}

Result<const RowRules*> find_rules(std::string_view id) {
  std::string ids;
  for (const RowRules* rules : all_rules()) {
    if (rules->id == id) return rules;
    ids += (ids.empty() ? "" : ", ") + std::string(rules->id);
  }
  return Problem{ProblemCode::unknown_name, "technique", quote(valid_text(id)), "one of " + ids};
}

const RowRules& flat_rules(bool odd_count) {
  const auto rules = peyote_rules();
  return *std::find_if(rules.begin(), rules.end(),
                       [&](const RowRules& r) { return r.odd_count == odd_count; });
}

std::optional<int> as_many_columns(int beads) {
  return beads;
}

std::optional<int> no_limit(const RowQuestion&) {
  return std::nullopt;
}

}  // namespace evencount::wording::reader
