#pragma once
/// Outlines of rows that lie half a bead off the row before: where a row begins and ends, from what its label says.

#include "wording/reader_rows.hpp"

namespace evencount::wording::reader {

/// A row's outer beads along its own direction, in half beads or, for peyote, in columns: every second place between them holds a
/// bead.
struct Span {
  int low = 0;
  int high = 0;
};

/// How many beads a row has against one of `before` beads: one fewer when it begins with a decrease, one more when it ends with
/// an increase.
[[nodiscard]] int shaped_places(const FoundRow& row, int before);

/// The row after one that lies at `before`. It begins on the side where that one ended: half a bead further out, or further
/// in with a decrease; it ends half a bead further in, or further out with an increase.
[[nodiscard]] Span next_span(const FoundRow& row, Span before, bool begins_low);

}  // namespace evencount::wording::reader
