#include <fmt/format.h>

#include <array>

#include "language/texts.hpp"
#include "page/sections.hpp"

namespace evencount::page {

using namespace drawing;
using language::Language;
using language::Texts;

namespace {

constexpr std::array<language::Text, 3> care_points{&Texts::care_1, &Texts::care_2, &Texts::care_3};
constexpr std::array<language::Text, 3> finishing_points{&Texts::finishing_1, &Texts::finishing_2, &Texts::finishing_3};

// What comes before anything said here stands first. Small parts: 16 CFR 1501 and EN 71-1. Nickel, lead and cadmium: EU REACH,
// annex XVII, entries 27, 63 and 23. Glue and glass: common practice, no source.
constexpr std::array<language::Text, 5> caution_points{&Texts::caution_1, &Texts::caution_2, &Texts::caution_3,
                                                       &Texts::caution_4, &Texts::caution_5};

std::vector<std::string> said(const Language& language, std::span<const language::Text> texts) {
  std::vector<std::string> all;
  for (const language::Text text : texts) all.emplace_back(language.text(text));
  return all;
}

constexpr Style small{{TextRole::label, 8}, 4.1, ink::quiet};

std::string read_back_text(const Subject& subject) {
  const Language& language = subject.language;
  const auto bands = static_cast<std::int64_t>(subject.bands.size());
  return language.say(
      &Texts::read_back_text,
      {language.counted("n", bands),
       {"beads", language.say(&Texts::beads_counted, {language.counted("n", beads_in_all(subject))})}});
}

double read_back_height(const Flow& flow, const Subject& subject) {
  return 7 + 2.5 + style::label.leading_mm + flow.height_of(small, read_back_text(subject), flow.width()) +
         small.leading_mm + 0.5;
}

/// That the file was read back, and when and with what it was made. What is said here is true of every file that is given out:
/// print_booklet reads it and gives none when it isn't.
void put_read_back(Flow& flow, const Subject& subject) {
  const Language& language = subject.language;
  const std::string text = read_back_text(subject);
  const std::string made = subject.options.created_unix
                               ? language.say(&Texts::made_on, {{"date", language.date(*subject.options.created_unix)}})
                               : language.say(&Texts::made_with);
  flow.need(read_back_height(flow, subject));
  flow.skip(7);
  flow.rule(flow.left(), flow.right());
  flow.skip(2.5);
  flow.paragraph(style::label, language.text(&Texts::read_back), flow.left(), flow.width());
  flow.paragraph(small, text, flow.left(), flow.width());
  flow.paragraph(small, made, flow.left(), flow.width());
}

}  // namespace

void put_heading(Flow& flow, std::string_view heading, const Style& style, double before_mm) {
  if (flow.y() > flow.top() + 1) flow.skip(before_mm);
  flow.need(style.leading_mm + 3 * style::body.leading_mm);
  flow.paragraph(style, heading, flow.left(), flow.width());
  flow.skip(0.12 * style.face.size_pt);
}

void put_numbered(Flow& flow, const std::vector<std::string>& steps, const Spacing& spacing) {
  constexpr double indent = 10;
  const Style number{{TextRole::heading, 15}, spacing.body.leading_mm, ink::accent};
  for (std::size_t i = 0; i < steps.size(); ++i) {
    flow.need(2 * spacing.body.leading_mm);
    flow.open(Part::paragraph);
    flow.put_text(number, fmt::format("{}", i + 1), {flow.left() + indent - 4, flow.y() + 4.1}, Align::right);
    const std::size_t page = flow.page();
    flow.paragraph(spacing.body, steps[i], flow.left() + indent, flow.width() - indent);
    if (flow.page() == page) flow.close();
    flow.skip(spacing.after_step_mm);
  }
}

void put_points(Flow& flow, const std::vector<std::string>& points, const Spacing& spacing) {
  constexpr double indent = 5;
  for (const std::string& point : points) {
    flow.need(std::min(2 * spacing.body.leading_mm, flow.height_of(spacing.body, point, flow.width() - indent)));
    flow.put(Circle{.centre = {flow.left() + 1.2, flow.y() + 2.75}, .radius_mm = 0.55, .fill = ink::accent});
    flow.paragraph(spacing.body, point, flow.left() + indent, flow.width() - indent);
    flow.skip(spacing.after_point_mm);
  }
}

std::span<const language::Text> care() {
  return care_points;
}

std::span<const language::Text> cautions() {
  return caution_points;
}

namespace {

void put_closing_spaced(Flow& flow, const Subject& subject, const Spacing& spacing) {
  const project::Project& project = subject.project;
  const Language& language = subject.language;
  const auto section = [&](language::Text heading, std::span<const language::Text> points) {
    put_heading(flow, language.text(heading), style::subheading, spacing.before_heading_mm);
    put_points(flow, said(language, points), spacing);
  };
  if (!project.assembly.empty()) {
    put_heading(flow, language.text(&Texts::assembly), style::heading, 1.5 * spacing.before_heading_mm);
    put_numbered(flow, project.assembly, spacing);
  }
  section(&Texts::finishing, finishing_points);
  section(&Texts::care, care());
  section(&Texts::safety, cautions());
  if (!one_line(project.terms).empty()) {
    // On a page with what follows, where that leaves no scrap for the last one.
    const double terms = spacing.before_heading_mm + style::subheading.leading_mm + 2 +
                         flow.height_of(spacing.body, project.terms, flow.width()) + 1.5 + style::note.leading_mm +
                         read_back_height(flow, subject);
    if (terms < flow.bottom() - flow.top()) flow.need(terms);
    put_heading(flow, language.text(&Texts::terms), style::subheading, spacing.before_heading_mm);
    flow.paragraph(spacing.body, project.terms, flow.left(), flow.width());
    if (const std::string designer = one_line(project.designer); !designer.empty()) {
      flow.skip(1.5);
      flow.paragraph(style::note, designer, flow.left(), flow.width());
    }
  }
  put_read_back(flow, subject);
}

}  // namespace

void put_closing(Flow& flow, const Subject& subject) {
  const auto last_page = [&](const Spacing& spacing) {
    Flow trial = flow;
    put_closing_spaced(trial, subject, spacing);
    return trial.page();
  };
  const bool saves_a_page = last_page(close_spacing) < last_page(usual_spacing);
  put_closing_spaced(flow, subject, saves_a_page ? close_spacing : usual_spacing);
}

}  // namespace evencount::page
