#include <bit>

#include "app/reports.hpp"
#include "app/studio/band_view.hpp"
#include "base/text.hpp"
#include "fabric/fabric.hpp"

namespace evencount::app::studio {
namespace {

void append_number(std::string& bytes, std::uint32_t number) {
  for (int shift = 0; shift < 32; shift += 8) bytes += static_cast<char>((number >> shift) & 0xFF);
}

void append_real(std::string& bytes, double value) {
  append_number(bytes, std::bit_cast<std::uint32_t>(static_cast<float>(value)));
}

/// A mouth as one number: the bead, doubled, and 1 more for the end that its axis points to.
std::uint32_t mouth_number(const fabric::Mouth& mouth) {
  return static_cast<std::uint32_t>(mouth.bead) * 2 + (mouth.end > 0 ? 1 : 0);
}

/// docs/openapi.yaml describes the bytes.
std::string positions_bytes(const fabric::Fabric& fabric) {
  constexpr std::uint32_t reals_each = 8;
  std::vector<const fabric::Link*> links;
  for (const fabric::Link& link : fabric.links)
    if (!link.across_seam || fabric.closed) links.push_back(&link);

  std::string bytes = "EvB2";
  bytes.reserve(20 + fabric.beads.size() * 4 * (1 + reals_each) + links.size() * 8);
  append_number(bytes, static_cast<std::uint32_t>(fabric.beads.size()));
  append_number(bytes, reals_each);
  append_number(bytes, fabric.closed ? 1 : 0);
  append_number(bytes, static_cast<std::uint32_t>(links.size()));
  for (const fabric::SettledBead& bead : fabric.beads)
    append_number(bytes, static_cast<std::uint32_t>(bead.cell.column) |
                             static_cast<std::uint32_t>(bead.cell.step) << 16);
  for (const fabric::SettledBead& bead : fabric.beads)
    for (const double value :
         {bead.shape.middle.x, bead.shape.middle.y, bead.shape.middle.z, bead.shape.axis.x, bead.shape.axis.y,
          bead.shape.axis.z, bead.shape.radius_mm, bead.shape.half_length_mm})
      append_real(bytes, value);
  for (const fabric::Link* link : links)
    append_number(bytes, mouth_number(link->from)), append_number(bytes, mouth_number(link->to));
  return bytes;
}

const project::FormEntry* form_of(const BandView& view) {
  return view.band().form ? project::find_form(view.project(), *view.band().form) : nullptr;
}

Response positions(Studio& studio, const Call& call) {
  return of_band(studio, call, [&](const BandView& view) {
    const auto plan = project::plan_of(view.band());
    if (!plan) return problem_response(plan.problem());
    std::vector<bead::Size> sizes;
    for (const project::LegendEntry& entry : view.project().legend)
      sizes.push_back(*project::find_bead(view.project(), entry.bead));
    const bead::Gauge gauge = project::gauge_of(view.project(), view.band());
    const auto* form = form_of(view);
    const std::string shape = call.query("shape", "settled");
    if (shape != "settled" && shape != "flat")
      return problem_response({ProblemCode::unknown_name, "shape", quote(shape), "settled or flat"});
    const auto fabric =
        shape == "flat"
            ? fabric::settle_flat(*plan, sizes, gauge)
            : fabric::settle(*plan, sizes, gauge, form ? fabric::Around(form->form) : fabric::Around());
    if (!fabric) return problem_response(fabric.problem());
    Response response;
    response.type = "application/octet-stream";
    response.body = positions_bytes(*fabric);
    return response;
  });
}

/// A section as a polygon that a screen can't tell from the curve.
constexpr double section_error_mm = 0.01;

Response form(Studio& studio, const Call& call) {
  return of_band(studio, call, [](const BandView& view) {
    const auto* form = form_of(view);
    if (!form)
      return problem_response(
          {ProblemCode::missing_field, "form", "a band without a form", "a band that goes round a form"});
    const auto section = form::section(form->form);
    if (!section) return problem_response(section.problem());
    Json points = Json::array(), holes = Json::array();
    for (const form::Point p : form::sample(*section, millimetres(section_error_mm)))
      points.push_back({rounded(p.x_mm, 3), rounded(p.y_mm, 3)});
    for (const form::Point p : form::hole_centres(form->form))
      holes.push_back({rounded(p.x_mm, 3), rounded(p.y_mm, 3)});
    const auto& length = form->form.length_along_holes;
    const auto& hole = form->form.hole;
    return json_response({{"kind", form::kind_name(form->form.kind)},
                          {"description", form::describe(form->form)},
                          {"length_mm", length ? Json(rounded(length->mm(), 3)) : Json(nullptr)},
                          {"hole_mm", hole ? Json(rounded(hole->mm(), 3)) : Json(nullptr)},
                          {"holes", std::move(holes)},
                          {"section", std::move(points)}});
  });
}

constexpr Route routes[] = {
    {"GET", "/api/projects/{project}/bands/{band}/positions", no_body, positions},
    {"GET", "/api/projects/{project}/bands/{band}/form", no_body, form},
};

}  // namespace

std::span<const Route> round_routes() {
  return routes;
}

}  // namespace evencount::app::studio
