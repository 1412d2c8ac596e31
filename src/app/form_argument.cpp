#include "app/form_argument.hpp"

#include <cctype>
#include <filesystem>

#include "app/files.hpp"
#include "base/text.hpp"

namespace evencount::app {
namespace {

constexpr std::string_view outline_prefix = "outline:", length_setting = "length=";

/// A name for the form from its file's: letters, digits, '-' and '_'.
std::string outline_name(const std::string& path) {
  std::string name = std::filesystem::path(path).stem().string();
  for (char& c : name)
    if (std::isalnum(static_cast<unsigned char>(c)) == 0 && c != '-' && c != '_') c = '-';
  constexpr std::size_t longest = 60;
  return name.substr(0, longest);
}

Result<form::Form> outline_from_file(const std::string& notation, form::Dents dents) {
  std::string path = notation.substr(outline_prefix.size());
  std::optional<Length> length;
  if (const auto comma = path.rfind(','); comma != std::string::npos) {
    const std::string setting(trim(path.substr(comma + 1)));
    if (setting.starts_with(length_setting)) {
      const auto parsed = parse_length(setting.substr(length_setting.size()));
      if (!parsed) return parsed.problem().within("length of the form");
      length = *parsed;
      path.erase(comma);
    }
  }
  const auto text = read_file(path);
  if (!text) return text.problem();
  const auto points = form::parse_outline_csv(*text);
  if (!points) return points.problem().within(path);
  auto form = form::form_from_outline(outline_name(path), *points, length, dents);
  if (!form) return form.problem().within(path);
  return form;
}

}  // namespace

Result<form::Form> form_argument(const std::string& notation, form::Dents dents) {
  if (notation.starts_with(outline_prefix)) return outline_from_file(notation, dents);
  return form::parse_form(notation);
}

}  // namespace evencount::app
