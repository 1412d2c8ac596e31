#pragma once
/// Where things of the program and of its user lie.
///
/// Properties (tests/app/places_test.cpp):
///  (1) what is found is absolute, whatever the environment says

#include <filesystem>
#include <string>
#include <string_view>

#include "base/result.hpp"

namespace evencount::app {

/// An environment variable; empty where it isn't set.
[[nodiscard]] std::string variable(const char* name);

/// The user's data: evencount in $XDG_DATA_HOME, else in $HOME/.local/share; a relative one is as good as none (the XDG base directory
/// specification). `otherwise` is what a person can name instead, "--stock FILE", for the problem.
/// Errors: missing_field (neither is known).
[[nodiscard]] Result<std::filesystem::path> data_folder(std::string_view otherwise);

/// The user's projects, where no other folder is named: in the data folder. Errors: those of data_folder.
[[nodiscard]] Result<std::filesystem::path> usual_projects();

/// The built page of the studio, and the demos: in the share folder that the program was installed with, wherever that has been moved to,
/// or, before it is installed, in the folder that the build keeps beside it. Empty where there is none.
[[nodiscard]] std::string page_folder();
[[nodiscard]] std::string examples_folder();

}  // namespace evencount::app
