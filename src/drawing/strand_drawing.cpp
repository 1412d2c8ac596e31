#include "drawing/strand_drawing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/text.hpp"
#include "form/faces.hpp"
#include "strand/chain_round.hpp"
#include "strand/placing.hpp"

namespace evencount::drawing {
namespace {

using colour::Rgb;
using strand::ElementKind;

using std::numbers::pi;
constexpr double margin_mm = 8, heading_mm = 9, heading_pt = 12, label_pt = 8;
constexpr Rgb ink{0x1d, 0x4e, 0x5f}, quiet{0x5c, 0x66, 0x6b}, glass{0xe4, 0xee, 0xef},
    glass_edge{0x8f, 0xaa, 0xb0};
constexpr Rgb bead_fill{0x3d, 0x8c, 0x95}, metal{0xd9, 0xd3, 0xc4}, metal_edge{0x8f, 0x87, 0x74},
    cord_ink{0x5f, 0x4b, 0x3b}, skin{0xf3, 0xe7, 0xdc};

const strand::Element& element_of(const strand::Strung& strung, const strand::Piece& piece) {
  return strung.elements[static_cast<std::size_t>(piece.element)];
}

bool is_metal(ElementKind kind) {
  return kind != ElementKind::form && kind != ElementKind::bead && kind != ElementKind::knot;
}

/// Where a piece lies: its middle, the way along the cord, and the way to the outer cord.
struct Frame {
  Point middle, along, across;
  [[nodiscard]] Point at(double a, double b) const {
    return {middle.x_mm + a * along.x_mm + b * across.x_mm, middle.y_mm + a * along.y_mm + b * across.y_mm};
  }
};

class Painter {
 public:
  explicit Painter(const project::Project& project, const strand::Strung& strung)
      : project_(project), strung_(strung) {}

  void box(const Frame& frame, double width, double height, double shift, Rgb fill, Rgb rim) {
    const double a = width / 2, b = height / 2;
    path({frame.at(-a, shift - b), frame.at(a, shift - b), frame.at(a, shift + b), frame.at(-a, shift + b)},
         fill, rim);
  }
  /// A barrel: round ends, as beads look from the side.
  void barrel(const Frame& frame, double width, double height, double shift, Rgb fill) {
    std::vector<Point> points;
    constexpr int steps = 6;
    for (const int side : {1, -1})
      for (int i = 0; i <= steps; ++i) {
        const double share = std::cos(pi * i / steps), bulge = std::sin(pi * i / steps);
        points.push_back(
            frame.at(side * share * width / 2, shift + side * height / 2 * (0.55 + 0.45 * bulge)));
      }
    path(std::move(points), fill, colour::mix(fill, {0, 0, 0}, 0.55));
  }
  void path(std::vector<Point> points, std::optional<Rgb> fill, Rgb rim) {
    drawing.marks.push_back(Path{std::move(points), true, fill, Stroke{rim, 0.15}});
  }
  void line(std::vector<Point> points, Stroke stroke, bool closed = false) {
    drawing.marks.push_back(Path{std::move(points), closed, std::nullopt, stroke});
  }
  void text(Point at, std::string words, Align align = Align::left, TextRole role = TextRole::label,
            double size = label_pt, Rgb colour = quiet) {
    drawing.marks.push_back(Text{at, role, size, align, colour, std::move(words)});
  }

  /// A piece seen on its face: `advance` along the cord.
  void piece(const strand::Piece& piece, const Frame& frame, double advance) {
    const strand::Element& element = element_of(strung_, piece);
    const double across = element.across.mm();
    if (element.kind == ElementKind::form) {
      box(frame, element.carrier->together * element.carrier->form.length_along_holes->mm(),
          element.carrier->form.width.mm(), 0, glass, glass_edge);
      if (element.carrier->band) band(element, frame);
      return;
    }
    const bool each = strand::beads_of(strung_, piece) == 2;
    const double apart = apart_mm_ / 2;
    for (const double shift : each ? std::vector<double>{-apart, apart} : std::vector<double>{0.0}) {
      if (is_metal(element.kind))
        box(frame, advance, across, shift, metal, metal_edge);
      else
        barrel(frame, advance, across, shift, element.kind == ElementKind::knot ? cord_ink : bead_fill);
    }
  }

  /// The cords' distance of what follows.
  void set_apart(double mm) { apart_mm_ = mm; }
  Drawing drawing;

