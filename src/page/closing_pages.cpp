#include <fmt/format.h>

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

}  // namespace

void put_closing(Flow& flow, const Subject& subject) {
  const project::Project& project = subject.project;
  if (!project.assembly.empty()) {
    put_heading(flow, "Assembly", style::heading, 0);
    put_steps(flow, project.assembly);
  }
  put_heading(flow, "Care", style::subheading, 6);
  put_points(flow, care());
  put_heading(flow, "For your safety", style::subheading, 6);
  put_points(flow, cautions());
  if (one_line(project.terms).empty()) return;
  put_heading(flow, "Terms of use", style::subheading, 6);
  flow.paragraph(style::body, project.terms, flow.left(), flow.width());
  const std::string designer = one_line(project.designer);
  if (designer.empty()) return;
  flow.skip(1.5);
  flow.paragraph(style::note, designer, flow.left(), flow.width());
}

}  // namespace evencount::page
