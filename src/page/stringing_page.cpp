#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "drawing/strand_drawing.hpp"
#include "language/texts.hpp"
#include "page/alternative.hpp"
#include "page/sections.hpp"

namespace evencount::page {
namespace {

using namespace drawing;
using language::Language;
using language::Texts;
using strand::ElementKind;

/// Like pieces one after another.
struct Stretch {
  strand::Piece piece;
  int count = 0;
};

std::vector<Stretch> stretches_of(const std::vector<strand::Piece>& pieces) {
  std::vector<Stretch> stretches;
  for (const strand::Piece& piece : pieces) {
    if (!stretches.empty() && stretches.back().piece == piece)
      ++stretches.back().count;
    else
      stretches.push_back({piece, 1});
  }
  return stretches;
}

/// What is strung, in order, as a maker does it.
class Teller {
 public:
  Teller(const strand::Strung& strung, const Language& language) : strung_(strung), language_(language) {}

  [[nodiscard]] std::vector<std::string> tell(const std::vector<strand::Piece>& pieces) const {
    const auto stretches = stretches_of(pieces);
    std::vector<std::string> told;
    for (std::size_t i = 0; i < stretches.size();) {
      const std::size_t end = end_of_chain(stretches, i);
      told.push_back(end > i + 1 ? chain(stretches, i, end) : one(stretches[i]));
      i = end;
    }
    return told;
  }

  [[nodiscard]] std::string name_of(int element) const {
    const strand::Element& found = strung_.elements[static_cast<std::size_t>(element)];
    return supply_name(language_, found.name.empty() ? found.id : found.name);
  }

 private:
  [[nodiscard]] bool is_form(const Stretch& stretch) const {
    return stretch.count == 1 &&
           strung_.elements[static_cast<std::size_t>(stretch.piece.element)].kind == ElementKind::form;
  }

  /// Forms with the same things between them, at least three of them; else one stretch.
  [[nodiscard]] std::size_t end_of_chain(const std::vector<Stretch>& stretches, std::size_t first) const {
    if (!is_form(stretches[first])) return first + 1;
    std::size_t end = first + 1;
    while (end + 1 < stretches.size() && is_form(stretches[end + 1]) && !is_form(stretches[end]) &&
           stretches[end].piece == stretches[first + 1].piece && stretches[end].count == stretches[first + 1].count)
      end += 2;
    return end >= first + 5 ? end : first + 1;
  }

  [[nodiscard]] std::string one(const Stretch& stretch) const {
    const bool each = strand::beads_of(strung_, stretch.piece) == 2;
    return language_.say(each ? &Texts::string_each_cord : &Texts::string_piece,
                         {{"n", stretch.count}, {"name", name_of(stretch.piece.element)}});
  }

  [[nodiscard]] std::string chain(const std::vector<Stretch>& stretches, std::size_t first, std::size_t end) const {
    std::vector<std::string> names;
    for (std::size_t i = first; i < end; i += 2) names.push_back(name_of(stretches[i].piece.element));
    return language_.list(names) + "; " +
           language_.say(&Texts::string_between_each, {{"what", one(stretches[first + 1])}});
  }

