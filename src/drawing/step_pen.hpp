#pragma once
/// How the parts of a step diagram look: private to this room.

#include <string>

#include "drawing/step_signs.hpp"

namespace evencount::drawing {

/// Collects marks in the layout's coordinates, and what they should not hide.
class StepPen {
 public:
  static constexpr double thread_mm = 0.75, needle_mm = 9.5;

  // Beads
  void hinted_bead(Rectangle barrel, colour::Rgb colour);
  /// A bead and its hole's two ends; a new one in its full colour.
  void bead(Rectangle barrel, colour::Rgb colour, bool fresh, const std::array<Rectangle, 2>& hole);
  /// A strong outline off the bead, so that it stands out from dark beads too.
  void ring(const Rectangle& barrel);

  // Thread
  void thread(const Strand& strand);
  void thread_in_bead(const Strand& strand);
  void earlier_thread(const Strand& strand);
  void lead_in(const Strand& strand);
  void lead_in_bead(const Strand& strand);
  /// The earlier thread that is gone round.
  void caught_thread(const Strand& strand);
  void warp(double x_mm, double top_mm, double bottom_mm);

  // Signs
  void head(Point tip, Point way);
  void disc(const Disc& disc, int number, bool strung);
  void needle(Point eye, Point way);
  /// The thread goes on a little and is cut.
  void cut(Point from, Point way);
  /// Ends at `at` instead of beginning there, if `before`.
  void label(Point at, std::string text, bool before = false);
  /// A name at the end of a thread that goes `way`, off the beads.
  void label_end(Point end, Point way, std::string name);

  [[nodiscard]] const Surroundings& around() const { return around_; }
  /// All of it, on a sheet of its size.
  [[nodiscard]] Drawing sheet() const;

 private:
  void line(const Strand& strand, colour::Rgb colour, double width_mm);
  [[nodiscard]] int beads_under(Point corner, double width_mm, double height_mm) const;
  [[nodiscard]] int texts_under(Point corner, double width_mm, double height_mm) const;

  Surroundings around_;
  std::vector<Bounds> texts_;
  std::vector<Mark> marks_;
};

}  // namespace evencount::drawing
