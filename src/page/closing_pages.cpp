#include <fmt/format.h>

#include <array>

#include "page/sections.hpp"

namespace evencount::page {
namespace {

using namespace drawing;

void put_heading(Flow& flow, std::string_view heading, const Style& style, double before_mm) {
  if (flow.y() > flow.top() + 1) flow.skip(before_mm);
  flow.need(style.leading_mm + 3 * style::body.leading_mm);
  flow.paragraph(style, heading, flow.left(), flow.width());
  flow.skip(0.12 * style.face.size_pt);
}

void put_steps(Flow& flow, const std::vector<std::string>& steps) {
  constexpr double indent = 10;
  constexpr Style number{{TextRole::heading, 15}, 5.25, ink::accent};
  for (std::size_t i = 0; i < steps.size(); ++i) {
    flow.need(2 * style::body.leading_mm);
    flow.put_text(number, fmt::format("{}", i + 1), {flow.left() + indent - 4, flow.y() + 4.1}, Align::right);
    flow.paragraph(style::body, steps[i], flow.left() + indent, flow.width() - indent);
    flow.skip(2.2);
  }
}

void put_points(Flow& flow, std::span<const std::string_view> points) {
  constexpr double indent = 5;
  for (const std::string_view point : points) {
    flow.need(style::body.leading_mm);
    flow.put(Circle{.centre = {flow.left() + 1.2, flow.y() + 2.75}, .radius_mm = 0.55, .fill = ink::accent});
    flow.paragraph(style::body, point, flow.left() + indent, flow.width() - indent);
    flow.skip(1);
  }
}

constexpr std::array<std::string_view, 3> care{
    "Put the piece on last and take it off first. Keep it from water, perfume and rough cloth.",
    "Wipe it with a soft dry cloth and store it flat, away from strong light.",
    "Look the bands and the cords over now and then. Elastic ages even in a drawer: restring it before it "
    "goes slack."};

// Small parts: 16 CFR 1501 and EN 71-1. Nickel: EU REACH, annex XVII, entry 27. Glue and glass: common practice, no
// source.
constexpr std::array<std::string_view, 5> cautions{
    "Small parts. Beads and findings can be swallowed or breathed in: not for children under three years (16 "
    "CFR 1501; "
    "EN 71-1).",
    "Metal against skin. In the European Union the release of nickel is limited (REACH annex XVII, entry "
    "27): buy "
    "findings that are declared to keep to it, above all for pierced ears.",
    "Glue. Work in moving air, keep it off skin and eyes, and let it cure for 24 to 72 hours before the "
    "piece is worn.",
    "Needles and glass. A bead that is broken out throws chips: wear eye protection and cover the jaws of "
    "the pliers. "
    "Count your needles when you finish.",
    "The law where you live and the data sheets of the products that you use come before anything said "
    "here."};

}  // namespace

void put_closing(Flow& flow, const Subject& subject) {
  const project::Project& project = subject.project;
  if (!project.assembly.empty()) {
    put_heading(flow, "Assembly", style::heading, 0);
    put_steps(flow, project.assembly);
  }
  put_heading(flow, "Care", style::subheading, 6);
  put_points(flow, care);
  put_heading(flow, "For your safety", style::subheading, 6);
  put_points(flow, cautions);
  if (one_line(project.terms).empty()) return;
  put_heading(flow, "Terms of use", style::subheading, 6);
  flow.paragraph(style::body, project.terms, flow.left(), flow.width());
  const std::string designer = one_line(project.designer);
  if (designer.empty()) return;
  flow.skip(1.5);
  flow.paragraph(style::note, designer, flow.left(), flow.width());
}

}  // namespace evencount::page
