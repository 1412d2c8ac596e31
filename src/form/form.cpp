#include "form/form.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/text.hpp"
#include "form/form_kinds.hpp"
#include "form/outline.hpp"
#include "form/ring_size.hpp"

namespace evencount::form {
namespace {

std::string shown(Length length) {
  return plain_number(length.mm(), size_decimals) + " mm";
}

Problem out_of_range(std::string where, Length found, std::string expected) {
  return {ProblemCode::out_of_range, std::move(where), shown(found), std::move(expected)};
}

std::string pattern(const KindRow& kind) {
  std::string text = std::string(kind.name) + ":";
  for (std::size_t i = 0; i < kind.sizes.size(); ++i) text += (i ? "x" : "") + upper_ascii(kind.sizes[i]);
  return text + ", such as " + std::string(kind.example);
}

// Also false for NaN.
bool sound(Length length) {
  constexpr double rounding = 1e-12;  // a circumference comes back from a diameter
  return length >= (1 - rounding) * smallest_size && length <= (1 + rounding) * largest_size;
}

Result<Done> check_sizes(const Form& form, const KindRow& kind) {
  std::vector<std::pair<std::string_view, Length>> sizes;
  const auto written = kind.written(form);
  for (std::size_t i = 0; i < written.size(); ++i) sizes.emplace_back(kind.sizes[i], written[i]);
  if (form.kind == FormKind::outline) {
    if (!form.outline || form.outline->points.empty())
      return Problem{ProblemCode::missing_field, "outline", "no points", "the points of the section"};
    sizes = {{"width", form.width}, {"thickness", form.thickness}};
    if (form.length_along_holes) sizes.emplace_back("length", *form.length_along_holes);
  }
  for (const auto& [name, size] : sizes) {
    if (!sound(size))
      return out_of_range(fmt::format("{} of the form", name), size,
                          fmt::format("from {} to {}", shown(smallest_size), shown(largest_size)));
  }
  if (kind.most_thickness > 0 && form.thickness > kind.most_thickness * form.width)
    return out_of_range(fmt::format("{} of the form", kind.sizes[1]), form.thickness,
                        kind.most_thickness == 1
                            ? fmt::format("at most its width of {}", shown(form.width))
                            : fmt::format("at most half its width of {}", shown(form.width)));
  return Done{};
}

// Radii of corners stay below half the thickness, or the section would have another shape.
Result<Done> check_settings(const Form& form, const KindRow& kind) {
  for (const SettingRow& setting : settings()) {
    const auto& value = form.*setting.field;
    if (!value || setting.field == &Form::length_along_holes) continue;
    const std::string where = fmt::format("{} of the form", setting.phrase);
    if (std::find(kind.settings.begin(), kind.settings.end(), setting.name) == kind.settings.end())
      return out_of_range(where, *value, fmt::format("none for a {}", kind.name));
    const bool radius = setting.field == &Form::tip_radius || setting.field == &Form::edge_radius;
    if (radius && !(*value >= Length{} && 2 * *value < form.thickness))
      return out_of_range(
          where, *value, fmt::format("0 or more, less than half the thickness of {}", shown(form.thickness)));
    if (!radius && !(*value > Length{} && *value <= largest_size))
      return out_of_range(where, *value, "above 0, and inside the form");
  }
  return Done{};
}

// How far inside a convex curve a point lies: the least distance to its edge, or at most 0 when it lies outside.
double depth_mm(const std::vector<Point>& edge, Point at) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < edge.size(); ++i) {
    const Point from = edge[i], along = edge[(i + 1) % edge.size()] - from;
    if (norm(along) > 1e-9) least = std::min(least, cross(along, at - from) / norm(along));
  }
  return least;
}

Result<Done> check_holes(const Form& form, const ConvexCurve& curve) {
  if (!form.hole && !form.hole_spacing) return Done{};
  const Length across = form.hole.value_or(Length{});
  if (form.hole_spacing && *form.hole_spacing <= across)
    return out_of_range("distance between the holes of the form", *form.hole_spacing,
                        fmt::format("more than a hole of {}, or they overlap", shown(across)));
  const auto edge = sample(curve, millimetres(1e-3));  // finer than any hole is drilled
  for (const Point centre : hole_centres(form)) {
    const double depth = depth_mm(edge, centre);
    if (depth <= 0)
      return out_of_range("distance between the holes of the form", *form.hole_spacing,
                          "holes inside the section");
    if (depth <= across.mm() / 2)
      return out_of_range(
          "diameter of a hole of the form", across,
          fmt::format("less than {}, or it breaks through the side", shown(millimetres(2 * depth))));
  }
  return Done{};
}

Result<ConvexCurve> checked_section(const Form& form) {
  const KindRow& kind = row(form.kind);
  if (const auto checked = check_sizes(form, kind); !checked) return checked.problem();
  if (const auto checked = check_settings(form, kind); !checked) return checked.problem();
  auto curve = kind.section(form);
  if (!curve) return curve;
  if (const auto checked = check_holes(form, *curve); !checked) return checked.problem();
  return curve;
}

