#include "project/new_band.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "project/band_size.hpp"

namespace evencount::project {
namespace {

struct Size {
  int columns = 0;
  int edge = 0;
  bool half_last_step = false;  ///< an odd number of rows: the last one is left out
};

Result<Done> check_given(const NewBand& wanted) {
  if (wanted.rows && wanted.edge)
    return Problem{ProblemCode::bad_usage, "band", "rows and edge together",
                   "one of them: an edge of N beads is 2 N rows"};
  if (wanted.rows && *wanted.rows < 2)
    return Problem{ProblemCode::out_of_range, "rows", fmt::format("{}", *wanted.rows), "2 or more"};
  for (const auto& [name, given] : {std::pair{"columns", wanted.columns}, {"edge", wanted.edge}})
    if (given && *given < 1)
      return Problem{ProblemCode::out_of_range, name, fmt::format("{}", *given), "1 or more"};
  return Done{};
}

/// Columns and beads along the edge: as given, else what fits the form best.
Result<Size> size_for(const Project& project, const Band& band, const NewBand& wanted) {
  if (auto good = check_given(wanted); !good) return good.problem();
  Size size;
  if (wanted.rows) size = {0, *wanted.rows / 2 + *wanted.rows % 2, *wanted.rows % 2 == 1};
  size.edge = wanted.edge.value_or(size.edge);
  size.columns = wanted.columns.value_or(0);
  if (size.edge != 0 && size.columns != 0) return size;
  if (!band.form)
    return Problem{ProblemCode::bad_usage, "band", "neither a form nor a size",
                   "a form, or columns and edge"};
  const auto fitting = fitting_size(project, band, wanted.columns, size.edge == 0);
  if (!fitting) return fitting.problem();
  if (size.columns == 0) size.columns = fitting->columns;
  if (size.edge == 0) size.edge = fitting->edge;
  if (size.edge == 0)
    return Problem{ProblemCode::bad_usage, "band", "no edge",
                   "beads along the edge: a form says how many go round, not how high"};
  return size;
}

Result<chart::Chart> blank_chart(const weave::Technique& technique, const Size& size, chart::Bead ground) {
  // No number beyond the largest chart is doubled.
  if (size.columns > chart::most_columns || size.edge > chart::most_edge)
    if (auto chart = chart::Chart::make(size.columns, size.edge); !chart) return chart.problem();
  weave::Lattice lattice = technique.lattice(size.columns, size.edge);
  // Right-angle weave is sized in units and has cells that can't hold a bead.
  if (lattice.holes == weave::Holes::round_squares)
    lattice = technique.lattice(2 * size.columns + 1, 2 * size.edge + 1);
  auto chart = chart::Chart::make(lattice.columns, lattice.edge, ground);
  if (!chart) return chart.problem();
  for (int step = 0; step < lattice.edge; ++step)
    for (int column = 0; column < lattice.columns; ++column)
      if (!lattice.holds_bead({column, step})) chart->set({column, step}, chart::no_bead);
  for (int column = 0; column < lattice.columns && size.half_last_step; ++column)
    if (lattice.along_halves({column, 0}) == 1) chart->set({column, lattice.edge - 1}, chart::no_bead);
  return chart;
}

Result<Done> check_references(const Project& project, const NewBand& wanted) {
  if (!find_bead(project, wanted.bead))
    return Problem{ProblemCode::unknown_name, "bead", quote(wanted.bead), "one of the project's beads"};
  if (wanted.form && !find_form(project, *wanted.form))
    return Problem{ProblemCode::unknown_name, "form", quote(*wanted.form), "one of the project's forms"};
  return Done{};
}

}  // namespace

weave::Closure usual_closure(const weave::Technique& technique, bool round_a_form) {
  const auto& closures = technique.closures;
  const bool can_sew = std::find(closures.begin(), closures.end(), weave::Closure::sew) != closures.end();
  return round_a_form && can_sew ? weave::Closure::sew : closures.front();
}

Result<Band> new_band(const Project& project, const NewBand& wanted) {
  if (auto known = check_references(project, wanted); !known) return known.problem();
  Band band;
  band.name = wanted.name, band.bead = wanted.bead, band.form = wanted.form, band.use = wanted.use;
  band.begin_at = wanted.begin_at, band.gauge = wanted.gauge;
  // Whether it is even or odd count the columns tell; the gauge, and so what fits, is the same.
  const bool flat_peyote = wanted.technique.empty();
  band.technique = flat_peyote ? std::string(weave::flat_peyote_for(2).id) : wanted.technique;
  const auto technique = weave::find_technique(band.technique);
  if (!technique) return technique.problem();
  band.closure = wanted.closure.value_or(usual_closure(*technique, band.form.has_value()));
  const auto size = size_for(project, band, wanted);
  if (!size) return size.problem();
  auto chart = blank_chart(*technique, *size, wanted.ground);
  if (!chart) return chart.problem();
  if (flat_peyote) band.technique = weave::flat_peyote_for(chart->columns()).id;
  band.chart = std::move(*chart);
  return band;
}

}  // namespace evencount::project
