#include "page/along_hand.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "page/left_hand.hpp"
#include "wording/reader.hpp"

namespace evencount::page {
namespace {

/// Twice the piece's width in half pitches, less the edges: a place and its mirror image add up to it.
int mirror_sum(const weave::Lattice& lattice) {
  return lattice.holes == weave::Holes::round_squares ? lattice.columns - 1 : 2 * (lattice.columns - 1);
}

std::vector<WorkedLine> lines_of(const Hand& hand) {
  std::vector<WorkedLine> lines;
  const weave::Lattice& lattice = hand.plan.lattice;
  for (const weave::Row& row : hand.seen.rows) {
    if (!weave::has_beads(row.kind)) continue;
    WorkedLine line{row, hand.words.lines[lines.size()], {}};
    for (std::size_t i = row.first_stitch; i < row.end_stitch; ++i) {
      const weave::Stitch& stitch = hand.plan.stitches[i];
      if (stitch.act != weave::Act::pick_up) continue;
      weave::Spot place = lattice.site(stitch.cell).middle;
      if (hand.side == Side::left) place.across = mirror_sum(lattice) - place.across;
      line.places.push_back(place);
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

/// The words must make the chart again, and every line say how many beads it has.
Result<Done> check_words(const Hand& hand, const std::vector<std::string>& letters,
                         const language::Language& language) {
  const auto fault = [&](std::string found) {
    return Problem{ProblemCode::bad_plan, "band " + hand.band.name, std::move(found), "words that read back to its chart"};
  };
  const auto read = wording::read_words(wording::to_text(hand.words, language), {.legend = letters});
  if (!read) return fault(message(read.problem()));
  if (read->size() != 1 || read->front().chart != hand.band.chart) return fault("words that make another chart");
  std::int64_t in_rows = 0;
  for (const WorkedLine& line : hand.lines) {
    if (line.words.count != static_cast<int>(line.places.size())) return fault(line.words.label + " with another number of beads");
    in_rows += line.words.count;
  }
  if (in_rows != beads_in(hand.plan)) return fault(fmt::format("{} beads in its rows, {} in its plan", in_rows, beads_in(hand.plan)));
  return Done{};
}

}  // namespace

weave::Plan sides_changed(weave::Plan plan) {
  const auto change = [](weave::Travel& travel) {
    if (weave::axis_of(travel) == weave::Axis::across) travel = weave::opposite(travel);
  };
  for (weave::Stitch& stitch : plan.stitches) change(stitch.travel);
  for (weave::Row& row : plan.rows) change(row.travel);
  return plan;
}

drawing::Drawing in_mirror(const drawing::Drawing& drawing) {
  const double width_mm = drawing.width.mm();
  drawing::Drawing mirrored = drawing;
  for (drawing::Mark& mark : mirrored.marks) {
    if (auto* rectangle = std::get_if<drawing::Rectangle>(&mark)) {
      rectangle->corner.x_mm = width_mm - rectangle->corner.x_mm - rectangle->width_mm;
    } else if (auto* path = std::get_if<drawing::Path>(&mark)) {
      for (drawing::Point& point : path->points) point.x_mm = width_mm - point.x_mm;
    } else if (auto* circle = std::get_if<drawing::Circle>(&mark)) {
      circle->centre.x_mm = width_mm - circle->centre.x_mm;
    } else if (auto* text = std::get_if<drawing::Text>(&mark)) {
      using drawing::Align;
      text->at.x_mm = width_mm - text->at.x_mm;
      text->align = text->align == Align::left ? Align::right : text->align == Align::right ? Align::left : Align::centre;
    } else if (auto* picture = std::get_if<drawing::Picture>(&mark)) {
      // A picture shows a thing, not a way of working: it isn't mirrored, only its place is.
      picture->corner.x_mm = width_mm - picture->corner.x_mm - picture->width_mm;
    }
  }
  return mirrored;
}

Result<weave::Plan> seen_plan(const project::Band& band, bool left_handed) {
  if (!left_handed) return project::plan_of(band);
  project::Band mirrored = band;
  mirrored.chart = chart::mirrored(band.chart);
  auto plan = project::plan_of(mirrored);
  if (!plan) return plan;
  return sides_changed(std::move(*plan));
}

Result<Hand> make_hand(const project::Project& project, const project::Band& band, Side side,
                       const language::Language& language) {
  Hand hand{.side = side, .band = band};
  if (side == Side::left) hand.band.chart = chart::mirrored(band.chart);
  auto plan = project::plan_of(hand.band);
  if (!plan) return plan.problem();
  hand.plan = std::move(*plan);
  hand.seen = side == Side::left ? sides_changed(hand.plan) : hand.plan;
  const auto letters = project::letters_of(project);
  hand.words = wording::write_words(hand.seen, letters, one_line(band.name), {.language = &language});
  hand.lines = lines_of(hand);
  if (auto ok = check_words(hand, letters, language); !ok) return ok.problem();
  const bead::Size* size = project::find_bead(project, band.bead);
  if (!size) return Problem{ProblemCode::unknown_name, "band " + band.name, band.bead, "one of the project's beads"};
  auto thread = weave::thread_use(hand.plan, *size, project::gauge_of(project, band), project.thread, project.thread_habits);
  if (!thread) return thread.problem().within("band " + band.name);
  hand.thread = std::move(*thread);
  return hand;
}

}  // namespace evencount::page
