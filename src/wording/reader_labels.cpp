#include "wording/reader_labels.hpp"

#include <algorithm>
#include <initializer_list>

#include "wording/reader_runs.hpp"

namespace evencount::wording::reader {
namespace {

using enum TokenKind;
using weave::RowEnd;
using weave::Travel;

/// The side that a word names, or the way it goes.
std::optional<Travel> side_at(const std::vector<Token>& tokens, std::size_t i) {
  for (const std::string_view name : {"l", "left", "rtl"})
    if (is_word(tokens, i, name)) return Travel::left;
  for (const std::string_view name : {"r", "right", "ltr"})
    if (is_word(tokens, i, name)) return Travel::right;
  for (const std::string_view name : {"d", "down"})
    if (is_word(tokens, i, name)) return Travel::forth;
  for (const std::string_view name : {"u", "up"})
    if (is_word(tokens, i, name)) return Travel::back;
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
std::optional<Direction> plain_direction_at(const std::vector<Token>& tokens, std::size_t i) {
  if (const auto arrow = arrow_at(tokens, i)) return Direction{*arrow, i + 1};
  if (is_word(tokens, i, "to")) ++i;
  if (is_word(tokens, i, "the")) ++i;
  const auto first = side_at(tokens, i);
  if (!first) return std::nullopt;
  if (!joins_sides(tokens, i + 1)) return Direction{*first, i + 1};
  const auto second = side_at(tokens, i + 2);
  if (!second || *second == *first) return std::nullopt;
  return Direction{*second, i + 3};
}

std::optional<Direction> direction_at(const std::vector<Token>& tokens, std::size_t i, bool spelled) {
  if (is(tokens, i, open)) {
    auto inside = plain_direction_at(tokens, i + 1);
    if (!inside || !is(tokens, inside->next, close)) return std::nullopt;
    ++inside->next;
    return inside;
  }
  const auto bare = plain_direction_at(tokens, i);
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
  if (is(tokens, i + 2, word) && tokens[i + 2].gap == 0) return std::nullopt;
  return tokens[i + 1].value;
}

/// Whether what began before token `i` must go on in another line: this one, or this column of the page, ends.
bool breaks_off(const std::vector<Token>& tokens, std::size_t i) {
  return i >= tokens.size() || tokens[i].gap >= wide_gap;
}

enum class Fit { no, broken_off, whole };

/// Goes through `words` from token `next` on and leaves `next` behind what fits.
Fit follow(const std::vector<Token>& tokens, std::size_t& next,
           std::initializer_list<std::string_view> words) {
  for (const std::string_view word : words) {
    if (breaks_off(tokens, next)) return Fit::broken_off;
    if (!is_word(tokens, next, word)) return Fit::no;
    ++next;
  }
  return Fit::whole;
}

/// "increase at the end" and the like. `next` is the first token after the comma.
Fit take_change(const std::vector<Token>& tokens, std::size_t& next, RowEnd change, Label& label) {
  ++next;
  if (const Fit fit = follow(tokens, next, {"at", "the"}); fit != Fit::whole) return fit;
  if (breaks_off(tokens, next)) return Fit::broken_off;
  const bool at_beginning = is_word(tokens, next, "beginning") || is_word(tokens, next, "start");
  if (!at_beginning && !is_word(tokens, next, "end")) return Fit::no;
  ++next;
  auto& end = at_beginning ? label.begins : label.ends;
  label.contradicts = label.contradicts || (end && *end != change);
  end = change;
  return Fit::whole;
}

/// One thing that a label says of its row after the direction.
Fit take_phrase(const std::vector<Token>& tokens, std::size_t& next, Label& label) {
  if (breaks_off(tokens, next)) return Fit::broken_off;
  if (is_word(tokens, next, "increase")) return take_change(tokens, next, RowEnd::increase, label);
  if (is_word(tokens, next, "decrease")) return take_change(tokens, next, RowEnd::decrease, label);
  const Fit fit = follow(tokens, next, {"on", "the", "back"});
  if (fit == Fit::whole) label.on_back = true;
  return fit;
}

/// ", increase at the beginning, decrease at the end"; leaves `next` before a comma that nothing like that follows, or that ends
/// the line.
void take_phrases(const std::vector<Token>& tokens, std::size_t& next, Label& label) {
  constexpr int most_phrases = 4;
  for (int i = 0; i < most_phrases && is(tokens, next, comma) && !label.broken_off; ++i) {
    std::size_t after = next + 1;
    const Fit fit = take_phrase(tokens, after, label);
    if (fit == Fit::no) return;
    label.broken_off = fit == Fit::broken_off;
    const bool only_comma = label.broken_off && after == next + 1;
    if (!only_comma) next = after;
  }
}

}  // namespace

std::optional<Label> label_at(const std::vector<Token>& tokens, std::size_t i) {
  Label label;
  label.spelled = row_word_at(tokens, i);
  label.round = round_word_at(tokens, i);
  const bool short_name = is_word(tokens, i, "r") && is(tokens, i + 1, number) && tokens[i + 1].gap == 0;
  label.named = label.spelled || short_name;
  std::size_t next = label.named ? i + 1 : i;
  if (!is(tokens, next, number)) return std::nullopt;
  label.first_row = label.last_row = tokens[next++].value;
  if (const auto last = range_end_at(tokens, next)) {
    label.last_row = *last;
    next += 2;
  }
  const auto take_direction = [&] {
    if (const auto direction = direction_at(tokens, next, label.spelled)) {
      label.travel = direction->travel;
      next = direction->next;
    }
  };
  take_direction();
  if (label.named && label.travel) take_phrases(tokens, next, label);
  label.colon = is(tokens, next, colon);
  label.period = is(tokens, next, period);
  if (label.colon || label.period) ++next;
  if (!label.travel) take_direction();
  if (!label.named && !label.colon) return std::nullopt;
  label.next = next;
  return label;
}

std::optional<Again> again_at(const std::vector<Token>& tokens, std::size_t i) {
  if (!is_word(tokens, i, "work") && !is_word(tokens, i, "repeat")) return std::nullopt;
  Again again;
  std::size_t next = i + 1;
  const auto broken_off = [&] {
    again.broken_off = breaks_off(tokens, next);
    again.next = std::min(next, tokens.size());
    return again.broken_off;
  };
  if (broken_off()) return again;
  const bool rows = is_word(tokens, next, "row") || is_word(tokens, next, "rows") ||
                    is_word(tokens, next, "round") || is_word(tokens, next, "rounds");
  if (!rows) return std::nullopt;
  ++next;
  if (broken_off()) return again;
  if (!is(tokens, next, number)) return std::nullopt;
  again.first_row = again.last_row = tokens[next++].value;
  if (const auto last = range_end_at(tokens, next)) {
    again.last_row = *last;
    next += 2;
  }
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
