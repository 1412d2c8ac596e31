#include <fmt/ostream.h>

#include "app/document_date.hpp"
#include "app/files.hpp"
#include "app/project_file.hpp"
#include "app/verbs.hpp"
#include "base/text.hpp"
#include "page/labels.hpp"
#include "project/supply_list_cost.hpp"

namespace evencount::app {
namespace {

/// The retail price of one kit by the project's own rule, or the last of the published ones; empty where nothing has a price.
Result<std::string> reckoned_price(const project::Project& project, const page::KitOptions& options) {
  const std::vector<project::Project> projects{project};
  const auto settings = project::settings_of(projects);
  const auto list =
      project::collection_supplies(projects, {1, {}, settings.currency, false, options.size});
  if (!list) return list.problem();
  const auto use = project::piece_use(projects, *list);
  if (!use) return use.problem();
  const auto sheet = materials::cost_sheet(*use, settings);
  if (!sheet) return sheet.problem();
  for (auto price = sheet->prices.rbegin(); price != sheet->prices.rend(); ++price)
    if (price->retail) return to_text(Money{*price->retail, sheet->currency});
  return std::string();
}

Result<std::string> make(const project::Project& project, const LabelsArguments& arguments,
                         page::KitOptions& options) {
  if (arguments.what == "labels") {
    const auto sheet = page::find_label_sheet(arguments.sheet);
    if (!sheet) return sheet.problem();
    return page::bag_labels(project, *sheet, arguments.first - 1, options);
  }
  if (arguments.what == "pick-list") return page::pick_list(project, options);
  if (arguments.what == "packing-slip") return page::packing_slip(project, options);
  if (arguments.what != "price-cards")
    return Problem{ProblemCode::bad_usage, "what to print", quote(arguments.what),
                   "labels, pick-list, packing-slip or price-cards"};
  options.price = arguments.price;
  if (options.price.empty() && project.costing) {
    const auto price = reckoned_price(project, options);
    if (!price) return price.problem();
    options.price = *price;
  }
  return page::price_cards(project, options);
}

}  // namespace

int labels_verb(const LabelsArguments& arguments, const Console& console) {
  page::KitOptions options{.kits = arguments.kits, .size = arguments.size};
  const auto paper = page::parse_paper(arguments.paper);
  if (!paper) return console.fail(paper.problem());
  options.paper = *paper;
  const auto language = language::find_language(arguments.language);
  if (!language) return console.fail(language.problem());
  options.language = *language;
  const auto signs = drawing::parse_signs(arguments.signs);
  if (!signs) return console.fail(signs.problem());
  options.signs = *signs;
  const auto date = document_date();
  if (!date) return console.fail(date.problem());
  options.created_unix = *date;
  const auto project = load_project(arguments.project);
  if (!project) return console.fail(project.problem());
  const auto pdf = make(*project, arguments, options);
  if (!pdf) return console.fail(pdf.problem().within(arguments.project));
  if (const auto written = write_file(arguments.output, *pdf); !written) return console.fail(written.problem());
  fmt::print(console.err, "wrote {}\n", arguments.output);
  return exit_done;
}

}  // namespace evencount::app