Result<std::vector<Length>> read_sizes(std::string_view text, std::string_view whole, const KindRow& kind) {
  const auto parts = split(text, 'x');
  if (parts.size() != kind.sizes.size()) {
    return Problem{ProblemCode::bad_text, "form",
                   fmt::format("{} with {} size{}", quote(whole), parts.size(), parts.size() == 1 ? "" : "s"),
                   fmt::format("{}: {}", kind.sizes.size(), pattern(kind))};
  }
  std::vector<Length> sizes;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const auto size = kind.kind == FormKind::ring ? parse_ring_size(parts[i]) : parse_length(parts[i]);
    if (!size) return size.problem().within(fmt::format("{} of the form", kind.sizes[i]));
    sizes.push_back(kept(*size));
  }
  return sizes;
}

Result<Done> read_setting(std::string_view text, const KindRow& kind, Form& form) {
  const auto equals = text.find('=');
  const std::string_view name = trim(text.substr(0, equals));
  const auto table = settings();
  const auto setting =
      std::find_if(table.begin(), table.end(), [&](const SettingRow& s) { return s.name == name; });
  if (setting == table.end() ||
      std::find(kind.settings.begin(), kind.settings.end(), name) == kind.settings.end()) {
    std::string names;
    for (const std::string_view known : kind.settings)
      names += (names.empty() ? "" : ", ") + std::string(known);
    return Problem{ProblemCode::unknown_name, "setting of the form", quote(name),
                   names.empty() ? fmt::format("none for a {}", kind.name) : "one of " + names};
  }
  if (equals == std::string_view::npos)
    return Problem{ProblemCode::bad_text, "setting of the form", quote(text), fmt::format("{}=LENGTH", name)};
  if (form.*setting->field)
    return Problem{ProblemCode::duplicate_name, "setting of the form", quote(name), "each once"};
  const auto value = parse_length(text.substr(equals + 1));
  if (!value) return value.problem().within(fmt::format("{} of the form", setting->phrase));
  form.*setting->field = kept(*value);
  return Done{};
}

Result<Form> make(std::string_view text, std::string_view whole, const KindRow& kind,
                  std::span<const Point> points) {
  if (kind.kind == FormKind::outline) {
    if (!points.empty())
      return form_from_outline(std::string(trim(text)), points, std::nullopt, Dents::bridge);
    return Problem{ProblemCode::missing_field, "outline", quote(trim(text)), "its points beside its name"};
  }
  const auto sizes = read_sizes(text, whole, kind);
  if (!sizes) return sizes.problem();
  return kind.make(*sizes);
}

}  // namespace

std::string_view kind_name(FormKind kind) {
  return row(kind).name;
}

Result<FormKind> parse_kind(std::string_view name) {
  std::string names;
  for (const KindRow& kind : kinds()) {
    if (kind.name == name) return kind.kind;
    names += (names.empty() ? "" : ", ") + std::string(kind.name);
  }
  return Problem{ProblemCode::unknown_name, "kind of form", quote(name), "one of " + names};
}

Result<Done> check(const Form& form) {
  const auto curve = checked_section(form);
  if (!curve) return curve.problem();
  return Done{};
}

Result<Form> parse_form(std::string_view text) {
  return parse_form(text, {});
}

Result<Form> parse_form(std::string_view text, std::span<const Point> outline_points) {
  const auto colon = text.find(':');
  if (colon == std::string_view::npos) {
    return Problem{ProblemCode::bad_text, "form", quote(text),
                   "KIND:SIZES, such as lens:17x5x9, round:12x20 or ring:54"};
  }
  const auto kind = parse_kind(trim(text.substr(0, colon)));
  if (!kind) return kind.problem().within("form");
  const auto parts = split(text.substr(colon + 1), ',');
  auto form = make(parts.front(), text, row(*kind), outline_points);
  if (!form) return form;
  for (std::size_t i = 1; i < parts.size(); ++i)
    if (const auto read = read_setting(parts[i], row(*kind), *form); !read) return read.problem();
  if (const auto checked = check(*form); !checked) return checked.problem();
  return form;
}

std::string to_notation(const Form& form) {
  const KindRow& kind = row(form.kind);
  std::string text;
  for (const Length size : kind.written(form))
    text += (text.empty() ? "" : "x") + plain_number(size.mm(), size_decimals);
  if (form.outline) text = form.outline->name;
  for (const SettingRow& setting : settings()) {
    const bool has =
        std::find(kind.settings.begin(), kind.settings.end(), setting.name) != kind.settings.end();
    if (const auto& value = form.*setting.field; has && value)
      text += fmt::format(",{}={}", setting.name, plain_number(value->mm(), size_decimals));
  }
  return std::string(kind.name) + ":" + text;
}

std::string describe(const Form& form) {
  const KindRow& kind = row(form.kind);
  std::vector<Length> sizes = kind.written(form);
  std::string text(kind.phrase);
  if (form.outline) {
    text += " \"" + form.outline->name + "\"";
    sizes = {form.width, form.thickness};
    if (form.length_along_holes) sizes.push_back(*form.length_along_holes);
  }
  for (std::size_t i = 0; i < sizes.size(); ++i) text += (i ? " × " : " ") + plain_number(sizes[i].mm());
  return text + (form.kind == FormKind::ring ? "" : form.kind == FormKind::wrist ? " mm round" : " mm");
}

Result<ConvexCurve> section(const Form& form) {
  return checked_section(form);
}

std::vector<Point> hole_centres(const Form& form) {
  if (form.hole_spacing) {
    const double aside_mm = form.hole_spacing->mm() / 2;
    return {{-aside_mm, 0}, {aside_mm, 0}};
  }
  return form.hole ? std::vector<Point>{{0, 0}} : std::vector<Point>{};
}

}  // namespace evencount::form
