#pragma once
/// The techniques: each is one lowering from a chart to a plan. A new one is one file and one line in
/// `techniques()`.

#include <span>
#include <string>
#include <string_view>

#include "weave/plan.hpp"

namespace evencount::weave {

struct Technique {
  std::string_view id;    ///< as written in a project: "peyote-even-count"
  std::string_view name;  ///< as printed: "flat peyote, even count"
  int odd_shift_halves;   ///< of its lattice

  /// Whether it can make a band of so many columns; else wrong_size, with the reason.
  Result<Done> (*check_columns)(int columns);

  /// Chart to plan. An empty cell is allowed only where the technique says so.
  /// Errors: wrong_size, needs_even_rows, out_of_range.
  /// Properties: replay(*lower(chart, closure)) == chart; the same chart gives the same plan.
  Result<Plan> (*lower)(const chart::Chart& chart, Closure closure);
};

[[nodiscard]] std::span<const Technique> techniques();

/// Errors: unknown_name (the message lists the ids).
[[nodiscard]] Result<Technique> find_technique(std::string_view id);

/// The flat peyote for so many columns: even count or odd count.
[[nodiscard]] const Technique& flat_peyote_for(int columns);

/// The plan of a chart in a technique named by its id.
/// Errors: unknown_name, and those of `Technique::lower`.
[[nodiscard]] Result<Plan> make_plan(std::string_view technique, const chart::Chart& chart, Closure closure);

}  // namespace evencount::weave
