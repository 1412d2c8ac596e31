#include "form/calibration.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <optional>

#include "base/text.hpp"
#include "form/closure.hpp"

namespace evencount::form {
namespace {

// Gauges between which a ring gets a verdict.
struct Span {
  Length finest;
  Length coarsest;
};

std::optional<Span> gauges_for(Verdict verdict, Use use, const ClosingRange& range) {
  const Limits& limit = limits(use);
  // A fixed band rests as near to no strain as its positions allow: with its smallest chord when all are too long, with
  // its largest when all are too short, else anywhere between.
  const Length pulled = use == Use::fixed ? range.smallest : range.largest, slack = range.largest;
  switch (verdict) {
    case Verdict::tight:
      if (limit.tight >= limit.closes) return std::nullopt;
      return Span{pulled / (1 + limit.closes), pulled / (1 + limit.tight)};
    case Verdict::snug:
      return Span{pulled / (1 + limit.tight), slack / (1 + limit.snug)};
    case Verdict::easy:
      return Span{slack / (1 + limit.snug), slack / (1 + limit.easy)};
    case Verdict::too_tight:
    case Verdict::too_loose:
      break;
  }
  return std::nullopt;
}

std::optional<Verdict> parse_verdict(std::string_view word) {
  for (const Verdict verdict :
       {Verdict::too_tight, Verdict::tight, Verdict::snug, Verdict::easy, Verdict::too_loose})
    if (word == verdict_name(verdict)) return verdict;
  return std::nullopt;
}

}  // namespace

Result<bead::GaugeEvidence> gauge_from_finished(const FinishedPiece& piece) {
  const auto outline = section(piece.form);
  if (!outline) return outline.problem();
  if (!(std::isfinite(piece.bead.diameter.mm()) && piece.bead.diameter > Length{}))
    return Problem{ProblemCode::out_of_range, "diameter of the bead",
                   plain_number(piece.bead.diameter.mm(), 3) + " mm", "above 0"};
  const auto range = closing_range(offset(*outline, piece.bead.diameter / 2), piece.edge);
  if (!range) return range.problem();
  const auto span = gauges_for(piece.verdict, piece.use, *range);
  if (!span)
    return Problem{ProblemCode::out_of_range, "verdict on the finished piece",
                   std::string(verdict_name(piece.verdict)),
                   piece.use == Use::fixed ? "tight, snug or easy" : "snug or easy for a sliding band"};
  const Length middle = (span->finest + span->coarsest) / 2;
  constexpr Length smallest_pitch = millimetres(0.2),
                   largest_pitch = millimetres(50);  // as bead::parse_gauge
  if (!(middle >= smallest_pitch && middle <= largest_pitch))
    return Problem{ProblemCode::out_of_range, "gauge of the finished piece",
                   plain_number(middle.mm(), 3) + " mm", "from 0.2 to 50 mm for a bead along the edge"};
  const double width = (span->coarsest - span->finest) / middle;
  return bead::GaugeEvidence{middle, width / std::sqrt(12.0), to_notation(piece)};
}

Result<FinishedPiece> parse_finished(std::string_view text, const bead::Size& bead) {
  const Problem bad{ProblemCode::bad_text, "finished piece", quote(text),
                    "FORM took COUNT, VERDICT, such as lens:17x5x9 took 24, snug"};
  constexpr std::string_view took = " took ";
  const auto at = text.find(took);
  if (at == std::string_view::npos) return bad;
  const auto form = parse_form(trim(text.substr(0, at)));
  if (!form) return form.problem().within("finished piece");
  const auto parts = split(text.substr(at + took.size()), ',');
  if (parts.size() < 2 || parts.size() > 3) return bad;
  const auto edge = parse_integer(trim(parts[0]));
  const auto verdict = parse_verdict(trim(parts[1]));
  constexpr std::int64_t most_edge = 100000;  // as fit
  if (!edge || *edge < 1 || *edge > most_edge || !verdict) return bad;
  FinishedPiece piece{*form, bead, static_cast<int>(*edge), *verdict};
  if (parts.size() == 3) {
    const auto use = parse_use(trim(parts[2]));
    if (!use) return bad;
    piece.use = *use;
  }
  return piece;
}

std::string to_notation(const FinishedPiece& piece) {
  return fmt::format("{} took {}, {}{}", to_notation(piece.form), piece.edge, verdict_name(piece.verdict),
                     piece.use == Use::sliding ? ", sliding" : "");
}

}  // namespace evencount::form
