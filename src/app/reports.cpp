#include "app/reports.hpp"

#include "chart/runs.hpp"

namespace evencount::app {

Json words_json(const std::string& band, const wording::WordChart& words, const std::string& closing) {
  Json lines = Json::array();
  for (const wording::WordLine& line : words.lines)
    lines.push_back({{"label", line.label},
                     {"beads", line.beads},
                     {"first_row", line.first_row},
                     {"last_row", line.last_row},
                     {"count", line.count}});
  return {{"name", band}, {"facts", words.facts}, {"lines", std::move(lines)}, {"closing", closing}};
}

std::string words_text(const weave::Plan& plan, std::span<const std::string> letters, const std::string& band, bool fold,
                       const language::Language& language) {
  std::string text = wording::to_text(wording::write_words(plan, letters, band, {fold, fold, &language}), language), notes;
  for (const std::string& note : {wording::technique_note(plan, language), wording::turn_note(plan, language),
                                  wording::closing_note(plan, language)})
    if (!note.empty()) notes += note + "\n";
  return notes.empty() ? text : text + "\n" + notes;
}

Json thread_json(const project::BandThread& band) {
  Json lengths = Json::array();
  for (const Length length : band.use.lengths) lengths.push_back(rounded(length.mm(), 1));
  return {{"name", band.band},
          {"length_mm", rounded(band.use.path.mm(), 1)},
          {"cut_mm", rounded(band.use.cut.mm(), 1)},
          {"lengths", std::move(lengths)},
          {"new_thread_rows", band.use.new_thread_rows},
          {"left_mm", rounded(band.use.left.mm(), 1)},
          {"warps", band.use.warps},
          {"warp_mm", rounded(band.use.warp_length.mm(), 1)},
          {"max_passes", band.use.most_passes},
          {"capacity", band.use.capacity}};
}

namespace {

/// What is known of a place; the rest is left out.
Json place_json(const proof::Place& place) {
  Json json = Json::object();
  if (place.band) json["band"] = *place.band;
  if (place.row) json["row"] = *place.row;
  if (place.cell) json["cell"] = {place.cell->column, place.cell->step};
  if (!place.letters.empty()) json["letters"] = place.letters;
  if (!place.size.empty()) json["size"] = place.size;
  if (place.piece) json["piece"] = *place.piece;
  if (place.line) json["line"] = *place.line;
  if (place.column) json["column"] = *place.column;
  return json;
}

}  // namespace

Json proof_json(const project::Project& project, const std::vector<proof::Finding>& findings) {
  Json list = Json::array(), checks = Json::array();
  for (const proof::Finding& finding : findings)
    list.push_back({{"severity", proof::severity_name(finding.severity)},
                    {"check", finding.check},
                    {"where", finding.where},
                    {"place", place_json(proof::place_of(project, finding))},
                    {"message", finding.message}});
  for (const proof::Check& check : proof::checks())
    checks.push_back({{"name", check.name}, {"purpose", check.purpose}});
  return {{"findings", std::move(list)}, {"checks", std::move(checks)}};
}

Json read_band_json(const wording::ReadBand& band) {
  Json cells = Json::array();
  for (int step = 0; step < band.chart.edge(); ++step)
    cells.push_back(chart::to_text(chart::to_runs(band.chart.step(step)), band.letters));
  return {{"name", band.name},         {"technique", band.technique}, {"columns", band.chart.columns()},
          {"edge", band.chart.edge()}, {"rows", band.rows},           {"letters", band.letters},
          {"cells", std::move(cells)}};
}

}  // namespace evencount::app
