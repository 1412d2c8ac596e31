#include <fmt/ostream.h>

#include <algorithm>
#include <thread>

#include "app/files.hpp"
#include "app/json_text.hpp"
#include "app/project_file.hpp"
#include "app/stock_file.hpp"
#include "app/verbs.hpp"
#include "app/worker_threads.hpp"
#include "base/text.hpp"
#include "chart/letters.hpp"
#include "picture/decode.hpp"
#include "picture/sample.hpp"
#include "picture/stock_choice.hpp"
#include "weave/technique.hpp"

namespace evencount::app {
namespace {

struct Job {
  project::Project project;
  project::Band band;
  std::vector<NamedColour> names;
  std::vector<picture::StockColour> stock;
  std::vector<colour::Rgb> cells;
};

/// Colours by name, or all that are this colour.
Result<Done> rule_colours(Job& job, const std::vector<std::string>& wanted, picture::StockRule rule) {
  for (const std::string& name : wanted) {
    bool found = false;
    for (std::size_t i = 0; i < job.names.size(); ++i)
      if (job.names[i].name == name || colour::to_hex(job.names[i].colour) == lower_ascii(name)) {
        job.stock[i].rule = rule;
        found = true;
      }
    if (!found)
      return Problem{ProblemCode::unknown_name, "colour", evencount::quoted(name), "the name or #rrggbb of a colour of the stock"};
  }
  return Done{};
}

Result<picture::PictureRectangle> parse_crop(const std::string& text) {
  const auto parts = split(text, ',');
  std::array<double, 4> numbers{};
  bool good = parts.size() == numbers.size();
  for (std::size_t i = 0; i < numbers.size() && good; ++i) {
    const auto number = parse_number(trim(parts[i]));
    good = number.has_value();
    if (good) numbers[i] = *number;
  }
  if (!good)
    return Problem{ProblemCode::bad_text, "crop", evencount::quoted(text), "LEFT,TOP,WIDTH,HEIGHT in pixels, such as 0,40,600,400"};
  return picture::PictureRectangle{numbers[0], numbers[1], numbers[2], numbers[3]};
}

Result<picture::Placement> placement_of(const PictureArguments& arguments, const project::Band& band) {
  picture::Placement placement;
  placement.mirrored = arguments.mirror;
  placement.turn_degrees = arguments.turn;
  placement.keep_detail = arguments.detail;
  placement.meets_itself = weave::closes_round_edge(band.closure);
  if (arguments.fit == "contain")
    placement.fit = picture::PictureFit::contain;
  else if (arguments.fit == "stretch")
    placement.fit = picture::PictureFit::stretch;
  else if (arguments.fit != "fill")
    return Problem{ProblemCode::bad_usage, "fit", evencount::quoted(arguments.fit), "fill, contain or stretch"};
  const auto ground = colour::parse_hex(arguments.ground);
  if (!ground) return Problem{ProblemCode::bad_text, "ground", evencount::quoted(arguments.ground), "a colour, #rrggbb"};
  placement.ground = colour::to_linear(*ground);
  if (!arguments.crop.empty()) {
    const auto crop = parse_crop(arguments.crop);
    if (!crop) return crop.problem();
    placement.crop = *crop;
  }
  return placement;
}

/// The band without its chart: technique, bead, closure, gauge.
Result<Done> begin_band(Job& job, const PictureArguments& arguments) {
  project::Band& band = job.band;
  band.name = arguments.name.empty() ? fmt::format("Band {}", job.project.bands.size() + 1) : arguments.name;
  band.technique = arguments.technique.empty() ? std::string(weave::flat_peyote_for(arguments.columns).id) : arguments.technique;
  const auto technique = weave::find_technique(band.technique);
  if (!technique) return technique.problem();
  if (auto size = technique->check_size(arguments.columns, arguments.edge); !size) return size;
  band.closure = arguments.open ? weave::Closure::open : technique->closures.front();
  band.bead = arguments.bead;
  if (project::find_bead(job.project, band.bead) == nullptr) {
    auto size = bead::find_size(band.bead);
    if (!size) return size.problem();
    job.project.beads.push_back(std::move(*size));
  }
  return Done{};
}

Result<Done> read_picture(Job& job, const PictureArguments& arguments) {
  const auto bytes = read_file(arguments.image);
  if (!bytes) return bytes.problem();
  const auto image = picture::decode(*bytes);
  if (!image) return image.problem().within(arguments.image);
  const auto placement = placement_of(arguments, job.band);
  if (!placement) return placement.problem();
  const weave::Lattice lattice = weave::find_technique(job.band.technique)->lattice(arguments.columns, arguments.edge);
  if (lattice.holes == weave::Holes::round_squares)
    return Problem{ProblemCode::bad_usage, "technique", job.band.technique, "a technique whose beads fill the piece"};
  const chart::Grid grid = weave::grid_of(lattice, job.band.closure);
  const auto cells = picture::sample(*image, {{0, 0}, arguments.columns, arguments.edge}, grid,
                                     project::gauge_of(job.project, job.band), *placement);
  if (!cells) return cells.problem().within(arguments.image);
  job.cells = picture::to_rgb(*cells);
  return Done{};
}

Result<Done> read_stock(Job& job, const PictureArguments& arguments) {
  const auto text = read_file(arguments.stock);
  if (!text) return text.problem();
  auto names = parse_stock(*text);
  if (!names) return names.problem().within(arguments.stock);
  job.names = std::move(*names);
  for (const NamedColour& named : job.names) job.stock.push_back({.colour = named.colour});
  if (auto ruled = rule_colours(job, arguments.require, picture::StockRule::required); !ruled) return ruled;
  return rule_colours(job, arguments.forbid, picture::StockRule::forbidden);
}

/// The legend's place of a colour of this bead, added under the first free letter when it is new.
chart::Bead legend_place(project::Project& project, const NamedColour& named, const std::string& bead) {
  for (std::size_t i = 0; i < project.legend.size(); ++i)
    if (project.legend[i].colour == named.colour && project.legend[i].bead == bead) return static_cast<chart::Bead>(i);
  const auto letters = project::letters_of(project);
  int position = 0;
  while (std::find(letters.begin(), letters.end(), chart::letter_name(position)) != letters.end()) ++position;
  project::LegendEntry entry;
  entry.letter = chart::letter_name(position);
  entry.name = named.name;
  entry.colour = named.colour;
  entry.bead = bead;
  project.legend.push_back(std::move(entry));
  return static_cast<chart::Bead>(project.legend.size() - 1);
}

Result<Done> put_chart(Job& job, const PictureArguments& arguments, const picture::StockChoice& choice) {
  auto chart = chart::Chart::make(arguments.columns, arguments.edge);
  if (!chart) return chart.problem();
  // The most used colour takes the first free letter.
  std::vector<int> uses(job.stock.size(), 0);
  for (const int bead : choice.bead_of_cell) ++uses[static_cast<std::size_t>(bead)];
  std::vector<int> order = choice.chosen;
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return uses[static_cast<std::size_t>(a)] > uses[static_cast<std::size_t>(b)]; });
  std::vector<chart::Bead> place(job.stock.size(), 0);
  for (const int bead : order)
    if (uses[static_cast<std::size_t>(bead)] > 0)
      place[static_cast<std::size_t>(bead)] = legend_place(job.project, job.names[static_cast<std::size_t>(bead)], job.band.bead);
  for (std::size_t i = 0; i < choice.bead_of_cell.size(); ++i)
    chart->set({static_cast<int>(i) % arguments.columns, static_cast<int>(i) / arguments.columns},
               place[static_cast<std::size_t>(choice.bead_of_cell[i])]);
  if (job.project.legend.size() > project::most_legend_entries)
    return Problem{ProblemCode::out_of_range, "legend", fmt::format("{} beads", job.project.legend.size()),
                   fmt::format("at most {} in one project", project::most_legend_entries)};
  job.band.chart = std::move(*chart);
  if (const auto plan = project::plan_of(job.band); !plan) return plan.problem();
  auto& bands = job.project.bands;
  const auto same = std::find_if(bands.begin(), bands.end(), [&](const auto& band) { return band.name == job.band.name; });
  if (same != bands.end())
    *same = job.band;
  else
    bands.push_back(job.band);
  return Done{};
}

