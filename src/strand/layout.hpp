#pragma once
/// A layout as its designer writes it: what is strung on one or two cords, in order, with runs that are
/// counted to fit.
///
///   cords 2 of braided 0.6mm
///   bead stop 6mm hole 1.5mm "6 mm round glass bead"
///   clasp slide 14mm holes 2 apart 9.6mm "two-strand slide clasp"
///   close with slide
///   on hand round-8 200
///   string mirror (fill sides with round-8, stop, between with round-8 from 1 to 1 (4 "Full moon"), round-8)
///
/// docs/stringing.md says it for the designer. Grammar (line ends are blanks; # begins a comment):
///
///   layout    = { statement } "string" items
///   statement = "cords" 1|2 "of" CORD LENGTH            the cord's kind and thickness
///             | KIND NAME LENGTH { property } [ TEXT ]  a part: its width along the cord, and its printed name
///             | "close" "with" NAME                     what lies between the last and the first
///             | "on" "hand" NAME COUNT                  there are only so many
///   property  = "across" LENGTH | "thick" LENGTH | "hole" LENGTH | "holes" 1|2 | "apart" LENGTH
///             | "nests" LENGTH | "chain" LENGTH
///   items     = item { "," item }
///   item      = [ COUNT ] ( [ "both" ] NAME | "(" items ")" )
///             | "fill" [ GROUP ] "with" unit [ "from" COUNT ] [ "to" COUNT ]
///             | "between" [ GROUP ] "with" unit [ "from" COUNT ] [ "to" COUNT ] "(" items ")"
///             | "mirror" "(" items ")" [ "about" item ]
///   unit      = [ "both" ] NAME | "(" items ")"         without runs, mirrors and joiners
///
/// Properties (tests/strand/layout_text_test.cpp):
///  (1) parse_layout(to_text(l)) == l for every l that parse_layout gives
///  (2) any text gives a layout or a problem that says its line and column; a text cut off before its list is a problem
///  (3) to_text(parse_layout(t)) is the same for t with its blanks and comments changed

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "strand/cord.hpp"
#include "strand/element.hpp"

namespace evencount::strand {

/// One entry of a layout's list.
struct Item {
  enum class Kind { single, group, fill, between, mirror };
  Kind kind = Kind::single;
  int times = 1;            ///< single, group
  std::string name;         ///< single: an element
  bool both = false;        ///< single: one on both cords together, not one on each
  std::vector<Item> items;  ///< group, between, mirror
  std::vector<Item> unit;   ///< fill, between: what the run repeats
  std::string group;  ///< fill, between: runs of one name are as equal as possible; empty: this item's own
  int from = 0;       ///< fill, between: units
  std::optional<int> to;    ///< fill, between
  std::vector<Item> about;  ///< mirror: none or one item in the middle
  bool operator==(const Item&) const = default;
};

/// There are only so many.
struct OnHand {
  std::string name;
  int count = 0;
  bool operator==(const OnHand&) const = default;
};

struct Layout {
  int cords = 1;
  Cord cord;
  std::vector<Element> parts;  ///< defined in the layout itself
  std::string closing;  ///< an element's id; empty: the ends are knotted to each other, which takes no length
  std::vector<OnHand> on_hand;
  std::vector<Item> items;
};
[[nodiscard]] bool operator==(const Layout& a, const Layout& b);

inline constexpr std::size_t longest_layout_text = 100'000;
inline constexpr int most_times = 1'000, deepest_layout = 12;
inline constexpr int most_pieces = 5'000;  ///< in a layout, runs at their least

/// Reads a layout. `catalogue` has the elements that names may mean besides the layout's own parts, which come
/// first, and the
/// standard beads (bead::sizes), which come last.
///
/// Errors: bad_text ("line 3, column 9": a word, bracket or size that can't stand there, with what was
/// expected; runs of one name
/// that differ; a mirror within a mirror), unknown_name (an element or a kind), duplicate_name (a part, a
/// statement or an on-hand
/// entry), out_of_range (a count or a part's sizes).
[[nodiscard]] Result<Layout> parse_layout(std::string_view text, std::span<const Element> catalogue);

/// In the order of the grammar above, one statement a line; sizes in millimetres, at most four decimals;
/// properties that are at their default
/// are left out.
[[nodiscard]] std::string to_text(const Layout& layout);

/// What a part is when nothing but its kind, name and width is said.
///   thick   as wide; a spacer, joiner, clasp, extender or ring at most 4 mm, from memory
///   hole    a quarter of the thickness, at most 1.5 mm, from memory; a crimp and its cover 0.65 of the width
///   (published: crimps of
///           2 mm have a bore of 1.3 mm); a ring its inside; a knot none
///   nests   half the width of a cap, from memory
///   chain   50 mm of an extender, from memory
/// `across` is the width, and with two holes at least their distance and three holes' diameters (usual_across).
[[nodiscard]] Element usual_part(ElementKind kind, std::string id, Length width);
[[nodiscard]] Length usual_across(const Element& part);

}  // namespace evencount::strand
