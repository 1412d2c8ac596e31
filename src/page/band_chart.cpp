#include "page/band_chart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>

#include "drawing/band_drawing.hpp"
#include "drawing/symbols.hpp"
#include "language/texts.hpp"
#include "page/along_hand.hpp"

namespace evencount::page {
namespace {

using namespace drawing;
using language::Texts;

constexpr double usual_cell_width_mm = 4.6, largest_cell_width_mm = 7.0;
constexpr double face_gap_mm = 1.4, face_label_mm = 1.2;

language::Text face_name(form::Side side) {
  switch (side) {
    case form::Side::front: return &Texts::face_front;
    case form::Side::back: return &Texts::face_back;
    case form::Side::edge: return &Texts::face_side;
  }
  return &Texts::face_side;
}

/// A column of right-angle weave is a whole unit with its beads round it.
double cells_wide(const weave::Lattice& lattice) {
  return weave::pitches(lattice, 1) < 1 ? 1.8 : 1.0;
}

std::vector<form::Window> windows_of(const project::Project& project, const project::Band& band) {
  if (!has_faces(project, band)) return {};
  const auto faces = form::faces(project::find_form(project, *band.form)->form,
                                 project::find_bead(project, band.bead)->diameter, band.chart.edge());
  return faces ? faces->windows : std::vector<form::Window>{};
}

}  // namespace

BandChart::BandChart(const Subject& subject, const BandSheet& sheet, const Typesetter& typesetter)
    : subject_(subject), sheet_(sheet), lattice_(sheet.plan.lattice), windows_(windows_of(subject.project, *sheet.band)) {
  // Colours beyond the symbols there are keep their letters.
  const CellSigns signs = subject.options.signs;
  if (signs == CellSigns::letters || (signs == CellSigns::symbols && subject.project.legend.size() > symbol_count))
    smallest_cell_mm_ = std::max(smallest_cell_mm_, narrowest_lettered_cell(subject.project, lattice_, sheet.gauge).mm());
  if (windows_.empty()) return;
  double widest = typesetter.width_mm(style::caption.face, subject.language.text(&Texts::seam));
  for (const form::Window& window : windows_)
    widest = std::max(widest, typesetter.width_mm(style::caption.face, subject.language.text(face_name(window.side))));
  faces_mm_ = face_gap_mm + face_label_mm + widest;
}

double BandChart::usual_cell() const {
  return std::max(smallest_cell_mm_, cells_wide(lattice_) * usual_cell_width_mm);
}

double BandChart::largest_cell() const {
  return std::max(smallest_cell_mm_, cells_wide(lattice_) * largest_cell_width_mm);
}

double BandChart::cell_height_mm(double cell_mm) const {
  return cell_mm * (sheet_.gauge.edge / sheet_.gauge.column);
}

double BandChart::overhang() const {
  return weave::extent(lattice_).height - weave::pitches(lattice_, lattice_.edge);
}

double BandChart::width_mm(double cell_mm, int columns) const {
  const auto extent = chart_extent(subject_.project, sheet_.worked, sheet_.plan,
                                   {.cell_width = millimetres(cell_mm), .end_step = 1, .end_column = columns});
  assert(extent.ok());
  return extent->width.mm();
}

int BandChart::steps_in(double height_mm, double cell_mm) const {
  const double steps = (height_mm - 2 * chart_margin(sheet_.plan).mm()) / cell_height_mm(cell_mm) - overhang();
  return std::max(1, static_cast<int>(steps / weave::pitches(lattice_, 1) + 1e-6));
}

int BandChart::columns_in(double room_mm, double cell_mm) const {
  const double beside = width_mm(cell_mm, 1) - cell_mm + 1.5;
  return std::max(1, static_cast<int>((room_mm - beside) / cell_mm / weave::pitches(lattice_, 1)));
}

double BandChart::cell_filling(double height_mm) const {
  return (height_mm - 2 * chart_margin(sheet_.plan).mm()) / weave::extent(lattice_).height /
         (sheet_.gauge.edge / sheet_.gauge.column);
}

ShownPart BandChart::whole() const {
  return {{0, lattice_.columns, lattice_.columns}, {0, lattice_.edge, lattice_.edge}};
}

Drawing BandChart::draw(double cell_mm, const ShownPart& part) const {
  ChartStyle style{.signs = subject_.options.signs,
                   .cell_width = millimetres(cell_mm),
                   .first_step = part.steps.first,
                   .end_step = part.steps.shown_end,
                   .first_column = part.columns.first,
                   .end_column = part.columns.shown_end,
                   .pale_from_step = part.steps.end,
                   .pale_from_column = part.columns.end};
  if (sheet_.left_handed) {
    style.first_column = lattice_.columns - part.columns.shown_end;
    style.end_column = lattice_.columns - part.columns.first;
    style.pale_from_column.reset();
    style.pale_before_column = lattice_.columns - part.columns.end;
  }
  auto drawing = chart_drawing(subject_.project, sheet_.worked, sheet_.plan, style);
  assert(drawing.ok());  // every part asked for lies within the band
  return sheet_.left_handed ? in_mirror(*drawing) : std::move(*drawing);
}

void BandChart::put_faces(Flow& flow, double cell_mm, const Span& steps, double left_mm, double top_mm) const {
  if (windows_.empty()) return;
  const double margin = chart_margin(sheet_.plan).mm();
  const auto y_of = [&](int step) {
    return top_mm + margin + weave::pitches(lattice_, step - steps.first) * cell_height_mm(cell_mm);
  };
  const double line_x = left_mm + face_gap_mm, label_x = line_x + face_label_mm;
  const auto label = [&](language::Text text, double middle) {
    // A sign of the picture, like the numbers: as words it would stand in the line of a heading beside it.
    flow.put(Text{.at = {label_x, middle + 1.0},
                  .role = style::caption.face.role,
                  .size_pt = style::caption.face.size_pt,
                  .ink = style::caption.ink,
                  .text = std::string(subject_.language.text(text)),
                  .in_picture = true});
  };
  for (const form::Window& window : windows_) {
    const int first = std::max(window.first_step, steps.first), end = std::min(window.first_step + window.steps, steps.end);
    constexpr double inset = 0.5, least_mm = 9;  // shorter ones would crowd the seam's label
    if (end <= first || y_of(end) - y_of(first) < least_mm) continue;
    const double above = y_of(first) + inset, below = y_of(end) - inset;
    flow.put(Path{.points = {{line_x - 0.9, above}, {line_x, above}, {line_x, below}, {line_x - 0.9, below}},
                  .stroke = Stroke{ink::quiet, 0.25}});
    label(face_name(window.side), (above + below) / 2);
  }
  const double seam_drop = 1.4;
  const auto seam = [&](double y, double label_middle) {
    flow.put(Path{.points = {{line_x - 0.9, y}, {line_x + 0.9, y}}, .stroke = Stroke{ink::accent, 0.5}});
    label(&Texts::seam, label_middle);
  };
  if (steps.first == 0) seam(y_of(0), y_of(0) + seam_drop);
  if (steps.end == lattice_.edge) seam(y_of(lattice_.edge), y_of(lattice_.edge) - seam_drop);
}

}  // namespace evencount::page
