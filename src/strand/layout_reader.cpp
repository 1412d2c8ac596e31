#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "base/text.hpp"
#include "strand/layout.hpp"
#include "strand/layout_tokens.hpp"

namespace evencount::strand {
namespace {

using Kind = Token::Kind;

/// Reads by looking at one token; the first problem sticks.
class Reader {
 public:
  Reader(std::vector<Token> tokens, std::span<const Element> catalogue)
      : tokens_(std::move(tokens)), catalogue_(catalogue) {}

  Result<Layout> layout() {
    while (ok() && !is_word("string")) statement();
    if (ok()) {
      next();
      layout_.items = items(0);
    }
    if (ok() && here().kind != Kind::end) fail("a comma, or the end");
    if (ok() && pieces(layout_.items) > most_pieces)
      problem_ = Problem{ProblemCode::out_of_range, place_of(here()), "more things on the cords",
                         fmt::format("at most {}", most_pieces)};
    if (!ok()) return *problem_;
    return std::move(layout_);
  }

 private:
  // ---- tokens
  [[nodiscard]] bool ok() const { return !problem_; }
  [[nodiscard]] const Token& here() const { return tokens_[at_]; }
  [[nodiscard]] bool is_word(std::string_view word) const {
    return here().kind == Kind::word && here().text == word;
  }
  [[nodiscard]] bool is_sign(char sign) const { return here().kind == Kind::sign && here().text[0] == sign; }
  void next() {
    if (at_ + 1 < tokens_.size()) ++at_;
  }
  void fail(std::string expected, ProblemCode code = ProblemCode::bad_text) {
    if (ok()) problem_ = Problem{code, place_of(here()), shown(here()), std::move(expected)};
  }
  bool take_word(std::string_view word) {
    if (!ok() || !is_word(word)) return false;
    next();
    return true;
  }
  void expect_word(std::string_view word) {
    if (!take_word(word)) fail(quote(word));
  }
  void expect_sign(char sign) {
    if (!ok() || !is_sign(sign)) return fail(quote(std::string_view(&sign, 1)));
    next();
  }

  int count(int least, int most) {
    const auto value = here().kind == Kind::number ? parse_integer(here().text) : std::nullopt;
    if (!value) return fail("a whole number"), least;
    if (*value < least || *value > most)
      return fail(fmt::format("{} to {}", least, most), ProblemCode::out_of_range), least;
    next();
    return static_cast<int>(*value);
  }
  Length length() {
    if (here().kind != Kind::number) return fail("a size, such as 6mm"), millimetres(1);
    const auto value = parse_length(here().text);
    if (!value) return fail("a size, such as 6mm"), millimetres(1);
    constexpr double per_mm = 1e4;  // what to_text can say
    if (*value > largest_part) return fail("at most 2000 mm", ProblemCode::out_of_range), millimetres(1);
    next();
    return millimetres(std::round(value->mm() * per_mm) / per_mm);
  }
  /// A new name.
  std::string name(std::string_view what) {
    const bool can_be =
        here().kind == Kind::quoted || (here().kind == Kind::word && !is_reserved(here().text));
    if (!can_be || here().text.empty()) return fail(std::string(what)), "";
    std::string text = here().text;
    next();
    return text;
  }

