#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <span>

#include "language/texts.hpp"
#include "page/alternative.hpp"
#include "page/along_hand.hpp"
#include "page/band_chart.hpp"
#include "page/steps.hpp"
#include "page/word_rows.hpp"

namespace evencount::page {
namespace {

using namespace drawing;
using language::Texts;

constexpr double beside_gap_mm = 7;
constexpr double key_line_mm = 5.2, key_before_count_mm = 3;

/// One band's pages while they are made.
class BandPages {
 public:
  BandPages(Flow& flow, const Subject& subject, std::size_t index)
      : flow_(flow),
        subject_(subject),
        language_(subject.language),
        index_(index),
        sheet_(subject.bands[index]),
        lattice_(sheet_.plan.lattice),
        chart_(subject, sheet_, flow.typesetter()) {
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
    const WordRows whole(flow_.typesetter(), language_, sheet_.words.lines, 1e6);
    const double narrowest = chart_.width_mm(chart_.smallest_cell_mm(), lattice_.columns) + chart_.faces_mm();
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
    flow_.open(Part::place, band_place(index_));
    flow_.put_lines(style::heading, flow_.wrap(style::heading, name, flow_.width()), flow_.left());
    flow_.close_all();
    flow_.set_running_heading(language_.say(&Texts::continued, {{"name", name}}));
    if (const std::string note = one_line(band.note); !note.empty())
      flow_.paragraph(style::note, band.note, flow_.left(), flow_.width());
    flow_.skip(1.2);
    for (const std::string& line : band_facts(subject_, index_))
      flow_.paragraph(Style{{TextRole::label, 8.5}, 4.4, ink::quiet}, line, flow_.left(), flow_.width());
    flow_.skip(2.4);
    flow_.rule(flow_.left(), flow_.right(), ink::accent, 0.3);
    flow_.skip(5);
  }

  /// The beads of this band.
  struct Key {
    std::vector<int> counts;
    std::vector<std::size_t> beads;
    bool two = false;  ///< columns: where every name has room in one

    [[nodiscard]] double height_mm() const {
      return key_line_mm * static_cast<double>(two ? (beads.size() + 1) / 2 : beads.size());
    }
  };

  [[nodiscard]] Key key_in(double width_mm) const {
    Key key{weave::count_beads(sheet_.plan), {}};
    for (std::size_t bead = 0; bead < key.counts.size() && bead < subject_.project.legend.size(); ++bead)
      if (key.counts[bead] > 0) key.beads.push_back(bead);
    key.two = std::all_of(key.beads.begin(), key.beads.end(), [&](std::size_t bead) {
      return key_entry_width(bead, key.counts[bead]) <= (width_mm - WordRows::gutter_mm) / 2;
    });
    return key;
  }

  void put_key(double left_mm, double width_mm) {
    const auto [counts, beads, two] = key_in(width_mm);
    const double half_mm = (width_mm - WordRows::gutter_mm) / 2;
    const double column_mm = two ? half_mm : std::min(width_mm, 2 * half_mm);
    double y = flow_.y();
    bool second = false;
    for (const std::size_t bead : beads) {
      if (!second) {
        flow_.move_to(y);
        flow_.need(key_line_mm);
        y = flow_.y();
      }
      put_key_entry(bead, counts[bead], {left_mm + (second ? half_mm + WordRows::gutter_mm : 0), y}, column_mm);
      if (second || !two) y += key_line_mm;
      second = two && !second;
    }
    flow_.move_to(y + (second ? key_line_mm : 0));
  }

  [[nodiscard]] double key_name_left(const project::LegendEntry& entry) const {
    return 8 + std::max(4.5, 1.5 + flow_.typesetter().width_mm(style::table_bold.face, entry.letter));
  }

  /// What an entry takes with its name in full.
  [[nodiscard]] double key_entry_width(std::size_t bead, int count) const {
    const project::LegendEntry& entry = subject_.project.legend[bead];
    return key_name_left(entry) + flow_.typesetter().width_mm(style::table.face, one_line(entry.name)) +
           key_before_count_mm + flow_.typesetter().width_mm(style::table.face, language_.count(count));
  }

