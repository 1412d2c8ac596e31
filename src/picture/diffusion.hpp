#pragma once
/// Mixing beads so that a chart comes nearer to its picture at viewing distance (viewing.hpp), and never farther from it.
///
/// Error diffusion (after R. W. Floyd, L. Steinberg, "An adaptive algorithm for spatial grayscale", Proc. SID 17(2), 1976) in linear light,
/// row after row of the lattice and back and forth, gives each cell the bead nearest to it in CIEDE2000 once the errors handed on to
/// it are added. It is tried at several strengths. The best of these charts and of the given one is then improved cell by cell
/// (viewing_search.hpp), which lowers
///
///     mean CIEDE2000 at viewing distance + closeness * mean CIEDE2000 between a cell and its bead.
///
/// Properties (tests/picture/diffusion_test.cpp):
///  (1) viewing_after <= viewing_before, on any picture, lattice and assignment; both measured afresh by viewing_difference
///  (2) every cell takes a chosen bead, no bead is taken by more cells than its at_most, and a required bead that some cell took
///      is still taken by one
///  (3) a picture in the chosen colours stays as it is
///  (4) on the shifted lattice the weights handed on are the same to the left and to the right
/// The same input gives the same bits.

#include "picture/beading.hpp"

namespace evencount::picture {

struct DiffusionOptions {
  double closeness =
      0.3;         ///< >= 0; how much a cell's own colour counts. At 0 strong specks are mixed for little
  int rounds = 8;  ///< of going through the cells, at most; 0 for diffusion alone
};

struct Diffusion {
  std::vector<int> bead_of_cell;
  double strength = 0;  ///< share of the errors handed on where the improving began; 0 for the chart as given
  int changed = 0;      ///< cells with another bead than given
  double mean_before = 0, mean_after = 0;        ///< CIEDE2000 between a cell and its bead
  double viewing_before = 0, viewing_after = 0;  ///< the same at viewing distance
  RuleCheck rules;                               ///< of what came out
  bool operator==(const Diffusion&) const = default;
};

/// `choice` is what choose_stock gave for these cells and this stock; only its chosen and bead_of_cell are used.
///
/// Errors: those of check_lattice; wrong_size (cells, their beads and the lattice differ in number); out_of_range (an option; a
/// choice that does not fit the stock or its limits).
[[nodiscard]] Result<Diffusion> diffuse(const CellLattice& lattice, std::span<const colour::Rgb> cells,
                                        std::span<const StockColour> stock, const StockChoice& choice,
                                        const DiffusionOptions& options = {});

}  // namespace evencount::picture
