#pragma once
/// Whether this machine has what the program needs: fonts, folders and the port are tried for real, programs are looked for
/// by their names; nothing is left behind.
///
/// Properties (tests/app/doctor_test.cpp):
///  (1) whatever is a fault or a note says in one sentence what to do; what is good says nothing to do
///  (2) a check of a folder leaves the disk as it was
///  (3) a fault in one check changes no other

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "page/font_files.hpp"

namespace evencount::app {

enum class Health { good, note, fault };  ///< a note: something can't be done, but the program can be worked with

/// "ok", "note" or "fault".
[[nodiscard]] std::string_view health_name(Health health);

struct Check {
  std::string id;      ///< what JSON calls it: "font", "projects", "space", "page", "loopback", "browser", "opener", "pdftotext", "lettering", "locale"
  Health health = Health::good;
  std::string found;   ///< what was looked at and how it stands
  std::string remedy;  ///< one sentence; empty where all is well
  bool operator==(const Check&) const = default;
};

/// What is looked at. `this_machine` reads it off; tests make it up.
struct Surroundings {
  std::vector<page::FontFile> fonts;
  std::vector<std::string> families;  ///< of fonts that bands can be lettered in
  std::string projects;               ///< the folder of projects, which need not be there yet; empty where none is known
  std::string page_folder;            ///< of the studio; empty where none was found
  std::string loopback;               ///< the address that the studio opens a port on
  std::string search_path;            ///< folders of programs, as in PATH
  std::string locale;                 ///< what LC_ALL, LC_CTYPE or LANG say, the first that is set
};

[[nodiscard]] Surroundings this_machine();

/// All checks, always in the same order. Graphics are none of them: only the browser's page uses a graphics chip, and does without.
[[nodiscard]] std::vector<Check> examine(const Surroundings& surroundings);

/// How so much room for projects stands.
[[nodiscard]] Check check_space(std::uint64_t free_bytes, const std::string& folder);

}  // namespace evencount::app
