#include "weave/moments.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>
#include <tuple>
#include <utility>

#include "language/texts.hpp"
#include "weave/moment_stretches.hpp"
#include "weave/moment_words.hpp"

namespace evencount::weave {
namespace {

using language::Texts;

language::Text way_text(Travel travel) {
  switch (travel) {
    case Travel::left:
      return &Texts::to_the_left;
    case Travel::right:
      return &Texts::to_the_right;
    case Travel::forth:
      return &Texts::downwards;
    case Travel::back:
      return &Texts::upwards;
  }
  return &Texts::to_the_left;
}

class Finder {
 public:
  Finder(const Plan& plan, std::span<const int> new_thread_rows, const MomentStyle& style)
      : plan_(plan),
        language_(*style.language),
        sides_changed_(style.sides_changed),
        stretches_(plan),
        teller_(plan, *style.language),
        new_thread_rows_(new_thread_rows) {}

  std::vector<Moment> find() {
    if (plan_.rows.empty() || groups(0).empty()) return {};
    find_start();
    find_weft();
    find_ring();
    find_turn();
    find_outline_changes();
    find_left_out();
    find_end_beads();
    find_row_ends();
    find_stitches();
    find_step_up();
    find_new_thread();
    find_joins();
    std::stable_sort(found_.begin(), found_.end(),
                     [](const Moment& a, const Moment& b) { return a.first_stitch < b.first_stitch; });
    add_finish();
    return std::move(found_);
  }

 private:
  [[nodiscard]] const Stitch& stitch(std::size_t i) const { return plan_.stitches[i]; }
  [[nodiscard]] const std::vector<Group>& groups(std::size_t row) const { return stretches_.of(row); }
  [[nodiscard]] bool is_row(std::size_t row) const {
    return row < plan_.rows.size() && has_beads(plan_.rows[row].kind) && !groups(row).empty();
  }
  [[nodiscard]] int strung_in(std::size_t row) const {
    int strung = 0;
    for (const Group& group : groups(row)) strung += group.strung;
    return strung;
  }

  [[nodiscard]] std::string say(language::Text text, std::initializer_list<language::Value> values = {}) const {
    return language_.say(text, values);
  }
  [[nodiscard]] std::string name(std::size_t row) const { return the_row(language_, plan_.rows[row]); }
  [[nodiscard]] std::string of(std::size_t row) const { return of_row(language_, plan_.rows[row]); }
  [[nodiscard]] std::string at_beginning(std::size_t row) const { return language::capitalised(name(row)); }
  [[nodiscard]] std::string way(Travel travel) const {
    const bool changes = sides_changed_ && axis_of(travel) == Axis::across;
    return say(way_text(changes ? opposite(travel) : travel));
  }
  [[nodiscard]] std::string beads(int count) const { return some_beads(language_, count); }
  /// The stretch as a sentence without its full stop.
  [[nodiscard]] std::string told(std::size_t first, std::size_t end,
                                 int most = most_beads_of_a_moment) const {
    return language::capitalised(teller_.tell(first, end, stretches_.shown_end(first, end, most)));
  }
  /// The same where it does not begin a sentence.
  [[nodiscard]] std::string told_within(std::size_t first, std::size_t end) const {
    return teller_.tell(first, end, stretches_.shown_end(first, end));
  }
  [[nodiscard]] std::string told(const Group& group) const { return told(group.first, group.end); }

  /// Adds a moment unless one that shows all of it has been found.
  void add(MomentKind kind, std::string title, std::string text, std::size_t first, std::size_t end) {
    end = stretches_.shown_end(first, end);
    if (end <= first) return;
    for (const Moment& other : found_)
      if (other.first_stitch <= first && end <= other.end_stitch) return;
    put({.kind = kind,
         .title = std::move(title),
         .text = std::move(text),
         .first_stitch = first,
         .end_stitch = end,
         .new_from = first});
  }
  void add(MomentKind kind, std::string title, std::string text, const Group& group) {
    add(kind, std::move(title), std::move(text), group.first, group.end);
  }
  void put(Moment moment) {
    moment.at_seam = std::any_of(plan_.stitches.begin() + static_cast<std::ptrdiff_t>(moment.first_stitch),
                                 plan_.stitches.begin() + static_cast<std::ptrdiff_t>(moment.end_stitch),
                                 [](const Stitch& one) { return one.act == Act::join; });
    if (moment.at_seam) std::tie(moment.last_end, moment.first_end) = ends_of_seam();
    moment.window = stretches_.window_of(moment);
    found_.push_back(std::move(moment));
  }

