#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "strand/layout.hpp"
#include "strand/layout_edit.hpp"
#include "strand/layout_tokens.hpp"

namespace evencount::strand {
namespace {

std::string size(Length length) {
  return plain_number(length.mm(), 4) + "mm";
}

std::string part_text(const Element& part) {
  Element usual = usual_part(part.kind, part.id, part.width);
  std::string text = fmt::format("{} {} {}", kind_name(part.kind), written_name(part.id), size(part.width));
  const auto add = [&](std::string_view word, Length is, Length was) {
    if (is != was) text += fmt::format(" {} {}", word, size(is));
  };
  if (part.holes != usual.holes) text += fmt::format(" holes {}", part.holes);
  add("apart", part.apart, usual.apart);
  add("hole", part.hole, usual.hole);
  add("across", part.across, usual_across(part));
  add("thick", part.thickness, usual.thickness);
  add("nests", part.nests, usual.nests);
  add("chain", part.chain, usual.chain);
  if (part.name != part.id) text += " " + in_quotes(part.name);
  return text;
}

std::string list_text(const std::vector<Item>& items);

std::string plain_text(const Item& item) {
  const std::string times = item.times == 1 ? "" : fmt::format("{} ", item.times);
  if (item.kind == Item::Kind::group) return fmt::format("{}({})", times, list_text(item.items));
  return fmt::format("{}{}{}", times, item.both ? "both " : "", written_name(item.name));
}

/// A lone thing needs no brackets; a lone bracket keeps its own.
std::string unit_text(const std::vector<Item>& unit) {
  const bool alone = unit.size() == 1 && unit[0].kind == Item::Kind::single;
  return alone ? plain_text(unit[0]) : "(" + list_text(unit) + ")";
}

std::string run_text(const Item& item) {
  std::string text = item.kind == Item::Kind::fill ? "fill" : "between";
  if (!item.group.empty()) text += " " + written_name(item.group);
  text += " with " + unit_text(item.unit);
  if (item.from != 0) text += fmt::format(" from {}", item.from);
  if (item.to) text += fmt::format(" to {}", *item.to);
  if (item.kind == Item::Kind::between) text += " (" + list_text(item.items) + ")";
  return text;
}

std::string item_text(const Item& item) {
  switch (item.kind) {
    case Item::Kind::single:
    case Item::Kind::group:
      return plain_text(item);
    case Item::Kind::fill:
    case Item::Kind::between:
      return run_text(item);
    case Item::Kind::mirror:
      return fmt::format("mirror ({}){}", list_text(item.items),
                         item.about.empty() ? "" : " about " + item_text(item.about[0]));
  }
  return {};
}

std::string list_text(const std::vector<Item>& items) {
  std::string text;
  for (const Item& item : items) text += (text.empty() ? "" : ", ") + item_text(item);
  return text;
}

}  // namespace

bool operator==(const Layout& a, const Layout& b) {
  return a.cords == b.cords && a.cord == b.cord && a.closing == b.closing && a.on_hand == b.on_hand &&
         a.items == b.items &&
         std::equal(a.parts.begin(), a.parts.end(), b.parts.begin(), b.parts.end(), same_part);
}

Element usual_part(ElementKind kind, std::string id, Length width) {
  const Length flat = millimetres(4), wide_hole = millimetres(1.5);  // from memory
  constexpr double bore = 0.65;  // published: crimps of 2 mm have a bore of 1.3 mm
  Element part;
  part.name = id;
  part.id = std::move(id);
  part.kind = kind;
  part.width = part.across = part.thickness = width;
  switch (kind) {
    case ElementKind::spacer:
    case ElementKind::joiner:
    case ElementKind::clasp:
    case ElementKind::extender:
    case ElementKind::ring:
      part.thickness = std::min(width, flat);
      break;
    default:
      break;
  }
  part.hole = std::min(part.thickness / 4, wide_hole);
  if (kind == ElementKind::crimp || kind == ElementKind::cover) part.hole = bore * width;
  if (kind == ElementKind::ring) part.hole = width;
  if (kind == ElementKind::knot) {
    part.holes = 0;
    part.hole = Length{};
  }
  if (kind == ElementKind::cap) part.nests = width / 2;
  if (kind == ElementKind::extender) part.chain = millimetres(50);
  return part;
}

Length usual_across(const Element& part) {
  return part.holes == 2 ? std::max(part.width, part.apart + 3 * part.hole) : part.width;
}

std::string to_text(const Item& item) {
  return item_text(item);
}

std::string to_text(const Layout& layout) {
  std::string text = fmt::format("cords {} of {} {}\n", layout.cords, cord_kind_name(layout.cord.kind),
                                 size(layout.cord.diameter));
  for (const Element& part : layout.parts) text += part_text(part) + "\n";
  if (!layout.closing.empty()) text += fmt::format("close with {}\n", written_name(layout.closing));
  for (const OnHand& entry : layout.on_hand)
    text += fmt::format("on hand {} {}\n", written_name(entry.name), entry.count);
  return text + "string " + list_text(layout.items) + "\n";
}

}  // namespace evencount::strand
