#include <algorithm>

#include "base/text.hpp"
#include "project/json.hpp"
#include "project/operation_reader.hpp"
#include "project/strand.hpp"
#include "project/strand_start.hpp"
#include "strand/layout_edit.hpp"

namespace evencount::project {
namespace {

using json::Node;
using strand::Item;
using Path = std::vector<int>;  ///< [3]: the fourth of the list; [3, 0]: the first within its brackets

constexpr std::size_t longest_shown = 40;

std::string shown(const Item& item) {
  const std::string text = to_text(item);
  if (text.size() <= longest_shown) return text;
  std::size_t end = longest_shown;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;  // no half characters
  return text.substr(0, end) + "…";
}

Path read_path(OperationReader& reader, std::string_view name) {
  Path path;
  reader.fields().each(name, strand::deepest_layout, true, [&](const Node& node, const json::Place& place) {
    const auto* number = node.as<json::Number>();
    const auto value = number ? parse_integer(number->digits) : std::nullopt;
    if (value && *value >= 0 && *value < strand::most_pieces) return path.push_back(static_cast<int>(*value));
    reader.report().add(ProblemCode::wrong_type, place, json::describe(node), "a place, from 0");
  });
  if (path.empty() && !reader.report().failed())
    reader.refuse(ProblemCode::wrong_type, name, "an empty list", "places from the outermost list inwards");
  return path;
}

/// A project's layout while it is changed.
class Stringing {
 public:
  explicit Stringing(const Project& project) : project_(project), catalogue_(strand_catalogue(project)) {}

  Result<Done> read() {
    if (!project_.strand)
      return Problem{ProblemCode::missing_field, "/strand", "nothing", "a strand (begin_strand)"};
    text_ = project_.strand->layout;
    auto layout = strand::parse_layout(text_, catalogue_);
    if (!layout) return layout.problem().within("strand");
    items = std::move(layout->items);
    return Done{};
  }

  /// A single item as the language writes it.
  Result<Item> item(OperationReader& reader, const std::string& written) {
    const auto text = head_with("string " + written);
    if (!text) return text.problem();
    auto layout = strand::parse_layout(*text, catalogue_);
    if (!layout)
      return Problem{layout.problem().code, reader.fields().place_of("item").pointer(),
                     layout.problem().found, layout.problem().expected};
    if (layout->items.size() != 1)
      return Problem{ProblemCode::bad_text, reader.fields().place_of("item").pointer(), quote(written),
                     "one thing, or several in brackets"};
    return std::move(layout->items.front());
  }

  Result<Done> add_statement(const std::string& statement) {
    auto text = strand::with_statement(text_, statement);
    if (!text) return text.problem();
    text_ = std::move(*text);
    return Done{};
  }
  void set_text(std::string text) { text_ = std::move(text); }
  [[nodiscard]] const std::string& text() const { return text_; }

  Result<Applied> finish(std::string sentence, bool list_changed = true) {
    if (list_changed) {
      if (items.empty())
        return Problem{ProblemCode::out_of_range, "/strand", "a strand that nothing is left of",
                       "at least one thing on the cords"};
      auto text = strand::with_items(text_, items);
      if (!text) return text.problem();
      text_ = std::move(*text);
    }
    if (const auto good = strand::parse_layout(text_, catalogue_); !good)
      return good.problem().within("strand");
    Applied applied{project_, std::move(sentence)};
    applied.project.strand->layout = text_;
    return applied;
  }

  std::vector<Item> items;

 private:
  Result<std::string> head_with(const std::string& list) {
    const auto text = strand::with_items(text_, {});
    if (!text) return text.problem();
    return text->substr(0, text->rfind("string")) + list;
  }

