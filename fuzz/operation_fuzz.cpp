/// An operation on a small project, as the studio's page sends it.

#include "project/json.hpp"
#include "project/operation.hpp"
#include "project/patch.hpp"
#include "target.hpp"

using namespace evencount;

namespace {

const project::Project& small_project() {
  static const project::Project project = *project::parse_project(R"({
    "format": 1, "title": "Small", "beads": [{"id": "cylinder-11"}], "thread": {"id": "braided-6lb"},
    "legend": [{"letter": "A", "name": "night", "colour": "#223344", "bead": "cylinder-11"},
               {"letter": "B", "name": "moon", "colour": "#f4ead5", "bead": "cylinder-11"}],
    "bands": [{"name": "One", "technique": "peyote-even-count", "bead": "cylinder-11", "columns": 4, "edge": 3,
               "cells": ["4A", "2A 2B", "4B"]}],
    "strand": {"layout": ["cords 1 of braided 0.6mm", "bead stop 8mm", "string 3 stop"], "worn": "wrist"}
  })");
  return project;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzzing::text_of(data, size);
  const auto applied = project::apply_operation(small_project(), text);
  fuzzing::require_told(applied);
  if (applied) {
    const auto again = project::parse_project(project::to_json(applied->project));
    fuzzing::require(again.ok() && *again == applied->project, "what an operation gives can be kept");
  }
  const auto patch = project::parse_patch(text);
  fuzzing::require_told(patch);
  if (patch) {
    const auto again = project::parse_patch(project::to_json(*patch));
    fuzzing::require(again.ok() && project::to_json(*again) == project::to_json(*patch), "a patch is read as it was written");
  }
  return 0;
}
