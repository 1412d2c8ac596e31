#pragma once
/// A project as JSON text and back (schema/project.schema.json describes it).

#include <string>
#include <string_view>

#include "project/project.hpp"

namespace evencount::project {

/// Reads a project.
///
/// `where` of a problem is "line 12, column 5" where the text is not JSON, else a JSON pointer (RFC 6901:
/// "/bands/0/columns"; steps of a chart count from 0, as lattice steps do).
///
/// A bead or thread that gives only its id and is a known one (bead::sizes, bead::threads) takes the known figures.
/// A size that the technique can't make, or a zip of an odd number of rows, is read: it is the proof's to find.
///
/// Errors: bad_json (also: nested deeper than 64, not UTF-8, a name twice in one object), wrong_type, missing_field,
/// out_of_range (a number or a list beyond its limits; a text beyond 64 MiB), unknown_name (a bead, form, technique,
/// finish, use, closure or letter that there is not), duplicate_name (a bead, form or letter twice), wrong_size (cells
/// that disagree with columns or edge), bad_text (a colour, a form, a run, a control character),
/// newer_format ("format 2", "format 1 or older: this file was saved by a newer version").
/// Properties (tests/project/):
///  (1) parse_project(to_json(p)) == p, for every p within the limits of project.hpp
///  (2) unknown fields, at every level, come back in to_json with the same value
///  (3) every proper prefix of a project's text, up to its closing brace, is a problem
[[nodiscard]] Result<Project> parse_project(std::string_view text);

/// Reads a costing alone, as a file of a designer's own rates: the same fields as a project's `costing`. Errors: those of parse_project.
[[nodiscard]] Result<Costing> parse_costing(std::string_view text);
/// The same fields, all of them. Property: *parse_costing(to_json(c)) == c.
[[nodiscard]] std::string to_json(const Costing& costing);

/// JSON with two-space indents, fields in a fixed order, one line a chart step, unknown fields last, ended by
/// a newline. Texts and lists that are empty, and fields at their default, are left out. The same project gives the
/// same bytes. Every number must be finite, every band's chart within the legend.
[[nodiscard]] std::string to_json(const Project& project);

}  // namespace evencount::project