  // The beginning

  void find_start() {
    const auto& stitches = groups(0);
    if (strung_at_once() == strung_in(0)) {
      add_strung_start();
      return;
    }
    std::size_t shown = 1;
    while (shown < stitches.size() && stretches_.beads_in(0, stitches[shown].end) <= longest_run) ++shown;
    const std::size_t end = stitches[shown - 1].end;
    const bool ladder = stretches_.turns(0, end, Turn::edge);
    std::string text = say(&Texts::moment_start_text, {{"told", told(0, end)}});
    if (shown < stitches.size())
      text += say(&Texts::moment_go_on_until, {{"row", name(0)}, {"beads", beads(strung_in(0))}});
    add(MomentKind::start, say(ladder ? &Texts::moment_start_ladder : &Texts::moment_start), std::move(text), 0,
        end);
    if (shown == 1 && stitches.size() > 1) add_stitch(0, 1);
  }

  /// How many beads of the first row are strung before the needle does anything else.
  [[nodiscard]] int strung_at_once() const {
    const Group& first = groups(0).front();
    std::size_t i = first.first;
    int beads = 0;
    while (i < first.end && !goes_through(stitch(i).act)) ++i;
    for (; i < first.end && stitch(i).act == Act::pick_up; ++i) ++beads;
    return beads;
  }

  /// The first row strung in one go.
  void add_strung_start() {
    const Row& row = plan_.rows.front();
    const std::size_t end = stretches_.after_last_strung(groups(0).front());
    const bool one_row = row.first_number == row.last_number;
    // Where the sentence goes on behind a colon it has no capital.
    const bool alone = language_.text(&Texts::moment_strung_row).starts_with("{told}") || !one_row;
    std::string text =
        say(one_row ? &Texts::moment_strung_row : &Texts::moment_strung_rows,
            {{"row", name(0)}, {"told", alone ? told(0, end) : told_within(0, end)}});
    if (plan_.on_warps) text += say(&Texts::moment_press_up);
    add(MomentKind::start, say(&Texts::moment_start), std::move(text), 0, end);
  }

  void find_weft() {
    const auto found = std::find_if(plan_.stitches.begin(), plan_.stitches.end(), [](const Stitch& one) {
      return one.act == Act::turn && one.turn == Turn::warp;
    });
    if (found == plan_.stitches.end()) return;
    const auto turn = static_cast<std::size_t>(found - plan_.stitches.begin());
    const std::size_t end = groups(0).back().end;
    add(MomentKind::weft, say(&Texts::moment_weft), say(&Texts::moment_weft_text, {{"told", told(turn, end)}}), turn,
        end);
  }

  void find_ring() {
    if (plan_.rows.front().kind != RowKind::round) return;
    const Group& strung = groups(0).back();
    const std::size_t first = stretches_.after_last_strung(strung);
    const std::size_t end = first < strung.end ? strung.end : is_row(1) ? groups(1).front().end : first;
    add(MomentKind::ring, say(&Texts::moment_ring),
        say(&Texts::moment_ring_text,
            {{"told", told(first, end)}, {"beads", beads(strung_in(0))}, {"of_row", of(0)}}),
        first, end);
  }

  // Rows

  /// From one row into the next where nothing else is to be said about it.
  void find_turn() {
    if (plan_.rows.front().kind == RowKind::round) return;
    for (std::size_t row = 1; is_row(row); ++row) {
      if (plan_.rows[row].begins != RowEnd::plain) continue;
      Group group = groups(row).front();
      if (plan_.on_warps) group.end = stretches_.after_bead_before(first_warp_turn(group));
      add(MomentKind::turn, say(&Texts::moment_into_row, {{"row", name(row)}}),
          say(&Texts::moment_into_row_text,
              {{"row", at_beginning(row)}, {"way", way(plan_.rows[row].travel)}, {"told", told(group)}}),
          group);
      return;
    }
  }

