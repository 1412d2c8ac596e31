#include "app/self/command_tree.hpp"

#include <CLI/CLI.hpp>
#include <array>
#include <string_view>

#include "base/text.hpp"

namespace evencount::app::self {
namespace {

/// The names that declarations give to what is no number: those of `type_name`, or of a positional argument itself.
Value value_named(std::string_view name) {
  return name == "FILE" ? Value::file : name == "PROJECT" ? Value::project : name == "FOLDER" ? Value::folder : Value::text;
}

/// "INT in [1 - 100]" of the parser: its kind, and the range in words.
void read_type(const std::string& type, Option& option) {
  const auto open = type.find('['), dash = type.find(" - ", open), close = type.find(']', open);
  if (close != std::string::npos && dash < close)
    option.range = type.substr(open + 1, dash - open - 1) + " to " + type.substr(dash + 3, close - dash - 3);
  const bool number = type.starts_with("INT") || type.starts_with("UINT") || type.starts_with("FLOAT");
  option.value = number ? Value::number : value_named(type);
  if (option.value == Value::text && option.positional()) option.value = value_named(option.names.front());
}

Option read_option(const CLI::Option& declared) {
  Option option;
  option.summary = declared.get_description();
  option.required = declared.get_required();
  for (const std::string& name : declared.get_snames()) option.names.push_back("-" + name);
  for (const std::string& name : declared.get_lnames()) option.names.push_back("--" + name);
  const bool positional = option.names.empty();
  if (positional) option.names.push_back(declared.get_name(true));
  if (declared.get_items_expected_max() == 0) return option;
  read_type(declared.get_type_name(), option);
  option.repeated = declared.get_items_expected_max() > 1;
  constexpr std::array<const char*, 6> value_names{"", "NUMBER", "FILE", "PROJECT", "FOLDER", "TEXT"};
  if (!positional) option.value_name = value_names[static_cast<std::size_t>(option.value)];
  return option;
}

}  // namespace

Command command_tree(const CLI::App& app) {
  Command command{.name = app.get_name(), .summary = app.get_description()};
  const auto shown = [](const auto* what) { return !what->get_group().empty(); };
  for (const CLI::Option* option : app.get_options(shown)) {
    Option read = read_option(*option);
    (read.positional() ? command.arguments : command.options).push_back(std::move(read));
  }
  for (const CLI::App* verb : app.get_subcommands(shown)) command.verbs.push_back(command_tree(*verb));
  const std::string notes = app.get_parent() == nullptr ? app.get_footer() : "";  // verbs inherit the program's
  for (const std::string_view line : split(notes, '\n'))
    if (!line.empty()) command.notes.emplace_back(line);
  return command;
}

}  // namespace evencount::app::self
