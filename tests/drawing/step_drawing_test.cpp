#include "drawing/step_drawing.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <set>

#include "drawing/sample.hpp"
#include "support/sanitized.hpp"
#include "weave/every_piece.hpp"

namespace evencount::drawing {
namespace {

using weave::testing_support::AnyPiece;
using weave::testing_support::every_piece;

/// A project with one band that holds the piece; the first four of its legend are used, black and white among them.
project::Project project_of(const AnyPiece& piece, std::string_view bead = "cylinder-11") {
  project::Project project = sample_project(2, 2);
  project.beads = {*bead::find_size(bead)};
  project.legend.clear();
  const std::array colours{colour::Rgb{0, 0, 0}, colour::Rgb{255, 255, 255}, colour::Rgb{0xd0, 0x20, 0x30},
                           colour::Rgb{0x90, 0xc8, 0x60}, colour::Rgb{0x30, 0x60, 0xa0}};
  for (std::size_t i = 0; i < colours.size(); ++i)
    project.legend.push_back({.letter = std::string(1, static_cast<char>('A' + i)),
                              .name = "bead",
                              .colour = colours[i],
                              .bead = std::string(bead)});
  project::Band& band = project.bands.front();
  band.technique = piece.technique;
  band.bead = bead;
  band.closure = piece.making.closure;
  band.begin_at = piece.making.begin_at;
  band.chart = piece.chart;
  return project;
}

struct Drawn {
  std::string name;
  project::Project project;
  weave::Plan plan;
  weave::Moment moment;
  Drawing drawing;
};

/// Every moment of every piece (of every third, sanitized); a new thread begins in the middle of each.
std::vector<Drawn> draw_all(std::string_view bead) {
  std::vector<Drawn> all;
  std::size_t number = 0;
  for (const AnyPiece& piece : every_piece()) {
    if (sanitized && ++number % 3 != 0) continue;
    const project::Project project = project_of(piece, bead);
    const weave::Plan plan = piece.plan();
    const std::vector<int> new_threads{weave::row_count(plan) / 2 + 1};
    for (const weave::Moment& moment : weave::moments(plan, new_threads))
      all.push_back({piece.name + ", " + moment.title, project, plan, moment,
                     step_drawing(project, project.bands.front(), plan, moment)});
  }
  return all;
}

const std::vector<Drawn>& drawings() {
  static const std::vector<Drawn> all = draw_all("cylinder-11");
  return all;
}

struct Number {
  int number = 0;
  Circle disc;
  Text text;
};

/// The discs with their numbers, in order of drawing.
std::vector<Number> numbers_of(const Drawing& drawing) {
  std::vector<Number> numbers;
  for (std::size_t i = 0; i + 1 < drawing.marks.size(); ++i) {
    const auto* disc = std::get_if<Circle>(&drawing.marks[i]);
    const auto* text = std::get_if<Text>(&drawing.marks[i + 1]);
    if (disc && text) numbers.push_back({std::stoi(text->text), *disc, *text});
  }
  return numbers;
}

std::size_t beads_gone_through(const weave::Plan& plan, const weave::Moment& moment) {
  return weave::visits(plan, moment.first_stitch, moment.end_stitch, moment.at_seam).size();
}

// Property (1)
TEST(StepDrawing, EveryMarkLiesOnTheSheet) {
  for (const Drawn& drawn : drawings()) {
    SCOPED_TRACE(drawn.name);
    const Drawing& drawing = drawn.drawing;
    const Bounds box = bounds_of(drawing);
    EXPECT_GE(box.left_mm, 0);
    EXPECT_GE(box.top_mm, 0);
    EXPECT_LE(box.right_mm, drawing.width.mm());
    EXPECT_LE(box.bottom_mm, drawing.height.mm());
    for (const Text& text : all_of_kind<Text>(drawing)) {
      EXPECT_TRUE(text.in_picture) << text.text;
      EXPECT_TRUE(text.at.x_mm > 0 && text.at.x_mm < drawing.width.mm() && text.at.y_mm > 0 &&
                  text.at.y_mm < drawing.height.mm());
    }
  }
}

// Property (2)
TEST(StepDrawing, NumbersStandInOrderAndApart) {
  for (const Drawn& drawn : drawings()) {
    SCOPED_TRACE(drawn.name);
    const auto numbers = numbers_of(drawn.drawing);
    ASSERT_EQ(numbers.size(), beads_gone_through(drawn.plan, drawn.moment));
    for (std::size_t i = 0; i < numbers.size(); ++i) {
      EXPECT_EQ(numbers[i].number, static_cast<int>(i) + 1);
      for (std::size_t k = 0; k < i; ++k) {
        const Point a = numbers[i].disc.centre, b = numbers[k].disc.centre;
        const double apart = std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm);
        EXPECT_GE(apart, numbers[i].disc.radius_mm + numbers[k].disc.radius_mm) << k + 1 << " and " << i + 1;
      }
    }
  }
}

// Property (3)
TEST(StepDrawing, NewBeadsHaveTheirFullColourAndAStrongOutline) {
  for (const Drawn& drawn : drawings()) {
    SCOPED_TRACE(drawn.name);
    const auto& [name, project, plan, moment, drawing] = drawn;
    std::size_t strung = 0;
    std::multiset<std::string> wanted, found;
    for (std::size_t i = moment.new_from; i < moment.end_stitch; ++i)
      if (plan.stitches[i].act == weave::Act::pick_up) {
        ++strung;
        wanted.insert(colour::to_hex(project.legend[plan.stitches[i].bead].colour));
      }
    std::size_t rings = 0;
    for (const Rectangle& mark : all_of_kind<Rectangle>(drawing)) {
      if (mark.stroke && mark.stroke->width_mm > 0.4) ++rings;
      if (mark.fill && mark.stroke) found.insert(colour::to_hex(*mark.fill));
    }
    EXPECT_GE(rings, strung);  // more where a narrow tube comes round again
    if (!plan.lattice.round) {
      EXPECT_EQ(rings, strung);
    }
    for (const std::string& colour : wanted) EXPECT_GE(found.count(colour), wanted.count(colour)) << colour;
  }
}

// Property (5)
TEST(StepDrawing, TheSameMomentGivesTheSameDrawing) {
  for (const AnyPiece& piece : every_piece()) {
    if (piece.chart.columns() != 6) continue;
    const project::Project project = project_of(piece);
    const weave::Plan plan = piece.plan();
    for (const weave::Moment& moment : weave::moments(plan))
      EXPECT_EQ(step_drawing(project, project.bands.front(), plan, moment),
                step_drawing(project, project.bands.front(), plan, moment));
  }
}

// Property (4)
TEST(StepDrawing, FitsItsColumn) {
  for (const Drawn& drawn : drawings()) {
    SCOPED_TRACE(drawn.name);
    EXPECT_LE(drawn.drawing.width.mm(), StepStyle{}.most_width.mm());
    EXPECT_LE(drawn.drawing.height.mm(), 120);
  }
}

TEST(StepDrawing, FitsItsColumnInEveryBead) {
  const AnyPiece piece{"odd", "peyote-odd-count", *chart::Chart::make(9, 8), {weave::Closure::zip}};
  const weave::Plan plan = piece.plan();
  for (const bead::Size& size : bead::sizes()) {
    const project::Project project = project_of(piece, size.id);
    for (const weave::Moment& moment : weave::moments(plan)) {
      const Drawing drawing =
          step_drawing(project, project.bands.front(), plan, moment, {.most_width = millimetres(70)});
      EXPECT_LE(drawing.width.mm(), 70) << size.id << ", " << moment.title;
    }
  }
}

/// In print without colour the numbers stand out from their discs, and the thread from the white round it.
TEST(StepDrawing, CanBeReadWithoutColour) {
  for (const Drawn& drawn : drawings()) {
    SCOPED_TRACE(drawn.name);
    const Drawing& drawing = drawn.drawing;
    for (const Number& number : numbers_of(drawing))
      EXPECT_GT(colour::contrast(*number.disc.fill, number.text.ink), 7);
    double thickest = 0;
    colour::Rgb thread;
    for (const Path& path : all_of_kind<Path>(drawing))
      if (path.stroke && !path.fill && path.stroke->ink != colour::Rgb{255, 255, 255} &&
          path.stroke->width_mm > thickest)
        thickest = path.stroke->width_mm, thread = path.stroke->ink;
    EXPECT_GT(thickest, 0.7);
    EXPECT_GT(colour::contrast(thread, {255, 255, 255}), 4.5);
  }
}

TEST(StepDrawing, ASeamNamesItsEnds) {
  const AnyPiece piece{"zip", "peyote-even-count", *chart::Chart::make(6, 10), {weave::Closure::zip}};
  const project::Project project = project_of(piece);
  const weave::Plan plan = piece.plan();
  for (const weave::Moment& moment : weave::moments(plan)) {
    std::set<std::string> labels;
    for (const Text& text : all_of_kind<Text>(step_drawing(project, project.bands.front(), plan, moment)))
      labels.insert(text.text);
    EXPECT_EQ(labels.contains("row 20") && labels.contains("row 1"), moment.at_seam) << moment.title;
    EXPECT_EQ(labels.contains("tail"), moment.kind == weave::MomentKind::start) << moment.title;
  }
}

}  // namespace
}  // namespace evencount::drawing