  const Project& project_;
  std::vector<strand::Element> catalogue_;
  std::string text_;
};

/// The list that a place is in; nothing where there is none. `more`: the place behind the last counts.
std::vector<Item>* list_of(std::vector<Item>& items, const Path& path, bool more) {
  std::vector<Item>* list = &items;
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    if (static_cast<std::size_t>(path[i]) >= list->size()) return nullptr;
    Item& item = (*list)[static_cast<std::size_t>(path[i])];
    if (item.items.empty()) return nullptr;
    list = &item.items;
  }
  return static_cast<std::size_t>(path.back()) < list->size() + (more ? 1 : 0) ? list : nullptr;
}

Problem no_place(OperationReader& reader, std::string_view name) {
  return {ProblemCode::out_of_range, reader.fields().place_of(name).pointer(),
          "a place where nothing is strung", "a place of the list"};
}

auto place_in(std::vector<Item>& list, const Path& path) {
  return list.begin() + path.back();
}

/// Brackets that nothing is left in go as well.
void prune(std::vector<Item>& items) {
  for (Item& item : items) prune(item.items);
  std::erase_if(items, [](const Item& item) {
    const bool has_list =
        item.kind == Item::Kind::group || item.kind == Item::Kind::between || item.kind == Item::Kind::mirror;
    return has_list && item.items.empty();
  });
}

/// Runs of one name stay alike.
void change_runs(std::vector<Item>& items, const Item& like) {
  for (Item& item : items) {
    change_runs(item.items, like), change_runs(item.about, like);
    if (item.group == like.group) item.unit = like.unit, item.from = like.from, item.to = like.to;
  }
}

/// What every operation on the list begins with: its fields and the layout.
template <typename Change>
Result<Applied> change_list(const Project& project, OperationReader& reader,
                            std::initializer_list<std::string_view> paths, Change change) {
  std::vector<Path> places;
  for (const std::string_view name : paths) places.push_back(read_path(reader, name));
  const std::string item = reader.has("item") ? reader.text("item") : "",
                    part = reader.has("part") ? reader.text("part") : "";
  if (!reader.finish()) return reader.problem();
  Stringing stringing(project);
  if (const auto read = stringing.read(); !read) return read.problem();
  return change(stringing, places, item, part);
}

Result<Applied> add_element(const Project& project, OperationReader& reader) {
  const bool at_end = !reader.has("at");
  const auto add = [&](Stringing& stringing, const std::vector<Path>& places, const std::string& written,
                       const std::string& part) -> Result<Applied> {
    if (!part.empty())
      if (const auto added = stringing.add_statement(part); !added) return added.problem();
    auto item = stringing.item(reader, written);
    if (!item) return item.problem();
    const Path at = at_end ? Path{static_cast<int>(stringing.items.size())} : places.front();
    auto* list = list_of(stringing.items, at, true);
    if (!list) return no_place(reader, "at");
    std::string sentence = "strung " + shown(*item);
    list->insert(place_in(*list, at), std::move(*item));
    return stringing.finish(std::move(sentence));
  };
  (void)reader.require("item");
  if (at_end) return change_list(project, reader, {}, add);
  return change_list(project, reader, {"at"}, add);
}

Result<Applied> change_element(const Project& project, OperationReader& reader) {
  (void)reader.require("item");
  return change_list(project, reader, {"at"},
                     [&](Stringing& stringing, const std::vector<Path>& places, const std::string& written,
                         const std::string& part) -> Result<Applied> {
                       if (!part.empty())
                         if (const auto added = stringing.add_statement(part); !added) return added.problem();
                       auto item = stringing.item(reader, written);
                       if (!item) return item.problem();
                       auto* list = list_of(stringing.items, places.front(), false);
                       if (!list) return no_place(reader, "at");
                       Item& there = *place_in(*list, places.front());
                       std::string sentence = fmt::format("changed {} to {}", shown(there), shown(*item));
                       there = std::move(*item);
                       if (const Item like = there; !like.group.empty()) change_runs(stringing.items, like);
                       return stringing.finish(std::move(sentence));
                     });
}

Result<Applied> move_element(const Project& project, OperationReader& reader) {
  return change_list(project, reader, {"from", "to"},
                     [&](Stringing& stringing, const std::vector<Path>& places, const std::string&,
                         const std::string&) -> Result<Applied> {
                       auto* from = list_of(stringing.items, places[0], false);
                       if (!from) return no_place(reader, "from");
                       Item item = *place_in(*from, places[0]);
                       from->erase(place_in(*from, places[0]));
                       auto* to = list_of(stringing.items, places[1], true);
                       if (!to) return no_place(reader, "to");
                       std::string sentence = "moved " + shown(item) + " on the strand";
                       to->insert(place_in(*to, places[1]), std::move(item));
                       prune(stringing.items);
                       return stringing.finish(std::move(sentence));
                     });
}

Result<Applied> duplicate_element(const Project& project, OperationReader& reader) {
  return change_list(project, reader, {"at"},
                     [&](Stringing& stringing, const std::vector<Path>& places, const std::string&,
                         const std::string&) -> Result<Applied> {
                       auto* list = list_of(stringing.items, places[0], false);
                       if (!list) return no_place(reader, "at");
                       const Item item = *place_in(*list, places[0]);
                       list->insert(place_in(*list, places[0]) + 1, item);
                       return stringing.finish("strung " + shown(item) + " once more");
                     });
}

Result<Applied> remove_element(const Project& project, OperationReader& reader) {
  return change_list(project, reader, {"at"},
                     [&](Stringing& stringing, const std::vector<Path>& places, const std::string&,
                         const std::string&) -> Result<Applied> {
                       auto* list = list_of(stringing.items, places[0], false);
                       if (!list) return no_place(reader, "at");
                       std::string sentence =
                           "took " + shown(*place_in(*list, places[0])) + " off the strand";
                       list->erase(place_in(*list, places[0]));
                       prune(stringing.items);
                       return stringing.finish(std::move(sentence));
                     });
}

Result<Applied> close_strand(const Project& project, OperationReader& reader) {
  const std::string name = reader.text_or("with", ""), part = reader.text_or("part", "");
  if (!reader.finish()) return reader.problem();
  Stringing stringing(project);
  if (const auto read = stringing.read(); !read) return read.problem();
  if (!part.empty())
    if (const auto added = stringing.add_statement(part); !added) return added.problem();
  auto text = strand::with_closing(stringing.text(), name);
  if (!text) return text.problem();
  stringing.set_text(std::move(*text));
  return stringing.finish(
      name.empty() ? "left the cords' ends to be knotted" : "closed the strand with " + name, false);
}

Result<Applied> change_cords(const Project& project, OperationReader& reader) {
  const auto cords = reader.whole_if("cords", 1, 2);
  const std::string kind = reader.text_or("kind", "");
  const double diameter_mm = reader.fields().number_or("diameter_mm", 0, strand::thickest_cord.mm(), 0);
  if (!kind.empty() && !strand::find_cord_kind(kind))
    reader.refuse(ProblemCode::unknown_name, "kind", quote(kind), "elastic, wire, braided or leather");
  if (!reader.finish()) return reader.problem();
  Stringing stringing(project);
  if (const auto read = stringing.read(); !read) return read.problem();
  const auto layout = strand::parse_layout(stringing.text(), strand_catalogue(project));
  strand::Cord cord = layout->cord;
  if (!kind.empty()) cord.kind = *strand::find_cord_kind(kind);
  if (diameter_mm > 0) cord.diameter = millimetres(diameter_mm);
  auto text = strand::with_cords(stringing.text(), cords.value_or(layout->cords), cord);
  if (!text) return text.problem();
  stringing.set_text(std::move(*text));
  return stringing.finish("changed the cords", false);
}

constexpr std::string_view strand_fields[] = {"layout", "worn", "ease_mm", "lean", "tolerance_mm", "sizes"};

Result<Applied> change_strand(const Project& project, OperationReader& reader) {
  std::vector<std::pair<std::string_view, const Node*>> given;
  for (const std::string_view name : strand_fields)
    if (const Node* value = reader.value(name)) given.emplace_back(name, value);
  if (!project.strand)
    reader.report().add_as_is({ProblemCode::missing_field, "/strand", "nothing", "a strand (begin_strand)"});
  if (!reader.finish()) return reader.problem();
  Draft draft(project);
  Node there = *find_member(draft.outline, "strand");
  std::string words;
  for (const auto& [name, value] : given) {
    set_member(there, name, *value);
    std::string word(name.substr(0, name.find("_mm")));
    words += (words.empty() ? "" : ", ") + (word == "worn" ? "what it is worn on" : word);
  }
  draft.set("strand", std::move(there));
  return std::move(draft).finish("changed the strand's " + (words.empty() ? "nothing" : words));
}

Result<Applied> begin_strand(const Project& project, OperationReader& reader) {
  const auto worn = reader.choice("worn", &strand::parse_worn);
  if (!reader.finish()) return reader.problem();
  auto strand = strand_to_begin_with(project, worn.value_or(strand::Worn::wrist));
  if (!strand) return strand.problem();
  Applied applied{project, "strung the bands"};
  applied.project.strand = std::move(*strand);
  return applied;
}

constexpr OperationRow rows[] = {
    {"begin_strand", begin_strand},     {"change_strand", change_strand},
    {"change_cords", change_cords},     {"close_strand", close_strand},
    {"add_element", add_element},       {"change_element", change_element},
    {"move_element", move_element},     {"duplicate_element", duplicate_element},
    {"remove_element", remove_element},
};

}  // namespace

std::span<const OperationRow> strand_operations() {
  return rows;
}

}  // namespace evencount::project
