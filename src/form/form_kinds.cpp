#include "form/form_kinds.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <numbers>

#include "form/elliptic.hpp"
#include "form/outline.hpp"
#include "form/sections.hpp"

namespace evencount::form {
namespace {

using Sizes = std::span<const Length>;

template <FormKind kind>
Form flat(Sizes sizes) {
  return {kind, sizes[0], sizes[1], sizes[2]};
}
std::vector<Length> flat_sizes(const Form& form) {
  return {form.width, form.thickness, form.length_along_holes.value_or(Length{})};
}

template <FormKind kind>
Form turned(Sizes sizes) {
  return {kind, sizes[0], sizes[0], sizes[1]};
}
std::vector<Length> turned_sizes(const Form& form) {
  return {form.width, form.length_along_holes.value_or(Length{})};
}

Result<ConvexCurve> round_section(const Form& form) {
  return circle(form.width);
}

Form finger(Sizes sizes) {
  const Length across = sizes[0] / std::numbers::pi;
  return {FormKind::ring, across, across};
}

// The way round an ellipse of the wrist's shape, in widths.
double wrist_widths_round() {
  constexpr double half_width = 0.5, half_depth = 0.5 / wrist_ratio;
  return elliptic_arc_length(half_width, half_depth, 0, 2 * std::numbers::pi);
}
Form wrist(Sizes sizes) {
  const Length width = sizes[0] / wrist_widths_round();
  return {FormKind::wrist, width, width / wrist_ratio};
}

const std::array<SettingRow, 5> setting_table{{
    {"tip", "tip radius", &Form::tip_radius},
    {"edge", "edge radius", &Form::edge_radius},
    {"holes", "distance between the holes", &Form::hole_spacing},
    {"hole", "diameter of a hole", &Form::hole},
    {"length", "length", &Form::length_along_holes},
}};

std::array<KindRow, 9> make_kinds() {
  return {{
      {FormKind::lens,
       "lens",
       "lens:17x5x9",
       "two-hole carrier bead",
       {"width", "thickness", "length"},
       1,
       {"tip", "holes", "hole"},
       flat<FormKind::lens>,
       flat_sizes,
       [](const Form& f) { return lens(f.width, f.thickness, f.tip_radius.value_or(lens_tip_radius)); }},
      {FormKind::round,
       "round",
       "round:12x20",
       "round form",
       {"diameter", "length"},
       0,
       {"holes", "hole"},
       turned<FormKind::round>,
       turned_sizes,
       round_section},
      {FormKind::oval,
       "oval",
       "oval:18x13x5",
       "oval form",
       {"width", "height", "length"},
       0,
       {"holes", "hole"},
       flat<FormKind::oval>,
       flat_sizes,
       [](const Form& f) { return ellipse(f.width, f.thickness); }},
      {FormKind::bar,
       "bar",
       "bar:20x4x10",
       "flat bar with round ends",
       {"width", "thickness", "length"},
       1,
       {"holes", "hole"},
       flat<FormKind::bar>,
       flat_sizes,
       [](const Form& f) { return rounded_bar(f.width, f.thickness, f.thickness / 2); }},
      {FormKind::dome,
       "dome",
       "dome:20x6x10",
       "domed bar with a flat back",
       {"width", "height", "length"},
       0.5,
       {"edge", "holes", "hole"},
       flat<FormKind::dome>,
       flat_sizes,
       [](const Form& f) { return dome(f.width, f.thickness, f.edge_radius.value_or(Length{})); }},
      {FormKind::bangle,
       "bangle",
       "bangle:66x12",
       "bangle",
       {"diameter", "width"},
       0,
       {},
       turned<FormKind::bangle>,
       turned_sizes,
       round_section},
      {FormKind::ring,
       "ring",
       "ring:54",
       "finger of ring size",
       {"circumference"},
       0,
       {},
       finger,
       [](const Form& f) { return std::vector{f.width * std::numbers::pi}; },
       round_section},
      {FormKind::wrist,
       "wrist",
       "wrist:165",
       "wrist",
       {"circumference"},
       0,
       {},
       wrist,
       [](const Form& f) { return std::vector{f.width * wrist_widths_round()}; },
       [](const Form& f) { return ellipse(f.width, f.thickness); }},
      {FormKind::outline,
       "outline",
       "outline:stone",
       "outline",
       {},
       0,
       {"holes", "hole", "length"},
       nullptr,
       [](const Form&) { return std::vector<Length>{}; },
       [](const Form& f) { return section_of(*f.outline); }},
  }};
}

}  // namespace

std::span<const SettingRow> settings() {
  return setting_table;
}

std::span<const KindRow> kinds() {
  static const auto table = make_kinds();
  return table;
}

const KindRow& row(FormKind kind) {
  const auto table = kinds();
  const auto found =
      std::find_if(table.begin(), table.end(), [&](const KindRow& k) { return k.kind == kind; });
  assert(found != table.end());
  return *found;
}

Length kept(Length length) {
  constexpr double parts = 1e4;
  return millimetres(std::round(length.mm() * parts) / parts);
}

}  // namespace evencount::form
