#include "project/series.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "chart/letters.hpp"
#include "chart/runs.hpp"
#include "form/faces.hpp"
#include "project/json_fields.hpp"
#include "project/palette.hpp"
#include "weave/technique.hpp"

namespace evencount::project {
namespace {

constexpr std::string_view outcome_names[] = {"made", "replaced", "same", "kept"};

/// 64-bit FNV-1a: the offset and prime of its authors (isthe.com/chongo/tech/comp/fnv), from memory. Against chance, not malice.
std::string digest(std::string_view text) {
  std::uint64_t hash = 14695981039346656037u;
  for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211u;
  return fmt::format("{:016x}", hash);
}

template <typename Entry>
Result<Done> add_once(std::vector<Entry>& entries, const Entry& entry, std::string_view what,
                      bool (*same)(const Entry&, const Entry&)) {
  const auto found = std::ranges::find(entries, entry.id, &Entry::id);
  if (found == entries.end()) {
    entries.push_back(entry);
    return Done{};
  }
  if (same(*found, entry)) return Done{};
  return Problem{ProblemCode::duplicate_name, std::string(what), quote(entry.id),
                 fmt::format("the same {} as in the template", what)};
}

/// The project that the bands go into, with all that the template's band needs.
Result<Project> ground_for(const Project& source, const std::optional<Project>& onto) {
  Project project = onto ? *onto : source;
  if (!onto) {
    project.bands.clear();
    return project;
  }
  for (const bead::Size& size : source.beads)
    if (auto added = add_once<bead::Size>(project.beads, size, "bead",
                                          [](const auto& a, const auto& b) {
                                            return a.kind == b.kind && a.diameter == b.diameter &&
                                                   a.length == b.length && a.hole == b.hole;
                                          });
        !added)
      return added.problem();
  for (const FormEntry& form : source.forms)
    if (auto added = add_once<FormEntry>(project.forms, form, "form",
                                         [](const auto& a, const auto& b) { return a.form == b.form; });
        !added)
      return added.problem();
  for (const LegendEntry& entry : source.legend) {
    const auto found = std::ranges::find(project.legend, entry.letter, &LegendEntry::letter);
    if (found == project.legend.end()) {
      project.legend.push_back(entry);
      continue;
    }
    if (const std::string words = difference(source, entry, project, *found); !words.empty())
      return Problem{ProblemCode::duplicate_name, "letter " + entry.letter,
                     "another bead than in the template: " + words, "the same palette in both"};
  }
  return project;
}

Result<Band> template_band(const Project& source, const SeriesOptions& options) {
  if (options.band) return find_band(source, *options.band);
  if (source.bands.size() == 1) return source.bands.front();
  return Problem{ProblemCode::bad_usage, "template", fmt::format("{} bands", source.bands.size()),
                 "one band, or --band NAME"};
}

struct FaceSpans {
  StepSpan front;
  std::optional<StepSpan> back;
};

Result<FaceSpans> faces_of(const Project& source, const Band& band, const SeriesOptions& options) {
  FaceSpans spans{{0, band.chart.edge()}, {}};
  if (band.form && weave::closes_round_edge(band.closure)) {
    const auto faces = form::faces(find_form(source, *band.form)->form,
                                   find_bead(source, band.bead)->diameter, band.chart.edge());
    if (!faces) return faces.problem();
    spans.front.steps = 0;
    for (const form::Window& window : faces->windows) {
      const StepSpan span{window.first_step, window.steps};
      if (window.side == form::Side::front) spans.front = span;
      if (window.side == form::Side::back) spans.back = span;
    }
  }
  if (options.front) spans.front = *options.front;
  if (options.back) spans.back = *options.back;
  for (const auto& [name, span] : {std::pair{"front", std::optional(spans.front)}, {"back", spans.back}})
    if (span && (span->first < 0 || span->steps < 0 || span->first + span->steps > band.chart.edge()))
      return Problem{ProblemCode::out_of_range, name,
                     fmt::format("steps {} to {}", span->first, span->first + span->steps - 1),
                     fmt::format("within 0 to {}", band.chart.edge() - 1)};
  return spans;
}

class Making {
 public:
  Making(Project project, Band band, FaceSpans faces, const MotifTexts& motifs, const SeriesOptions& options)
      : project_(std::move(project)),
        template_(std::move(band)),
        faces_(std::move(faces)),
        motifs_(motifs),
        options_(options) {
    const auto technique = weave::find_technique(template_.technique);
    grid_ = weave::grid_of(technique->lattice(template_.chart.columns(), template_.chart.edge()),
                           template_.closure);
  }

  /// The band of a line. A bad line leaves the legend as it was.
  Result<Band> make(const SeriesRow& row) {
    const std::vector<LegendEntry> before = project_.legend;
    auto band = drawn(row);
    if (!band) project_.legend = before;
    return band;
  }

