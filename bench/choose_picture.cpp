// One picture in one process, for comparing with whole programs (picture_peers.py):
//   choose_picture choose PICTURE.ppm STOCK.txt COUNT [quick]   our choice: mean, percentile_95 and bound of CIEDE2000
//   choose_picture snap   PICTURE.ppm STOCK.txt PALETTE.ppm     the colours of another picture, each changed for the nearest of the
//                                                               stock, and every cell given the nearest of those

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string_view>

#include "app/worker_threads.hpp"
#include "colour/difference.hpp"
#include "picture/pictures.hpp"

namespace evencount::picture {
namespace {

using Columns = colour::LabColumns<colour::White::d65>;

Columns columns_of(const std::vector<colour::Rgb>& colours) {
  std::vector<colour::LabD65> labs;
  for (const colour::Rgb one : colours) labs.push_back(colour::to_lab_d65(one));
  return Columns(labs);
}

int choose(const std::vector<colour::Rgb>& cells, const std::vector<StockColour>& stock, int count,
           bool quick) {
  app::WorkerThreads workers(2);
  ChoiceOptions options;
  options.effort.prove = !quick;
  options.run_jobs = [&](int jobs, const std::function<void(int)>& job) { workers.run(jobs, job); };
  const Result<StockChoice> choice = choose_stock(cells, stock, count, options);
  if (!choice) return fmt::print(stderr, "{}\n", message(choice.problem())), 1;
  fmt::print("{:.4f} {:.4f} {:.4f}\n", choice->mean, choice->percentile_95, choice->bound);
  return 0;
}

int snap(const std::vector<colour::Rgb>& cells, const std::vector<StockColour>& stock,
         const std::vector<colour::Rgb>& other) {
  std::vector<colour::Rgb> beads;
  for (const StockColour& one : stock) beads.push_back(one.colour);
  const Columns columns = columns_of(beads);
  std::vector<float> row(beads.size());
  std::set<std::size_t> chosen;
  for (const colour::Rgb one : other) {
    colour::ciede2000(colour::to_lab_d65(one), columns, row);
    chosen.insert(static_cast<std::size_t>(std::min_element(row.begin(), row.end()) - row.begin()));
  }
  double sum = 0;
  for (const colour::Rgb cell : cells) {
    double nearest = 1e9;
    for (const std::size_t bead : chosen)
      nearest = std::min(nearest, colour::ciede2000(colour::to_lab_d65(cell), columns[bead]));
    sum += nearest;
  }
  fmt::print("{:.4f} {}\n", sum / static_cast<double>(cells.size()), chosen.size());
  return 0;
}

}  // namespace
}  // namespace evencount::picture

int main(int count, char** arguments) {
  using namespace evencount::picture;
  if (count < 5) return 2;
  const std::string_view what = arguments[1];
  const auto cells = load_ppm(arguments[2]);
  const auto stock = load_stock(arguments[3]);
  if (cells.empty() || stock.empty()) return 2;
  if (what == "choose") return choose(cells, stock, std::stoi(arguments[4]), count > 5);
  return snap(cells, stock, load_ppm(arguments[4]));
}
