#include "app/self/command_tree.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <initializer_list>

#include "base/text.hpp"

namespace evencount::app::self {
namespace {

bool speaks_of_files(std::string_view summary) {
  const auto in = [](std::string_view text, std::initializer_list<std::string_view> words) {
    return std::any_of(words.begin(), words.end(), [&](std::string_view word) { return text.find(word) != std::string_view::npos; });
  };
  // "One of the project's sizes" and "reckoned by the project's rule" name no file.
  const std::string_view clause = summary.substr(0, summary.find_first_of(";,:("));
  return in(summary, {"file", "folder"}) || (in(clause, {"project", "picture", "photograph", "PNG"}) && !in(clause, {"project's"}));
}

/// "INT in [1 - 100]" of the parser: its kind, and the range in words.
void read_type(const std::string& type, Option& option) {
  const auto open = type.find('['), dash = type.find(" - ", open), close = type.find(']', open);
  if (close != std::string::npos && dash < close)
    option.range = type.substr(open + 1, dash - open - 1) + " to " + type.substr(dash + 3, close - dash - 3);
  const bool number = type.starts_with("INT") || type.starts_with("UINT") || type.starts_with("FLOAT");
  option.value = number ? Value::number : speaks_of_files(option.summary) ? Value::file : Value::text;
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
  constexpr std::array<const char*, 4> value_names{"", "NUMBER", "FILE", "TEXT"};
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