  Project& project() { return project_; }

 private:
  Result<Band> drawn(const SeriesRow& row) {
    Band band = template_;
    band.name = row.name;
    if (!row.note.empty()) band.note = row.note;
    if (row.copies) band.copies = *row.copies;
    const std::string line = fmt::format("line {}, column ", row.line);
    const auto put = [&](Result<chart::Chart> chart, std::string_view column) -> std::optional<Problem> {
      if (!chart) return chart.problem().within(line + std::string(column));
      band.chart = std::move(*chart);
      return std::nullopt;
    };
    const std::optional<StepSpan> front = faces_.front;
    if (auto bad = put(motif_on(band.chart, row.front_motif, front), "front motif")) return *bad;
    if (auto bad = put(motif_on(band.chart, row.back_motif, faces_.back), "back motif")) return *bad;
    if (auto bad = put(text_on(band.chart, row.front, row.letter, front), "front")) return *bad;
    if (auto bad = put(text_on(band.chart, row.back, row.letter, faces_.back), "back")) return *bad;
    if (auto bad = put(coloured(band.chart, row), "colour")) return *bad;
    if (const auto plan = plan_of(band); !plan)
      return plan.problem().within(fmt::format("line {}", row.line));
    band.series_mark = mark_of(project_, band);
    return band;
  }

  [[nodiscard]] static Problem no_face() {
    return {ProblemCode::wrong_size, "", "a band without this face",
            "nothing here, or the steps of the face"};
  }

  [[nodiscard]] Result<chart::Chart> motif_on(const chart::Chart& chart, const std::string& name,
                                              const std::optional<StepSpan>& face) const {
    if (name.empty()) return chart;
    if (!face) return no_face();
    const auto found = motifs_.find(name);
    if (found == motifs_.end()) return Problem{ProblemCode::unknown_name, "", quote(name), "a motif"};
    if (!found->second) return found->second.problem();
    const int lines = static_cast<int>(motif_lines(*found->second).size());
    if (lines > face->steps)
      return Problem{ProblemCode::wrong_size, name, fmt::format("{} lines", lines),
                     fmt::format("at most {}, the steps of the face", face->steps)};
    auto drawn = with_motif(chart, *found->second, letters_of(project_),
                            {face->first + (face->steps - lines) / 2, lines});
    if (!drawn) return drawn.problem().within(name);
    return drawn;
  }

  [[nodiscard]] Result<chart::Chart> text_on(const chart::Chart& chart, const std::string& text,
                                             const std::string& letter,
                                             const std::optional<StepSpan>& face) const {
    if (text.empty()) return chart;
    if (!face) return no_face();
    const auto bead = place_of(letter.empty() ? options_.letter : letter);
    if (!bead) return bead.problem();
    auto written = picture::write_text(chart, grid_, text, {{0, face->first}, chart.columns(), face->steps},
                                       *bead, options_.style);
    if (!written) return written.problem();
    return std::move(written->chart);
  }

  [[nodiscard]] Result<chart::Bead> place_of(const std::string& letter) const {
    const auto letters = letters_of(project_);
    const auto found = std::ranges::find(letters, letter);
    if (found != letters.end()) return static_cast<chart::Bead>(found - letters.begin());
    return Problem{ProblemCode::unknown_name, "", fmt::format("letter {}", quote(letter)),
                   json::one_of(letters)};
  }

  Result<chart::Chart> coloured(const chart::Chart& chart, const SeriesRow& row) {
    std::map<chart::Bead, chart::Bead> instead;
    for (const auto& [letter, colour] : row.colours) {
      const auto from = place_of(letter);
      const auto to = from ? (colour.colour ? entry_for(*from, colour) : place_of(colour.letter)) : from;
      if (!to) return to.problem().within(letter);
      instead[*from] = *to;
    }
    chart::Chart changed = chart;
    for (int step = 0; step < chart.edge(); ++step)
      for (int column = 0; column < chart.columns(); ++column)
        if (const auto found = instead.find(chart.at({column, step})); found != instead.end())
          changed.set({column, step}, found->second);
    return changed;
  }

  /// The legend's entry of this colour in the same beads, added under the first free letter when it is new.
  Result<chart::Bead> entry_for(chart::Bead like, const SeriesColour& colour) {
    auto& legend = project_.legend;
    LegendEntry entry = legend[like];
    for (std::size_t i = 0; i < legend.size(); ++i)
      if (legend[i].colour == *colour.colour && legend[i].bead == entry.bead &&
          legend[i].finish == entry.finish && (colour.name.empty() || legend[i].name == colour.name))
        return static_cast<chart::Bead>(i);
    if (legend.size() >= most_legend_entries)
      return Problem{ProblemCode::out_of_range, "", fmt::format("more than {} letters", most_legend_entries),
                     "colours that lines share"};
    const auto letters = letters_of(project_);
    int position = 0;
    while (std::ranges::find(letters, chart::letter_name(position)) != letters.end()) ++position;
    entry.letter = chart::letter_name(position);
    entry.colour = *colour.colour;
    entry.name = colour.name.empty() ? "colour " + entry.letter : colour.name;
    entry.pack.reset();
    legend.push_back(std::move(entry));
    return static_cast<chart::Bead>(legend.size() - 1);
  }

