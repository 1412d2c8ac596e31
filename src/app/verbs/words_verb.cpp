#include <fmt/ostream.h>

#include "app/files.hpp"
#include "app/hand.hpp"
#include "app/json_text.hpp"
#include "app/project_file.hpp"
#include "app/reports.hpp"
#include "app/verbs.hpp"
#include "page/left_hand.hpp"
#include "wording/words.hpp"

namespace evencount::app {
namespace {

Result<std::vector<project::Band>> chosen_bands(const project::Project& project, const std::string& name) {
  if (name.empty()) return project.bands;
  auto band = project::find_band(project, name);
  if (!band) return band.problem();
  return std::vector<project::Band>{std::move(*band)};
}

}  // namespace

int words_verb(const WordsArguments& arguments, const Console& console) {
  const auto project = load_project(arguments.project);
  if (!project) return console.fail(project.problem());
  const auto bands = chosen_bands(*project, arguments.band);
  if (!bands) return console.fail(bands.problem().within(arguments.project));
  const auto language = language::find_language(arguments.language);
  if (!language) return console.fail(language.problem());
  const auto left_handed = parse_left_handed(arguments.hand);
  if (!left_handed) return console.fail(left_handed.problem());
  const auto letters = project::letters_of(*project);
  std::string text;
  Json answer = Json::array();
  for (const project::Band& band : *bands) {
    const auto plan = page::seen_plan(band, *left_handed);
    if (!plan) return console.fail(plan.problem().within(arguments.project));
    const auto words = wording::write_words(*plan, letters, band.name, {arguments.fold, arguments.fold, *language});
    const std::string closing = wording::closing_note(*plan, **language);
    answer.push_back(words_json(band.name, words, closing));
    text += (text.empty() ? "" : "\n") + words_text(*plan, letters, band.name, arguments.fold, **language);
  }
  if (arguments.json) text = Json{{"bands", answer}}.dump(2) + "\n";
  if (arguments.output.empty()) {
    console.out << text;
    return exit_done;
  }
  if (const auto written = write_file(arguments.output, text); !written)
    return console.fail(written.problem());
  fmt::print(console.err, "wrote {}\n", arguments.output);
  return exit_done;
}

}  // namespace evencount::app
