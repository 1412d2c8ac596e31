#include "app/verbs/picture_making.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "app/picture_argument.hpp"
#include "base/text.hpp"
#include "form/faces.hpp"
#include "weave/technique.hpp"

namespace evencount::app {
namespace {

/// The offered colours of a name, or all that are this colour.
Result<std::vector<std::size_t>> find_colours(const PictureJob& job, const std::string& wanted) {
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < job.offer.size(); ++i)
    if (job.offer[i].name == wanted || colour::to_hex(job.offer[i].stock.colour) == lower_ascii(wanted))
      found.push_back(i);
  if (found.empty())
    return Problem{ProblemCode::unknown_name, "colour", quote(wanted),
                   "the name or #rrggbb of a colour of the stock"};
  return found;
}

Result<Done> rule_colours(PictureJob& job, const std::vector<std::string>& wanted, picture::StockRule rule) {
  for (const std::string& name : wanted) {
    const auto found = find_colours(job, name);
    if (!found) return found.problem();
    for (const std::size_t i : *found) job.offer[i].stock.rule = rule;
  }
  return Done{};
}

/// "night=400": no more than 400 beads of it.
Result<Done> limit_colours(PictureJob& job, const std::vector<std::string>& limits) {
  for (const std::string& limit : limits) {
    const auto equals = limit.rfind('=');
    const auto most =
        equals == std::string::npos ? std::nullopt : parse_number(trim(limit.substr(equals + 1)));
    if (!most || *most < 0 || *most > chart::most_cells || *most != std::floor(*most))
      return Problem{ProblemCode::bad_text, "on hand", quote(limit), "COLOUR=BEADS, such as night=400"};
    const auto found = find_colours(job, std::string(trim(limit.substr(0, equals))));
    if (!found) return found.problem();
    for (const std::size_t i : *found) job.offer[i].stock.at_most = static_cast<int>(*most);
  }
  return Done{};
}

Result<picture::Placement> placement_of(const PictureArguments& arguments) {
  picture::Placement placement;
  placement.mirrored = arguments.mirror;
  placement.turn_degrees = arguments.turn;
  placement.keep_detail = arguments.detail;
  if (arguments.fit == "contain")
    placement.fit = picture::PictureFit::contain;
  else if (arguments.fit == "stretch")
    placement.fit = picture::PictureFit::stretch;
  else if (arguments.fit != "fill")
    return Problem{ProblemCode::bad_usage, "fit", quote(arguments.fit), "fill, contain or stretch"};
  const auto ground = colour::parse_hex(arguments.ground);
  if (!ground) return Problem{ProblemCode::bad_text, "ground", quote(arguments.ground), "a colour, #rrggbb"};
  placement.ground = colour::to_linear(*ground);
  if (!arguments.crop.empty()) {
    const auto crop = rectangle_argument(arguments.crop);
    if (!crop) return crop.problem().within("crop");
    placement.crop = *crop;
  }
  return placement;
}

/// A new band: technique, bead, closure, and a chart that the picture will fill.
Result<Done> begin_band(PictureJob& job, const PictureArguments& arguments) {
  project::Band& band = job.band;
  band.name = arguments.name.empty() ? fmt::format("Band {}", job.project.bands.size() + 1) : arguments.name;
  band.technique = arguments.technique.empty() ? std::string(weave::flat_peyote_for(*arguments.columns).id)
                                               : arguments.technique;
  const auto technique = weave::find_technique(band.technique);
  if (!technique) return technique.problem();
  if (auto size = technique->check_size(*arguments.columns, *arguments.edge); !size) return size;
  band.closure = arguments.open ? weave::Closure::open : technique->closures.front();
  band.bead = arguments.bead;
  if (project::find_bead(job.project, band.bead) == nullptr) {
    auto size = bead::find_size(band.bead);
    if (!size) return size.problem();
    job.project.beads.push_back(std::move(*size));
  }
  auto chart = chart::Chart::make(*arguments.columns, *arguments.edge);
  if (!chart) return chart.problem();
  band.chart = std::move(*chart);
  return Done{};
}

/// The band the picture goes into: a new one of the size given, or the one of that name.
Result<Done> find_or_begin_band(PictureJob& job, const PictureArguments& arguments) {
  if (arguments.columns && arguments.edge) return begin_band(job, arguments);
  const bool sized = arguments.columns || arguments.edge || !arguments.technique.empty() || arguments.open;
  if (sized || arguments.name.empty())
    return Problem{ProblemCode::bad_usage, "band", sized ? "half a size" : "neither a size nor a name",
                   "--columns and --edge for a new band, or --name alone for one of the project's"};
  auto band = project::find_band(job.project, arguments.name);
  if (!band) return band.problem();
  job.band = std::move(*band);
  return Done{};
}

/// The steps of the band that the picture covers: a face's, those given, or all.
Result<Done> find_window(PictureJob& job, const PictureArguments& arguments) {
  const int edge = job.band.chart.edge();
  job.window = project::whole_window(job.band.chart);
  if (!arguments.face.empty()) {
    if (arguments.at || arguments.steps)
      return Problem{ProblemCode::bad_usage, "face", "--face with --at or --steps", "one way to say where"};
    const auto side = arguments.face == "front"  ? std::optional(form::Side::front)
                      : arguments.face == "back" ? std::optional(form::Side::back)
                                                 : std::nullopt;
    if (!side) return Problem{ProblemCode::bad_usage, "face", quote(arguments.face), "front or back"};
    const auto window = project::face_window(job.project, job.band, *side);
    if (!window) return window.problem();
    job.window = *window;
    return Done{};
  }
  job.window.first.step = arguments.at.value_or(0);
  if (job.window.first.step < 0 || job.window.first.step >= edge)
    return Problem{ProblemCode::out_of_range, "at", fmt::format("step {}", job.window.first.step),
                   fmt::format("0 to {}", edge - 1)};
  job.window.steps = arguments.steps.value_or(edge - job.window.first.step);
  return Done{};
}

Result<Done> read_picture(PictureJob& job, const PictureArguments& arguments, const PictureSources& sources) {
  auto image = sources.image();
  if (!image) return image.problem();
  job.image = std::move(*image);
  auto placement = placement_of(arguments);
  if (!placement) return placement.problem();
  job.options.placement = *placement;
  return Done{};
}

/// The beads of a size that have a colour; at most so many of each as are free, where only the stock may be used.
std::vector<project::OfferedBead> offer_of(const std::vector<materials::StockedItem>& items,
                                           const bead::Size& size, bool only_free) {
  std::vector<project::OfferedBead> offer;
  for (const materials::StockedItem& one : items) {
    const auto* beads = std::get_if<materials::BeadStock>(&one.item.what);
    if (beads == nullptr || beads->size != size.id || !beads->colour) continue;
    project::OfferedBead offered{one.item.name, {.colour = *beads->colour}, beads->finish};
    if (only_free) {
      const double grams = static_cast<double>(std::max<std::int64_t>(one.level.free(), 0)) / 1000;
      const double count = std::floor(grams * beads->beads_per_gram.value_or(size.beads_per_gram));
      offered.stock.at_most = static_cast<int>(std::min(count, 1.0 * chart::most_cells));
    }
    offer.push_back(std::move(offered));
  }
  return offer;
}

Result<Done> read_stock(PictureJob& job, const PictureArguments& arguments, const PictureSources& sources) {
  const auto items = sources.stock(job.band.bead);
  if (!items) return items.problem();
  const bead::Size* size = project::find_bead(job.project, job.band.bead);
  if (size == nullptr)
    return Problem{ProblemCode::unknown_name, "bead", job.band.bead, "one of the project's beads"};
  job.offer = offer_of(*items, *size, arguments.only_free);
  if (job.offer.empty())
    return Problem{ProblemCode::missing_field,
                   arguments.stock.file.empty() ? "the stock" : arguments.stock.file,
                   "no " + size->id + " with a colour", "beads of the band's size"};
  if (auto ruled = rule_colours(job, arguments.require, picture::StockRule::required); !ruled) return ruled;
  if (auto ruled = rule_colours(job, arguments.forbid, picture::StockRule::forbidden); !ruled) return ruled;
  return limit_colours(job, arguments.on_hand);
}

Result<Done> choose_finish(PictureJob& job, const PictureArguments& arguments) {
  job.options.colours = arguments.colours;
  job.options.choice.effort.prove = !arguments.quick;
  if (arguments.mix && arguments.smooth)
    return Problem{ProblemCode::bad_usage, "mix", "--mix with --smooth",
                   "one of them: mixing sets beads apart that smoothing would join"};
  if (arguments.mix) job.options.after = project::AfterChoice::mix;
  if (arguments.smooth) {
    job.options.after = project::AfterChoice::smooth;
    job.options.smoothing.strength = arguments.strength;
  }
  return Done{};
}

}  // namespace

