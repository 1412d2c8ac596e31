#include "render/strung_parts.hpp"

#include <gtest/gtest.h>

#include <array>

#include "examples.hpp"
#include "project/strung_sizes.hpp"

namespace evencount::render {
namespace {

using testing_support::example;

struct Case {
  project::Project project;
  project::StrungSizes sizes;
};

Case sized(const std::string& name) {
  Case one{example(name), {}};
  const auto strung = project::strung_of(one.project).value();
  const std::array wearers{project::wearer_of(*one.project.strand, "").value()};
  one.sizes = project::strung_sizes(one.project, strung, wearers).value();
  return one;
}

/// The solids nearest to where a thing's middle is placed.
double nearest_solid(const Scene& scene, Vec3 place) {
  double nearest = 1e30;
  for (const Placed& solid : scene.solids) nearest = std::min(nearest, norm(solid.placement.origin - place));
  return nearest;
}

const Placement somewhere{{0, 1, 0}, {0, 0, 1}, {1, 0, 0}, {5, -3, 2}};

// (1)
TEST(StrungParts, EveryBeadIsOneSolidInItsPlace) {
  for (const char* name : {"moonwatch", "moonwatch-necklace"}) {
    const Case one = sized(name);
    const auto& [fit, curve, cords, findings] = one.sizes.sizes.front();
    const SceneChoice choice;
    Workbench bench(one.project, choice);
    strand::PlacedStrand placed = strand::placed_on_table(one.sizes.strung, fit, curve);
    std::erase_if(placed.things, [&](const strand::PlacedThing& thing) {
      return one.sizes.strung.elements[static_cast<std::size_t>(thing.element)].kind !=
             strand::ElementKind::bead;
    });
    ASSERT_TRUE(add_strung(bench, one.project, one.sizes.strung, placed, somewhere));
    EXPECT_EQ(bench.scene.solids.size(), placed.things.size());
    for (const strand::PlacedThing& thing : placed.things) {
      const Vec3 middle = somewhere.point({thing.middle.x, thing.middle.y, thing.middle.z});
      EXPECT_LT(nearest_solid(bench.scene, middle), 0.15 * thing.length.mm());
    }
    EXPECT_EQ(bench.scene.strands.size(), placed.cords.size());
  }
}

TEST(StrungParts, TheOuterCordsExtraBeadsAreShown) {
  const Case one = sized("moonwatch-necklace");
  const auto& [fit, curve, cords, findings] = one.sizes.sizes.front();
  int extras = 0;
  for (const strand::OuterExtra& extra : curve.extras) extras += extra.count;
  ASSERT_GT(extras, 0);
  std::int64_t beads = 0;
  const auto used = project::uses_of(one.sizes.strung, one.sizes.sizes.front());
  for (std::size_t i = 0; i < used.size(); ++i)
    if (one.sizes.strung.elements[i].kind == strand::ElementKind::bead) beads += used[i];
  const strand::PlacedStrand placed = strand::placed_on_table(one.sizes.strung, fit, curve);
  EXPECT_EQ(beads, std::count_if(placed.things.begin(), placed.things.end(), [&](const auto& thing) {
              return one.sizes.strung.elements[static_cast<std::size_t>(thing.element)].kind ==
                     strand::ElementKind::bead;
            }));
}

// (2)
TEST(StrungParts, FindingsKeepWithinTheirSizes) {
  for (const strand::ElementKind kind :
       {strand::ElementKind::spacer, strand::ElementKind::cap, strand::ElementKind::joiner,
        strand::ElementKind::clasp, strand::ElementKind::extender, strand::ElementKind::crimp,
        strand::ElementKind::cover, strand::ElementKind::knot, strand::ElementKind::ring})
    for (const int holes : {1, 2})
      for (const strand::ClaspHalf half :
           {strand::ClaspHalf::both, strand::ClaspHalf::after, strand::ClaspHalf::before}) {
        if (half != strand::ClaspHalf::both && kind != strand::ElementKind::clasp) continue;
        const project::Project project = example("moonwatch");
        const SceneChoice choice;
        Workbench bench(project, choice);
        strand::Strung strung;
        strung.closing = kind == strand::ElementKind::clasp ? 0 : -1;
        strand::Element element = strand::usual_part(kind, "part", millimetres(14));
        if (holes == 2) element.holes = 2, element.apart = millimetres(9.6), element.across = millimetres(16);
        strung.elements = {element};
        const double length = half == strand::ClaspHalf::both ? 14 : 7;
        const strand::PlacedStrand placed{
            {{0, 0, {}, {0, 0, 1}, {0, 1, 0}, millimetres(length), half}}, {}, {}};
        ASSERT_TRUE(add_strung(bench, project, strung, placed, Placement{}));
        ASSERT_FALSE(bench.scene.solids.empty());
        double along = 0, across = 0;
        for (const Placed& solid : bench.scene.solids)
          for (const Vec3 p : bench.scene.meshes[solid.mesh].points) {
            const Vec3 at = solid.placement.point(p);
            along = std::max(along, std::abs(at.z)), across = std::max(across, std::hypot(at.x, at.y));
          }
        // The half of an opened clasp holds a whole tube: it reaches over the middle by the tube's radius.
        const double over = half != strand::ClaspHalf::both     ? 0.45 * 7
                            : kind == strand::ElementKind::ring ? 0.8  // its wire
                                                                : 0;
        EXPECT_LE(along, length / 2 + over + 1e-6) << kind_name(kind) << " " << holes;
        EXPECT_GT(along, 0.3 * length) << kind_name(kind) << " " << holes;
        const double wide = std::max(element.across.mm(), element.thickness.mm());
        EXPECT_LE(across, 0.75 * wide + 0.6) << kind_name(kind) << " " << holes;
      }
}

}  // namespace
}  // namespace evencount::render
