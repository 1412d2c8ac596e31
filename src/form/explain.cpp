#include "form/explain.hpp"

#include <fmt/format.h>

#include <cmath>

#include "base/text.hpp"

namespace evencount::form {
namespace {

std::string mm(Length length) {
  return plain_number(length.mm(), 2) + " mm";
}

/// "0.1 % too short", "2.8 % longer than needed": the strain from the wearer's side.
std::string strain_words(double strain) {
  const std::string size = plain_number(100 * std::abs(strain), 1);
  if (size == "0") return "just the length that is needed";
  return size + (strain > 0 ? " % shorter than the way round" : " % longer than the way round");
}

std::string chance_words(double chance) {
  const int in_hundred = static_cast<int>(std::lround(100 * chance));
  if (in_hundred >= 100) return "practically every set of beads will close";
  if (in_hundred <= 0) return "practically no set of beads will close";
  return fmt::format("about {} of 100 sets of beads will close", in_hundred);
}

std::string way_round(const Fit& fit, const bead::Size& bead, const ConvexCurve& curve) {
  const Length bead_path = offset(curve, bead.diameter / 2).perimeter();
  return fmt::format(
      "The {} is {} round. The middles of the beads lie half a bead further out, on a path of {}. One {} "
      "takes {} of it ({}): {} "
      "divided by {} is {}.",
      describe(fit.form), mm(curve.perimeter()), mm(bead_path), trade_name(bead), mm(fit.gauge.edge),
      fit.gauge.source, plain_number(bead_path.mm(), 2), plain_number(fit.gauge.edge.mm(), 3),
      plain_number(bead_path / fit.gauge.edge, 1));
}

std::string best_length(const Fit& fit) {
  const FitCandidate& best = fit.candidates.front();
  std::string text = fmt::format(
      "Beads lie in straight steps, which cut bends a little short, so the count is worked out bead by bead: "
      "{} along the edge, {} "
      "rows, come out {}. Verdict for a {} band: {}.",
      best.edge, best.rows, strain_words(best.strain), use_name(fit.use),
      verdict_text(best.verdict, fit.use));
  if (!closes(best.verdict))
    text += " That is the nearest there is, so other beads or another form are needed.";
  else
    text += fmt::format(" Since no two beads are quite alike, {}.", chance_words(best.chance));
  return text;
}

std::string across(const Fit& fit) {
  std::string text =
      fmt::format("Across, {} columns of {} make {}", fit.columns, mm(fit.gauge.column), mm(fit.width));
  if (!fit.reveal) return text + ".";
  if (fit.reveal->mm() < 0)
    return text + fmt::format(", which stands {} over the form on each side.", mm(-*fit.reveal));
  return text + fmt::format(", which leaves {} of the form bare on each side.", mm(*fit.reveal));
}

std::string other_lengths(const Fit& fit) {
  std::string text;
  for (std::size_t i = 1; i < fit.candidates.size(); ++i) {
    const FitCandidate& other = fit.candidates[i];
    text += fmt::format("{}{} along the edge would be {}", text.empty() ? "" : "; ", other.edge,
                        verdict_text(other.verdict, fit.use));
  }
  return text.empty() ? text : text + ".";
}

}  // namespace

Result<std::string> explain(const Fit& fit, const bead::Size& bead) {
  const auto curve = section(fit.form);
  if (!curve) return curve.problem();
  std::string text = way_round(fit, bead, *curve) + "\n\n" + best_length(fit) + "\n\n" + across(fit) + "\n";
  if (const std::string others = other_lengths(fit); !others.empty()) text += "\n" + others + "\n";
  return text;
}

}  // namespace evencount::form
