#include "strand/two_cords.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "base/text.hpp"

namespace evencount::strand {
namespace {

using std::numbers::pi;

/// Something that holds the two cords apart.
struct Anchor {
  int piece = -1;  ///< -1: the closing
  double middle_mm = 0;
  Length apart;
};

struct Gap {
  int after = -1;
  double turn = 0;  ///< from the middle of one anchor to that of the next
  Length apart;
  int element = -1;  ///< none: nothing that could be more on one cord
  double needed_mm = 0;
  int count = 0;
};

class Curve {
 public:
  Curve(const Strung& strung, const Counts& counts, double lean)
      : strung_(strung),
        pieces_(pieces_of(strung, counts)),
        starts_(piece_starts_um(strung, counts)),
        flat_(std::cos(lean * pi / 180)) {
    if (lean == bracelet_lean) flat_ = 0;
    loop_mm_ = static_cast<double>(strung_length_um(strung, counts)) / 1000;
    find_anchors();
    find_gaps();
    place();
  }
  [[nodiscard]] const std::vector<Gap>& gaps() const { return gaps_; }
  [[nodiscard]] double width_mm(int element) const { return this->element(element).width.mm(); }

 private:
  [[nodiscard]] const Element& element(int index) const {
    return strung_.elements[static_cast<std::size_t>(index)];
  }

  void find_anchors() {
    const bool closing = strung_.cords == 2 && strung_.closing >= 0 && element(strung_.closing).holes == 2;
    const double half_closing = strung_.closing >= 0 ? element(strung_.closing).width.mm() / 2 : 0;
    if (closing) anchors_.push_back({-1, -half_closing, element(strung_.closing).apart});
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      const Element& one = element(pieces_[i].element);
      if (pieces_[i].cords != 2 || one.holes != 2) continue;
      const double middle = static_cast<double>(starts_[i] + starts_[i + 1]) / 2000;
      anchors_.push_back({static_cast<int>(i), middle, one.apart});
    }
    if (closing) anchors_.push_back({-1, loop_mm_ - half_closing, element(strung_.closing).apart});
  }

  /// The bead that is there most often on each of the two cords.
  [[nodiscard]] int bead_between(int from, int to) const {
    std::vector<int> counts(strung_.elements.size(), 0);
    for (int i = from + 1; i < to; ++i)
      if (const Piece& piece = pieces_[static_cast<std::size_t>(i)]; beads_of(strung_, piece) == 2)
        ++counts[static_cast<std::size_t>(piece.element)];
    const auto most = std::max_element(counts.begin(), counts.end());
    return most == counts.end() || *most == 0 ? -1 : static_cast<int>(most - counts.begin());
  }

  void find_gaps() {
    for (std::size_t a = 0; a + 1 < anchors_.size(); ++a) {
      const Anchor &from = anchors_[a], &to = anchors_[a + 1];
      Gap gap;
      gap.after = from.piece;
      gap.turn = 2 * pi * (to.middle_mm - from.middle_mm) / loop_mm_;
      gap.apart = (from.apart + to.apart) / 2;
      gap.needed_mm = gap.apart.mm() * gap.turn * flat_;
      gap.element = bead_between(from.piece, to.piece < 0 ? static_cast<int>(pieces_.size()) : to.piece);
      gaps_.push_back(gap);
    }
  }

  /// From the middle outwards, each gap rounded with what the gaps before it have left over.
  void place() {
    const std::size_t count = gaps_.size();
    double left = 0, right = 0;
    if (count % 2 == 1) {
      const double rest = take(gaps_[count / 2], gaps_[count / 2].needed_mm);
      left = right = rest / 2;
    }
    for (std::size_t i = 0; i < count / 2; ++i) {
      Gap& before = gaps_[count / 2 - 1 - i];
      Gap& after = gaps_[(count + 1) / 2 + i];
      left = take(before, left + before.needed_mm);
      right = take(after, right + after.needed_mm);
    }
  }
  /// Gives a gap its beads; what is still needed then.
  double take(Gap& gap, double needed_mm) const {
    if (gap.element < 0) return needed_mm;
    const double width = width_mm(gap.element);
    gap.count = std::max(0, static_cast<int>(std::lround(needed_mm / width)));
    return needed_mm - gap.count * width;
  }

  const Strung& strung_;
  std::vector<Piece> pieces_;
  std::vector<std::int64_t> starts_;
  double flat_, loop_mm_ = 0;
  std::vector<Anchor> anchors_;
  std::vector<Gap> gaps_;
};

Hanging hanging_of(const Element& element, const Piece& piece) {
  if (element.holes == 2) return piece.cords == 2 ? Hanging::held : Hanging::flips;
  return piece.both ? Hanging::flips : Hanging::turns;
}

}  // namespace

std::string_view hanging_name(Hanging hanging) {
  constexpr std::array<std::string_view, 3> names{"held", "turns", "flips"};
  return names[static_cast<std::size_t>(hanging)];
}

double lean_of(Length longer, Length apart, double turn) {
  const double flat = apart.mm() * turn;
  if (flat <= 0) return bracelet_lean;
  return std::acos(std::clamp(longer.mm() / flat, 0.0, 1.0)) * 180 / pi;
}

Result<TwoCords> two_cords(const Strung& strung, const Counts& counts, double lean) {
  if (!(lean >= 0 && lean <= 90))
    return Problem{ProblemCode::out_of_range, "lean", plain_number(lean), "0 to 90 degrees"};
  TwoCords result;
  const std::vector<Piece> pieces = pieces_of(strung, counts);
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const Element& element = strung.elements[static_cast<std::size_t>(pieces[i].element)];
    if (element.kind == ElementKind::form)
      result.faces.push_back({static_cast<int>(i), hanging_of(element, pieces[i])});
  }
  if (strung.cords == 1) return result;
  const Curve curve(strung, counts, lean);
  double turn_apart_mm = 0, needed_mm = 0, given_mm = 0;
  for (const Gap& gap : curve.gaps()) {
    turn_apart_mm += gap.apart.mm() * gap.turn;
    needed_mm += gap.needed_mm;
    if (gap.count == 0) continue;
    given_mm += gap.count * curve.width_mm(gap.element);
    result.extras.push_back({gap.after, gap.element, gap.count, millimetres(gap.needed_mm)});
  }
  result.needed = millimetres(needed_mm);
  result.given = millimetres(given_mm);
  result.lean_without = lean_of({}, millimetres(turn_apart_mm), 1);
  result.lean_with = lean_of(result.given, millimetres(turn_apart_mm), 1);
  return result;
}

}  // namespace evencount::strand
