#pragma once
/// The parts of a booklet, each in its own file. Private to this room.

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
/// A little bead as the charts show the legend's bead of that place, its left edge at x and its middle at y.
void put_swatch(Flow& flow, const Subject& subject, std::size_t bead, drawing::Point at);

void put_cover(Flow& flow, const Subject& subject);
void put_supplies(Flow& flow, const Subject& subject);
void put_reading_help(Flow& flow, const Subject& subject);
void put_band(Flow& flow, const Subject& subject, std::size_t index);
void put_closing(Flow& flow, const Subject& subject);

}  // namespace evencount::page
