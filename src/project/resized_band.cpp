#include "project/resized_band.hpp"

#include "weave/technique.hpp"

namespace evencount::project {
namespace {

/// The technique for so many columns: flat peyote is even or odd count.
std::string technique_for(const Band& band, int columns) {
  const bool flat_peyote = band.technique == weave::flat_peyote_for(band.chart.columns()).id;
  return flat_peyote ? std::string(weave::flat_peyote_for(columns).id) : band.technique;
}

}  // namespace

Result<Band> with_size_of(Band band, chart::Chart chart) {
  const bool resized = chart.columns() != band.chart.columns() || chart.edge() != band.chart.edge();
  band.technique = technique_for(band, chart.columns());
  const auto technique = weave::find_technique(band.technique);
  if (!technique) return technique.problem();
  if (resized)
    if (auto good = technique->check_size(chart.columns(), chart.edge()); !good) return good.problem();
  band.chart = std::move(chart);
  return band;
}

Result<Band> resized_to(const Band& band, int columns, int edge, const CarryOptions& options) {
  const auto before = weave::find_technique(band.technique);
  if (!before) return before.problem();
  const auto after = weave::find_technique(technique_for(band, columns));
  if (!after) return after.problem();
  if (auto good = after->check_size(columns, edge); !good) return good.problem();
  const Piece from{before->lattice(band.chart.columns(), band.chart.edge()), band.closure};
  auto carried = carry(band.chart, from, {after->lattice(columns, edge), band.closure}, options);
  if (!carried) return carried.problem();
  return with_size_of(band, std::move(carried->chart));
}

}  // namespace evencount::project
