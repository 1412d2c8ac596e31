#pragma once
/// Whether two beads that lie side by side can be told apart, and which bead of a stock would do better.
///
/// Properties (tests/proof/better_bead_test.cpp):
///  (1) apart(a, b) == apart(b, a)
///  (2) a better bead is told from every neighbour of the one it replaces; no other such bead of the stock is nearer to that one
///  (3) with it in the legend, the finding is gone, and no new one has come

#include <optional>
#include <span>
#include <string>

#include "colour/vision.hpp"
#include "materials/stock.hpp"
#include "project/neighbours.hpp"

namespace evencount::proof {

/// CIEDE2000 below which two neighbours can be taken for each other under a lamp: from memory, three times what the beads of one
/// tube differ by.
inline constexpr double least_difference = 6;
/// The same for what a colour-vision deficiency leaves of it, in a simulation of its full severity: from memory.
inline constexpr double least_seen_difference = 5;

/// Contrast ratio below which two beads look alike in grey print: from memory.
inline constexpr double least_contrast = 1.2;

struct Apart {
  double difference = 0;  ///< CIEDE2000
  /// The first deficiency, of protan, deutan and tritan, that leaves too little of it, and how much.
  std::optional<colour::Deficiency> lost_to;
  double left = 0;
  [[nodiscard]] bool enough() const { return difference >= least_difference && !lost_to; }
};
[[nodiscard]] Apart apart(colour::Rgb a, colour::Rgb b);

struct BetterBead {
  std::size_t replaces = 0;  ///< a place in the legend
  std::string code, name;    ///< of the stock's item
  colour::Rgb colour;
  double difference = 0;  ///< CIEDE2000 from the bead it replaces
  bool operator==(const BetterBead&) const = default;
};

/// For one of two entries of the legend, the nearest bead of its size that can be told from all its neighbours; the entry whose
/// replacement is nearer, of equals the second. None in the stock: nothing.
[[nodiscard]] std::optional<BetterBead> better_bead(const project::Project& project, const project::Neighbours& neighbours,
                                                    std::size_t first, std::size_t second,
                                                    std::span<const materials::StockedItem> stock);

}  // namespace evencount::proof
