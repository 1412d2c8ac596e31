#pragma once
/// What the stockroom takes in.

#include "materials/stock.hpp"

namespace evencount::stockroom {

inline constexpr std::size_t longest_code = 100, longest_text = 4000;  ///< in bytes
inline constexpr std::size_t most_packs = 100;                         ///< of one item

/// Text that can be kept: UTF-8, no blanks at its ends, no control characters but line feeds and tabs (neither in a code).
/// Errors: bad_text, out_of_range (too long).
[[nodiscard]] Result<Done> check_text(std::string_view field, std::string_view text);
/// The same for a name that must be there: a code, the name of a run. Errors: also missing_field.
[[nodiscard]] Result<Done> check_key(std::string_view field, std::string_view text);
/// Three capital letters. Errors: bad_text.
[[nodiscard]] Result<Done> check_currency(std::string_view currency);

/// One of its packs. Errors: out_of_range, bad_text.
[[nodiscard]] Result<Done> check_pack(materials::StockKind kind, const materials::PackOffer& pack);

/// An item as the stockroom can keep it; `where` names the field as the CSV column does.
/// Errors: missing_field (no code, no name, …), bad_text, unknown_name (a bead size, a thread), out_of_range, and those of
/// form::parse_form. An outline is refused, as its points are not in its notation.
[[nodiscard]] Result<Done> check(const materials::StockItem& item);

}  // namespace evencount::stockroom
