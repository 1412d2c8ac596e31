#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/text.hpp"
#include "drawing/band_drawing.hpp"
#include "language/texts.hpp"
#include "page/along_hand.hpp"
#include "page/alternative.hpp"
#include "page/sections.hpp"

namespace evencount::page {
namespace {

using namespace drawing;
using language::Language;
using language::Texts;

constexpr std::size_t most_bands_shown = 10;
/// Of all bands together: a stretch of a long one is picture enough, and each bead is drawn with its shine.
constexpr int most_beads_shown = 4'000;
/// More than so many are too small for all of it to be seen.
constexpr int most_fine_beads = 2'000;

/// A title in the largest of a few sizes that keeps it to three lines.
void put_title(Flow& flow, std::string_view title) {
  constexpr std::array sizes_pt{46.0, 38.0, 30.0, 23.0, 18.0};
  for (const double size_pt : sizes_pt) {
    const Style style{{TextRole::title, size_pt}, 1.12 * size_pt * mm_per_pt, ink::accent};
    const auto lines = flow.wrap(style, title, flow.width());
    if (lines.size() > 3 && size_pt != sizes_pt.back()) continue;
    flow.put_lines(style, lines, flow.left());
    return;
  }
}

/// The bands of the hero picture, all upright or all lying, whichever lets them be larger.
struct Hero {
  std::vector<Drawing> pictures;
  std::vector<std::string> names;
  bool upright = true;
  double scale = 1;
};

constexpr double name_height_mm = 8.5, panel_inset_mm = 8, largest_scale = 2.6;

double largest_fit(const std::vector<Drawing>& pictures, double width_mm, double height_mm, bool upright) {
  double widest = 0, tallest = 0;
  for (const Drawing& picture : pictures) {
    widest = std::max(widest, upright ? picture.width.mm() : picture.height.mm());
    tallest = std::max(tallest, upright ? picture.height.mm() : picture.width.mm());
  }
  const auto count = static_cast<double>(pictures.size());
  // Each band has a slot; nearly a third of it stays empty, so that the bands have air about them.
  const double across = upright ? 0.70 * width_mm / count / widest : width_mm / widest;
  const double down =
      upright ? (height_mm - name_height_mm) / tallest : (0.8 * height_mm / count - name_height_mm) / tallest;
  return std::min({across, down, largest_scale});
}

Hero make_hero(const Subject& subject, double width_mm, double height_mm) {
  Hero hero;
  const std::size_t shown = std::min(most_bands_shown, subject.bands.size());
  const auto bands = std::span(subject.bands).first(shown);
  const auto steps_of = [&](const BandSheet& sheet) {
    const int most = most_beads_shown / std::max(1, static_cast<int>(shown)) / std::max(1, sheet.plan.lattice.columns);
    return std::min(sheet.plan.lattice.edge, std::max(2, most));
  };
  int beads = 0;
  for (const BandSheet& sheet : bands) beads += steps_of(sheet) * sheet.plan.lattice.columns;
  for (const BandSheet& sheet : bands) {
    const Drawing picture = band_drawing(subject.project, sheet.worked, sheet.plan,
                                         {.most_steps = steps_of(sheet), .fine = beads <= most_fine_beads});
    hero.pictures.push_back(sheet.left_handed ? in_mirror(picture) : picture);
    hero.names.push_back(one_line(sheet.band->name));
  }
  const double upright = largest_fit(hero.pictures, width_mm, height_mm, true);
  const double lying = largest_fit(hero.pictures, width_mm, height_mm, false);
  hero.upright = upright >= lying;
  hero.scale = std::max({upright, lying, 0.01});
  return hero;
}

/// The height at which the panel has even air about its bands.
double panel_height(const Subject& subject, double width_mm, double most_mm) {
  if (const auto& cover = subject.options.cover) return width_mm * cover->height / cover->width;
  const Hero hero = make_hero(subject, width_mm - 2 * panel_inset_mm, most_mm - 2 * panel_inset_mm);
  double taken_mm = 0;
  for (const Drawing& picture : hero.pictures) {
    const double height_mm =
        hero.scale * (hero.upright ? picture.height : picture.width).mm() + name_height_mm;
    taken_mm = hero.upright ? std::max(taken_mm, height_mm) : taken_mm + 1.25 * height_mm;
  }
  constexpr double extra_air_mm = 22;
  return taken_mm + 2 * panel_inset_mm + extra_air_mm;
}

void put_name(Flow& flow, const std::string& name, Point centre_top, double width_mm) {
  auto lines = flow.wrap(style::caption, name, width_mm);
  if (lines.size() > 2) lines = {flow.typesetter().shortened(style::caption.face, name, width_mm)};
  double y = centre_top.y_mm + 2.6;
  for (std::string& line : lines) {
    flow.put_text(style::caption, std::move(line), {centre_top.x_mm, y}, Align::centre);
    y += 3.5;
  }
}

/// The picture as large as the panel lets it be.
void put_picture(Flow& flow, const std::shared_ptr<const Pixels>& pixels, double height_mm) {
  const double aspect = static_cast<double>(pixels->width) / pixels->height;
  const double width_mm = std::min(flow.width(), aspect * height_mm);
  flow.put(Picture{.corner = {flow.left() + (flow.width() - width_mm) / 2, flow.y() + (height_mm - width_mm / aspect) / 2},
                   .width_mm = width_mm,
                   .height_mm = width_mm / aspect,
                   .pixels = pixels});
}

void put_hero(Flow& flow, const Subject& subject, double height_mm) {
  const double top = flow.y();
  if (subject.options.cover) {
    flow.open(Part::figure, alternative_of_piece(subject));
    put_picture(flow, subject.options.cover, height_mm);
    flow.close();
    flow.move_to(top + height_mm);
    return;
  }
  flow.open(Part::figure, alternative_of_piece(subject));
  flow.put(Rectangle{.corner = {flow.left(), top},
                     .width_mm = flow.width(),
                     .height_mm = height_mm,
                     .radius_mm = 1.6,
                     .fill = ink::panel});
  const double inner_width = flow.width() - 2 * panel_inset_mm, inner_height = height_mm - 2 * panel_inset_mm;
  const Hero hero = make_hero(subject, inner_width, inner_height);
  const auto count = static_cast<double>(hero.pictures.size());
  for (std::size_t i = 0; i < hero.pictures.size(); ++i) {
    const Drawing picture = hero.upright ? hero.pictures[i] : turned_left(hero.pictures[i]);
    const double width = hero.scale * picture.width.mm(), height = hero.scale * picture.height.mm();
    const double slot = (hero.upright ? inner_width : inner_height) / count;
    const double middle = slot * (static_cast<double>(i) + 0.5);
    const double x = flow.left() + panel_inset_mm + (hero.upright ? middle : inner_width / 2) - width / 2;
    // Names hang below the pictures; by eye they weigh half of their height.
    const double y =
        top + panel_inset_mm + (hero.upright ? inner_height / 2 : middle) - (height + name_height_mm / 2) / 2;
    place(flow.sheet(), picture, {x, y}, hero.scale);
    put_name(flow, hero.names[i], {x + width / 2, y + height + 2.2}, hero.upright ? slot - 1.5 : inner_width);
  }
  flow.close();
  flow.move_to(top + height_mm);
}

struct Fact {
  std::string label, text;
};

/// The finished bands by their size, each size once.
std::string bands_by_size(const Subject& subject) {
  const Language& language = subject.language;
  std::vector<std::pair<std::string, std::int64_t>> sizes;
  for (const BandSheet& sheet : subject.bands) {
    const std::string size = band_size(language, sheet);
    auto found = std::find_if(sizes.begin(), sizes.end(), [&](const auto& s) { return s.first == size; });
    if (found == sizes.end()) found = sizes.insert(sizes.end(), {size, 0});
    found->second += sheet.band->copies;
  }
  std::string text;
  for (std::size_t i = 0; i < sizes.size() && i < 4; ++i) {
    const auto& [size, count] = sizes[i];
    text += (i ? "\n" : "") +
            language.say(count == 1 ? &Texts::bands_of_size : &Texts::bands_each_of_size,
                         {{"bands", language.say(&Texts::bands_counted, {language.counted("n", count)})}, {"size", size}});
  }
  if (sizes.size() > 4) text += "\n" + language.say(&Texts::other_sizes);
  return text;
}

/// "XS, S, M and L".
std::string sizes_offered(const Subject& subject) {
  if (!subject.strung || subject.strung->sizes.size() < 2) return {};
  std::vector<std::string> names;
  for (const auto& size : subject.strung->sizes) names.push_back(one_line(size.fit.wearer.name));
  return subject.language.list(names);
}

std::vector<Fact> facts_of(const Subject& subject) {
  const Language& language = subject.language;
  std::vector<Fact> facts;
  const auto add = [&](language::Text label, std::string text) {
    if (!text.empty()) facts.push_back({std::string(language.text(label)), std::move(text)});
  };
  add(&Texts::finished_size, one_line(subject.project.finished_size));
  add(facts.empty() ? &Texts::size : &Texts::bands, bands_by_size(subject));
  add(&Texts::sizes_offered, sizes_offered(subject));
  const auto colours = static_cast<std::int64_t>(subject.supplies.beads.beads.size());
  add(&Texts::beads,
      language.say(&Texts::beads_in_colours,
                   {{"beads", language.say(&Texts::beads_counted, {language.counted("n", beads_in_all(subject))})},
                    {"colours", language.say(&Texts::colours_counted, {language.counted("n", colours)})}}));
  if (subject.bands.size() > most_bands_shown && !subject.options.cover)
    add(&Texts::in_the_picture,
        language.say(&Texts::first_bands_shown, {{"shown", most_bands_shown}, {"n", subject.bands.size()}}));
  return facts;
}

constexpr Style summary_style{{TextRole::body, 12.5}, 5.9}, fact_style{{TextRole::body, 11}, 4.9};

double height_of(const Flow& flow, const std::vector<Fact>& facts, double width_mm) {
  double height = 0;
  for (const Fact& fact : facts)
    height += style::label.leading_mm + 0.6 + flow.height_of(fact_style, fact.text, width_mm) + 2.6;
  return height - 2.6;
}

void put_facts(Flow& flow, const std::vector<Fact>& facts, double left_mm, double width_mm) {
  for (const Fact& fact : facts) {
    flow.need(style::label.leading_mm + 0.6 + fact_style.leading_mm);
    flow.put_lines(style::label, {fact.label}, left_mm);
    flow.skip(0.6);
    flow.paragraph(fact_style, fact.text, left_mm, width_mm);
    flow.skip(2.6);
  }
}

void put_cover_head(Flow& flow, const project::Project& project, bool left_handed) {
  const std::string designer = one_line(project.designer);
  if (!designer.empty()) {
    flow.paragraph(Style{{TextRole::label_bold, 9}, 4.6, ink::quiet}, designer, flow.left(), flow.width());
    flow.skip(2);
  }
  put_title(flow, one_line(project.title));
  if (const std::string subtitle = one_line(project.subtitle); !subtitle.empty()) {
    flow.skip(1.5);
    flow.paragraph(Style{{TextRole::body_italic, 17}, 7.4, ink::text}, subtitle, flow.left(), flow.width());
  }
  if (left_handed) {
    flow.skip(2);
    flow.paragraph(Style{{TextRole::label_bold, 9}, 4.6, ink::accent},
                   flow.language().text(&Texts::left_handed_edition), flow.left(), flow.width());
  }
  flow.skip(9);
}

/// Long texts: one after the other, over as many pages as they take.
void put_texts_below(Flow& flow, const Subject& subject, const std::vector<Fact>& facts) {
  if (!one_line(subject.project.summary).empty()) {
    flow.paragraph(summary_style, subject.project.summary, flow.left(), flow.width());
    flow.skip(4);
  }
  put_facts(flow, facts, flow.left(), flow.width());
}

}  // namespace

void put_cover(Flow& flow, const Subject& subject) {
  const project::Project& project = subject.project;
  const auto facts = facts_of(subject);
  constexpr double gutter = 10, gap = 10, smallest_panel = 70;
  const double side_width = 0.36 * flow.width(), main_width = flow.width() - side_width - gutter;
  const bool has_summary = !one_line(project.summary).empty();
  const double summary_height = has_summary ? flow.height_of(summary_style, project.summary, main_width) : 0;
  const double text_height = std::max(summary_height, height_of(flow, facts, side_width));

  Flow trial = flow;
  put_cover_head(trial, project, subject.options.left_handed);
  const double panel_room = trial.room() - gap - text_height;
  if (trial.page() != flow.page() || panel_room < smallest_panel) {
    put_cover_head(flow, project, subject.options.left_handed);
    flow.need(smallest_panel);
    put_hero(flow, subject, smallest_panel);
    flow.skip(gap);
    put_texts_below(flow, subject, facts);
    return;
  }
  const double panel = std::min(panel_room, panel_height(subject, flow.width(), panel_room));
  // What is left over goes above the title, as far as it looks meant.
  flow.skip(std::min(panel_room - panel, 16.0));
  put_cover_head(flow, project, subject.options.left_handed);
  put_hero(flow, subject, panel);
  flow.skip(gap);
  const double top = flow.y();
  if (has_summary) flow.paragraph(summary_style, project.summary, flow.left(), main_width);
  flow.move_to(top);
  put_facts(flow, facts, has_summary ? flow.left() + main_width + gutter : flow.left(), side_width);
}

}  // namespace evencount::page
