#pragma once
/// The projects that the repository shows, for the tests of this room.

#include <fstream>
#include <sstream>
#include <string>

#include "project/json.hpp"

namespace evencount::render::testing_support {

/// "moonwatch", "techniques/brick".
inline project::Project example(const std::string& name) {
  std::ifstream file(std::string(EVENCOUNT_SOURCE_DIR) + "/examples/" + name + ".evencount.json");
  std::stringstream text;
  text << file.rdbuf();
  return project::parse_project(text.str()).value();
}

}  // namespace evencount::render::testing_support
