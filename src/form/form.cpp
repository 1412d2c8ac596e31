#include "form/form.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "base/text.hpp"
#include "form/sections.hpp"

namespace evencount::form {
namespace {

constexpr int decimals = 4;

// Everything that sets one kind apart. `sizes` are read and written in this order.
struct KindRow {
  FormKind kind;
  std::string_view name;
  std::string_view example;
  std::string_view phrase;
  std::vector<std::string_view> sizes;
  bool thickness_at_most_width;
  Form (*make)(std::span<const Length> sizes);
  std::vector<Length> (*written)(const Form& form);
  Result<ConvexCurve> (*section)(const Form& form);
};

Form flat(FormKind kind, std::span<const Length> sizes) {
  return {kind, sizes[0], sizes[1], sizes[2]};
}
std::vector<Length> flat_sizes(const Form& form) {
  return {form.width, form.thickness, form.length_along_holes.value_or(Length{})};
}

std::span<const KindRow> kinds() {
  using Sizes = std::span<const Length>;
  static const std::array<KindRow, 5> table{{
      {FormKind::lens,
       "lens",
       "lens:17x5x9",
       "two-hole carrier bead",
       {"width", "thickness", "length"},
       true,
       [](Sizes s) { return flat(FormKind::lens, s); },
       flat_sizes,
       [](const Form& f) { return lens(f.width, f.thickness, lens_tip_radius); }},
      {FormKind::round,
       "round",
       "round:12x20",
       "round form",
       {"diameter", "length"},
       false,
       [](Sizes s) {
         return Form{FormKind::round, s[0], s[0], s[1]};
       },
       [](const Form& f) {
         return std::vector{f.width, f.length_along_holes.value_or(Length{})};
       },
       [](const Form& f) { return circle(f.width); }},
      {FormKind::oval,
       "oval",
       "oval:18x13x5",
       "oval form",
       {"width", "height", "length"},
       false,
       [](Sizes s) { return flat(FormKind::oval, s); },
       flat_sizes,
       [](const Form& f) { return ellipse(f.width, f.thickness); }},
      {FormKind::bar,
       "bar",
       "bar:20x4x10",
       "flat bar with round ends",
       {"width", "thickness", "length"},
       true,
       [](Sizes s) { return flat(FormKind::bar, s); },
       flat_sizes,
       [](const Form& f) { return rounded_bar(f.width, f.thickness, f.thickness / 2); }},
      {FormKind::ring,
       "ring",
       "ring:54",
       "finger of ring size",
       {"circumference"},
       false,
       [](Sizes s) {
         const Length across = s[0] / std::numbers::pi;
         return Form{FormKind::ring, across, across, std::nullopt};
       },
       [](const Form& f) { return std::vector{f.width * std::numbers::pi}; },
       [](const Form& f) { return circle(f.width); }},
  }};
  return table;
}

const KindRow& row(FormKind kind) {
  const auto table = kinds();
  const auto found =
      std::find_if(table.begin(), table.end(), [&](const KindRow& k) { return k.kind == kind; });
  assert(found != table.end());
  return *found;
}

std::string shown(Length length) {
  return plain_number(length.mm(), decimals) + " mm";
}

std::string pattern(const KindRow& kind) {
  std::string text = std::string(kind.name) + ":";
  for (std::size_t i = 0; i < kind.sizes.size(); ++i) text += (i ? "x" : "") + upper_ascii(kind.sizes[i]);
  return text + ", such as " + std::string(kind.example);
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
  return Problem{ProblemCode::unknown_name, "kind of form", quoted(name), "one of " + names};
}

Result<Done> check(const Form& form) {
  const KindRow& kind = row(form.kind);
  const auto written = kind.written(form);
  constexpr double rounding = 1e-12;  // a circumference comes back from a diameter
  for (std::size_t i = 0; i < written.size(); ++i) {
    if (!(written[i] >= (1 - rounding) * smallest_size && written[i] <= (1 + rounding) * largest_size))
      return Problem{ProblemCode::out_of_range, fmt::format("{} of the form", kind.sizes[i]),
                     shown(written[i]),
                     fmt::format("from {} to {}", shown(smallest_size), shown(largest_size))};
  }
  if (kind.thickness_at_most_width && form.thickness > form.width)
    return Problem{ProblemCode::out_of_range, "thickness of the form", shown(form.thickness),
                   fmt::format("at most its width of {}", shown(form.width))};
  return Done{};
}

Result<Form> parse_form(std::string_view text) {
  const auto colon = text.find(':');
  if (colon == std::string_view::npos) {
    return Problem{ProblemCode::bad_text, "form", quoted(text),
                   "KIND:SIZES, such as lens:17x5x9, round:12x20 or ring:54"};
  }
  const auto kind = parse_kind(trim(text.substr(0, colon)));
  if (!kind) return kind.problem().within("form");
  const KindRow& wanted = row(*kind);
  const auto parts = split(text.substr(colon + 1), 'x');
  if (parts.size() != wanted.sizes.size()) {
    return Problem{ProblemCode::bad_text, "form",
                   fmt::format("{} with {} size{}", quoted(text), parts.size(), parts.size() == 1 ? "" : "s"),
                   fmt::format("{}: {}", wanted.sizes.size(), pattern(wanted))};
  }
  std::vector<Length> sizes;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const auto size = parse_length(parts[i]);
    if (!size) return size.problem().within(fmt::format("{} of the form", wanted.sizes[i]));
    sizes.push_back(*size);
  }
  const Form form = wanted.make(sizes);
  if (const auto checked = check(form); !checked) return checked.problem();
  return form;
}

std::string to_notation(const Form& form) {
  std::string text;
  for (const Length size : row(form.kind).written(form))
    text += (text.empty() ? "" : "x") + plain_number(size.mm(), decimals);
  return std::string(kind_name(form.kind)) + ":" + text;
}

std::string describe(const Form& form) {
  const auto written = row(form.kind).written(form);
  std::string sizes;
  for (const Length size : written) sizes += (sizes.empty() ? "" : " × ") + plain_number(size.mm());
  const std::string unit = form.kind == FormKind::ring ? "" : " mm";
  return std::string(row(form.kind).phrase) + " " + sizes + unit;
}

Result<ConvexCurve> section(const Form& form) {
  if (const auto checked = check(form); !checked) return checked.problem();
  return row(form.kind).section(form);
}

}  // namespace evencount::form
