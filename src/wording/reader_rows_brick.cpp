// Brick stitch: a row is a column of the chart; it begins and ends half a bead off the row before.

#include <algorithm>
#include <array>

#include "wording/reader_rows.hpp"
#include "wording/reader_spans.hpp"

namespace evencount::wording::reader {
namespace {

using weave::Closure;

constexpr std::array open_or_sewn{Closure::open, Closure::sew};

std::string_view anything(int) {
  return "";
}
std::optional<int> no_columns_shown(int) {
  return std::nullopt;
}

std::optional<int> places_brick(const RowQuestion& asked) {
  if (asked.number == 1 || asked.before == nullptr) return std::nullopt;
  return shaped_places(asked.row, asked.before->places);
}

std::optional<int> most_brick(const RowQuestion& asked) {
  return asked.edge;
}

/// How far along each row lies, in half beads from the beginning of row 1.
template <typename Visit>
void each_brick_row(const WholeBand& band, Visit visit) {
  Span span{0, 2 * (band.row(1).places - 1)};
  for (int number = 1; number <= band.count(); ++number) {
    if (number > 1) span = next_span(band.row(number), span, number % 2 == 1);
    visit(number, span);
  }
}

/// The step at a place of a row; every second row lies half a bead on. Exact: `along` is odd in those rows and in no others.
int step_of(int along, int number) {
  return (along - (number - 1) % 2) / 2;
}

int lowest_step(const WholeBand& band) {
  int lowest = 0;
  each_brick_row(band, [&](int number, Span span) { lowest = std::min(lowest, step_of(span.low, number)); });
  return lowest;
}

Result<Extent> extent_brick(const WholeBand& band) {
  int lowest = step_of(0, 1), highest = lowest;
  each_brick_row(band, [&](int number, Span span) {
    lowest = std::min(lowest, step_of(span.low, number));
    highest = std::max(highest, step_of(span.high, number));
  });
  return Extent{.columns = band.count(), .edge = highest - lowest + 1};
}

Result<Done> lay_brick(const WholeBand& band, const Extent&, const BeadOfLetter& beads, chart::Chart& chart) {
  const int lowest = lowest_step(band);
  each_brick_row(band, [&](int number, Span span) {
    BeadWalk walk(band.row(number), beads);
    const bool towards_higher = number % 2 == 1;
    for (int place = 0; place < band.row(number).places; ++place) {
      const int along = towards_higher ? span.low + 2 * place : span.high - 2 * place;
      chart.set({number - 1, step_of(along, number) - lowest}, walk.next());
    }
  });
  return Done{};
}

}  // namespace

std::span<const RowRules> brick_rules() {
  static constexpr std::array rules{
      RowRules{.id = "brick",
               .name = "brick stitch",
               .closures = open_or_sewn,
               .first_two_together = false,
               .axis = weave::Axis::along,
               .marked = true,
               .most_places = chart::most_edge,
               .most_rows = chart::most_columns,
               .expected_first = anything,
               .columns_shown = no_columns_shown,
               .places = places_brick,
               .most = most_brick,
               .extent = extent_brick,
               .lay = lay_brick},
  };
  return rules;
}

}  // namespace evencount::wording::reader
