#include "app/studio/strand_json.hpp"

#include <algorithm>

#include "app/studio/http.hpp"
#include "base/text.hpp"
#include "form/staying_on.hpp"
#include "strand/layout_edit.hpp"

namespace evencount::app::studio {
namespace {

/// A form's outline as it is drawn: nobody sees less on a screen, from memory.
constexpr Length drawn_error = millimetres(0.02);

Json mm(Length length) {
  return rounded(length.mm(), 3);
}

Json place_json(const strand::Place3& place) {
  return {rounded(place.x, 3), rounded(place.y, 3), rounded(place.z, 3)};
}

/// Where a band or a form of the project stands in its list; null where it is something else.
template <typename List, typename Name>
Json position(const List& list, Name name, const std::string& wanted) {
  const auto found =
      std::find_if(list.begin(), list.end(), [&](const auto& one) { return name(one) == wanted; });
  return found == list.end() ? Json(nullptr) : Json(found - list.begin());
}

Json element_json(const project::Project& project, const strand::Element& element) {
  const bool banded = element.carrier && element.carrier->band, bare = element.carrier && !banded;
  const auto band_name = [](const project::Band& band) { return band.name; };
  const auto form_id = [](const project::FormEntry& form) { return form.id; };
  strand::Item item;
  item.name = element.id;
  return {{"id", element.id},
          {"name", element.name},
          {"written", to_text(item)},
          {"kind", strand::kind_name(element.kind)},
          {"width_mm", mm(element.width)},
          {"across_mm", mm(element.across)},
          {"thickness_mm", mm(element.thickness)},
          {"holes", element.holes},
          {"hole_mm", mm(element.hole)},
          {"apart_mm", mm(element.apart)},
          {"band", banded ? position(project.bands, band_name, element.id) : Json(nullptr)},
          {"form", bare ? position(project.forms, form_id, element.id) : Json(nullptr)}};
}

Json items_json(const std::vector<strand::Item>& items);

Json item_json(const strand::Item& item) {
  using Kind = strand::Item::Kind;
  Json json = {{"text", to_text(item)}};
  switch (item.kind) {
    case Kind::single:
      json.update({{"kind", "single"}, {"times", item.times}, {"name", item.name}, {"both", item.both}});
      break;
    case Kind::group:
      json.update({{"kind", "group"}, {"times", item.times}, {"items", items_json(item.items)}});
      break;
    case Kind::mirror:
      json.update({{"kind", "mirror"}, {"items", items_json(item.items)}, {"about", items_json(item.about)}});
      break;
    case Kind::fill:
    case Kind::between:
      json.update({{"kind", item.kind == Kind::fill ? "fill" : "between"},
                   {"group", item.group},
                   {"unit", items_json(item.unit)},
                   {"from", item.from},
                   {"to", item.to ? Json(*item.to) : Json(nullptr)}});
      if (item.kind == Kind::between) json["items"] = items_json(item.items);
      break;
  }
  return json;
}

Json items_json(const std::vector<strand::Item>& items) {
  Json list = Json::array();
  for (const strand::Item& item : items) list.push_back(item_json(item));
  return list;
}

Json elements_json(const project::Project& project, const std::vector<strand::Element>& elements) {
  Json list = Json::array();
  for (const strand::Element& element : elements) list.push_back(element_json(project, element));
  return list;
}

/// What a name may mean besides the layout's own parts, of equal names the first.
std::vector<strand::Element> known_elements(const project::Project& project) {
  std::vector<strand::Element> known;
  const auto add = [&](const strand::Element& element) {
    const auto same = [&](const strand::Element& other) { return other.id == element.id; };
    if (std::none_of(known.begin(), known.end(), same)) known.push_back(element);
  };
  for (const strand::Element& element : project::strand_catalogue(project)) add(element);
  for (const bead::Size& size : bead::sizes()) add(strand::bead_element(size));
  return known;
}

Json read_layout(const project::Project& project, const strand::Layout& layout) {
  Json on_hand = Json::array();
  for (const strand::OnHand& entry : layout.on_hand)
    on_hand.push_back({{"name", entry.name}, {"count", entry.count}});
  return {{"cords", layout.cords},
          {"cord",
           {{"kind", strand::cord_kind_name(layout.cord.kind)}, {"diameter_mm", mm(layout.cord.diameter)}}},
          {"closing", layout.closing.empty() ? Json(nullptr) : Json(layout.closing)},
          {"parts", elements_json(project, layout.parts)},
          {"on_hand", std::move(on_hand)},
          {"items", items_json(layout.items)}};
}

/// The colour of the legend's bead that a part is named after: "8/0 round bead, night blue".
Json colour_of(const project::Project& project, const strand::Element& element) {
  const project::LegendEntry* named = nullptr;
  for (const project::LegendEntry& entry : project.legend)
    if (!entry.name.empty() && element.name.find(entry.name) != std::string::npos &&
        (!named || entry.name.size() > named->name.size()))
      named = &entry;
  if (!named) return nullptr;
  return {{"colour", colour::to_hex(named->colour)}, {"finish", bead::finish_name(named->finish)}};
}

/// The bead of a band, or of a seed bead strung by itself.
Json bead_json(const project::Project& project, const strand::Element& element) {
  std::optional<bead::Size> size;
  if (element.carrier && element.carrier->band)
    size = element.carrier->band->bead;
  else if (const bead::Size* own = project::find_bead(project, element.id); own && !element.carrier)
    size = *own;
  else if (const auto known = bead::find_size(element.id); known && !element.carrier)
    size = *known;
  if (!size) return nullptr;
  return {{"kind", bead::kind_name(size->kind)},
          {"diameter_mm", mm(size->diameter)},
          {"length_mm", mm(size->length)},
          {"hole_mm", mm(size->hole)},
          {"rim_mm", mm(bead::rim(*size))}};
}

/// The body of a form with its holes, drawn along them.
Json body_json(const strand::Element& element) {
  if (!element.carrier) return nullptr;
  const form::Form& form = element.carrier->form;
  const auto section = form::section(form);
  const auto holes = form::holes_of(form);
  if (!section || !form.length_along_holes) return nullptr;
  Json points = Json::array(), bored = Json::array();
  for (const form::Point& point : form::sample(*section, drawn_error))
    points.push_back({rounded(point.x_mm, 3), rounded(point.y_mm, 3)});
  for (int i = 0; holes && i < holes->count; ++i)
    bored.push_back({{"x_mm", rounded((holes->count == 2 ? i - 0.5 : 0) * holes->spacing.mm(), 3)},
                     {"y_mm", 0},
                     {"diameter_mm", mm(holes->diameter)}});
  return {{"kind", form::kind_name(form.kind)},
          {"section", std::move(points)},
          {"length_mm", mm(*form.length_along_holes)},
          {"together", element.carrier->together},
          {"holes", std::move(bored)}};
}

}  // namespace

Json layout_json(const project::Project& project) {
  Json json{{"text", Json(nullptr)},
            {"problem", Json(nullptr)},
            {"layout", Json(nullptr)},
            {"known", elements_json(project, known_elements(project))}};
  if (!project.strand) return json;
  json["text"] = project.strand->layout;
  const auto layout = strand::parse_layout(project.strand->layout, project::strand_catalogue(project));
  if (layout)
    json["layout"] = read_layout(project, *layout);
  else
    json["problem"] = Json::parse(problem_response(layout.problem()).body);
  return json;
}

Json placements_json(const project::Project& project, const project::StrungSizes& sizes,
                     const project::StrungSize& size, const strand::PlacedStrand& placed) {
  Json elements = Json::array(), things = Json::array(), cords = Json::array();
  for (const strand::Element& element : sizes.strung.elements) {
    Json json = element_json(project, element);
    json["look"] = colour_of(project, element);
    json["body"] = body_json(element);
    json["bead"] = bead_json(project, element);
    elements.push_back(std::move(json));
  }
  for (const strand::PlacedThing& thing : placed.things) {
    Json numbers = {thing.element, thing.cord};
    for (const strand::Place3* place : {&thing.middle, &thing.along, &thing.outwards})
      for (const Json& number : place_json(*place)) numbers.push_back(number);
    numbers.push_back(mm(thing.length));
    things.push_back(std::move(numbers));
  }
  for (const auto& line : placed.cords) {
    Json points = Json::array();
    for (const strand::Place3& place : line)
      for (const Json& number : place_json(place)) points.push_back(number);
    cords.push_back(std::move(points));
  }
  return {{"size", size.fit.wearer.name},
          {"cord_mm", mm(sizes.strung.cord.diameter)},
          {"cord_kind", strand::cord_kind_name(sizes.strung.cord.kind)},
          {"elements", std::move(elements)},
          {"things", std::move(things)},
          {"cords", std::move(cords)}};
}

}  // namespace evencount::app::studio
