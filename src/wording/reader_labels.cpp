#include "wording/reader_labels.hpp"

#include <algorithm>

#include "base/text.hpp"
#include "wording/reader_runs.hpp"

namespace evencount::wording::reader {
namespace {

using enum TokenKind;
using weave::RowEnd;
using weave::Travel;

/// The side that a word names, or the way it goes.
std::optional<Travel> side_at(const std::vector<Token>& tokens, std::size_t i, const Vocabulary& words) {
  if (is_one_of(tokens, i, words.left)) return Travel::left;
  if (is_one_of(tokens, i, words.right)) return Travel::right;
  if (is_one_of(tokens, i, words.down)) return Travel::forth;
  if (is_one_of(tokens, i, words.up)) return Travel::back;
  return std::nullopt;
}

std::optional<Travel> arrow_at(const std::vector<Token>& tokens, std::size_t i) {
  if (is(tokens, i, left_arrow)) return Travel::left;
  if (is(tokens, i, right_arrow)) return Travel::right;
  return std::nullopt;
}

/// Between two sides: "L to R", "L-R", "L→R".
bool joins_sides(const std::vector<Token>& tokens, std::size_t i) {
  return is_word(tokens, i, "to") || is(tokens, i, dash) || arrow_at(tokens, i).has_value();
}

struct Direction {
  Travel travel;
  std::size_t next;
};

/// "L", "to the left", "L to R", "→": one side is where the needle goes, two are where from and where to.
std::optional<Direction> plain_direction_at(const std::vector<Token>& tokens, std::size_t i,
                                            const Vocabulary& words) {
  if (const auto arrow = arrow_at(tokens, i)) return Direction{*arrow, i + 1};
  for (const std::string_view way : words.ways)
    if (is_word(tokens, i, way)) ++i;
  const auto first = side_at(tokens, i, words);
  if (!first) return std::nullopt;
  if (!joins_sides(tokens, i + 1)) return Direction{*first, i + 1};
  const auto second = side_at(tokens, i + 2, words);
  if (!second || *second == *first) return std::nullopt;
  return Direction{*second, i + 3};
}

std::optional<Direction> direction_at(const std::vector<Token>& tokens, std::size_t i, bool spelled,
                                      const Vocabulary& words) {
  if (is(tokens, i, open)) {
    auto inside = plain_direction_at(tokens, i + 1, words);
    if (!inside || !is(tokens, inside->next, close)) return std::nullopt;
    ++inside->next;
    return inside;
  }
  const auto bare = plain_direction_at(tokens, i, words);
  // A bare letter could be a bead: it is a direction only where the label's colon follows, and up or down only after "Row 3".
  if (bare && !arrow_at(tokens, i) && !is(tokens, bare->next, colon)) return std::nullopt;
  if (bare && !spelled && weave::axis_of(bare->travel) == weave::Axis::along) return std::nullopt;
  return bare;
}

/// "-2", "& 2", "and 2", "to 10" after the first number; not the "- 2A" of a bead list.
std::optional<int> range_end_at(const std::vector<Token>& tokens, std::size_t i) {
  const bool joined = is(tokens, i, dash) || is(tokens, i, ampersand) || is_word(tokens, i, "and") ||
                      is_word(tokens, i, "to");
  if (!joined || !is(tokens, i + 1, number)) return std::nullopt;
  if (is(tokens, i + 2, word) && tokens[i + 2].gap == 0 && !is_counter(tokens, i + 2)) return std::nullopt;
  return tokens[i + 1].value;
}

/// Whether what began before token `i` must go on in another line: this one, or this column of the page, ends.
bool breaks_off(const std::vector<Token>& tokens, std::size_t i) {
  return i >= tokens.size() || tokens[i].gap >= wide_gap;
}

enum class Fit { no, broken_off, whole };

/// Goes through `words` from token `next` on and leaves `next` behind what fits.
Fit follow(const std::vector<Token>& tokens, std::size_t& next, std::string_view words) {
  for (const std::string_view word : split(words, ' ')) {
    if (breaks_off(tokens, next)) return Fit::broken_off;
    if (!is_word(tokens, next, word)) return Fit::no;
    ++next;
  }
  return Fit::whole;
}

void take_remark(Remark remark, Label& label) {
  if (remark == Remark::on_back) {
    label.on_back = true;
    return;
  }
  const bool at_beginning = remark == Remark::increase_begin || remark == Remark::decrease_begin;
  const bool more = remark == Remark::increase_begin || remark == Remark::increase_end;
  auto& end = at_beginning ? label.begins : label.ends;
  const RowEnd change = more ? RowEnd::increase : RowEnd::decrease;
  label.contradicts = label.contradicts || (end && *end != change);
  end = change;
}

/// One thing that a label says of its row after the direction.
Fit take_phrase(const std::vector<Token>& tokens, std::size_t& next, const Vocabulary& words, Label& label) {
  Fit best = breaks_off(tokens, next) ? Fit::broken_off : Fit::no;
  const std::size_t first = next;
  std::size_t furthest = next;
  for (const RemarkWords& remark : words.remarks) {
    next = first;
    const Fit fit = follow(tokens, next, remark.words);
    if (fit == Fit::whole) {
      take_remark(remark.remark, label);
      return fit;
    }
    if (fit == Fit::broken_off) best = fit, furthest = std::max(furthest, next);
  }
  next = best == Fit::broken_off ? furthest : first;
  return best;
}

/// ", increase at the beginning, decrease at the end"; leaves `next` before a comma that nothing like that follows, or that ends
/// the line.
void take_phrases(const std::vector<Token>& tokens, std::size_t& next, const Vocabulary& words, Label& label) {
  constexpr int most_phrases = 4;
  for (int i = 0; i < most_phrases && is(tokens, next, comma) && !label.broken_off; ++i) {
    std::size_t after = next + 1;
    const Fit fit = take_phrase(tokens, after, words, label);
    if (fit == Fit::no) return;
    label.broken_off = fit == Fit::broken_off;
    const bool only_comma = label.broken_off && after == next + 1;
    if (!only_comma) next = after;
  }
}

}  // namespace

std::optional<Label> label_at(const std::vector<Token>& tokens, std::size_t i) {
  Label label;
  const auto row = row_word_of(tokens, i);
  const Vocabulary& words = row ? *row->vocabulary : *vocabularies().front();
  label.spelled = row.has_value();
  label.round = row && row->round;
  const bool short_name = is_word(tokens, i, "r") && is(tokens, i + 1, number) && tokens[i + 1].gap == 0;
  label.named = label.spelled || short_name;
  std::size_t next = label.named ? i + 1 : i;
  if (!is(tokens, next, number)) return std::nullopt;
  label.first_row = label.last_row = tokens[next++].value;
  if (const auto last = range_end_at(tokens, next)) {
    label.last_row = *last;
    next += 2;
  }
  if (row && is_counter(tokens, next)) ++next;
  const auto take_direction = [&] {
    if (const auto direction = direction_at(tokens, next, label.spelled, words)) {
      label.travel = direction->travel;
      next = direction->next;
    }
  };
  take_direction();
  if (label.named && label.travel) take_phrases(tokens, next, words, label);
  label.colon = is(tokens, next, colon);
  label.period = is(tokens, next, period);
  if (label.colon || label.period) ++next;
  if (!label.travel) take_direction();
  if (!label.named && !label.colon) return std::nullopt;
  label.next = next;
  return label;
}

namespace {

/// A word for rows or rounds, whatever follows it.
bool names_rows(const std::vector<Token>& tokens, std::size_t i) {
  for (const Vocabulary* words : vocabularies())
    if (is_one_of(tokens, i, words->row) || is_one_of(tokens, i, words->round) ||
        (!words->ordinal.empty() && is_word(tokens, i, words->ordinal)))
      return true;
  return false;
}

}  // namespace

std::optional<Again> again_at(const std::vector<Token>& tokens, std::size_t i) {
  if (!is_one_of(tokens, i, again_words())) return std::nullopt;
  Again again;
  std::size_t next = i + 1;
  const auto broken_off = [&] {
    again.broken_off = breaks_off(tokens, next);
    again.next = std::min(next, tokens.size());
    return again.broken_off;
  };
  if (broken_off()) return again;
  if (is_one_of(tokens, next, articles())) ++next;
  if (broken_off()) return again;
  if (!names_rows(tokens, next)) return std::nullopt;
  ++next;
  if (broken_off()) return again;
  if (!is(tokens, next, number)) return std::nullopt;
  again.first_row = again.last_row = tokens[next++].value;
  if (const auto last = range_end_at(tokens, next)) {
    again.last_row = *last;
    next += 2;
  }
  if (is_counter(tokens, next)) ++next;
  if (broken_off()) return again;
  if (const auto written = times_at(tokens, next)) {
    again.times = written->times;
    next = written->next;
  } else if (is(tokens, next, number) && breaks_off(tokens, next + 1)) {
    ++next;
  }
  if (!again.times && broken_off()) return again;
  if (is(tokens, next, period)) ++next;
  again.next = next;
  return again;
}

}  // namespace evencount::wording::reader
