#pragma once
/// The supply list of a project: beads off the plans, forms, thread and the rest.

#include <string>
#include <vector>

#include "materials/supplies.hpp"
#include "project/project.hpp"
#include "weave/thread_path.hpp"

namespace evencount::project {

/// A thing counted in pieces or in a unit.
struct CountedSupply {
  std::string name;
  double count = 0;
  std::string unit;
  bool operator==(const CountedSupply&) const = default;
};

/// The thread of one band.
struct BandThread {
  std::string band;
  weave::ThreadUse use;
  bool operator==(const BandThread&) const = default;
};

struct SupplyList {
  int kits = 1;
  materials::BeadSupplies beads;
  std::vector<CountedSupply> forms;  ///< one a copy of each band, by form
  std::string thread_name;
  Length thread;  ///< cut in all, tails in it, for all copies and kits
  std::vector<CountedSupply> findings;  ///< the project's own, then what is strung
  std::string size;                     ///< the wearer's that things are strung for; empty for a project without a strand
  std::vector<std::string> tools;  ///< the project's own, and the needle for the smallest hole in use
  bool operator==(const SupplyList&) const = default;
};

/// Everything is read off the plans, never off the charts.

/// The thread of one copy of each band, in order. Errors: those of plan_of and weave::thread_use, and unknown_name for
/// a bead that the project hasn't; each with the band's name.
[[nodiscard]] Result<std::vector<BandThread>> band_threads(const Project& project);

/// What `kits` pieces take, strung for a wearer's size: its name, or empty for the middle one.
/// Errors: those of strung_supplies, of band_threads and materials::bead_supplies; unknown_name for a chart's bead beyond the legend, or a
/// legend entry's size or a band's form that the project hasn't.
/// Property: the sum of the beads' counts == kits * the sum over bands of copies * cells that hold a bead.
[[nodiscard]] Result<SupplyList> supply_list(const Project& project, int kits = 1, const std::string& size = {});

}  // namespace evencount::project
