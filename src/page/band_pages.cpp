#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "drawing/band_drawing.hpp"
#include "page/sections.hpp"
#include "page/steps.hpp"
#include "page/word_rows.hpp"

namespace evencount::page {
namespace {

using namespace drawing;

constexpr double usual_cell_mm = 4.6, largest_cell_mm = 7.0;
constexpr double beside_gap_mm = 10;

/// One band's pages while they are made.
class BandPages {
 public:
  BandPages(Flow& flow, const Subject& subject, std::size_t index)
      : flow_(flow),
        subject_(subject),
        index_(index),
        sheet_(subject.bands[index]),
        lattice_(sheet_.plan.lattice) {
    if (subject.options.signs == CellSigns::letters)
      smallest_cell_mm_ = std::max(smallest_cell_mm_, narrowest_lettered_cell(subject.project, lattice_).mm());
    for (const weave::Row& row : sheet_.plan.rows) {
      if (!weave::has_beads(row.kind)) continue;
      int last_step = 0;
      for (std::size_t i = row.first_stitch; i < row.end_stitch; ++i)
        if (sheet_.plan.stitches[i].act == weave::Act::pick_up)
          last_step = std::max(last_step, sheet_.plan.stitches[i].cell.step);
      step_of_row_.push_back(last_step);
    }
  }

  void put() {
    put_head();
    const WordRows whole(flow_.typesetter(), sheet_.words.lines, 1e6);
    const double narrowest = chart_width_mm(smallest_cell_mm_, lattice_.columns);
    if (narrowest + beside_gap_mm + std::max(whole.width_mm(), 60.0) <= flow_.width())
      put_beside(whole);
    else
      put_stacked();
    put_steps();
    flow_.set_running_heading("");
  }

 private:
  // Heading

  void put_head() {
    const project::Band& band = *sheet_.band;
    const std::string name = one_line(band.name);
    flow_.paragraph(style::heading, name, flow_.left(), flow_.width());
    flow_.set_running_heading(name + ", continued");
    if (const std::string note = one_line(band.note); !note.empty())
      flow_.paragraph(style::note, band.note, flow_.left(), flow_.width());
    flow_.skip(1.2);
    for (const std::string& line : band_facts(subject_, index_))
      flow_.paragraph(Style{{TextRole::label, 8.5}, 4.4, ink::quiet}, line, flow_.left(), flow_.width());
    flow_.skip(2.4);
    flow_.rule(flow_.left(), flow_.right(), ink::accent, 0.3);
    flow_.skip(5);
  }

  /// The beads of this band, in two columns.
  void put_key(double left_mm, double width_mm) {
    const auto counts = weave::count_beads(sheet_.plan);
    const double column_mm = (width_mm + WordRows::gutter_mm) / 2;
    double y = flow_.y();
    bool second = false;
    for (std::size_t bead = 0; bead < counts.size() && bead < subject_.project.legend.size(); ++bead) {
      if (counts[bead] == 0) continue;
      if (!second) {
        flow_.move_to(y);
        flow_.need(5.2);
        y = flow_.y();
      }
      put_key_entry(bead, counts[bead], {left_mm + (second ? column_mm : 0), y},
                    column_mm - WordRows::gutter_mm);
      if (second) y += 5.2;
      second = !second;
    }
    flow_.move_to(y + (second ? 5.2 : 0));
  }

  void put_key_entry(std::size_t bead, int count, Point at, double width_mm) {
    const project::LegendEntry& entry = subject_.project.legend[bead];
    const double baseline = at.y_mm + 3.7;
    const double name_left =
        8 + std::max(4.5, 1.5 + flow_.typesetter().width_mm(style::table_bold.face, entry.letter));
    const std::string number = grouped(count);
    const double number_mm = flow_.typesetter().width_mm(style::table.face, number);
    put_swatch(flow_, subject_, bead, {at.x_mm, at.y_mm + 2.6});
    flow_.put_text(style::table_bold, entry.letter, {at.x_mm + 7.4, baseline});
    flow_.put_text(
        style::table,
        flow_.typesetter().shortened(style::table.face, entry.name, width_mm - name_left - number_mm - 3),
        {at.x_mm + name_left, baseline});
    flow_.put_text(style::table, number, {at.x_mm + width_mm, baseline}, Align::right);
  }

