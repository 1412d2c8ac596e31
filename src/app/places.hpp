#pragma once
/// Where things of the program and of its user lie.

#include <filesystem>
#include <string>

namespace evencount::app {

/// An environment variable; empty where it isn't set.
[[nodiscard]] std::string variable(const char* name);

/// The user's projects, where no other folder is named: evencount/projects in the desktop's data folder.
[[nodiscard]] std::filesystem::path usual_projects();

/// The built page of the studio, and the demos: in the share folder that the program was installed with, wherever that has been moved to,
/// or, before it is installed, in the folder that the build keeps beside it. Empty where there is none.
[[nodiscard]] std::string page_folder();
[[nodiscard]] std::string examples_folder();

}  // namespace evencount::app