  // ---- statements
  void statement() {
    const Token begin = here();
    if (begin.kind != Kind::word) return fail("cords, close, on hand, string, or a part such as bead");
    if (take_word("cords")) return once("cords", begin), cords();
    if (take_word("close")) return once("close", begin), closing();
    if (take_word("on")) return on_hand();
    const auto kind = find_kind(begin.text);
    if (kind && *kind != ElementKind::form) return part(*kind);
    fail(kind ? "a part (forms and bands come from the project, by their names)"
              : "cords, close, on hand, string, or a part: bead, spacer, cap, joiner, clasp, extender, "
                "crimp, cover, knot or ring",
         kind ? ProblemCode::bad_text : ProblemCode::unknown_name);
  }
  void once(const std::string& word, const Token& at) {
    if (std::find(said_.begin(), said_.end(), word) != said_.end() && ok())
      problem_ =
          Problem{ProblemCode::duplicate_name, place_of(at), quote(word) + " a second time", "each one once"};
    said_.push_back(word);
  }
  void cords() {
    layout_.cords = count(1, 2);
    expect_word("of");
    const auto kind = find_cord_kind(here().text);
    if (!kind || here().kind != Kind::word)
      return fail("elastic, wire, braided or leather", ProblemCode::unknown_name);
    layout_.cord.kind = *kind;
    next();
    const Token at = here();
    layout_.cord.diameter = length();
    const Length d = layout_.cord.diameter;
    if (ok() && !(d > Length{} && d <= thickest_cord))
      problem_ = Problem{ProblemCode::out_of_range, place_of(at), shown(at), "above 0, at most 10 mm"};
  }
  void closing() {
    expect_word("with");
    layout_.closing = element_name();
  }
  void on_hand() {
    expect_word("hand");
    const Token at = here();
    OnHand entry;
    entry.name = element_name();
    constexpr int most = 1'000'000;
    if (ok()) entry.count = count(0, most);
    const auto same = [&](const OnHand& other) { return other.name == entry.name; };
    if (ok() && std::any_of(layout_.on_hand.begin(), layout_.on_hand.end(), same))
      problem_ =
          Problem{ProblemCode::duplicate_name, place_of(at), shown(at) + " a second time", "each one once"};
    layout_.on_hand.push_back(std::move(entry));
  }
  void part(ElementKind kind) {
    next();
    const Token at = here();
    std::string id = name("a name for the part");
    const auto same = [&](const Element& other) { return other.id == id; };
    if (ok() && std::any_of(layout_.parts.begin(), layout_.parts.end(), same))
      problem_ =
          Problem{ProblemCode::duplicate_name, place_of(at), shown(at) + " a second time", "each one once"};
    if (!ok()) return;
    Element element = usual_part(kind, std::move(id), length());
    properties(element);
    if (ok() && here().kind == Kind::quoted) {
      element.name = here().text;
      next();
    }
    if (!ok()) return;
    if (const auto checked = check(element); !checked) {
      problem_ = checked.problem().within(place_of(at));
      return;
    }
    layout_.parts.push_back(std::move(element));
  }
  void properties(Element& element) {
    std::vector<std::string> said;
    while (ok() && here().kind == Kind::word) {
      const std::string word = here().text;
      if (std::find(said.begin(), said.end(), word) != said.end())
        return fail("each property once", ProblemCode::duplicate_name);
      said.push_back(word);
      if (take_word("holes"))
        element.holes = count(1, 2);
      else if (take_word("across"))
        element.across = length();
      else if (take_word("thick"))
        element.thickness = length();
      else if (take_word("hole"))
        element.hole = length();
      else if (take_word("apart"))
        element.apart = length();
      else if (take_word("nests"))
        element.nests = length();
      else if (take_word("chain"))
        element.chain = length();
      else
        break;
    }
    if (std::find(said.begin(), said.end(), "across") == said.end()) element.across = usual_across(element);
  }

  // ---- items
  [[nodiscard]] const Element* find(std::string_view id) const {
    for (const Element& part : layout_.parts)
      if (part.id == id) return &part;
    for (const Element& entry : catalogue_)
      if (entry.id == id) return &entry;
    return nullptr;
  }
  /// A name of something that there is.
  std::string element_name() {
    const Token at = here();
    std::string id = name("the name of a part, a bead, a form or a band");
    if (!ok() || find(id) || bead::find_size(id)) return id;
    problem_ = Problem{ProblemCode::unknown_name, place_of(at), quote(id),
                       "a part of this layout, a standard bead, or a form or band of the project"};
    return id;
  }

