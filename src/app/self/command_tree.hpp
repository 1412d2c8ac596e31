#pragma once
/// What the command line takes, as data: read off its own declarations, so that the manual page and the completions of shells can't
/// say anything else.
///
/// Properties (tests/app/self_test.cpp):
///  (1) every verb and every option that `--help` shows is in the tree, and in everything that is written from it
///  (2) the names of files are completed for exactly the options that `--help` shows with FILE, PROJECT or FOLDER, and what is described as
///      a file or a folder is among them

#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace evencount::app::self {

/// What an option's value is. A file, a project's file or a folder, whose names a shell completes, is declared: by `type_name("FILE")`,
/// "PROJECT" or "FOLDER", or by a positional argument that is named so.
enum class Value { none, number, file, project, folder, text };
[[nodiscard]] constexpr bool names_a_file(Value value) {
  return value == Value::file || value == Value::project || value == Value::folder;
}

struct Option {
  std::vector<std::string> names;  ///< with their dashes, "-o" before "--output"; of a positional argument its only name, without
  Value value = Value::none;
  std::string value_name;  ///< "FILE", "PROJECT", "FOLDER", "NUMBER", "TEXT"; empty for a flag and for a positional argument
  std::string range;       ///< "1 to 100", where there is one
  std::string summary;
  bool required = false, repeated = false;
  [[nodiscard]] bool positional() const { return names.front().front() != '-'; }
};

struct Command {
  std::string name, summary;
  std::vector<Option> arguments;  ///< positional, in their order
  std::vector<Option> options;
  std::vector<Command> verbs;
  std::vector<std::string> notes;  ///< what stands below everything else, a paragraph each
};

/// Hidden verbs and options are left out.
[[nodiscard]] Command command_tree(const CLI::App& app);

}  // namespace evencount::app::self
