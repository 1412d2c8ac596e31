#include "page/piece_picture.hpp"

#include <algorithm>

#include "drawing/band_drawing.hpp"
#include "drawing/strand_drawing.hpp"
#include "project/strung_sizes.hpp"

namespace evencount::page {
namespace {

using namespace drawing;

std::optional<Drawing> strung_picture(const project::Project& project) {
  if (!project.strand) return std::nullopt;
  const auto strung = project::strung_of(project);
  const auto wearer = project::wearer_of(*project.strand, "");
  if (!strung || !wearer) return std::nullopt;
  const auto sizes = project::strung_sizes(project, *strung, std::vector{*wearer});
  if (!sizes || sizes->sizes.empty()) return std::nullopt;
  const project::StrungSize& size = sizes->sizes.front();
  return strand_flat(project, *strung, size.fit, size.curve, {.heading = false});
}

}  // namespace

Result<Drawing> piece_picture(const project::Project& project) {
  if (project.bands.empty()) return Problem{ProblemCode::missing_field, "bands", "none", "a band to picture"};
  if (auto strung = strung_picture(project)) return std::move(*strung);
  constexpr double gap_mm = 4, margin_mm = 3;
  std::vector<Drawing> bands;
  double width = 2 * margin_mm - gap_mm, height = 0;
  for (const project::Band& band : project.bands) {
    const auto plan = project::plan_of(band);
    if (!plan) return plan.problem();
    bands.push_back(band_drawing(project, band, *plan));
    width += bands.back().width.mm() + gap_mm;
    height = std::max(height, bands.back().height.mm());
  }
  Drawing piece{millimetres(width), millimetres(height + 2 * margin_mm), {}};
  double x = margin_mm;
  for (const Drawing& band : bands) {
    place(piece, band, {x, margin_mm + (height - band.height.mm()) / 2});
    x += band.width.mm() + gap_mm;
  }
  return piece;
}

}  // namespace evencount::page