  [[nodiscard]] std::size_t first_warp_turn(const Group& group) const {
    std::size_t i = group.first;
    while (i < group.end && !(stitch(i).act == Act::turn && stitch(i).turn == Turn::warp)) ++i;
    return i;
  }

  void find_outline_changes() {
    bool out_first = false, out_last = false, in_first = false;
    for (std::size_t row = 1; is_row(row); ++row) {
      const Group &first = groups(row).front(), &last = groups(row).back();
      if (plan_.rows[row].begins == RowEnd::increase && !std::exchange(out_first, true))
        add(MomentKind::increase, say(&Texts::moment_wider_beginning),
            say(&Texts::moment_begins_out, {{"row", at_beginning(row)}, {"told", told(first)}}), first);
      if (plan_.rows[row].ends == RowEnd::increase && !std::exchange(out_last, true)) {
        const bool held = stitch(last.end - 1).act != Act::pick_up;
        add(MomentKind::increase, say(&Texts::moment_wider_end),
            say(held ? &Texts::moment_ends_out : &Texts::moment_ends_out_held_later,
                {{"row", at_beginning(row)}, {"told", told(last)}}),
            last);
      }
      if (plan_.rows[row].begins == RowEnd::decrease && !std::exchange(in_first, true)) {
        const std::size_t from = way_in(row);
        add(MomentKind::decrease, say(&Texts::moment_narrower_beginning),
            say(&Texts::moment_begins_in, {{"row", at_beginning(row)}, {"told", told(from, first.end)}}), from,
            first.end);
      }
    }
  }

  /// The first turn after the last bead strung in the row before.
  [[nodiscard]] std::size_t way_in(std::size_t row) const {
    const std::size_t end = groups(row).front().end;
    std::size_t i = stretches_.after_last_strung(groups(row - 1).back());
    while (i < end && stitch(i).act != Act::turn && stitch(i).act != Act::under) ++i;
    return i < end ? i : groups(row).front().first;
  }

  /// Two beads gone through with a place between them that stays empty.
  void find_left_out() {
    for (std::size_t row = 1; is_row(row); ++row)
      for (const Group& group : groups(row))
        for (std::size_t i = group.first + 1; i < group.end; ++i)
          if (goes_through(stitch(i - 1).act) && goes_through(stitch(i).act) &&
              leaves_out(stitch(i - 1), stitch(i))) {
            add(MomentKind::decrease, say(&Texts::moment_left_out),
                say(&Texts::moment_left_out_text, {{"told", told(group)}}), group);
            return;
          }
  }

  [[nodiscard]] bool leaves_out(const Stitch& a, const Stitch& b) const {
    const Spot way = apart(plan_.lattice, exit_of(plan_.lattice.site(a.cell), a.travel),
                           exit_of(plan_.lattice.site(b.cell), opposite(b.travel)));
    return std::abs(axis_of(b.travel) == Axis::across ? way.across : way.along) >= 2;
  }

  /// How the last bead of a row is held where the next row does not hold it.
  void find_end_beads() {
    bool figure_eight = false, loop = false;
    for (std::size_t row = 0; is_row(row) && !(figure_eight && loop); ++row) {
      const Group& group = groups(row).back();
      const std::size_t after = stretches_.after_last_strung(group);
      const Stitch& last = stitch(group.end - 1);
      const bool back = std::any_of(
          plan_.stitches.begin() + static_cast<std::ptrdiff_t>(group.first),
          plan_.stitches.begin() + static_cast<std::ptrdiff_t>(after), [&](const Stitch& one) {
            return one.act == Act::pick_up && one.cell == last.cell && one.travel == opposite(last.travel);
          });
      if (!back) continue;
      const auto turns = std::count_if(plan_.stitches.begin() + static_cast<std::ptrdiff_t>(after),
                                       plan_.stitches.begin() + static_cast<std::ptrdiff_t>(group.end),
                                       [](const Stitch& one) { return one.act == Act::turn; });
      const bool looped = stretches_.turns(after, group.end, Turn::loop);
      if (looped && !std::exchange(loop, true)) add_end_bead(MomentKind::loop, &Texts::moment_loop, row, group);
      if (!looped && turns == 3 && !std::exchange(figure_eight, true))
        add_end_bead(MomentKind::figure_eight, &Texts::moment_figure_eight, row, group);
    }
  }

