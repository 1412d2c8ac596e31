#pragma once
/// Reading how a designer reckons costs and prices. Internal to the room.

#include "project/json_fields.hpp"

namespace evencount::project {

/// Problems go into the report; the costing is meaningless then.
[[nodiscard]] Costing read_costing(const json::Node& node, const json::Place& place, json::Report& report);

/// An ISO 4217 code; `otherwise` where the field is left out.
[[nodiscard]] std::string read_currency(json::Fields& fields, std::string_view otherwise,
                                        json::Report& report);

}  // namespace evencount::project
