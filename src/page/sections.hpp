#pragma once
/// The parts of a booklet, each in its own file. Private to this room.

#include <span>

#include "language/language.hpp"
#include "page/booklet.hpp"
#include "page/flow.hpp"
#include "project/strung_sizes.hpp"
#include "project/supply_list.hpp"
#include "weave/moments.hpp"
#include "wording/words.hpp"

namespace evencount::page {

/// The pages of a booklet, before they are written. Their last one says that the file was read back, so nobody gets them but
/// from print_booklet, which reads it. Errors: proof_failed, missing_font, and those of make_subject.
[[nodiscard]] Result<Booklet> make_booklet(const project::Project& project, const BookletOptions& options = {});

/// One band with all that its pages show, read off its plan.
struct BandSheet {
  const project::Band* band = nullptr;
  bool left_handed = false;
  /// The band whose plan this is: for the left hand its chart is mirrored, and what is drawn of it is shown in a mirror.
  project::Band worked;
  weave::Plan plan;
  wording::WordChart words;  ///< of the plan as it is seen: for the left hand left and right have changed places
  weave::ThreadUse thread;
  bead::Gauge gauge;
  std::vector<weave::Moment> steps;  ///< the moments drawn with this band: those that no band before it of its technique shows
  std::optional<std::size_t> steps_with;  ///< the band with which the others are drawn
};

/// What the sections share.
struct Subject {
  const project::Project& project;
  const BookletOptions& options;
  const language::Language& language;
  std::vector<BandSheet> bands;
  project::SupplyList supplies;
  std::optional<project::StrungSizes> strung;  ///< in every size; none for a project without a strand
};

/// Errors: proof_failed with the first errors of the proof, if it has any; `what` is "a booklet". The fonts are asked for what is
/// `printed` in them. missing_font.
[[nodiscard]] Result<Done> check_proof(const project::Project& project, std::string_view what, bool printed = true);
/// Every band's sheet, and the supplies. Errors: those of make_hand and project::supply_list; bad_plan where counts disagree
/// (check_counts). The project and the options must outlive it.
[[nodiscard]] Result<Subject> make_subject(const project::Project& project, const BookletOptions& options);
/// The pages; the proof has been asked. Errors: missing_font.
[[nodiscard]] Result<Booklet> lay_out(const Subject& subject);
/// The beads of every row in its words, of every colour off the plans, of the supplies and the cells of the charts are the same
/// numbers. Errors: bad_plan (a fault of ours that must not reach a maker).
[[nodiscard]] Result<Done> check_counts(const Subject& subject);
[[nodiscard]] std::int64_t beads_in_all(const Subject& subject);

/// "1.52 m".
[[nodiscard]] std::string metres_text(const language::Language& language, Length length);
/// "11/0 cylinder bead".
[[nodiscard]] std::string bead_name(const language::Language& language, const bead::Size& size);
/// What a supply that this library named is called in the language; the designer's own words as they are.
[[nodiscard]] std::string supply_name(const language::Language& language, std::string_view name);
/// A band's width and its length, round or along: "8.1 mm (0.32 in) wide, 39.8 mm (1.57 in) round".
[[nodiscard]] std::string band_size(const language::Language& language, const BandSheet& sheet);
[[nodiscard]] std::int64_t beads_in(const weave::Plan& plan);
/// What stands below a band's rows: how many they are, and their beads in all.
[[nodiscard]] std::string sum_of_rows(const language::Language& language, const weave::Plan& plan);
/// What stands below a band's name: its place among the bands, its size, its beads, its form.
[[nodiscard]] std::vector<std::string> band_facts(const Subject& subject, std::size_t index);
/// "Cut 2.1 m in 2 lengths, tails included: 1.5 m and 0.6 m. Begin a new length at row 41."
[[nodiscard]] std::string thread_note(const language::Language& language, const weave::ThreadUse& thread);
/// "2 × clasp", "1.2 m of cord".
[[nodiscard]] std::vector<std::string> counted_items(const language::Language& language,
                                                     const std::vector<project::CountedSupply>& supplies);
/// What thread to have, in all and for each band.
[[nodiscard]] std::vector<std::string> thread_items(const Subject& subject);
/// The findings, and for which wearer's size things are strung.
[[nodiscard]] std::vector<std::string> finding_items(const Subject& subject);
/// The names of the techniques in use, each once, in the order of the bands.
[[nodiscard]] std::vector<std::string> technique_names(const Subject& subject);

/// What kinds of rows the bands have, so that the help speaks of nothing else.
struct RowsSeen {
  bool shifted = false;  ///< across, every second column half a bead lower
  bool along = false;    ///< rows run along the edge
  bool rounds = false;
  bool together = false;  ///< the first two are strung as one
  bool units = false;     ///< squares
  bool decreases = false; ///< places left out
  bool faces = false;     ///< the chart marks a form's faces and the seam
};

[[nodiscard]] RowsSeen rows_seen(const Subject& subject);
/// How the words are read, and how rows are counted on the piece; the latter may be empty.
[[nodiscard]] std::string word_help(const language::Language& language, const RowsSeen& seen, bool with_counts);
[[nodiscard]] std::string counting_help(const language::Language& language, const RowsSeen& seen);

/// How a finished piece is kept, and the usual cautions.
[[nodiscard]] std::span<const language::Text> care();
[[nodiscard]] std::span<const language::Text> cautions();

/// Whether a band's chart has marks of its form's faces.
[[nodiscard]] bool has_faces(const project::Project& project, const project::Band& band);

/// The name of a band's place in the document, to which links lead.
[[nodiscard]] std::string band_place(std::size_t index);

/// A little bead as the charts show the legend's bead of that place, its left edge at x and its middle at y.
void put_swatch(Flow& flow, const Subject& subject, std::size_t bead, drawing::Point at);

/// A heading with room below it for a few lines, after a blank of `before_mm` unless it heads a page.
void put_heading(Flow& flow, std::string_view heading, const Style& style, double before_mm);
/// How closely texts and lists are set.
struct Spacing {
  Style body = style::body;
  double before_heading_mm = 6, after_point_mm = 1, after_step_mm = 2.2;
};
inline constexpr Spacing usual_spacing{};
/// For a text that would leave a scrap on a page of its own.
inline constexpr Spacing close_spacing{{{drawing::TextRole::body, 11}, 4.9}, 4.2, 0.4, 1.2};

/// Numbered and unnumbered lists.
void put_numbered(Flow& flow, const std::vector<std::string>& steps, const Spacing& spacing = usual_spacing);
void put_points(Flow& flow, const std::vector<std::string>& points, const Spacing& spacing = usual_spacing);

/// A line of the contents whose page number is written when it is known.
struct ContentsLine {
  std::string title;
  std::string place;
  std::size_t page = 0;  ///< from 0
};

void put_cover(Flow& flow, const Subject& subject);
void put_supplies(Flow& flow, const Subject& subject);
void put_reading_help(Flow& flow, const Subject& subject);
void put_band(Flow& flow, const Subject& subject, std::size_t index);
/// Mounting, stringing, the table of sizes: as far as the project has them.
void put_mounting(Flow& flow, const Subject& subject);
void put_stringing(Flow& flow, const Subject& subject);
void put_closing(Flow& flow, const Subject& subject);

}  // namespace evencount::page
