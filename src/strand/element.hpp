#pragma once
/// What can be strung: forms with or without their bands, beads, spacers, caps, joiners, and what closes a strand.
///
/// Properties (tests/strand/element_test.cpp):
///  (1) the length of a row of elements is that of the same row from the other end
///  (2) it is at most the sum of their widths, and that sum where nothing nests or covers

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "bead/bead_size.hpp"
#include "form/staying_on.hpp"

namespace evencount::strand {

/// What it is, in the trade's words; the layout language has the same (kind_name).
enum class ElementKind {
  form,      ///< a form, bare or in a band
  bead,      ///< a bead of any size
  spacer,    ///< a bar that keeps two cords apart
  cap,       ///< sits over the end of a bead
  joiner,    ///< joins one cord to two
  clasp,     ///< both halves, closed
  extender,  ///< a chain that a clasp hooks into
  crimp,     ///< a tube pressed on the cord
  cover,     ///< closes round a pressed crimp
  knot,      ///< tied in the cord
  ring,      ///< a jump ring
};

[[nodiscard]] std::string_view kind_name(ElementKind kind);
[[nodiscard]] std::optional<ElementKind> find_kind(std::string_view name);

/// A form as it is strung: `together` of them side by side under one band.
struct Carrier {
  form::Form form;
  int together = 1;
  std::optional<form::SlidingBand> band;  ///< none: bare
  form::Use use = form::Use::fixed;
  /// Of the band, across its columns: columns x gauge.column. Zero for a bare form.
  [[nodiscard]] Length band_width() const;
};

struct Element {
  std::string id;    ///< as the layout calls it
  std::string name;  ///< as printed; the id where it has none
  ElementKind kind = ElementKind::bead;
  Length width;                    ///< along the cord, above 0 (a ring: its inside, which is what it adds)
  Length across;                   ///< across the cords
  Length thickness;                ///< how far it stands off the wearer
  int holes = 1;                   ///< 1 or 2; 0 for what is no bead: a knot
  Length apart;                    ///< between the middles of two holes; 0 for one
  Length hole;                     ///< diameter; 0 where there is none
  Length nests;                    ///< how far a bead sinks into a cap; below the cap's width
  Length chain;                    ///< of an extender: how much longer it lets the piece be worn
  std::optional<Carrier> carrier;  ///< of a form, and always there
};

/// What a layout says of it is alike (carriers, which come from outside the layout, are not compared).
[[nodiscard]] bool same_part(const Element& a, const Element& b);

/// The largest part, as long as the longest form of the project room.
inline constexpr Length largest_part = millimetres(2000);

/// Errors: out_of_range (a size not above zero or beyond largest_part; holes other than 1 or 2, 0 for a knot;
/// holes that
/// overlap or don't lie within `across`; a hole not below the thickness; a cap that nests its whole width).
[[nodiscard]] Result<Done> check(const Element& element);

/// A seed bead, called by its size's id.
[[nodiscard]] Element bead_element(const bead::Size& size);

/// A form, bare or in a band that slides or is fixed. Its width is that of the forms together or of the band,
/// whichever is more;
/// thickness and across are the form's and two beads of the band. Errors: those of form::holes_of;
/// out_of_range (together below 1).
[[nodiscard]] Result<Element> form_element(std::string id, std::string name, Carrier carrier);

/// Micrometres, rounded to the nearest: what the counting of runs is exact in.
[[nodiscard]] std::int64_t micrometres(Length length);

/// How far the two reach into each other when strung next to each other: a bead into a cap (at most half of
/// the bead: two caps
/// on one bead do not meet), a crimp into its cover (all of the smaller). Symmetric; never more than either is wide.
[[nodiscard]] std::int64_t overlap_um(const Element& a, const Element& b);

/// A row of elements from end to end, as short as it can be: each cap or cover takes in one neighbour and a
/// crimp goes into one
/// cover, while a bead may have a cap at either end.
[[nodiscard]] std::int64_t length_um(std::span<const Element* const> row);

/// Where each begins, in micrometres from the beginning of the row: starts, and last the row's end.
[[nodiscard]] std::vector<std::int64_t> starts_um(std::span<const Element* const> row);

}  // namespace evencount::strand
