#pragma once
/// A stitch-along page taken apart by code that knows nothing of how it was made.

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

namespace evencount::page {

/// The text of a piece of HTML, as a reader sees it: tags dropped, blocks ended by a newline, references resolved.
[[nodiscard]] std::string visible_text(std::string_view html);

/// What stands between `begin` and the next `end`; empty when either is not there.
[[nodiscard]] std::string between(std::string_view text, std::string_view begin, std::string_view end);

/// The text of a band's word chart for a hand, "right" or "left"; empty when there is none.
[[nodiscard]] std::string words_on_page(std::string_view html, std::size_t band, std::string_view hand);

/// The page's design.
[[nodiscard]] nlohmann::json design_on_page(std::string_view html);

}  // namespace evencount::page
