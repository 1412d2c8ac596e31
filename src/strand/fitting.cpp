#include "strand/fitting.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.hpp"
#include "strand/chain_round.hpp"

namespace evencount::strand {
namespace {

Length from_um(std::int64_t um) {
  return millimetres(static_cast<double>(um) / 1000);
}

Choice choice_of(const Strung& strung, const RunCounts& answer, std::int64_t fixed) {
  return {counts_of(strung, answer), from_um(fixed + answer.length_um), from_um(answer.error_um),
          answer.spread, answer.beads};
}

std::int64_t units_in(const RunProblem& problem, const RunCounts& answer, std::size_t group) {
  std::int64_t units = 0;
  for (std::size_t r = 0; r < answer.counts[group].size(); ++r)
    units += std::int64_t{problem.groups[group].places[r]} * answer.counts[group][r];
  return units;
}

/// Looks for what would make it close, one freedom at a time.
class Remedies {
 public:
  Remedies(const Strung& strung, const RunProblem& problem, const FitQuestion& question,
           std::int64_t tolerance_um)
      : strung_(strung), problem_(problem), question_(question), tolerance_um_(tolerance_um) {}

  std::vector<Change> find(const std::optional<RunAnswers>& answers) {
    more_on_hand();
    one_sided();
    if (answers && answers->not_longer) finer_bead(*answers->not_longer);
    other_limits();
    take_away();
    if (answers) other_ease(from_um(answers->best().error_um));
    return std::move(changes_);
  }

 private:
  /// The answer when it closes then.
  [[nodiscard]] std::optional<RunCounts> closing(const RunProblem& problem) const {
    const auto answers = solve_runs(problem);
    if (!answers || std::abs(answers->best().error_um) > tolerance_um_) return std::nullopt;
    return answers->best();
  }

  void more_on_hand() {
    if (strung_.on_hand.empty()) return;
    RunProblem problem = problem_;
    for (RunGroup& group : problem.groups) group.takes.clear();
    problem.on_hand.clear();
    const auto answer = closing(problem);
    if (!answer) return;
    const std::vector<std::int64_t> use = use_of(strung_, counts_of(strung_, *answer));
    for (const auto& [element, count] : strung_.on_hand)
      if (const std::int64_t taken = use[static_cast<std::size_t>(element)]; taken > count)
        changes_.push_back({Remedy::more_on_hand,
                            strung_.elements[static_cast<std::size_t>(element)].id,
                            taken - count,
                            {}});
  }

  /// Each mirrored group by itself as if one more unit could lie in one half only.
  void one_sided() {
    for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
      const auto& places = problem_.groups[g].places;
      if (std::find(places.begin(), places.end(), 2) == places.end()) continue;
      RunProblem problem = problem_;
      RunGroup extra = problem.groups[g];
      extra.places = {1};
      extra.least = extra.most = 1;
      problem.groups.push_back(std::move(extra));
      if (closing(problem)) return changes_.push_back({Remedy::one_sided, strung_.groups[g].name, 1, {}});
    }
  }

  /// What the shorter answer lacks, filled by one element more.
  void finer_bead(const RunCounts& shorter) {
    if (strung_.runs.empty()) return;
    const auto mirrored = std::find_if(strung_.runs.begin(), strung_.runs.end(),
                                       [](const Run& run) { return run.places == 2; });
    const bool halves = mirrored != strung_.runs.end();
    constexpr std::int64_t widest_um = 10'000;  // wider is no spacer any more; from memory
    const std::int64_t width_um = -shorter.error_um / (halves ? 2 : 1);
    if (width_um > widest_um) return;
    const Run& run = halves ? *mirrored : strung_.runs.front();
    changes_.push_back({Remedy::finer_bead, strung_.groups[static_cast<std::size_t>(run.group)].name,
                        halves ? 2 : 1, from_um(width_um)});
  }

