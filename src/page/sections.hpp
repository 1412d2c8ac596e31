#pragma once
/// The parts of a booklet, each in its own file. Private to this room.

#include <span>

#include "page/flow.hpp"
#include "project/supply_list.hpp"
#include "weave/moments.hpp"
#include "wording/words.hpp"

namespace evencount::page {

/// One band with all that its pages show, read off its plan.
struct BandSheet {
  const project::Band* band = nullptr;
  weave::Plan plan;
  wording::WordChart words;
  weave::ThreadUse thread;
  bead::Gauge gauge;
  std::vector<weave::Moment> steps;  ///< the moments drawn with this band: those that no band before it of its technique shows
  std::string steps_with;            ///< the name of the band with which the others are drawn; empty when there are none
};

/// What the sections share.
struct Subject {
  const project::Project& project;
  const BookletOptions& options;
  std::vector<BandSheet> bands;
  project::SupplyList supplies;
};

/// Errors: proof_failed with the first errors of the proof, if it has any; `what` is "a booklet".
[[nodiscard]] Result<Done> check_proof(const project::Project& project, std::string_view what);
/// Every band's sheet, and the supplies. Errors: those of project::supply_list. The project and the options must outlive it.
[[nodiscard]] Result<Subject> make_subject(const project::Project& project, const BookletOptions& options);

/// "8.1 mm (0.32 in)".
[[nodiscard]] std::string both_units(Length length);
/// "1,152".
[[nodiscard]] std::string grouped(std::int64_t count);
/// "1 band", "8 bands".
[[nodiscard]] std::string counted(std::int64_t count, std::string_view one, std::string_view many);
/// "1.52 m".
[[nodiscard]] std::string metres_text(Length length);
/// A band's width and its length, round or along: "8.1 mm (0.32 in) wide, 39.8 mm (1.57 in) round".
[[nodiscard]] std::string band_size(const BandSheet& sheet);
[[nodiscard]] std::int64_t beads_in(const weave::Plan& plan);
/// What stands below a band's name: its place among the bands, its size, its beads, its form.
[[nodiscard]] std::vector<std::string> band_facts(const Subject& subject, std::size_t index);
/// "Cut 2.1 m in 2 lengths, tails included: 1.5 m and 0.6 m. Begin a new length at row 41."
[[nodiscard]] std::string thread_note(const weave::ThreadUse& thread);
/// "2 × clasp", "1.2 m of cord".
[[nodiscard]] std::vector<std::string> counted_items(const std::vector<project::CountedSupply>& supplies);
/// What thread to have, in all and for each band.
[[nodiscard]] std::vector<std::string> thread_items(const Subject& subject);
/// The findings, and for which wearer's size things are strung.
[[nodiscard]] std::vector<std::string> finding_items(const Subject& subject);

/// What kinds of rows the bands have, so that the help speaks of nothing else.
struct RowsSeen {
  bool shifted = false;  ///< across, every second column half a bead lower
  bool along = false;    ///< rows run along the edge
  bool rounds = false;
  bool together = false;  ///< the first two are strung as one
  bool units = false;     ///< squares
  bool decreases = false; ///< places left out
};

[[nodiscard]] RowsSeen rows_seen(const Subject& subject);
/// How the words are read, and how rows are counted on the piece; the latter may be empty.
[[nodiscard]] std::string word_help(const RowsSeen& seen);
[[nodiscard]] std::string counting_help(const RowsSeen& seen);

/// How a finished piece is kept, and the usual cautions, each with its source.
[[nodiscard]] std::span<const std::string_view> care();
[[nodiscard]] std::span<const std::string_view> cautions();

/// A little bead as the charts show the legend's bead of that place, its left edge at x and its middle at y.
void put_swatch(Flow& flow, const Subject& subject, std::size_t bead, drawing::Point at);

void put_cover(Flow& flow, const Subject& subject);
void put_supplies(Flow& flow, const Subject& subject);
void put_reading_help(Flow& flow, const Subject& subject);
void put_band(Flow& flow, const Subject& subject, std::size_t index);
void put_closing(Flow& flow, const Subject& subject);

}  // namespace evencount::page
