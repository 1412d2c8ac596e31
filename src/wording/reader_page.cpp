#include "wording/reader_page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/text.hpp"

namespace evencount::wording::reader {
namespace {

using enum TokenKind;

/// Labels side by side that go on in the next line; no page has so many columns.
constexpr std::size_t most_pending = 16;

/// Tokens that a label and what it asks to work again can have at most, with room to spare.
constexpr std::ptrdiff_t most_head_tokens = 48;

std::string text_between(const Token& first, const Token& last) {
  const char* begin = first.text.data();
  return {begin, static_cast<std::size_t>(last.text.data() + last.text.size() - begin)};
}

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
  while (is_ornament(tokens_, first)) ++first;
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
  resumable_ = std::exchange(pending_, {});
  while (at_ < tokens_.size()) {
    bool taken = false;
    for (const auto take :
         {&PageReader::take_pending_head, &PageReader::take_label, &PageReader::take_continuation}) {
      const auto result = (this->*take)();
      if (!result) return result.problem();
      taken = *result;
      if (taken) break;
    }
    if (taken) continue;
    suspect_beads();
    ++at_;
    row_ended_here_ = false;
  }
  for (const PendingHead& pending : resumable_)
    if (!pending.taken) suspect(pending.head.label, pending.place.line);
  return Done{};
}

std::optional<PageReader::Head> PageReader::head_at(const std::vector<Token>& tokens, std::size_t i) {
  const auto label = label_at(tokens, i);
  if (!label) return std::nullopt;
  Head head{.label = *label, .next = label->next};
  if (label->colon || label->period) head.again = again_at(tokens, label->next);
  if (head.again) head.next = head.again->next;
  return head;
}

/// True when there was a label at `at_`; then its row, if it has one, is taken too.
Result<bool> PageReader::take_label() {
  const auto head = head_at(tokens_, at_);
  if (!head || may_be_beads(head->label)) return false;
  const Label& label = head->label;
  const bool placed = placed_like_a_label();
  const bool unmistakable = label.spelled && label.travel && label.colon;
  const std::size_t first = at_;
  const Place place{line_, tokens_[first].column};
  at_ = head->next;
  if (placed || unmistakable) {
    const auto taken = take_head(*head, place);
    if (!taken) return taken.problem();
    if (*taken) {
      if (goes_on_below(*head, true)) leave_pending(*head, place, first, "", true);
      return true;
    }
  }
  row_ended_here_ = false;
  if (placed && goes_on_below(*head, false))
    leave_pending(*head, place, first, "", false);
  else if (label.named || placed)
    suspect(label, line_);
  return true;
}

/// True when the row, or the rows that are worked again, were taken. `at_` is behind the head.
Result<bool> PageReader::take_head(const Head& head, Place place) {
  if (head.again) {
    if (head.again->first_row == 0 || bands_.empty() || is_stray_round(head.label)) return false;
    if (auto repeated = take_repeat(head, place); !repeated) return repeated.problem();
    return true;
  }
  if (head.label.broken_off) {
    // Only behind a comma may there be beads; across a gap they may be another column's.
    if (!is(tokens_, at_, comma) || at_ + 1 == tokens_.size() ||
        belongs_to_a_neighbour(place.column, at_ + 1))
      return false;
  }
  const std::size_t behind_label = at_;
  // A box to tick may stand between a row's label and its beads.
  if ((head.label.colon || head.label.travel) && is(tokens_, at_, TokenKind::box) && run_at(tokens_, at_ + 1)) ++at_;
  if (!begins_row(head.label)) {
    at_ = behind_label;
    return false;
  }
  if (is_stray_round(head.label)) {
    if (first_stray_round_ == 0) first_stray_round_ = place.line;
    return false;
  }
  if (auto begun = begin_row(head.label, place); !begun) return begun.problem();
  return true;
}

/// Whether the next line may complete the head, or hold its beads. `at_` is behind the head.
bool PageReader::goes_on_below(const Head& head, bool taken) const {
  if (taken) return head.again && head.again->broken_off;
  if (head.broken_off()) return true;
  return at_ == tokens_.size() && !head.again && (head.label.colon || head.label.travel);
}

/// Keeps a head for the next line: `before` and what stands here from token `first` to `at_`.
void PageReader::leave_pending(const Head& head, Place place, std::size_t first, const std::string& before,
                               bool taken) {
  if (pending_.size() == most_pending) return;
  if (head.label.broken_off && is(tokens_, at_, comma)) ++at_;
  const std::string here = text_between(tokens_[first], tokens_[at_ - 1]);
  pending_.push_back({.head = head,
                      .place = place,
                      .text = before.empty() ? here : before + " " + here,
                      .ended_line = at_ == tokens_.size(),
                      .taken = taken});
}

/// True when a head of the line before was completed at `at_`, or its beads were found there.
Result<bool> PageReader::take_pending_head() {
  const auto found = pending_above();
  if (!found) return false;
  const PendingHead pending = resumable_[*found];
  const auto at = resumable_.begin() + static_cast<std::ptrdiff_t>(*found);
  const bool above = pending.place.column <= tokens_[at_].column + column_slack;
  const std::size_t first = at_;
  resumable_.erase(at);
  const auto resumed = resume(pending);
  if (!resumed || *resumed) return resumed;
  at_ = first;
  // It may still be found below its own column.
  if (!above)
    resumable_.push_back(pending);
  else if (!pending.taken)
    suspect(pending.head.label, pending.place.line);
  return false;
}

/// The pending head below which `at_` lies, or the one that may go on at the beginning of the line wherever that is.
std::optional<std::size_t> PageReader::pending_above() const {
  std::optional<std::size_t> above;
  if (resumable_.empty() || !placed_like_a_label()) return above;
  for (std::size_t i = 0; i < resumable_.size(); ++i) {
    const int column = resumable_[i].place.column;
    if (column <= tokens_[at_].column + column_slack && (!above || column >= resumable_[*above].place.column))
      above = i;
  }
  // A whole label that ended its line has its beads in the next one wherever that begins.
  for (std::size_t i = 0; i < resumable_.size() && !above && at_ == 0; ++i) {
    const PendingHead& pending = resumable_[i];
    const bool whole = pending.ended_line && !pending.head.broken_off();
    if (whole || pending.place.column <= tokens_[at_].column + label_slack) above = i;
  }
  return above;
}

Result<bool> PageReader::resume(const PendingHead& pending) {
  const std::size_t first = at_;
  std::size_t end = first + 1;
  while (end < tokens_.size() && end - first < most_head_tokens && tokens_[end].gap < wide_gap) ++end;
  const std::string text = pending.text + " " + text_between(tokens_[first], tokens_[end - 1]);
  const auto joined = tokens_of(text);
  const std::size_t own = tokens_of(pending.text).size();
  const auto head = head_at(joined, 0);
  if (!head || head->next < own) return false;
  at_ += head->next - own;
  if (pending.taken) {
    if (!head->again || !head->again->times) return false;
    bands_.back().repeats.at(head->label.first_row).times = head->again->times;
    return true;
  }
  if (at_ == first) {
    // A label that ended its line: the beads must follow at once.
    const Stretch stretch = stretch_at(at_);
    if (head->again || !stretch.only_runs || !stretch.first_counted || is_stray_round(head->label))
      return false;
    if (auto begun = begin_row(head->label, pending.place); !begun) return begun.problem();
    return true;
  }
  const auto taken = take_head(*head, pending.place);
  if (!taken) return taken;
  if (goes_on_below(*head, *taken)) {
    leave_pending(*head, pending.place, first, pending.text, *taken);
    return true;
  }
  return taken;
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
    const bool only_times_lack = open.row->list_ended && times_at(tokens_, at_);
    if (only_times_lack || (stretch.only_runs && (stretch.first_counted || open.after_comma))) {
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
  int before_list = 0;  // beads before the list between stars
  const auto sum = [](int a, int b) { return std::min(largest_value - a, b) + a; };
  for (; stretch.end < tokens_.size(); stretch.only_runs = any) {
    const std::size_t at = stretch.end;
    const bool elsewhere = tokens_[at].gap >= wide_gap && awaited_elsewhere(tokens_[i].column, at);
    if (label_in_list_at(at) || elsewhere) return stretch;
    if (is(tokens_, at, comma)) {
      ++stretch.end;
      continue;
    }
    if (is(tokens_, at, star)) {
      // A list may have begun in an earlier line, so that only its end is here.
      if (const auto times = any ? times_at(tokens_, at + 1) : std::nullopt) {
        const int list = stretch.beads - before_list;
        stretch.beads = times->times > largest_value / std::max(1, list)
                            ? largest_value
                            : sum(before_list, list * times->times);
        stretch.end = times->next;
        continue;
      }
      if (list_begins_at(at)) {
        before_list = stretch.beads;
        ++stretch.end;
        continue;
      }
    }
    const auto run = run_at(tokens_, at);
    if (!run) {
      const bool sentence_end =
          is(tokens_, at, period) && (at + 1 == tokens_.size() || tokens_[at + 1].gap > 0);
      const bool other_column = any && tokens_[at].gap >= wide_gap;
      // The number of the row's beads may end it.
      const bool count = is(tokens_, at, number) &&
                         (at + 1 == tokens_.size() || tokens_[at + 1].gap >= wide_gap ||
                          is_ornament(tokens_, at + 1) || label_in_list_at(at + 1));
      stretch.only_runs = any && (sentence_end || other_column || count || is_ornament(tokens_, at));
      return stretch;
    }
    if (!any) stretch.first_counted = run->counted;
    any = true;
    stretch.all_counted = stretch.all_counted && run->counted;
    stretch.beads = sum(stretch.beads, run->count);
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
  return is_ornament(tokens_, at_ - 1) || is(tokens_, at_ - 1, other);
}

/// Whether beads follow the label, which ends at `at_`. The weaker the label, the more they must look like it.
bool PageReader::begins_row(const Label& label) const {
  const Stretch stretch = stretch_at(at_);
  if (stretch.first_counted) return true;
  if (label.colon || label.travel) return stretch.only_runs;
  return label.period && stretch.only_runs && is(tokens_, at_ + 1, comma);
}

/// A star begins a list where counted beads follow it at once, or where the list's end can be seen; else it is a bullet.
bool PageReader::list_begins_at(std::size_t i) const {
  if (label_in_list_at(i + 1)) return false;
  const auto run = run_at(tokens_, i + 1);
  if (!run) return false;
  const bool decrease = run->is_dec() && !bands_.empty() && bands_.back().rules->back;
  return ((run->counted || decrease) && tokens_[i + 1].gap == 0) || list_ends_ahead(i + 1);
}

bool PageReader::list_ends_ahead(std::size_t i) const {
  while (i < tokens_.size() && !label_in_list_at(i)) {
    if (is(tokens_, i, star)) return i + 1 == tokens_.size() || times_at(tokens_, i + 1);
    const auto run = run_at(tokens_, i);
    if (!run && !is(tokens_, i, comma)) return false;
    i = run ? run->next : i + 1;
  }
  return false;
}

void PageReader::suspect(const Label& label, int line) {
  if (bands_.empty() || label.first_row > bands_.back().rules->most_rows) return;
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
