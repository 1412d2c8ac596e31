#include "strand/resting.hpp"

#include <algorithm>
#include <limits>

namespace evencount::strand {

std::vector<double> resting_heights(const std::vector<Resting>& things, double whole_mm, bool loop) {
  std::vector<double> heights;
  for (const Resting& thing : things) heights.push_back(thing.half_thickness_mm);
  // A loop is gone round twice, so that the last ones hold up the first.
  const int rounds = loop ? 2 : 1;
  constexpr double nothing = -std::numeric_limits<double>::infinity();
  // How high the cord lies at `at` that comes from what holds it up the most, of all that was passed.
  double cord = nothing, at = 0;
  const auto pass = [&](double& height, double half_thickness, double enters, double leaves) {
    cord -= cord_falls * (enters - at);
    height = std::max(height, cord);
    cord = std::max(cord - cord_falls * (leaves - enters), half_thickness);
    at = leaves;
  };
  for (int round = 0; round < rounds; ++round)
    for (std::size_t i = 0; i < things.size(); ++i)
      pass(heights[i], things[i].half_thickness_mm, things[i].begin_mm + round * whole_mm,
           things[i].end_mm + round * whole_mm);
  cord = nothing, at = 0;
  for (int round = 0; round < rounds; ++round)  // and back, counted from the end
    for (std::size_t i = things.size(); i-- > 0;)
      pass(heights[i], things[i].half_thickness_mm, (round + 1) * whole_mm - things[i].end_mm,
           (round + 1) * whole_mm - things[i].begin_mm);
  return heights;
}

}  // namespace evencount::strand
