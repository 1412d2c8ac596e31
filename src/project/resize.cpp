#include "project/resize.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.hpp"
#include "project/json_fields.hpp"
#include "project/resize_size.hpp"

namespace evencount::project {
namespace {

template <typename Entries>
std::vector<std::string> ids_of(const Entries& entries) {
  std::vector<std::string> ids;
  for (const auto& entry : entries) ids.push_back(entry.id);
  return ids;
}

/// An id of the project; "" is the only one there is.
template <typename Entries>
Result<std::string> resolve(const std::string& id, const Entries& entries, std::string_view what) {
  const std::vector<std::string> ids = ids_of(entries);
  if (id.empty() && ids.size() == 1) return ids.front();
  if (id.empty())
    return Problem{ProblemCode::bad_usage, std::string(what),
                   fmt::format("no id, and {} in the project", ids.size()), "ID=NEW; " + json::one_of(ids)};
  if (std::ranges::find(ids, id) != ids.end()) return id;
  return Problem{ProblemCode::unknown_name, std::string(what), quote(id), json::one_of(ids)};
}

bool is_used(const Project& project, const std::string& bead) {
  return std::ranges::find(project.legend, bead, &LegendEntry::bead) != project.legend.end() ||
         std::ranges::find(project.bands, bead, &Band::bead) != project.bands.end() ||
         std::ranges::any_of(project.gauges,
                             [&](const SavedGauge& saved) { return saved.named.bead == bead; });
}

class Resizing {
 public:
  Resizing(const Project& project, const ResizeRequest& request) : old_(project), request_(request) {
    resized_.project = project;
  }

  Result<Resized> resize() {
    if (auto done = check_names(); !done) return done.problem();
    if (auto done = change_beads(); !done) return done.problem();
    if (auto done = change_forms(); !done) return done.problem();
    for (Band& band : resized_.project.bands)
      if (auto done =
              resize_band(old_.bands[static_cast<std::size_t>(&band - resized_.project.bands.data())], band);
          !done)
        return done.problem().within("band " + band.name);
    drop_unused_beads();
    if (!resized_.bands.empty() && !old_.finished_size.empty())
      note(fmt::format("the finished size was written for the old one: {}", quote(old_.finished_size)));
    return std::move(resized_);
  }

 private:
  void note(std::string text) { resized_.notes.push_back(std::move(text)); }

  Result<Done> check_names() {
    for (const auto& [name, wish] : request_.bands)
      if (const auto band = find_band(old_, name); !band) return band.problem();
    if (!request_.border) return Done{};
    const auto letters = letters_of(old_);
    const auto found = std::ranges::find(letters, *request_.border);
    if (found == letters.end())
      return Problem{ProblemCode::unknown_name, "border", quote(*request_.border), json::one_of(letters)};
    border_ = static_cast<chart::Bead>(found - letters.begin());
    return Done{};
  }

  Result<Done> change_beads() {
    for (const auto& [id, to] : request_.beads) {
      const auto from = resolve(id, old_.beads, "bead");
      if (!from) return from.problem();
      if (!new_beads_.emplace(*from, to).second)
        return Problem{ProblemCode::duplicate_name, "bead", quote(*from), "each bead once"};
      if (find_bead(resized_.project, to) != nullptr) continue;
      auto size = bead::find_size(to);
      if (!size) return size.problem();
      resized_.project.beads.push_back(std::move(*size));
    }
    for (LegendEntry& entry : resized_.project.legend) {
      const auto found = new_beads_.find(entry.bead);
      if (found == new_beads_.end() || found->second == entry.bead) continue;
      if (entry.pack)
        note(fmt::format("{}: its pack was of {} beads and is left out", entry.letter, entry.bead));
      entry.pack.reset();
      entry.bead = found->second;
    }
    return Done{};
  }

  Result<Done> change_forms() {
    for (const auto& [id, to] : request_.forms) {
      const auto which = resolve(id, old_.forms, "form");
      if (!which) return which.problem();
      FormEntry& entry = *std::ranges::find(resized_.project.forms, *which, &FormEntry::id);
      if (entry.form == to) continue;
      const bool named_by_size = entry.name == form::describe(entry.form);
      entry.form = to;
      if (named_by_size)
        entry.name = form::describe(to);
      else if (!entry.name.empty())
        note(fmt::format("form {} keeps its name: {}", *which, quote(entry.name)));
    }
    return Done{};
  }

  Result<Done> resize_band(const Band& old, Band& band) {
    const auto wished = request_.bands.find(band.name);
    const BandWish wish = wished == request_.bands.end() ? BandWish{} : wished->second;
    BandResize report;
    report.name = band.name;
    if (const auto found = new_beads_.find(band.bead);
        found != new_beads_.end() && found->second != band.bead) {
      band.bead = found->second;
      report.gauge_dropped = band.gauge.has_value();
      band.gauge.reset();
      band.gauge_unknown.clear();
    }
    const BandIn before{old_, old}, after{resized_.project, band};
    report.before = measure(before);
    const BandMeasure now = measure(after);
    if (now == report.before && !wish.columns && !wish.edge) {
      resized_.untouched.push_back(band.name);
      return Done{};
    }
    auto size = new_size(before, after, wish, request_.flat);
    if (!size) return size.problem();
    if (auto carried = carry_chart(old, band, *size, wish, report); !carried) return carried;
    report.fit = std::move(size->fit);
    report.after = measure(after);
    report.proportion =
        (report.after.width / report.before.width) / (report.after.length / report.before.length);
    resized_.bands.push_back(std::move(report));
    return Done{};
  }

  Result<Done> carry_chart(const Band& old, Band& band, const NewSize& size, const BandWish& wish,
                           BandResize& report) const {
    const auto technique = weave::find_technique(band.technique);
    if (!technique) return technique.problem();
    if (auto made = technique->check_size(size.columns, size.edge); !made) return made;
    const Piece from{technique->lattice(old.chart.columns(), old.chart.edge()), old.closure};
    const Piece to{technique->lattice(size.columns, size.edge), band.closure};
    CarryOptions options;
    options.method = wish.carry ? wish.carry : request_.carry;
    options.keep_lines = request_.keep_lines;
    options.border = border_;
    auto carried = carry(old.chart, from, to, options);
    if (!carried) return carried.problem();
    band.chart = carried->chart;
    report.carried = std::move(*carried);
    const auto plan = plan_of(band);
    if (plan) return Done{};
    Problem problem = plan.problem();
    problem.expected += "; carry it another way, or keep its counts";
    return problem;
  }

  void drop_unused_beads() {
    Project& project = resized_.project;
    std::erase_if(project.beads, [&](const bead::Size& size) {
      if (!new_beads_.contains(size.id)) return false;
      const bool used = is_used(project, size.id);
      if (!used) project.bead_unknown.erase(size.id);
      return !used;
    });
  }

  const Project& old_;
  const ResizeRequest& request_;
  Resized resized_;
  std::map<std::string, std::string> new_beads_;  ///< ids of the project
  std::optional<chart::Bead> border_;
};

}  // namespace

Result<FlatKeeps> parse_flat_keeps(std::string_view name) {
  if (name == "size") return FlatKeeps::size;
  if (name == "counts") return FlatKeeps::counts;
  return Problem{ProblemCode::unknown_name, "flat", quote(name), "size or counts"};
}

Result<Resized> resize(const Project& project, const ResizeRequest& request) {
  return Resizing(project, request).resize();
}

}  // namespace evencount::project
