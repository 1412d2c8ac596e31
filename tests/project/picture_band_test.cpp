#include "project/picture_band.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <set>

#include "colour/difference.hpp"
#include "weave/technique.hpp"

namespace evencount::project {
namespace {

using Random = std::mt19937;

int pick(Random& random, int below) {
  return static_cast<int>(random() % static_cast<unsigned>(below));
}

picture::Image random_image(Random& random) {
  picture::Image image;
  image.width = 20 + pick(random, 30), image.height = 20 + pick(random, 30);
  const double slope = pick(random, 100) / 100.0;
  for (int y = 0; y < image.height; ++y)
    for (int x = 0; x < image.width; ++x) {
      const float u = static_cast<float>(x) / static_cast<float>(image.width), v = static_cast<float>(y) / static_cast<float>(image.height);
      image.pixels.push_back({u, v, static_cast<float>(slope) * u * v, 1});
    }
  return image;
}

std::vector<OfferedBead> random_offer(Random& random, int count) {
  std::vector<OfferedBead> offer;
  for (int i = 0; i < count; ++i) {
    const auto channel = [&] { return static_cast<std::uint8_t>(pick(random, 256)); };
    offer.push_back({"colour " + std::to_string(i), {.colour = {channel(), channel(), channel()}},
                     bead::finishes[static_cast<std::size_t>(pick(random, static_cast<int>(bead::finishes.size())))]});
  }
  return offer;
}

Project ring_project() {
  Project project;
  project.beads.push_back(*bead::find_size("cylinder-11"));
  project.thread = bead::threads().front();
  project.legend.push_back({.letter = "A", .name = "ground", .colour = {143, 163, 173}, .bead = "cylinder-11"});
  project.legend.push_back({.letter = "C", .name = "edge", .colour = {20, 20, 20}, .bead = "cylinder-11"});
  project.forms.push_back({"carrier", "carrier", *form::parse_form("lens:17x5x9"), {}});
  Band band;
  band.name = "Ring", band.technique = "peyote-even-count", band.bead = "cylinder-11", band.form = "carrier";
  band.closure = weave::Closure::zip;
  band.chart = *chart::Chart::make(6, 24);
  project.bands.push_back(band);
  return project;
}

/// What every picture on a band must be.
void expect_sound(const Project& project, const Band& before, const picture::CellWindow& window, const picture::Image& image,
                  const std::vector<OfferedBead>& offer, const PictureOptions& options, const PictureBand& made) {
  const chart::Chart& chart = made.band.chart;
  std::set<chart::Bead> used;
  double sum = 0;
  std::size_t next = 0;
  const auto cells = *picture_cells(project, before, window, image, options.placement);
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column) {
      const chart::Bead bead = chart.at({column, step}), had = before.chart.at({column, step});
      const bool inside = step >= window.first.step && step < window.first.step + window.steps;
      if (!inside || had == chart::no_bead) {
        EXPECT_EQ(bead, had);
        continue;
      }
      ASSERT_LT(bead, made.legend.size());
      const LegendEntry& entry = made.legend[bead];
      EXPECT_EQ(entry.bead, before.bead);
      EXPECT_TRUE(std::any_of(offer.begin(), offer.end(), [&](const OfferedBead& one) {
        return one.stock.colour == entry.colour && one.finish == entry.finish;
      }));
      used.insert(bead);
      sum += colour::ciede2000(colour::to_lab_d65(cells[next++]), colour::to_lab_d65(entry.colour));
    }
  ASSERT_EQ(next, cells.size());
  EXPECT_LE(static_cast<int>(used.size()), options.colours);
  EXPECT_NEAR(made.mean, sum / static_cast<double>(next), 1e-6);
  EXPECT_GE(made.percentile_95, 0);
  ASSERT_GE(made.legend.size(), project.legend.size());
  for (std::size_t i = 0; i < project.legend.size(); ++i) EXPECT_EQ(made.legend[i], project.legend[i]);
  std::set<std::string> letters;
  for (const LegendEntry& entry : made.legend) EXPECT_TRUE(letters.insert(entry.letter).second) << entry.letter;
  EXPECT_TRUE(plan_of(made.band).ok());
}

TEST(PictureBand, OnFacesWindowsAndWholeBands) {
  Random random(11);
  const Project project = ring_project();
  const Band& ring = project.bands.front();
  for (int trial = 0; trial < 60; ++trial) {
    SCOPED_TRACE(trial);
    const picture::Image image = random_image(random);
    const auto offer = random_offer(random, 6 + pick(random, 20));
    picture::CellWindow window = whole_window(ring.chart);
    if (trial % 3 == 0) window = *face_window(project, ring, trial % 2 == 0 ? form::Side::front : form::Side::back);
    if (trial % 3 == 1) window = {{0, pick(random, 12)}, 6, 1 + pick(random, 12)};
    PictureOptions options;
    options.colours = 2 + pick(random, 4);
    options.after = static_cast<AfterChoice>(pick(random, 3));
    options.choice.effort.prove = false;
    const auto made = picture_band(project, ring, window, image, offer, options);
    ASSERT_TRUE(made.ok()) << message(made.problem());
    expect_sound(project, ring, window, image, offer, options, *made);
    if (options.after == AfterChoice::nothing) { EXPECT_NEAR(made->mean, made->choice.mean, 1e-4); }
    EXPECT_EQ(made->mixed.has_value(), options.after == AfterChoice::mix);
    EXPECT_EQ(made->smoothed.has_value(), options.after == AfterChoice::smooth);
  }
}

TEST(PictureBand, EmptyCellsStayEmpty) {
  Random random(12);
  Project project = ring_project();
  Band band = project.bands.front();
  band.form.reset(), band.closure = weave::Closure::open;
  // An odd number of rows: the last step of the odd columns is left out.
  for (int column = 1; column < 6; column += 2) band.chart.set({column, 23}, chart::no_bead);
  const picture::Image image = random_image(random);
  const auto offer = random_offer(random, 12);
  PictureOptions options;
  const auto window = whole_window(band.chart);
  const auto made = picture_band(project, band, window, image, offer, options);
  ASSERT_TRUE(made.ok()) << message(made.problem());
  expect_sound(project, band, window, image, offer, options, *made);
  options.after = AfterChoice::smooth;
  EXPECT_EQ(picture_band(project, band, window, image, offer, options).problem().code, ProblemCode::wrong_size);
}

TEST(PictureBand, FacesLieApartAndNeedAForm) {
  const Project project = ring_project();
  const Band& ring = project.bands.front();
  const auto front = *face_window(project, ring, form::Side::front), back = *face_window(project, ring, form::Side::back);
  EXPECT_LE(front.first.step + front.steps, back.first.step);
  EXPECT_LE(back.first.step + back.steps, 24);
  Band flat = ring;
  flat.form.reset();
  EXPECT_EQ(face_window(project, flat, form::Side::front).problem().code, ProblemCode::missing_field);
  flat = ring, flat.closure = weave::Closure::open;
  EXPECT_EQ(face_window(project, flat, form::Side::front).problem().code, ProblemCode::missing_field);
}

TEST(PictureBand, WithBandReplacesOrAdds) {
  Random random(13);
  const Project project = ring_project();
  const auto made = picture_band(project, project.bands.front(), whole_window(project.bands.front().chart),
                                 random_image(random), random_offer(random, 8), {});
  ASSERT_TRUE(made.ok());
  EXPECT_EQ(with_band(project, *made).bands.size(), 1u);
  PictureBand other = *made;
  other.band.name = "Another";
  const Project both = with_band(project, other);
  ASSERT_EQ(both.bands.size(), 2u);
  EXPECT_EQ(both.bands[0], project.bands[0]);
  EXPECT_EQ(both.bands[1].chart, made->band.chart);
  EXPECT_EQ(both.legend, made->legend);
}

TEST(PictureBand, WhatItCanNotBeIsSaid) {
  Random random(14);
  const Project project = ring_project();
  const auto refused = [&](const Band& band, const picture::CellWindow& window) {
    const auto made = picture_band(project, band, window, random_image(random), random_offer(random, 4), {});
    return made.ok() ? ProblemCode::system_failure : made.problem().code;
  };
  const Band& ring = project.bands.front();
  EXPECT_EQ(refused(ring, {{0, 0}, 5, 24}), ProblemCode::wrong_size);
  EXPECT_EQ(refused(ring, {{0, 20}, 6, 5}), ProblemCode::wrong_size);
  EXPECT_EQ(refused(ring, {{0, -1}, 6, 5}), ProblemCode::wrong_size);
  Band units = ring;
  units.technique = "right-angle", units.closure = weave::Closure::open;
  EXPECT_EQ(refused(units, whole_window(units.chart)), ProblemCode::wrong_size);
  Band unknown = ring;
  unknown.bead = "round-99";
  EXPECT_EQ(refused(unknown, whole_window(unknown.chart)), ProblemCode::unknown_name);
}

}  // namespace
}  // namespace evencount::project
