#pragma once
/// What a person saves: the beads, the legend, the forms and the bands of one design.
///
/// A project carries everything that is needed to open it elsewhere, its own copy of the beads and threads it
/// uses included. It is plain data; charts refer to the legend by position, bands to beads and forms by id.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bead/bead_size.hpp"
#include "bead/finish.hpp"
#include "bead/gauge.hpp"
#include "bead/thread.hpp"
#include "chart/chart.hpp"
#include "colour/rgb.hpp"
#include "form/fit.hpp"
#include "form/form.hpp"
#include "materials/costing.hpp"
#include "strand/wearer.hpp"
#include "weave/plan.hpp"
#include "weave/thread_path.hpp"

namespace evencount::project {

/// Fields that this version does not know: name -> JSON text. They are written again when the project is
/// saved.
using UnknownFields = std::map<std::string, std::string>;

/// How a supply is sold.
struct Pack {
  Mass mass;
  std::optional<Money> price;
  UnknownFields unknown;
  bool operator==(const Pack&) const = default;
};

/// One entry of the legend: a bead that charts use.
struct LegendEntry {
  std::string letter;  ///< "A", "B" … "Z", "AA"; single in the legend
  std::string name;    ///< "midnight blue"
  colour::Rgb colour;
  bead::Finish finish = bead::Finish::opaque;
  std::string bead;  ///< the id of one of the project's bead sizes
  std::optional<Pack> pack;
  UnknownFields unknown;
  bool operator==(const LegendEntry&) const = default;
};

/// A form that bands go round.
struct FormEntry {
  std::string id;
  std::string name;  ///< as printed: "small carrier bead, smoke glass"
  form::Form form;
  UnknownFields unknown;
  bool operator==(const FormEntry&) const = default;
};

/// A gauge kept for later bands: whose hand, on which thread, with which of the project's beads.
struct SavedGauge {
  bead::NamedGauge named;
  UnknownFields gauge_unknown;
  UnknownFields unknown;
  bool operator==(const SavedGauge&) const = default;
};

struct Band {
  std::string name;
  std::string technique;            ///< the id of one of weave::techniques()
  std::string bead;                 ///< the id of one of the project's bead sizes
  std::optional<std::string> form;  ///< the id of one of the project's forms; none for a flat piece
  form::Use use = form::Use::fixed;
  weave::Closure closure = weave::Closure::zip;
  int begin_at = 0;                  ///< the lattice's row of a bezel's ring, weave::Making::begin_at
  std::optional<bead::Gauge> gauge;  ///< measured; the default gauge otherwise
  UnknownFields gauge_unknown;       ///< of `gauge`
  int copies = 1;
  std::string note;  ///< printed below the band's name
  std::string series_mark;  ///< what the band was when a series made it (series.hpp); empty for one that none did
  chart::Chart chart;
  UnknownFields unknown;
  bool operator==(const Band&) const = default;
};

/// Something else on the supply list: "clasp, 2-strand slide", 1. `unit` is empty for pieces.
struct OtherSupply {
  std::string name;
  double count = 1;
  std::string unit;
  UnknownFields unknown;
  bool operator==(const OtherSupply&) const = default;
};

/// How the designer reckons costs and prices.
struct Costing {
  materials::CostSettings settings;
  UnknownFields unknown;
  UnknownFields rule_unknown;  ///< of `settings.own_rule`
  bool operator==(const Costing&) const = default;
};

/// A wearer's size.
struct WornSize {
  std::string name;  ///< "M"
  Length measure;
  UnknownFields unknown;
  bool operator==(const WornSize&) const = default;
};

/// How the bands are strung. The layout is kept as its designer wrote it, comments and all; what is wrong in it is for project/strand.hpp
/// to say.
struct SavedStrand {
  std::string layout;  ///< in the language of strand/layout.hpp; line feeds
  strand::Worn worn = strand::Worn::wrist;
  Length ease;                      ///< of wrist or neck
  std::optional<double> lean;       ///< degrees that faces stand at, strand/two_cords.hpp; usual for what it is worn on where left out
  std::optional<Length> tolerance;  ///< half a spacer where left out
  std::vector<WornSize> sizes;      ///< the trade's where there are none
  UnknownFields unknown;
  bool operator==(const SavedStrand&) const = default;
};

struct Project {
  int format = 1;
  std::string title;
  std::string subtitle;
  std::string designer;
  std::string summary;        ///< a paragraph for the first page
  std::string finished_size;  ///< in the designer's words; what is computed stands beside it
  std::string terms;          ///< terms of use in the designer's words
  std::vector<bead::Size> beads;
  bead::Thread thread;
  weave::ThreadHabits thread_habits;
  double allowance = 0.10;  ///< share of beads added for culling and loss; from memory, no published figure
  std::vector<LegendEntry> legend;
  std::vector<FormEntry> forms;
  std::vector<SavedGauge> gauges;
  std::vector<Band> bands;
  std::optional<SavedStrand> strand;
  std::vector<OtherSupply> findings;
  std::vector<std::string> tools;
  std::vector<std::string> assembly;                  ///< the steps after the bands are made
  std::optional<Costing> costing;
  std::map<std::string, UnknownFields> bead_unknown;  ///< of `beads`, by id; none for a bead without any
  UnknownFields thread_unknown;                       ///< of `thread`
  UnknownFields unknown;
  bool operator==(const Project&) const = default;
};

inline constexpr int newest_format = 1;
inline constexpr int most_bands = 1'000;
inline constexpr int most_legend_entries = 1'000;
inline constexpr int most_copies = 10'000;
inline constexpr int most_entries = 1'000;  ///< of every other list: beads, forms, findings, tools, assembly
/// In all bands together: 20 MB of charts. A line of runs is far shorter than the beads it stands for, so that a small
/// file could ask for any amount of memory otherwise.
inline constexpr int most_cells_in_all = 10'000'000;
inline constexpr int most_layout_lines = 2'000;
inline constexpr std::size_t longest_text = 20'000;  ///< bytes in one text field

[[nodiscard]] const bead::Size* find_bead(const Project& project, std::string_view id);
[[nodiscard]] const FormEntry* find_form(const Project& project, std::string_view id);
/// Errors: unknown_name (the message lists the bands).
[[nodiscard]] Result<Band> find_band(const Project& project, std::string_view name);

/// The legend's letters, by position.
[[nodiscard]] std::vector<std::string> letters_of(const Project& project);

/// The gauge a band is worked at: its own, or the first saved one for its bead on the project's thread, or the default.
/// The band's bead must exist.
[[nodiscard]] bead::Gauge gauge_of(const Project& project, const Band& band);

/// The plan of a band. Errors: those of weave::make_plan, with the band's name in `where`.
[[nodiscard]] Result<weave::Plan> plan_of(const Band& band);

}  // namespace evencount::project
