#pragma once
/// A project's strand in its sizes: how it fits, what is cut and taken for each, and what does not hold.
///
/// Properties (tests/project/strung_sizes_test.cpp):
///  (1) what a size takes is every bead and finding of its pieces, extras of the outer cord and the closing with them, and all its cords;
///      forms and bands are not among it
///  (2) is_sound exactly where every size closes and nothing is found

#include <span>
#include <string>
#include <vector>

#include "project/strand.hpp"
#include "strand/cutting.hpp"
#include "strand/keeping.hpp"
#include "strand/two_cords.hpp"

namespace evencount::project {

/// Everything about one size.
struct StrungSize {
  strand::StrandFit fit;
  strand::TwoCords curve;
  std::vector<strand::CutCord> cords;
  std::vector<strand::Finding> findings;
};

struct StrungSizes {
  strand::Strung strung;
  double lean = 0;  ///< degrees that faces stand at
  std::vector<StrungSize> sizes;
};

/// One for each wearer, in order. The project must have a strand; `strung` is strung_of it.
/// Errors: those of the strand room.
[[nodiscard]] Result<StrungSizes> strung_sizes(const Project& project, const strand::Strung& strung,
                                               std::span<const strand::Wearer> wearers, bool allow_for_chain = false);

/// Every size closes and nothing is found.
[[nodiscard]] bool is_sound(const StrungSizes& sizes);

/// How many of each element a size takes.
[[nodiscard]] std::vector<std::int64_t> uses_of(const strand::Strung& strung, const StrungSize& size);

/// The wearer of a size: the named one, or the middle one of its sizes for an empty name. Errors: unknown_name.
[[nodiscard]] Result<strand::Wearer> wearer_of(const SavedStrand& saved, const std::string& size);

/// What stringing one piece in a size takes besides forms and bands. Nothing for a project without a strand.
/// Errors: those of strung_of, wearer_of and strung_sizes.
[[nodiscard]] Result<std::vector<OtherSupply>> strung_supplies(const Project& project, const std::string& size);

}  // namespace evencount::project
