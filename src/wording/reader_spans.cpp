#include "wording/reader_spans.hpp"

namespace evencount::wording::reader {

using weave::RowEnd;

int shaped_places(const FoundRow& row, int before) {
  return before - (row.begins == RowEnd::decrease ? 1 : 0) + (row.ends == RowEnd::increase ? 1 : 0);
}

Span next_span(const FoundRow& row, Span before, bool begins_low) {
  const int out_at_beginning = row.begins == RowEnd::decrease ? -1 : 1;
  const int out_at_end = row.ends == RowEnd::increase ? 1 : -1;
  return {before.low - (begins_low ? out_at_beginning : out_at_end),
          before.high + (begins_low ? out_at_end : out_at_beginning)};
}

}  // namespace evencount::wording::reader
