#include "app/studio/recover.hpp"

#include "project/json.hpp"

namespace evencount::app::studio {
namespace {

/// The project of a kept file, with all that was done since.
Result<project::Project> replayed(const History& history, const KeptFile& file, project::Project& base) {
  auto parsed = project::parse_project(file.text);
  if (!parsed) return parsed.problem();
  base = *parsed;
  for (std::int64_t number = file.revision + 1; number <= history.newest(); ++number) {
    const auto patch = history.patch(number);
    if (!patch) return patch.problem();
    auto next = project::apply(*parsed, *patch);
    if (!next) return next.problem();
    parsed = std::move(next);
  }
  return parsed;
}

}  // namespace

Recovered merged(const project::Project& base, const project::Project& now, project::Project theirs) {
  const project::Patch change = project::diff(base, theirs), ours = project::diff(base, now);
  if (project::independent(change, ours))
    if (auto both = project::apply(now, change)) theirs = std::move(*both);
  project::Patch outside = project::diff(now, theirs);
  if (outside.empty()) return {std::move(theirs), {}, true};
  return {std::move(theirs), std::move(outside), true};
}

Result<Recovered> recover(const History& history, const std::string& text) {
  const auto files = history.kept_files();
  if (!files) return files.problem();
  if (files->empty()) {
    auto project = project::parse_project(text);
    if (!project) return project.problem();
    return Recovered{std::move(*project), {}, false};
  }
  for (const KeptFile& file : *files) {
    if (file.text != text) continue;
    project::Project base;
    auto now = replayed(history, file, base);
    if (!now) return now.problem();
    return Recovered{std::move(*now), {}, file.revision < history.newest()};
  }
  auto theirs = project::parse_project(text);
  if (!theirs) return theirs.problem();
  project::Project base;
  // Of two, the file that was there may be either: what both have in common is the older.
  auto now = replayed(history, files->back(), base);
  if (!now) return now.problem();
  return merged(base, *now, std::move(*theirs));
}

}  // namespace evencount::app::studio
