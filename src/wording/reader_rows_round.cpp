// Peyote in the round: tubes of even and odd count, and bezels.

#include <array>

#include "wording/reader_rows.hpp"

namespace evencount::wording::reader {
namespace {

using chart::Cell;
using weave::Closure;

constexpr std::array round_only{Closure::round};

std::string_view even_ring(int beads) {
  return beads >= 2 && beads % 2 == 0 ? "" : "an even number of beads";
}
std::string_view odd_ring(int beads) {
  return beads >= 3 && beads % 2 == 1 ? "" : "an odd number of beads from 3";
}

// Tubes: odd rounds take the even columns, even rounds the odd ones.

std::optional<int> places_round(const RowQuestion& asked) {
  if (!asked.columns || asked.row.first_row == 1) return asked.columns;
  return asked.number % 2 == 1 ? (*asked.columns + 1) / 2 : *asked.columns / 2;
}

Result<Extent> extent_round(const WholeBand& band) {
  return Extent{.columns = band.row(1).places, .edge = (band.count() + 1) / 2};
}

/// With an even number of columns each round steps up, so that it begins a column further on than the one before; with an odd
/// number the rounds run on as a spiral from column 0.
int first_column(int number, int columns) {
  if (columns % 2 == 1) return number == 1 ? 0 : (number - 1) % 2;
  return number == 1 ? 1 : (number - 1) % columns;
}

Result<Done> lay_round(const WholeBand& band, const Extent& extent, const BeadOfLetter& beads,
                       chart::Chart& chart) {
  for (int number = 1; number <= band.count(); number += number == 1 ? 2 : 1) {
    const FoundRow& row = band.row(number);
    BeadWalk walk(row, beads);
    int column = first_column(number, extent.columns);
    for (int place = 0; place < row.places; ++place) {
      chart.set({column, (number - 1) / 2}, walk.next());
      column = (column + (number == 1 ? 1 : 2)) % extent.columns;
    }
  }
  return Done{};
}

// Bezels: the ring lies above the rounds that are worked downwards from it, on the back. Every bead of a round carries one bead
// of the next, or a decrease; where nothing was strung, nothing can be strung next to it in the round after.

std::optional<int> places_bezel(const RowQuestion& asked) {
  if (asked.row.first_row == 1) return asked.columns;
  const bool on_the_ring = asked.number == 3 || (asked.row.on_back && asked.before && !asked.before->on_back);
  if (on_the_ring) return asked.columns ? std::optional(*asked.columns / 2) : std::nullopt;
  return asked.before ? std::optional(asked.before->beads) : std::nullopt;
}

std::optional<int> most_bezel(const RowQuestion& asked) {
  return asked.columns ? std::optional(*asked.columns / 2) : std::nullopt;
}

int rounds_on_back(const WholeBand& band) {
  int count = 0;
  while (count < band.count() && band.row(band.count() - count).on_back) ++count;
  return count;
}

Result<Extent> extent_bezel(const WholeBand& band) {
  const int on_back = rounds_on_back(band);
  for (int number = 1; number <= band.count() - on_back; ++number)
    if (band.row(number).on_back)
      return bad_words(band.place(number), "a round on the back before rounds that are not",
                       "the rounds on the back last");
  return Extent{.columns = band.row(1).places, .edge = (band.count() + 1) / 2, .begin_at = on_back};
}

/// A round of a bezel: how far along it lies, and where its needle begins.
struct BezelRound {
  int along = 0;
  int first_column = 0;
  int toward_ring = -1;  ///< to the round that it hangs on
};

BezelRound bezel_round(const Extent& extent, int number, int rounds) {
  const int on_back = extent.begin_at, front = rounds - on_back, beginning = on_back % 2;
  if (number <= front) return {on_back + number - 1, (beginning + number - 1) % extent.columns, -1};
  const int back_number = number - front;
  return {on_back - back_number, (beginning + 2 * front - 2 + back_number) % extent.columns, 1};
}

Result<Done> lay_bezel(const WholeBand& band, const Extent& extent, const BeadOfLetter& beads,
                       chart::Chart& chart) {
  const int columns = extent.columns;
  BeadWalk ring(band.row(1), beads);
  for (int place = 0; place < columns; ++place) {
    const int column = (extent.begin_at % 2 + 1 + place) % columns;
    const bool further_on = column % 2 != extent.begin_at % 2;
    chart.set({column, (extent.begin_at + (further_on ? 1 : 0)) / 2}, ring.next());
  }
  for (int number = 3; number <= band.count(); ++number) {
    const BezelRound round = bezel_round(extent, number, band.count());
    BeadWalk walk(band.row(number), beads);
    for (int slot = 0; slot < columns / 2; ++slot) {
      const int column = (round.first_column + 2 * slot) % columns;
      const Cell carrier{(column + columns - 1) % columns, (round.along + round.toward_ring) / 2};
      if (chart.at(carrier) != chart::no_bead) chart.set({column, round.along / 2}, walk.next());
    }
  }
  return Done{};
}

constexpr RowRules tube(std::string_view id, std::string_view name, std::string_view (*expected_first)(int)) {
  return {.id = id,
          .name = name,
          .closures = round_only,
          .rounds = true,
          .alternates = false,
          .expected_first = expected_first,
          .columns_shown = as_many_columns,
          .places = places_round,
          .most = no_limit,
          .extent = extent_round,
          .lay = lay_round};
}

constexpr RowRules bezel() {
  return {.id = "peyote-bezel",
          .name = "peyote bezel",
          .closures = round_only,
          .rounds = true,
          .alternates = false,
          .back = true,
          .expected_first = even_ring,
          .columns_shown = as_many_columns,
          .places = places_bezel,
          .most = most_bezel,
          .extent = extent_bezel,
          .lay = lay_bezel};
}

}  // namespace

std::span<const RowRules> round_rules() {
  static constexpr std::array rules{
      tube("tubular-even-count", "tubular peyote, even count", even_ring),
      tube("tubular-odd-count", "tubular peyote, odd count", odd_ring),
      bezel(),
  };
  return rules;
}

}  // namespace evencount::wording::reader