  // Chart

  [[nodiscard]] double cell_height_mm(double cell_mm) const {
    return cell_mm * (sheet_.gauge.edge / sheet_.gauge.column);
  }
  /// A column of right-angle weave is a whole unit with its beads round it.
  [[nodiscard]] double cells_wide() const { return weave::pitches(lattice_, 1) < 1 ? 1.8 : 1.0; }
  [[nodiscard]] double usual_cell() const { return std::max(smallest_cell_mm_, cells_wide() * usual_cell_mm); }
  [[nodiscard]] double largest_cell() const { return std::max(smallest_cell_mm_, cells_wide() * largest_cell_mm); }

  /// How much higher the piece is than its steps, in pitches.
  [[nodiscard]] double overhang() const {
    return weave::extent(lattice_).height - weave::pitches(lattice_, lattice_.edge);
  }

  [[nodiscard]] Drawing chart(double cell_mm, int first_step, int end_step, int first_column,
                              int end_column) const {
    auto drawing = chart_drawing(subject_.project, *sheet_.band, sheet_.plan,
                                 {.signs = subject_.options.signs,
                                  .cell_width = millimetres(cell_mm),
                                  .first_step = first_step,
                                  .end_step = end_step,
                                  .first_column = first_column,
                                  .end_column = end_column});
    assert(drawing.ok());  // every part asked for lies within the band
    return std::move(*drawing);
  }

  [[nodiscard]] double chart_width_mm(double cell_mm, int columns) const {
    return chart(cell_mm, 0, 1, 0, columns).width.mm();
  }

  /// How many steps of a chart a height holds, at least one.
  [[nodiscard]] int steps_in(double height_mm, double cell_mm) const {
    const double steps = (height_mm - 2 * chart_margin(sheet_.plan).mm()) / cell_height_mm(cell_mm) - overhang();
    return std::max(1, static_cast<int>(steps / weave::pitches(lattice_, 1) + 1e-6));
  }

  // Chart and words side by side

  void put_words_head(double left_mm, double width_mm) {
    for (const double size_pt : {11.0, 9.5, 8.0}) {
      const Style heading{{TextRole::label_bold, size_pt}, 6.2, ink::accent};
      const auto lines = flow_.wrap(heading, sheet_.words.heading, width_mm);
      if (lines.size() > 1 && size_pt > 8) continue;
      flow_.put_lines(heading, lines, left_mm);
      break;
    }
    flow_.paragraph(Style{{TextRole::label, 8}, 4, ink::quiet}, sheet_.words.facts, left_mm, width_mm);
    flow_.skip(2.2);
  }

  /// The cell width that shows the whole band at the height there is, or the usual one when it is too long.
  [[nodiscard]] double cell_beside(const WordRows& words) const {
    const double fills = (flow_.room() - 2 * chart_margin(sheet_.plan).mm()) / weave::extent(lattice_).height /
                         (sheet_.gauge.edge / sheet_.gauge.column);
    double cell =
        std::clamp(fills >= smallest_cell_mm_ ? fills : usual_cell(), smallest_cell_mm_, largest_cell());
    const double two_columns = 2 * words.width_mm() + WordRows::gutter_mm;
    const double wanted =
        two_columns + chart_width_mm(smallest_cell_mm_, lattice_.columns) + beside_gap_mm <= flow_.width()
            ? two_columns
            : std::max(words.width_mm(), 60.0);
    while (cell > smallest_cell_mm_ &&
           chart_width_mm(cell, lattice_.columns) + beside_gap_mm + wanted > flow_.width())
      cell = std::max(smallest_cell_mm_, cell - 0.1);
    return cell;
  }