  std::vector<Item> items(int depth) {
    std::vector<Item> list;
    do {
      if (!list.empty()) next();
      list.push_back(item(depth));
    } while (ok() && is_sign(','));
    return list;
  }
  std::vector<Item> bracket(int depth) {
    if (depth >= deepest_layout)
      return fail(fmt::format("at most {} brackets within each other", deepest_layout)), std::vector<Item>{};
    expect_sign('(');
    if (!ok()) return {};
    std::vector<Item> list = items(depth + 1);
    if (ok() && !is_sign(')')) fail("a comma or ')'");
    next();
    return list;
  }
  Item item(int depth) {
    if (is_word("fill") || is_word("between")) return run(depth);
    if (is_word("mirror")) return mirror(depth);
    return plain(depth);
  }
  Item plain(int depth) {
    Item result;
    if (here().kind == Kind::number) result.times = count(1, most_times);
    if (ok() && is_sign('(')) {
      result.kind = Item::Kind::group;
      result.items = bracket(depth);
      return result;
    }
    result.both = take_word("both");
    if (ok()) result.name = element_name();
    return result;
  }
  Item run(int depth) {
    if (in_unit_) return fail("no run within a run's unit"), Item{};
    const Token begin = here();
    Item result;
    result.kind = is_word("fill") ? Item::Kind::fill : Item::Kind::between;
    next();
    if (!is_word("with")) result.group = name("a name for the run, or 'with'");
    expect_word("with");
    result.unit = unit(depth);
    if (take_word("from")) result.from = count(0, most_times);
    if (take_word("to")) result.to = count(result.from, most_times);
    if (result.kind == Item::Kind::between) result.items = bracket(depth);
    if (ok() && !result.group.empty()) check_group(result, begin);
    return result;
  }
  std::vector<Item> unit(int depth) {
    in_unit_ = true;
    std::vector<Item> list;
    const Token begin = here();
    if (ok() && is_sign('('))
      list = bracket(depth);
    else if (ok())
      list.push_back(plain(depth));
    in_unit_ = false;
    if (ok() && has_joiner(list))
      problem_ = Problem{ProblemCode::bad_text, place_of(begin), "a joiner in a run's unit",
                         "a unit that leaves the cords as they are"};
    return list;
  }
  void check_group(const Item& run, const Token& begin) {
    const auto [known, is_new] = groups_.try_emplace(run.group, run);
    const Item& first = known->second;
    if (is_new || (first.unit == run.unit && first.from == run.from && first.to == run.to)) return;
    problem_ =
        Problem{ProblemCode::bad_text, place_of(begin),
                "another unit or other limits for " + quote(run.group), "the same as where it stands first"};
  }
  [[nodiscard]] bool has_joiner(const std::vector<Item>& list) const {
    return std::any_of(list.begin(), list.end(), [&](const Item& item) {
      const Element* element = item.kind == Item::Kind::single ? find(item.name) : nullptr;
      return (element && element->kind == ElementKind::joiner) || has_joiner(item.items);
    });
  }
  Item mirror(int depth) {
    if (in_mirror_ || in_unit_)
      return fail(in_unit_ ? "no mirror within a run's unit" : "no mirror within a mirror"), Item{};
    next();
    in_mirror_ = true;
    Item result;
    result.kind = Item::Kind::mirror;
    result.items = bracket(depth);
    in_mirror_ = false;
    if (take_word("about")) {
      in_mirror_ = true;  // the middle may not be mirrored again either
      result.about.push_back(item(depth));
      in_mirror_ = false;
    }
    return result;
  }

  /// How many pieces the list makes with its runs at their least; stops counting beyond the limit.
  static std::int64_t pieces(const std::vector<Item>& list) {
    std::int64_t sum = 0;
    for (const Item& item : list) {
      const std::int64_t inner = pieces(item.items), unit = pieces(item.unit);
      switch (item.kind) {
        case Item::Kind::single:
          sum += item.times;
          break;
        case Item::Kind::group:
          sum += item.times * inner;
          break;
        case Item::Kind::fill:
          sum += item.from * unit;
          break;
        case Item::Kind::between:
          sum += inner * (1 + item.from * unit);
          break;
        case Item::Kind::mirror:
          sum += 2 * inner + pieces(item.about);
          break;
      }
      sum = std::min<std::int64_t>(sum, 10 * most_pieces);
    }
    return sum;
  }

  std::vector<Token> tokens_;
  std::span<const Element> catalogue_;
  std::size_t at_ = 0;
  Layout layout_;
  std::optional<Problem> problem_;
  std::vector<std::string> said_;
  std::map<std::string, Item> groups_;
  bool in_unit_ = false, in_mirror_ = false;
};

}  // namespace

Result<Layout> parse_layout(std::string_view text, std::span<const Element> catalogue) {
  auto tokens = tokens_of(text);
  if (!tokens) return tokens.problem();
  return Reader(std::move(*tokens), catalogue).layout();
}

}  // namespace evencount::strand
