#include "app/verbs/show_as_seen.hpp"

#include "base/text.hpp"
#include "colour/vision.hpp"

namespace evencount::app {

Result<Done> show_as_seen(project::Project& project, const std::string& name) {
  using colour::Deficiency;
  if (name.empty()) return Done{};
  for (const Deficiency deficiency : {Deficiency::protan, Deficiency::deutan, Deficiency::tritan}) {
    if (colour::deficiency_name(deficiency) != name) continue;
    const auto vision = colour::brettel_vision(deficiency);
    for (project::LegendEntry& entry : project.legend) entry.colour = colour::seen(vision, entry.colour);
    return Done{};
  }
  return Problem{ProblemCode::unknown_name, "seen", quote(name), "protan, deutan or tritan"};
}

}  // namespace evencount::app
