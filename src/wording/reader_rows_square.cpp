// Rows that lie straight above each other and take every column: square stitch, loom work, flat herringbone.

#include <array>

#include "wording/reader_rows.hpp"

namespace evencount::wording::reader {
namespace {

using weave::Closure;

constexpr std::array open_or_sewn{Closure::open, Closure::sew};
constexpr std::array open_only{Closure::open};

std::string_view anything(int) {
  return "";
}
std::string_view even_columns(int beads) {
  return beads % 2 == 0 ? "" : "an even number of beads";
}

std::optional<int> as_wide_as_the_chart(const RowQuestion& asked) {
  return asked.columns;
}

Result<Extent> extent_square(const WholeBand& band) {
  return Extent{.columns = band.row(1).places, .edge = band.count()};
}

/// Whether a row goes from column 0 to the last.
enum class Upwards { odd_rows, even_rows, all_rows };

template <Upwards which>
Result<Done> lay_square(const WholeBand& band, const Extent& extent, const BeadOfLetter& beads,
                        chart::Chart& chart) {
  for (int number = 1; number <= band.count(); ++number) {
    const bool upwards = which == Upwards::all_rows || (number % 2 == 1) == (which == Upwards::odd_rows);
    BeadWalk walk(band.row(number), beads);
    for (int place = 0; place < extent.columns; ++place)
      chart.set({upwards ? place : extent.columns - 1 - place, number - 1}, walk.next());
  }
  return Done{};
}

constexpr RowRules square(std::string_view id, std::string_view name, std::span<const Closure> closures,
                          std::string_view (*expected_first)(int), decltype(RowRules::lay) lay,
                          bool alternates = true) {
  return {.id = id,
          .name = name,
          .closures = closures,
          .first_two_together = false,
          .alternates = alternates,
          .most_rows = chart::most_edge,
          .expected_first = expected_first,
          .columns_shown = as_many_columns,
          .places = as_wide_as_the_chart,
          .most = no_limit,
          .extent = extent_square,
          .lay = lay};
}

}  // namespace

std::span<const RowRules> square_rules() {
  static constexpr std::array rules{
      square("square", "square stitch", open_or_sewn, anything, lay_square<Upwards::even_rows>),
      square("loom", "loom work", open_only, anything, lay_square<Upwards::all_rows>, false),
      square("herringbone", "flat herringbone", open_only, even_columns, lay_square<Upwards::odd_rows>),
  };
  return rules;
}

}  // namespace evencount::wording::reader
