#pragma once
/// What `string` says: a strand in its sizes.

#include <vector>

#include "app/console.hpp"
#include "project/strand.hpp"
#include "strand/cutting.hpp"
#include "strand/keeping.hpp"
#include "strand/two_cords.hpp"

namespace evencount::app {

/// Everything about one size.
struct StrungSize {
  strand::StrandFit fit;
  strand::TwoCords curve;
  std::vector<strand::CutCord> cords;
  std::vector<strand::Finding> findings;
};

struct StringReport {
  std::string title;
  strand::Strung strung;
  double lean = 0;
  std::vector<StrungSize> sizes;
};

/// Errors: those of the strand room.
[[nodiscard]] Result<StringReport> report_string(const project::Project& project,
                                                 const strand::Strung& strung,
                                                 const std::vector<strand::Wearer>& wearers,
                                                 bool allow_for_chain);

/// Every size closes and nothing is found.
[[nodiscard]] bool is_sound(const StringReport& report);

void print_string(const StringReport& report, bool json, const Console& console);

}  // namespace evencount::app
