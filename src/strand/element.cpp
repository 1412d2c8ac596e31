#include "strand/element.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.hpp"

namespace evencount::strand {
namespace {

struct KindRow {
  ElementKind kind;
  std::string_view name;
};
constexpr std::array<KindRow, 11> kinds{{{ElementKind::form, "form"},
                                         {ElementKind::bead, "bead"},
                                         {ElementKind::spacer, "spacer"},
                                         {ElementKind::cap, "cap"},
                                         {ElementKind::joiner, "joiner"},
                                         {ElementKind::clasp, "clasp"},
                                         {ElementKind::extender, "extender"},
                                         {ElementKind::crimp, "crimp"},
                                         {ElementKind::cover, "cover"},
                                         {ElementKind::knot, "knot"},
                                         {ElementKind::ring, "ring"}}};

Problem out_of_range(const Element& element, std::string_view what, std::string found, std::string expected) {
  return {ProblemCode::out_of_range, fmt::format("{} of {}", what, element.id), std::move(found),
          std::move(expected)};
}

std::string shown(Length length) {
  return plain_number(length.mm(), 4) + " mm";
}

bool is_size(Length length) {
  return std::isfinite(length.mm()) && length > Length{} && length <= largest_part;
}
bool is_size_or_none(Length length) {
  return length == Length{} || is_size(length);
}

Result<Done> check_holes(const Element& e) {
  const int fewest = e.kind == ElementKind::knot ? 0 : 1, most = e.kind == ElementKind::knot ? 0 : 2;
  if (e.holes < fewest || e.holes > most)
    return out_of_range(e, "holes", fmt::format("{}", e.holes), most == 0 ? "none in a knot" : "1 or 2");
  if (e.holes != 0 && !is_size(e.hole)) return out_of_range(e, "hole", shown(e.hole), "above 0");
  if (e.kind != ElementKind::ring && e.hole >= e.thickness)
    return out_of_range(e, "hole", shown(e.hole), "less than its thickness, " + shown(e.thickness));
  if (e.holes == 2 && e.apart <= e.hole)
    return out_of_range(e, "distance of the holes", shown(e.apart), "more than a hole, " + shown(e.hole));
  if (e.holes == 2 && e.apart + e.hole >= e.across)
    return out_of_range(e, "distance of the holes", shown(e.apart),
                        fmt::format("within the {} across", shown(e.across)));
  if (e.holes != 2 && e.apart != Length{})
    return out_of_range(e, "distance of the holes", shown(e.apart), "none for one hole");
  return Done{};
}

/// The two can reach into each other.
bool is_cap_and_content(const Element& cap, const Element& content) {
  if (cap.kind == ElementKind::cap)
    return content.kind == ElementKind::bead || content.kind == ElementKind::form;
  return cap.kind == ElementKind::cover && content.kind == ElementKind::crimp;
}

/// How far each element reaches into the next. A cap or cover takes in one neighbour and a crimp goes into one
/// cover, a bead into two caps;
/// so that the row is as short as it can be.
std::vector<std::int64_t> overlaps(std::span<const Element* const> row) {
  const std::size_t pairs = row.empty() ? 0 : row.size() - 1;
  const auto takes_two = [&](std::size_t i) {
    return row[i]->kind == ElementKind::bead || row[i]->kind == ElementKind::form;
  };
  // best[i][u]: the most of the pairs from i on, when pair i is used (u) or not.
  std::vector<std::array<std::int64_t, 2>> best(pairs + 1, {0, 0});
  for (std::size_t i = pairs; i-- > 0;) {
    const auto& after = best[i + 1];
    best[i][0] = std::max(after[0], after[1]);
    best[i][1] =
        overlap_um(*row[i], *row[i + 1]) + (i + 1 < pairs && !takes_two(i + 1) ? after[0] : best[i][0]);
  }
  std::vector<std::int64_t> overlaps(pairs, 0);
  bool used = false;
  for (std::size_t i = 0; i < pairs; ++i) {
    const bool may = !used || takes_two(i);
    used = may && best[i][1] > best[i][0];
    if (used) overlaps[i] = overlap_um(*row[i], *row[i + 1]);
  }
  return overlaps;
}

}  // namespace

std::string_view kind_name(ElementKind kind) {
  return std::find_if(kinds.begin(), kinds.end(), [&](const KindRow& r) { return r.kind == kind; })->name;
}

std::optional<ElementKind> find_kind(std::string_view name) {
  const auto found =
      std::find_if(kinds.begin(), kinds.end(), [&](const KindRow& r) { return r.name == name; });
  if (found == kinds.end()) return std::nullopt;
  return found->kind;
}

Length Carrier::band_width() const {
  return band ? band->columns * band->gauge.column : Length{};
}

bool same_part(const Element& a, const Element& b) {
  return a.id == b.id && a.name == b.name && a.kind == b.kind && a.width == b.width && a.across == b.across &&
         a.thickness == b.thickness && a.holes == b.holes && a.apart == b.apart && a.hole == b.hole &&
         a.nests == b.nests && a.chain == b.chain;
}

Result<Done> check(const Element& e) {
  if (!is_size(e.width))
    return out_of_range(e, "width", shown(e.width), "above 0, at most " + shown(largest_part));
  if (!is_size(e.across))
    return out_of_range(e, "size across", shown(e.across), "above 0, at most " + shown(largest_part));
  if (!is_size(e.thickness))
    return out_of_range(e, "thickness", shown(e.thickness), "above 0, at most " + shown(largest_part));
  if (!is_size_or_none(e.nests) || e.nests >= e.width)
    return out_of_range(e, "how far a bead nests", shown(e.nests), "less than its width, " + shown(e.width));
  if (!is_size_or_none(e.chain))
    return out_of_range(e, "chain", shown(e.chain), "0 to " + shown(largest_part));
  return check_holes(e);
}

Element bead_element(const bead::Size& size) {
  Element element;
  element.id = size.id;
  element.name = bead::trade_name(size);
  element.width = size.length;
  element.across = element.thickness = size.diameter;
  element.hole = size.hole;
  return element;
}

Result<Element> form_element(std::string id, std::string name, Carrier carrier) {
  if (carrier.together < 1)
    return Problem{ProblemCode::out_of_range, "forms together in " + id, fmt::format("{}", carrier.together),
                   "at least 1"};
  const auto holes = form::holes_of(carrier.form);
  if (!holes) return holes.problem().within(id);
  Element element;
  element.id = std::move(id);
  element.name = std::move(name);
  element.kind = ElementKind::form;
  // holes_of has seen to it that a form that is strung has a length.
  element.width = std::max(static_cast<double>(carrier.together) * *carrier.form.length_along_holes,
                           carrier.band_width());
  const Length round = carrier.band ? 2 * carrier.band->bead.diameter : Length{};
  element.across = carrier.form.width + round;
  element.thickness = carrier.form.thickness + round;
  element.holes = holes->count;
  element.apart = holes->spacing;
  element.hole = holes->diameter;
  element.carrier = std::move(carrier);
  return element;
}

std::int64_t micrometres(Length length) {
  return std::llround(1000 * length.mm());
}

std::int64_t overlap_um(const Element& a, const Element& b) {
  if (is_cap_and_content(b, a)) return overlap_um(b, a);
  if (!is_cap_and_content(a, b)) return 0;
  const std::int64_t outer = micrometres(a.width), inner = micrometres(b.width);
  return a.kind == ElementKind::cap ? std::min(micrometres(a.nests), inner / 2) : std::min(outer, inner);
}

std::vector<std::int64_t> starts_um(std::span<const Element* const> row) {
  const std::vector<std::int64_t> into_next = overlaps(row);
  std::vector<std::int64_t> starts{0};
  for (std::size_t i = 0; i < row.size(); ++i)
    starts.push_back(starts.back() + micrometres(row[i]->width) - (i < into_next.size() ? into_next[i] : 0));
  return starts;
}

std::int64_t length_um(std::span<const Element* const> row) {
  return starts_um(row).back();
}

}  // namespace evencount::strand
