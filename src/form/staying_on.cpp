#include "form/staying_on.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "base/text.hpp"
#include "form/closure.hpp"
#include "form/sections.hpp"

namespace evencount::form {
namespace {

using std::numbers::pi;
constexpr double rare = 2;  // standard deviations: one lot or bead in 40 is beyond, on that side

std::string shown(Length length) {
  return plain_number(length.mm(), 3) + " mm";
}

bool positive(Length length) {
  return std::isfinite(length.mm()) && length > Length{};
}
bool not_negative(Length length) {
  return std::isfinite(length.mm()) && length >= Length{};
}

// Corners of the convex hull, counterclockwise (Andrew's chain): the lower side from left to right, then the
// upper one back.
std::vector<Point> hull_of(std::vector<Point> points) {
  std::sort(points.begin(), points.end(),
            [](Point a, Point b) { return a.x_mm != b.x_mm ? a.x_mm < b.x_mm : a.y_mm < b.y_mm; });
  std::vector<Point> corners;
  const auto add = [&](Point p, std::size_t fixed) {
    constexpr double same = 1e-9;  // of its distance from the origin: a point given twice
    if (!corners.empty() && distance(p, corners.back()) <= same * norm(p)) return;
    constexpr double straight = 1e-9;  // of the sides' product: a corner that turns less is none
    while (corners.size() >= fixed + 2) {
      const Point last = corners.back() - corners[corners.size() - 2], next = p - corners.back();
      if (cross(last, next) > straight * norm(last) * norm(next)) break;
      corners.pop_back();
    }
    corners.push_back(p);
  };
  for (const Point p : points) add(p, 0);
  const std::size_t lower = corners.size() - 1;
  for (std::size_t i = points.size() - 1; i-- > 0;) add(points[i], lower);
  corners.pop_back();  // the first again
  return corners;
}

double distance_to_side(Point p, Point from, Point to) {
  const Point side = to - from;
  const double share = std::clamp(dot(p - from, side) / dot(side, side), 0.0, 1.0);
  return distance(p, from + share * side);
}

// A form's section seen from its end, with stop beads before its holes.
class EndView {
 public:
  EndView(const ConvexCurve& section, const Holes& holes) {
    const Point size = section.box().high - section.box().low;
    constexpr double fineness = 3e-5;  // of the section's size: far below what a stop bead is known to
    points_ = hull_of(sample(section, millimetres(fineness * norm(size))));  // without points given twice
    centres_.push_back({holes.spacing.mm() / 2, 0});
    if (holes.count == 2) centres_.push_back({-holes.spacing.mm() / 2, 0});
  }

  // The diameter of the largest stops that stay within the section. None: a hole's middle lies outside.
  [[nodiscard]] std::optional<double> room_mm() const {
    double least = 1e300;
    for (const Point centre : centres_) {
      for (std::size_t i = 0; i < points_.size(); ++i) {
        const Point from = points_[i], to = points_[(i + 1) % points_.size()];
        if (cross(to - from, centre - from) <= 0) return std::nullopt;
        least = std::min(least, distance_to_side(centre, from, to));
      }
    }
    return 2 * least;
  }

  // The outline of section and stops together.
  [[nodiscard]] Result<ConvexCurve> with_stops(double diameter_mm) const {
    std::vector<Point> points = points_;
    constexpr int on_a_circle = 240;  // within 1e-4 of its radius
    for (const Point centre : centres_)
      for (int i = 0; i < on_a_circle; ++i)
        points.push_back(centre + diameter_mm / 2 * direction(2 * pi * i / on_a_circle));
    return polygon(hull_of(std::move(points)));
  }