  void other_limits() {
    RunProblem problem = problem_;
    for (RunGroup& group : problem.groups) {
      group.least = 0;
      group.most = most_units;
    }
    const auto answer = closing(problem);
    if (!answer) return;
    for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
      const auto& counts = answer->counts[g];
      const RunGroup& limits = problem_.groups[g];
      const bool past = std::any_of(counts.begin(), counts.end(),
                                    [&](int c) { return c < limits.least || c > limits.most; });
      if (past)
        changes_.push_back({Remedy::other_limits, strung_.groups[g].name, units_in(problem, *answer, g), {}});
    }
  }

  /// Where the wearer can have that ease; else, when nothing else helps, more or less of what is fixed.
  void other_ease(Length error) {
    const Wearer& wearer = question_.wearer;
    const Length ease = wearer.ease + error;
    if (wearer.worn != Worn::length && ease >= Length{} && ease <= loose_ease)
      changes_.push_back({Remedy::other_ease, "", 0, error});
    else if (changes_.empty())
      changes_.push_back({Remedy::take_away, "", 0, error});
  }

  void take_away() {
    std::int64_t least_um = 0;
    for (const RunGroup& group : problem_.groups)
      for (const int places : group.places) least_um += group.unit_um * group.least * places;
    if (least_um > problem_.room_um)
      changes_.push_back({Remedy::take_away, "", 0, from_um(least_um - problem_.room_um)});
  }

  const Strung& strung_;
  const RunProblem& problem_;
  const FitQuestion& question_;
  std::int64_t tolerance_um_;
  std::vector<Change> changes_;
};

std::int64_t usual_tolerance_um(const Strung& strung) {
  constexpr std::int64_t without_runs = 500;
  std::int64_t narrowest = 2 * without_runs;
  bool first = true;
  for (const Group& group : strung.groups) {
    const std::int64_t width = unit_um(strung, group);
    narrowest = first ? width : std::min(narrowest, width);
    first = false;
  }
  return narrowest / 2;
}

Length let_out(const Strung& strung, const Counts& counts) {
  Length chain =
      strung.closing < 0 ? Length{} : strung.elements[static_cast<std::size_t>(strung.closing)].chain;
  for (const Piece& piece : pieces_of(strung, counts))
    chain = chain + strung.elements[static_cast<std::size_t>(piece.element)].chain;
  return chain;
}

/// The fit to a given way round.
Result<StrandFit> fit_length(const Strung& strung, const FitQuestion& question, Length thickness,
                             Length wanted) {
  StrandFit fit;
  fit.wearer = question.wearer;
  fit.thickness = thickness;
  fit.wanted = from_um(micrometres(wanted));
  const std::int64_t tolerance_um =
      question.tolerance ? micrometres(*question.tolerance) : usual_tolerance_um(strung);
  fit.tolerance = from_um(tolerance_um);
  RunProblem problem = run_problem(strung, micrometres(wanted));
  const std::int64_t fixed = fixed_um(strung);
  auto answers = solve_runs(problem);
  std::optional<RunAnswers> found;
  if (answers) {
    found = *answers;
  } else if (answers.problem().code != ProblemCode::too_few_beads) {
    return answers.problem();
  }
  if (found) {
    fit.best = choice_of(strung, found->best(), fixed);
    fit.closes = std::abs(found->best().error_um) <= tolerance_um;
    if (found->not_longer) fit.shorter = choice_of(strung, *found->not_longer, fixed);
    if (found->not_shorter) fit.longer = choice_of(strung, *found->not_shorter, fixed);
  } else {  // not even the least of everything is on hand
    for (const Run& run : strung.runs)
      fit.best.counts.push_back(strung.groups[static_cast<std::size_t>(run.group)].from);
    fit.best.length = from_um(strung_length_um(strung, fit.best.counts));
    fit.best.error = fit.best.length - fit.wanted;
  }
  if (!fit.closes) fit.changes = Remedies(strung, problem, question, tolerance_um).find(found);
  fit.girth_by_formula = inside_of(fit.best.length, thickness);
  fit.worn_up_to = fit.best.length + let_out(strung, fit.best.counts);
  if (question.wearer.worn == Worn::length) return fit;
  if (const auto chain =
          chain_round(links_of(strung, fit.best.counts), thickness, ratio_of(question.wearer.worn)))
    fit.girth_by_chain = chain->girth;
  return fit;
}

