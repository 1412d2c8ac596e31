#include "drawing/step_pen.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace evencount::drawing {
namespace {

using colour::Rgb;

// Told apart in black and white by weight and pattern; all by eye.
constexpr Rgb white{255, 255, 255}, black{0, 0, 0}, ink{0x16, 0x2a, 0x33};
constexpr Rgb thread_ink{0xa5, 0x1c, 0x30}, earlier_ink{0x8e, 0x84, 0x85}, hint_ink{0xb9, 0xbe, 0xc0};
constexpr Rgb steel{0xc4, 0xcb, 0xcf}, warp_ink{0x6f, 0x66, 0x58}, label_ink{0x4a, 0x52, 0x55};
constexpr double earlier_mm = 0.34, lead_mm = 0.5, caught_mm = 0.6, casing_mm = 0.32, sheet_margin_mm = 0.8;
constexpr double label_pt = 8, label_em = 0.56,
                 mm_per_pt = 25.4 / 72;  // exact, by the definition of the point
constexpr double capital_em = 0.72;      // capitals of the label font

/// Generously: Latin letters by the label font's, what begins with a byte from E3 on (kana, kanji and the like) as a square.
double width_of(std::string_view label) {
  double em = 0;
  for (const char c : label) {
    const auto byte = static_cast<unsigned char>(c);
    if ((byte & 0xC0) != 0x80) em += byte >= 0xE3 ? 1.0 : label_em;
  }
  return em * label_pt * mm_per_pt;
}

}  // namespace

void StepPen::line(const Strand& strand, Rgb colour, double width_mm) {
  if (strand.size() > 1) marks_.push_back(Path{.points = strand, .stroke = Stroke{colour, width_mm}});
}

// Beads

void StepPen::hinted_bead(Rectangle barrel, Rgb colour) {
  barrel.fill = colour::mix(colour, white, 0.86);
  barrel.stroke = Stroke{hint_ink, 0.2, true};
  marks_.push_back(barrel);
}

void StepPen::bead(Rectangle barrel, Rgb colour, bool fresh, const std::array<Rectangle, 2>& hole) {
  // The same share of white in linear light makes far more of a dark colour.
  const double paler = 0.10 + 0.24 * std::min(1.0, 2 * colour::luminance(colour));
  const Rgb fill = fresh ? colour : colour::mix(colour, white, paler);
  barrel.fill = fill;
  barrel.stroke = Stroke{colour::mix(colour, black, 0.45), 0.2};
  marks_.push_back(barrel);
  around_.beads.push_back(barrel);
  for (Rectangle end : hole) {
    end.radius_mm = 0.25;
    end.fill =
        colour::luminance(fill) > 0.08 ? colour::mix(fill, black, 0.6) : colour::mix(fill, white, 0.35);
    marks_.push_back(end);
  }
}

void StepPen::ring(const Rectangle& barrel) {
  constexpr double off_mm = 0.38;
  Rectangle ring = barrel;
  ring.corner = barrel.corner - Point{off_mm, off_mm};
  ring.width_mm += 2 * off_mm;
  ring.height_mm += 2 * off_mm;
  ring.radius_mm += off_mm;
  ring.fill = white;
  ring.stroke = Stroke{ink, 0.42};
  marks_.push_back(ring);
}

// Thread

void StepPen::thread(const Strand& strand) {
  line(strand, white, thread_mm + 2 * casing_mm);
  line(strand, thread_ink, thread_mm);
  around_.thread.insert(around_.thread.end(), strand.begin(), strand.end());
}

void StepPen::thread_in_bead(const Strand& strand) {
  line(strand, white, thread_mm + 2 * casing_mm);
  for (const Strand& dash : dashes(strand, 1.0, 0.65)) line(dash, thread_ink, thread_mm);
  for (double mm = 0; mm < length_of(strand); mm += 0.4) around_.thread.push_back(along(strand, mm)[0]);
}

void StepPen::earlier_thread(const Strand& strand) {
  line(strand, earlier_ink, earlier_mm);
}

void StepPen::lead_in(const Strand& strand) {
  line(strand, earlier_ink, lead_mm);
}

void StepPen::lead_in_bead(const Strand& strand) {
  for (const Strand& dash : dashes(strand, 1.0, 0.7)) {
    line(dash, white, earlier_mm + 0.6);
    line(dash, earlier_ink, lead_mm);
  }
}

void StepPen::caught_thread(const Strand& strand) {
  line(strand, white, caught_mm + 0.5);
  line(strand, label_ink, caught_mm);
}

void StepPen::warp(double x_mm, double top_mm, double bottom_mm) {
  line({{x_mm, top_mm}, {x_mm, bottom_mm}}, warp_ink, 0.7);
  line({{x_mm, top_mm}, {x_mm, bottom_mm}}, white, 0.35);
}

// Signs

void StepPen::head(Point tip, Point way) {
  const Point back = tip - 1.9 * way, side = aside_of(way);
  marks_.push_back(Path{.points = {tip, back + 0.95 * side, back + 0.35 * way, back - 0.95 * side},
                        .closed = true,
                        .fill = thread_ink,
                        .stroke = Stroke{white, 0.22}});
  around_.heads.push_back(tip - 1.0 * way);
}

