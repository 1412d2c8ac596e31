#include <fmt/ostream.h>

#include "app/json_text.hpp"
#include "app/project_file.hpp"
#include "app/reports.hpp"
#include "app/verbs.hpp"
#include "base/text.hpp"
#include "project/supply_list.hpp"

namespace evencount::app {
namespace {

void print_table(const project::Project& project, const std::vector<project::BandThread>& bands,
                 std::ostream& out) {
  fmt::print(out, "{}, tails of {} cm at both ends of each length\n\n", project.thread.name,
             plain_number(project.thread_habits.tail.mm() / 10));
  fmt::print(out, "  {:<24} {:>9} {:>9}  {:>7}  {}\n", "band", "path", "cut", "passes", "lengths");
  for (const project::BandThread& band : bands) {
    std::string lengths;
    for (std::size_t i = 0; i < band.use.lengths.size(); ++i) {
      lengths += fmt::format("{}{} cm", i == 0 ? "" : " + ", fixed_number(band.use.lengths[i].mm() / 10, 0));
      if (i > 0) lengths += fmt::format(" (from row {})", band.use.new_thread_rows[i - 1]);
    }
    if (band.use.warps > 0)
      lengths += fmt::format(", and {} warps of {} cm", band.use.warps, fixed_number(band.use.warp_length.mm() / 10, 0));
    fmt::print(out, "  {:<24} {:>6} cm {:>6} cm  {:>2} of {:>1}  {}\n", band.band,
               fixed_number(band.use.path.mm() / 10, 1), fixed_number(band.use.cut.mm() / 10, 1),
               band.use.most_passes, band.use.capacity, lengths);
  }
}

}  // namespace

int thread_verb(const ThreadArguments& arguments, const Console& console) {
  const auto project = load_project(arguments.project);
  if (!project) return console.fail(project.problem());
  const auto bands = project::band_threads(*project);
  if (!bands) return console.fail(bands.problem().within(arguments.project));
  if (arguments.json) {
    Json answer = Json::array();
    for (const project::BandThread& band : *bands) answer.push_back(thread_json(band));
    print(console.out, {{"bands", answer}});
  } else {
    print_table(*project, *bands, console.out);
  }
  bool crowded = false;
  for (const project::BandThread& band : *bands) {
    if (band.use.most_passes <= band.use.capacity) continue;
    crowded = true;
    fmt::print(console.err, "evencount: band {}: a bead is passed {} times, its hole takes {}\n", band.band,
               band.use.most_passes, band.use.capacity);
  }
  return crowded ? exit_findings : exit_done;
}

}  // namespace evencount::app
