#pragma once
/// What the stitch-along page holds: its sections as HTML, and its design as the script reads it. Private to this room.

#include <map>
#include <nlohmann/json_fwd.hpp>
#include <optional>

#include "page/along_hand.hpp"

namespace evencount::page {

/// A band for both hands.
struct AlongBand {
  Hand right;
  std::optional<Hand> left;
};

/// The page's own texts in one language, by name.
using PageTexts = std::map<std::string, std::string, std::less<>>;

/// The text must be there: the catalogue is built in.
[[nodiscard]] const std::string& text_of(const PageTexts& texts, std::string_view name);

[[nodiscard]] std::string title_part(const project::Project& project);
/// The word charts of every band, with what is said below them.
[[nodiscard]] std::string words_part(const Subject& subject, const std::vector<AlongBand>& bands, const PageTexts& texts);
/// The moments of every band's technique as pictures with their sentences. Errors: those of to_svg.
[[nodiscard]] Result<std::string> steps_part(const Subject& subject, const std::vector<AlongBand>& bands, const PageTexts& texts);
[[nodiscard]] std::string supplies_part(const Subject& subject, const PageTexts& texts);
/// Assembly, care, cautions and terms.
[[nodiscard]] std::string closing_part(const project::Project& project, const PageTexts& texts);

/// What the script works on: `texts`, the legend, and of each band its rows and places, under keys that change with the design.
[[nodiscard]] nlohmann::json design_of(const Subject& subject, const std::vector<AlongBand>& bands, const nlohmann::json& texts);

}  // namespace evencount::page
