#include "bead/gauge.hpp"

#include <fmt/format.h>

#include "base/text.hpp"

namespace evencount::bead {
namespace {

constexpr Length smallest_pitch = millimetres(0.2), largest_pitch = millimetres(50);

Result<Gauge> checked(Length column, Length edge, std::string source) {
  for (const Length pitch : {column, edge}) {
    if (!(pitch >= smallest_pitch && pitch <= largest_pitch)) {
      return Problem{ProblemCode::out_of_range, "gauge", plain_number(pitch.mm(), 4) + " mm",
                     "from 0.2 to 50 mm for a column and for a bead along the edge"};
    }
  }
  return Gauge{column, edge, std::move(source)};
}

}  // namespace

Gauge default_gauge(const Size& size, const Thread& thread) {
  const bool flat_ends = size.kind == Kind::cylinder;
  const double column_share = flat_ends ? 0.25 : 0.0;
  const double edge_share = flat_ends ? 0.30 : 0.10;
  return {size.length + column_share * thread.diameter, size.diameter + edge_share * thread.diameter,
          fmt::format("default for the {} on {}", trade_name(size), thread.name)};
}

Result<Gauge> parse_gauge(std::string_view text) {
  const auto parts = split(text, 'x');
  const Problem bad{ProblemCode::bad_text, "gauge", quoted(text),
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
  return checked(across / columns, along / edge,
                 fmt::format("swatch: {} columns = {} mm, {} along the edge = {} mm", columns,
                             plain_number(across.mm()), edge, plain_number(along.mm())));
}

std::string to_notation(const Gauge& gauge) {
  return plain_number(gauge.column.mm(), 3) + "x" + plain_number(gauge.edge.mm(), 3);
}

}  // namespace evencount::bead
