#include "project/patch.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "project/outline.hpp"
#include "project/pointer.hpp"

namespace evencount::project {
namespace {

using json::Array;
using json::Member;
using json::Node;
using json::Object;

constexpr std::string_view bands_name = "bands";

std::vector<CellRun> changed_cells(const chart::Chart& before, const chart::Chart& after) {
  const auto old = before.cells(), now = after.cells();
  std::vector<CellRun> runs;
  for (std::size_t i = 0; i < old.size(); ++i) {
    if (old[i] == now[i]) continue;
    const int at = static_cast<int>(i);
    if (!runs.empty() && runs.back().first + runs.back().count == at && runs.back().before == old[i] &&
        runs.back().after == now[i])
      ++runs.back().count;
    else
      runs.push_back({at, 1, old[i], now[i]});
  }
  return runs;
}

const Node* find(const Object& object, std::string_view name) {
  const auto found =
      std::find_if(object.begin(), object.end(), [&](const Member& member) { return member.first == name; });
  return found == object.end() ? nullptr : &found->second;
}

void compare(const Node& before, const Node& after, const std::string& pointer,
             std::vector<ValueChange>& changes);

void compare_members(const Object& before, const Object& after, const std::string& pointer,
                     std::vector<ValueChange>& changes) {
  for (const auto& [name, value] : before) {
    if (pointer.empty() && name == bands_name) continue;
    const std::string place = pointer + json::pointer_step(name);
    if (const Node* now = find(after, name))
      compare(value, *now, place, changes);
    else
      changes.push_back({place, json::to_compact_text(value), {}});
  }
  for (const auto& [name, value] : after)
    if (!(pointer.empty() && name == bands_name) && find(before, name) == nullptr)
      changes.push_back({pointer + json::pointer_step(name), {}, json::to_compact_text(value)});
}

void compare(const Node& before, const Node& after, const std::string& pointer,
             std::vector<ValueChange>& changes) {
  if (before == after) return;
  const auto *old_object = before.as<Object>(), *new_object = after.as<Object>();
  if (old_object && new_object) return compare_members(*old_object, *new_object, pointer, changes);
  const auto *old_list = before.as<Array>(), *new_list = after.as<Array>();
  if (old_list && new_list && old_list->size() == new_list->size()) {
    for (std::size_t i = 0; i < old_list->size(); ++i)
      compare((*old_list)[i], (*new_list)[i], fmt::format("{}/{}", pointer, i), changes);
    return;
  }
  changes.push_back({pointer, json::to_compact_text(before), json::to_compact_text(after)});
}

std::vector<WholeBand> whole_bands(const Project& project, std::size_t first, std::size_t end) {
  std::vector<WholeBand> bands;
  for (std::size_t i = first; i < end; ++i)
    bands.push_back({json::to_compact_text(outline_of(project.bands[i])), project.bands[i].chart});
  return bands;
}

/// The one stretch of bands outside which nothing changed, when there are more or fewer of them.
BandsChange changed_stretch(const Project& before, const Project& after) {
  const std::size_t shorter = std::min(before.bands.size(), after.bands.size());
  std::size_t first = 0, last = 0;
  while (first < shorter && before.bands[first] == after.bands[first]) ++first;
  while (last < shorter - first &&
         before.bands[before.bands.size() - 1 - last] == after.bands[after.bands.size() - 1 - last])
    ++last;
  return {static_cast<int>(first), static_cast<int>(before.bands.size()),
          whole_bands(before, first, before.bands.size() - last),
          whole_bands(after, first, after.bands.size() - last)};
}

void compare_band(const Project& before, const Project& after, std::size_t i, Patch& patch) {
  const Band &old = before.bands[i], &now = after.bands[i];
  if (old.chart.columns() != now.chart.columns() || old.chart.edge() != now.chart.edge()) {
    patch.bands.push_back({static_cast<int>(i), static_cast<int>(before.bands.size()),
                           whole_bands(before, i, i + 1), whole_bands(after, i, i + 1)});
    return;
  }
  if (auto runs = changed_cells(old.chart, now.chart); !runs.empty())
    patch.cells.push_back({static_cast<int>(i), std::move(runs)});
  compare(outline_of(old), outline_of(now), fmt::format("/{}/{}", bands_name, i), patch.values);
}

Problem out_of_date(std::string where) {
  return {ProblemCode::out_of_date, std::move(where), "something else than what was changed",
          "the project as it was before"};
}

/// A project taken apart, to be changed.
struct Parts {
  Node outline;
  std::vector<chart::Chart> charts;

