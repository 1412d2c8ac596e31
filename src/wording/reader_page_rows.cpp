// Rows while they are read: how they begin, which beads they take, when they are complete.

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/text.hpp"
#include "chart/letters.hpp"
#include "wording/reader_page.hpp"

namespace evencount::wording::reader {
namespace {

using enum TokenKind;
using weave::RowEnd;

/// Unfinished rows side by side; no page has so many columns.
constexpr std::size_t most_open_rows = 16;

std::string_view change_word(RowEnd end) {
  return end == RowEnd::increase ? "increase" : "decrease";
}

}  // namespace

/// The rules of the rows that a label begins or goes on with.
const RowRules& PageReader::rules_of(const Label& label) const {
  if (label.first_row != 1 && !bands_.empty()) return *bands_.back().rules;
  if (wanted_.rules != nullptr) return *wanted_.rules;
  if (const Facts* facts = facts_.facts()) return *facts->rules;
  return flat_rules(false);
}

/// Rounds where nobody has said what is worked in rounds are none of the rows that are being read.
bool PageReader::is_stray_round(const Label& label) const {
  return label.round && !rules_of(label).rounds;
}

Result<Done> PageReader::check_number(const Label& label, const RowRules& rules) const {
  const int last_of_first = rules.first_two_together ? 2 : 1;
  const bool first_rows = label.first_row == 1 && label.last_row == last_of_first;
  const std::string where = fmt::format("line {}", line_);
  const std::string_view word = rules.rounds ? "round" : "row";
  const std::string found = row_text(label.first_row, label.last_row, rules.rounds);
  const std::string first = row_text(1, last_of_first, rules.rounds);
  if (label.first_row > rules.most_rows || label.last_row > rules.most_rows)
    return Problem{ProblemCode::out_of_range, where, found,
                   fmt::format("{}s up to {}", word, rules.most_rows)};
  if (rules.first_two_together && label.last_row <= 2 && !first_rows)
    return bad_words(where, found + " alone", first + " in one line, as they are strung together");
  if (label.first_row < 1) return bad_words(where, found, fmt::format("{}s from 1", word));
  if (!first_rows && label.first_row != label.last_row)
    return bad_words(
        where, found + " in one line",
        fmt::format("a line for each {}{}", word, rules.first_two_together ? " after " + first : ""));
  if (first_rows) return Done{};
  if (bands_.empty()) return bad_words(where, fmt::format("{} before {}", found, first), first + " first");
  return check_free(label);
}

Result<Done> PageReader::check_free(const Label& label) const {
  const FoundBand& band = bands_.back();
  const auto row = band.rows.find(label.first_row);
  const auto repeat = band.repeats.find(label.first_row);
  if (row == band.rows.end() && repeat == band.repeats.end()) return Done{};
  return bad_words(
      fmt::format("line {}", line_),
      fmt::format("{} again, as in line {}", row_text(label.first_row, label.last_row, band.rules->rounds),
                  row != band.rows.end() ? row->second.line : repeat->second.line),
      "each row once");
}

/// Whether the label says only what can be said of the technique's rows.
Result<Done> PageReader::check_label(const Label& label, const RowRules& rules) const {
  const std::string name = row_text(label.first_row, label.last_row, rules.rounds);
  const std::string where = fmt::format("line {}, {}", line_, name);
  if (label.spelled && label.round != rules.rounds)
    return bad_words(where, row_text(label.first_row, label.last_row, label.round), name);
  if (label.travel && weave::axis_of(*label.travel) != rules.axis)
    return bad_words(where, rules.axis == weave::Axis::across ? "direction D or U" : "direction L or R",
                     rules.axis == weave::Axis::across ? "L or R" : "D or U");
  if (label.contradicts) return bad_words(where, "an increase and a decrease at the same end", "one of them");
  const bool first = label.first_row == 1;
  if (label.begins && (!rules.marked || first))
    return bad_words(
        where, fmt::format("{} at the beginning", change_word(*label.begins)),
        first ? "nothing of the beginning: no row comes before" : fmt::format("none in {}", rules.name));
  if (label.ends && (!rules.marked || (first && !rules.first_two_together)))
    return bad_words(
        where, fmt::format("{} at the end", change_word(*label.ends)),
        first ? "nothing of the end: no row comes before" : fmt::format("none in {}", rules.name));
  if (label.on_back && (!rules.back || first))
    return bad_words(where, "a round on the back",
                     rules.back ? "the ring first" : fmt::format("none in {}", rules.name));
  return Done{};
}

Result<Done> PageReader::begin_row(const Label& label, Place place) {
  const RowRules& rules = rules_of(label);
  if (auto number = check_number(label, rules); !number) return number;
  if (auto sound = check_label(label, rules); !sound) return sound;
  if (label.first_row == 1) {
    // Nothing of the band before goes on.
    open_.clear();
    for (auto* pending : {&pending_, &resumable_})
      std::erase_if(*pending, [](const PendingHead& head) { return head.taken; });
    auto facts = facts_.release();
    if (facts && wanted_.rules != nullptr && facts->rules != wanted_.rules)
      return bad_words(fmt::format("line {}, the facts", facts->line), std::string(facts->rules->name),
                       std::string(wanted_.rules->name));
    const bool named = facts || wanted_.rules != nullptr;
    bands_.push_back(
        {.name = std::exchange(name_, {}), .rules = &rules, .named = named, .facts = std::move(facts)});
  }
  close_rows_above(place.column);
  FoundRow& row = bands_.back().rows[label.first_row];
  row = {.first_row = label.first_row,
         .last_row = label.last_row,
         .line = place.line,
         .round = rules.rounds,
         .travel = label.travel,
         .begins = label.begins.value_or(RowEnd::plain),
         .ends = label.ends.value_or(RowEnd::plain),
         .on_back = label.on_back};
  return take_beads({.row = &row, .column = place.column});
}

/// Rows that are worked again. `at_` is behind what asks for it.
Result<Done> PageReader::take_repeat(const Head& head, Place place) {
  const Label& label = head.label;
  const RowRules& rules = *bands_.back().rules;
  const std::string where = fmt::format("line {}", line_);
  const std::string found = row_text(label.first_row, label.last_row, rules.rounds);
  if (std::max(label.first_row, label.last_row) > rules.most_rows)
    return Problem{ProblemCode::out_of_range, where, found,
                   fmt::format("{}s up to {}", rules.rounds ? "round" : "row", rules.most_rows)};
  if (label.first_row < 1 || label.last_row < label.first_row)
    return bad_words(where, found, "the lower number first");
  if (auto free = check_free(label); !free) return free;
  if (auto sound = check_label(label, rules); !sound) return sound;
  if (label.begins || label.ends)
    return bad_words(fmt::format("{}, {}", where, found), "a change at an end",
                     "the changes of the rows named");
  close_rows_above(place.column);
  bands_.back().repeats[label.first_row] = {.first_row = label.first_row,
                                            .last_row = label.last_row,
                                            .line = place.line,
                                            .travel = label.travel,
                                            .on_back = label.on_back,
                                            .first_source = head.again->first_row,
                                            .last_source = head.again->last_row,
                                            .times = head.again->times};
  line_had_row_ = true;
  row_ended_here_ = true;
  return Done{};
}

/// A label ends the unfinished row that it stands below; on the same line it stands beside it. A row of unknown
/// length ends at any label, unless a comma or an open list promised more.
void PageReader::close_rows_above(int column) {
  if (open_.empty()) return;
  const FoundRow* above = open_[owner_of(column)].row;
  std::erase_if(open_, [&](const OpenRow& open) {
    const bool below = open.row == above && open.last_line != line_ && open.column <= column + label_slack;
    return below || (!open.after_comma && !open.row->open_list && !needed(*open.row));
  });
}

Result<Done> PageReader::take_beads(OpenRow open) {
  line_had_row_ = true;
  open.last_line = line_;
  open.first_token = at_;
  const bool only_runs = stretch_at(at_).only_runs;
  for (bool more = true; more && at_ < tokens_.size();) {
    const auto taken = take_bead_token(open, only_runs);
    if (!taken) return taken.problem();
    more = *taken;
  }
  row_ended_here_ = true;
  return leave_open(open);
}

/// False when the row has no part in what stands at `at_`.
Result<bool> PageReader::take_bead_token(OpenRow& open, bool only_runs) {
  FoundRow& row = *open.row;
  const auto result = [](const Result<Done>& taken) -> Result<bool> {
    if (!taken) return taken.problem();
    return true;
  };
  // Across a wide gap stands what lacks in another column's list.
  const bool across_a_gap = at_ > open.first_token && tokens_[at_].gap >= wide_gap;
  if (row.list_ended && across_a_gap) return false;
  if (row.list_ended && times_at(tokens_, at_)) return result(take_times(open));
  if (is(tokens_, at_, comma)) {
    open.after_comma = true;
    const bool again = !row.unit_ends.empty() && row.unit_ends.back() == row.runs.size();
    if (bands_.back().rules->units && tokens_[at_].text == ";" && !again)
      row.unit_ends.push_back(row.runs.size());
    ++at_;
    return true;
  }
  if (label_in_list_at(at_) || belongs_to_a_neighbour(open.column, at_)) return false;
  if (is(tokens_, at_, star) && (row.open_list || list_begins_at(at_))) return result(take_star(open));
  if (is(tokens_, at_, star) && times_at(tokens_, at_ + 1) && tokens_[at_].gap < wide_gap)
    return bad_words(place_in(row), "the end of a list between stars", "a star where it begins");
  if (row.list_ended)
    return bad_words(place_in(row), quoted_text_at() + " after a list between stars",
                     "how often the list is worked, such as × 6");
  const auto run = run_at(tokens_, at_);
  if (!run) {
    if (ends_quietly(open)) return false;
    return bad_words(place_in(row), quoted_text_at() + " where beads should be", "a run such as (2)A");
  }
  if (is_prose_after(open, *run, only_runs)) return false;
  return result(take_run(open, *run));
}

Result<Done> PageReader::take_run(OpenRow& open, const WrittenRun& run) {
  FoundRow& row = *open.row;
  const int most = bands_.back().rules->most_places;
  if (run.count < 1) return bad_words(place_in(row), "0 beads of " + run.letter, "a count from 1");
  if (run.count > most || row.places + run.count > most)
    return Problem{ProblemCode::out_of_range, place_in(row), fmt::format("more than {} beads", most),
                   fmt::format("at most {} in a row", most)};
  const bool decrease = run.is_dec() && bands_.back().rules->back;
  if (decrease && row.first_row == 1)
    return bad_words(place_in(row), "dec", "beads: the ring is strung whole");
  const auto position = decrease ? std::nullopt : chart::letter_position(run.letter);
  if (!decrease && !position)  // the sign of a decrease, which is no letter everywhere
    return bad_words(place_in(row), run.letter, "beads: there is no decrease in these rows");
  const int letter = decrease ? no_letter : *position;
  if (!decrease && !letters_.empty() && !std::binary_search(letters_.begin(), letters_.end(), letter))
    return Problem{ProblemCode::unknown_name, place_in(row), fmt::format("letter '{}'", run.letter),
                   "a letter of the legend"};
  // The place of a row that is too long is after the last run that fits.
  row.runs.push_back({run.count, letter});
  row.places += run.count;
  if (!decrease) row.beads += run.count;
  open.after_comma = false;
  at_ = run.next;
  return check_length(row);
}

/// Whether the row, whose next beads would stand at `at_`, is too long already.
Result<Done> PageReader::check_length(const FoundRow& row) const {
  if (const auto beads = needed(row)) {
    if (row.places > *beads) return wrong_length(row, row.places + stretch_at(at_).beads, *beads);
  } else if (const auto most = bands_.back().rules->most(question(row)); most && row.places > *most) {
    return too_long(row, row.places + stretch_at(at_).beads, *most);
  }
  return Done{};
}

/// A star before or after a list that is worked several times.
Result<Done> PageReader::take_star(OpenRow& open) {
  FoundRow& row = *open.row;
  if (!row.open_list) {
    row.open_list = row.runs.size();
  } else if (row.list_ended || open.after_comma) {
    return bad_words(place_in(row), "a star within a list between stars", "one such list after the other");
  } else {
    row.list_ended = true;
  }
  ++at_;
  return Done{};
}

Result<Done> PageReader::take_times(OpenRow& open) {
  FoundRow& row = *open.row;
  const WrittenTimes written = *times_at(tokens_, at_);
  if (written.times < 1) return bad_words(place_in(row), "a list worked 0 times", "a number from 1");
  const Fold fold{*row.open_list, row.runs.size(), written.times};
  std::int64_t places = 0, beads = 0;
  for (std::size_t i = fold.first_run; i < fold.end_run; ++i) {
    places += row.runs[i].count;
    if (row.runs[i].letter != no_letter) beads += row.runs[i].count;
  }
  const int most = bands_.back().rules->most_places;
  if (row.places + (fold.times - 1) * places > most)
    return Problem{ProblemCode::out_of_range, place_in(row), fmt::format("more than {} beads", most),
                   fmt::format("at most {} in a row", most)};
  row.folds.push_back(fold);
  row.places += static_cast<int>((fold.times - 1) * places);
  row.beads += static_cast<int>((fold.times - 1) * beads);
  row.open_list.reset();
  row.list_ended = false;
  at_ = written.next;
  return check_length(row);
}

/// Short words ("and", "A") can pass for beads that are not counted. After counted ones they are prose when
/// the rest of the line is, unless a comma promised another run.
bool PageReader::is_prose_after(const OpenRow& open, const WrittenRun& run, bool only_runs) const {
  const bool decrease = run.is_dec() && bands_.back().rules->back;
  if (run.counted || decrease || open.after_comma || open.row->runs.empty()) return false;
  const bool may_end = complete(*open.row) || !needed(*open.row);
  return may_end && (!only_runs || (complete(*open.row) && tokens_[at_].gap >= wide_gap));
}

/// Whether the text at `at_`, which is no run, may follow a row: another column of the page, prose after a
/// complete row, or the number of beads in it.
bool PageReader::ends_quietly(const OpenRow& open) const {
  const Token& token = tokens_[at_];
  if (is_ornament(tokens_, at_) || token.gap >= wide_gap) return true;
  if (open.after_comma) return false;
  if (token.kind == period) return true;
  std::size_t i = at_;
  if (is(tokens_, i, dash) || is(tokens_, i, other)) ++i;
  const bool in_brackets = is(tokens_, i, TokenKind::open);
  if (in_brackets) ++i;
  if (is(tokens_, i, number)) {
    const bool ends =
        i + 1 == tokens_.size() || tokens_[i + 1].gap > 0 || (in_brackets && is(tokens_, i + 1, close));
    return ends && tokens_[i].value == open.row->beads;
  }
  const bool may_end = complete(*open.row) || !needed(*open.row);
  return may_end && token.gap > 0 && is(tokens_, i, word);
}

/// Whether the token at `i` stands below an unfinished row, or label, of another column of the page than the one at `column`.
bool PageReader::belongs_to_a_neighbour(int column, std::size_t i) const {
  if (tokens_[i].gap < wide_gap) return false;
  if (awaited_elsewhere(column, i)) return true;
  if (open_.empty()) return false;
  const OpenRow& owner = open_[owner_of(tokens_[i].column)];
  return owner.column > column && owner.column <= tokens_[i].column + column_slack &&
         owner.last_line != line_;
}

/// Whether the token at `i` stands below another column's label, or its list between stars, that lacks its end.
bool PageReader::awaited_elsewhere(int column, std::size_t i) const {
  const auto above = [&](int other) { return other > column && other <= tokens_[i].column + column_slack; };
  return std::any_of(resumable_.begin(), resumable_.end(),
                     [&](const PendingHead& pending) { return above(pending.place.column); }) ||
         std::any_of(open_.begin(), open_.end(),
                     [&](const OpenRow& open) { return open.row->list_ended && above(open.column); });
}

/// What stands at `at_`, to the next blank or comma.
std::string PageReader::quoted_text_at() const {
  std::size_t last = at_;
  while (last + 1 < tokens_.size() && tokens_[last + 1].gap == 0 && !is(tokens_, last + 1, comma)) ++last;
  const char* begin = tokens_[at_].text.data();
  const char* end = tokens_[last].text.data() + tokens_[last].text.size();
  return quote(valid_text({begin, static_cast<std::size_t>(end - begin)}));
}

std::string PageReader::place_in(const FoundRow& row) const {
  const FoundRow here{
      .first_row = row.first_row, .last_row = row.last_row, .line = line_, .round = row.round};
  return place_text(here, row.runs.empty() ? "" : run_text(row.runs.back()));
}

Result<Done> PageReader::leave_open(const OpenRow& open) {
  if (complete(*open.row)) return Done{};
  if (open_.size() == most_open_rows)
    return Problem{ProblemCode::bad_words, fmt::format("line {}", line_),
                   fmt::format("more than {} rows without their last beads", most_open_rows), "whole rows"};
  open_.push_back(open);
  return Done{};
}

void PageReader::drop_complete_rows() {
  std::erase_if(open_, [&](const OpenRow& open) { return complete(*open.row); });
}

bool PageReader::is_open(const FoundRow& row) const {
  return std::any_of(open_.begin(), open_.end(), [&](const OpenRow& open) { return open.row == &row; });
}

/// The row before, or the one that is worked again there, when all of it has been read.
const FoundRow* PageReader::row_before(const FoundRow& row) const {
  const FoundBand& band = bands_.back();
  const int number = row.first_row - 1;
  const auto whole = [&](const FoundRow& before) { return is_open(before) ? nullptr : &before; };
  const auto ends_before = [&](auto& pieces) {
    auto found = pieces.lower_bound(row.first_row);
    return found != pieces.begin() && (--found)->second.last_row == number ? &found->second : nullptr;
  };
  if (const FoundRow* before = ends_before(band.rows)) return whole(*before);
  const FoundRepeat* repeat = ends_before(band.repeats);
  if (repeat == nullptr) return nullptr;
  const auto source = band.rows.find(repeat->last_source);
  return source == band.rows.end() ? nullptr : whole(source->second);
}

RowQuestion PageReader::question(const FoundRow& row) const {
  const FoundBand& band = bands_.back();
  const bool hangs_on_the_row_before = band.rules->marked || band.rules->back;
  return {.row = row,
          .number = row.last_row,
          .columns = columns_for(band, wanted_, row, !is_open(band.rows.at(1))),
          .edge = band.facts ? band.facts->edge : std::nullopt,
          .before = hangs_on_the_row_before ? row_before(row) : nullptr};
}

std::optional<int> PageReader::needed(const FoundRow& row) const {
  const RowRules& rules = *bands_.back().rules;
  const auto places = rules.places(question(row));
  // A decrease that can't be is told when the band is checked.
  return places && *places < 1 && rules.marked ? std::nullopt : places;
}

bool PageReader::complete(const FoundRow& row) const {
  if (row.open_list) return false;
  if (const auto places = needed(row)) return row.places >= *places;
  const auto most = bands_.back().rules->most(question(row));
  return most && row.places >= *most;
}

/// The open row below whose label a column of the page lies: the nearest one to the left.
std::size_t PageReader::owner_of(int column) const {
  std::size_t owner = 0;
  for (std::size_t i = 1; i < open_.size(); ++i) {
    const auto fits = [&](std::size_t k) { return open_[k].column <= column + column_slack; };
    const bool nearer = fits(i) ? (!fits(owner) || open_[i].column >= open_[owner].column)
                                : (!fits(owner) && open_[i].column < open_[owner].column);
    if (nearer) owner = i;
  }
  return owner;
}

}  // namespace evencount::wording::reader
