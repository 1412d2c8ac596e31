#include "colour/difference.hpp"

#include <cassert>
#include <cmath>

#include "colour/difference_rows.hpp"

namespace evencount::colour {
namespace {

template <White white>
LabPoint point(Lab<white> colour) {
  return {colour.lightness, colour.a, colour.b, std::sqrt(colour.a * colour.a + colour.b * colour.b)};
}

template <White white>
void fill(Lab<white> from, const LabColumns<white>& to, std::size_t begin, std::span<float> differences) {
  assert(begin + differences.size() <= to.size());
  const RowFill* row = row_fills().data();
  while (!row->runs_here()) ++row;
  const double *lightness = to.lightness.data() + begin, *a = to.a.data() + begin, *b = to.b.data() + begin;
  row->fill(point(from), {lightness, a, b, to.chroma.data() + begin}, differences.data(), differences.size());
}

}  // namespace

double ciede2000(LabD65 a, LabD65 b) {
  return ciede2000_of(point(a), point(b));
}

double ciede2000(LabD50 a, LabD50 b) {
  return ciede2000_of(point(a), point(b));
}

double oklab_distance(Oklab a, Oklab b) {
  const double lightness = a.lightness - b.lightness, red = a.a - b.a, yellow = a.b - b.b;
  return std::sqrt(lightness * lightness + red * red + yellow * yellow);
}

template <White white>
LabColumns<white>::LabColumns(std::span<const Lab<white>> colours) {
  lightness.reserve(colours.size()), a.reserve(colours.size()), b.reserve(colours.size());
  chroma.reserve(colours.size());
  for (const Lab<white>& colour : colours) {
    lightness.push_back(colour.lightness);
    a.push_back(colour.a);
    b.push_back(colour.b);
    chroma.push_back(point(colour).chroma);
  }
}
template struct LabColumns<White::d65>;
template struct LabColumns<White::d50>;

void ciede2000(LabD65 from, const LabColumns<White::d65>& to, std::span<float> differences) {
  assert(differences.size() == to.size());
  fill(from, to, 0, differences);
}

void ciede2000(LabD65 from, const LabColumns<White::d65>& to, std::size_t begin, std::span<float> differences) {
  fill(from, to, begin, differences);
}

void ciede2000(LabD50 from, const LabColumns<White::d50>& to, std::span<float> differences) {
  assert(differences.size() == to.size());
  fill(from, to, 0, differences);
}

void ciede2000(LabD50 from, const LabColumns<White::d50>& to, std::size_t begin, std::span<float> differences) {
  fill(from, to, begin, differences);
}

}  // namespace evencount::colour
