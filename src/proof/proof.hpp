#pragma once
/// All checks of a project. Each check is one function and one line in `checks()`.

#include <array>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "materials/stock.hpp"
#include "project/project.hpp"

namespace evencount::proof {

enum class Severity { error, warning, note };

[[nodiscard]] std::string_view severity_name(Severity severity);

/// What a check found. An error blocks a booklet; a warning or a note does not.
struct Finding {
  Severity severity = Severity::note;
  std::string check;    ///< the name of the check
  std::string where;    ///< "band New moon, row 14", "legend C"
  std::string message;  ///< what it is and what would mend it
  bool operator==(const Finding&) const = default;
};

/// What a booklet is set in.
enum class Typeface { serif, italic, sans };
inline constexpr std::array typefaces{Typeface::serif, Typeface::italic, Typeface::sans};

/// The first character of a text (UTF-8, line feeds), or sequence of them, that no font of a typeface shows; empty where all are shown.
using FirstUnshown = std::function<std::string(std::string_view text, Typeface typeface)>;

/// What a project is held against beside itself; whatever is left out is not checked.
struct Beside {
  std::span<const materials::StockedItem> stock;  ///< the beads to be had, that a finding may recommend
  FirstUnshown first_unshown;                     ///< of the fonts that it is to be printed in
};

/// What is checked.
struct Subject {
  const project::Project& project;
  const Beside& beside;
};

struct Check {
  std::string_view name;
  std::string_view purpose;  ///< one sentence, for docs and --help
  void (*run)(const Subject& subject, std::vector<Finding>& findings);
};

[[nodiscard]] std::span<const Check> checks();

/// Every finding of every check, errors first, then warnings, then notes; otherwise in the order of checks and bands.
/// Total: any project that can be held in memory gets its findings, also one that no file could hold.
/// With a stock, a finding about two colours names the nearest bead that would mend it (better_bead.hpp).
[[nodiscard]] std::vector<Finding> proof(const project::Project& project, const Beside& beside = {});

[[nodiscard]] bool has_errors(std::span<const Finding> findings);

}  // namespace evencount::proof