  [[nodiscard]] Array& bands() {
    auto& members = *std::get_if<Object>(&outline.value);
    return *std::get_if<Array>(&std::find_if(members.begin(), members.end(), [](const Member& m) {
                                  return m.first == bands_name;
                                })->second.value);
  }
};

Result<Done> put_bands(Parts& parts, const BandsChange& change) {
  Array& bands = parts.bands();
  const auto at = static_cast<std::size_t>(change.at);
  const Problem stale = out_of_date(fmt::format("/{}/{}", bands_name, change.at));
  if (change.at < 0 || static_cast<std::size_t>(change.of) != bands.size() ||
      at + change.before.size() > bands.size())
    return stale;
  for (std::size_t i = 0; i < change.before.size(); ++i)
    if (parts.charts[at + i] != change.before[i].chart ||
        json::to_compact_text(bands[at + i]) != change.before[i].outline)
      return stale;
  Array outlines;
  std::vector<chart::Chart> charts;
  for (const WholeBand& band : change.after) {
    auto outline = json::parse(band.outline);
    if (!outline) return outline.problem().within(stale.where);
    outlines.push_back(std::move(*outline)), charts.push_back(band.chart);
  }
  const auto replace = [at, &change](auto& list, auto& items) {
    const auto first = list.begin() + static_cast<std::ptrdiff_t>(at);
    const auto next = list.erase(first, first + static_cast<std::ptrdiff_t>(change.before.size()));
    list.insert(next, std::make_move_iterator(items.begin()), std::make_move_iterator(items.end()));
  };
  replace(bands, outlines), replace(parts.charts, charts);
  return Done{};
}

Result<Done> put_cells(std::vector<Band>& bands, const BandCells& cells, std::size_t legend) {
  const Problem stale = out_of_date(fmt::format("/{}/{}/cells", bands_name, cells.band));
  if (cells.band < 0 || static_cast<std::size_t>(cells.band) >= bands.size()) return stale;
  chart::Chart& chart = bands[static_cast<std::size_t>(cells.band)].chart;
  const int size = static_cast<int>(chart.cells().size()), columns = chart.columns();
  for (const CellRun& run : cells.runs) {
    if (run.first < 0 || run.count < 1 || run.count > size || run.first > size - run.count) return stale;
    if (run.after != chart::no_bead && run.after >= legend) return stale;
    for (int i = run.first; i < run.first + run.count; ++i) {
      const chart::Cell cell{i % columns, i / columns};
      if (chart.at(cell) != run.before) return stale;
      chart.set(cell, run.after);
    }
  }
  return Done{};
}

Result<Project> put_values(Project project, const Patch& patch) {
  Parts parts{outline_of(project), {}};
  for (Band& band : project.bands) parts.charts.push_back(std::move(band.chart));
  for (const BandsChange& change : patch.bands)
    if (auto put = put_bands(parts, change); !put) return put.problem();
  for (const ValueChange& change : patch.values)
    if (auto put = json::put(parts.outline, change.pointer, change.before, change.after); !put)
      return put.problem();
  return with_outline(parts.outline, std::move(parts.charts));
}

}  // namespace

Patch diff(const Project& before, const Project& after) {
  Patch patch;
  if (before.bands.size() != after.bands.size()) {
    patch.bands.push_back(changed_stretch(before, after));
  } else {
    for (std::size_t i = 0; i < before.bands.size(); ++i)
      if (!(before.bands[i] == after.bands[i])) compare_band(before, after, i, patch);
  }
  compare(outline_of(before), outline_of(after), "", patch.values);
  return patch;
}

Result<Project> apply(const Project& project, const Patch& patch) {
  // Cells first: their positions in the legend are those of the wider of both, as far as they are drawn with.
  Project changed = project;
  const bool outline_changes = !patch.bands.empty() || !patch.values.empty();
  const std::size_t legend = outline_changes ? most_legend_entries : project.legend.size();
  for (const BandCells& cells : patch.cells)
    if (auto put = put_cells(changed.bands, cells, legend); !put) return put.problem();
  if (!outline_changes) return changed;
  return put_values(std::move(changed), patch);
}

Patch inverse(const Patch& patch) {
  Patch turned = patch;
  for (BandsChange& change : turned.bands) {
    change.of += static_cast<int>(change.after.size()) - static_cast<int>(change.before.size());
    std::swap(change.before, change.after);
  }
  for (BandCells& cells : turned.cells)
    for (CellRun& run : cells.runs) std::swap(run.before, run.after);
  for (ValueChange& change : turned.values) std::swap(change.before, change.after);
  return turned;
}

}  // namespace evencount::project
