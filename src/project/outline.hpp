#pragma once
/// A project's JSON without the cells of its bands: small, whatever the charts' sizes. Internal to the room.
///
/// Property (tests/project/patch_test.cpp): with_outline(outline_of(p), charts of p) == p, for every p within the limits of project.hpp.

#include <vector>

#include "project/json_tree.hpp"
#include "project/project.hpp"

namespace evencount::project {

/// As to_json writes it; bands have `columns` and `edge` but no `cells`.
[[nodiscard]] json::Node outline_of(const Project& project);
[[nodiscard]] json::Node outline_of(const Band& band);

/// The project of this outline, whose bands have these charts, one each.
/// Errors: those of parse_project; wrong_size (a chart that isn't of its band's size, or too few of them), unknown_name (a chart with a
/// bead beyond the legend).
[[nodiscard]] Result<Project> with_outline(const json::Node& outline, std::vector<chart::Chart> charts);

/// A project with its cells, from a tree. Errors: those of parse_project.
[[nodiscard]] Result<Project> read_project(const json::Node& document);

}  // namespace evencount::project
