#include "wording/reader_labels.hpp"

#include <array>

#include "wording/reader_runs.hpp"

namespace evencount::wording::reader {
namespace {

using enum TokenKind;
using weave::Travel;

/// The side that a word names, or the way it goes.
std::optional<Travel> side_at(const std::vector<Token>& tokens, std::size_t i) {
  for (const std::string_view name : {"l", "left", "rtl"})
    if (is_word(tokens, i, name)) return Travel::left;
  for (const std::string_view name : {"r", "right", "ltr"})
    if (is_word(tokens, i, name)) return Travel::right;
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

std::optional<Direction> direction_at(const std::vector<Token>& tokens, std::size_t i) {
  if (is(tokens, i, open)) {
    auto inside = plain_direction_at(tokens, i + 1);
    if (!inside || !is(tokens, inside->next, close)) return std::nullopt;
    ++inside->next;
    return inside;
  }
  const auto bare = plain_direction_at(tokens, i);
  // A bare letter could be a bead: it is a direction only where the label's colon follows.
  if (bare && !arrow_at(tokens, i) && !is(tokens, bare->next, colon)) return std::nullopt;
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

}  // namespace

std::optional<Label> label_at(const std::vector<Token>& tokens, std::size_t i) {
  Label label;
  label.spelled = row_word_at(tokens, i);
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
    if (const auto direction = direction_at(tokens, next)) {
      label.travel = direction->travel;
      next = direction->next;
    }
  };
  take_direction();
  label.colon = is(tokens, next, colon);
  label.period = is(tokens, next, period);
  if (label.colon || label.period) ++next;
  if (!label.travel) take_direction();
  if (!label.named && !label.colon) return std::nullopt;
  label.next = next;
  return label;
}

}  // namespace evencount::wording::reader
