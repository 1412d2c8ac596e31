#pragma once
/// A finished booklet read again: the last step of making it. Private to this room.

#include "page/sections.hpp"

namespace evencount::page {

/// From the bytes of the PDF: the words in its text make the chart of every band, in order and under its name, and no other; they hold
/// the beads that the supplies count; and the supply list in the text says those counts. Errors: bad_plan (a fault of ours that
/// must not reach a maker).
[[nodiscard]] Result<Done> read_back(const std::string& pdf, const Subject& subject);

}  // namespace evencount::page
