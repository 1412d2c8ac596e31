#include "weave/technique.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <vector>

#include "base/text.hpp"
#include "language/texts.hpp"
#include "weave/brick.hpp"
#include "weave/flat_peyote.hpp"
#include "weave/herringbone.hpp"
#include "weave/loom.hpp"
#include "weave/right_angle.hpp"
#include "weave/square_stitch.hpp"
#include "weave/tubular_peyote.hpp"

namespace evencount::weave {
namespace {

std::vector<Technique> all_techniques() {
  std::vector<Technique> all;
  for (const auto family : {flat_peyote_techniques(), tubular_peyote_techniques(), brick_techniques(),
                            square_stitch_techniques(), loom_techniques(), herringbone_techniques(),
                            right_angle_techniques()})
    all.insert(all.end(), family.begin(), family.end());
  return all;
}

Result<Done> check_closure(const Technique& technique, Closure closure) {
  const auto& closures = technique.closures;
  if (std::find(closures.begin(), closures.end(), closure) != closures.end()) return Done{};
  std::string expected;
  for (const Closure one : closures) expected += (expected.empty() ? "" : " or ") + std::string(closure_name(one));
  return Problem{ProblemCode::wrong_size, "closure", std::string(closure_name(closure)),
                 fmt::format("{} for {}", expected, technique.name)};
}

}  // namespace

std::span<const Technique> techniques() {
  static const std::vector<Technique> all = all_techniques();
  return all;
}

std::pair<Measure, Measure> columns_and_edge(const Lattice& lattice) {
  return {{lattice.columns, &language::Texts::columns_counted}, {lattice.edge, &language::Texts::edge_counted}};
}

Result<Technique> find_technique(std::string_view id) {
  const auto all = techniques();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Technique& t) { return t.id == id; });
  if (found != all.end()) return *found;
  std::string ids;
  for (const Technique& technique : all) ids += (ids.empty() ? "" : ", ") + std::string(technique.id);
  return Problem{ProblemCode::unknown_name, "technique", quote(id), "one of " + ids};
}

const Technique& flat_peyote_for(int columns) {
  return techniques()[columns % 2 == 0 ? 0 : 1];
}

Result<Plan> make_plan(std::string_view id, const chart::Chart& chart, const Making& making) {
  const auto technique = find_technique(id);
  if (!technique) return technique.problem();
  if (const auto closes = check_closure(*technique, making.closure); !closes) return closes.problem();
  if (const auto size = technique->check_size(chart.columns(), chart.edge()); !size) return size.problem();
  auto plan = technique->lower(chart, making);
  if (!plan) return plan;
  plan->technique = technique->id;
  plan->lattice = technique->lattice(chart.columns(), chart.edge());
  plan->closure = making.closure;
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column)
      if (plan->lattice.holds_bead({column, step}) && chart.at({column, step}) == chart::no_bead)
        plan->empty_cells.push_back({column, step});
  return plan;
}

}  // namespace evencount::weave