  Project project_;
  Band template_;
  FaceSpans faces_;
  const MotifTexts& motifs_;
  const SeriesOptions& options_;
  chart::Grid grid_;
};

/// The template's chart in the letters of the project that it goes into.
void move_to_legend(const Project& source, const Project& project, chart::Chart& chart) {
  const auto letters = letters_of(project);
  std::vector<chart::Bead> places;
  for (const LegendEntry& entry : source.legend)
    places.push_back(static_cast<chart::Bead>(std::ranges::find(letters, entry.letter) - letters.begin()));
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column)
      if (const chart::Bead bead = chart.at({column, step}); bead < places.size())
        chart.set({column, step}, places[bead]);
}

SeriesOutcome put(Project& project, const Band& band, bool replace_edited) {
  const auto there = std::ranges::find(project.bands, band.name, &Band::name);
  if (there == project.bands.end()) {
    project.bands.push_back(band);
    return SeriesOutcome::made;
  }
  const bool untouched = !there->series_mark.empty() && there->series_mark == mark_of(project, *there);
  if (untouched && there->series_mark == band.series_mark) return SeriesOutcome::same;
  if (!untouched && !replace_edited) return SeriesOutcome::kept;
  UnknownFields unknown = std::move(there->unknown);
  *there = band;
  there->unknown = std::move(unknown);
  return SeriesOutcome::replaced;
}

int line_of(const Problem& problem) {
  const std::string_view where = std::string_view(problem.where).substr(std::string_view("line ").size());
  return static_cast<int>(parse_integer(where.substr(0, where.find_first_not_of("0123456789"))).value_or(0));
}

}  // namespace

std::string_view outcome_name(SeriesOutcome outcome) {
  return outcome_names[static_cast<std::size_t>(outcome)];
}

std::vector<std::string> motifs_of(const SeriesTable& table) {
  std::vector<std::string> names;
  for (const SeriesRow& row : table.rows)
    for (const std::string& name : {row.front_motif, row.back_motif})
      if (!name.empty() && std::ranges::find(names, name) == names.end()) names.push_back(name);
  return names;
}

std::string mark_of(const Project& project, const Band& band) {
  const auto letters = letters_of(project);
  std::string text =
      fmt::format("{}\n{}\n{}\n{}\n{}\n{}\n{}\n{}\n{}\n{} {}\n", band.technique, band.bead,
                  band.form.value_or(""), form::use_name(band.use), weave::closure_name(band.closure),
                  band.begin_at, band.gauge ? bead::to_notation(*band.gauge) : "", band.copies, band.note,
                  band.chart.columns(), band.chart.edge());
  for (int step = 0; step < band.chart.edge(); ++step)
    text += chart::to_text(chart::to_runs(band.chart.step(step)), letters) + "\n";
  return digest(text);
}

Result<Series> make_series(const Project& source, const SeriesTable& table, const MotifTexts& motifs,
                           const SeriesOptions& options, const std::optional<Project>& onto) {
  auto band = template_band(source, options);
  if (!band) return band.problem();
  auto faces = faces_of(source, *band, options);
  if (!faces) return faces.problem();
  auto project = ground_for(source, onto);
  if (!project) return project.problem();
  move_to_legend(source, *project, band->chart);
  Making making(std::move(*project), std::move(*band), *faces, motifs, options);
  Series series;
  series.problems = table.problems;
  for (const SeriesRow& row : table.rows) {
    std::vector<LegendEntry> legend = making.project().legend;
    auto made = making.make(row);
    if (!made) {
      series.problems.push_back(made.problem());
      continue;
    }
    const SeriesOutcome outcome = put(making.project(), *made, options.replace_edited);
    if (outcome == SeriesOutcome::kept) making.project().legend = std::move(legend);
    series.bands.push_back({row.line, row.name, outcome});
  }
  series.project = std::move(making.project());
  if (series.project.bands.size() > most_bands || series.project.forms.size() > most_entries ||
      series.project.beads.size() > most_entries)
    return Problem{ProblemCode::out_of_range, "bands", fmt::format("{}", series.project.bands.size()),
                   fmt::format("at most {} in one project", most_bands)};
  std::ranges::stable_sort(series.problems, {}, line_of);
  for (const Band& there : series.project.bands)
    if (!there.series_mark.empty() &&
        std::ranges::find(table.rows, there.name, &SeriesRow::name) == table.rows.end())
      series.no_line.push_back(there.name);
  return series;
}

}  // namespace evencount::project
