#include "bead/gauge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/text.hpp"

namespace evencount::bead {
namespace {

Result<Gauge> checked(Length column, Length edge, std::string source) {
  for (const Length pitch : {column, edge}) {
    if (!(pitch >= smallest_pitch && pitch <= largest_pitch)) {
      return Problem{ProblemCode::out_of_range, "gauge", plain_number(pitch.mm(), 4) + " mm",
                     "from 0.2 to 50 mm for a column and for a bead along the edge"};
    }
  }
  return Gauge{column, edge, std::move(source)};
}

// How much of the thread's diameter lies between two beads.
struct Shares {
  double column;
  double edge;
};

std::string default_source(const Size& size, const Thread& thread, std::string_view technique) {
  return fmt::format("default{} for the {} on {}", technique, trade_name(size), thread.name);
}

Gauge from_shares(const Size& size, const Thread& thread, Shares shares, std::string_view technique) {
  return {size.length + shares.column * thread.diameter, size.diameter + shares.edge * thread.diameter,
          default_source(size, thread, technique)};
}

bool flat_ends(const Size& size) {
  return size.kind == Kind::cylinder;
}

// "12 columns", "20 along the edge": the count before a phrase.
std::optional<int> count_before(std::string_view text, std::string_view phrase) {
  text = trim(text);
  if (!text.ends_with(phrase)) return std::nullopt;
  const auto count = parse_integer(trim(text.substr(0, text.size() - phrase.size())));
  constexpr std::int64_t most = 100000;  // more than any swatch
  if (!count || *count < 0 || *count > most) return std::nullopt;
  return static_cast<int>(*count);
}

struct Stretch {
  int count = 0;
  Length length;
};

}  // namespace

Gauge default_gauge(const Size& size, const Thread& thread) {
  return from_shares(size, thread, flat_ends(size) ? Shares{0.25, 0.30} : Shares{0.0, 0.10}, "");
}

Gauge square_gauge(const Size& size, const Thread& thread) {
  return from_shares(size, thread, flat_ends(size) ? Shares{0.50, 0.30} : Shares{0.25, 0.30},
                     " of square stitch");
}

Gauge brick_gauge(const Size& size, const Thread& thread) {
  return from_shares(size, thread, flat_ends(size) ? Shares{0.50, 0.30} : Shares{0.25, 0.10},
                     " of brick stitch");
}

Gauge loom_gauge(const Size& size, const Thread& thread) {
  return from_shares(size, thread, flat_ends(size) ? Shares{0.55, 0.30} : Shares{0.30, 0.30},
                     " of loom work");
}

Gauge herringbone_gauge(const Size& size, const Thread& thread) {
  constexpr double tilt = 15 * std::numbers::pi / 180;  // from memory
  const double between_rows = flat_ends(size) ? 0.25 : 0.0;
  return {size.diameter + 0.30 * thread.diameter,
          size.length / std::cos(tilt) + between_rows * thread.diameter,
          default_source(size, thread, " of flat herringbone")};
}

Gauge right_angle_gauge(const Size& size, const Thread& thread) {
  const Length unit =
      size.length + size.diameter - (4 - 2 * std::numbers::sqrt2) * rim(size) + 0.10 * thread.diameter;
  return {unit, unit, default_source(size, thread, " of right-angle weave")};
}

Result<Gauge> parse_gauge(std::string_view text) {
  const auto parts = split(text, 'x');
  const Problem bad{ProblemCode::bad_text, "gauge", quote(text),
                    "COLUMNxEDGE in millimetres, such as 1.35x1.66"};
  if (parts.size() != 2) return bad;
  const auto column = parse_length(parts[0]);
  const auto edge = parse_length(parts[1]);
  if (!column || !edge) return bad;
  return checked(*column, *edge, "given");
}

Result<Gauge> gauge_from_swatch(int columns, Length across, int edge, Length along) {
  if (columns < 1 || edge < 1)
    return Problem{ProblemCode::out_of_range, "swatch",
                   fmt::format("{} columns, {} along the edge", columns, edge), "at least 1 of each"};
  auto gauge = checked(across / columns, along / edge,
                       fmt::format("swatch: {} columns = {} mm, {} along the edge = {} mm", columns,
                                   plain_number(across.mm()), edge, plain_number(along.mm())));
  if (gauge) gauge->uncertainty = reading_error / along;
  return gauge;
}

Result<Gauge> parse_swatch(std::string_view text) {
  const Problem bad{ProblemCode::bad_text, "swatch", quote(text),
                    "such as 12 columns = 16.1 mm, 20 along the edge = 33.4 mm"};
  constexpr std::string_view heading = "swatch:";
  std::string_view rest = trim(text);
  if (rest.starts_with(heading)) rest.remove_prefix(heading.size());
  std::optional<Stretch> across, along;
  for (const std::string_view part : split(rest, ',')) {
    const auto sides = split(part, '=');
    if (sides.size() != 2) return bad;
    const auto length = parse_length(sides[1]);
    if (!length) return length.problem().within("swatch");
    const auto columns = count_before(sides[0], "columns"), edge = count_before(sides[0], "along the edge");
    auto& stretch = columns ? across : along;
    if ((!columns && !edge) || stretch) return bad;
    stretch = Stretch{columns ? *columns : *edge, *length};
  }
  if (!across || !along) return bad;
  return gauge_from_swatch(across->count, across->length, along->count, along->length);
}

std::string to_notation(const Gauge& gauge) {
  return plain_number(gauge.column.mm(), 3) + "x" + plain_number(gauge.edge.mm(), 3);
}

}  // namespace evencount::bead