Json to_json(const Job& job, const picture::StockChoice& choice) {
  Json colours = Json::array();
  for (const int bead : choice.chosen) {
    const NamedColour& named = job.names[static_cast<std::size_t>(bead)];
    colours.push_back({{"name", named.name},
                       {"colour", colour::to_hex(named.colour)},
                       {"cells", std::count(choice.bead_of_cell.begin(), choice.bead_of_cell.end(), bead)}});
  }
  return {{"mean", rounded(choice.mean, 4)},
          {"percentile_95", rounded(choice.percentile_95, 4)},
          {"bound", rounded(choice.bound, 4)},
          {"optimal", choice.optimal},
          {"colours", std::move(colours)}};
}

void print_choice(const Job& job, const picture::StockChoice& choice, std::ostream& out) {
  fmt::print(out, "colour difference (CIEDE2000) of a bead from the picture: mean {}, 95 % below {}\n",
             fixed_number(choice.mean, 2), fixed_number(choice.percentile_95, 2));
  fmt::print(out, "no choice of {} colours of this stock has a mean below {}{}\n\n", choice.chosen.size(),
             fixed_number(choice.bound, 2), choice.optimal ? ": this is the best there is" : "");
  for (const int bead : choice.chosen) {
    const NamedColour& named = job.names[static_cast<std::size_t>(bead)];
    fmt::print(out, "  {}  {:>6} cells  {}\n", colour::to_hex(named.colour),
               std::count(choice.bead_of_cell.begin(), choice.bead_of_cell.end(), bead), named.name);
  }
}

