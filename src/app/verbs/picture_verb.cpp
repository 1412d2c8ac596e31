#include <fmt/ostream.h>

#include <algorithm>
#include <thread>

#include "app/picture_argument.hpp"
#include "app/project_file.hpp"
#include "app/stock_source.hpp"
#include "app/verbs.hpp"
#include "app/verbs/picture_making.hpp"
#include "app/worker_threads.hpp"
#include "base/text.hpp"

namespace evencount::app {
namespace {

void print_made(const PictureJob& job, const project::PictureBand& made, std::ostream& out) {
  fmt::print(out, "colour difference (CIEDE2000) of a bead from the picture: mean {}, 95 % below {}\n",
             fixed_number(made.mean, 2), fixed_number(made.percentile_95, 2));
  fmt::print(out, "no choice of {} colours of this stock has a mean below {}{}\n", made.choice.chosen.size(),
             fixed_number(made.choice.bound, 2),
             made.choice.optimal && !made.mixed && !made.smoothed ? ": this is the best there is" : "");
  if (made.mixed)
    fmt::print(out, "mixed: {} beads changed; seen from afar the mean is {} instead of {}\n", made.mixed->changed,
               fixed_number(made.mixed->viewing_after, 2), fixed_number(made.mixed->viewing_before, 2));
  if (made.smoothed)
    fmt::print(out, "smoothed: {} beads changed; {} stand alone instead of {}\n", made.smoothed->changed,
               made.smoothed->isolated_after, made.smoothed->isolated_before);
  fmt::print(out, "\n");
  for (const auto& [offered, cells] : uses_of(job, made))
    fmt::print(out, "  {}  {:>6} cells  {}\n", colour::to_hex(offered->stock.colour), cells, offered->name);
}

int print_table(const PictureJob& job, const Console& console, bool as_json) {
  const auto cells = project::picture_cells(job.project, job.band, job.window, job.image, job.options.placement);
  if (!cells) return console.fail(cells.problem());
  std::vector<picture::StockColour> stock;
  for (const project::OfferedBead& offered : job.offer) stock.push_back(offered.stock);
  const auto counted = picture::error_against_count(*cells, stock, 2, 20, job.options.choice);
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

PictureSources sources_of(const PictureArguments& arguments) {
  return {[&arguments] { return picture_argument(arguments.image); },
          [&arguments](const std::string& size) -> Result<std::vector<materials::StockedItem>> {
            if (!arguments.stock.given())
              return Problem{ProblemCode::bad_usage, "stock", "none", "--stock FILE or --my-stock: the beads to choose from"};
            return stock_items(arguments.stock, size);
          }};
}

}  // namespace

int picture_verb(const PictureArguments& arguments, const Console& console) {
  auto project = load_or_begin_project(arguments.project);
  if (!project) return console.fail(project.problem());
  auto made_job = picture_job(arguments, std::move(*project), sources_of(arguments));
  if (!made_job) return console.fail(made_job.problem());
  PictureJob& job = *made_job;
  WorkerThreads threads(static_cast<int>(std::min(2u, std::max(1u, std::thread::hardware_concurrency()))));
  job.options.choice.run_jobs = [&threads](int count, const std::function<void(int)>& work) { threads.run(count, work); };
  if (arguments.table) return print_table(job, console, arguments.json);
  auto made = project::picture_band(job.project, job.band, job.window, job.image, job.offer, job.options);
  if (!made) return console.fail(made.problem().within(arguments.image));
  if (const auto saved = save_project(arguments.project, project::with_band(job.project, *made)); !saved)
    return console.fail(saved.problem());
  if (arguments.json)
    print(console.out, picture_json(job, *made));
  else
    print_made(job, *made, console.out);
  fmt::print(console.err, "{}: {}, {} columns, {} along the edge\n", arguments.project, made->band.name,
             made->band.chart.columns(), made->band.chart.edge());
  return exit_done;
}

}  // namespace evencount::app