  void put_key_entry(std::size_t bead, int count, Point at, double width_mm) {
    const project::LegendEntry& entry = subject_.project.legend[bead];
    const double baseline = at.y_mm + 3.7;
    const double name_left = key_name_left(entry);
    const std::string number = language_.count(count);
    const double number_mm = flow_.typesetter().width_mm(style::table.face, number);
    flow_.open(Part::paragraph);
    put_swatch(flow_, subject_, bead, {at.x_mm, at.y_mm + 2.6});
    flow_.put_text(style::table_bold, entry.letter, {at.x_mm + 7.4, baseline});
    flow_.put_text(style::table,
                   flow_.typesetter().shortened(style::table.face, entry.name,
                                                width_mm - name_left - number_mm - key_before_count_mm),
                   {at.x_mm + name_left, baseline});
    flow_.put_text(style::table, number, {at.x_mm + width_mm, baseline}, Align::right);
    flow_.close();
  }

  [[nodiscard]] std::string chart_alternative() const {
    return alternative_of_chart(subject_.project, *sheet_.band, sheet_.plan, language_);
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

  /// Below the running heading.
  [[nodiscard]] double whole_page_mm() const {
    constexpr double running_heading_mm = 12;
    return flow_.bottom() - flow_.top() - running_heading_mm;
  }

  /// The cell width that shows the whole band at the height there is, or the usual one when it is too long.
  [[nodiscard]] double cell_beside(const WordRows& words) const {
    const double smallest = chart_.smallest_cell_mm(), fills = chart_.cell_filling(flow_.room());
    double cell = std::clamp(fills >= smallest ? fills : chart_.usual_cell(), smallest, chart_.largest_cell());
    const double beside = beside_gap_mm + chart_.faces_mm();
    const double two_columns = 2 * words.width_mm() + WordRows::gutter_mm;
    const double wanted = two_columns + chart_.width_mm(smallest, lattice_.columns) + beside <= flow_.width()
                              ? two_columns
                              : std::max(words.width_mm(), 60.0);
    while (cell > smallest && chart_.width_mm(cell, lattice_.columns) + beside + wanted > flow_.width())
      cell = std::max(smallest, cell - 0.1);
    return cell;
  }

  void put_beside(const WordRows& words) {
    // A key of many colours would leave the rows beside the chart no room: it stands above both.
    constexpr double key_share = 0.5, least_below_mm = 60;
    const bool key_above = key_in(words.width_mm()).height_mm() > key_share * flow_.room();
    if (key_above) {
      put_key(flow_.left(), flow_.width());
      flow_.skip(5);
      flow_.need(least_below_mm);
    }
    const double cell = cell_beside(words);
    const double left = flow_.left() + chart_.width_mm(cell, lattice_.columns) + chart_.faces_mm() + beside_gap_mm;
    const double width = flow_.right() - left;
    const double top = flow_.y();
    const std::size_t page = flow_.page();
    if (!key_above) {
      put_key(left, width);
      flow_.skip(5);
    }
    put_beside_head(words, left, width);
    std::size_t row = 0;
    // A key of many colours may have run on.
    int step = put_tile_beside(words, cell, flow_.page() == page ? top : flow_.top() + 10, 0, row, left, width);
    while (step < lattice_.edge) {
      flow_.new_page();
      step = put_tile_beside(words, cell, flow_.y(), step, row, left, width);
    }
    put_sum(left, width);
    put_notes(left, width);
  }

  /// The heading of the rows, which isn't left without one.
  void put_beside_head(const WordRows& words, double left, double width) {
    constexpr double most_head_mm = 24;
    const double first_row_mm = WordRows::leading_mm * static_cast<double>(words.rows().front().lines.size());
    flow_.need(std::min(most_head_mm + first_row_mm, whole_page_mm()));
    put_words_head(left, width);
  }

  /// One page's part: steps of the chart from `chart_top` down, their rows from the cursor down. Returns the next step.
  int put_tile_beside(const WordRows& words, double cell, double chart_top, int step, std::size_t& row,
                      double left, double width) {
    const int most = words.columns_in(width);
    const std::size_t left_over = words.rows().size() - row;
    int columns = std::min(most, left_over > 16 ? 2 : 1);
    while (columns < most && words.fitting(row, columns, flow_.room()) < left_over) ++columns;
    const std::size_t fitting = std::max<std::size_t>(1, words.fitting(row, columns, flow_.room()));
    const int most_steps = chart_.steps_in(flow_.bottom() - chart_top, cell);
    int end_step = std::min(lattice_.edge, step + most_steps);
    if (end_step < lattice_.edge) end_step = std::max(step + 1, end_step - overlap_cells);
    if (row + fitting < words.rows().size())
      end_step = std::min(end_step, std::max(step + 1, step_of_row_[row + fitting]));
    std::size_t end_row = row;
    while (end_row < step_of_row_.size() && step_of_row_[end_row] < end_step) ++end_row;
    const Span steps{step, end_step, std::min({lattice_.edge, end_step + overlap_cells, step + most_steps})};
    const Drawing tile = chart_.draw(cell, {chart_.whole().columns, steps});
    flow_.put_figure(tile, {flow_.left(), chart_top}, chart_alternative());
    chart_.put_faces(flow_, cell, steps, flow_.left() + tile.width.mm(), chart_top);
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
    const double smallest = chart_.smallest_cell_mm();
    const bool fits_across = lattice_.columns <= chart_.columns_in(flow_.width(), smallest);
    const double whole_page = whole_page_mm();
    const bool one_part = fits_across && lattice_.edge <= chart_.steps_in(whole_page, fitting_cell(flow_.width(), lattice_.columns));
    if (one_part)
      put_whole_chart();
    else
      put_parts();
    flow_.need(40);
    put_words_head(flow_.left(), flow_.width());
    put_flowing_words();
    put_sum(flow_.left(), flow_.width());
    put_notes(flow_.left(), flow_.width());
  }

  /// The usual cell, or one so small that the columns fit.
  [[nodiscard]] double fitting_cell(double width_mm, int columns) const {
    double cell = std::max(chart_.smallest_cell_mm(), chart_.usual_cell());
    while (cell > chart_.smallest_cell_mm() && chart_.width_mm(cell, columns) > width_mm) cell -= 0.05;
    return std::max(cell, chart_.smallest_cell_mm());
  }

  void put_whole_chart() {
    const double cell = fitting_cell(flow_.width(), lattice_.columns);
    if (chart_.steps_in(flow_.room(), cell) < lattice_.edge) flow_.new_page();
    const Drawing drawing = chart_.draw(cell, chart_.whole());
    const double left = flow_.left() + std::max(0.0, flow_.width() - drawing.width.mm()) / 2;
    flow_.put_figure(drawing, {left, flow_.y()}, chart_alternative());
    if (left + drawing.width.mm() + chart_.faces_mm() <= flow_.right())
      chart_.put_faces(flow_, cell, chart_.whole().steps, left + drawing.width.mm(), flow_.y());
    flow_.skip(drawing.height.mm() + 5);
  }

  /// A chart that is larger than a page: a key, then each part on a page of its own.
  void put_parts() {
    constexpr double mark_room_mm = 6;  // on each side
    const double smallest = chart_.smallest_cell_mm();
    const double width = flow_.width() - 2 * mark_room_mm;
    const double height = whole_page_mm() - style::label.leading_mm - 2 * mark_room_mm;
    const int most_columns = std::max(overlap_cells + 1, chart_.columns_in(width, smallest));
    PartsGrid grid = parts_of(lattice_.columns, lattice_.edge, most_columns, lattice_.edge);
    int widest = 0;
    for (const Span& span : grid.across) widest = std::max(widest, span.shown_end - span.first);
    const double cell = fitting_cell(width, widest);
    grid.down = spans_of(lattice_.edge, std::max(overlap_cells + 1, chart_.steps_in(height, cell)));
    const KeyPage key = put_key_page(flow_, subject_, sheet_, grid);
    std::size_t part = 0;
    for (std::size_t row = 0; row < grid.down.size(); ++row)
      for (std::size_t column = 0; column < grid.across.size(); ++column) {
        flow_.new_page();
        tell_page(key.numbers[part], part + 1);
        ++part;
        put_part(grid, row, column, cell, mark_room_mm);
      }
    flow_.new_page();
  }

  void tell_page(const KeyPage::Place& place, std::size_t part) {
    if (place.room_mm == 0) return;
    auto& text = std::get<Text>(flow_.sheet(place.page).marks[place.mark]);
    const std::string told = language_.say(&Texts::part_on_page, {{"part", part}, {"page", flow_.page() + 1}});
    if (flow_.typesetter().width_mm({text.role, text.size_pt}, told) <= place.room_mm) text.text = told;
  }

  void put_part(const PartsGrid& grid, std::size_t row, std::size_t column, double cell, double mark_room_mm) {
    const Span &columns = grid.across[column], &steps = grid.down[row];
    flow_.paragraph(style::label,
                    language_.say(&Texts::part_of_chart, {{"part", row * grid.across.size() + column + 1},
                                                          {"parts", grid.count()},
                                                          {"first", columns.first + 1},
                                                          {"last", columns.end},
                                                          {"columns", lattice_.columns},
                                                          {"first_step", steps.first + 1},
                                                          {"last_step", steps.end},
                                                          {"steps", lattice_.edge}}),
                    flow_.left(), flow_.width());
    const Drawing drawing = chart_.draw(cell, {columns, steps});
    const double top = flow_.y() + mark_room_mm;
    const double left = flow_.left() + mark_room_mm +
                        std::max(0.0, flow_.width() - 2 * mark_room_mm - drawing.width.mm()) / 2;
    flow_.put_figure(drawing, {left, top}, chart_alternative());
    const double right = left + drawing.width.mm(), foot = top + drawing.height.mm();
    const double beside = top + drawing.height.mm() / 5, along = left + drawing.width.mm() / 5;
    constexpr double off_mm = 3;
    if (column + 1 < grid.across.size())
      put_meeting_mark(flow_, mark_to_the_right(grid, row, column), {right + off_mm, beside});
    if (column > 0) put_meeting_mark(flow_, mark_to_the_right(grid, row, column - 1), {left - off_mm, beside});
    if (row + 1 < grid.down.size())
      put_meeting_mark(flow_, mark_below(grid, row, column), {along, foot + off_mm});
    if (row > 0) put_meeting_mark(flow_, mark_below(grid, row - 1, column), {along, top - off_mm});
    flow_.skip(drawing.height.mm() + 2 * mark_room_mm);
  }

  void put_flowing_words() {
    const WordRows words(flow_.typesetter(), language_, sheet_.words.lines, flow_.width());
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

  /// The sum of the counts behind the rows; check_counts has seen that it is that of the chart.
  void put_sum(double left_mm, double width_mm) {
    flow_.skip(1);
    flow_.paragraph(style::caption, sum_of_rows(language_, sheet_.plan), left_mm, width_mm);
  }

  using Note = std::pair<language::Text, std::string>;
  static constexpr Style note_style{{TextRole::body, 11}, 4.9};
  static constexpr double before_notes_mm = 3.5, between_notes_mm = 2;

  [[nodiscard]] double notes_height(std::span<const Note> notes, double width_mm) const {
    double mm = 0;
    for (const Note& note : notes)
      mm += style::label.leading_mm + flow_.height_of(note_style, note.second, width_mm) + between_notes_mm;
    return mm;
  }

  /// In the words' column; where that has no room for all of them, over the page's whole width below the chart and the
  /// words; where that has none either, the last ones go below the chart, or on together on the next page.
  void put_notes(double left_mm, double width_mm) {
    std::vector<Note> notes{{&Texts::note_stitch, wording::technique_note(sheet_.plan, language_)},
                            {&Texts::note_joining, wording::closing_note(seen_plan(), language_)},
                            {&Texts::note_turns, wording::turn_note(sheet_.plan, language_)},
                            {&Texts::thread, thread_note(language_, sheet_.thread)},
                            {&Texts::step_by_step, steps_note()}};
    std::erase_if(notes, [](const Note& note) { return note.second.empty(); });
    flow_.skip(before_notes_mm);
    const double below_all =
        flow_.page() == chart_page_ ? std::max(flow_.y(), chart_bottom_mm_ + before_notes_mm) : flow_.y();
    if (notes_height(notes, width_mm) - between_notes_mm > flow_.room() &&
        notes_height(notes, flow_.width()) - between_notes_mm <= flow_.bottom() - below_all) {
      flow_.move_to(below_all);
      left_mm = flow_.left(), width_mm = flow_.width();
    }
    const double below_chart_mm = left_mm - beside_gap_mm - flow_.left();
    constexpr double least_column_mm = 35;
    double lowest_mm = 0;  // of the words' column, on the page that is left for the chart's
    for (std::size_t i = 0; i < notes.size(); ++i) {
      const auto& [label, note] = notes[i];
      const std::size_t page = flow_.page();
      const auto rest = std::span<const Note>(notes).subspan(i);
      const double together_mm = notes_height(rest.first(rest.size() == 2 ? 2 : 1), width_mm) - between_notes_mm;
      if (together_mm > flow_.room() && page == chart_page_ && below_chart_mm >= least_column_mm &&
          notes_height(rest, below_chart_mm) - between_notes_mm <=
              flow_.bottom() - chart_bottom_mm_ - before_notes_mm) {
        lowest_mm = flow_.y();
        flow_.move_to(chart_bottom_mm_ + before_notes_mm);
        left_mm = flow_.left(), width_mm = below_chart_mm;
      } else {
        flow_.need(together_mm);
      }
      if (flow_.page() != page) left_mm = flow_.left(), width_mm = flow_.width();
      const bool link = label == &Texts::step_by_step && sheet_.steps_with;
      flow_.put_lines(style::label, {std::string(language_.text(label))}, left_mm);
      if (link) flow_.open(Part::link, band_place(*sheet_.steps_with));
      flow_.paragraph(note_style, note, left_mm, width_mm);
      if (link) flow_.close_all();
      flow_.skip(between_notes_mm);
    }
    flow_.move_to(std::max(flow_.y(), lowest_mm));
  }

  [[nodiscard]] weave::Plan seen_plan() const {
    return sheet_.left_handed ? sides_changed(sheet_.plan) : sheet_.plan;
  }

  [[nodiscard]] std::string steps_note() const {
    if (!sheet_.steps_with) return {};
    return language_.say(sheet_.steps.empty() ? &Texts::steps_with : &Texts::steps_with_and_here,
                         {{"name", one_line(subject_.bands[*sheet_.steps_with].band->name)}});
  }

  // Step diagrams, below the rest where there is room for all of them or much of the page is left, else on a page of their own

  void put_steps() {
    if (sheet_.steps.empty()) return;
    constexpr std::size_t columns = 2;
    constexpr double before_mm = 8, head_mm = 1 + key_height_mm + 5, row_gap_mm = 8;
    const double column_mm = (flow_.width() - step_gutter_mm) / columns;
    const auto blocks = step_blocks(flow_.typesetter(),
                                    {subject_.project, sheet_.worked, sheet_.plan, sheet_.left_handed, language_},
                                    sheet_.steps, column_mm);
    std::vector<std::span<const StepBlock>> rows;
    double needed_mm = before_mm + style::subheading.leading_mm + head_mm;
    for (std::size_t i = 0; i < blocks.size(); i += columns) {
      rows.push_back(std::span(blocks).subspan(i, std::min(columns, blocks.size() - i)));
      needed_mm += height_of(rows.back()) + row_gap_mm;
    }
    needed_mm -= row_gap_mm;
    if (flow_.page() == chart_page_) flow_.move_to(std::max(flow_.y(), chart_bottom_mm_));
    const double first_mm = before_mm + style::subheading.leading_mm + head_mm + height_of(rows.front());
    const double page_mm = flow_.bottom() - flow_.top();
    if (needed_mm <= flow_.room() || (flow_.room() > 0.4 * page_mm && first_mm <= flow_.room()))
      flow_.skip(before_mm);
    else
      flow_.new_page();
    flow_.paragraph(style::subheading, language_.text(&Texts::step_by_step), flow_.left(), flow_.width());
    flow_.skip(1);
    put_step_key(flow_.sheet(), flow_.typesetter(), language_, {flow_.left(), flow_.y()});
    flow_.skip(head_mm - 1);
    for (const auto& row : rows) {
      flow_.need(height_of(row));
      put_blocks(flow_.sheet(), row, {flow_.left(), flow_.y()}, column_mm);
      flow_.skip(height_of(row) + row_gap_mm);
    }
  }

  Flow& flow_;
  const Subject& subject_;
  const language::Language& language_;
  std::size_t index_;
  const BandSheet& sheet_;
  const weave::Lattice& lattice_;
  BandChart chart_;
  std::size_t chart_page_ = 0;  ///< where the last part of a chart beside its words stands, and how far down
  double chart_bottom_mm_ = 0;
  std::vector<int> step_of_row_;
};

}  // namespace

void put_band(Flow& flow, const Subject& subject, std::size_t index) {
  BandPages(flow, subject, index).put();
}

}  // namespace evencount::page