Result<PictureJob> picture_job(const PictureArguments& arguments, project::Project project,
                               const PictureSources& sources) {
  PictureJob job;
  job.project = std::move(project);
  if (auto done = find_or_begin_band(job, arguments); !done) return done.problem();
  if (auto done = find_window(job, arguments); !done) return done.problem();
  if (auto done = read_stock(job, arguments, sources); !done) return done.problem();
  if (auto done = choose_finish(job, arguments); !done) return done.problem();
  if (auto done = read_picture(job, arguments, sources); !done) return done.problem();
  return job;
}

std::vector<std::pair<const project::OfferedBead*, std::int64_t>> uses_of(const PictureJob& job,
                                                                          const project::PictureBand& made) {
  const std::vector<int>& beads = made.mixed      ? made.mixed->bead_of_cell
                                  : made.smoothed ? made.smoothed->bead_of_cell
                                                  : made.choice.bead_of_cell;
  std::vector<std::pair<const project::OfferedBead*, std::int64_t>> uses;
  for (const int bead : made.choice.chosen)
    uses.emplace_back(&job.offer[static_cast<std::size_t>(bead)],
                      std::count(beads.begin(), beads.end(), bead));
  return uses;
}

Json picture_json(const PictureJob& job, const project::PictureBand& made) {
  Json colours = Json::array();
  for (const auto& [offered, cells] : uses_of(job, made))
    colours.push_back(
        {{"name", offered->name}, {"colour", colour::to_hex(offered->stock.colour)}, {"cells", cells}});
  Json answer{{"mean", rounded(made.mean, 4)},
              {"percentile_95", rounded(made.percentile_95, 4)},
              {"bound", rounded(made.choice.bound, 4)},
              {"optimal", made.choice.optimal},
              {"colours", std::move(colours)}};
  if (made.mixed)
    answer["mixed"] = {{"cells", made.mixed->changed},
                       {"viewing_before", rounded(made.mixed->viewing_before, 4)},
                       {"viewing_after", rounded(made.mixed->viewing_after, 4)}};
  if (made.smoothed)
    answer["smoothed"] = {{"cells", made.smoothed->changed},
                          {"alone_before", made.smoothed->isolated_before},
                          {"alone_after", made.smoothed->isolated_after}};
  return answer;
}

}  // namespace evencount::app
