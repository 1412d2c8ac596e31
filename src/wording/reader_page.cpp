#include "wording/reader_page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/text.hpp"
#include "chart/letters.hpp"

namespace evencount::wording::reader {
namespace {

using enum TokenKind;

/// How far to the left of its row's label a continued line may begin and still lie below it.
constexpr int column_slack = 2;

/// How far to the left of the label above it a label may begin and still be of the same column of the page.
constexpr int label_slack = 8;

/// Unfinished rows side by side; no page has so many columns.
constexpr std::size_t most_open_rows = 16;

}  // namespace

Result<Done> PageReader::take_line(std::string_view line, int number) {
  line_ = number;
  tokens_ = tokens_of(line);
  at_ = 0;
  if (tokens_.empty()) return Done{};
  if (auto name = heading_name(line)) {
    name_ = std::move(*name);
    facts_ = {};
    return Done{};
  }
  std::size_t first = 0;
  while (is(tokens_, first, box)) ++first;
  if (label_at(tokens_, first)) facts_.close();
  line_had_row_ = false;
  if (!facts_.take(tokens_, number))
    if (auto walked = walk_line(); !walked) return walked;
  line_before_had_row_ = line_had_row_;
  return Done{};
}

Result<Done> PageReader::walk_line() {
  row_ended_here_ = false;
  drop_complete_rows();
  if (auto pending = take_pending_label(); !pending) return pending;
  while (at_ < tokens_.size()) {
    const auto label = take_label();
    if (!label) return label.problem();
    if (*label) continue;
    const auto continued = take_continuation();
    if (!continued) return continued.problem();
    if (*continued) continue;
    suspect_beads();
    ++at_;
    row_ended_here_ = false;
  }
  return Done{};
}

/// A label that ended its line: the beads must follow at once.
Result<Done> PageReader::take_pending_label() {
  if (!pending_) return Done{};
  const PendingLabel pending = *std::exchange(pending_, std::nullopt);
  const Stretch stretch = stretch_at(at_);
  if (stretch.only_runs && stretch.first_counted)
    return begin_row(pending.label, pending.line, pending.column);
  suspect(pending.label, pending.line);
  return Done{};
}

/// True when there was a label at `at_`; then its row, if it has one, is taken too.
Result<bool> PageReader::take_label() {
  const auto label = label_at(tokens_, at_);
  if (!label || may_be_beads(*label)) return false;
  const bool placed = placed_like_a_label();
  const bool unmistakable = label->spelled && label->travel && label->colon;
  const int column = tokens_[at_].column;
  at_ = label->next;
  if ((placed || unmistakable) && begins_row(*label)) {
    if (auto begun = begin_row(*label, line_, column); !begun) return begun.problem();
    return true;
  }
  row_ended_here_ = false;
  if (placed && at_ == tokens_.size() && (label->colon || label->travel))
    pending_ = PendingLabel{*label, line_, column};
  else if (label->named || placed)
    suspect(*label, line_);
  return true;
}

/// "R3" is a row's label or three beads of R: beads where a comma follows, or where one promised more of them.
bool PageReader::may_be_beads(const Label& label) const {
  const bool short_and_bare = label.named && !label.spelled && !label.colon && !label.period &&
                              !label.travel && label.first_row == label.last_row;
  if (!short_and_bare) return false;
  if (is(tokens_, label.next, comma)) return true;
  return !open_.empty() && open_[owner_of(tokens_[at_].column)].after_comma && stretch_at(at_).only_runs;
}

/// True when an open row went on at `at_`, or when text was skipped that only looked like that.
Result<bool> PageReader::take_continuation() {
  if (!placed_like_a_label() || (row_ended_here_ && tokens_[at_].gap < wide_gap)) return false;
  const Stretch stretch = stretch_at(at_);
  if (open_.empty()) {
    const bool whole_line = at_ == 0 && stretch.end == tokens_.size();
    if (whole_line && stretch.only_runs && stretch.all_counted && line_before_had_row_)
      return Problem{ProblemCode::bad_words, fmt::format("line {}", line_),
                     "beads after a row that was complete", "a row's label, such as Row 4 (L):"};
  } else {
    const std::size_t owner = owner_of(tokens_[at_].column);
    const OpenRow open = open_[owner];
    if (stretch.only_runs && (stretch.first_counted || open.after_comma)) {
      open_.erase(open_.begin() + static_cast<std::ptrdiff_t>(owner));
      if (auto taken = take_beads(open); !taken) return taken.problem();
      return true;
    }
  }
  if (stretch.first_counted) suspect_beads();
  if (stretch.end <= at_) return false;
  at_ = stretch.end;
  return true;
}

PageReader::Stretch PageReader::stretch_at(std::size_t i) const {
  Stretch stretch{.end = i};
  bool any = false;
  for (; stretch.end < tokens_.size(); stretch.only_runs = any) {
    const std::size_t at = stretch.end;
    if (label_in_list_at(at)) return stretch;
    if (is(tokens_, at, comma)) {
      ++stretch.end;
      continue;
    }
    const auto run = run_at(tokens_, at);
    if (!run) {
      const bool sentence_end =
          is(tokens_, at, period) && (at + 1 == tokens_.size() || tokens_[at + 1].gap > 0);
      const bool other_column = any && tokens_[at].gap >= wide_gap;
      stretch.only_runs = any && (sentence_end || other_column || is(tokens_, at, box));
      return stretch;
    }
    if (!any) stretch.first_counted = run->counted;
    any = true;
    stretch.all_counted = stretch.all_counted && run->counted;
    stretch.beads = std::min(largest_value - stretch.beads, run->count) + stretch.beads;
    stretch.end = run->next;
  }
  return stretch;
}

/// Within a list of beads, only what can't be a bead begins a row: "Row 4", or a colon or a direction after a
/// number.
bool PageReader::label_in_list_at(std::size_t i) const {
  if (row_word_at(tokens_, i)) return true;
  const auto label = label_at(tokens_, i);
  return label && (label->colon || label->travel);
}

bool PageReader::placed_like_a_label() const {
  if (at_ == 0 || row_ended_here_ || tokens_[at_].gap >= wide_gap) return true;
  const TokenKind before = tokens_[at_ - 1].kind;
  return before == box || before == other;
}

/// Whether beads follow the label, which ends at `at_`. The weaker the label, the more they must look like it.
bool PageReader::begins_row(const Label& label) const {
  const Stretch stretch = stretch_at(at_);
  if (stretch.first_counted) return true;
  if (label.colon || label.travel) return stretch.only_runs;
  return label.period && stretch.only_runs && is(tokens_, at_ + 1, comma);
}

Result<Done> PageReader::check_number(const Label& label) const {
  const bool first_rows = label.first_row == 1 && label.last_row == 2;
  const std::string where = fmt::format("line {}", line_);
  const std::string found = row_text(label.first_row, label.last_row);
  if (label.first_row > highest_row || label.last_row > highest_row)
    return Problem{ProblemCode::out_of_range, where, found, fmt::format("rows up to {}", highest_row)};
  if (label.last_row <= 2 && !first_rows)
    return Problem{ProblemCode::bad_words, where, found + " alone",
                   "rows 1-2 in one line, as they are strung together"};
  if (!first_rows && label.first_row != label.last_row)
    return Problem{ProblemCode::bad_words, where, found + " in one line",
                   "a line for each row after rows 1-2"};
  if (first_rows) return Done{};
  if (bands_.empty())
    return Problem{ProblemCode::bad_words, where, found + " before rows 1-2", "rows 1-2 first"};
  if (const auto twin = bands_.back().rows.find(label.first_row); twin != bands_.back().rows.end())
    return Problem{ProblemCode::bad_words, where,
                   fmt::format("{} again, as in line {}", found, twin->second.line), "each row once"};
  return Done{};
}

Result<Done> PageReader::begin_row(const Label& label, int line, int column) {
  if (auto number = check_number(label); !number) return number;
  if (label.first_row == 1) {
    open_.clear();
    bands_.push_back({.name = std::exchange(name_, {}), .facts = facts_.release()});
  }
  close_rows_above(column);
  FoundRow& row = bands_.back().rows[label.first_row];
  row = {.first_row = label.first_row, .last_row = label.last_row, .line = line, .travel = label.travel};
  return take_beads({.row = &row, .column = column});
}

/// A label ends the unfinished row that it stands below; on the same line it stands beside it. Rows 1-2 of unknown
/// length end at any label, unless a comma promised more.
void PageReader::close_rows_above(int column) {
  if (open_.empty()) return;
  const FoundRow* above = open_[owner_of(column)].row;
  std::erase_if(open_, [&](const OpenRow& open) {
    const bool below = open.row == above && open.last_line != line_ && open.column <= column + label_slack;
    return below || (!open.after_comma && !needed(*open.row));
  });
}

Result<Done> PageReader::take_beads(OpenRow open) {
  line_had_row_ = true;
  open.last_line = line_;
  const bool only_runs = stretch_at(at_).only_runs;
  while (at_ < tokens_.size()) {
    if (is(tokens_, at_, comma)) {
      open.after_comma = true;
      ++at_;
      continue;
    }
    if (label_in_list_at(at_) || belongs_to_a_neighbour(open)) break;
    const auto run = run_at(tokens_, at_);
    if (!run) {
      if (ends_quietly(open)) break;
      return Problem{ProblemCode::bad_words, place_in(*open.row), quoted_text_at() + " where beads should be",
                     "a run such as (2)A"};
    }
    if (is_prose_after(open, *run, only_runs)) break;
    if (auto taken = take_run(open, *run); !taken) return taken;
    if (const auto beads = needed(*open.row); beads && open.row->beads > *beads)
      return wrong_length(*open.row, open.row->beads + stretch_at(at_).beads, *beads);
  }
  row_ended_here_ = true;
  return leave_open(open);
}

Result<Done> PageReader::take_run(OpenRow& open, const WrittenRun& run) {
  FoundRow& row = *open.row;
  if (run.count < 1)
    return Problem{ProblemCode::bad_words, place_in(row), "0 beads of " + run.letter, "a count from 1"};
  if (run.count > chart::most_columns || row.beads + run.count > chart::most_columns)
    return Problem{ProblemCode::out_of_range, place_in(row),
                   fmt::format("more than {} beads", chart::most_columns),
                   fmt::format("at most {} in a row", chart::most_columns)};
  const int letter = *chart::letter_position(run.letter);
  if (!letters_.empty() && !std::binary_search(letters_.begin(), letters_.end(), letter))
    return Problem{ProblemCode::unknown_name, place_in(row), fmt::format("letter '{}'", run.letter),
                   "a letter of the legend"};
  row.runs.push_back({run.count, letter});
  row.beads += run.count;
  open.after_comma = false;
  at_ = run.next;
  return Done{};
}

/// Short words ("and", "A") can pass for beads that are not counted. After counted ones they are prose when
/// the rest of the line is, unless a comma promised another run.
bool PageReader::is_prose_after(const OpenRow& open, const WrittenRun& run, bool only_runs) const {
  if (run.counted || open.after_comma || open.row->runs.empty()) return false;
  const bool may_end = complete(*open.row) || !needed(*open.row);
  return may_end && (!only_runs || (complete(*open.row) && tokens_[at_].gap >= wide_gap));
}

/// Whether the text at `at_`, which is no run, may follow a row: another column of the page, prose after a
/// complete row, or the number of beads in it.
bool PageReader::ends_quietly(const OpenRow& open) const {
  const Token& token = tokens_[at_];
  if (token.kind == box || token.gap >= wide_gap) return true;
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

/// Whether another column's unfinished row stands above the token at `at_`.
bool PageReader::belongs_to_a_neighbour(const OpenRow& open) const {
  if (open_.empty() || tokens_[at_].gap < wide_gap) return false;
  const OpenRow& owner = open_[owner_of(tokens_[at_].column)];
  return owner.column > open.column && owner.column <= tokens_[at_].column + column_slack &&
         owner.last_line != line_;
}

/// What stands at `at_`, to the next blank or comma.
std::string PageReader::quoted_text_at() const {
  std::size_t last = at_;
  while (last + 1 < tokens_.size() && tokens_[last + 1].gap == 0 && !is(tokens_, last + 1, comma)) ++last;
  const char* begin = tokens_[at_].text.data();
  const char* end = tokens_[last].text.data() + tokens_[last].text.size();
  return quoted(valid_text({begin, static_cast<std::size_t>(end - begin)}));
}

std::string PageReader::place_in(const FoundRow& row) const {
  FoundRow here{.first_row = row.first_row, .last_row = row.last_row, .line = line_};
  if (row.runs.empty()) return place_text(here, "");
  const FoundRun& last = row.runs.back();
  return place_text(here, fmt::format("{}{}", last.count, chart::letter_name(last.letter)));
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

std::optional<int> PageReader::needed(const FoundRow& row) const {
  const FoundBand& band = bands_.back();
  if (const auto columns = stated_columns(band, wanted_)) return beads_needed(*columns, row.first_row);
  const FoundRow& first = band.rows.at(1);
  const bool first_rows_read =
      row.first_row != 1 &&
      std::none_of(open_.begin(), open_.end(), [&](const OpenRow& o) { return o.row == &first; });
  if (!first_rows_read) return std::nullopt;
  return beads_needed(first.beads, row.first_row);
}

bool PageReader::complete(const FoundRow& row) const {
  const auto beads = needed(row);
  return beads && row.beads >= *beads;
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

void PageReader::suspect(const Label& label, int line) {
  if (bands_.empty() || label.first_row > highest_row) return;
  auto& lines = bands_.back().labelled_lines;
  const bool plain = !label.colon && !label.travel;
  if (plain)
    lines.try_emplace(label.first_row, Suspect{line, true});
  else
    lines.insert_or_assign(label.first_row, Suspect{line, true});
}

void PageReader::suspect_beads() {
  const auto run = run_at(tokens_, at_);
  if (!run || !run->counted) return;
  if (bands_.empty()) {
    if (first_stray_line_ == 0) first_stray_line_ = line_;
    return;
  }
  auto& lines = bands_.back().run_lines;
  if (lines.empty() || lines.back() != line_) lines.push_back(line_);
}

}  // namespace evencount::wording::reader
