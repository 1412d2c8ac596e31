#include "page/booklet.hpp"

#include <fmt/format.h>

#include <set>

#include "base/text.hpp"
#include "language/texts.hpp"
#include "page/read_back.hpp"
#include "page/sections.hpp"

namespace evencount::page {
namespace {

using language::Texts;

/// The sections in their order, with the outline.
class Maker {
 public:
  Maker(const Subject& subject, const Typesetter& typesetter, DocumentInfo& info)
      : subject_(subject),
        info_(info),
        flow_(typesetter, subject.language, subject.options.paper, info.title) {}

  std::vector<drawing::Drawing> make() {
    put_cover(flow_, subject_);
    flow_.new_page();
    const bool contents = subject_.bands.size() >= least_listed;
    if (contents) {
      reserve_contents();
      put_reading_help(flow_, subject_);
      flow_.new_page();
    }
    list(subject_.language.text(&Texts::supplies));
    put_supplies(flow_, subject_);
    if (!contents) put_reading_help(flow_, subject_);
    for (std::size_t i = 0; i < subject_.bands.size(); ++i) {
      flow_.new_page();
      list(one_line(subject_.bands[i].band->name));
      put_band(flow_, subject_, i);
    }
    flow_.new_page();
    section(&Texts::mounting, put_mounting);
    section(&Texts::stringing, put_stringing);
    section(subject_.project.assembly.empty() ? &Texts::finishing : &Texts::assembly, put_closing);
    if (contents) write_contents();
    return flow_.finish();
  }

 private:
  static constexpr std::size_t least_listed = 3;  ///< bands; fewer are found without a list

  void list(std::string_view title) { info_.outline.push_back({std::string(title), flow_.page()}); }

  /// A section of the last pages, listed where it begins if it has anything.
  void section(language::Text title, void (*put)(Flow&, const Subject&)) {
    const auto marks = [&] { return std::pair(flow_.page(), flow_.sheet().marks.size()); };
    const auto before = marks();
    put(flow_, subject_);
    if (marks() == before) return;
    // A section whose heading found no room has begun on the next page.
    const bool moved = flow_.sheet(before.first).marks.size() == before.second;
    info_.outline.push_back({std::string(subject_.language.text(title)), before.first + (moved ? 1 : 0)});
  }

  void reserve_contents() {
    contents_page_ = flow_.page();
    list(subject_.language.text(&Texts::contents));
    put_heading(flow_, subject_.language.text(&Texts::contents), style::heading, 0);
    flow_.skip(2);
    contents_y_ = flow_.y();
    const std::size_t lines = subject_.bands.size() + 5;
    pages_of_contents_ = 1 + (lines - 1) / lines_a_page();
    for (std::size_t page = 1; page < pages_of_contents_; ++page) flow_.new_page();
    const double used = line_mm * static_cast<double>(1 + (lines - 1) % lines_a_page());
    flow_.move_to(std::min(flow_.bottom(), contents_y_ + used));
  }

  [[nodiscard]] std::size_t lines_a_page() const {
    return static_cast<std::size_t>((flow_.bottom() - contents_y_) / line_mm);
  }

  void write_contents() {
    std::size_t line = 0;
    for (const OutlineEntry& entry : info_.outline) {
      if (entry.page <= contents_page_) continue;
      const std::size_t page = line / lines_a_page();
      if (page >= pages_of_contents_) return;
      const double baseline = contents_y_ + line_mm * static_cast<double>(line % lines_a_page()) + 4.2;
      put_line(flow_.sheet(contents_page_ + page), entry, baseline);
      ++line;
    }
  }

  void put_line(drawing::Drawing& sheet, const OutlineEntry& entry, double baseline_mm) {
    using namespace drawing;
    const std::string place = "page-" + std::to_string(entry.page + 1), number = std::to_string(entry.page + 1);
    const std::size_t first = sheet.marks.size();
    const auto text = [&](const Style& style, std::string words, double x, Align align) {
      sheet.marks.push_back(Text{.at = {x, baseline_mm}, .role = style.face.role, .size_pt = style.face.size_pt,
                                 .align = align, .ink = style.ink, .text = std::move(words)});
    };
    const double number_mm = flow_.typesetter().width_mm(style::body.face, number);
    text(style::body, flow_.typesetter().shortened(style::body.face, entry.title, flow_.width() - number_mm - 10),
         flow_.left(), Align::left);
    text(style::body, number, flow_.right(), Align::right);
    sheet.regions.push_back({Part::link, first, sheet.marks.size(), place});
    if (!placed_.insert(entry.page).second) return;
    Drawing& there = flow_.sheet(entry.page);
    there.regions.insert(there.regions.begin(), {Part::place, 0, there.marks.size(), place});
  }

  static constexpr double line_mm = 6.4;
  const Subject& subject_;
  DocumentInfo& info_;
  Flow flow_;
  std::size_t contents_page_ = 0, pages_of_contents_ = 0;
  double contents_y_ = 0;
  std::set<std::size_t> placed_;  ///< pages that are places already
};

}  // namespace

Result<Paper> parse_paper(std::string_view name) {
  const std::string lower = lower_ascii(name);
  if (lower == "a4") return Paper::a4;
  if (lower == "letter") return Paper::letter;
  return Problem{ProblemCode::unknown_name, "paper", quote(name), "a4 or letter"};
}

Result<Booklet> lay_out(const Subject& subject) {
  const auto typesetter = Typesetter::open();
  if (!typesetter) return typesetter.problem();
  const project::Project& project = subject.project;
  const BookletOptions& options = subject.options;
  Booklet booklet{.info = {.title = one_line(project.title),
                           .author = one_line(project.designer),
                           .language = std::string(options.language->tag),
                           .created_unix = options.created_unix}};
  booklet.pages = Maker(subject, *typesetter, booklet.info).make();
  return booklet;
}

namespace {

Result<Subject> proofed(const project::Project& project, const BookletOptions& options) {
  std::int64_t cells = 0;
  for (const project::Band& band : project.bands) cells += std::int64_t{band.chart.columns()} * band.chart.edge();
  if (cells > most_printed_cells)
    return Problem{ProblemCode::out_of_range, "booklet", fmt::format("charts of {} cells", cells),
                   fmt::format("at most {} in one booklet; print the bands in several", most_printed_cells)};
  if (auto ok = check_proof(project, "a booklet"); !ok) return ok.problem();
  return make_subject(project, options);
}

}  // namespace

Result<Booklet> make_booklet(const project::Project& project, const BookletOptions& options) {
  const auto subject = proofed(project, options);
  if (!subject) return subject.problem();
  return lay_out(*subject);
}

Result<PrintedBooklet> print_booklet(const project::Project& project, const BookletOptions& options) {
  const auto subject = proofed(project, options);
  if (!subject) return subject.problem();
  auto booklet = lay_out(*subject);
  if (!booklet) return booklet.problem();
  auto pdf = to_pdf(booklet->pages, booklet->info);
  if (!pdf) return pdf.problem();
  if (auto ok = read_back(*pdf, *subject); !ok) return ok.problem();
  return PrintedBooklet{std::move(*booklet), std::move(*pdf)};
}

Result<std::string> booklet_pdf(const project::Project& project, const BookletOptions& options) {
  auto printed = print_booklet(project, options);
  if (!printed) return printed.problem();
  return std::move(printed->pdf);
}

}  // namespace evencount::page
