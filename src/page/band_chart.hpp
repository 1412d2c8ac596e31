#pragma once
/// A band's chart as its pages show it: in parts, for either hand, with the faces of its form. Private to this room.

#include "form/faces.hpp"

#include "page/chart_parts.hpp"
#include "page/sections.hpp"

namespace evencount::page {

/// Cells as they are seen, from the left: for the left hand the chart stands in a mirror.
struct ShownPart {
  Span columns, steps;
};

class BandChart {
 public:
  BandChart(const Subject& subject, const BandSheet& sheet, const Typesetter& typesetter);

  [[nodiscard]] double smallest_cell_mm() const { return smallest_cell_mm_; }
  [[nodiscard]] double usual_cell() const;
  [[nodiscard]] double largest_cell() const;
  [[nodiscard]] double cell_height_mm(double cell_mm) const;

  [[nodiscard]] double width_mm(double cell_mm, int columns) const;
  /// How many steps, and columns, of a chart a length holds, at least one.
  [[nodiscard]] int steps_in(double height_mm, double cell_mm) const;
  [[nodiscard]] int columns_in(double width_mm, double cell_mm) const;
  /// The cell width at which the whole band is so high.
  [[nodiscard]] double cell_filling(double height_mm) const;

  [[nodiscard]] drawing::Drawing draw(double cell_mm, const ShownPart& part) const;
  [[nodiscard]] ShownPart whole() const;

  /// What the marks of faces and seam take beside the chart; 0 where there are none.
  [[nodiscard]] double faces_mm() const { return faces_mm_; }
  /// The faces of the form and the seam beside a chart drawn at `top_mm`, from `left_mm` on.
  void put_faces(Flow& flow, double cell_mm, const Span& steps, double left_mm, double top_mm) const;

 private:
  [[nodiscard]] double overhang() const;

  const Subject& subject_;
  const BandSheet& sheet_;
  const weave::Lattice& lattice_;
  double smallest_cell_mm_ = 3.5;  ///< what can be read at arm's length, from memory
  std::vector<form::Window> windows_;
  double faces_mm_ = 0;
};

/// A small picture of how the parts of a chart lie, on a page of its own. Returns where the page numbers of the parts go.
struct KeyPage {
  struct Place {
    std::size_t page = 0, mark = 0;
    double room_mm = 0;  ///< 0 where there is none
  };
  std::vector<Place> numbers;  ///< of each part, row by row
};
[[nodiscard]] KeyPage put_key_page(Flow& flow, const Subject& subject, const BandSheet& sheet, const PartsGrid& grid);
/// A mark where two parts meet.
void put_meeting_mark(Flow& flow, int number, drawing::Point centre);

}  // namespace evencount::page
