#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "page/along_markup.hpp"
#include "page/along_parts.hpp"

namespace evencount::page {
namespace {

using Json = nlohmann::json;

/// So many digits of a fingerprint tell designs apart: 64 bits.
constexpr std::size_t key_length = 16;

std::string key_of(std::string_view bytes) {
  return sha256_hex(bytes).substr(0, key_length);
}

std::string hex_colour(colour::Rgb colour) {
  return fmt::format("#{:02x}{:02x}{:02x}", colour.red, colour.green, colour.blue);
}

std::string_view travel_name(weave::Travel travel) {
  switch (travel) {
    case weave::Travel::left: return "left";
    case weave::Travel::right: return "right";
    case weave::Travel::forth: return "down";
    case weave::Travel::back: return "up";
  }
  return "";
}

/// Where places lie, in pitches: the middle of a bead is `origin` + half its place, its sides by whether its place along is even or odd.
Json shape_of(const Hand& hand, const bead::Gauge& gauge) {
  const weave::Lattice& lattice = hand.plan.lattice;
  const weave::Box extent = weave::extent(lattice);
  Json shape{{"width", extent.width}, {"height", extent.height}, {"ratio", gauge.edge / gauge.column}};
  if (lattice.holes == weave::Holes::round_squares) {
    const weave::Box across = weave::box_of(lattice, {1, 0}), along = weave::box_of(lattice, {0, 1});
    shape["origin"] = weave::side_thickness / 2;
    shape["sides"] = Json::array({{across.width, across.height}, {along.width, along.height}});
  } else {
    shape["origin"] = 0.5;
    shape["sides"] = Json::array({{1, 1}, {1, 1}});
  }
  return shape;
}

Json row_of(const WorkedLine& line) {
  const weave::Row& row = line.row;
  Json places = Json::array();
  for (const weave::Spot& place : line.places) {
    places.push_back(place.across);
    places.push_back(place.along);
  }
  Json json{{"first", row.first_number},
            {"last", row.last_number},
            {"kind", row.kind == weave::RowKind::round ? "round" : "row"},
            {"travel", travel_name(row.travel)},
            {"places", std::move(places)}};
  const auto change = [](weave::RowEnd end) { return end == weave::RowEnd::increase ? "increase" : "decrease"; };
  if (row.begins != weave::RowEnd::plain) json["begins"] = change(row.begins);
  if (row.ends != weave::RowEnd::plain) json["ends"] = change(row.ends);
  if (row.on_back) json["back"] = true;
  return json;
}

Json hand_of(const Hand& hand, const language::Language& language) {
  Json rows = Json::array();
  for (const WorkedLine& line : hand.lines) rows.push_back(row_of(line));
  const auto& lengths = hand.thread.lengths;
  for (std::size_t i = 0; i < lengths.size(); ++i) {
    const int begins = i == 0 ? 1 : i <= hand.thread.new_thread_rows.size() ? hand.thread.new_thread_rows[i - 1] : 0;
    for (Json& row : rows)
      if (row["first"] <= begins && begins <= row["last"]) row["thread"] = metres_text(language, lengths[i]);
  }
  return {{"rows", std::move(rows)}, {"closing", shown_text(wording::closing_note(hand.seen, language))}};
}

std::string design_text(const Subject& subject) {
  std::string text = subject.project.title + "\n";
  for (const project::LegendEntry& entry : subject.project.legend)
    text += fmt::format("{}\t{}\t{}\t{}\n", entry.letter, entry.name, hex_colour(entry.colour), entry.bead);
  for (const BandSheet& sheet : subject.bands) text += wording::to_text(sheet.words);
  return text;
}

}  // namespace

Json design_of(const Subject& subject, const std::vector<AlongBand>& bands) {
  Json legend = Json::array(), all = Json::array();
  for (const project::LegendEntry& entry : subject.project.legend)
    legend.push_back({{"letter", shown_text(entry.letter)}, {"name", shown_text(entry.name)}, {"colour", hex_colour(entry.colour)}});
  for (std::size_t i = 0; i < bands.size(); ++i) {
    const BandSheet& sheet = subject.bands[i];
    Json band{{"name", shown_text(sheet.band->name)},
              {"key", key_of(wording::to_text(sheet.words))},
              {"copies", sheet.band->copies},
              {"shape", shape_of(bands[i].right, sheet.gauge)},
              {"hands", {{"right", hand_of(bands[i].right, subject.language)}}}};
    if (bands[i].left) band["hands"]["left"] = hand_of(*bands[i].left, subject.language);
    all.push_back(std::move(band));
  }
  return {{"key", key_of(design_text(subject))}, {"texts", script_texts(subject.language)}, {"legend", std::move(legend)}, {"bands", std::move(all)}};
}

}  // namespace evencount::page
