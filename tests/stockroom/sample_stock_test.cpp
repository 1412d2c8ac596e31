/// The sample stock under examples/stock: it reads, and its colours lie apart and all over.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <map>
#include <set>

#include "colour/difference.hpp"
#include "stockroom/random_stock.hpp"
#include "stockroom/search.hpp"
#include "stockroom/stock_table.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::stockroom {
namespace {

using namespace evencount::materials;

std::string sample(StockKind kind) {
  std::ifstream file(
      std::string(EVENCOUNT_SOURCE_DIR) + "/examples/stock/" + std::string(kind_name(kind)) + ".csv",
      std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

std::vector<BeadStock> cylinders(const std::vector<materials::StockedItem>& items) {
  std::vector<BeadStock> all;
  for (const materials::StockedItem& held : items)
    if (const auto* beads = std::get_if<BeadStock>(&held.item.what);
        beads != nullptr && beads->size == "cylinder-11")
      all.push_back(*beads);
  return all;
}

TEST(SampleStock, OfEveryKindReadsAndIsWrittenAsItIs) {
  const evencount::testing::TemporaryFolder folder;
  Stockroom stock = *Stockroom::open(folder / "stock.sqlite");
  for (const StockKind kind : stock_kinds) {
    const std::string text = sample(kind);
    const auto report = stock.import_table(*read_csv(text), {}, evencount::testing::noon);
    ASSERT_TRUE(report) << message(report.problem());
    EXPECT_EQ(report->fault_count, 0u) << message(report->faults.front());
    EXPECT_GE(report->count(ImportEffect::added), 8u) << kind_name(kind);
    EXPECT_EQ(write_table(*stock.items(kind), kind), text) << kind_name(kind);
  }
}

class SampleColours : public ::testing::Test {
 protected:
  SampleColours() {
    const auto report = plan_import(*read_csv(sample(StockKind::beads)), {}, {});
    for (const ImportedItem& imported : report->items) items.push_back({imported.item, {}});
    for (const BeadStock& beads : cylinders(items)) labs.push_back(colour::to_lab_d65(*beads.colour));
  }
  std::vector<materials::StockedItem> items;
  std::vector<colour::LabD65> labs;
};

TEST_F(SampleColours, ThereAreManyInEveryFinish) {
  std::map<bead::Finish, int> finishes;
  for (const BeadStock& beads : cylinders(items)) ++finishes[beads.finish];
  EXPECT_GE(labs.size(), 120u);
  for (const bead::Finish finish : bead::finishes)
    EXPECT_GE(finishes[finish], 8) << bead::finish_name(finish);
  std::set<std::string> sizes;
  for (const materials::StockedItem& held : items) sizes.insert(std::get<BeadStock>(held.item.what).size);
  EXPECT_EQ(sizes.size(), 8u);
}

TEST_F(SampleColours, NoTwoOfAFinishAreTakenForEachOther) {
  const auto beads = cylinders(items);
  for (std::size_t i = 0; i < beads.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (beads[i].finish == beads[j].finish) {
        EXPECT_GT(colour::ciede2000(labs[i], labs[j]), 3)
            << colour::to_hex(*beads[i].colour) << " " << colour::to_hex(*beads[j].colour);
      }
}

TEST_F(SampleColours, TheyCoverLightnessAndHue) {
  std::array<int, 10> lightness{};
  std::array<int, 12> hue{};
  constexpr double plainly_coloured = 15, circle = 360;
  for (const colour::LabD65& lab : labs) {
    ++lightness[static_cast<std::size_t>(std::min(9.0, lab.lightness / 10))];
    if (std::hypot(lab.a, lab.b) < plainly_coloured) continue;
    const double degrees = std::atan2(lab.b, lab.a) * 180 / M_PI;
    ++hue[static_cast<std::size_t>(std::min(11.0, std::fmod(degrees + circle, circle) / 30))];
  }
  for (std::size_t i = 1; i < lightness.size(); ++i) EXPECT_GE(lightness[i], 4) << "lightness " << 10 * i;
  for (std::size_t i = 0; i < hue.size(); ++i) EXPECT_GE(hue[i], 4) << "hue " << 30 * i;
}

/// Colours as photographs have them (half as strong as a screen's) find a bead that is not far off.
TEST_F(SampleColours, ServePictures) {
  std::mt19937 random(6);
  std::vector<double> differences;
  for (int i = 0; i < 4000; ++i) {
    const auto channel = [&] { return static_cast<std::uint8_t>(random() % 256); };
    const colour::Rgb strong{channel(), channel(), channel()};
    const auto grey = static_cast<std::uint8_t>((strong.red + strong.green + strong.blue) / 3);
    const colour::LabD65 wanted = colour::to_lab_d65(colour::mix(strong, {grey, grey, grey}, 0.5));
    double nearest = 100;
    for (const colour::LabD65& lab : labs) nearest = std::min(nearest, colour::ciede2000(wanted, lab));
    differences.push_back(nearest);
  }
  std::sort(differences.begin(), differences.end());
  EXPECT_LT(differences[differences.size() / 2], 6);
  EXPECT_LT(differences[differences.size() * 95 / 100], 11);
}

}  // namespace
}  // namespace evencount::stockroom
