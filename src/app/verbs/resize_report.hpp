#pragma once
/// What a resizing did, for people and for programs.

#include <ostream>

#include "app/json_text.hpp"
#include "project/resize.hpp"

namespace evencount::app {

[[nodiscard]] Json to_json(const project::Resized& resized);

/// `brief`: the beads that changed are counted, not listed.
void print_resized(const project::Resized& resized, bool brief, std::ostream& out);

}  // namespace evencount::app
