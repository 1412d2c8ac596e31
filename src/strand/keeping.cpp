#include "strand/keeping.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "base/text.hpp"
#include "bead/thread.hpp"
#include "strand/band_stops.hpp"

namespace evencount::strand {
namespace {

constexpr std::array<std::string_view, 8> names{
    "band_not_held", "stop_only_catches",  "stops_push_apart", "cord_does_not_pass",
    "knot_slips",    "holes_apart_differ", "end_not_fast",     "wire_not_closed"};
/// The share of a hole that round things side by side can fill: that of bead::passes_that_fit.
constexpr double filled_share = 0.7;

std::string mm(Length length) {
  return plain_number(length.mm()) + " mm";
}
/// Rounded to a hundredth, away from what would not do.
Length rounded_up(Length length) {
  return millimetres(std::ceil(100 * length.mm() - 1e-6) / 100);
}
Length rounded_down(Length length) {
  return millimetres(std::floor(100 * length.mm() + 1e-6) / 100);
}

/// Everything that the size of a stop depends on is alike: the bands of one piece mostly sit on equal forms.
bool need_equal_stops(const Element& a, const Element& b) {
  if (!a.carrier || !b.carrier || !a.carrier->band || !b.carrier->band) return false;
  const form::SlidingBand &one = *a.carrier->band, &other = *b.carrier->band;
  return a.holes == b.holes && a.apart == b.apart && a.hole == b.hole && a.carrier->form == b.carrier->form &&
         one.bead == other.bead && one.gauge == other.gauge && one.edge == other.edge &&
         one.columns == other.columns;
}

class Inspection {
 public:
  Inspection(const Strung& strung, const Counts& counts)
      : strung_(strung),
        pieces_(pieces_of(strung, counts)),
        passes_(cord_passes(strung, counts)),
        sizes_(strung.elements.size()) {}

  Result<std::vector<Finding>> run() {
    for (int i = 0; i < static_cast<int>(pieces_.size()); ++i) {
      check_holes(i);
      check_knot(i);
      check_neighbours(i);
      if (auto problem = check_band(i)) return *problem;
    }
    check_ends();
    return std::move(findings_);
  }

 private:
  [[nodiscard]] const Piece& piece(int i) const { return pieces_[static_cast<std::size_t>(i)]; }
  [[nodiscard]] const Element& element(int i) const {
    return strung_.elements[static_cast<std::size_t>(piece(i).element)];
  }
  [[nodiscard]] bool exists(int i) const { return i >= 0 && i < static_cast<int>(pieces_.size()); }
  [[nodiscard]] std::string place(int i) const {
    return fmt::format("{} (piece {})", element(i).name, i + 1);
  }

  void add(FindingCode code, int i, std::string where, std::string found, std::string expected,
           std::string mend, Length size = {}) {
    findings_.push_back(
        {code, i, std::move(where), std::move(found), std::move(expected), std::move(mend), size});
  }

  void check_hole(int index, const Element& element, int passes, const std::string& where) {
    if (element.holes == 0) return;
    const Length cord = strung_.cord.diameter;
    const int fit = bead::passes_that_fit(element.hole, cord, cord);
    if (fit >= passes) return;
    const Length hole = rounded_up(smallest_hole_for(cord, passes)),
                 thinner = rounded_down(thickest_for(element.hole, passes));
    const std::string times = passes == 1 ? "once" : passes == 2 ? "twice" : fmt::format("{} times", passes);
    add(FindingCode::cord_does_not_pass, index, where,
        fmt::format("a cord of {} goes {} through its hole of {}", mm(cord),
                    fit == 0   ? "not at all"
                    : fit == 1 ? "once"
                               : fmt::format("{} times", fit),
                    mm(element.hole)),
        fmt::format("{}", times),
        fmt::format("take a cord of {} or thinner, or a hole of {} or more", mm(thinner), mm(hole)), hole);
  }
  void check_holes(int i) {
    const auto same = [&](int j) {
      return piece(j).element == piece(i).element &&
             passes_[static_cast<std::size_t>(j)] == passes_[static_cast<std::size_t>(i)];
    };
    for (int j = 0; j < i; ++j)
      if (same(j)) return;  // said already
    check_hole(i, element(i), passes_[static_cast<std::size_t>(i)], place(i));
  }