  const strand::Strung& strung_;
  const Language& language_;
};

std::vector<std::string> steps_of(const Subject& subject, const project::StrungSize& size) {
  const strand::Strung& strung = subject.strung->strung;
  const Language& language = subject.language;
  const Teller teller(strung, language);
  std::vector<std::string> steps;
  const auto cut = [&](std::size_t i) { return metres_text(language, size.cords[i].length.cut); };
  if (size.cords.size() == 1) steps.push_back(language.say(&Texts::cut_one_cord, {{"length", cut(0)}}));
  if (size.cords.size() == 2)
    steps.push_back(cut(0) == cut(1)
                        ? language.say(&Texts::cut_two_equal_cords, {{"length", cut(0)}})
                        : language.say(&Texts::cut_two_cords, {{"first", cut(0)}, {"second", cut(1)}}));
  for (std::string& told : teller.tell(strand::pieces_of(strung, size.fit.best.counts))) steps.push_back(std::move(told));
  steps.push_back(strung.closing >= 0 ? language.say(&Texts::string_close, {{"name", teller.name_of(strung.closing)}})
                                      : language.say(&Texts::string_knot));
  return steps;
}

/// The layout to true size in rows as long as the page is wide, smaller only where a single piece is longer.
void put_layout(Flow& flow, const Subject& subject, const project::StrungSize& size) {
  const Drawing flat = strand_flat(subject.project, subject.strung->strung, size.fit, size.curve,
                                   {.longest_row = millimetres(flow.width() - 4), .heading = false});
  const double most_mm = flow.bottom() - flow.top() - 30;
  const double scale = std::min({1.0, flow.width() / flat.width.mm(), most_mm / flat.height.mm()});
  const Language& language = subject.language;
  const bool true_size = scale > 0.999;
  const std::string caption =
      language.say(true_size ? &Texts::stringing_to_scale : &Texts::stringing_scaled,
                   {{"percent", language.number(std::floor(100 * scale), 0)},
                    {"size", one_line(size.fit.wearer.name)},
                    {"length", language.both_units(size.fit.best.length)}});
  flow.need(scale * flat.height.mm() + 2 * style::caption.leading_mm + 4);
  flow.put_figure(flat, {flow.left(), flow.y()}, alternative_of_piece(subject), scale);
  flow.skip(scale * flat.height.mm() + 2);
  flow.paragraph(style::caption, caption, flow.left(), flow.width());
  if (!size.curve.extras.empty())
    flow.paragraph(style::caption, language.text(&Texts::stringing_extra), flow.left(), flow.width());
  flow.skip(4);
}

std::vector<int> counts_in(const strand::Strung& strung, const strand::Counts& counts, std::size_t group) {
  std::vector<int> found;
  for (std::size_t i = 0; i < counts.size(); ++i)
    if (static_cast<std::size_t>(strung.runs[i].group) == group) found.push_back(counts[i]);
  return found;
}

/// "21" for all alike, else "21 / 22".
std::string counts_text(const std::vector<int>& counts) {
  const bool alike = std::all_of(counts.begin(), counts.end(), [&](int c) { return c == counts.front(); });
  std::string text;
  for (const int count : counts) {
    text += (text.empty() ? "" : " / ") + fmt::format("{}", count);
    if (alike) break;
  }
  return text;
}

using Table = std::vector<std::vector<std::string>>;
constexpr double table_row_mm = 6.6;

/// A length in a column whose lengths all have so many decimals.
std::string measure_text(const Language& language, Length length, int decimals) {
  return language.say(&Texts::both_units, {{"mm", language.fixed(length.mm(), decimals)}, {"in", language.fixed(length.inches(), 2)}});
}

/// None where all are whole millimetres.
template <typename LengthOf>
int decimals_of(const std::vector<project::StrungSize>& sizes, LengthOf length_of) {
  return std::all_of(sizes.begin(), sizes.end(), [&](const project::StrungSize& size) {
    const double mm = length_of(size).mm();
    return std::abs(mm - std::round(mm)) < 0.05;
  }) ? 0 : 1;
}

Table sizing_table(const Subject& subject) {
  const strand::Strung& strung = subject.strung->strung;
  const Language& language = subject.language;
  const Teller teller(strung, language);
  const strand::Worn worn = subject.strung->sizes.front().fit.wearer.worn;
  Table table(1);
  const auto head = [&](language::Text text) { table[0].emplace_back(language.text(text)); };
  head(&Texts::column_size);
  if (worn != strand::Worn::length)
    head(worn == strand::Worn::wrist ? &Texts::column_wrist : &Texts::column_neck);
  head(&Texts::column_length);
  for (const strand::Group& group : strung.groups)
    table[0].push_back(group.name.starts_with("run ") && !group.unit.empty() ? teller.name_of(group.unit.front().element)
                                                                             : one_line(group.name));
  const auto& sizes = subject.strung->sizes;
  const int measure_decimals = decimals_of(sizes, [](const project::StrungSize& size) { return size.fit.wearer.measure; });
  const int length_decimals = decimals_of(sizes, [](const project::StrungSize& size) { return size.fit.best.length; });
  for (const project::StrungSize& size : sizes) {
    std::vector<std::string> row{one_line(size.fit.wearer.name)};
    if (worn != strand::Worn::length) row.push_back(measure_text(language, size.fit.wearer.measure, measure_decimals));
    row.push_back(measure_text(language, size.fit.best.length, length_decimals));
    for (std::size_t g = 0; g < strung.groups.size(); ++g)
      row.push_back(counts_text(counts_in(strung, size.fit.best.counts, g)));
    table.push_back(std::move(row));
  }
  return table;
}

/// As many columns as there is room for; each as wide as its widest text, at most a third of the page.
std::vector<double> widths_of(const Flow& flow, const Table& table) {
  std::vector<double> widths;
  for (std::size_t column = 0; column < table[0].size(); ++column) {
    double widest = 8;
    for (const auto& row : table)
      widest = std::max(widest, flow.typesetter().width_mm(style::table_bold.face, row[column]) + 6);
    widths.push_back(std::min(widest, flow.width() / 3));
  }
  return widths;
}

/// A row of a table: the first column, then `first` to `end`. Counts are of no use in part, so cells run on over lines.
void put_table_row(Flow& flow, const std::vector<std::string>& row, const std::vector<double>& widths, std::size_t first,
                   std::size_t end, bool head) {
  std::vector<std::size_t> columns{0};
  for (std::size_t column = first; column < end; ++column) columns.push_back(column);
  std::vector<std::vector<std::string>> cells;
  std::size_t most = 1;
  const auto style_of = [&](std::size_t column) { return head ? style::label : column == 0 ? style::table_bold : style::table; };
  for (const std::size_t column : columns) {
    cells.push_back(flow.wrap(style_of(column), row[column], widths[column] - 2));
    most = std::max(most, cells.back().size());
  }
  const double leading = style::table.leading_mm, height = table_row_mm + static_cast<double>(most - 1) * leading;
  flow.need(height);
  flow.open(Part::paragraph);
  double x = flow.left();
  for (std::size_t i = 0; i < columns.size(); ++i) {
    for (std::size_t line = 0; line < cells[i].size(); ++line)
      flow.put_text(style_of(columns[i]), cells[i][line], {x, flow.y() + 4.4 + static_cast<double>(line) * leading});
    x += widths[columns[i]];
  }
  flow.close();
  flow.skip(height);
  flow.rule(flow.left(), std::min(flow.right(), x), head ? ink::accent : ink::rule, head ? 0.3 : 0.2);
}

void put_table(Flow& flow, const Table& table) {
  const auto widths = widths_of(flow, table);
  for (std::size_t first = 1, end = first; first < table[0].size(); first = end) {
    double taken = widths[0];
    for (end = first; end < table[0].size() && (end == first || taken + widths[end] <= flow.width()); ++end)
      taken += widths[end];
    // On one page where a page holds it.
    const double whole_mm = static_cast<double>(table.size()) * table_row_mm;
    flow.need(whole_mm <= flow.bottom() - flow.top() ? whole_mm : 4 * table_row_mm);
    for (std::size_t i = 0; i < table.size(); ++i) put_table_row(flow, table[i], widths, first, end, i == 0);
    flow.skip(3);
  }
}

}  // namespace

void put_mounting(Flow& flow, const Subject& subject) {
  bool round_a_form = false, fixed = false, sliding = false;
  for (const BandSheet& sheet : subject.bands) {
    if (!sheet.band->form) continue;
    const auto closure = sheet.plan.closure;
    round_a_form = round_a_form || closure == weave::Closure::zip || closure == weave::Closure::sew;
    (sheet.band->use == form::Use::sliding ? sliding : fixed) = true;
  }
  std::vector<std::string> points;
  const auto add = [&](bool seen, language::Text text) {
    if (seen) points.emplace_back(subject.language.text(text));
  };
  add(round_a_form, &Texts::mount_round);
  add(fixed, &Texts::mount_fixed);
  add(sliding, &Texts::mount_sliding);
  if (points.empty()) return;
  put_heading(flow, subject.language.text(&Texts::mounting), style::heading, 9);
  put_points(flow, points);
}

void put_stringing(Flow& flow, const Subject& subject) {
  if (!subject.strung) return;
  const auto& sizes = subject.strung->sizes;
  const auto chosen = std::find_if(sizes.begin(), sizes.end(), [&](const project::StrungSize& size) {
    return size.fit.wearer.name == subject.supplies.size;
  });
  const project::StrungSize& size = chosen == sizes.end() ? sizes[sizes.size() / 2] : *chosen;
  put_heading(flow, subject.language.text(&Texts::stringing), style::heading, 9);
  put_layout(flow, subject, size);
  put_numbered(flow, steps_of(subject, size));
  if (sizes.size() < 2) return;
  const Table table = sizing_table(subject);
  const double whole_mm = 6 + style::subheading.leading_mm + 2 + static_cast<double>(table.size()) * table_row_mm +
                          3 + style::caption.leading_mm;
  if (whole_mm < flow.bottom() - flow.top()) flow.need(whole_mm);
  put_heading(flow, subject.language.text(&Texts::sizing_table), style::subheading, 6);
  put_table(flow, table);
  if (!subject.strung->strung.groups.empty())
    flow.paragraph(style::caption, subject.language.text(&Texts::sizing_help), flow.left(), flow.width());
}

}  // namespace evencount::page
