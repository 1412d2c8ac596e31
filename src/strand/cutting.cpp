#include "strand/cutting.hpp"

#include <algorithm>

namespace evencount::strand {
namespace {

/// What lies between two ends of cord.
struct Stretch {
  int cords = 1;
  int knots = 0;  ///< tied within, not at the ends
  std::int64_t length_um = 0;
  bool crimped = false;
};

std::vector<Stretch> stretches_of(const Strung& strung, const Counts& counts) {
  const std::vector<Piece> pieces = pieces_of(strung, counts);
  const std::vector<std::int64_t> starts = piece_starts_um(strung, counts);
  std::vector<Stretch> stretches{{}};
  const auto kind = [&](std::size_t i) {
    return strung.elements[static_cast<std::size_t>(pieces[i].element)].kind;
  };
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (kind(i) == ElementKind::joiner) {
      stretches.push_back({});
      continue;
    }
    Stretch& now = stretches.back();
    now.cords = pieces[i].cords;
    now.length_um += starts[i + 1] - starts[i];
    now.crimped = now.crimped || kind(i) == ElementKind::crimp || kind(i) == ElementKind::cover;
    const bool at_end = i == 0 || i + 1 == pieces.size() || kind(i - 1) == ElementKind::joiner ||
                        kind(i + 1) == ElementKind::joiner;
    now.knots += kind(i) == ElementKind::knot && !at_end;
  }
  return stretches;
}

}  // namespace

Result<std::vector<CutCord>> cords_to_cut(const Strung& strung, const Counts& counts, Length outer_longer) {
  const std::vector<Stretch> stretches = stretches_of(strung, counts);
  std::int64_t double_um = 0;
  for (const Stretch& stretch : stretches)
    if (stretch.cords == 2) double_um += stretch.length_um;
  std::vector<CutCord> cords;
  for (const Stretch& stretch : stretches) {
    if (stretch.length_um == 0) continue;
    for (int cord = 1; cord <= stretch.cords; ++cord) {
      Length strung_over = millimetres(static_cast<double>(stretch.length_um) / 1000);
      if (cord == 2)
        strung_over = strung_over + outer_longer * (static_cast<double>(stretch.length_um) /
                                                    static_cast<double>(double_um));
      auto length = cord_to_cut(strung.cord, strung_over,
                                stretch.crimped ? EndFinish::crimped : EndFinish::knotted, stretch.knots);
      if (!length) return length.problem();
      cords.push_back({cord, std::move(*length)});
    }
  }
  return cords;
}

}  // namespace evencount::strand
