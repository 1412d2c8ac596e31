#pragma once
/// A finished booklet read again: the last step of making it. Private to this room.

#include "page/sections.hpp"

namespace evencount::page {

/// From the bytes of the PDF: each band stands under its own heading, in order; the words from there to the sum of its rows make its chart, in
/// its technique and going its way; behind every row is its number of beads; the words hold the beads that the supplies count, and the supply
/// list in the text says those counts. What the designer wrote elsewhere is not read as words. Errors: bad_plan (a fault of ours that
/// must not reach a maker).
///
/// What it can't see: pictures. That a chart is drawn as its plan is, drawing's own tests prove.
[[nodiscard]] Result<Done> read_back(const std::string& pdf, const Subject& subject);

}  // namespace evencount::page
