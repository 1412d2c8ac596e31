#include "proof/place.hpp"

#include <algorithm>

#include "base/text.hpp"
#include "project/strand.hpp"
#include "proof/checks.hpp"

namespace evencount::proof {
namespace {

constexpr std::string_view two_of_a_name = "bands";  ///< the check

/// The number after a word, where it stands: "row " in "band Moon, row 14".
std::optional<int> number_after(std::string_view text, std::string_view word) {
  const auto at = text.find(word);
  if (at == std::string_view::npos) return std::nullopt;
  const auto digits = text.substr(at + word.size());
  const auto value = parse_integer(digits.substr(0, digits.find_first_not_of("0123456789")));
  if (!value || *value > chart::most_cells) return std::nullopt;
  return static_cast<int>(*value);
}

/// The longest of some names that a text begins with, what follows being a comma, a colon, or nothing; its length in the text.
struct Named {
  std::size_t index = 0, length = 0;
};
std::optional<Named> begins_with(std::string_view text, const std::vector<std::string>& names) {
  std::optional<Named> best;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (!text.starts_with(names[i]) || (best && names[i].size() <= best->length)) continue;
    const auto rest = text.substr(names[i].size());
    if (rest.empty() || rest[0] == ',' || rest[0] == ':') best = Named{i, names[i].size()};
  }
  return best;
}

std::vector<std::string> places_of_bands(const project::Project& project) {
  std::vector<std::string> places;
  for (const project::Band& band : project.bands) places.push_back(band_place(band));
  return places;
}

/// "band New moon, row 14", "band New moon, column 3, step 7", "band 2 in order".
bool read_band(const project::Project& project, const Finding& finding, Place& place) {
  const auto names = places_of_bands(project);
  if (const auto band = begins_with(finding.where, names)) {
    place.band = band->index;
    if (finding.check == two_of_a_name)
      for (std::size_t i = 0; i < names.size(); ++i)
        if (names[i] == names[band->index]) place.band = i;
    const auto rest = std::string_view(finding.where).substr(band->length);
    place.row = number_after(rest, "row ");
    const auto column = number_after(rest, "column "), step = number_after(rest, "step ");
    if (column && step) place.cell = chart::Cell{*column, *step};
    return true;
  }
  const auto order = number_after(finding.where, "band ");
  if (!order || !finding.where.ends_with(" in order") || *order < 1) return false;
  place.band = static_cast<std::size_t>(*order - 1);
  return true;
}

/// "legend C", "legend A and C".
bool read_letters(const project::Project& project, const std::string& where, Place& place) {
  constexpr std::string_view begin = "legend ", middle = " and ";
  if (!where.starts_with(begin)) return false;
  const auto text = std::string_view(where).substr(begin.size());
  const auto letters = project::letters_of(project);
  const auto known = [&](std::string_view letter) {
    return std::find(letters.begin(), letters.end(), letter) != letters.end();
  };
  const auto both = text.find(middle);
  if (both == std::string_view::npos) {
    if (known(text)) place.letters = {std::string(text)};
  } else if (known(text.substr(0, both)) && known(text.substr(both + middle.size()))) {
    place.letters = {std::string(text.substr(0, both)), std::string(text.substr(both + middle.size()))};
  }
  return true;
}

/// "strand, size M, Full moon (piece 12), before", "strand: line 2, column 10".
void read_strand(const project::Project& project, const std::string& where, Place& place) {
  constexpr std::string_view begin = "strand, size ";
  if (where.starts_with("strand: ")) {
    place.line = number_after(where, "line "), place.column = number_after(where, "column ");
    return;
  }
  if (!where.starts_with(begin) || !project.strand) return;
  std::vector<std::string> sizes;
  for (const strand::Wearer& wearer : project::wearers_of(*project.strand)) sizes.push_back(wearer.name);
  const auto text = std::string_view(where).substr(begin.size());
  const auto size = begins_with(text, sizes);
  if (!size) return;
  place.size = sizes[size->index];
  const auto rest = text.substr(size->length);
  place.piece = number_after(rest, " (piece ");
  const auto end = rest.find(" (piece ");
  if (end == std::string_view::npos || end < 2) return;
  const auto name = rest.substr(2, end - 2);  // behind the comma and its blank
  const auto band = std::find_if(project.bands.begin(), project.bands.end(),
                                 [&](const project::Band& one) { return one.name == name; });
  if (band != project.bands.end()) place.band = static_cast<std::size_t>(band - project.bands.begin());
}

}  // namespace

Place place_of(const project::Project& project, const Finding& finding) {
  Place place;
  if (read_band(project, finding, place) || read_letters(project, finding.where, place)) return place;
  read_strand(project, finding.where, place);
  return place;
}

}  // namespace evencount::proof