  void check_knot(int i) {
    if (element(i).kind != ElementKind::knot) return;
    for (const int beside : {i - 1, i + 1}) {
      if (!exists(beside) || element(beside).holes == 0 || element(i).across > element(beside).hole) continue;
      const Length size = rounded_up(element(beside).hole + millimetres(0.1));
      add(FindingCode::knot_slips, i, place(i),
          fmt::format("{} across, beside a hole of {}", mm(element(i).across), mm(element(beside).hole)),
          "a knot that is wider than the hole",
          fmt::format("tie it {} across, or put a bead with a smaller hole beside it", mm(size)), size);
      return;
    }
  }

  /// Beads next to something with two holes, and two such things next to each other.
  void check_neighbours(int i) {
    if (piece(i).cords != 2) return;
    for (const int beside : {i - 1, i + 1}) {
      if (!exists(beside) || piece(beside).cords != 2 || element(beside).holes != 2) continue;
      const Length apart = element(beside).apart;
      if (beads_of(strung_, piece(i)) == 2 && element(i).across > apart) {
        add(FindingCode::stops_push_apart, i, place(i),
            fmt::format("{} across on cords {} apart", mm(element(i).across), mm(apart)),
            "room for two side by side",
            fmt::format("string one on both cords together, or two of {} or less", mm(apart)), apart);
        return;
      }
    }
    constexpr double most_apart =
        0.2;  // of the distance, from memory: cords that splay more hold the bars askew
    for (int j = i + 1; exists(j); ++j) {
      if (element(j).holes != 2 || piece(j).cords != 2) continue;
      if (element(i).holes == 2 && j == i + 1 &&
          std::abs(element(i).apart / element(j).apart - 1) > most_apart)
        add(FindingCode::holes_apart_differ, i, place(i),
            fmt::format("holes {} apart, next to {} with {}", mm(element(i).apart), element(j).name,
                        mm(element(j).apart)),
            "holes about as far apart", "string a few beads on each cord between the two", element(j).apart);
      return;
    }
  }

  std::optional<Problem> check_band(int i) {
    const Element& held = element(i);
    if (!held.carrier || !held.carrier->band || held.carrier->use != form::Use::sliding) return std::nullopt;
    auto& sizes = sizes_[static_cast<std::size_t>(piece(i).element)];
    for (std::size_t known = 0; known < sizes_.size() && !sizes; ++known)
      if (sizes_[known] && need_equal_stops(strung_.elements[known], held)) sizes = sizes_[known];
    if (!sizes) {
      const auto asked = stop_sizes(held);
      if (!asked) return asked.problem().within(place(i));
      sizes = *asked;
    }
    for (const int direction : {-1, 1})
      add_stop(i, direction, band_stop(strung_, pieces_, i, direction, *sizes));
    return std::nullopt;
  }

  void add_stop(int i, int direction, const BandStop& stop) {
    if (stop.holds) return;
    const std::string where = place(i) + (direction < 0 ? ", before" : ", after");
    const FindingCode code = stop.catches ? FindingCode::stop_only_catches : FindingCode::band_not_held;
    const std::string found = stop.catches ? fmt::format("{} is {} across: the band can be pushed over it",
                                                         stop.catches_name, mm(*stop.catches))
                                           : "nothing near its end is larger than the form";
    const Length size = rounded_up(stop.needed);
    const std::string expected = fmt::format("a stop bead of {} or more on every cord next to it", mm(size));
    if (stop.closer_gap) {
      const Length gap = rounded_down(*stop.closer_gap);
      return add(code, i, where, found, expected,
                 fmt::format("leave at most {} to {}", mm(gap), stop.neighbour_name), gap);
    }
    add(code, i, where, found, expected,
        stop.on_both ? fmt::format("string one bead of {} or more on both cords together there", mm(size))
                     : fmt::format("string a bead of {} or more on every cord there", mm(size)),
        size);
  }

