// Ray tracing: how long a picture takes, beside what Embree itself does on the same scene.

#include <benchmark/benchmark.h>
#include <sys/resource.h>

#include <fstream>
#include <sstream>

#include "project/json.hpp"
#include "render/piece.hpp"
#include "render/render.hpp"

namespace evencount::render {
namespace {

project::Project demo() {
  std::ifstream file(std::string(EVENCOUNT_EXAMPLES) + "/moonwatch.evencount.json");
  std::stringstream text;
  text << file.rdbuf();
  return project::parse_project(text.str()).value();
}

/// A flat band of that many columns and beads along the edge in the demo's colours.
project::Project large(int columns, int edge) {
  project::Project project = demo();
  project::Band band = project.bands.front();
  band.technique = "loom", band.form.reset(), band.closure = weave::Closure::open;
  band.chart = chart::Chart::make(columns, edge).value();
  for (int column = 0; column < columns; ++column)
    for (int step = 0; step < edge; ++step)
      band.chart.set({column, step}, static_cast<chart::Bead>((column / 3 + step / 5) % 8));
  project.bands = {band};
  project.strand.reset();
  return project;
}

double peak_mb() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024;
}

void scene_of_the_demo(benchmark::State& state) {
  const project::Project project = demo();
  for (auto _ : state) benchmark::DoNotOptimize(scene_of(project, {}));
}
BENCHMARK(scene_of_the_demo)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime()->UseRealTime();

/// From the project to the first picture.
void first_preview(benchmark::State& state) {
  const project::Project project = demo();
  for (auto _ : state) {
    const Scene scene = scene_of(project, {}).value();
    benchmark::DoNotOptimize(
        render(scene, {}, [](const Progress& progress) { return progress.picture == nullptr; }));
  }
}
BENCHMARK(first_preview)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime()->UseRealTime();

void whole_picture(benchmark::State& state) {
  const project::Project project = demo();
  std::int64_t rays = 0;
  for (auto _ : state) {
    const Scene scene = scene_of(project, {}).value();
    rays += render(scene, {.samples = static_cast<int>(state.range(0))}).value().rays;
  }
  state.counters["rays/s"] = benchmark::Counter(static_cast<double>(rays), benchmark::Counter::kIsRate);
}
BENCHMARK(whole_picture)
    ->Arg(24)
    ->Iterations(1)
    ->Unit(benchmark::kSecond)
    ->MeasureProcessCPUTime()
    ->UseRealTime();

/// Embree's own rate on one thread: camera rays, and rays from what they meet in scattered directions.
void bare_rays(benchmark::State& state) {
  const Scene scene = scene_of(demo(), {}).value();
  const Tracer tracer = Tracer::build(scene).value();
  std::vector<Ray> rays;
  for (std::uint32_t i = 0; i < 40'000; ++i) {
    const Four at = spread_point(i, 0, 0, 1);
    Ray ray = ray_through(scene.camera, 4.0 / 3, {at[0], at[1]}, {});
    const auto hit = tracer.closest(ray);
    if (state.range(0) == 1 && hit)
      ray = {ray.from + (hit->distance_mm - 1e-3) * ray.towards,
             Frame::of(hit->smooth).to_world(cosine_direction(at[2], at[3]))};
    rays.push_back(ray);
  }
  std::size_t i = 0;
  for (auto _ : state) benchmark::DoNotOptimize(tracer.bare(rays[i++ % rays.size()]));
  state.SetItemsProcessed(static_cast<std::int64_t>(state.iterations()));
  state.SetLabel(state.range(0) == 0 ? "camera rays" : "scattered rays");
}
BENCHMARK(bare_rays)->Arg(0)->Arg(1);

/// 60,000 beads; the memory is the whole program's, once the picture is done.
void sixty_thousand_beads(benchmark::State& state) {
  const project::Project project = large(200, 300);
  for (auto _ : state) {
    const Scene scene = scene_of(project, {.band = project.bands.front().name}).value();
    benchmark::DoNotOptimize(render(scene, {.samples = 2}));
    state.counters["beads"] = static_cast<double>(scene.solids.size());
  }
  state.counters["peak MB"] = peak_mb();
}
BENCHMARK(sixty_thousand_beads)
    ->Iterations(1)
    ->Unit(benchmark::kSecond)
    ->MeasureProcessCPUTime()
    ->UseRealTime();

}  // namespace
}  // namespace evencount::render
