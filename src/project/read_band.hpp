#pragma once
/// Reading one band of a project. Internal to the room.

#include "project/json_fields.hpp"

namespace evencount::project {

/// What a band may name, and how many cells the project may still hold.
struct BandContext {
  std::vector<std::string> letters;
  std::vector<std::string> beads;
  std::vector<std::string> forms;
  int cells_left = most_cells_in_all;
  /// The bands' charts, where the document has none of their cells; each is moved out when its band is read.
  std::vector<chart::Chart>* charts = nullptr;
  std::size_t next_chart = 0;
};

/// Problems go into the report; the band is meaningless then.
[[nodiscard]] Band read_band(const json::Node& node, const json::Place& place, BandContext& context,
                             json::Report& report);

/// A measured gauge. `unknown` gets the fields that are not known.
[[nodiscard]] bead::Gauge read_gauge(const json::Node& node, const json::Place& place, UnknownFields& unknown,
                                     json::Report& report);

/// A field that must be one of some names. Empty when it is not.
[[nodiscard]] std::string read_reference(json::Fields& fields, std::string_view name,
                                         const std::vector<std::string>& known, json::Report& report);

}  // namespace evencount::project
