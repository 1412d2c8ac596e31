#pragma once
/// The numbers a choice of beads is about: cells, candidates and the differences between them. This room's own.
///
/// Equal cells are one `Spot` with a weight. Candidates lie in order of lightness, so that those worth comparing with a spot
/// are neighbours.

#include <cstdint>
#include <limits>
#include <span>
#include <vector>

#include "colour/difference.hpp"
#include "picture/stock_choice.hpp"

namespace evencount::picture {

using Columns = colour::LabColumns<colour::White::d65>;

/// A set of candidates, ascending.
using Candidates = std::vector<int>;

inline constexpr double without_limit = std::numeric_limits<double>::infinity();

/// The colours of a picture, each once.
struct Spots {
  Columns colours;
  std::vector<double> weight;  ///< how many cells
  std::vector<int> spot_of_cell;
  double cells = 0;

  [[nodiscard]] int size() const { return static_cast<int>(weight.size()); }
};

[[nodiscard]] Spots merge_equal_cells(std::span<const colour::Rgb> cells);
/// At most `most` spots, each the mean of neighbouring ones: a picture to try things out on. `spot_of_cell` is by given spot.
[[nodiscard]] Spots merge_near_spots(const Spots& spots, int most);

/// What may be chosen.
struct Stock {
  Columns colours;                 ///< in order of lightness
  std::vector<int> index;          ///< in the stock as given
  std::vector<double> most_cells;  ///< without_limit where there is none
  std::vector<bool> required;
  bool limited = false;  ///< some candidate has a limit

  [[nodiscard]] int size() const { return static_cast<int>(index.size()); }
};

/// Leaves out what is forbidden, and free colours that equal one without limit.
[[nodiscard]] Stock sort_stock(std::span<const StockColour> stock);

/// Contiguous spots, worked on as one job. Their number follows from the spots alone, never from the threads.
struct Part {
  int begin = 0, end = 0;
};
[[nodiscard]] std::vector<Part> parts_of(int spots);

/// Differences below each spot's reach, and no others: what an exchange or a bound ever asks for.
struct NearPart {
  std::vector<std::size_t> start;  ///< of each spot of the part, and the end
  std::vector<std::uint32_t> candidate;
  std::vector<float> difference;
};

struct NearList {
  std::vector<Part> parts;
  std::vector<NearPart> near;
  std::vector<double> reach;  ///< of each spot: every candidate nearer than this is listed
};

class ChoiceModel {
 public:
  ChoiceModel(Spots spots, const Stock& stock, const RunJobs& run_jobs)
      : spots_(std::move(spots)),
        stock_(stock),
        run_jobs_(run_jobs),
        columns_(stock.index.size()),
        parts_(parts_of(spots_.size())) {}

  [[nodiscard]] const Spots& spots() const { return spots_; }
  [[nodiscard]] const Stock& stock() const { return stock_; }
  [[nodiscard]] const std::vector<Part>& parts() const { return parts_; }
  void run(const std::function<void(int)>& job) const { run_jobs_(static_cast<int>(parts_.size()), job); }

  /// The difference of a candidate to every spot. Kept for the next time; not to be called from a job.
  [[nodiscard]] const std::vector<float>& column(int candidate);

  [[nodiscard]] NearList list_near(std::vector<double> reach) const;

 private:
  Spots spots_;
  const Stock& stock_;
  const RunJobs& run_jobs_;
  std::vector<std::vector<float>> columns_;
  std::vector<Part> parts_;
};

/// Keeps only the candidates for which `keep` is set.
void keep_only(NearList& list, const std::vector<bool>& keep, const ChoiceModel& model);

/// The lightness part of CIEDE2000. It never exceeds the whole, since the rest is a positive semidefinite form in chroma and
/// hue (its rotation term is at most 2 sin 60 degrees < 2), and it grows with |x - y| for fixed x.
[[nodiscard]] double lightness_difference(double x, double y);

}  // namespace evencount::picture
