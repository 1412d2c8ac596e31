#include <gtest/gtest.h>

#include <algorithm>
#include <regex>
#include <set>

#include "app/run.hpp"

namespace evencount::app {
namespace {

using namespace evencount::testing;

/// What the parser's own help says of one command: this reader knows nothing of the tree that the pages are written from.
struct Helped {
  std::string path;  ///< "", "fit", "stock import"
  std::vector<std::string> options, verbs;
};

std::vector<std::string> words_of(const std::string& path) {
  std::istringstream in(path);
  return {std::istream_iterator<std::string>(in), {}};
}

Helped help_of(const std::string& path) {
  std::vector<std::string> arguments = words_of(path);
  arguments.emplace_back("--help");
  std::istringstream help(run(arguments).out);
  Helped helped{path, {}, {}};
  bool verbs = false;
  const std::regex option("^  (-[^ ]+)( |$)"), verb("^  ([a-z][a-z-]*) ");
  std::smatch found;
  for (std::string line; std::getline(help, line);) {
    verbs = verbs || line == "Subcommands:";
    if (std::regex_search(line, found, option)) {
      std::istringstream names(found[1]);
      for (std::string name; std::getline(names, name, ',');) helped.options.push_back(name);
    } else if (verbs && std::regex_search(line, found, verb)) {
      helped.verbs.push_back(found[1]);
    }
  }
  return helped;
}

void add_commands(const std::string& path, std::vector<Helped>& all) {
  all.push_back(help_of(path));
  const std::vector<std::string> verbs = all.back().verbs;
  for (const std::string& verb : verbs) add_commands(path.empty() ? verb : path + " " + verb, all);
}

const std::vector<Helped>& commands() {
  static const std::vector<Helped> all = [] {
    std::vector<Helped> found;
    add_commands("", found);
    return found;
  }();
  return all;
}

std::string described(const std::string& what) {
  const Ran ran = run({"describe", what});
  EXPECT_EQ(ran.status, exit_done) << ran.err;
  return ran.out;
}

/// The text from a line that begins with `first` to the next line that begins with `next`.
std::string part(const std::string& text, const std::string& first, const std::string& next) {
  const auto from = ("\n" + text).find("\n" + first);
  if (from == std::string::npos) return "";
  const auto to = text.find("\n" + next, from + first.size());
  return text.substr(from, to == std::string::npos ? to : to - from + 1);
}

std::string without_backslashes(std::string text) {
  text.erase(std::remove(text.begin(), text.end(), '\\'), text.end());
  return text;
}

TEST(Self, HelpNamesWhatEveryoneKnowsIsThere) {
  // So that a reader of the help that finds nothing doesn't make the tests below pass.
  std::set<std::string> paths;
  std::size_t options = 0;
  for (const Helped& command : commands()) {
    paths.insert(command.path);
    options += command.options.size();
    EXPECT_GE(command.options.size(), 2u) << command.path << ": -h and --help at least";
  }
  for (const char* path : {"", "fit", "booklet", "stock import", "doctor"}) EXPECT_TRUE(paths.contains(path)) << path;
  EXPECT_GT(paths.size(), 30u);
  EXPECT_GT(options, 200u);
  EXPECT_FALSE(paths.contains("describe")) << "hidden";
}

TEST(Self, EveryVerbAndOptionIsInTheManualPage) {
  const std::string page = described("man");
  for (const Helped& command : commands()) {
    if (!command.verbs.empty() && !command.path.empty()) continue;  // "stock" alone: its verbs stand for it
    std::string heading = ".SS " + command.path;
    for (std::size_t at = 0; (at = heading.find('-', at)) != std::string::npos; at += 2) heading.insert(at, "\\");
    const std::string section = without_backslashes(command.path.empty() ? part(page, ".SH OPTIONS", ".SH") : part(page, heading + "\n", ".S"));
    ASSERT_NE(section, "") << command.path;
    for (const std::string& option : command.options)
      EXPECT_NE(section.find("fB" + option + "fR"), std::string::npos) << command.path << " " << option;
  }
  for (const char c : page) ASSERT_TRUE(c == '\n' || (c >= ' ' && c <= '~')) << "not ASCII: " << static_cast<int>(c);
}

TEST(Self, EveryVerbAndOptionIsInTheCompletionsOfBash) {
  const std::string script = described("bash");
  for (const Helped& command : commands()) {
    const std::string line = part(script, "    '" + command.path + "')", " ");
    ASSERT_NE(line, "") << command.path;
    std::smatch verbs, options;
    ASSERT_TRUE(std::regex_search(line, verbs, std::regex(" verbs='([^']*)'"))) << line;
    ASSERT_TRUE(std::regex_search(line, options, std::regex(" options='([^']*)'"))) << line;
    EXPECT_EQ(words_of(verbs[1]), command.verbs) << command.path;
    EXPECT_EQ(words_of(options[1]), command.options) << command.path;
  }
}

TEST(Self, FilesAreCompletedForWhatIsDeclaredToBeOne) {
  const std::string script = described("bash");
  const std::regex option("^  (-[^ ]+) +([A-Z]*)"), description("(  |REQUIRED )(a|the) (file|folder) ");
  std::size_t files = 0;
  for (const Helped& command : commands()) {
    std::vector<std::string> arguments = words_of(command.path);
    arguments.emplace_back("--help");
    std::istringstream help(run(arguments).out);
    std::set<std::string> declared;
    std::smatch found;
    for (std::string line; std::getline(help, line);) {
      if (!std::regex_search(line, found, option)) continue;
      const bool file = std::set<std::string>{"FILE", "PROJECT", "FOLDER"}.contains(found[2]);
      EXPECT_TRUE(file || !std::regex_search(line, description)) << command.path << ": " << line;
      std::istringstream names(found[1]);
      for (std::string name; file && std::getline(names, name, ',');) declared.insert(name);
    }
    const std::string line = part(script, "    '" + command.path + "')", " ");
    ASSERT_TRUE(std::regex_search(line, found, std::regex(" file_options='([^']*)'"))) << line;
    const std::vector<std::string> completed = words_of(found[1]);
    EXPECT_EQ(std::set<std::string>(completed.begin(), completed.end()), declared) << command.path;
    files += declared.size();
  }
  EXPECT_GT(files, 40u);
}

TEST(Self, EveryVerbAndOptionIsInTheCompletionsOfZsh) {
  const std::string script = described("zsh");
  for (const Helped& command : commands()) {
    std::string name = "_evencount";
    for (const std::string& word : words_of(command.path)) name += "_" + word;
    std::replace(name.begin(), name.end(), '-', '_');
    const std::string function = part(script, name + "() {", "}");
    ASSERT_NE(function, "") << name;
    for (const std::string& option : command.options) {
      const bool once = function.find(")" + option + "[") != std::string::npos, often = function.find("'*" + option + "[") != std::string::npos;
      EXPECT_TRUE(once || often) << name << " " << option;
    }
    for (const std::string& verb : command.verbs) EXPECT_NE(function.find("'" + verb + ":"), std::string::npos) << verb;
  }
}

TEST(Self, EveryVerbAndOptionIsInTheCompletionsOfFish) {
  const std::string script = described("fish");
  for (const Helped& command : commands()) {
    const std::string at = "complete -c evencount -n 'test (__evencount_verb) = \\'" + command.path + "\\''";
    std::istringstream lines(script);
    std::string mine;
    for (std::string line; std::getline(lines, line);)
      if (line.starts_with(at)) mine += line.substr(at.size()) + "\n";
    for (const std::string& option : command.options) {
      const std::string flag = option.starts_with("--") ? " -l " + option.substr(2) + " " : " -s " + option.substr(1) + " ";
      EXPECT_NE(mine.find(flag), std::string::npos) << command.path << " " << option;
    }
    for (const std::string& verb : command.verbs) EXPECT_NE(mine.find(" -a " + verb + " "), std::string::npos) << verb;
  }
}

TEST(Self, DescribesNothingElse) {
  EXPECT_EQ(run({"describe", "cake"}).status, exit_bad_input);
}

}  // namespace
}  // namespace evencount::app
