#include "form/bezel_stone.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "base/text.hpp"
#include "form/form.hpp"

namespace evencount::form {
namespace {

constexpr int decimals = 4;
constexpr std::string_view pattern = "stone:DIAMETER or WIDTHxHEIGHT,girdle=MM,dome=MM,back=MM or flat";
constexpr std::string_view prefix = "stone:", flat_back = "flat";

std::string written(Length length) {
  return plain_number(length.mm(), decimals);
}

Problem bad_size(std::string_view part, Length found, std::string expected) {
  return {ProblemCode::out_of_range, fmt::format("{} of the stone", part), written(found) + " mm",
          std::move(expected)};
}

std::string at_most(Length most) {
  return fmt::format("above 0, at most {} mm", written(most));
}

Result<Done> read_sizes(std::string_view text, Stone& stone) {
  const auto parts = split(text, 'x');
  if (parts.size() > 2)
    return Problem{ProblemCode::bad_text, "stone", fmt::format("{} with {} sizes", quote(text), parts.size()),
                   "a diameter, or WIDTHxHEIGHT"};
  std::vector<Length> sizes;
  for (const auto part : parts) {
    const auto size = parse_length(part);
    if (!size) return size.problem().within("size of the stone");
    sizes.push_back(*size);
  }
  stone.width = sizes.front();
  stone.height = sizes.back();
  return Done{};
}

Result<Done> read_key(std::string_view key, std::string_view value, Stone& stone) {
  if (key == "back" && value == flat_back) {
    stone.back = BackShape::flat;
    return Done{};
  }
  Length* const target = key == "girdle" ? &stone.girdle
                         : key == "dome" ? &stone.dome
                         : key == "back" ? &stone.back_depth
                                         : nullptr;
  if (target == nullptr)
    return Problem{ProblemCode::unknown_name, "stone", quote(key), "one of girdle, dome, back"};
  const auto size = parse_length(value);
  if (!size) return size.problem().within(fmt::format("{} of the stone", key));
  *target = *size;
  return Done{};
}

}  // namespace

Result<Done> check_stone(const Stone& stone) {
  for (const auto& [part, size] : {std::pair{"width", stone.width}, std::pair{"height", stone.height}})
    if (!(size >= smallest_size && size <= largest_size))
      return bad_size(part, size,
                      fmt::format("from {} to {} mm", written(smallest_size), written(largest_size)));
  if (!(stone.girdle >= Length{} && stone.girdle <= largest_size))
    return bad_size("girdle", stone.girdle, fmt::format("from 0 to {} mm", written(largest_size)));
  const Length highest = std::min(stone.width, stone.height) / 2;
  if (!(stone.dome > Length{} && stone.dome <= highest))
    return bad_size("dome", stone.dome, at_most(highest) + ", half the shorter width");
  if (stone.back == BackShape::pointed && !(stone.back_depth > Length{} && stone.back_depth <= largest_size))
    return bad_size("back", stone.back_depth, at_most(largest_size) + ", or flat");
  if (stone.back == BackShape::flat && stone.back_depth != Length{})
    return bad_size("back", stone.back_depth, "0 for a flat back");
  return Done{};
}

Result<Stone> parse_stone(std::string_view text) {
  const Problem bad{ProblemCode::bad_text, "stone", quote(text), std::string(pattern)};
  const std::string_view whole = trim(text);
  if (!whole.starts_with(prefix)) return bad;
  const auto parts = split(whole.substr(prefix.size()), ',');
  Stone stone;
  if (const auto read = read_sizes(trim(parts.front()), stone); !read) return read.problem();
  std::vector<std::string_view> seen;
  for (std::size_t i = 1; i < parts.size(); ++i) {
    const auto equals = parts[i].find('=');
    if (equals == std::string_view::npos) return bad;
    const std::string_view key = trim(parts[i].substr(0, equals));
    if (std::find(seen.begin(), seen.end(), key) != seen.end())
      return Problem{ProblemCode::duplicate_name, "stone", quote(key), "each key once"};
    seen.push_back(key);
    if (const auto read = read_key(key, trim(parts[i].substr(equals + 1)), stone); !read)
      return read.problem();
  }
  for (const std::string_view key : {"dome", "back"})
    if (std::find(seen.begin(), seen.end(), key) == seen.end())
      return Problem{ProblemCode::missing_field, "stone", fmt::format("{} without {}", quote(text), key),
                     std::string(pattern)};
  if (const auto checked = check_stone(stone); !checked) return checked.problem();
  return stone;
}

std::string to_notation(const Stone& stone) {
  const std::string size =
      is_round(stone) ? written(stone.width) : written(stone.width) + "x" + written(stone.height);
  return fmt::format("{}{},girdle={},dome={},back={}", prefix, size, written(stone.girdle),
                     written(stone.dome),
                     stone.back == BackShape::flat ? std::string(flat_back) : written(stone.back_depth));
}

std::string describe(const Stone& stone) {
  const auto shown = [](Length length) { return plain_number(length.mm()) + " mm"; };
  const std::string size = is_round(stone) ? "round stone " + shown(stone.width)
                                           : fmt::format("oval stone {} × {}", plain_number(stone.width.mm()),
                                                         shown(stone.height));
  const std::string edge =
      stone.girdle > Length{} ? "girdle " + shown(stone.girdle) : std::string("sharp girdle");
  const std::string back =
      stone.back == BackShape::flat ? std::string("flat back") : "pointed back " + shown(stone.back_depth);
  return fmt::format("{}, {}, dome {}, {}", size, edge, shown(stone.dome), back);
}

}  // namespace evencount::form
