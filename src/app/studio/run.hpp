#pragma once
/// The studio from its start to its end.

#include <string>

#include "app/console.hpp"

namespace evencount::app::studio {

struct Options {
  std::string project;     ///< a file to open; its folder is then the projects' folder
  std::string projects;    ///< a folder; the usual one if left out
  std::string page_files;  ///< a folder with the built page; where it usually is if left out
  int port = 0;            ///< 0 for a free one
  bool lan = false;        ///< also on this machine's address in its network
  bool open = false;       ///< show it in this user's browser
};

/// Serves until SIGINT or SIGTERM, or until its terminal is closed (SIGHUP, unless that was to be ignored). Prints the address on
/// console.out, what was refused on console.err.
int run(const Options& options, const Console& console);

}  // namespace evencount::app::studio