int print_table(const Job& job, const picture::ChoiceOptions& options, const Console& console, bool as_json) {
  const auto counted = picture::error_against_count(job.cells, job.stock, 2, 20, options);
  if (!counted) return console.fail(counted.problem());
  Json answer = Json::array();
  for (const picture::CountedChoice& one : *counted) {
    if (!as_json)
      fmt::print(console.out, "{:>3} colours  mean {:>6}  bound {:>6}  95 % below {:>6}\n", one.count,
                 fixed_number(one.choice.mean, 2), fixed_number(one.choice.bound, 2),
                 fixed_number(one.choice.percentile_95, 2));
    answer.push_back({{"colours", one.count}, {"mean", rounded(one.choice.mean, 4)}, {"bound", rounded(one.choice.bound, 4)}});
  }
  if (as_json) print(console.out, {{"choices", std::move(answer)}});
  return exit_done;
}

}  // namespace

int picture_verb(const PictureArguments& arguments, const Console& console) {
  Job job;
  auto project = load_or_begin_project(arguments.project);
  if (!project) return console.fail(project.problem());
  job.project = std::move(*project);
  for (const auto step : {begin_band, read_stock, read_picture})
    if (const auto done = step(job, arguments); !done) return console.fail(done.problem());
  WorkerThreads threads(static_cast<int>(std::min(2u, std::max(1u, std::thread::hardware_concurrency()))));
  picture::ChoiceOptions options;
  options.effort.prove = !arguments.quick;
  options.run_jobs = [&threads](int count, const std::function<void(int)>& work) { threads.run(count, work); };
  if (arguments.table) return print_table(job, options, console, arguments.json);
  const auto choice = picture::choose_stock(job.cells, job.stock, arguments.colours, options);
  if (!choice) return console.fail(choice.problem().within(arguments.stock));
  if (const auto put = put_chart(job, arguments, *choice); !put) return console.fail(put.problem());
  if (const auto saved = save_project(arguments.project, job.project); !saved) return console.fail(saved.problem());
  if (arguments.json)
    print(console.out, to_json(job, *choice));
  else
    print_choice(job, *choice, console.out);
  fmt::print(console.err, "{}: {}, {} columns, {} along the edge\n", arguments.project, job.band.name, arguments.columns, arguments.edge);
  return exit_done;
}

}  // namespace evencount::app
