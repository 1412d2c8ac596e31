#pragma once
/// Changing a layout in its text. What stands before the list stays as its designer wrote it, comments and all; a list that
/// changes is written anew.
///
/// Properties (tests/strand/layout_edit_test.cpp):
///  (1) parse_layout(with_items(t, i)) has the items i and everything else of t
///  (2) with_name there and back gives the text again, where the new name isn't in it
///  (3) the texts that items are written as read back as they were
/// Errors of all: those of parse_layout's words and signs; bad_text (a text without a list).

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "strand/layout.hpp"

namespace evencount::strand {

/// As the layout's language writes it: "fill sides with round-8".
[[nodiscard]] std::string to_text(const Item& item);

/// Lines break between the items of the outermost list.
[[nodiscard]] Result<std::string> with_items(std::string_view text, const std::vector<Item>& items);

/// A statement more, before the list: "bead stop 6mm".
[[nodiscard]] Result<std::string> with_statement(std::string_view text, std::string_view statement);

/// Closed with that; an empty name leaves the ends knotted to each other.
[[nodiscard]] Result<std::string> with_closing(std::string_view text, std::string_view name);

[[nodiscard]] Result<std::string> with_cords(std::string_view text, int cords, const Cord& cord);

/// What the layout calls `from` called `to`, wherever it names something that is strung; its parts keep their names.
/// Errors: also those of parse_layout.
[[nodiscard]] Result<std::string> with_name(std::string_view text, std::span<const Element> catalogue,
                                            std::string_view from, std::string_view to);

/// Whether an item or something within it is called that.
[[nodiscard]] bool names(const Item& item, std::string_view name);

/// The list without what is called that, and without brackets and runs that nothing is left of.
[[nodiscard]] std::vector<Item> without(const std::vector<Item>& items, std::string_view name);

}  // namespace evencount::strand
