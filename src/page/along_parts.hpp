#pragma once
/// What the stitch-along page holds: its sections as HTML, and its design as the script reads it. Private to this room.

#include <nlohmann/json_fwd.hpp>
#include <optional>

#include "page/along_hand.hpp"

namespace evencount::page {

/// A band for both hands.
struct AlongBand {
  Hand right;
  std::optional<Hand> left;
};

/// The texts that the script says, by the names it knows them by.
[[nodiscard]] nlohmann::json script_texts(const language::Language& language);

[[nodiscard]] std::string title_part(const project::Project& project);
/// The word charts of every band, with what is said below them.
[[nodiscard]] std::string words_part(const Subject& subject, const std::vector<AlongBand>& bands);
/// The moments of every band's technique as pictures with their sentences. Errors: those of to_svg.
[[nodiscard]] Result<std::string> steps_part(const Subject& subject, const std::vector<AlongBand>& bands);
[[nodiscard]] std::string supplies_part(const Subject& subject);
/// Assembly, care, cautions and terms.
[[nodiscard]] std::string closing_part(const Subject& subject);

/// What the script works on: its texts, the legend, and of each band its rows and places, under keys that change with the design.
[[nodiscard]] nlohmann::json design_of(const Subject& subject, const std::vector<AlongBand>& bands);

}  // namespace evencount::page
