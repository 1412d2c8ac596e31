#include <fmt/format.h>

#include <algorithm>

#include "drawing/step_drawing.hpp"
#include "page/along_markup.hpp"
#include "page/along_parts.hpp"

namespace evencount::page {
namespace {

/// A moment with the band it is drawn with, and all bands that are stitched so.
struct SharedStep {
  const Hand* hand = nullptr;
  weave::Moment moment;
  std::size_t drawn_with = 0;
  std::vector<std::size_t> bands;
};

/// Bands of one technique are stitched alike: each kind of moment is drawn with the first of them that has it.
class SharedSteps {
 public:
  void add(const Hand& hand, std::size_t band) {
    for (weave::Moment& moment : weave::moments(hand.plan, hand.thread.new_thread_rows)) {
      const auto is_same = [&](const SharedStep& step) {
        return step.hand->side == hand.side && step.hand->plan.technique == hand.plan.technique && step.moment.kind == moment.kind;
      };
      bool drawn_before = false;
      for (SharedStep& step : steps_) {
        if (!is_same(step) || step.drawn_with == band) continue;
        drawn_before = true;
        if (step.bands.back() != band) step.bands.push_back(band);
      }
      if (!drawn_before) steps_.push_back({&hand, std::move(moment), band, {band}});
    }
  }

  [[nodiscard]] const std::vector<SharedStep>& steps() const { return steps_; }

 private:
  std::vector<SharedStep> steps_;
};

/// A drawing program's numbers to a hundredth of a point, and without what is the default anyway: a third of the bytes.
std::string leaner(std::string_view svg) {
  constexpr std::size_t decimals = 2;
  std::string lean;
  const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
  while (!svg.empty()) {
    bool dropped = false;
    for (const std::string_view usual : {"stroke-opacity:1;", "fill-opacity:1;", "stroke-linecap:butt;", "fill-rule:nonzero;"}) {
      if (!svg.starts_with(usual)) continue;
      svg.remove_prefix(usual.size());
      dropped = true;
    }
    if (dropped) continue;
    const bool point = svg.front() == '.' && !lean.empty() && is_digit(lean.back());
    lean += svg.front();
    svg.remove_prefix(1);
    if (!point) continue;
    const auto digits = static_cast<std::size_t>(std::find_if_not(svg.begin(), svg.end(), is_digit) - svg.begin());
    lean += svg.substr(0, std::min(digits, decimals));
    svg.remove_prefix(digits);
  }
  return lean;
}

Result<std::string> figure(const Subject& subject, const SharedStep& step, const PageTexts& texts) {
  const bool left = step.hand->side == Side::left;
  drawing::Drawing picture = drawing::step_drawing(subject.project, step.hand->band, step.hand->plan, step.moment);
  if (left) picture = in_mirror(picture);
  const auto svg = to_svg(picture);
  if (!svg) return svg.problem();
  constexpr double pixels_per_mm = 96 / 25.4;  // CSS Values and Units, 6.2
  std::string bands;
  for (const std::size_t band : step.bands) bands += fmt::format("{}{}", bands.empty() ? "" : " ", band);
  const std::string with = filled(text_of(texts, "drawn_with"), [&](std::string_view) { return step.hand->band.name; });
  return fmt::format(
      "<figure data-hand=\"{}\" data-bands=\"{}\" data-with=\"{}\">\n<h3>{}</h3>\n<img alt=\"{}\" width=\"{:.0f}\" height=\"{:.0f}\" "
      "src=\"data:image/svg+xml;base64,{}\">\n<figcaption>{}<span class=\"with\"> {}</span></figcaption>\n</figure>\n",
      left ? "left" : "right", bands, step.drawn_with, shown(step.moment.title), escaped(text_of(texts, "diagram")),
      picture.width.mm() * pixels_per_mm, picture.height.mm() * pixels_per_mm, base64(leaner(*svg)),
      shown(left ? sides_changed(step.moment.text) : step.moment.text), shown(with));
}

}  // namespace

Result<std::string> steps_part(const Subject& subject, const std::vector<AlongBand>& bands, const PageTexts& texts) {
  SharedSteps shared;
  for (std::size_t i = 0; i < bands.size(); ++i) {
    shared.add(bands[i].right, i);
    if (bands[i].left) shared.add(*bands[i].left, i);
  }
  std::string html;
  for (const SharedStep& step : shared.steps()) {
    auto part = figure(subject, step, texts);
    if (!part) return part.problem();
    html += *part;
  }
  return html;
}

}  // namespace evencount::page
