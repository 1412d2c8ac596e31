#include "drawing/section_drawing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "form/faces.hpp"

namespace evencount::drawing {
namespace {

using colour::Rgb;

constexpr Rgb ink{0x1d, 0x4e, 0x5f}, quiet{0x5c, 0x66, 0x6b}, glass{0xe4, 0xee, 0xef},
    glass_edge{0x8f, 0xaa, 0xb0};
constexpr Rgb front_bead{0x3d, 0x8c, 0x95}, edge_bead{0xe0, 0xb2, 0x5c}, back_bead{0xc3, 0xc9, 0xcc},
    warning{0xb0, 0x3a, 0x2e};
constexpr double margin_mm = 16, text_height_mm = 5, label_pt = 9, heading_pt = 13;

Rgb colour_of(form::Side side) {
  return side == form::Side::front ? front_bead : side == form::Side::edge ? edge_bead : back_bead;
}

/// Draws in the section's own coordinates (y up, about the origin), enlarged onto the sheet (y down).
class Sheet {
 public:
  Sheet(const form::Box& box, double scale, double top_mm)
      : scale_(scale), left_(margin_mm - scale * box.low.x_mm), top_(top_mm + scale * box.high.y_mm) {}

  [[nodiscard]] Point on_sheet(form::Point p) const {
    return {left_ + scale_ * p.x_mm, top_ - scale_ * p.y_mm};
  }
  [[nodiscard]] double scale() const { return scale_; }

  void outline(const form::ConvexCurve& curve) {
    Path path;
    for (const form::Point p : form::sample(curve, millimetres(0.005))) path.points.push_back(on_sheet(p));
    path.closed = true;
    path.fill = glass;
    path.stroke = Stroke{glass_edge, 0.35};
    marks_.push_back(std::move(path));
  }
  void bead(const form::Seat& seat, double diameter_mm) {
    const Rgb fill = colour_of(seat.side);
    const Rgb rim = colour::mix(fill, {0, 0, 0}, 0.6);
    const double radius_mm = scale_ * diameter_mm / 2;
    marks_.push_back(Circle{on_sheet(seat.centre), radius_mm - 0.1, fill, Stroke{rim, 0.2}});
    marks_.push_back(
        Circle{on_sheet(seat.centre), 0.1 * radius_mm, colour::mix(fill, {0, 0, 0}, 0.6), std::nullopt});
  }
  void hole(form::Point centre, double diameter_mm) {
    marks_.push_back(
        Circle{on_sheet(centre), scale_ * diameter_mm / 2, Rgb{255, 255, 255}, Stroke{glass_edge, 0.3}});
  }
  void line(Point from, Point to, Stroke stroke) {
    marks_.push_back(Path{{from, to}, false, std::nullopt, stroke});
  }
  void text(Point at, std::string words, TextRole role, double size_pt, Align align, Rgb colour) {
    marks_.push_back(Text{at, role, size_pt, align, colour, std::move(words)});
  }
  [[nodiscard]] std::vector<Mark> take() { return std::move(marks_); }

