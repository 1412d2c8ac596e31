#pragma once
/// Carrying a drawing over to a piece of another size, bead by bead, in its own colours.
///
/// resample: the old drawing is stretched over the new piece. A new bead takes the colour that covers most of its place, but things
/// one bead wide stay (below). repeat: whole steps and columns come again or are left out; where the drawing has a period, it goes on
/// in it. centre: the old drawing, bead for bead, in the middle of a border. The model: docs/algorithms/carrying.md.
///
/// What is one bead wide: a bead that is in no block of its colour, three that touch each other (four around a corner where
/// columns are not shifted). Such beads hang together in trails; three or more are a line, fewer a speck. Each lays claim to the new
/// bead in whose column most of it lies, and in that column to the one that most of it covers. A claim goes before the covered area;
/// of several claims, lines go before specks and before lines of the ground (the chart's most common colour), and these before
/// specks of the ground; then the larger area, the rarer colour, the earlier letter.
///
/// Properties (tests/project/carry_test.cpp):
///  (1) the same size gives the same chart with any method; a chart of one colour stays so
///  (2) no new colours; cells that can't hold a bead stay empty
///  (3) applying `changes` to plain(old, carried) gives `chart`; no other cell differs, and none is listed twice
///  (4) resample: a line or speck on a ground of another colour never vanishes, at any size and on every lattice: every bead of it
///      overlaps a new bead of its colour. A line that shares its beads with others and gets none is in `lost`
///  (5) resample: a mirror or turn that maps both pieces onto themselves and the drawing onto itself maps what is carried onto itself
///  (6) repeat: every new step and column is an old one; a period of the drawing is one of what is carried, where it fits

#include <optional>
#include <string_view>
#include <vector>

#include "weave/plan.hpp"

namespace evencount::project {

enum class Carry { resample, repeat, centre };
[[nodiscard]] std::string_view carry_name(Carry carry);
/// Errors: unknown_name.
[[nodiscard]] Result<Carry> parse_carry(std::string_view name);

/// A lattice and how its piece is closed.
struct Piece {
  weave::Lattice lattice;
  weave::Closure closure = weave::Closure::open;
};

struct CarryOptions {
  /// None: repeat where the drawing has a period in each direction that changes and the new piece ends where the old one does in
  /// it, else resample.
  std::optional<Carry> method;
  bool keep_lines = true;             ///< resample: else by area alone
  std::optional<chart::Bead> border;  ///< centre: of new beads; the most common one if there is none
};

enum class ChangeReason {
  area,   ///< more of another colour covers it
  line,   ///< something one bead wide lies on it
  fresh,  ///< it comes from no old bead
};
[[nodiscard]] std::string_view reason_name(ChangeReason reason);

/// A new bead that differs from the old one at its place.
struct CarryChange {
  chart::Cell cell;                     ///< of the new chart
  chart::Bead before = chart::no_bead;  ///< the old one at its place; no_bead for a fresh one
  chart::Bead after = chart::no_bead;
  ChangeReason reason = ChangeReason::area;
  bool operator==(const CarryChange&) const = default;
};

/// A line or speck that has no bead of its own left.
struct LostTrail {
  chart::Bead bead = chart::no_bead;
  chart::Cell first;  ///< of the old chart
  int beads = 0;
  bool operator==(const LostTrail&) const = default;
};

struct Carried {
  Carry method = Carry::resample;
  chart::Chart chart;
  /// For each cell of the new chart, step after step, the old cell at its place: the one that covers most of it (of
  /// equals one of its colour), or that is repeated there; none for a fresh bead and where no bead lies.
  std::vector<std::optional<chart::Cell>> source;
  std::vector<CarryChange> changes;  ///< step after step
  int left_out = 0;                  ///< old beads that are no new bead's source
  std::vector<LostTrail> lost;
  /// repeat: what goes on, in columns and steps; 0 where lines are repeated evenly.
  int period_across = 0, period_along = 0;
  bool operator==(const Carried&) const = default;
};

/// An odd number of rows stays one: where the last shifted beads are left out, they are again.
/// Errors: wrong_size (the chart has not the size of its lattice; repeat or centre between lattices that are not shifted alike);
/// out_of_range (a size no chart can have).
[[nodiscard]] Result<Carried> carry(const chart::Chart& chart, const Piece& from, const Piece& to,
                                    const CarryOptions& options = {});

/// Every new cell with the bead of its source.
[[nodiscard]] chart::Chart plain(const chart::Chart& old, const Carried& carried);

/// The chart's most common bead, the earlier letter of equals; no_bead when it has none.
[[nodiscard]] chart::Bead most_common(const chart::Chart& chart);

}  // namespace evencount::project