  void add_end_bead(MomentKind kind, language::Text title, std::size_t row, const Group& group) {
    add(kind, say(title), say(&Texts::moment_end_bead, {{"of_row", of(row)}, {"told", told(group)}}), group);
  }

  /// What else happens after a row's last bead: past its outside, or away to rows long done.
  void find_row_ends() {
    for (std::size_t row = 1; is_row(row); ++row) {
      if (plan_.rows[row].ends != RowEnd::plain) continue;
      const Group& group = groups(row).back();
      const std::size_t goes_to = teller_.row_of(stitch(group.end - 1).cell);
      const bool away = goes_to + 1 < row;
      if (!away && !stretches_.turns(stretches_.after_last_strung(group), group.end, Turn::outside)) continue;
      const std::string title = away ? say(&Texts::moment_back_to, {{"row", name(goes_to)}})
                                     : say(&Texts::moment_end_of, {{"of_row", of(row)}});
      const std::string text = is_row(row + 1) ? say(&Texts::moment_row_end_ready,
                                                     {{"told", told(group)}, {"row", name(row + 1)}})
                                               : say(&Texts::moment_row_end_text, {{"told", told(group)}});
      add(MomentKind::turn, title, text, group);
      return;
    }
  }

  // Stitches

  void add_stitch(std::size_t row, std::size_t place) {
    const Group& group = groups(row)[place];
    const bool under = std::any_of(plan_.stitches.begin() + static_cast<std::ptrdiff_t>(group.first),
                                   plan_.stitches.begin() + static_cast<std::ptrdiff_t>(group.end),
                                   [](const Stitch& one) { return one.act == Act::under; });
    std::string text = say(&Texts::moment_stitch_text, {{"told", told(group)}});
    if (place + 1 < groups(row).size())
      text += say(&Texts::moment_stitch_go_on, {{"row", name(row)}, {"beads", beads(strung_in(row))}});
    add(under ? MomentKind::under : MomentKind::stitch, say(&Texts::moment_stitch, {{"of_row", of(row)}}),
        std::move(text), group);
  }

  /// The second stitch of the second row, the first where it begins like any other; failing that, of the row after.
  void find_stitches() {
    if (plan_.on_warps) return;
    const bool round = plan_.rows.front().kind == RowKind::round;
    for (std::size_t row = 1; row <= 2 && is_row(row); ++row)
      for (std::size_t place = round ? 0 : 1; place < groups(row).size() && place < 3; ++place) {
        const std::size_t before = found_.size();
        add_stitch(row, place);
        if (found_.size() > before) return;
      }
  }

  void find_step_up() {
    for (std::size_t row = 1; is_row(row); ++row) {
      if (plan_.rows[row].kind != RowKind::round) continue;
      const Group &first = groups(row).front(), &last = groups(row).back();
      const bool goes_on =
          stretches_.beads_in(last.first, last.end) > stretches_.beads_in(first.first, first.end);
      if (!goes_on || teller_.row_of(stitch(last.end - 1).cell) != row) continue;
      add(MomentKind::step_up, say(&Texts::moment_step_up),
          say(&Texts::moment_step_up_text, {{"told", told(last)}, {"of_row", of(row)}}), last);
      return;
    }
  }

  // Threads and seams

  void find_new_thread() {
    constexpr int beads_before = 3;  // that it comes in through; common practice, no source
    for (std::size_t row = 1; is_row(row); ++row) {
      if (std::find(new_thread_rows_.begin(), new_thread_rows_.end(), plan_.rows[row].first_number) ==
          new_thread_rows_.end())
        continue;
      const Group& group = groups(row).front();
      const auto [first, came_through] = beads_back(group.first, beads_before);
      const std::size_t end = stretches_.shown_end(group.first, group.end, most_beads_of_a_moment - came_through);
      if (end <= group.first) continue;
      put({.kind = MomentKind::new_thread,
           .title = say(&Texts::moment_new_thread),
           .text = say(&Texts::moment_new_thread_text,
                       {{"beads", beads(came_through)},
                        {"marks", circled(language_, 1, came_through)},
                        {"row", name(row)},
                        {"told", teller_.tell(group.first, group.end, end, came_through + 1)}}),
           .first_stitch = first,
           .end_stitch = end,
           .new_from = group.first});
      return;
    }
  }