  [[nodiscard]] bool makes_fast(int i) const {
    const ElementKind kind = element(i).kind;
    return kind == ElementKind::crimp || kind == ElementKind::knot || kind == ElementKind::cover;
  }
  void check_ends() {
    if (strung_.closing < 0) {
      if (strung_.cord.kind == CordKind::wire)
        add(FindingCode::wire_not_closed, -1, "the ends", "beading wire without a closing",
            "a clasp that both ends are crimped to", "add a clasp (close with NAME) and a crimp at each end");
      return;
    }
    const Element& closing = strung_.elements[static_cast<std::size_t>(strung_.closing)];
    check_hole(-1, closing, passes_.back(), closing.name);
    if (pieces_.empty()) return;
    const int last = static_cast<int>(pieces_.size()) - 1;
    for (const int end : {0, last}) {
      if (makes_fast(end)) continue;
      add(FindingCode::end_not_fast, end,
          fmt::format("the {} end, at {}", end == 0 ? "first" : "last", closing.name),
          fmt::format("{} lies next to it", element(end).name), "a crimp or a knot that holds the cord",
          strung_.cord.kind == CordKind::wire ? "string a crimp there"
                                              : "string a crimp or tie a knot there");
    }
  }

  const Strung& strung_;
  std::vector<Piece> pieces_;
  std::vector<int> passes_;
  std::vector<std::optional<StopSizes>> sizes_;  ///< by element, once asked for
  std::vector<Finding> findings_;
};

}  // namespace

std::string_view finding_name(FindingCode code) {
  return names[static_cast<std::size_t>(code)];
}

std::string message(const Finding& finding) {
  return fmt::format("{}: {}; expected {}. To mend it, {}.", finding.where, finding.found, finding.expected,
                     finding.mend);
}

Length thickest_for(Length hole, int passes) {
  return std::sqrt(filled_share / passes) * hole;
}
Length smallest_hole_for(Length cord, int passes) {
  return std::sqrt(passes / filled_share) * cord;
}

std::vector<int> cord_passes(const Strung& strung, const Counts& counts) {
  constexpr std::int64_t hidden_tail_um = 20'000;  // from memory
  const std::vector<Piece> pieces = pieces_of(strung, counts);
  const std::vector<std::int64_t> starts = piece_starts_um(strung, counts);
  const auto kind = [&](std::size_t i) {
    return strung.elements[static_cast<std::size_t>(pieces[i].element)].kind;
  };
  std::vector<int> passes;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const bool is_crimp = kind(i) == ElementKind::crimp;
    bool with_tail = is_crimp;
    for (std::size_t j = 0; j < pieces.size() && strung.cord.kind == CordKind::wire; ++j) {
      const std::int64_t between = j < i ? starts[i] - starts[j + 1] : starts[j] - starts[i + 1];
      with_tail = with_tail || (kind(j) == ElementKind::crimp && j != i && between < hidden_tail_um);
    }
    passes.push_back(passes_of(strung, pieces[i]) * (with_tail ? 2 : 1));
  }
  if (strung.closing >= 0) {
    const Element& closing = strung.elements[static_cast<std::size_t>(strung.closing)];
    const int cords = pieces.empty() ? strung.cords : pieces.front().cords;
    passes.push_back(closing.holes == 2 ? 1 : cords);
  }
  return passes;
}

Result<std::vector<Finding>> findings_of(const Strung& strung, const Counts& counts) {
  return Inspection(strung, counts).run();
}

}  // namespace evencount::strand
