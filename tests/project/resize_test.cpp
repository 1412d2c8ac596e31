#include "project/resize.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <random>

#include "project/case_file.hpp"
#include "project/json.hpp"
#include "weave/technique.hpp"

namespace evencount::project {
namespace {

Project load(const std::string& path) {
  auto project = parse_project(testing::read_file(path));
  EXPECT_TRUE(project.ok()) << path << message(project.problem());
  return *project;
}

Project moonwatch() {
  return load(EVENCOUNT_SOURCE_DIR "/examples/moonwatch.evencount.json");
}

std::vector<std::string> examples() {
  std::vector<std::string> paths;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(EVENCOUNT_SOURCE_DIR "/examples"))
    if (entry.path().string().ends_with(".evencount.json")) paths.push_back(entry.path().string());
  std::ranges::sort(paths);
  return paths;
}

/// All dimensions of a form times a factor, kept to what its notation can say.
form::Form scaled(form::Form form, double factor) {
  const auto scale = [factor](Length length) {
    return millimetres(std::round(length.mm() * factor * 1e4) / 1e4);
  };
  form.width = scale(form.width);
  form.thickness = scale(form.thickness);
  for (std::optional<Length> form::Form::*length :
       {&form::Form::length_along_holes, &form::Form::tip_radius, &form::Form::edge_radius,
        &form::Form::hole_spacing, &form::Form::hole})
    if (form.*length) form.*length = scale(*(form.*length));
  return form;
}

/// The only band of a project, flat, on 11/0 cylinders.
Project flat_project(std::string_view technique, const chart::Chart& chart, int colours) {
  Project project;
  project.beads.push_back(*bead::find_size("cylinder-11"));
  project.thread = *bead::find_thread("braided-6lb");
  for (int i = 0; i < colours; ++i) {
    LegendEntry entry;
    entry.letter = std::string(1, static_cast<char>('A' + i));
    entry.name = "colour";
    entry.bead = "cylinder-11";
    project.legend.push_back(entry);
  }
  Band band;
  band.name = "Flat";
  band.technique = technique;
  band.bead = "cylinder-11";
  band.closure = weave::find_technique(technique)->closures.front();
  band.chart = chart;
  project.bands.push_back(band);
  return project;
}

Result<Resized> to_bead(const Project& project, const std::string& bead, FlatKeeps flat = FlatKeeps::size) {
  ResizeRequest request;
  request.beads[""] = bead;
  request.flat = flat;
  return resize(project, request);
}

double same_share(const chart::Chart& one, const chart::Chart& other) {
  if (one.columns() != other.columns() || one.edge() != other.edge()) return 0;
  int same = 0;
  for (std::size_t i = 0; i < one.cells().size(); ++i) same += one.cells()[i] == other.cells()[i];
  return 1.0 * same / static_cast<double>(one.cells().size());
}

TEST(resize, nothing_asked_for_is_nothing_done) {
  for (const std::string& path : examples()) {
    const Project project = load(path);
    const auto resized = resize(project, {});
    ASSERT_TRUE(resized.ok()) << path;
    EXPECT_EQ(resized->project, project);
    EXPECT_TRUE(resized->bands.empty());
    EXPECT_EQ(resized->untouched.size(), project.bands.size());
  }
}

TEST(resize, every_example_in_every_bead_can_be_stitched_and_is_as_reported) {
  for (const std::string& path : examples())
    for (const bead::Size& size : bead::sizes()) {
      const Project project = load(path);
      if (project.beads.size() != 1 || size.id == project.beads.front().id) continue;
      const auto resized = to_bead(project, size.id);
      if (!resized) {
        // Only what really can't be: shaped outlines that no stitch makes, forms too small for the bead.
        EXPECT_TRUE(resized.problem().code == ProblemCode::cannot_close ||
                    resized.problem().code == ProblemCode::wrong_size ||
                    resized.problem().code == ProblemCode::out_of_range)
            << path << size.id << message(resized.problem());
        continue;
      }
      ASSERT_EQ(resized->bands.size(), project.bands.size());
      for (std::size_t i = 0; i < project.bands.size(); ++i) {
        const Band& band = resized->project.bands[i];
        const BandResize& report = resized->bands[i];
        EXPECT_TRUE(plan_of(band).ok()) << path << size.id << band.name;
        EXPECT_EQ(report.after.columns, band.chart.columns());
        EXPECT_EQ(report.after.edge, band.chart.edge());
        EXPECT_EQ(report.carried.chart, band.chart);
        if (report.fit) {
          EXPECT_TRUE(form::closes(report.fit->verdict)) << path << size.id;
        }
        // All else of the band is as it was.
        Band otherwise = band;
        otherwise.chart = project.bands[i].chart;
        otherwise.bead = project.bands[i].bead;
        if (report.gauge_dropped)
          otherwise.gauge = project.bands[i].gauge, otherwise.gauge_unknown = project.bands[i].gauge_unknown;
        EXPECT_EQ(otherwise, project.bands[i]);
      }
      EXPECT_EQ(resized->project.beads.size(), 1u);
      EXPECT_EQ(parse_project(to_json(resized->project)).value(), resized->project);
    }
}

TEST(resize, a_flat_band_keeps_its_size_or_its_counts) {
  for (const weave::Technique& technique : weave::techniques()) {
    const bool units = technique.id == "right-angle";
    const int columns = units                          ? 41
                        : technique.check_size(42, 60) ? 42
                        : technique.check_size(40, 60) ? 40
                                                       : 41;
    chart::Chart chart = *chart::Chart::make(columns, units ? 61 : 60);
    const weave::Lattice lattice = technique.lattice(chart.columns(), chart.edge());
    for (int step = 0; step < chart.edge(); ++step)
      for (int column = 0; column < chart.columns(); ++column)
        if (!lattice.holds_bead({column, step})) chart.set({column, step}, chart::no_bead);
    const Project project = flat_project(technique.id, chart, 1);
    const auto counts = to_bead(project, "round-8", FlatKeeps::counts);
    ASSERT_TRUE(counts.ok()) << technique.id << message(counts.problem());
    EXPECT_EQ(counts->project.bands[0].chart, chart);
    const auto size = to_bead(project, "round-8", FlatKeeps::size);
    ASSERT_TRUE(size.ok()) << technique.id << message(size.problem());
    const BandResize& report = size->bands.front();
    // Within the step that the technique allows: four columns of two-drop, two of peyote.
    EXPECT_NEAR(report.after.width.mm(), report.before.width.mm(), 2 * report.after.gauge.column.mm())
        << technique.id;
    EXPECT_NEAR(report.after.length.mm(), report.before.length.mm(), report.after.gauge.edge.mm())
        << technique.id;
  }
}

TEST(resize, a_form_and_its_beads_grown_alike_give_the_old_counts_and_charts) {
  for (const Project& project :
       {moonwatch(), load(EVENCOUNT_SOURCE_DIR "/examples/moonwatch-necklace.evencount.json")}) {
    // 8/0 round beads are 1.70 times 11/0 cylinders, both ways within 0.3 %.
    const double factor = bead::default_gauge(*bead::find_size("round-8"), project.thread).edge /
                          bead::default_gauge(*bead::find_size("cylinder-11"), project.thread).edge;
    ResizeRequest there, back;
    there.beads[""] = "round-8";
    there.forms[""] = scaled(project.forms[0].form, factor);
    const auto large = resize(project, there);
    ASSERT_TRUE(large.ok()) << message(large.problem());
    back.beads[""] = "cylinder-11";
    back.forms[""] = project.forms[0].form;
    const auto again = resize(large->project, back);
    ASSERT_TRUE(again.ok()) << message(again.problem());
    for (std::size_t i = 0; i < project.bands.size(); ++i)
      EXPECT_EQ(same_share(again->project.bands[i].chart, project.bands[i].chart), 1.0)
          << project.bands[i].name;
  }
}

/// Random pictures: patches of colour with lines between them, at sizes where 0.3 % of the width is a column and more.
chart::Chart picture_of(int columns, int edge, std::mt19937& random) {
  chart::Chart chart = *chart::Chart::make(columns, edge);
  for (int shape = 0; shape < 40; ++shape) {
    const int column = static_cast<int>(random() % static_cast<unsigned>(columns)),
              step = static_cast<int>(random() % static_cast<unsigned>(edge));
    const int width = 1 + static_cast<int>(random() % static_cast<unsigned>(columns / 3)),
              height = 1 + static_cast<int>(random() % static_cast<unsigned>(edge / 3));
    const bool line = random() % 3 == 0;
    for (int s = step; s < std::min(edge, step + height); ++s)
      for (int c = column; c < std::min(columns, column + (line ? 1 : width)); ++c)
        chart.set({c, s}, static_cast<chart::Bead>(random() % 64 == 0 ? 0 : 1 + shape % 5));
  }
  return chart;
}

/// The measure: the share of a chart's cells that hold the bead they held before, after cylinder-11 to round-8 and back, when the piece
/// grows as the beads do: 1.70 times as wide and as long.
TEST(resize, there_and_back_at_equal_size_ratio_keeps_95_percent) {
  std::mt19937 random(11);
  double least = 1;
  for (const std::string_view technique : {"peyote-even-count", "brick", "square", "loom", "herringbone"})
    for (const auto& [columns, edge] :
         std::vector<std::pair<int, int>>{{12, 40}, {60, 90}, {180, 240}, {400, 300}}) {
      const chart::Chart chart = picture_of(columns, edge, random);
      const auto found = *weave::find_technique(technique);
      const auto thread = *bead::find_thread("braided-6lb");
      const bead::Gauge small = found.gauge(*bead::find_size("cylinder-11"), thread),
                        large = found.gauge(*bead::find_size("round-8"), thread);
      // The same number of millimetres, 1.70 times as many: as many columns as the two pitches' ratio gives.
      const double grown = large.edge / small.edge;
      const int there_columns =
          2 * static_cast<int>(std::lround(columns * grown * (small.column / large.column) / 2));
      const Piece from{found.lattice(columns, edge), found.closures.front()},
          to{found.lattice(there_columns, edge), found.closures.front()};
      const auto there = carry(chart, from, to, {.method = Carry::resample});
      const auto back = carry(there->chart, to, from, {.method = Carry::resample});
      const double kept = same_share(back->chart, chart);
      least = std::min(least, kept);
      EXPECT_GE(kept, 0.95) << technique << " " << columns << " to " << there_columns;
      if (std::getenv("EVENCOUNT_SHOW_FIGURES") != nullptr)
        fmt::print("{} {}x{} to {} columns: {:.4f}\n", technique, columns, edge, there_columns, kept);
    }
  EXPECT_GT(least, 0);
}

TEST(resize, an_edge_and_a_width_that_are_asked_for_are_taken) {
  ResizeRequest request;
  request.beads[""] = "cylinder-15";
  request.bands["New moon"].edge = 29;
  request.bands["New moon"].columns = 6;
  const auto asked = resize(moonwatch(), request);
  ASSERT_TRUE(asked.ok()) << message(asked.problem());
  EXPECT_EQ(asked->bands[0].after.edge, 29);
  EXPECT_EQ(asked->bands[0].after.columns, 6);
  EXPECT_NE(asked->bands[0].fit->edge, 29);
  EXPECT_EQ(asked->bands[1].after.edge, asked->bands[1].fit->edge);
}

TEST(resize, an_edge_that_sat_easily_sits_easily_again) {
  // A fixed band on this carrier: 24 is snug, 25 easy.
  Project project = moonwatch();
  project.bands.resize(1);
  project.forms[0].form = *form::parse_form("lens:17x5x9");
  project.bands[0].use = form::Use::fixed;
  for (const auto& [edge, verdict] : {std::pair{24, form::Verdict::snug}, {25, form::Verdict::easy}}) {
    project.bands[0].chart = *chart::Chart::make(6, edge);
    const auto resized = to_bead(project, "cylinder-15");
    ASSERT_TRUE(resized.ok());
    const auto& candidates = resized->bands[0].fit->candidates;
    const auto taken = std::ranges::find(candidates, resized->bands[0].after.edge, &form::FitCandidate::edge);
    ASSERT_NE(taken, candidates.end());
    EXPECT_EQ(taken->verdict, verdict);
  }
}

TEST(resize, a_width_of_the_designers_own_keeps_its_share_of_the_form) {
  Project project = moonwatch();
  project.bands.resize(1);
  project.bands[0].chart = *chart::Chart::make(4, 24);
  ResizeRequest request;
  request.forms["small-carrier"] = *form::parse_form("lens:16x5x18,holes=9.6,hole=2");
  const auto twice = resize(project, request);
  ASSERT_TRUE(twice.ok()) << message(twice.problem());
  EXPECT_EQ(twice->bands[0].after.columns, 8);
  EXPECT_EQ(twice->bands[0].after.edge, 24);
  EXPECT_EQ(twice->notes.size(), 2u);  // the form's name, the finished size
}

TEST(resize, packs_and_gauges_of_the_old_bead_go) {
  Project project = load(EVENCOUNT_SOURCE_DIR "/tests/project/data/small.evencount.json");
  ASSERT_TRUE(project.bands[0].gauge.has_value());
  const auto resized = to_bead(project, "cylinder-10");
  ASSERT_TRUE(resized.ok()) << message(resized.problem());
  EXPECT_FALSE(resized->project.bands[0].gauge.has_value());
  EXPECT_TRUE(resized->bands[0].gauge_dropped);
  for (const LegendEntry& entry : resized->project.legend) {
    EXPECT_EQ(entry.bead, "cylinder-10");
    EXPECT_FALSE(entry.pack.has_value());
  }
}

TEST(resize, what_it_refuses) {
  const Project project = moonwatch();
  ResizeRequest request;
  request.beads["seed"] = "round-8";
  EXPECT_EQ(resize(project, request).problem().code, ProblemCode::unknown_name);
  request.beads = {{"", "cylinder-99"}};
  EXPECT_EQ(resize(project, request).problem().code, ProblemCode::unknown_name);
  request.beads = {{"", "round-8"}};
  request.bands["No such band"].edge = 4;
  EXPECT_EQ(resize(project, request).problem().code, ProblemCode::unknown_name);
  request.bands.clear();
  request.border = "Q";
  EXPECT_EQ(resize(project, request).problem().code, ProblemCode::unknown_name);
  request.border.reset();
  request.beads = {{"", "round-8"}, {"cylinder-11", "round-6"}};
  EXPECT_EQ(resize(project, request).problem().code, ProblemCode::duplicate_name);
  request.beads.clear();
  request.forms[""] = *form::parse_form("lens:4x1x2");
  const auto tiny = resize(project, request);
  ASSERT_FALSE(tiny.ok());
  EXPECT_NE(tiny.problem().where.find("New moon"), std::string::npos);
  Project two = project;
  two.forms.push_back({"other", "", *form::parse_form("round:12x20"), {}});
  EXPECT_EQ(resize(two, request).problem().code, ProblemCode::bad_usage);
}

}  // namespace
}  // namespace evencount::project
