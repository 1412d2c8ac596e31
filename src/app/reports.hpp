#pragma once
/// What the verbs answer with --json, for the studio's server as well. DESIGN.md section 7 names the fields.

#include <string>
#include <vector>

#include "app/json_text.hpp"
#include "project/supply_list.hpp"
#include "proof/place.hpp"
#include "wording/reader.hpp"
#include "wording/words.hpp"

namespace evencount::app {

/// One band of `words --json`: its lines with their rows.
[[nodiscard]] Json words_json(const std::string& band, const wording::WordChart& words,
                              const std::string& closing);
/// One band of `words`: its words and the notes below them.
[[nodiscard]] std::string words_text(const weave::Plan& plan, std::span<const std::string> letters, const std::string& band,
                                     bool fold, const language::Language& language = language::english());
/// One band of `thread --json`.
[[nodiscard]] Json thread_json(const project::BandThread& band);
/// `proof --json`.
[[nodiscard]] Json proof_json(const project::Project& project, const std::vector<proof::Finding>& findings);
/// One band of `read --json`.
[[nodiscard]] Json read_band_json(const wording::ReadBand& band);

}  // namespace evencount::app
