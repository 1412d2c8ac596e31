#include "page/booklet.hpp"

#include <fmt/format.h>

#include <map>
#include <set>

#include "base/text.hpp"
#include "page/sections.hpp"
#include "proof/proof.hpp"

namespace evencount::page {
namespace {

Result<Done> check_proof(const project::Project& project) {
  const auto findings = proof::proof(project);
  if (!proof::has_errors(findings)) return Done{};
  constexpr std::size_t most_listed = 3;
  std::string listed;
  std::size_t errors = 0;
  for (const proof::Finding& finding : findings) {
    if (finding.severity != proof::Severity::error) continue;
    if (++errors <= most_listed)
      listed += fmt::format("{}{}: {}", listed.empty() ? "" : "; ", finding.where, finding.message);
  }
  if (errors > most_listed) listed += fmt::format("; and {} more", errors - most_listed);
  return Problem{ProblemCode::proof_failed, "proof", listed, "no errors before a booklet is made"};
}

Result<BandSheet> make_sheet(const project::Project& project, const project::Band& band) {
  auto plan = project::plan_of(band);
  if (!plan) return plan.problem();
  BandSheet sheet;
  sheet.band = &band;
  sheet.plan = std::move(*plan);
  sheet.gauge = project::gauge_of(project, band);
  sheet.words = wording::write_words(sheet.plan, project::letters_of(project), one_line(band.name));
  return sheet;
}

/// Bands of one technique are stitched alike: each moment is drawn with the first of them that has it.
void give_steps(std::vector<BandSheet>& bands) {
  std::map<std::pair<std::string, weave::MomentKind>, std::size_t> drawn_with;
  for (std::size_t i = 0; i < bands.size(); ++i) {
    BandSheet& sheet = bands[i];
    for (weave::Moment& moment : weave::moments(sheet.plan, sheet.thread.new_thread_rows)) {
      const std::size_t with = drawn_with.emplace(std::pair{sheet.plan.technique, moment.kind}, i).first->second;
      if (with == i)
        sheet.steps.push_back(std::move(moment));
      else if (sheet.steps_with.empty())
        sheet.steps_with = one_line(bands[with].band->name);
    }
  }
}

Result<Subject> make_subject(const project::Project& project, const BookletOptions& options) {
  auto supplies = project::supply_list(project);
  if (!supplies) return supplies.problem();
  const auto threads = project::band_threads(project);
  if (!threads) return threads.problem();
  Subject subject{project, options, {}, std::move(*supplies)};
  for (std::size_t i = 0; i < project.bands.size(); ++i) {
    auto sheet = make_sheet(project, project.bands[i]);
    if (!sheet) return sheet.problem();
    sheet->thread = (*threads)[i].use;
    subject.bands.push_back(std::move(*sheet));
  }
  if (options.steps) give_steps(subject.bands);
  return subject;
}

/// Every text must be showable before anything is written.
Result<Done> check_texts(const std::vector<drawing::Drawing>& pages, const Typesetter& typesetter) {
  std::set<std::pair<drawing::TextRole, std::string_view>> seen;
  for (const drawing::Drawing& page : pages)
    for (const drawing::Mark& mark : page.marks) {
      const auto* text = std::get_if<drawing::Text>(&mark);
      if (!text || !seen.emplace(text->role, text->text).second) continue;
      if (auto ok = typesetter.check({text->role, text->size_pt}, text->text); !ok) return ok;
    }
  return Done{};
}

}  // namespace

Result<Paper> parse_paper(std::string_view name) {
  const std::string lower = lower_ascii(name);
  if (lower == "a4") return Paper::a4;
  if (lower == "letter") return Paper::letter;
  return Problem{ProblemCode::unknown_name, "paper", quoted(name), "a4 or letter"};
}

Result<Booklet> make_booklet(const project::Project& project, const BookletOptions& options) {
  if (auto ok = check_proof(project); !ok) return ok.problem();
  const auto typesetter = Typesetter::open();
  if (!typesetter) return typesetter.problem();
  const auto subject = make_subject(project, options);
  if (!subject) return subject.problem();

  Booklet booklet{.info = {.title = one_line(project.title),
                           .author = one_line(project.designer),
                           .created_unix = options.created_unix}};
  auto& outline = booklet.info.outline;
  Flow flow(*typesetter, options.paper, booklet.info.title);
  put_cover(flow, *subject);
  flow.new_page();
  outline.push_back({"Supplies", flow.page()});
  put_supplies(flow, *subject);
  put_reading_help(flow, *subject);
  for (std::size_t i = 0; i < subject->bands.size(); ++i) {
    flow.new_page();
    outline.push_back({one_line(subject->bands[i].band->name), flow.page()});
    put_band(flow, *subject, i);
  }
  flow.new_page();
  outline.push_back({"Assembly, care and safety", flow.page()});
  put_closing(flow, *subject);
  booklet.pages = flow.finish();
  if (auto ok = check_texts(booklet.pages, *typesetter); !ok) return ok.problem();
  return booklet;
}

Result<std::string> booklet_pdf(const project::Project& project, const BookletOptions& options) {
  const auto booklet = make_booklet(project, options);
  if (!booklet) return booklet.problem();
  return to_pdf(booklet->pages, booklet->info);
}

}  // namespace evencount::page
