#include "project/random_project.hpp"

#include <fmt/format.h>

#include <cmath>
#include <random>

#include "chart/letters.hpp"
#include "form/outline.hpp"
#include "weave/technique.hpp"

namespace evencount::testing {
namespace {

using namespace project;

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : random_(seed) {}

  /// 0 to below `n`. Not std::uniform_int_distribution, whose numbers differ between libraries.
  int below(int n) { return static_cast<int>(random_() % static_cast<std::uint64_t>(n)); }
  bool once_in(int n) { return below(n) == 0; }
  double between(double least, double most) {
    const double share = static_cast<double>(random_() >> 11) * 0x1p-53;
    return std::min(most, least + share * (most - least));
  }

  std::string text() {
    static const std::vector<std::string> pieces{"moon", " ",    "Ö",  "✂",    "\n", "\t",  "\"", "\\",
                                                 "/",    "~",    "é",  "(2)A", "👍",  "0",   "",   "null",
                                                 "{}",   "</p>", "%s", ":",    "'",  "café"};
    std::string result;
    for (int i = below(6); i > 0; --i) result += pieces[static_cast<std::size_t>(below(22))];
    return result;
  }

  UnknownFields unknown() {
    UnknownFields fields;
    for (int i = below(3); i > 0; --i) {
      static const std::vector<std::string> values{"null",
                                                   "true",
                                                   "0.10",
                                                   "123456789012345678901234567890",
                                                   "[]",
                                                   R"({"z":1,"a":[{"b":{}}]})",
                                                   R"("t\n\"")",
                                                   "-1.5e+300",
                                                   R"({"":{"/~":"\u0000"}})"};
      fields["x-" + text() + std::to_string(i)] = values[static_cast<std::size_t>(below(9))];
    }
    return fields;
  }

 private:
  std::mt19937_64 random_;
};

