#include "picture/error_diffusion.hpp"

#include <algorithm>
#include <array>

#include "colour/difference.hpp"

namespace evencount::picture {
namespace {

using colour::Linear;

// R. W. Floyd, L. Steinberg 1976, in sixteenths.
constexpr std::array plain_shares{ErrorShare{1, 0, 7}, ErrorShare{-1, 2, 3}, ErrorShare{0, 2, 5},
                                  ErrorShare{1, 2, 1}};

// Ours, for columns shifted by half a step: docs/algorithms/picture_finish.md.
constexpr std::array shifted_shares{ErrorShare{2, 0, 1}, ErrorShare{1, 0, 3}, ErrorShare{-1, 1, 4},
                                    ErrorShare{1, 1, 4}, ErrorShare{0, 2, 1}};

class Diffuser {
 public:
  Diffuser(const Target& target, const Beading& given, double strength, std::span<const ErrorShare> shares)
      : target_(target),
        beading_(given),
        strength_(strength),
        shares_(shares),
        lattice_(target.viewing.lattice()),
        beads_(given.labs()),
        row_(static_cast<std::size_t>(given.places())),
        left_(static_cast<std::size_t>(given.places())),
        errors_(static_cast<std::size_t>(given.cells())),
        done_(static_cast<std::size_t>(given.cells()), false) {
    for (int place = 0; place < given.places(); ++place)
      left_[static_cast<std::size_t>(place)] = given.room(place);
    for (int cell = 0; cell < given.cells(); ++cell)
      // All beads are taken off, but those that are pinned.
      if (!given.is_pinned(cell)) ++left_[static_cast<std::size_t>(given.at(cell))];
  }

  Beading run() {
    bool forward = true;
    for (int along = 0; along < 2 * lattice_.edge; ++along) {
      bool any = false;
      for (int i = 0; i < lattice_.columns; ++i) {
        const int column = forward ? i : lattice_.columns - 1 - i;
        if (along % 2 != lattice_.grid.shift_of(column)) continue;
        any = true;
        give_bead(along / 2 * lattice_.columns + column);
        hand_on(column, along, forward ? 1 : -1);
      }
      if (any) forward = !forward;
    }
    return std::move(beading_);
  }

 private:
  void give_bead(int cell) {
    const auto c = static_cast<std::size_t>(cell);
    // What all beads together can't make up for piles up, but no higher than all the light there is.
    const auto wanted = [&](double light, double error) {
      return std::clamp(light + strength_ * error, -1.0, 2.0);
    };
    const Linear& light = target_.light[c];
    const Linear want{wanted(light.red, errors_[c].red), wanted(light.green, errors_[c].green),
                      wanted(light.blue, errors_[c].blue)};
    int best = beading_.at(cell);
    if (!beading_.is_pinned(cell)) {
      best = nearest(want);
      --left_[static_cast<std::size_t>(best)];
      // While later cells still have the beads they came with, a limit may seem passed; at the end none is.
      beading_.set(cell, best);
    }
    const Linear had = colour::to_linear(beading_.colour(best));
    errors_[c] = {want.red - had.red, want.green - had.green, want.blue - had.blue};
    done_[c] = true;
  }

  [[nodiscard]] int nearest(const Linear& want) {
    const auto shown = [](double light) { return std::clamp(light, 0.0, 1.0); };
    colour::ciede2000(colour::to_lab_d65(Linear{shown(want.red), shown(want.green), shown(want.blue)}),
                      beads_, row_);
    int best = -1;
    for (int place = 0; place < beading_.places(); ++place) {
      const auto p = static_cast<std::size_t>(place);
      if (left_[p] > 0 && (best < 0 || row_[p] < row_[static_cast<std::size_t>(best)])) best = place;
    }
    assert(best >= 0);  // there were enough before
    return best;
  }

  void hand_on(int column, int along, int way) {
    const Linear error = errors_[static_cast<std::size_t>(lattice_.cell_at(column, along))];
    std::array<std::pair<int, double>, 8> to;
    std::size_t count = 0;
    double sum = 0;
    for (const ErrorShare& share : shares_) {
      const int cell = lattice_.cell_at(column + way * share.ahead, along + share.along_halves);
      if (cell < 0 || done_[static_cast<std::size_t>(cell)]) continue;
      to[count++] = {cell, share.weight};
      sum += share.weight;
    }
    for (std::size_t i = 0; i < count; ++i) {
      Linear& other = errors_[static_cast<std::size_t>(to[i].first)];
      const double part = to[i].second / sum;
      other.red += part * error.red, other.green += part * error.green, other.blue += part * error.blue;
    }
  }

  const Target& target_;
  Beading beading_;
  double strength_;
  std::span<const ErrorShare> shares_;
  const CellLattice& lattice_;
  colour::LabColumns<colour::White::d65> beads_;
  std::vector<float> row_;      // by place: the difference to the cell in hand
  std::vector<int> left_;       // by place: how many more cells may take it
  std::vector<Linear> errors_;  // by cell: handed on to it, then its own
  std::vector<bool> done_;
};

}  // namespace

std::span<const ErrorShare> error_shares(bool shifted) {
  if (shifted) return shifted_shares;
  return plain_shares;
}

Beading diffused(const Target& target, const Beading& given, double strength,
                 std::span<const ErrorShare> shares) {
  return Diffuser(target, given, strength, shares).run();
}

}  // namespace evencount::picture