 private:
  std::vector<Point> points_, centres_;
};

Result<Done> check_holes(const Holes& holes) {
  if (holes.count != 1 && holes.count != 2)
    return out_of_range("holes of the form", fmt::format("{}", holes.count), "1 or 2");
  if (!not_negative(holes.spacing))
    return out_of_range("spacing of the holes", shown(holes.spacing), "0 or more");
  if (holes.count == 1 && holes.spacing != Length{})
    return out_of_range("spacing of the holes", shown(holes.spacing), "0 for one hole");
  return Done{};
}

Result<Done> check_band(const SlidingBand& band, Length margin) {
  if (!positive(band.bead.diameter))
    return out_of_range("diameter of the bead", shown(band.bead.diameter), "above 0");
  if (!positive(band.gauge.edge) || !positive(band.gauge.column))
    return out_of_range("gauge", bead::to_notation(band.gauge), "above 0");
  if (band.columns < 1) return out_of_range("columns", fmt::format("{}", band.columns), "at least 1");
  constexpr int fewest = 3;
  if (band.edge < fewest)
    return Problem{ProblemCode::too_few_beads, "beads along the edge", fmt::format("{}", band.edge),
                   "at least 3"};
  if (!not_negative(margin)) return out_of_range("margin of the stop bead", shown(margin), "0 or more");
  return Done{};
}

// The stop over which a ring just passes: its beads lie in two straight lines along the spacing, and the rest
// of them close round the two half circles as a ring on one circle would.
std::optional<double> passed_mm(const LoosestBand& loose, int edge, double spacing_mm, double margin_mm) {
  const double pitch = loose.pitch.mm();
  const double round_the_ends = edge + (margin_mm - 2 * spacing_mm) / pitch;
  constexpr double fewest = 2;  // two beads lie face to face
  if (round_the_ends < fewest) return std::nullopt;
  const double diameter = pitch / std::sin(pi / round_the_ends) - loose.diameter.mm();
  return diameter > 0 ? std::optional(diameter) : std::nullopt;
}

// The smallest stop round which, and round the form, the loosest band can't close: its smallest chord is too
// long.
Result<double> straight_mm(const EndView& view, const LoosestBand& loose, int edge, double margin_mm,
                           double from_mm, double to_mm) {
  const double allowed_mm = loose.pitch.mm() + margin_mm / edge;
  const auto passes = [&](double diameter_mm) -> Result<bool> {
    const auto outline = view.with_stops(diameter_mm);
    if (!outline) return outline.problem();
    const auto range = closing_range(offset(*outline, loose.diameter / 2), edge);
    if (!range) return range.problem();
    return range->smallest.mm() <= allowed_mm;
  };
  constexpr int halvings = 18;  // to a few millionths of where it may lie
  for (int i = 0; i < halvings; ++i) {
    const double middle = (from_mm + to_mm) / 2;
    const auto passed = passes(middle);
    if (!passed) return passed.problem();
    (*passed ? from_mm : to_mm) = middle;
  }
  return to_mm;
}

struct HoldingRow {
  Holding holding;
  std::string_view name;
  std::string_view text;
};
constexpr std::array<HoldingRow, 4> holdings{{
    {Holding::runs_over, "runs_over", "the band runs over it without touching it"},
    {Holding::catches, "catches", "the band catches on it, but a push takes it over"},
    {Holding::while_straight, "while_straight",
     "holds the band while it keeps straight along its holes; bent, it can be worked over"},
    {Holding::cannot_pass, "cannot_pass", "the band can't pass"},
}};

const HoldingRow& row(Holding holding) {
  return *std::find_if(holdings.begin(), holdings.end(),
                       [&](const HoldingRow& r) { return r.holding == holding; });
}

bool is_strung(const Form& form) {
  const bool worn =
      form.kind == FormKind::ring || form.kind == FormKind::wrist || form.kind == FormKind::bangle;
  return form.length_along_holes && !worn;
}

std::string ends_text(const Holes& holes) {
  return holes.count == 2 ? "holes" : "hole";
}

}  // namespace

Result<Holes> holes_of(const Form& form) {
  if (const auto checked = check(form); !checked) return checked.problem();
  if (!is_strung(form))
    return out_of_range("form", describe(form), "a form that is strung by holes along its length");
  const Length diameter = form.hole.value_or(usual_hole);
  if (form.hole_spacing) return Holes{2, *form.hole_spacing, diameter};
  // A hole without a spacing is one in the middle, a carrier bead's too.
  if (form.kind != FormKind::lens || form.hole) return Holes{1, {}, diameter};
  return Holes{2, usual_spacing_share * form.width, diameter};
}

LoosestBand at_its_loosest(const SlidingBand& band) {
  const double large = 1 + rare * std::hypot(band.bead.lot_shift, band.bead.scatter / std::sqrt(band.edge));
  return {band.gauge.edge * (large * (1 + sliding_limits.closes)), band.bead.diameter * large};
}

Result<StopBead> smallest_stop_bead(const Form& form, const Holes& holes, const SlidingBand& band,
                                    Length margin) {
  if (const auto checked = check_holes(holes); !checked) return checked.problem();
  if (const auto checked = check_band(band, margin); !checked) return checked.problem();
  const auto outline = section(form);
  if (!outline) return outline.problem();
  const EndView view(*outline, holes);
  const auto catches = view.room_mm();
  if (!catches) return out_of_range("spacing of the holes", shown(holes.spacing), "holes inside the form");

  const LoosestBand loose = at_its_loosest(band);
  const double alone = passed_mm(loose, band.edge, holes.spacing.mm(), margin.mm()).value_or(0.0);
  const double bent = std::max(*catches, alone);
  // The outline of both holds that of the stops alone, so what holds a bent band holds a straight one.
  const auto straight = straight_mm(view, loose, band.edge, margin.mm(), *catches, bent);
  if (!straight) return straight.problem();
  const Length width = band.columns * band.gauge.column;
  const double smallest = width.mm() >= *straight ? *straight : bent;
  return StopBead{millimetres(*catches), millimetres(*straight), millimetres(bent), millimetres(smallest)};
}

bool side_by_side(const Holes& holes, Length stop_diameter) {
  return holes.count == 1 || stop_diameter <= holes.spacing;
}

Holding holding(const StopBead& stop, Length diameter) {
  if (diameter >= stop.holds_bent) return Holding::cannot_pass;
  if (diameter >= stop.holds_straight) return Holding::while_straight;
  return diameter > stop.catches ? Holding::catches : Holding::runs_over;
}

std::string_view holding_name(Holding holding) {
  return row(holding).name;
}
std::string_view holding_text(Holding holding) {
  return row(holding).text;
}

Length hull_perimeter(const Holes& holes, Length stop_diameter) {
  return 2 * holes.spacing + pi * stop_diameter;
}

std::optional<Length> band_opening(const Holes& holes, const SlidingBand& band) {
  const auto passed = passed_mm(at_its_loosest(band), band.edge, holes.spacing.mm(), 0);
  if (!passed) return std::nullopt;
  return hull_perimeter(holes, millimetres(*passed));
}

std::vector<bead::Size> stops_that_suffice(const StopBead& stop, Length cord) {
  std::vector<bead::Size> found;
  for (const bead::Size& size : bead::sizes()) {
    const double small = 1 - rare * std::hypot(size.lot_shift, size.scatter);
    if (small * size.diameter >= stop.smallest && cord_ease * size.hole >= cord) found.push_back(size);
  }
  return found;
}

Result<Length> widest_cord(Length hole, int passes) {
  // The radius of n equal circles packed densest in a circle of radius 1. Proved best for these n ("Circle
  // packing in a circle", en.wikipedia.org/wiki/Circle_packing_in_a_circle).
  static const std::array<double, 7> packed{1.0,
                                            1.0 / 2,
                                            1 / (1 + 2 / std::sqrt(3.0)),
                                            1 / (1 + std::sqrt(2.0)),
                                            1 / (1 + 1 / std::sin(pi / 5)),
                                            1.0 / 3,
                                            1.0 / 3};
  if (!positive(hole)) return out_of_range("hole", shown(hole), "above 0");
  if (passes < 1 || passes > static_cast<int>(packed.size()))
    return out_of_range("passes of the cord", fmt::format("{}", passes), "from 1 to 7");
  return cord_ease * packed[static_cast<std::size_t>(passes - 1)] * hole;
}

double covered_square_mm(const ConvexCurve& section, Length band_width) {
  return section.perimeter().mm() * band_width.mm();
}

Result<std::vector<WayToFix>> ways_to_fix(const Form& form, const Holes& holes, Length band_width,
                                          Length cord, Length thread) {
  for (const auto& [what, size] :
       {std::pair{"width of the band", band_width}, {"cord", cord}, {"thread", thread}})
    if (!not_negative(size)) return out_of_range(what, shown(size), "0 or more");
  const auto outline = section(form);
  if (!outline) return outline.problem();
  std::vector<WayToFix> ways;
  constexpr int threads = 2;  // there and back
  // Threads lie in the gap beside the cord, which is pushed to one side: each must be thinner than the gap.
  const bool room = cord + thread <= cord_ease * holes.diameter;
  const bool ends = is_strung(form);
  if (ends && room)
    ways.push_back(
        {Fastening::stitch_through_hole,
         fmt::format("sew from an edge bead through the form's {} to the opposite edge and back: {} "
                     "threads beside the cord at each",
                     ends_text(holes), threads)});
  if (ends)
    ways.push_back(
        {Fastening::stitch_over_end,
         "sew over each end of the form from an edge bead in front to one behind, beside the cord"});
  const Length covered =
      form.length_along_holes ? std::min(band_width, *form.length_along_holes) : band_width;
  ways.push_back(
      {Fastening::glue, fmt::format("glue the inside of the band to the form: a thin film on {:.0f} "
                                    "square mm, the {} kept free",
                                    covered_square_mm(*outline, covered), ends_text(holes))});
  return ways;
}

std::string_view fastening_name(Fastening fastening) {
  constexpr std::array<std::string_view, 4> names{"none", "stitch_through_hole", "stitch_over_end", "glue"};
  return names[static_cast<std::size_t>(fastening)];
}

}  // namespace evencount::form