 private:
  /// The front face in its beads' colours.
  void band(const strand::Element& element, const Frame& frame) {
    const strand::Carrier& carrier = *element.carrier;
    const double height = element.across.mm(), width = carrier.band_width().mm();
    box(frame, width, height, 0, bead_fill, glass_edge);
    const auto found = std::find_if(project_.bands.begin(), project_.bands.end(),
                                    [&](const project::Band& b) { return b.name == element.id; });
    if (found == project_.bands.end()) return;
    const auto faces = form::faces(carrier.form, carrier.band->bead.diameter, found->chart.edge());
    if (!faces) return;
    const auto front = std::find_if(faces->windows.begin(), faces->windows.end(),
                                    [](const form::Window& w) { return w.side == form::Side::front; });
    if (front == faces->windows.end()) return;
    const double cell_width = width / found->chart.columns(), cell_height = height / (front->steps + 0.5);
    for (int column = 0; column < found->chart.columns(); ++column)
      for (int step = 0; step < front->steps; ++step) {
        const auto bead = found->chart.at({column, front->first_step + step});
        if (bead == chart::no_bead || static_cast<std::size_t>(bead) >= project_.legend.size()) continue;
        const Rgb fill = project_.legend[static_cast<std::size_t>(bead)].colour;
        const Frame cell{frame.at((column + 0.5) * cell_width - width / 2,
                                  (step + 0.5 + (column % 2 == 1 ? 0.5 : 0)) * cell_height - height / 2),
                         frame.along, frame.across};
        box(cell, cell_width, cell_height, 0, fill, colour::mix(fill, {0, 0, 0}, 0.75));
      }
  }

