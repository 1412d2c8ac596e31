#include "app/self/man_page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace evencount::app::self {
namespace {

/// The code point that begins at `at`, which is moved past it. Our texts are UTF-8 by declaration.
unsigned next_code_point(std::string_view text, std::size_t& at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned>(static_cast<unsigned char>(text[i])); };
  const unsigned first = byte(at++);
  unsigned code = first < 0x80 ? first : first < 0xE0 ? first & 0x1F : first < 0xF0 ? first & 0x0F : first & 0x07;
  while (at < text.size() && (byte(at) & 0xC0) == 0x80) code = code << 6 | (byte(at++) & 0x3F);
  return code;
}

/// A text of a line. Dashes of `literal` ones stay those of the keyboard, so that they can be copied.
std::string roff(std::string_view text, bool literal = false) {
  std::string out;
  if (!text.empty() && (text.front() == '.' || text.front() == '\'')) out = "\\&";
  for (std::size_t at = 0; at < text.size();) {
    const unsigned code = next_code_point(text, at);
    switch (code) {
      case '\\': out += "\\(rs"; break;
      case '\'': out += "\\(aq"; break;
      case '`': out += "\\(ga"; break;
      case '^': out += "\\(ha"; break;
      case '~': out += "\\(ti"; break;
      case '"': out += "\\(dq"; break;
      case '-': out += literal || (at < text.size() && text[at] == '-') || (at > 1 && text[at - 2] == '-') ? "\\-" : "-"; break;
      default:
        if (code < 0x80)
          out += static_cast<char>(code);
        else
          fmt::format_to(std::back_inserter(out), "\\[u{:04X}]", code);
    }
  }
  return out;
}

std::string bold(std::string_view text) {
  return "\\fB" + roff(text, true) + "\\fR";
}

std::string italic(std::string_view text) {
  return "\\fI" + roff(text, true) + "\\fR";
}

/// The first letter large, a stop at the end.
std::string sentence(const std::string& summary) {
  if (summary.empty()) return "";
  std::string text = summary;
  const bool word = text.size() > 1 && text[1] != '/' && !(text[1] >= 'A' && text[1] <= 'Z');
  if (word && text[0] >= 'a' && text[0] <= 'z' && text.find('=') > text.find(' ')) text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text.back() == '.' || text.back() == '?' ? text : text + ".";
}

std::string argument_in_synopsis(const Option& argument) {
  const std::string name = italic(argument.names.front()) + (argument.repeated ? "\\ ..." : "");
  return argument.required ? name : "[" + name + "]";
}

void write_option(const Option& option, std::string& page) {
  std::string tag;
  for (const std::string& name : option.names)
    tag += (tag.empty() ? "" : ", ") + (option.positional() ? italic(name) : bold(name));
  if (!option.value_name.empty()) tag += " " + italic(option.value_name);
  std::string text = roff(sentence(option.summary));
  if (!option.range.empty()) text += " From " + roff(option.range) + ".";
  if (option.required && !option.positional()) text += " Must be given.";
  if (option.repeated && !option.positional() && option.summary.find("repeated") == std::string::npos) text += " May be repeated.";
  page += ".TP\n" + tag + "\n" + text + "\n";
}

void write_verb(const Command& verb, const std::string& path, std::string& page) {
  const std::string full = path + " " + verb.name;
  if (!verb.verbs.empty()) {
    for (const Command& inner : verb.verbs) write_verb(inner, full, page);
    return;
  }
  page += ".SS " + roff(full.substr(full.find(' ') + 1), true) + "\n";
  page += bold(full) + " [" + italic("options") + "]";
  for (const Option& argument : verb.arguments) page += " " + argument_in_synopsis(argument);
  page += "\n.PP\n" + roff(sentence(verb.summary)) + "\n";
  for (const Option& argument : verb.arguments) write_option(argument, page);
  for (const Option& option : verb.options) write_option(option, page);
}

constexpr std::string_view files_and_more = R"(.SH FILES
.TP
\fINAME\fR.evencount.json
A project. \fINAME\fR.evencount.history beside it holds its history, once the studio has opened it.
.TP
\fI\(ti/.local/share/evencount/projects\fR
The studio's projects, where no other folder is named.
.TP
\fI\(ti/.local/share/evencount/stock.sqlite\fR
The stockroom.
.SH ENVIRONMENT
.TP
\fBXDG_DATA_HOME\fR
Stands for \fI\(ti/.local/share\fR in the names above.
.TP
\fBSOURCE_DATE_EPOCH\fR
Seconds since 1970: documents carry that date. Without it they carry none.
)";

}  // namespace

std::string man_page(const Command& program, const std::string& version) {
  std::string upper = program.name;
  std::transform(upper.begin(), upper.end(), upper.begin(), [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
  std::string page = fmt::format(".\\\" Written by {0} describe man\n.TH {1} 1 \"\" \"{0} {2}\" \"User Commands\"\n", program.name, upper, version);
  page += ".SH NAME\n" + roff(program.name) + " \\- " + roff(program.summary.substr(0, program.summary.find_last_not_of('.') + 1)) + "\n";
  page += ".SH SYNOPSIS\n" + bold(program.name) + " " + italic("verb") + " [" + italic("options") + "] [" + italic("arguments") + "]\n";
  page += ".SH DESCRIPTION\n" + roff(sentence(program.summary)) + "\n";
  for (const std::string& note : program.notes) page += ".PP\n" + roff(note) + "\n";
  page += ".SH OPTIONS\n";
  for (const Option& option : program.options) write_option(option, page);
  page += ".SH VERBS\n";
  for (const Command& verb : program.verbs) write_verb(verb, program.name, page);
  return page + std::string(files_and_more);
}

}  // namespace evencount::app::self
