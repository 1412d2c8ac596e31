#include <fmt/ostream.h>

#include <algorithm>

#include "app/files.hpp"
#include "app/form_argument.hpp"
#include "app/project_file.hpp"
#include "app/verbs.hpp"
#include "app/verbs/band_marks.hpp"
#include "base/text.hpp"
#include "chart/letters.hpp"
#include "form/fit.hpp"
#include "project/new_band.hpp"
#include "weave/technique.hpp"
#include "wording/reader.hpp"

namespace evencount::app {
namespace {

Result<Done> add_bead(project::Project& project, const std::string& id) {
  if (project::find_bead(project, id) != nullptr) return Done{};
  auto size = bead::find_size(id);
  if (!size) return size.problem();
  project.beads.push_back(std::move(*size));
  return Done{};
}

/// "A=#17233f:night blue" into the legend, over an entry of the same letter.
Result<Done> add_colour(project::Project& project, const std::string& text, const std::string& bead) {
  const auto equals = text.find('=');
  const Problem bad{ProblemCode::bad_text, "colour", quote(text), "LETTER=#rrggbb or LETTER=#rrggbb:NAME"};
  if (equals == std::string::npos) return bad;
  const std::string letter = upper_ascii(trim(text.substr(0, equals)));
  if (!chart::letter_position(letter)) return bad;
  const auto colon = text.find(':', equals);
  const auto colour = colour::parse_hex(
      trim(text.substr(equals + 1, colon == std::string::npos ? colon : colon - equals - 1)));
  if (!colour) return bad;
  project::LegendEntry entry;
  entry.letter = letter;
  entry.colour = *colour;
  entry.name = colon == std::string::npos ? "colour " + letter : std::string(trim(text.substr(colon + 1)));
  entry.bead = bead;
  const auto same = std::find_if(project.legend.begin(), project.legend.end(),
                                 [&](const auto& e) { return e.letter == letter; });
  if (same != project.legend.end())
    *same = std::move(entry);
  else
    project.legend.push_back(std::move(entry));
  return Done{};
}

/// The id of the project's form of this shape, added when it is new.
Result<std::optional<std::string>> add_form(project::Project& project, const std::string& notation) {
  if (notation.empty()) return std::optional<std::string>{};
  if (const auto* entry = project::find_form(project, notation)) return std::optional<std::string>{entry->id};
  auto form = form_argument(notation);
  if (!form) return form.problem();
  for (const project::FormEntry& entry : project.forms)
    if (entry.form == *form) return std::optional<std::string>{entry.id};
  const std::string id = fmt::format("form-{}", project.forms.size() + 1);
  project.forms.push_back({id, form::describe(*form), *form, {}});
  return std::optional<std::string>{id};
}

Result<wording::ReadBand> band_from_words(const project::Project& project, const std::string& path) {
  const auto text = read_file(path);
  if (!text) return text.problem();
  wording::ReadOptions options;
  options.legend = project::letters_of(project);
  auto bands = wording::read_words(*text, options);
  if (!bands) return bands.problem().within(path);
  if (bands->size() != 1)
    return Problem{ProblemCode::bad_words, path, fmt::format("{} bands", bands->size()),
                   "the words of one band"};
  return std::move(bands->front());
}

/// A band, and the letters on it that can be taken for others.
struct MadeBand {
  project::Band band;
  std::vector<picture::Likeness> doubtful;
};

/// What is asked of a blank band: the arguments' size, or what fits.
Result<project::NewBand> blank_wanted(const project::Project& project, const project::Band& band,
                                      const BandArguments& arguments) {
  const auto ground = bead_of_letter(project, arguments.fill, "fill");
  if (!ground) return ground.problem();
  project::NewBand wanted;
  wanted.name = band.name, wanted.bead = band.bead, wanted.form = band.form, wanted.use = band.use;
  wanted.gauge = band.gauge, wanted.technique = arguments.technique, wanted.begin_at = arguments.begin_at;
  if (arguments.open) wanted.closure = weave::Closure::open;
  wanted.columns = arguments.columns, wanted.edge = arguments.edge, wanted.rows = arguments.rows;
  wanted.ground = *ground;
  return wanted;
}

/// Technique, closure and chart of a band, as the words have it.
Result<Done> add_words(const project::Project& project, project::Band& band, const BandArguments& arguments) {
  auto read = band_from_words(project, arguments.words);
  if (!read) return read.problem();
  band.technique = arguments.technique.empty() ? read->technique : arguments.technique;
  const auto technique = weave::find_technique(band.technique);
  if (!technique) return technique.problem();
  band.begin_at = read->begin_at;
  const weave::Closure usual =
      arguments.open ? weave::Closure::open : project::usual_closure(*technique, band.form.has_value());
  band.closure = read->closure && !arguments.open ? *read->closure : usual;
  band.chart = std::move(read->chart);
  return Done{};
}

/// The band of that name, when something is to be drawn on it and nothing says that it should be made anew.
const project::Band* band_to_draw_on(const project::Project& project, const BandArguments& arguments) {
  const bool anew = !arguments.form.empty() || !arguments.technique.empty() || !arguments.words.empty() || !arguments.gauge.empty() ||
                    arguments.columns || arguments.edge || arguments.rows || arguments.open;
  if (anew || !draws(arguments)) return nullptr;
  const auto found = std::find_if(project.bands.begin(), project.bands.end(),
                                  [&](const project::Band& band) { return band.name == arguments.name; });
  return found == project.bands.end() ? nullptr : &*found;
}

/// The band as it is in the project, with more on its chart.
Result<MadeBand> drawn_further(const project::Project& project, project::Band band, const BandArguments& arguments) {
  const auto technique = weave::find_technique(band.technique);
  if (!technique) return technique.problem();
  const weave::Lattice lattice = technique->lattice(band.chart.columns(), band.chart.edge());
  auto drawn = drawn_on({project, weave::grid_of(lattice, band.closure), project::gauge_of(project, band)}, arguments, std::move(band.chart));
  if (!drawn) return drawn.problem();
  band.chart = std::move(drawn->chart);
  return MadeBand{std::move(band), std::move(drawn->doubtful)};
}

/// A band as the arguments have it. Its form is added to the project.
Result<MadeBand> new_band(project::Project& project, const BandArguments& arguments) {
  MadeBand made;
  project::Band& band = made.band;
  band.name = arguments.name.empty() ? fmt::format("Band {}", project.bands.size() + 1) : arguments.name;
  band.bead = arguments.bead;
  const auto use = form::parse_use(arguments.use);
  if (!use) return use.problem();
  band.use = *use;
  if (!arguments.gauge.empty()) {
    const auto gauge = bead::parse_gauge(arguments.gauge);
    if (!gauge) return gauge.problem();
    band.gauge = *gauge;
  }
  auto form = add_form(project, arguments.form);
  if (!form) return form.problem();
  band.form = *form;
  if (!arguments.words.empty()) {
    if (auto charted = add_words(project, band, arguments); !charted) return charted.problem();
    return made;
  }
  const auto wanted = blank_wanted(project, band, arguments);
  if (!wanted) return wanted.problem();
  auto blank = project::new_band(project, *wanted);
  if (!blank) return blank.problem();
  return drawn_further(project, std::move(*blank), arguments);
}

struct MadeProject {
  project::Project project;
  std::size_t band = 0;  ///< which one was made
  std::vector<picture::Likeness> doubtful;
};

/// The project with the band added, or put in place of one of the same name.
Result<MadeProject> with_band(project::Project project, const BandArguments& arguments) {
  if (const auto added = add_bead(project, arguments.bead); !added) return added.problem();
  for (const std::string& colour : arguments.colours)
    if (const auto added = add_colour(project, colour, arguments.bead); !added) return added.problem();
  if (project.legend.empty())
    if (const auto added = add_colour(project, "A=#8fa3ad:ground", arguments.bead); !added)
      return added.problem();
  const project::Band* given = band_to_draw_on(project, arguments);
  auto made = given != nullptr ? drawn_further(project, *given, arguments) : new_band(project, arguments);
  if (!made) return made.problem();
  project::Band& band = made->band;
  // A band that can't be stitched is refused here, before anything is saved.
  const auto plan = project::plan_of(band);
  if (!plan) return plan.problem();
  if (const int rows = weave::row_count(*plan); arguments.rows && rows != *arguments.rows)
    return Problem{ProblemCode::bad_usage, "rows", fmt::format("{}", *arguments.rows),
                   fmt::format("--edge: this technique makes {} rows of {} beads along the edge", rows, band.chart.edge())};
  const auto same = std::find_if(project.bands.begin(), project.bands.end(),
                                 [&](const auto& b) { return b.name == band.name; });
  const auto place = static_cast<std::size_t>(same - project.bands.begin());
  if (same == project.bands.end()) project.bands.emplace_back();
  project.bands[place] = std::move(band);
  return MadeProject{std::move(project), place, std::move(made->doubtful)};
}

}  // namespace

int band_verb(const BandArguments& arguments, const Console& console) {
  auto begun = load_or_begin_project(arguments.project);
  if (!begun) return console.fail(begun.problem());
  const auto made = with_band(std::move(*begun), arguments);
  if (!made) return console.fail(made.problem());
  if (const auto saved = save_project(arguments.project, made->project); !saved)
    return console.fail(saved.problem());
  const project::Band& band = made->project.bands[made->band];
  fmt::print(console.out, "{}: {}, {} columns, {} along the edge, {} beads\n", arguments.project, band.name,
             band.chart.columns(), band.chart.edge(),
             std::count_if(band.chart.cells().begin(), band.chart.cells().end(),
                           [](chart::Bead b) { return b != chart::no_bead; }));
  for (const picture::Likeness& likeness : made->doubtful)
    fmt::print(console.err, "{} can be taken for {}: only {} bead{} tell{} them apart\n", likeness.letter, likeness.other,
               likeness.beads, likeness.beads == 1 ? "" : "s", likeness.beads == 1 ? "s" : "");
  return exit_done;
}

}  // namespace evencount::app