constexpr std::array<std::string_view, 6> remedies{"more_on_hand", "other_limits", "one_sided",
                                                   "finer_bead",   "take_away",    "other_ease"};

}  // namespace

std::string_view remedy_name(Remedy remedy) {
  return remedies[static_cast<std::size_t>(remedy)];
}

std::string describe(const Change& change) {
  const auto mm = [](Length length) { return plain_number(std::abs(length.mm())) + " mm"; };
  switch (change.remedy) {
    case Remedy::more_on_hand:
      return fmt::format("have {} more of {} on hand", change.count, change.name);
    case Remedy::other_limits:
      return fmt::format("let {} have {} units in all", change.name, change.count);
    case Remedy::one_sided:
      return fmt::format("string one more of {} in one half only", change.name);
    case Remedy::finer_bead:
      return change.count == 2
                 ? fmt::format("string a spacer {} wide into {} in each half", mm(change.length), change.name)
                 : fmt::format("string a spacer {} wide into {}", mm(change.length), change.name);
    case Remedy::take_away:
      return change.length >= Length{} ? fmt::format("take away {} of what is fixed", mm(change.length))
                                       : fmt::format("string {} more of what is fixed", mm(change.length));
    case Remedy::other_ease:
      return fmt::format("allow {} {} ease", mm(change.length), change.length >= Length{} ? "more" : "less");
  }
  return {};
}

Length thickness_of(const Strung& strung) {
  std::vector<bool> used(strung.elements.size(), false);
  const auto use = [&](int element) { used[static_cast<std::size_t>(element)] = true; };
  if (strung.closing >= 0) use(strung.closing);
  for (const Step& step : strung.steps)
    if (step.run < 0) use(step.piece.element);
  for (const Group& group : strung.groups)
    for (const Piece& piece : group.unit) use(piece.element);
  Length thickest;
  for (std::size_t i = 0; i < used.size(); ++i)
    if (used[i]) thickest = std::max(thickest, strung.elements[i].thickness);
  return thickest;
}

std::vector<Length> links_of(const Strung& strung, const Counts& counts) {
  const std::vector<std::int64_t> starts = piece_starts_um(strung, counts);
  std::vector<Length> links;
  for (std::size_t i = 0; i + 1 < starts.size(); ++i)
    if (starts[i + 1] > starts[i]) links.push_back(from_um(starts[i + 1] - starts[i]));
  if (strung.closing >= 0) links.push_back(strung.elements[static_cast<std::size_t>(strung.closing)].width);
  return links;
}

Result<StrandFit> fit_strand(const Strung& strung, const FitQuestion& question) {
  const Length thickness = thickness_of(strung);
  const auto wanted = length_for(question.wearer, thickness);
  if (!wanted) return wanted.problem();
  auto fit = fit_length(strung, question, thickness, *wanted);
  if (!question.allow_for_chain) return fit;
  // Other counts lose another length; a few rounds settle it, or it goes back and forth within a bead.
  constexpr int rounds = 4;
  for (int i = 0; i < rounds && fit && fit->girth_by_chain; ++i) {
    const Length lost = fit->girth_by_formula - *fit->girth_by_chain;
    auto next = fit_length(strung, question, thickness, *wanted + lost);
    if (!next) return next;
    const bool settled = next->best.counts == fit->best.counts;
    fit = std::move(next);
    if (settled) break;
  }
  return fit;
}

Result<std::vector<StrandFit>> fit_sizes(const Strung& strung, std::span<const Wearer> wearers,
                                         const FitQuestion& question) {
  std::vector<StrandFit> fits;
  for (const Wearer& wearer : wearers) {
    FitQuestion one = question;
    one.wearer = wearer;
    auto fit = fit_strand(strung, one);
    if (!fit) return fit.problem().within(wearer.name);
    fits.push_back(std::move(*fit));
  }
  return fits;
}

}  // namespace evencount::strand
