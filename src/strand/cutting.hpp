#pragma once
/// The cords of a strand: how many lengths, and how long each is cut.

#include <vector>

#include "strand/strung.hpp"

namespace evencount::strand {

/// One length of cord: from the closing or a joiner to the next.
struct CutCord {
  int cord = 1;  ///< 1, or 2 for the outer of two
  CordLength length;
  bool operator==(const CutCord&) const = default;
};

/// In order along the strand, the inner of two cords first. `outer_longer` is what two_cords gives the outer
/// cord more, shared among the
/// stretches of two cords by their lengths. Ends next to a crimp or its cover count as crimped, others as knotted.
/// Errors: those of cord_to_cut but a length of 0, which is left out.
[[nodiscard]] Result<std::vector<CutCord>> cords_to_cut(const Strung& strung, const Counts& counts,
                                                        Length outer_longer = {});

}  // namespace evencount::strand
