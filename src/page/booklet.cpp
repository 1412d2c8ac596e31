#include "page/booklet.hpp"

#include <set>

#include "base/text.hpp"
#include "page/sections.hpp"

namespace evencount::page {
namespace {

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
  if (auto ok = check_proof(project, "a booklet"); !ok) return ok.problem();
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
