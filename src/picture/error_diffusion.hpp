#pragma once
/// Error diffusion over a lattice. This room's own.

#include "picture/viewing_search.hpp"

namespace evencount::picture {

/// Where a cell's error goes: so many columns ahead (as the row runs) and half steps further on.
struct ErrorShare {
  int ahead, along_halves;
  double weight;
};

/// Shares of a plain lattice and of a shifted one, before those that no cell waiting lies at are dropped and the rest scaled to 1.
[[nodiscard]] std::span<const ErrorShare> error_shares(bool shifted);

/// Cells of one row, at one place along, in order of columns; row after row.
/// `strength` of each error is handed on, 0 < strength <= 1.
[[nodiscard]] Beading diffused(const Target& target, const Beading& given, double strength,
                               std::span<const ErrorShare> shares);

}  // namespace evencount::picture
