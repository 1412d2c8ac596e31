#pragma once
/// A project on disk.

#include <string>

#include "project/project.hpp"

namespace evencount::app {

/// Errors: those of read_file and project::parse_project, with the file's name in `where`.
[[nodiscard]] Result<project::Project> load_project(const std::string& path);

/// The project to add to: the file's, or an untitled one without beads when there is no such file. Errors: those of load_project else.
[[nodiscard]] Result<project::Project> load_or_begin_project(const std::string& path);

/// Errors: those of write_file.
[[nodiscard]] Result<Done> save_project(const std::string& path, const project::Project& project);

}  // namespace evencount::app