  void put_beside(const WordRows& words) {
    const double cell = cell_beside(words);
    const double left = flow_.left() + chart_width_mm(cell, lattice_.columns) + beside_gap_mm;
    const double width = flow_.right() - left;
    int step = 0;
    std::size_t row = 0;
    for (bool first = true; step < lattice_.edge; first = false) {
      if (!first) flow_.new_page();
      const double top = flow_.y();
      const std::size_t page = flow_.page();
      if (first) {
        put_key(left, width);
        flow_.skip(5);
        put_words_head(left, width);
      }
      if (flow_.page() != page) {  // a key of many colours ran on
        step = put_tile_beside(words, cell, flow_.top() + 10, step, row, left, width);
      } else {
        step = put_tile_beside(words, cell, top, step, row, left, width);
      }
    }
    put_notes(left, width);
  }

  /// One page's part: steps of the chart from `chart_top` down, their rows from the cursor down. Returns the next step.
  int put_tile_beside(const WordRows& words, double cell, double chart_top, int step, std::size_t& row,
                      double left, double width) {
    const int most = words.columns_in(width);
    const std::size_t left_over = words.rows().size() - row;
    int columns = std::min(most, left_over > 16 ? 2 : 1);
    while (columns < most && words.fitting(row, columns, flow_.room()) < left_over) ++columns;
    const std::size_t fitting = std::max<std::size_t>(1, words.fitting(row, columns, flow_.room()));
    int end_step = std::min(lattice_.edge, step + steps_in(flow_.bottom() - chart_top, cell));
    if (row + fitting < words.rows().size())
      end_step = std::min(end_step, std::max(step + 1, step_of_row_[row + fitting]));
    std::size_t end_row = row;
    while (end_row < step_of_row_.size() && step_of_row_[end_row] < end_step) ++end_row;
    const Drawing tile = chart(cell, step, end_step, 0, lattice_.columns);
    place(flow_.sheet(), tile, {flow_.left(), chart_top});
    chart_page_ = flow_.page();
    chart_bottom_mm_ = chart_top + tile.height.mm();
    words.put(flow_, row, end_row, columns, left, width);
    row = end_row;
    return end_step;
  }

  // Chart first, then words

  void put_stacked() {
    put_key(flow_.left(), flow_.width());
    flow_.skip(5);
    const double fixed = chart_width_mm(smallest_cell_mm_, 1) - smallest_cell_mm_ + 1.5;
    const int most = static_cast<int>((flow_.width() - fixed) / smallest_cell_mm_ / weave::pitches(lattice_, 1));
    const int tiles = (lattice_.columns + most - 1) / most;
    const int tile_columns = (lattice_.columns + tiles - 1) / tiles;
    double cell = std::min(usual_cell(), (flow_.width() - fixed) / weave::pitches(lattice_, tile_columns));
    while (cell > smallest_cell_mm_ && chart_width_mm(cell, tile_columns) > flow_.width()) cell -= 0.05;
    for (int column = 0; column < lattice_.columns; column += tile_columns)
      put_column_tile(std::max(cell, smallest_cell_mm_), column,
                      std::min(lattice_.columns, column + tile_columns));
    flow_.need(40);
    put_words_head(flow_.left(), flow_.width());
    put_flowing_words();
    put_notes(flow_.left(), flow_.width());
  }

  void put_column_tile(double cell, int first_column, int end_column) {
    const bool part = end_column - first_column < lattice_.columns;
    for (int step = 0; step < lattice_.edge;) {
      const double caption_mm = part ? 5.5 : 0;
      const int whole = lattice_.edge - step;
      // A chart that a page of its own would hold is not begun at the foot of this one.
      const int here = steps_in(flow_.room() - caption_mm, cell);
      if (here < std::min(whole, steps_in(flow_.bottom() - flow_.top() - 12 - caption_mm, cell)) && here < 12)
        flow_.new_page();
      if (part) {
        flow_.paragraph(style::label,
                        fmt::format("Columns {} to {} of {}", first_column + 1, end_column, lattice_.columns),
                        flow_.left(), flow_.width());
        flow_.skip(caption_mm - style::label.leading_mm);
      }
      const int end_step = std::min(lattice_.edge, step + steps_in(flow_.room(), cell));
      const Drawing drawing = chart(cell, step, end_step, first_column, end_column);
      place(flow_.sheet(), drawing,
            {flow_.left() + std::max(0.0, flow_.width() - drawing.width.mm()) / 2, flow_.y()});
      flow_.skip(drawing.height.mm() + 5);
      step = end_step;
    }
  }

