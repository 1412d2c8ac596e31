// Replay must notice the faults that change what the needle does. Every technique's own tests do the same with its plans.

#include <gtest/gtest.h>

#include "faults.hpp"
#include "random_shapes.hpp"
#include "shapes.hpp"

namespace evencount::weave {
namespace {

using namespace testing_support;

TEST(Mutation, ReplayNoticesFaults) {
  Random random(77);
  const FaultCount count = count_faults(random, 40000, [](Random& r) {
    const Band band = random_band(r, 8, 8);
    return Piece{plan_of(band), band.chart};
  });
  for (const int made : count.made) EXPECT_GT(made, 300);
  print_faults("flat peyote", count);
  RecordProperty("caught", FaultCount::sum(count.noticed));
  EXPECT_GE(count.rate(), 0.99);
}

template <typename MakePiece>
void expect_noticed(const char* name, unsigned seed, MakePiece make_piece) {
  Random random(seed);
  const FaultCount count = count_faults(random, 16000, make_piece);
  print_faults(name, count);
  EXPECT_GT(FaultCount::sum(count.made), 8000);
  EXPECT_GE(count.rate(), 0.99) << name;
}

Piece whole_piece(std::string_view technique, const chart::Chart& chart, const Making& making) {
  return {make_plan(technique, chart, making).value(), chart};
}

TEST(Mutation, ReplayNoticesFaultsInTheOtherPeyotes) {
  const auto filled = [](Random& random, int columns, int edge) {
    return filled_chart(random, {.columns = columns, .edge = edge});
  };
  expect_noticed("two-drop", 78, [&](Random& r) {
    const int pairs = pick(r, 2, 6);
    const bool odd = pairs % 2 == 1;
    const Closure closure = pick(r, 0, 1) == 0 ? Closure::open : Closure::zip;
    return whole_piece(odd ? "two-drop-odd-count" : "two-drop-even-count", filled(r, 2 * pairs, pick(r, 3, 8)), {closure});
  });
  expect_noticed("figure-8 turns", 79, [&](Random& r) {
    return whole_piece("peyote-odd-count-figure-8", filled(r, 2 * pick(r, 1, 4) + 1, pick(r, 2, 8)), {});
  });
  expect_noticed("shaped peyote", 80, [](Random& r) { return whole_piece("peyote-shaped", random_shape(r, 14), {}); });
  expect_noticed("tubes", 81, [](Random& r) {
    const bool odd = pick(r, 0, 1) == 0;
    return whole_piece(odd ? "tubular-odd-count" : "tubular-even-count", random_tube(r, odd), {Closure::round});
  });
  expect_noticed("bezels", 82, [](Random& r) {
    for (;;) {
      const RandomBezel bezel = random_bezel(r);
      if (auto plan = make_plan("peyote-bezel", bezel.chart, bezel.making)) return Piece{std::move(*plan), bezel.chart};
    }
  });
}

}  // namespace
}  // namespace evencount::weave
