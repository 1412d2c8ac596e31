#include "bead/bead_size.hpp"

#include <gtest/gtest.h>

#include <set>

namespace evencount::bead {
namespace {

TEST(BeadSize, EverySizeIsWhole) {
  std::set<std::string> ids;
  for (const Size& size : sizes()) {
    EXPECT_TRUE(ids.insert(size.id).second) << size.id;
    EXPECT_GT(size.diameter.mm(), 0) << size.id;
    EXPECT_GT(size.length.mm(), 0) << size.id;
    EXPECT_GT(size.hole.mm(), 0) << size.id;
    EXPECT_LT(size.hole, size.diameter) << size.id;
    EXPECT_GT(size.beads_per_gram, 0) << size.id;
    EXPECT_TRUE(size.scatter > 0 && size.scatter < 0.2) << size.id;
    EXPECT_TRUE(size.lot_shift > 0 && size.lot_shift < 0.2) << size.id;
    EXPECT_FALSE(size.source.empty()) << size.id;
    EXPECT_TRUE(size.id.starts_with(kind_name(size.kind))) << size.id;
    EXPECT_EQ(find_size(size.id).value(), size);
  }
}

TEST(BeadSize, CylindersFirstSmallToLarge) {
  const auto all = sizes();
  for (std::size_t i = 1; i < all.size(); ++i) {
    EXPECT_LE(all[i - 1].kind, all[i].kind);
    if (all[i - 1].kind != all[i].kind) continue;
    EXPECT_LT(all[i - 1].diameter, all[i].diameter) << all[i].id;
    EXPECT_LT(all[i - 1].length, all[i].length) << all[i].id;
    EXPECT_GT(all[i - 1].beads_per_gram, all[i].beads_per_gram) << all[i].id;
  }
}

// Common practice, several places: crystalsandclay.com/blogs/beading-tutorial/circular-brick-stitch;
// thebeadgallery.com/pages/seed-bead-guide (11/0 cylinder 1.6 x 1.3 mm);
// estherbeadwork.blogspot.com/2013/10/ and beading-frenzy.com/pages/info.html (round beads).
TEST(BeadSize, FiguresOfTheTrade) {
  const auto within = [](Length length, double low_mm, double high_mm) {
    return length >= millimetres(low_mm) && length <= millimetres(high_mm);
  };
  const Size cylinder = find_size("cylinder-11").value(), round = find_size("round-11").value(),
             eight = find_size("round-8").value();
  EXPECT_EQ(cylinder.diameter, millimetres(1.6));
  EXPECT_EQ(cylinder.length, millimetres(1.3));
  EXPECT_TRUE(within(round.diameter, 1.8, 2.2));
  EXPECT_TRUE(round.beads_per_gram >= 105 && round.beads_per_gram <= 120);
  EXPECT_TRUE(within(eight.diameter, 2.5, 3.1));
  EXPECT_TRUE(eight.beads_per_gram >= 35 && eight.beads_per_gram <= 44);
}

TEST(BeadSize, TradeNames) {
  EXPECT_EQ(trade_name(find_size("cylinder-11").value()), "11/0 cylinder bead");
  EXPECT_EQ(trade_name(find_size("round-8").value()), "8/0 round bead");
  Size own = find_size("round-8").value();
  own.id = "my beads";
  EXPECT_EQ(trade_name(own), "my beads");
  own.id = "round-big";
  EXPECT_EQ(trade_name(own), "round-big");
}

TEST(BeadSize, UnknownNamesListTheKnown) {
  const auto size = find_size("cylinder-12");
  ASSERT_FALSE(size);
  EXPECT_EQ(size.problem().code, ProblemCode::unknown_name);
  EXPECT_NE(size.problem().expected.find("cylinder-11"), std::string::npos);
  for (const Kind kind : {Kind::cylinder, Kind::round}) EXPECT_EQ(parse_kind(kind_name(kind)).value(), kind);
  EXPECT_EQ(parse_kind("cube").problem().code, ProblemCode::unknown_name);
}

}  // namespace
}  // namespace evencount::bead
