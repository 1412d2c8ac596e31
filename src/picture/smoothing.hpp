#pragma once
/// Taking out beads that stand alone, and evening ragged borders between colours, while outlines stay.
///
/// First the assignment goes to a low of
///
///     sum over the cells of CIEDE2000 to their bead + strength * sum over touching cells with different beads of w,
///     w = 1 / (1 + (d / outline)^2),  d = CIEDE2000 between the two cells of the picture,
///
/// by graph cuts (Y. Boykov, O. Veksler, R. Zabih, "Fast approximate energy minimization via graph cuts", IEEE TPAMI 23(11), 2001): for one bead
/// after the other the best of all sets of cells that could take it. What no such move lowers is within twice the least there is.
/// Then single beads that still stand alone are joined to a neighbour, or a neighbour to them, the cheapest first, as long as
/// the mean CIEDE2000 has grown by no more than `most_loss`.
///
/// Properties (tests/picture/smoothing_test.cpp):
///  (1) the sum above never rises; after the first part no move for one bead lowers it (tried out on small charts)
///  (2) every cell takes a chosen bead, no bead is taken by more cells than its at_most, and a required bead that some cell took
///      is still taken by one
///  (3) the second part never leaves more beads alone than it found, and keeps to most_loss
///  (4) strength 0 and most_loss 0 change nothing where every cell has its nearest bead
/// The same input gives the same bits: costs are whole numbers of 2^-16.

#include "picture/beading.hpp"

namespace evencount::picture {

struct SmoothingOptions {
  double strength = 0.25;  ///< >= 0; in CIEDE2000
  double outline = 8;      ///< > 0; a difference in the picture at which a border costs half, in CIEDE2000
  double most_loss =
      0.01;  ///< >= 0; of the mean CIEDE2000 as given; keeps the second part from doing more, not the first
};

struct Smoothing {
  std::vector<int> bead_of_cell;
  int changed = 0;                              ///< cells with another bead than given
  double mean_before = 0, mean_after = 0;       ///< CIEDE2000 between a cell and its bead
  int isolated_before = 0, isolated_after = 0;  ///< as count_isolated has it
  int borders_before = 0, borders_after = 0;    ///< touching cells with different beads
  RuleCheck rules;                              ///< of what came out
  bool operator==(const Smoothing&) const = default;
};

/// `choice` is what choose_stock gave for these cells and this stock; only its chosen and bead_of_cell are used.
///
/// Errors: those of check_lattice; wrong_size (cells, their beads and the lattice differ in number); out_of_range (an option; a
/// choice that does not fit the stock or its limits).
[[nodiscard]] Result<Smoothing> smooth(const CellLattice& lattice, std::span<const colour::Rgb> cells,
                                       std::span<const StockColour> stock, const StockChoice& choice,
                                       const SmoothingOptions& options = {});

/// Cells that touch others, none of which has their bead. The lattice must be sound and have as many cells.
[[nodiscard]] int count_isolated(const CellLattice& lattice, std::span<const int> bead_of_cell);

}  // namespace evencount::picture
