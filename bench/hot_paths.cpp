// The engine's hot paths, one a run, for counting their instructions (bench/instructions):
//   hot_paths          prints the names
//   hot_paths NAME     walks that path twice and has valgrind count the second walk alone
//
// Inputs are fixed and there is one thread, so that a count changes only with the program and its libraries. The first walk pays for what
// is made once and kept: fonts, tables.

#include <fmt/format.h>

#include <functional>
#include <memory>
#include <string>
#include <string_view>

#if __has_include(<valgrind/callgrind.h>)
#include <valgrind/callgrind.h>
#else
#define CALLGRIND_TOGGLE_COLLECT
#endif

#include "drawing/band_drawing.hpp"
#include "form/fit.hpp"
#include "page/sections.hpp"
#include "picture/pictures.hpp"
#include "project/json.hpp"
#include "project/supply_list_collection.hpp"
#include "proof/proof.hpp"
#include "render/piece.hpp"
#include "render/render.hpp"
#include "render/sampling.hpp"
#include "render/tracer.hpp"
#include "samples.hpp"
#include "strand/fitting.hpp"
#include "weave/replay.hpp"
#include "weave/technique.hpp"
#include "wording/reader.hpp"
#include "wording/words.hpp"

namespace evencount::bench {
namespace {

/// One walk of a path; what it returns keeps the work from being left out.
using Walk = std::function<std::size_t()>;

struct HotPath {
  std::string_view name;
  Walk (*prepare)();
};

const std::string examples = EVENCOUNT_EXAMPLES, pictures = EVENCOUNT_CASES_DIR "/picture/";

project::Project demo() {
  return project::parse_project(file_text(examples + "/moonwatch.evencount.json")).value();
}

form::FitRequest request(std::string_view notation, const bead::Size& size) {
  return {*form::parse_form(notation), size, bead::default_gauge(size, bead::threads().front()),
          form::Use::sliding};
}

Walk fit_lens() {
  return [wanted = request("lens:17x5x9", *bead::find_size("cylinder-11"))] {
    std::size_t found = 0;
    for (int i = 0; i < 20; ++i) found += form::fit(wanted).value().candidates.size();
    return found;
  };
}

/// Every bead round four forms; the largest beads find no room on some.
Walk fit_table() {
  return [] {
    std::size_t found = 0;
    for (const char* notation : {"lens:17x5x9", "oval:18x13x5", "bar:20x4x10", "dome:20x6x10"})
      for (const bead::Size& size : bead::sizes())
        if (const auto one = form::fit(request(notation, size))) found += one->candidates.size();
    return found;
  };
}

Walk plan_tube() {
  return [chart = random_chart(60, 80)] {
    return weave::make_plan("tubular-even-count", chart, {weave::Closure::round}).value().stitches.size();
  };
}

weave::Plan panel_plan() {
  return weave::make_plan("peyote-even-count", random_chart(60, 80), {weave::Closure::open}).value();
}

std::string panel_words(const weave::Plan& plan) {
  return wording::to_text(wording::write_words(plan, twelve_letters(), "Panel"));
}

Walk replay_plan() {
  return [plan = panel_plan()] { return weave::replay(plan).value().cells().size(); };
}

Walk write_words() {
  return [plan = panel_plan()] { return panel_words(plan).size(); };
}

Walk read_words() {
  return [text = panel_words(panel_plan())] { return wording::read_words(text).value().size(); };
}

Walk read_project() {
  return [text = project::to_json(project_of(4, 40, 60, 12))] {
    return project::parse_project(text).value().bands.size();
  };
}

Walk list_supplies() {
  return [projects = std::vector{demo(), project_of(8, 12, 60, 10)}] {
    return project::collection_supplies(projects, {.kits = 50}).value().beads.size();
  };
}

Walk lay_out_booklet() {
  return [project = project_of(2, 12, 40, 6)] { return page::make_booklet(project).value().pages.size(); };
}

Walk draw_chart() {
  return [project = project_of(1, 60, 80, 12)] {
    const auto plan = project::plan_of(project.bands.front()).value();
    return drawing::chart_drawing(project, project.bands.front(), plan,
                                  {.signs = drawing::CellSigns::letters})
        .value()
        .marks.size();
  };
}

Walk choose_beads() {
  auto stock = picture::load_stock(pictures + "stock2000.txt");
  stock.resize(300);
  return [cells = picture::load_ppm(pictures + "flat.60x80.ppm"), stock] {
    return picture::choose_stock(cells, stock, 8).value().bead_of_cell.size();
  };
}

Walk count_strand() {
  std::string text = "cords 1 of wire 0.5mm bead b 3.13mm bead c 4.07mm ", list;
  for (int run = 0; run < 12; ++run) {
    text += fmt::format("bead s{} {}mm on hand s{} 7 ", run, 1.51 + 0.17 * run, run);
    list += fmt::format("8 (b, c), fill with s{}, ", run);
  }
  const auto strung =
      strand::lay_strung(strand::parse_layout(text + "string " + list + "8 b", {}).value(), {}).value();
  return [problem = strand::run_problem(strung, strand::fixed_um(strung) + 213'457)] {
    return static_cast<std::size_t>(strand::solve_runs(problem).value().best().beads);
  };
}

Walk cast_rays() {
  const auto scene = std::make_shared<const render::Scene>(
      render::scene_of(demo(), {.band = demo().bands.front().name}).value());
  const auto tracer = std::make_shared<const render::Tracer>(render::Tracer::build(*scene).value());
  return [scene, tracer] {
    std::size_t hits = 0;
    for (std::uint32_t i = 0; i < 20'000; ++i) {
      const render::Four at = render::spread_point(i, 0, 0, 1);
      hits += tracer->closest(render::ray_through(scene->camera, 4.0 / 3, {at[0], at[1]}, {})).has_value();
    }
    return hits;
  };
}

Walk prove() {
  return [project = demo()] { return proof::proof(project).size() + 1; };
}

constexpr HotPath paths[] = {
    {"fit_lens", fit_lens},
    {"fit_table", fit_table},
    {"plan_tube", plan_tube},
    {"replay_plan", replay_plan},
    {"write_words", write_words},
    {"read_words", read_words},
    {"read_project", read_project},
    {"list_supplies", list_supplies},
    {"lay_out_booklet", lay_out_booklet},
    {"draw_chart", draw_chart},
    {"choose_beads", choose_beads},
    {"count_strand", count_strand},
    {"cast_rays", cast_rays},
    {"prove", prove},
};

/// Walks a path; nothing that it needs is made or thrown away while it is counted.
int walk(const HotPath& path) {
  const Walk once = path.prepare();
  const std::size_t first = once();
  CALLGRIND_TOGGLE_COLLECT;
  const std::size_t second = once();
  CALLGRIND_TOGGLE_COLLECT;
  return first == second && first > 0 ? 0 : 1;
}

}  // namespace
}  // namespace evencount::bench

int main(int count, char** arguments) {
  using namespace evencount::bench;
  if (count < 2) {
    for (const HotPath& path : paths) fmt::print("{}\n", path.name);
    return 0;
  }
  for (const HotPath& path : paths)
    if (path.name == arguments[1]) return walk(path);
  fmt::print(stderr, "hot_paths: no path is called '{}'\n", arguments[1]);
  return 2;
}