  const project::Project& project_;
  const strand::Strung& strung_;
  double apart_mm_ = 0;
};

std::string title(const strand::StrandFit& fit) {
  const std::string size =
      fit.wearer.worn == strand::Worn::length
          ? fit.wearer.name
          : fmt::format("{} ({} of {} mm)", fit.wearer.name, strand::worn_name(fit.wearer.worn),
                        plain_number(fit.wearer.measure.mm()));
  return fmt::format("{}: {} mm round, {}", size, plain_number(fit.best.length.mm(), 1),
                     fit.closes ? "closes"
                                : fmt::format("{} mm too {}", plain_number(std::abs(fit.best.error.mm()), 1),
                                              fit.best.error > Length{} ? "long" : "short"));
}

struct Row {
  std::size_t first = 0, end = 0;
};

/// Pieces row by row, each row at most as long as asked (a piece longer than that has one of its own).
std::vector<Row> rows_of(const std::vector<std::int64_t>& starts, std::int64_t longest_um) {
  std::vector<Row> rows{{}};
  for (std::size_t i = 0; i + 1 < starts.size(); ++i) {
    if (i > rows.back().first && starts[i + 1] - starts[rows.back().first] > longest_um)
      rows.push_back({i, i});
    rows.back().end = i + 1;
  }
  return rows;
}

double tallest_mm(const strand::Strung& strung, const std::vector<strand::Piece>& pieces) {
  double tallest = 4;
  for (std::size_t i = 0; i < pieces.size(); ++i)
    tallest =
        std::max(tallest, element_of(strung, pieces[i]).across.mm() +
                              (strand::beads_of(strung, pieces[i]) == 2 ? strand::apart_at(strung, pieces, i).mm() : 0));
  return tallest;
}

/// The sheet made large enough for its marks, and they moved on to it.
Drawing on_sheet(const Drawing& marks, const std::string& heading) {
  const Bounds bounds = bounds_of(marks);
  constexpr double least_width = 110;
  Drawing sheet;
  if (heading.empty()) {
    sheet.width = millimetres(bounds.right_mm - bounds.left_mm + 2);
    sheet.height = millimetres(bounds.bottom_mm - bounds.top_mm + 2);
    place(sheet, marks, {1 - bounds.left_mm, 1 - bounds.top_mm});
    return sheet;
  }
  sheet.width = millimetres(std::max(least_width, bounds.right_mm - bounds.left_mm) + 2 * margin_mm);
  sheet.height = millimetres(bounds.bottom_mm - bounds.top_mm + 2 * margin_mm + heading_mm);
  sheet.marks.push_back(
      Text{{margin_mm, margin_mm + 4}, TextRole::heading, heading_pt, Align::left, ink, heading});
  place(sheet, marks, {margin_mm - bounds.left_mm, margin_mm + heading_mm - bounds.top_mm});
  return sheet;
}

}  // namespace

Drawing strand_flat(const project::Project& project, const strand::Strung& strung,
                    const strand::StrandFit& fit, const strand::TwoCords& curve, const StrandStyle& style) {
  Painter painter(project, strung);
  const auto pieces = strand::pieces_of(strung, fit.best.counts);
  const auto starts = strand::piece_starts_um(strung, fit.best.counts);
  const double row_height = tallest_mm(strung, pieces) + 7;
  double y = 0;
  for (const Row& row : rows_of(starts, strand::micrometres(style.longest_row))) {
    const auto x = [&](std::size_t i) { return static_cast<double>(starts[i] - starts[row.first]) / 1000; };
    for (std::size_t i = row.first; i < row.end; ++i) {  // the cords under everything
      const double apart = strand::apart_at(strung, pieces, i).mm() / 2;
      for (const double shift :
           pieces[i].cords == 2 ? std::vector<double>{-apart, apart} : std::vector<double>{0.0})
        painter.line({{x(i), y + shift}, {x(i + 1), y + shift}}, Stroke{cord_ink, strung.cord.diameter.mm()});
    }
    for (std::size_t i = row.first; i < row.end; ++i) {
      painter.set_apart(strand::apart_at(strung, pieces, i).mm());
      painter.piece(pieces[i], {{(x(i) + x(i + 1)) / 2, y}, {1, 0}, {0, 1}}, x(i + 1) - x(i));
    }
    for (const strand::OuterExtra& extra : curve.extras) {
      const auto at = static_cast<std::size_t>(extra.after + 1);
      if (at >= row.first && at < row.end)
        painter.text({x(at), y + row_height / 2 - 1}, fmt::format("+{}", extra.count), Align::left,
                     TextRole::label_bold, label_pt, ink);
    }
    y += row_height;
  }
  return on_sheet(painter.drawing, style.heading ? title(fit) : std::string());
}

namespace {

/// The wearer's ellipse, and the chain round it.
Result<Drawing> round_body(const project::Project& project, const strand::Strung& strung,
                           const strand::StrandFit& fit) {
  const auto links = strand::links_of(strung, fit.best.counts);
  const auto chain = strand::chain_round(links, fit.thickness, strand::ratio_of(fit.wearer.worn));
  if (!chain) return chain.problem();
  Painter painter(project, strung);
  const double body = fit.wearer.measure / chain->girth;
  std::vector<Point> outline;
  for (int i = 0; i < 180; ++i)
    outline.push_back({body * chain->half_width.mm() * std::cos(pi * i / 90),
                       -body * chain->half_height.mm() * std::sin(pi * i / 90)});
  painter.path(outline, skin, glass_edge);
  const auto pieces = strand::pieces_of(strung, fit.best.counts);
  for (std::size_t i = 0; i < links.size(); ++i) {
    const form::Point from = chain->joints[i], to = chain->joints[(i + 1) % links.size()];
    const form::Point along = (1 / links[i].mm()) * (to - from);
    const Frame frame{{(from.x_mm + to.x_mm) / 2, -(from.y_mm + to.y_mm) / 2},
                      {along.x_mm, -along.y_mm},
                      {along.y_mm, along.x_mm}};
    const int index = i < pieces.size() ? pieces[i].element : strung.closing;
    const strand::Element& element = strung.elements[static_cast<std::size_t>(index)];
    const bool form = element.kind == ElementKind::form;
    if (is_metal(element.kind) || form)
      painter.box(frame, links[i].mm(), element.thickness.mm(), 0, form ? bead_fill : metal,
                  form ? ink : metal_edge);
    else
      painter.barrel(frame, links[i].mm(), element.thickness.mm(), 0, bead_fill);
  }
  return on_sheet(painter.drawing, fmt::format("{}; {} mm of ease left", title(fit),
                                               plain_number((chain->girth - fit.wearer.measure).mm(), 1)));
}

/// The loop in a ring, the closing at the top.
Drawing ring(const project::Project& project, const strand::Strung& strung, const strand::StrandFit& fit) {
  Painter painter(project, strung);
  const auto pieces = strand::pieces_of(strung, fit.best.counts);
  const auto starts = strand::piece_starts_um(strung, fit.best.counts);
  const double length = fit.best.length.mm(), radius = length / (2 * pi);
  const double closing =
      strung.closing < 0 ? 0 : strung.elements[static_cast<std::size_t>(strung.closing)].width.mm();
  const auto frame_at =
      [&](double along_mm) {  // from the middle of the closing, counterclockwise on the sheet
        const double angle = 2 * pi * along_mm / length + pi / 2;
        return Frame{{radius * std::cos(angle), -radius * std::sin(angle)},
                     {-std::sin(angle), -std::cos(angle)},
                     {std::cos(angle), -std::sin(angle)}};
      };
  const auto begin_of = [&](std::size_t i) { return closing / 2 + static_cast<double>(starts[i]) / 1000; };
  const std::vector<Length> apart = strand::apart_in_loop(strung, pieces, starts);
  for (std::size_t i = 0; i < pieces.size(); ++i) {  // the cords under everything
    for (const double side :
         pieces[i].cords == 2 ? std::vector<double>{-0.5, 0.5} : std::vector<double>{0.0}) {
      const double next = (i + 1 < pieces.size() ? (apart[i] + apart[i + 1]) / 2 : apart[i]).mm();
      const double last = (i > 0 ? (apart[i] + apart[i - 1]) / 2 : apart[i]).mm();
      painter.line({frame_at(begin_of(i)).at(0, side * last), frame_at(begin_of(i + 1)).at(0, side * next)},
                   Stroke{cord_ink, strung.cord.diameter.mm()});
    }
  }
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    painter.set_apart(apart[i].mm());
    painter.piece(pieces[i], frame_at((begin_of(i) + begin_of(i + 1)) / 2), begin_of(i + 1) - begin_of(i));
  }
  if (strung.closing >= 0) {
    const strand::Element& element = strung.elements[static_cast<std::size_t>(strung.closing)];
    painter.box(frame_at(0), closing, std::min(element.across.mm(), 10.0), 0, metal, metal_edge);
  }
  return on_sheet(painter.drawing, title(fit));
}

}  // namespace

Result<Drawing> strand_worn(const project::Project& project, const strand::Strung& strung,
                            const strand::StrandFit& fit) {
  if (fit.wearer.worn == strand::Worn::length) return ring(project, strung, fit);
  return round_body(project, strung, fit);
}

}  // namespace evencount::drawing
