#pragma once
/// A picture whose cells have beads, and which of them may be exchanged under the stock's rules. What finishing a picture starts from.

#include <limits>
#include <span>
#include <vector>

#include "colour/lab.hpp"
#include "picture/cell_lattice.hpp"
#include "picture/stock_choice.hpp"

namespace evencount::picture {

/// What an assignment makes of the stock's rules, counted afresh.
struct RuleCheck {
  std::vector<int> over_limit;       ///< beads that more cells take than their at_most
  std::vector<int> required_unused;  ///< chosen beads that are required and that no cell takes
  bool operator==(const RuleCheck&) const = default;
};

[[nodiscard]] RuleCheck check_rules(std::span<const StockColour> stock, std::span<const int> chosen,
                                    std::span<const int> bead_of_cell);

/// Beads of cells by their place among the chosen; this room's own.
///
/// A bead that is required and that some cell takes keeps one: of its cells the one that would lose most by another bead is
/// *pinned* and never changes.
class Beading {
 public:
  /// Errors: those of check_lattice; wrong_size (cells, their beads and the lattice differ in number); out_of_range (a bead that
  /// is not in the stock, a cell's bead that is not among the chosen, or is taken by more cells than its at_most).
  static Result<Beading> make(const CellLattice& lattice, std::span<const colour::Rgb> cells,
                              std::span<const StockColour> stock, const StockChoice& choice);

  [[nodiscard]] int cells() const { return static_cast<int>(place_.size()); }
  [[nodiscard]] int places() const { return static_cast<int>(chosen_.size()); }
  [[nodiscard]] colour::Rgb colour(int place) const { return colours_[static_cast<std::size_t>(place)]; }
  [[nodiscard]] const std::vector<colour::LabD65>& labs() const { return labs_; }

  [[nodiscard]] int at(int cell) const { return place_[static_cast<std::size_t>(cell)]; }
  /// CIEDE2000 between a cell and a bead.
  [[nodiscard]] double difference(int cell, int place) const {
    return differences_[static_cast<std::size_t>(cell) * chosen_.size() + static_cast<std::size_t>(place)];
  }
  [[nodiscard]] double difference(int cell) const { return difference(cell, at(cell)); }
  /// Mean over the cells.
  [[nodiscard]] double mean() const;

  [[nodiscard]] bool is_pinned(int cell) const { return pinned_[static_cast<std::size_t>(cell)]; }
  /// How many more cells may take a bead.
  [[nodiscard]] int room(int place) const {
    return most_[static_cast<std::size_t>(place)] - used_[static_cast<std::size_t>(place)];
  }
  [[nodiscard]] bool is_limited() const { return limited_; }

  /// Gives a cell another bead. Not for pinned cells; limits are the caller's to keep.
  void set(int cell, int place) {
    --used_[static_cast<std::size_t>(at(cell))], ++used_[static_cast<std::size_t>(place)];
    place_[static_cast<std::size_t>(cell)] = place;
  }
  /// How many cells have another bead in `other`.
  [[nodiscard]] int changes(const Beading& other) const;
  /// As indices of the stock.
  [[nodiscard]] std::vector<int> bead_of_cell() const;

 private:
  Beading() = default;
  void fill_differences(std::span<const colour::Rgb> cells);
  void pin_required(std::span<const StockColour> stock);

  std::vector<int> chosen_;
  std::vector<colour::Rgb> colours_;
  std::vector<colour::LabD65> labs_;
  std::vector<int> place_;          // by cell
  std::vector<float> differences_;  // by cell and place
  std::vector<int> used_, most_;    // by place
  std::vector<bool> pinned_;        // by cell
  bool limited_ = false;
};

}  // namespace evencount::picture
