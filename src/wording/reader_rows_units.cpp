// Right-angle weave: units of four beads that share their sides.

#include <fmt/format.h>

#include <array>

#include "wording/reader_rows.hpp"

namespace evencount::wording::reader {
namespace {

using chart::Cell;
using weave::Closure;

constexpr std::array open_only{Closure::open};

std::string_view whole_units(int beads) {
  return beads >= 4 && beads % 3 == 1 ? "" : "4, 7, 10 beads or so on: 3 for each unit and 1 more";
}

std::optional<int> columns_of_units(int beads) {
  return whole_units(beads).empty() ? std::optional(2 * ((beads - 1) / 3) + 1) : std::nullopt;
}

/// Row 1's first unit takes four beads and the others three, as they share a side; in later rows they share another one with
/// the row before.
std::optional<int> places_units(const RowQuestion& asked) {
  if (!asked.columns || *asked.columns < 3 || *asked.columns % 2 == 0) return std::nullopt;
  const int units = (*asked.columns - 1) / 2;
  return asked.number == 1 ? 3 * units + 1 : 2 * units + 1;
}

Result<Extent> extent_units(const WholeBand& band) {
  return Extent{.columns = *columns_of_units(band.row(1).places), .edge = 2 * band.count() + 1};
}

enum class Side : std::uint8_t { left, far, right, near };

/// A unit's sides in the order in which the needle comes to them when it goes along the left one towards higher steps.
constexpr std::array round_forth{Side::left, Side::far, Side::right, Side::near};
/// The other way round.
constexpr std::array round_back{Side::left, Side::near, Side::right, Side::far};

Cell side_cell(int unit, int row, Side side) {
  const int column = 2 * unit + 1, step = 2 * row + 1;
  switch (side) {
    case Side::left:
      return {column - 1, step};
    case Side::far:
      return {column, step + 1};
    case Side::right:
      return {column + 1, step};
    case Side::near:
      return {column, step - 1};
  }
  return {};
}

/// Strings the units one after another. The needle leaves a unit by the side that it shares with the next one, and so goes round
/// that one the other way.
class UnitWork {
 public:
  UnitWork(const BeadOfLetter& beads, chart::Chart& chart) : beads_(beads), chart_(chart) {}

  Result<Done> work_row(const FoundRow& row, int number, int units) {
    number_ = number;
    written_ = {};
    BeadWalk walk(row, beads_);
    for (int place = 0; place < units; ++place) {
      const bool rightwards = number % 2 == 1;
      const Side shared = place == 0 ? Side::near : (rightwards ? Side::left : Side::right);
      if (auto strung = string_unit(walk, rightwards ? place : units - 1 - place, place, shared); !strung)
        return strung;
    }
    return Done{};
  }

 private:
  [[nodiscard]] int beads_wanted(int place) const { return 4 - (place > 0 ? 1 : 0) - (number_ > 1 ? 1 : 0); }

  Result<Done> string_unit(BeadWalk& walk, int unit, int place, Side shared) {
    const auto& round = forth_ ? round_forth : round_back;
    forth_ = !forth_;
    // The very first unit shares nothing and begins with its left side.
    std::size_t at = 0;
    if (number_ > 1 || place > 0)
      while (round[at++] != shared) continue;
    bool begins = true;
    for (std::size_t i = 0; i < round.size(); ++i) {
      const Cell cell = side_cell(unit, number_ - 1, round[(at + i) % round.size()]);
      if (chart_.at(cell) != chart::no_bead) continue;
      chart_.set(cell, walk.next());
      if (walk.began_unit()) {
        if (!begins) return wrong_unit();
        written_ = {place, 0};
      }
      begins = false;
      ++written_.beads;
    }
    return Done{};
  }

  [[nodiscard]] Problem wrong_unit() const {
    return bad_words(fmt::format("unit {}", written_.place + 1), beads_text(written_.beads),
                     beads_text(beads_wanted(written_.place)));
  }

  /// The unit that the words are in, after their last semicolon.
  struct Written {
    int place = 0;
    int beads = 0;
  };

  const BeadOfLetter& beads_;
  chart::Chart& chart_;
  bool forth_ = true;
  int number_ = 1;
  Written written_;
};

Result<Done> lay_units(const WholeBand& band, const Extent& extent, const BeadOfLetter& beads,
                       chart::Chart& chart) {
  UnitWork work(beads, chart);
  for (int number = 1; number <= band.count(); ++number)
    if (const auto row = work.work_row(band.row(number), number, (extent.columns - 1) / 2); !row) {
      Problem problem = row.problem();
      problem.where = band.place(number) + ", " + problem.where;
      return problem;
    }
  return Done{};
}

}  // namespace

std::span<const RowRules> unit_rules() {
  static constexpr std::array rules{
      RowRules{.id = "right-angle",
               .name = "right-angle weave",
               .closures = open_only,
               .first_two_together = false,
               .units = true,
               .most_places = 3 * chart::most_columns / 2,
               .most_rows = (chart::most_edge - 1) / 2,
               .expected_first = whole_units,
               .columns_shown = columns_of_units,
               .places = places_units,
               .most = no_limit,
               .extent = extent_units,
               .lay = lay_units},
  };
  return rules;
}

}  // namespace evencount::wording::reader
