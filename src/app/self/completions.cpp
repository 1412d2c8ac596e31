#include "app/self/completions.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <functional>

namespace evencount::app::self {
namespace {

/// Calls `visit` with every command and its words after the program's name: "", "fit", "stock", "stock import".
void each_command(const Command& command, const std::string& path, const std::function<void(const Command&, const std::string&)>& visit) {
  visit(command, path);
  for (const Command& verb : command.verbs) each_command(verb, path.empty() ? verb.name : path + " " + verb.name, visit);
}

/// The names that a command's arguments are completed with: of any files, as soon as one of the arguments is a file other than a project.
enum class Takes { nothing, projects, files };

Takes takes(const Command& command) {
  Takes what = Takes::nothing;
  for (const Option& argument : command.arguments)
    if (names_a_file(argument.value)) what = std::max(what, argument.value == Value::project ? Takes::projects : Takes::files);
  return what;
}

/// In single quotes, as all three shells take it (fish alone also wants its backslashes doubled).
std::string quoted_for_shell(std::string_view text, bool fish = false) {
  std::string quoted = "'";
  for (const char c : text) {
    if (fish && (c == '\'' || c == '\\'))
      quoted += std::string("\\") + c;
    else if (c == '\'')
      quoted += "'\\''";
    else
      quoted += c;
  }
  return quoted + "'";
}

std::string replaced(std::string text, std::string_view what, std::string_view with) {
  for (std::size_t at = 0; (at = text.find(what, at)) != std::string::npos; at += with.size()) text.replace(at, what.size(), with);
  return text;
}

std::string names_of(const std::vector<Option>& options, bool (*wanted)(const Option&)) {
  std::string names;
  for (const Option& option : options)
    if (wanted(option))
      for (const std::string& name : option.names) names += (names.empty() ? "" : " ") + name;
  return names;
}

constexpr auto every = [](const Option&) { return true; };
constexpr auto with_file = [](const Option& option) { return names_a_file(option.value); };
constexpr auto with_other_value = [](const Option& option) { return option.value == Value::number || option.value == Value::text; };

std::string bash_case(const Command& command, const std::string& path) {
  std::string verbs;
  for (const Command& verb : command.verbs) verbs += (verbs.empty() ? "" : " ") + verb.name;
  constexpr std::array<const char*, 3> names{"nothing", "projects", "files"};
  return fmt::format("    {}) verbs={} options={} file_options={} value_options={} takes={} ;;\n", quoted_for_shell(path), quoted_for_shell(verbs),
                     quoted_for_shell(names_of(command.options, every)), quoted_for_shell(names_of(command.options, with_file)),
                     quoted_for_shell(names_of(command.options, with_other_value)), names[static_cast<std::size_t>(takes(command))]);
}

std::string zsh_function_name(const std::string& path) {
  return "_evencount" + (path.empty() ? "" : "_" + replaced(replaced(path, " ", "_"), "-", "_"));
}

/// A text within the brackets or after the colon of an option's specification.
std::string zsh_text(std::string text) {
  for (const char* c : {"\\", "[", "]", ":"}) text = replaced(text, c, std::string("\\") + c);
  return text;
}

std::string zsh_action(const Option& option) {
  if (option.value == Value::project) return "_files -g \"*.evencount.json\"";
  if (option.value == Value::folder) return "_files -/";
  return option.value == Value::file ? "_files" : " ";
}

std::string zsh_option(const Option& option) {
  std::string all;
  for (const std::string& name : option.names) all += (all.empty() ? "" : " ") + name;
  std::string specs;
  for (const std::string& name : option.names) {
    const std::string before = option.repeated ? "*" : "(" + all + ")";
    std::string spec = before + name + "[" + zsh_text(option.summary) + "]";
    if (option.value != Value::none) spec += ":" + option.value_name + ":" + zsh_action(option);
    specs += " \\\n    " + quoted_for_shell(spec);
  }
  return specs;
}

std::string zsh_function(const Command& command, const std::string& path) {
  const std::string name = zsh_function_name(path);
  std::string specs;
  for (const Option& option : command.options) specs += zsh_option(option);
  if (command.verbs.empty()) {
    for (const Option& argument : command.arguments)
      specs += " \\\n    " + quoted_for_shell((argument.repeated ? "*:" : ":") + argument.names.front() + ":" + zsh_action(argument));
    return fmt::format("{}() {{\n  _arguments -s{}\n}}\n\n", name, specs);
  }
  std::string verbs, cases;
  for (const Command& verb : command.verbs) {
    verbs += "\n    " + quoted_for_shell(verb.name + ":" + replaced(verb.summary, ":", "\\:"));
    cases += fmt::format("      {}) {} ;;\n", verb.name, zsh_function_name(path.empty() ? verb.name : path + " " + verb.name));
  }
  return fmt::format(
      "{0}() {{\n  local curcontext=\"$curcontext\" state line\n  local -a verbs\n  verbs=({1})\n  _arguments -C{2} \\\n    '1: :->verb' '*:: :->rest'\n"
      "  case $state in\n    verb) _describe verb verbs ;;\n    rest)\n      case $words[1] in\n{3}      esac ;;\n  esac\n}}\n\n",
      name, verbs, specs, cases);
}

void fish_lines(const Command& command, const std::string& path, std::string& script) {
  const std::string at = "complete -c evencount -n " + quoted_for_shell("test (__evencount_verb) = " + quoted_for_shell(path, true), true);
  for (const Command& verb : command.verbs)
    script += fmt::format("{} -f -a {} -d {}\n", at, verb.name, quoted_for_shell(verb.summary, true));
  for (const Option& option : command.options) {
    script += at;
    for (const std::string& name : option.names) script += name.starts_with("--") ? " -l " + name.substr(2) : " -s " + name.substr(1);
    if (names_a_file(option.value)) script += " -r -F";
    if (option.value == Value::number || option.value == Value::text) script += " -x";
    script += " -d " + quoted_for_shell(option.summary, true) + "\n";
  }
  if (takes(command) == Takes::files) script += at + " -F\n";
  if (takes(command) == Takes::projects) script += at + " -f -a '(__fish_complete_suffix .evencount.json)'\n";
}

}  // namespace

std::string bash_completion(const Command& program) {
  std::string known, cases;
  each_command(program, "", [&](const Command& command, const std::string& path) {
    if (!path.empty()) known += (known.empty() ? "" : "|") + quoted_for_shell(path);
    cases += bash_case(command, path);
  });
  return fmt::format(R"sh(# bash completion for evencount; written by evencount describe bash
_evencount() {{
  local word path='' current=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD - 1]}} verbs options file_options value_options takes
  for word in "${{COMP_WORDS[@]:1:COMP_CWORD-1}}"; do
    case "${{path:+$path }}$word" in
      {}) path="${{path:+$path }}$word" ;;
    esac
  done
  case "$path" in
{}  esac
  if [[ " $file_options " == *" $before "* ]]; then takes=files verbs=''
  elif [[ " $value_options " == *" $before "* ]]; then COMPREPLY=() && return
  elif [[ $current == -* ]]; then verbs=$options takes=nothing
  fi
  COMPREPLY=()
  [[ -n $verbs ]] && mapfile -t COMPREPLY < <(compgen -W "$verbs" -- "$current")
  compopt -o filenames 2>/dev/null
  case $takes in
    files) mapfile -t COMPREPLY < <(compgen -f -- "$current") ;;
    projects) mapfile -t COMPREPLY < <(compgen -f -X '!*.evencount.json' -- "$current"; compgen -d -- "$current") ;;
    *) compopt +o filenames 2>/dev/null ;;
  esac
  return 0
}}
complete -F _evencount evencount
)sh",
                     known, cases);
}

std::string zsh_completion(const Command& program) {
  std::string script = "#compdef evencount\n# Written by evencount describe zsh\n\n";
  each_command(program, "", [&](const Command& command, const std::string& path) { script += zsh_function(command, path); });
  // Loaded as a function it is called at once; read with `source` it is only made known.
  return script + "if [ \"$funcstack[1]\" = _evencount ]; then\n  _evencount \"$@\"\nelse\n  compdef _evencount evencount\nfi\n";
}

std::string fish_completion(const Command& program) {
  std::string known, lines;
  each_command(program, "", [&](const Command& command, const std::string& path) {
    if (!path.empty()) known += " " + quoted_for_shell(path, true);
    fish_lines(command, path, lines);
  });
  return fmt::format(R"sh(# fish completion for evencount; written by evencount describe fish
function __evencount_verb
    set -l verb ''
    set -l words (commandline -opc)
    for word in $words[2..-1]
        set -l next (string trim -- "$verb $word")
        contains -- $next{}; and set verb $next
    end
    echo $verb
end
complete -c evencount -f
{})sh",
                     known, lines);
}

}  // namespace evencount::app::self