void StepPen::disc(const Disc& disc, int number, bool strung) {
  if (distance(disc.centre, disc.on_thread) > disc_radius_mm) line({disc.centre, disc.on_thread}, ink, 0.25);
  marks_.push_back(Circle{.centre = disc.centre,
                          .radius_mm = disc_radius_mm - 0.15,
                          .fill = strung ? ink : white,
                          .stroke = Stroke{strung ? white : ink, 0.3}});
  marks_.push_back(Text{.at = disc.centre + Point{0, capital_em / 2 * number_pt * mm_per_pt},
                        .role = TextRole::label_bold,
                        .size_pt = number_pt,
                        .align = Align::centre,
                        .ink = strung ? white : ink,
                        .text = fmt::format("{}", number),
                        .in_picture = true});
}

void StepPen::needle(Point eye, Point way) {
  const Point side = aside_of(way);
  const auto at = [&](double mm, double off) { return eye + mm * way + off * side; };
  marks_.push_back(Path{.points = {at(-0.9, 0), at(-0.5, 0.42), at(2.2, 0.45), at(6.5, 0.33),
                                   at(needle_mm, 0), at(6.5, -0.33), at(2.2, -0.45), at(-0.5, -0.42)},
                        .closed = true,
                        .fill = steel,
                        .stroke = Stroke{ink, 0.22}});
  marks_.push_back(Path{
      .points = {at(0.0, 0.16), at(1.5, 0.16), at(1.5, -0.16), at(0.0, -0.16)}, .closed = true, .fill = ink});
}

void StepPen::cut(Point from, Point way) {
  const Point side = aside_of(way), end = from + 5 * way;
  thread({from, end});
  for (const double off : {0.0, 0.8})
    line({end + off * way - 1.2 * side - 0.5 * way, end + off * way + 1.2 * side + 0.5 * way}, ink, 0.25);
}

void StepPen::label(Point at, std::string text, bool before) {
  const double width = width_of(text), height = label_pt * mm_per_pt;
  if (before) at.x_mm -= width;
  for (double mm = 0; mm <= width; mm += 0.8) around_.thread.push_back(at + Point{mm, -0.4 * height});
  texts_.push_back({at.x_mm, at.y_mm - height, at.x_mm + width, at.y_mm + 0.3 * height});
  marks_.push_back(Rectangle{.corner = {at.x_mm - 0.4, at.y_mm - 0.85 * height},
                             .width_mm = width + 0.8,
                             .height_mm = 1.1 * height,
                             .radius_mm = 0.6,
                             .fill = white});
  marks_.push_back(Text{.at = at,
                        .role = TextRole::label,
                        .size_pt = label_pt,
                        .align = Align::left,
                        .ink = label_ink,
                        .text = std::move(text),
                        .in_picture = true});
}

int StepPen::beads_under(Point corner, double width_mm, double height_mm) const {
  constexpr double off_mm = 0.4;
  return static_cast<int>(
      std::count_if(around_.beads.begin(), around_.beads.end(), [&](const Rectangle& bead) {
        return corner.x_mm < bead.corner.x_mm + bead.width_mm + off_mm &&
               bead.corner.x_mm < corner.x_mm + width_mm + off_mm &&
               corner.y_mm < bead.corner.y_mm + bead.height_mm + off_mm &&
               bead.corner.y_mm < corner.y_mm + height_mm + off_mm;
      }));
}

int StepPen::texts_under(Point corner, double width_mm, double height_mm) const {
  return static_cast<int>(std::count_if(texts_.begin(), texts_.end(), [&](const Bounds& text) {
    return corner.x_mm < text.right_mm && text.left_mm < corner.x_mm + width_mm && corner.y_mm < text.bottom_mm &&
           text.top_mm < corner.y_mm + height_mm;
  }));
}

void StepPen::label_end(Point end, Point way, std::string name) {
  const double height = capital_em * label_pt * mm_per_pt, width = width_of(name);
  const bool level = std::abs(way.x_mm) > 0.6, rightwards = way.x_mm > 0, down = way.y_mm > 0;
  const double left = rightwards ? -width : 0, beside = down ? 0 : height, past = down ? height + 0.9 : -0.9;
  const std::array<Point, 4> places =
      level ? std::array{Point{left, height + 1.9}, Point{left, -1.9},
                         Point{rightwards ? 0.8 : -width - 0.8, height / 2}, Point{left, height + 4.0}}
            : std::array{Point{1.5, beside}, Point{-1.5 - width, beside}, Point{-width / 2, past},
                         Point{3.0, past}};
  // A bead may lie under a name where it must, but never another name.
  constexpr int many_beads = 100;
  const auto hidden = [&](Point place) {
    const Point corner = end + place - Point{0, height};
    return beads_under(corner, width, height) + many_beads * texts_under(corner, width, height);
  };
  const Point best = *std::min_element(places.begin(), places.end(),
                                       [&](Point a, Point b) { return hidden(a) < hidden(b); });
  label(end + best, std::move(name));
}

Drawing StepPen::sheet() const {
  Drawing raw;
  raw.marks = marks_;
  Bounds bounds = bounds_of(raw);
  for (const Bounds& text : texts_) {
    bounds.left_mm = std::min(bounds.left_mm, text.left_mm);
    bounds.top_mm = std::min(bounds.top_mm, text.top_mm);
    bounds.right_mm = std::max(bounds.right_mm, text.right_mm);
    bounds.bottom_mm = std::max(bounds.bottom_mm, text.bottom_mm);
  }
  Drawing sheet;
  sheet.width = millimetres(bounds.right_mm - bounds.left_mm + 2 * sheet_margin_mm);
  sheet.height = millimetres(bounds.bottom_mm - bounds.top_mm + 2 * sheet_margin_mm);
  place(sheet, raw, {sheet_margin_mm - bounds.left_mm, sheet_margin_mm - bounds.top_mm});
  return sheet;
}

}  // namespace evencount::drawing
