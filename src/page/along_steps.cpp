#include <fmt/format.h>

#include <algorithm>

#include "drawing/step_drawing.hpp"
#include "language/texts.hpp"
#include "page/along_markup.hpp"
#include "page/along_parts.hpp"

namespace evencount::page {
namespace {

using language::Texts;

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
  explicit SharedSteps(const language::Language& language) : language_(language) {}

  void add(const Hand& hand, std::size_t band) {
    for (weave::Moment& moment : weave::moments(hand.plan, hand.thread.new_thread_rows,
                                                 {&language_, hand.side == Side::left})) {
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
  const language::Language& language_;
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

Result<std::string> figure(const Subject& subject, const SharedStep& step) {
  const language::Language& language = subject.language;
  const bool left = step.hand->side == Side::left;
  drawing::Drawing picture = drawing::step_drawing(subject.project, step.hand->band, step.hand->plan, step.moment,
                                                   {.language = &language});
  if (left) picture = in_mirror(picture);
  const auto svg = to_svg(picture);
  if (!svg) return svg.problem();
  constexpr double pixels_per_mm = 96 / 25.4;  // CSS Values and Units, 6.2
  std::string bands;
  for (const std::size_t band : step.bands) bands += fmt::format("{}{}", bands.empty() ? "" : " ", band);
  const std::string with = language.say(&Texts::drawn_with, {{"band", step.hand->band.name}});
  return fmt::format(
      "<figure data-hand=\"{}\" data-bands=\"{}\" data-with=\"{}\">\n<h3>{}</h3>\n<img alt=\"{}\" width=\"{:.0f}\" height=\"{:.0f}\" "
      "src=\"data:image/svg+xml;base64,{}\">\n<figcaption>{}<span class=\"with\"> {}</span></figcaption>\n</figure>\n",
      left ? "left" : "right", bands, step.drawn_with, shown(step.moment.title), escaped(language.text(&Texts::diagram)),
      picture.width.mm() * pixels_per_mm, picture.height.mm() * pixels_per_mm, base64(leaner(*svg)),
      shown(step.moment.text), shown(with));
}

}  // namespace

Result<std::string> steps_part(const Subject& subject, const std::vector<AlongBand>& bands) {
  SharedSteps shared(subject.language);
  for (std::size_t i = 0; i < bands.size(); ++i) {
    shared.add(bands[i].right, i);
    if (bands[i].left) shared.add(*bands[i].left, i);
  }
  std::string html;
  for (const SharedStep& step : shared.steps()) {
    auto part = figure(subject, step);
    if (!part) return part.problem();
    html += *part;
  }
  return html;
}

}  // namespace evencount::page