  void put_flowing_words() {
    const WordRows words(flow_.typesetter(), sheet_.words.lines, flow_.width());
    const int columns = words.columns_in(flow_.width());
    for (std::size_t row = 0; row < words.rows().size();) {
      std::size_t fitting = words.fitting(row, columns, flow_.room());
      if (fitting == 0) {
        flow_.new_page();
        fitting = std::max<std::size_t>(1, words.fitting(row, columns, flow_.room()));
      }
      words.put(flow_, row, row + fitting, columns, flow_.left(), flow_.width());
      row += fitting;
    }
  }

  // After the last row

  void put_notes(double left_mm, double width_mm) {
    constexpr Style text{{TextRole::body, 11}, 4.9};
    const std::array<std::pair<std::string, std::string>, 5> notes{{
        {"The stitch", wording::technique_note(sheet_.plan)},
        {"Joining the ends", wording::closing_note(sheet_.plan)},
        {"At the turns", wording::turn_note(sheet_.plan)},
        {"Thread", thread_note(sheet_.thread)},
        {"Step by step", steps_note()},
    }};
    flow_.skip(3.5);
    for (const auto& [label, note] : notes) {
      if (note.empty()) continue;
      const double height = style::label.leading_mm + flow_.height_of(text, note, width_mm);
      const std::size_t page = flow_.page();
      flow_.need(height);
      if (flow_.page() != page) left_mm = flow_.left(), width_mm = flow_.width();
      flow_.put_lines(style::label, {label}, left_mm);
      flow_.paragraph(text, note, left_mm, width_mm);
      flow_.skip(2);
    }
  }

  [[nodiscard]] std::string steps_note() const {
    if (sheet_.steps_with.empty()) return {};
    return fmt::format("How the needle goes is drawn with {}{}.", sheet_.steps_with,
                       sheet_.steps.empty() ? "" : "; what is new here follows");
  }

  // Step diagrams, below the rest where there is room for all of them, else on a page of their own

  void put_steps() {
    if (sheet_.steps.empty()) return;
    constexpr std::size_t columns = 2;
    constexpr double before_mm = 8, head_mm = 1 + key_height_mm + 5, row_gap_mm = 8;
    const double column_mm = (flow_.width() - step_gutter_mm) / columns;
    const auto blocks =
        step_blocks(flow_.typesetter(), subject_.project, *sheet_.band, sheet_.plan, sheet_.steps, column_mm);
    std::vector<std::span<const StepBlock>> rows;
    double needed_mm = before_mm + style::subheading.leading_mm + head_mm;
    for (std::size_t i = 0; i < blocks.size(); i += columns) {
      rows.push_back(std::span(blocks).subspan(i, std::min(columns, blocks.size() - i)));
      needed_mm += height_of(rows.back()) + row_gap_mm;
    }
    if (flow_.page() == chart_page_) flow_.move_to(std::max(flow_.y(), chart_bottom_mm_));
    if (needed_mm <= flow_.room())
      flow_.skip(before_mm);
    else
      flow_.new_page();
    flow_.paragraph(style::subheading, "Step by step", flow_.left(), flow_.width());
    flow_.skip(1);
    put_step_key(flow_.sheet(), {flow_.left(), flow_.y()});
    flow_.skip(head_mm - 1);
    for (const auto& row : rows) {
      flow_.need(height_of(row));
      put_blocks(flow_.sheet(), row, {flow_.left(), flow_.y()}, column_mm);
      flow_.skip(height_of(row) + row_gap_mm);
    }
  }

  Flow& flow_;
  const Subject& subject_;
  std::size_t index_;
  const BandSheet& sheet_;
  const weave::Lattice& lattice_;
  double smallest_cell_mm_ = 3.5;
  std::size_t chart_page_ = 0;  ///< where the last part of a chart beside its words stands, and how far down
  double chart_bottom_mm_ = 0;
  std::vector<int> step_of_row_;
};

}  // namespace

void put_band(Flow& flow, const Subject& subject, std::size_t index) {
  BandPages(flow, subject, index).put();
}

}  // namespace evencount::page