  /// The stitch so many beads before another, and how many there are.
  [[nodiscard]] std::pair<std::size_t, int> beads_back(std::size_t from, int most) const {
    int beads = 0;
    while (from > 0 && beads < most) beads += goes_through(stitch(--from).act) ? 1 : 0;
    return {from, beads};
  }

  void find_joins() {
    constexpr int most_of_zip = 12, most_of_sewing = 7;  // the rest goes the same way
    for (const Row& row : plan_.rows) {
      if (has_beads(row.kind)) continue;
      const std::size_t first = stretches_.after_bead_before(row.first_stitch);
      const std::size_t end = stretches_.after_bead_before(row.end_stitch);
      if (row.kind == RowKind::zip) {
        const auto [last_end, first_end] = ends_of_seam();
        add(MomentKind::zip, say(&Texts::moment_zip),
            say(&Texts::moment_zip_text,
                {{"last_end", last_end}, {"first_end", first_end}, {"told", told(first, end, most_of_zip)}}),
            first, stretches_.shown_end(first, end, most_of_zip));
      } else {
        const std::size_t shown = stretches_.shown_end(first, end, most_of_sewing);
        add(MomentKind::sew, say(&Texts::moment_sew), say(&Texts::moment_sew_text, {{"told", told(first, shown)}}),
            first, shown);
      }
    }
  }

  /// The two sides of the seam by the row that each of them is, or by their place where rows run along the piece.
  [[nodiscard]] std::pair<std::string, std::string> ends_of_seam() const {
    std::map<std::size_t, int> last, first;  // how many of each row are joined
    for (const Stitch& join : plan_.stitches)
      if (join.act == Act::join)
        ++(join.cell.step < plan_.lattice.edge / 2 ? first : last)[teller_.row_of(join.cell)];
    const auto main_row = [](const std::map<std::size_t, int>& rows) -> std::optional<std::size_t> {
      int all = 0;
      for (const auto& [row, count] : rows) all += count;
      for (const auto& [row, count] : rows)
        if (2 * count > all) return row;
      return std::nullopt;
    };
    const auto last_row = main_row(last), first_row = main_row(first);
    if (!last_row || !first_row) return {say(&Texts::last_beads), say(&Texts::first_beads)};
    // Of rows 1 and 2, strung together, it is row 1 that lies at the end.
    return {name(*last_row), say(&Texts::the_row, {{"first", plan_.rows[*first_row].first_number}})};
  }

  void add_finish() {
    constexpr int last_beads = 3;
    const auto [first, came_through] = beads_back(plan_.stitches.size(), last_beads);
    put({.kind = MomentKind::finish,
         .title = say(&Texts::moment_finish),
         .text = say(&Texts::moment_finish_text, {{"n", came_through}, {"marks", circled(language_, 1, came_through)}}),
         .first_stitch = first,
         .end_stitch = plan_.stitches.size(),
         .new_from = plan_.stitches.size()});
  }

  const Plan& plan_;
  const language::Language& language_;
  bool sides_changed_;
  Stretches stretches_;
  MomentTeller teller_;
  std::span<const int> new_thread_rows_;
  std::vector<Moment> found_;
};

}  // namespace

std::string_view moment_name(MomentKind kind) {
  constexpr std::array<std::string_view, 15> names{
      "start", "ring",    "turn", "stitch",     "under", "increase",  "decrease", "figure-8",
      "loop",  "step up", "weft", "new thread", "zip",   "sewn join", "finish"};
  return names[static_cast<std::size_t>(kind)];
}

std::size_t lead_in(const Plan& plan, const Moment& moment) {
  for (std::size_t i = moment.first_stitch; i > 0 && moment.kind != MomentKind::new_thread; --i)
    if (goes_through(plan.stitches[i - 1].act)) return i - 1;
  return moment.first_stitch;
}

std::vector<Moment> moments(const Plan& plan, std::span<const int> new_thread_rows, const MomentStyle& style) {
  return Finder(plan, new_thread_rows, style).find();
}

}  // namespace evencount::weave
