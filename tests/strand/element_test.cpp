#include "strand/element.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "layouts.hpp"
#include "random_runs.hpp"

namespace evencount::strand {
namespace {

std::vector<Element> findings() {
  return {usual_part(ElementKind::cap, "cap", millimetres(4)),
          usual_part(ElementKind::bead, "bead", millimetres(8)),
          usual_part(ElementKind::bead, "small", millimetres(3)),
          usual_part(ElementKind::crimp, "crimp", millimetres(2)),
          usual_part(ElementKind::cover, "cover", millimetres(3)),
          usual_part(ElementKind::knot, "knot", millimetres(1.5))};
}

TEST(Element, RowsAreAsLongFromTheOtherEnd) {
  Random random(1);
  const auto all = findings();
  int shorter = 0;
  for (int i = 0; i < 3000; ++i) {
    std::vector<const Element*> row;
    std::int64_t sum = 0;
    for (int n = 1 + pick(random, 7); n > 0; --n) {
      row.push_back(&all[static_cast<std::size_t>(pick(random, static_cast<int>(all.size())))]);
      sum += micrometres(row.back()->width);
    }
    const std::int64_t length = length_um(row);
    EXPECT_LE(length, sum);
    EXPECT_GT(length, 0);
    shorter += length < sum;
    std::reverse(row.begin(), row.end());
    EXPECT_EQ(length_um(row), length);
  }
  EXPECT_GT(shorter, 500);
}

TEST(Element, CapsNestAndCoversCover) {
  const auto all = findings();
  const Element &cap = all[0], &bead = all[1], &small = all[2], &crimp = all[3], &cover = all[4];
  const auto length = [](std::vector<const Element*> row) { return length_um(row); };
  EXPECT_EQ(length({&cap, &bead, &cap}), 4000 - 2000 + 8000 - 2000 + 4000);
  EXPECT_EQ(length({&cap, &small, &cap}), 4000 - 1500 + 3000 - 1500 + 4000);  // two caps meet in its middle
  EXPECT_EQ(length({&small, &cap, &bead}), 3000 + 4000 - 2000 + 8000);        // one neighbour each
  EXPECT_EQ(length({&crimp, &cover}), 3000);
  EXPECT_EQ(length({&cover, &crimp, &cover}), 6000);
  EXPECT_EQ(length({&bead, &small}), 11000);
}

TEST(Element, FormsInBands) {
  const auto all = catalogue();
  const Element &moon = all[0], &carrier = all[3], &pair = all[4];
  EXPECT_EQ(moon.width, millimetres(9));
  EXPECT_EQ(moon.holes, 2);
  EXPECT_NEAR(moon.thickness.mm(), 5 + 2 * 1.6, 1e-9);
  EXPECT_NEAR(moon.across.mm(), 16 + 2 * 1.6, 1e-9);
  EXPECT_EQ(carrier.thickness, millimetres(5));
  EXPECT_EQ(pair.width, millimetres(18));
  const auto wide = form_element(
      "wide", "wide", {*form::parse_form("lens:16x5x9"), 1, cylinder_band(8, 24), form::Use::fixed});
  EXPECT_EQ(wide->width, 8 * cylinder_band(8, 24).gauge.column);  // the band stands out
  EXPECT_EQ(form_element("ring", "", {*form::parse_form("ring:54")}).problem().code,
            ProblemCode::out_of_range);
  EXPECT_EQ(form_element("none", "", {*form::parse_form("lens:16x5x9"), 0}).problem().code,
            ProblemCode::out_of_range);
}

TEST(Element, ChecksSizes) {
  const auto fails = [](auto change) {
    Element element = usual_part(ElementKind::bead, "bead", millimetres(6));
    change(element);
    const auto checked = check(element);
    return !checked && checked.problem().code == ProblemCode::out_of_range;
  };
  EXPECT_FALSE(fails([](Element&) {}));
  EXPECT_TRUE(fails([](Element& e) { e.width = Length{}; }));
  EXPECT_TRUE(fails([](Element& e) { e.across = millimetres(-1); }));
  EXPECT_TRUE(fails([](Element& e) { e.hole = millimetres(6); }));
  EXPECT_TRUE(fails([](Element& e) { e.holes = 3; }));
  EXPECT_TRUE(fails([](Element& e) { e.holes = 2; }));
  EXPECT_TRUE(fails([](Element& e) { e.holes = 2, e.apart = millimetres(5); }));
  EXPECT_FALSE(fails([](Element& e) { e.holes = 2, e.apart = millimetres(3); }));
  EXPECT_TRUE(fails([](Element& e) { e.apart = millimetres(3); }));
  EXPECT_TRUE(fails([](Element& e) { e.nests = millimetres(6); }));
  for (int kind = 1; kind <= static_cast<int>(ElementKind::ring); ++kind)
    EXPECT_TRUE(check(usual_part(static_cast<ElementKind>(kind), "part", millimetres(3)))) << kind;
  EXPECT_EQ(find_kind(kind_name(ElementKind::joiner)), ElementKind::joiner);
  EXPECT_FALSE(find_kind("thing"));
}

}  // namespace
}  // namespace evencount::strand
