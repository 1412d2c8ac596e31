#include "render/strung_layout.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "project/json.hpp"
#include "project/strung_sizes.hpp"

namespace evencount::render {
namespace {

struct Case {
  strand::Strung strung;
  strand::StrandFit fit;
};

Case demo(const char* name) {
  std::ifstream file(std::string(EVENCOUNT_SOURCE_DIR) + "/examples/" + name + ".evencount.json");
  std::stringstream text;
  text << file.rdbuf();
  const project::Project project = project::parse_project(text.str()).value();
  const auto strung = project::strung_of(project).value();
  const auto wearer = project::wearer_of(*project.strand, "").value();
  return {strung, strand::fit_strand(strung, {wearer, std::nullopt, false}).value()};
}

std::vector<StrungLayout> layouts(const Case& one) {
  std::vector<StrungLayout> all{in_a_row(one.strung, one.fit), in_a_ring(one.strung, one.fit)};
  if (auto worn = round_wearer(one.strung, one.fit)) all.push_back(std::move(*worn));
  return all;
}

// (1)
TEST(StrungLayout, PlacementsOnlyTurn) {
  for (const char* name : {"moonwatch", "moonwatch-necklace"})
    for (const StrungLayout& layout : layouts(demo(name)))
      for (const StrungPiece& piece : layout.pieces) {
        const Placement& p = piece.placement;
        EXPECT_NEAR(norm(p.x), 1, 1e-9);
        EXPECT_NEAR(norm(p.y), 1, 1e-9);
        EXPECT_NEAR(norm(cross(p.x, p.y) - p.z), 0, 1e-9);
      }
}

// (2)
TEST(StrungLayout, NeighboursTouch) {
  const Case one = demo("moonwatch");
  const StrungLayout row = in_a_row(one.strung, one.fit);
  double length = 0;
  for (std::size_t i = 0; i < row.pieces.size(); ++i) {
    length += row.pieces[i].width_mm;
    if (i > 0) {
      EXPECT_NEAR(row.pieces[i].placement.origin.x - row.pieces[i - 1].placement.origin.x,
                  (row.pieces[i].width_mm + row.pieces[i - 1].width_mm) / 2, 1e-9);
    }
  }
  EXPECT_NEAR(length, one.fit.best.length.mm(), 1e-6);
}

TEST(StrungLayout, TheMiddleFacesTheViewer) {
  const Case one = demo("moonwatch");
  const StrungLayout round = round_wearer(one.strung, one.fit).value();
  const StrungPiece& middle = round.pieces[round.pieces.size() / 2];
  EXPECT_LT(middle.placement.origin.y, 0);
  for (const StrungPiece& piece : round.pieces)
    EXPECT_GT(dot(piece.placement.y, piece.placement.origin), 0);  // faces outwards
  // The body keeps within the loop.
  EXPECT_LT(round.body_half_x_mm, std::abs(round.pieces.front().placement.origin.x) + 100);
  EXPECT_GT(round.body_half_x_mm, round.body_half_y_mm);
}

// (3)
TEST(StrungLayout, CordsRunThroughTheHoles) {
  for (const char* name : {"moonwatch", "moonwatch-necklace"}) {
    const Case one = demo(name);
    for (const StrungLayout& layout : layouts(one)) {
      const auto ways = cord_ways(one.strung, layout);
      ASSERT_EQ(ways.size(), static_cast<std::size_t>(one.strung.cords));
      for (std::size_t side = 0; side < ways.size(); ++side)
        for (const StrungPiece& piece : layout.pieces) {
          if (piece.closing) continue;
          const Vec3 hole = piece.placement.point({(side == 0 ? 0.5 : -0.5) * piece.apart_mm, 0, 0});
          double nearest = 1e9;
          for (const Vec3 p : ways[side])
            if (std::abs(dot(p - hole, piece.placement.z)) <= piece.width_mm / 2)
              nearest = std::min(nearest, norm(across(p - hole, piece.placement.z)));
          EXPECT_LE(nearest, 0.2);
        }
    }
  }
}

}  // namespace
}  // namespace evencount::render
