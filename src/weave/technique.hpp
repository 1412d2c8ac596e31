#pragma once
/// The techniques: each is one lowering from a chart to a plan. A new one is one file and one line in
/// `techniques()`. Nothing outside this room switches on a technique's name.

#include <span>
#include <string>
#include <string_view>
#include <utility>

#include "bead/gauge.hpp"
#include "language/text.hpp"
#include "weave/plan.hpp"

namespace evencount::weave {

/// What is made besides the chart's beads.
struct Making {
  Closure closure = Closure::open;
  /// The row of the lattice at which the work begins, in half steps: a bezel's ring begins above the rounds that are worked
  /// downwards from it, its back. 0 for everything else.
  int begin_at = 0;
  bool operator==(const Making&) const = default;
};

/// A size as it is printed: a number, and the text "{n} columns" that it goes into.
struct Measure {
  int count = 0;
  language::Text counted = nullptr;
};

/// "6 columns" and "24 beads along the edge": the measures of most techniques.
[[nodiscard]] std::pair<Measure, Measure> columns_and_edge(const Lattice& lattice);

struct Technique {
  std::string_view id;    ///< as written in a project: "peyote-even-count"
  std::string_view name;  ///< in messages: "flat peyote, even count"
  std::span<const Closure> closures;  ///< that it can be made with, the usual one first

  /// The lattice of a chart of this size.
  Lattice (*lattice)(int columns, int edge);

  /// Whether it can make a piece of so many columns and beads along the edge; else wrong_size, with the reason.
  Result<Done> (*check_size)(int columns, int edge);

  /// The size as it is printed: two measures, across and along.
  std::pair<Measure, Measure> (*measures)(const Lattice& lattice);

  /// The gauge at which it is worked unless one was measured.
  bead::Gauge (*gauge)(const bead::Size& size, const bead::Thread& thread);

  /// Chart to plan. An empty cell is allowed only where the technique says so.
  /// Errors: wrong_size, needs_even_rows, too_few_beads, out_of_range, cannot_close (a closure it hasn't).
  /// Properties: replay(*lower(chart, making)) == chart; the same chart gives the same plan.
  Result<Plan> (*lower)(const chart::Chart& chart, const Making& making);

  language::Text printed_name = nullptr;  ///< as a booklet has it, in small letters where the language allows it
  /// What a maker must know about it beyond the rows, in a sentence or two; none for most.
  language::Text note = nullptr;
};

[[nodiscard]] std::span<const Technique> techniques();

/// Errors: unknown_name (the message lists the ids).
[[nodiscard]] Result<Technique> find_technique(std::string_view id);

/// The flat peyote for so many columns: even count or odd count.
[[nodiscard]] const Technique& flat_peyote_for(int columns);

/// The plan of a chart in a technique named by its id.
/// Errors: unknown_name, cannot_close, those of `Technique::check_size` and `Technique::lower`.
[[nodiscard]] Result<Plan> make_plan(std::string_view technique, const chart::Chart& chart, const Making& making);

}  // namespace evencount::weave