bead::Size draw_bead(Draw& draw, int index) {
  if (draw.once_in(3)) return bead::sizes()[static_cast<std::size_t>(index)];
  bead::Size size;
  size.id = fmt::format("own {}", index) + draw.text();
  size.kind = draw.once_in(2) ? bead::Kind::round : bead::Kind::cylinder;
  size.diameter = millimetres(draw.between(1, 100));
  size.length = millimetres(draw.between(0.1, 100));
  size.hole = millimetres(draw.between(0.1, 0.9));
  size.beads_per_gram = draw.between(0.001, 100'000);
  size.scatter = draw.between(0, 1);
  size.lot_shift = draw.between(0, 1);
  size.source = draw.text();
  return size;
}

LegendEntry draw_legend_entry(Draw& draw, int index, const Project& project) {
  LegendEntry entry;
  entry.letter = chart::letter_name((index * 7 + 3) % 800);
  entry.name = draw.text();
  entry.colour = {static_cast<std::uint8_t>(draw.below(256)), static_cast<std::uint8_t>(draw.below(256)),
                  static_cast<std::uint8_t>(draw.below(256))};
  entry.finish = bead::finishes[static_cast<std::size_t>(draw.below(static_cast<int>(bead::finishes.size())))];
  entry.bead = project.beads[static_cast<std::size_t>(draw.below(static_cast<int>(project.beads.size())))].id;
  if (draw.once_in(2)) {
    entry.pack = Pack{grams(draw.between(0.001, 1000)), {}, draw.unknown()};
    if (draw.once_in(2)) entry.pack->price = Money{draw.below(1'000'000), draw.once_in(2) ? "EUR" : "SEK"};
  }
  entry.unknown = draw.unknown();
  return entry;
}

form::Form draw_outline(Draw& draw) {
  std::vector<form::Point> points;
  const int count = 8 + draw.below(20);
  for (int i = 0; i < count; ++i) {
    const double angle = 6.283185307179586 * i / count;
    points.push_back({draw.between(8, 9) * std::cos(angle), draw.between(4, 5) * std::sin(angle)});
  }
  return *form::form_from_outline("traced-1", points, millimetres(draw.between(5, 20)), form::Dents::bridge);
}

FormEntry draw_form(Draw& draw, int index) {
  if (draw.once_in(5))
    return {fmt::format("form {}", index) + draw.text(), draw.text(), draw_outline(draw), draw.unknown()};
  const double thin = 0.5 + draw.below(50'000) / 10'000.0, wide = thin + draw.below(100'000) / 10'000.0;
  const std::string notation = draw.once_in(3)   ? fmt::format("lens:{:.4f}x{:.4f}x{:.4f}", wide, thin, wide)
                               : draw.once_in(2) ? fmt::format("round:{:.4f}x{:.4f}", thin, wide)
                                                 : fmt::format("ring:{}", 40 + draw.below(40));
  return {fmt::format("form {}", index) + draw.text(), draw.text(), *form::parse_form(notation),
          draw.unknown()};
}

Band draw_band(Draw& draw, const Project& project) {
  Band band;
  band.name = draw.text();
  band.technique =
      weave::techniques()[static_cast<std::size_t>(draw.below(static_cast<int>(weave::techniques().size())))]
          .id;
  band.bead = project.beads[static_cast<std::size_t>(draw.below(static_cast<int>(project.beads.size())))].id;
  if (!project.forms.empty() && draw.once_in(2)) band.form = project.forms.front().id;
  band.use = draw.once_in(2) ? form::Use::fixed : form::Use::sliding;
  band.closure = static_cast<weave::Closure>(draw.below(4));
  if (draw.once_in(3)) band.begin_at = draw.below(40);
  if (draw.once_in(2)) {
    band.gauge =
        bead::Gauge{millimetres(draw.between(0.2, 50)), millimetres(draw.between(0.2, 50)), draw.text()};
    if (draw.once_in(2)) band.gauge->uncertainty = draw.between(0, 1);
    band.gauge_unknown = draw.unknown();
  }
  band.copies = 1 + draw.below(draw.once_in(3) ? most_copies : 1);
  band.note = draw.text();
  if (draw.once_in(3)) band.series_mark = draw.text();
  band.chart = *chart::Chart::make(1 + draw.below(14), 1 + draw.below(30));
  for (int step = 0; step < band.chart.edge(); ++step)
    for (int column = 0; column < band.chart.columns(); ++column)
      band.chart.set({column, step},
                     project.legend.empty() || draw.once_in(20)
                         ? chart::no_bead
                         : static_cast<chart::Bead>(draw.below(static_cast<int>(project.legend.size()))));
  band.unknown = draw.unknown();
  return band;
}

Costing draw_costing(Draw& draw) {
  Costing costing;
  materials::CostSettings& settings = costing.settings;
  settings.currency = draw.once_in(2) ? "EUR" : "SEK";
  settings.hour_minor = draw.below(10'000);
  settings.beads_a_day = 1 + draw.below(5'000);
  settings.minutes_a_day = draw.below(600);
  for (int i = draw.below(3); i > 0; --i)
    settings.technique_time.push_back({"t" + draw.text() + std::to_string(i), {draw.below(materials::most_hundredths)}});
  settings.finishing_minutes = draw.below(100);
  settings.assembly_minutes = draw.below(100);
  settings.other_materials_minor = draw.below(1'000);
  settings.waste = {draw.below(10'000)};
  settings.overhead = {draw.below(10'000)};
  settings.overhead_minor = draw.below(1'000);
  if (draw.once_in(2)) {
    const auto factor = [&] { return materials::Factor{draw.below(materials::most_hundredths)}; };
    settings.own_rule = materials::PriceRule{draw.text(), factor(), factor(), factor(), {}, {}, {}};
    if (draw.once_in(2)) settings.own_rule->wholesale = factor();
    if (draw.once_in(2)) settings.own_rule->retail = factor();
    if (draw.once_in(2)) settings.own_rule->retail_to = factor();
    costing.rule_unknown = draw.unknown();
  }
  costing.unknown = draw.unknown();
  return costing;
}

SavedStrand draw_strand(Draw& draw) {
  SavedStrand strand;
  strand.layout = draw.text() + "\nstring 3 round-8 # so\n" + draw.text();
  strand.worn = static_cast<strand::Worn>(draw.below(3));
  if (draw.once_in(2)) strand.ease = millimetres(draw.between(0, 200));
  if (draw.once_in(2)) strand.lean = draw.between(0, 90);
  if (draw.once_in(2)) strand.tolerance = millimetres(draw.between(0, 100));
  for (int i = draw.below(4); i > 0; --i) strand.sizes.push_back({draw.text(), millimetres(draw.between(50, 2000)), draw.unknown()});
  strand.unknown = draw.unknown();
  return strand;
}

}  // namespace

Project random_project(std::uint64_t seed) {
  Draw draw(seed);
  Project project;
  project.title = draw.text();
  project.subtitle = draw.text();
  project.designer = draw.text();
  project.summary = draw.text();
  project.finished_size = draw.text();
  project.terms = draw.text();
  for (int i = 1 + draw.below(4); i > 0; --i) {
    project.beads.push_back(draw_bead(draw, i));
    if (const auto unknown = draw.unknown(); !unknown.empty())
      project.bead_unknown[project.beads.back().id] = unknown;
  }
  project.thread = bead::threads()[static_cast<std::size_t>(draw.below(4))];
  if (draw.once_in(2))
    project.thread = {"own" + draw.text(), draw.text(), millimetres(draw.between(0.01, 10)), draw.text()};
  project.thread_habits = {millimetres(draw.between(0, 10'000)), millimetres(draw.between(1, 1'000'000)),
                           draw.below(101)};
  project.thread_unknown = draw.unknown();
  project.allowance = draw.between(0, 1);
  for (int i = draw.below(30); i > 0; --i) project.legend.push_back(draw_legend_entry(draw, i, project));
  for (int i = draw.below(3); i > 0; --i) project.forms.push_back(draw_form(draw, i));
  for (int i = draw.below(3); i > 0; --i)
    project.gauges.push_back(
        {{draw.text(), "thread " + draw.text(), project.beads.front().id,
          bead::Gauge{millimetres(draw.between(0.2, 50)), millimetres(draw.between(0.2, 50)), draw.text()}},
         draw.unknown(),
         draw.unknown()});
  for (int i = draw.below(4); i > 0; --i) project.bands.push_back(draw_band(draw, project));
  if (draw.once_in(2)) project.strand = draw_strand(draw);
  for (int i = draw.below(3); i > 0; --i)
    project.findings.push_back({draw.text(), draw.between(0, 1'000'000), draw.text(), draw.unknown()});
  for (int i = draw.below(3); i > 0; --i) project.tools.push_back(draw.text());
  for (int i = draw.below(3); i > 0; --i) project.assembly.push_back(draw.text());
  if (draw.once_in(2)) project.costing = draw_costing(draw);
  project.unknown = draw.unknown();
  return project;
}

}  // namespace evencount::testing
