#include "render/render.hpp"

#include <gtest/gtest.h>

#include "colour/difference.hpp"
#include "scenes.hpp"

namespace evencount::render {
namespace {

using namespace testing_support;

Scene table_scene() {
  std::vector<Surface> surfaces;
  for (const bead::Finish finish : bead::finishes)
    surfaces.push_back(surface_of(finish, {0x55, 0x90, 0xb0}, bead::find_size("round-11").value()));
  Scene scene = heap(surfaces, 50, 6);
  scene.ground = {GroundKind::linen, -1, grey(0.7)};
  scene.lights = lights_of(LightPreset::window, 6);
  scene.camera.lens_mm = 1;
  return scene;
}

Options small(int threads) {
  return {.width = 83, .height = 61, .samples = 8, .threads = threads};
}

// (1)
TEST(Render, TheSameBytesForAnyNumberOfThreads) {
  const Scene scene = table_scene();
  const auto one = render(scene, small(1)).value();
  EXPECT_EQ(one, render(scene, small(1)).value());
  EXPECT_EQ(one, render(scene, small(2)).value());
  EXPECT_EQ(one, render(scene, small(5)).value());
  Options other = small(2);
  other.seed = 2;
  EXPECT_NE(one.picture, render(scene, other).value().picture);
}

// (2)
TEST(Render, ProgressRisesAndPicturesAreWhole) {
  const Scene scene = table_scene();
  double last = 0;
  int pictures = 0;
  const auto done = render(scene, small(1), [&](const Progress& progress) {
    EXPECT_GE(progress.share, last);
    EXPECT_LE(progress.share, 1);
    last = progress.share;
    if (progress.picture) {
      ++pictures;
      EXPECT_EQ(progress.picture->rgb.size(), 83u * 61u * 3u);
      if (pictures == 1) {
        EXPECT_LT(progress.share, 0.05);
      }
    }
    return true;
  });
  EXPECT_EQ(last, 1);
  EXPECT_EQ(pictures, 3);  // preview, the first half, the finished one
  EXPECT_TRUE(done);
}

// (3)
TEST(Render, StopsWheneverItIsTold) {
  const Scene scene = table_scene();
  int calls = 0;
  ASSERT_TRUE(render(scene, small(1), [&](const Progress&) { return ++calls, true; }));
  ASSERT_GT(calls, 100);  // tiles of preview and passes, rows developed and filtered
  for (int stop = 1; stop <= calls; stop += stop < 10 ? 1 : 17) {
    int asked = 0;
    const auto done = render(scene, small(1), [&](const Progress&) { return ++asked < stop; });
    ASSERT_FALSE(done) << stop;
    EXPECT_EQ(done.problem().code, ProblemCode::cancelled);
    EXPECT_EQ(asked, stop);  // nothing is begun after that, or it would be told of
  }
  int asked = 0;
  EXPECT_FALSE(render(scene, small(2), [&](const Progress&) { return ++asked < 5; }));
  EXPECT_EQ(asked, 5);
}

/// Beads of black and white stripes standing at three depths before a camera that looks along y.
Scene rows_in_depth(double lens_mm) {
  Scene scene;
  scene.meshes.push_back(bead_mesh(shape_of(bead::find_size("cylinder-11").value()), 24));
  scene.surfaces = {plain(grey(0.9)), plain(grey(0.02))};
  for (int row = 0; row < 3; ++row)
    for (int i = -8; i <= 8; ++i)
      scene.solids.push_back({0,
                              static_cast<std::uint32_t>(i & 1),
                              {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, {1.6 * i, 12.0 * (row - 1), 3.0 * (row - 1)}},
                              0});
  scene.camera = {.at = {0, -100, 0},
                  .target = {},
                  .up = {0, 0, 1},
                  .half_view = 0.08,
                  .lens_mm = lens_mm,
                  .focus_mm = 100};
  return scene;
}

/// How much neighbours differ along a line of the picture.
double contrast(const Picture& picture, int y) {
  double sum = 0;
  for (int x = 1; x < picture.width; ++x) {
    const auto at = [&](int column) {
      return picture.rgb[3 * static_cast<std::size_t>(y * picture.width + column)];
    };
    sum += std::abs(at(x) - at(x - 1));
  }
  return sum / picture.width;
}

// (4)
TEST(Render, WhatIsOutOfFocusIsBlurred) {
  const Options options{.width = 160, .height = 120, .samples = 64, .threads = 2, .filter = false};
  const Picture sharp = render(rows_in_depth(0), options).value().picture,
                open = render(rows_in_depth(30), options).value().picture;
  const auto line = [&](int row) {  // where a row of beads is seen
    const Scene scene = rows_in_depth(0);
    return static_cast<int>(120 *
                            pixel_of(scene.camera, 160.0 / 120, {0, 12.0 * (row - 1), 3.0 * (row - 1)}).y);
  };
  EXPECT_GT(contrast(open, line(1)), 0.9 * contrast(sharp, line(1)));
  EXPECT_LT(contrast(open, line(0)), 0.6 * contrast(sharp, line(0)));
  EXPECT_LT(contrast(open, line(2)), 0.6 * contrast(sharp, line(2)));
}

TEST(Render, RefusesSizesThatNoPictureHas) {
  const Scene scene = table_scene();
  for (const Options& bad :
       {Options{.width = 0}, Options{.height = -3}, Options{.width = 100'000, .height = 100'000},
        Options{.samples = 0}, Options{.samples = 5000}, Options{.threads = -1}, Options{.threads = 1000}})
    EXPECT_EQ(render(scene, bad).problem().code, ProblemCode::out_of_range);
  // At the limit the work begins, and is called off at once.
  const Options large{.width = 2500, .height = 1000, .samples = 4000};
  EXPECT_EQ(render(scene, large, [](const Progress&) { return false; }).problem().code, ProblemCode::cancelled);
  Options larger = large;
  larger.samples = 4001;
  const auto refused = render(scene, larger);
  EXPECT_EQ(refused.problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(refused.problem().where, "samples");
}

/// A picture's mean light by its bytes.
Spectrum mean_of(const Picture& picture, int left, int top, int width, int height) {
  Spectrum sum;
  for (int y = top; y < top + height; ++y)
    for (int x = left; x < left + width; ++x) {
      const std::uint8_t* p =
          picture.rgb.data() + 3 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(picture.width) +
                                    static_cast<std::size_t>(x));
      sum += (1.0 / (width * height)) * of({p[0], p[1], p[2]});
    }
  return sum;
}

double squared_error(const Picture& a, const Picture& b) {
  double sum = 0;
  for (std::size_t i = 0; i < a.rgb.size(); ++i) sum += std::pow(a.rgb[i] - b.rgb[i], 2);
  return sum / static_cast<double>(a.rgb.size());
}

// (5)
TEST(Render, TheFilterTakesNoiseAndLeavesColours) {
  const Scene scene = table_scene();
  Options options{.width = 120, .height = 90, .samples = 16, .threads = 2, .filter = false};
  const Picture rough = render(scene, options).value().picture;
  options.filter = true;
  const Picture smooth = render(scene, options).value().picture;
  options.samples = 192, options.filter = false;
  const Picture truth = render(scene, options).value().picture;
  EXPECT_LT(squared_error(smooth, truth), 0.8 * squared_error(rough, truth));
  for (int top = 0; top < 90; top += 30)
    for (int left = 0; left < 120; left += 30) {
      const auto lab = [&](const Picture& p) {
        return colour::to_lab_d65(to_linear(mean_of(p, left, top, 30, 30)));
      };
      EXPECT_LE(colour::ciede2000(lab(smooth), lab(rough)), 0.5) << left << " " << top;
    }
}

}  // namespace
}  // namespace evencount::render
