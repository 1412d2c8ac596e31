// Flat peyote: even and odd count, two-drop, and shaped.

#include <algorithm>
#include <array>

#include "wording/reader_rows.hpp"
#include "wording/reader_spans.hpp"

namespace evencount::wording::reader {
namespace {

using chart::Cell;
using weave::Closure;
using weave::RowEnd;

constexpr std::array open_or_zip{Closure::open, Closure::zip};
constexpr std::array open_only{Closure::open};

// Stitches of `drop` beads: odd rows take the even groups of columns, upwards, even rows the odd groups, downwards; rows 1-2
// take every column, downwards.

template <int drop>
std::optional<int> places_across(const RowQuestion& asked) {
  if (!asked.columns || asked.row.first_row == 1) return asked.columns;
  const int groups = *asked.columns / drop;
  return drop * (asked.number % 2 == 1 ? (groups + 1) / 2 : groups / 2);
}

template <int drop>
int column_of(int number, int place, int places, int columns) {
  if (number == 1) return columns - 1 - place;
  const bool upwards = number % 2 == 1;
  const int from_low = upwards ? place : places - 1 - place;
  return 2 * drop * (from_low / drop) + from_low % drop + (upwards ? 0 : drop);
}

Result<Extent> extent_across(const WholeBand& band) {
  return Extent{.columns = band.row(1).places, .edge = (band.count() + 1) / 2};
}

template <int drop>
Result<Done> lay_across(const WholeBand& band, const Extent& extent, const BeadOfLetter& beads,
                        chart::Chart& chart) {
  for (int number = 1; number <= band.count(); number += number == 1 ? 2 : 1) {
    const FoundRow& row = band.row(number);
    BeadWalk walk(row, beads);
    for (int place = 0; place < row.places; ++place)
      chart.set({column_of<drop>(number, place, row.places, extent.columns), (number - 1) / 2}, walk.next());
  }
  return Done{};
}

std::string_view at_least_two(int beads) {
  return beads < 2 ? "at least 2 beads" : "";
}
std::string_view even_pairs(int beads) {
  return beads % 4 == 0 ? "" : "a multiple of 4 beads, for two-drop even count";
}
std::string_view odd_pairs(int beads) {
  return beads >= 6 && beads % 4 == 2
             ? ""
             : "6, 10, 14 beads or so on, an odd number of pairs, for two-drop odd count";
}

constexpr RowRules flat(std::string_view id, std::string_view name, bool odd_count) {
  return {.id = id,
          .name = name,
          .closures = open_or_zip,
          .odd_count = odd_count,
          .expected_first = at_least_two,
          .columns_shown = as_many_columns,
          .places = places_across<1>,
          .most = no_limit,
          .extent = extent_across,
          .lay = lay_across<1>};
}

constexpr RowRules two_drop(std::string_view id, std::string_view name,
                            std::string_view (*expected_first)(int)) {
  return {.id = id,
          .name = name,
          .closures = open_or_zip,
          .expected_first = expected_first,
          .columns_shown = as_many_columns,
          .places = places_across<2>,
          .most = no_limit,
          .extent = extent_across,
          .lay = lay_across<2>};
}

// Shaped: rows 1-2 lie side by side, the last bead strung in row 1 or, with an increase, in row 2.

bool ends_in_row_1(const FoundRow& first) {
  return first.ends != RowEnd::increase;
}

std::optional<int> places_shaped(const RowQuestion& asked) {
  if (asked.row.first_row == 1 || asked.before == nullptr) return std::nullopt;
  const FoundRow& before = *asked.before;
  if (before.first_row > 1) return shaped_places(asked.row, before.places);
  const int in_row_2 = ends_in_row_1(before) ? before.places / 2 : (before.places + 1) / 2;
  return shaped_places(asked.row, in_row_2);
}

std::optional<int> most_shaped(const RowQuestion& asked) {
  if (!asked.columns || asked.row.first_row == 1) return asked.columns;
  return (*asked.columns + 1) / 2;
}

std::optional<int> no_columns_shown(int) {
  return std::nullopt;
}

Span span_of_row_2(const FoundRow& first) {
  const int low = ends_in_row_1(first) ? 1 : 0, last = first.places - 1;
  return {low, last % 2 == low % 2 ? last : last - 1};
}

/// Columns in which the rows from 3 on lie, counted from the lowest column of rows 1-2.
template <typename Visit>
void each_shaped_row(const WholeBand& band, Visit visit) {
  Span span = span_of_row_2(band.row(1));
  for (int number = 3; number <= band.count(); ++number) {
    span = next_span(band.row(number), span, number % 2 == 1);
    visit(number, span);
  }
}

/// The lowest column, counted likewise.
int lowest_column(const WholeBand& band) {
  int lowest = 0;
  each_shaped_row(band, [&](int, Span span) { lowest = std::min(lowest, span.low); });
  return lowest;
}

/// 1 when row 1 lies in the odd columns, half a bead on; else 0.
int shaped_beginning(const FoundRow& first, int lowest) {
  const int row_1_column = (ends_in_row_1(first) ? 0 : 1) - lowest;
  return row_1_column % 2;
}

Result<Extent> extent_shaped(const WholeBand& band) {
  const int lowest = lowest_column(band);
  int highest = band.row(1).places - 1;
  each_shaped_row(band, [&](int, Span span) { highest = std::max(highest, span.high); });
  const int last_along = shaped_beginning(band.row(1), lowest) + band.count() - 1;
  return Extent{.columns = highest - lowest + 1, .edge = last_along / 2 + 1};
}

Result<Done> lay_shaped(const WholeBand& band, const Extent&, const BeadOfLetter& beads,
                        chart::Chart& chart) {
  const FoundRow& first = band.row(1);
  const int lowest = lowest_column(band), begin = shaped_beginning(first, lowest);
  BeadWalk strung(first, beads);
  for (int column = first.places - 1; column >= 0; --column) {
    const bool in_row_1 = (column % 2 == 0) == ends_in_row_1(first);
    chart.set({column - lowest, (begin + (in_row_1 ? 0 : 1)) / 2}, strung.next());
  }
  each_shaped_row(band, [&](int number, Span span) {
    BeadWalk walk(band.row(number), beads);
    const int step = (begin + number - 1) / 2;
    const bool upwards = number % 2 == 1;
    for (int place = 0; place < band.row(number).places; ++place)
      chart.set({(upwards ? span.low + 2 * place : span.high - 2 * place) - lowest, step}, walk.next());
  });
  return Done{};
}

constexpr RowRules shaped() {
  return {.id = "peyote-shaped",
          .name = "shaped flat peyote",
          .closures = open_only,
          .marked = true,
          .expected_first = at_least_two,
          .columns_shown = no_columns_shown,
          .places = places_shaped,
          .most = most_shaped,
          .extent = extent_shaped,
          .lay = lay_shaped};
}

}  // namespace

std::span<const RowRules> peyote_rules() {
  static constexpr std::array rules{
      flat("peyote-even-count", "flat peyote, even count", false),
      flat("peyote-odd-count", "flat peyote, odd count", true),
      flat("peyote-odd-count-figure-8", "flat peyote, odd count with figure-8 turns", true),
      two_drop("two-drop-even-count", "two-drop peyote, even count", even_pairs),
      two_drop("two-drop-odd-count", "two-drop peyote, odd count", odd_pairs),
      shaped(),
  };
  return rules;
}

}  // namespace evencount::wording::reader