 private:
  double scale_, left_, top_;
  std::vector<Mark> marks_;
};

/// A line with a small stroke across each end.
void bar(Sheet& sheet, Point from, Point to, Rgb colour) {
  const bool level = std::abs(from.y_mm - to.y_mm) < std::abs(from.x_mm - to.x_mm);
  const double dx = level ? 0 : 1.2, dy = level ? 1.2 : 0;
  const Stroke stroke{colour, 0.25};
  sheet.line(from, to, stroke);
  for (const Point end : {from, to})
    sheet.line({end.x_mm - dx, end.y_mm - dy}, {end.x_mm + dx, end.y_mm + dy}, stroke);
}

/// Width below the drawing and thickness at its right, written into the form's middle where there is room.
void sizes(Sheet& sheet, const form::Box& form_box, double bottom_mm) {
  const Point left = sheet.on_sheet({form_box.low.x_mm, 0}), right = sheet.on_sheet({form_box.high.x_mm, 0});
  const double y = bottom_mm + 5;
  bar(sheet, {left.x_mm, y}, {right.x_mm, y}, quiet);
  sheet.text({(left.x_mm + right.x_mm) / 2, y + 4.5},
             plain_number(form_box.high.x_mm - form_box.low.x_mm) + " mm", TextRole::label, label_pt,
             Align::centre, quiet);
  const Point top = sheet.on_sheet({0, form_box.high.y_mm}), bottom = sheet.on_sheet({0, form_box.low.y_mm});
  bar(sheet, {top.x_mm, top.y_mm + 0.5}, {bottom.x_mm, bottom.y_mm - 0.5}, quiet);
  sheet.text({top.x_mm + 2, (top.y_mm + bottom.y_mm) / 2 + 1.2},
             plain_number(form_box.high.y_mm - form_box.low.y_mm) + " mm", TextRole::label, label_pt,
             Align::left, quiet);
}

/// Where the ends meet: a short dashed line outwards between the first and the last bead of the even columns.
void seam(Sheet& sheet, const form::Faces& faces, double diameter_mm) {
  const form::Seat& first = faces.seats.front();
  const form::Seat& last = faces.seats[faces.seats.size() - 2];
  const form::Point middle{(first.centre.x_mm + last.centre.x_mm) / 2,
                           (first.centre.y_mm + last.centre.y_mm) / 2};
  const double apart_mm =
      std::hypot(first.centre.x_mm - last.centre.x_mm, first.centre.y_mm - last.centre.y_mm);
  // The beads run counterclockwise, so outwards is to the right of the way from the last to the first.
  const form::Point outwards{(first.centre.y_mm - last.centre.y_mm) / apart_mm,
                             (last.centre.x_mm - first.centre.x_mm) / apart_mm};
  const auto along = [&](double mm) {
    return sheet.on_sheet({middle.x_mm + mm * outwards.x_mm, middle.y_mm + mm * outwards.y_mm});
  };
  sheet.line(along(-0.1 * diameter_mm), along(0.85 * diameter_mm), Stroke{warning, 0.4, true});
  const Point words = along(1.1 * diameter_mm);
  const bool left_half = outwards.x_mm < -0.3;
  sheet.text({words.x_mm, words.y_mm + 1.2}, "seam", TextRole::label, label_pt,
             left_half ? Align::right : Align::left, warning);
}

/// The form's holes, where its notation gives them.
void holes(Sheet& sheet, const form::Form& form) {
  if (!form.hole) return;
  for (const form::Point centre : form::hole_centres(form)) sheet.hole(centre, form.hole->mm());
}

void key(Sheet& sheet, const form::Faces& faces, double y) {
  const auto count = [&](form::Side side) {
    return std::count_if(faces.seats.begin(), faces.seats.end(),
                         [&](const form::Seat& s) { return s.side == side; });
  };
  double x = margin_mm;
  for (const auto& [side, name] : {std::pair{form::Side::front, "seen from the front"},
                                   {form::Side::edge, "on the edge"},
                                   {form::Side::back, "on the back"}}) {
    const auto beads = count(side);
    if (beads == 0) continue;
    sheet.text({x + 4, y}, name, TextRole::label, label_pt, Align::left, quiet);
    sheet.line({x, y - 1.2}, {x + 2.4, y - 1.2}, Stroke{colour_of(side), 2.4});
    x += 40;
  }
}

/// The slack as a bar of its own enlarged length, or what is missing.
void slack(Sheet& sheet, const form::FitCandidate& best, double y) {
  const double mm = best.slack.mm();
  const Rgb colour = form::closes(best.verdict) ? ink : warning;
  const double length_mm = sheet.scale() * std::abs(mm);
  bar(sheet, {margin_mm, y - 1.2}, {margin_mm + length_mm, y - 1.2}, colour);
  sheet.text({margin_mm + length_mm + 3, y},
             fmt::format("{} mm {}", plain_number(std::abs(mm)),
                         mm >= 0 ? "of slack in all" : "short in all: the beads are pulled that far apart"),
             TextRole::label, label_pt, Align::left, colour);
}

form::Box grown(form::Box box, double by_mm) {
  return {{box.low.x_mm - by_mm, box.low.y_mm - by_mm}, {box.high.x_mm + by_mm, box.high.y_mm + by_mm}};
}

}  // namespace

Result<Drawing> section_drawing(const form::Fit& fit, const bead::Size& bead, const SectionStyle& style) {
  const auto curve = form::section(fit.form);
  if (!curve) return curve.problem();
  const auto faces = form::faces(fit.form, bead.diameter, fit.edge);
  if (!faces) return faces.problem();
  const form::FitCandidate& best = fit.candidates.front();
  const form::Box form_box = curve->box();
  const form::Box box = grown(form_box, 1.45 * bead.diameter.mm());
  const double width_mm = box.high.x_mm - box.low.x_mm, height_mm = box.high.y_mm - box.low.y_mm;
  const double scale = style.largest_side.mm() / std::max(width_mm, height_mm);
  const double top_mm = margin_mm + 2 * text_height_mm + 3;
  const double bottom_mm = top_mm + scale * height_mm;

  Sheet sheet(box, scale, top_mm);
  sheet.text({margin_mm, margin_mm}, form::describe(fit.form), TextRole::heading, heading_pt, Align::left,
             ink);
  sheet.text({margin_mm, margin_mm + text_height_mm + 1},
             fmt::format("{} along the edge, {} rows of {}s: {}", best.edge, best.rows,
                         bead::trade_name(bead), form::verdict_text(best.verdict, fit.use)),
             TextRole::label, label_pt, Align::left, quiet);
  sheet.outline(*curve);
  holes(sheet, fit.form);
  for (std::size_t half = 0; half < faces->seats.size(); half += 2)
    sheet.bead(faces->seats[half], bead.diameter.mm());
  seam(sheet, *faces, bead.diameter.mm());
  sizes(sheet, form_box, bottom_mm);
  slack(sheet, best, bottom_mm + 18);
  key(sheet, *faces, bottom_mm + 26);

  Drawing drawing;
  drawing.width = millimetres(std::max(scale * width_mm, 128.0) + 2 * margin_mm);
  drawing.height = millimetres(bottom_mm + 26 + margin_mm - 4);
  drawing.marks = sheet.take();
  return drawing;
}

}  // namespace evencount::drawing
