#pragma once
/// A set of bands from one template and a table: a numeral or words on one face, a motif on the other.
///
/// Every line of the table makes a band that is the template's but for its name, what is drawn on its faces, its colours, note and
/// copies. The faces of a band that closes round a form are those of form::faces; the front of any other is all of it, and it has no
/// back, unless steps are given. A motif stands in the middle of its face, a text in the middle over it; then the line's colours take
/// the place of letters, all at once, so that two can change places.
///
/// A band carries a mark of what it was when it was made. When the same series is made again onto its project, bands whose mark still
/// holds are replaced, those that were edited since (or were made by hand) are kept.
///
/// Properties (tests/project/series_test.cpp):
///  (1) every band made can be stitched, and differs from the template's chart only on its faces and in its colours
///  (2) a bad line changes nothing of what the others make
///  (3) made again from the same table onto its own result, nothing changes; from another, only bands whose mark holds do
///  (4) no band of the project that the table doesn't name is touched

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "picture/lettering.hpp"
#include "project/motif.hpp"
#include "project/project.hpp"
#include "project/series_table.hpp"

namespace evencount::project {

struct SeriesOptions {
  std::optional<std::string> band;  ///< the template's band; the only one if left out
  std::string letter = "B";         ///< of the texts, where a line has none of its own
  picture::LetteringStyle style;
  std::optional<StepSpan> front, back;  ///< instead of the faces of its form
  bool replace_edited = false;
};

/// Motif texts by the name that the table gives them, or why one can't be had.
using MotifTexts = std::map<std::string, Result<std::string>>;

enum class SeriesOutcome {
  made,      ///< a new band
  replaced,  ///< one of this name was as a series had made it
  same,      ///< it is there already
  kept,      ///< one of this name was edited since, or made by hand: it is as it was
};
[[nodiscard]] std::string_view outcome_name(SeriesOutcome outcome);

struct SeriesBand {
  int line = 0;
  std::string name;
  SeriesOutcome outcome = SeriesOutcome::made;
  bool operator==(const SeriesBand&) const = default;
};

struct Series {
  Project project;
  std::vector<SeriesBand> bands;     ///< one for each good line
  std::vector<Problem> problems;     ///< those of the table and of its lines, by line
  std::vector<std::string> no_line;  ///< bands with a mark that the table has no good line for (any more)
};

/// `onto`: the project that the bands are put into, behind its own; none for one like the template's without its bands. The template's
/// beads, forms and letters are added to it.
/// Errors of the whole: unknown_name (a band or letter that there is not), bad_usage (several bands and none named), out_of_range
/// (steps outside the chart; too many bands or letters), duplicate_name (a letter, bead or form means something else in `onto`), those
/// of form::faces.
/// Of single lines, with line and column: unknown_name (a letter), wrong_size (no back; a motif or text too large for its face), those of
/// picture::write_text, of motifs and of plan_of.
[[nodiscard]] Result<Series> make_series(const Project& source, const SeriesTable& table,
                                         const MotifTexts& motifs, const SeriesOptions& options,
                                         const std::optional<Project>& onto = {});

/// Every motif that a table names.
[[nodiscard]] std::vector<std::string> motifs_of(const SeriesTable& table);

/// The mark of a band as it is: 16 hexadecimal digits over all that makes it, its name and mark left out.
[[nodiscard]] std::string mark_of(const Project& project, const Band& band);

}  // namespace evencount::project
