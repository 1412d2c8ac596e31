#include "page/kit_papers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "language/texts.hpp"
#include "page/alternative.hpp"
#include "page/piece_picture.hpp"

namespace evencount::page {
namespace {

using namespace drawing;
using language::Language;
using language::Texts;

constexpr double row_mm = 7.0, box_mm = 3.2;

/// A list with boxes to tick: what it is on the left, amounts against the right.
class TickList {
 public:
  TickList(Flow& flow, std::vector<std::string> heads) : flow_(flow), heads_(std::move(heads)) {
    for (const std::string& head : heads_)
      widths_.push_back(std::max(24.0, flow.typesetter().width_mm(style::label.face, head) + 4));
  }

  void put_head(language::Text title) {
    flow_.need(3 * row_mm);
    flow_.open(Part::paragraph);
    flow_.put_text(style::label, std::string(flow_.language().text(title)), {flow_.left() + box_mm + 3, flow_.y() + 4});
    put_amounts(style::label, heads_, flow_.y() + 4);
    flow_.close();
    flow_.skip(6);
    flow_.rule(flow_.left(), flow_.right(), ink::accent, 0.3);
  }

  void put(const std::string& what, const std::vector<std::string>& amounts, const project::KitBag* bag = nullptr) {
    double taken = 0;
    for (const double width : widths_) taken += width;
    const double left = flow_.left() + box_mm + 3 + (bag ? 18 : 0);
    const auto lines = flow_.wrap(style::table, what, flow_.right() - taken - left - 2);
    const double height = row_mm + static_cast<double>(lines.size() - 1) * style::table.leading_mm;
    flow_.need(height);
    const double baseline = flow_.y() + 4.7;
    flow_.put(Rectangle{.corner = {flow_.left(), baseline - 2.9}, .width_mm = box_mm, .height_mm = box_mm,
                        .radius_mm = 0.5, .stroke = Stroke{ink::quiet, 0.25}});
    flow_.open(Part::paragraph);
    if (bag) put_bag(*bag, baseline);
    for (std::size_t i = 0; i < lines.size(); ++i)
      flow_.put_text(style::table, lines[i], {left, baseline + static_cast<double>(i) * style::table.leading_mm});
    put_amounts(style::table, amounts, baseline);
    flow_.close();
    flow_.skip(height);
    flow_.rule(flow_.left(), flow_.right());
  }

 private:
  void put_bag(const project::KitBag& bag, double baseline) {
    const double x = flow_.left() + box_mm + 3;
    flow_.put(Rectangle{.corner = {x, baseline - 3.1}, .width_mm = 5.4, .height_mm = 3.6, .radius_mm = 0.8,
                        .fill = bag.colour, .stroke = Stroke{colour::mix(bag.colour, ink::text, 0.45), 0.15}});
    flow_.put_text(style::table_bold, bag.letter, {x + 8, baseline});
  }

  void put_amounts(const Style& style, const std::vector<std::string>& amounts, double baseline) {
    double right = flow_.right();
    for (const double width : widths_) right -= width;
    for (std::size_t i = 0; i < amounts.size(); ++i) {
      right += widths_[i];
      flow_.put_text(style, amounts[i], {right, baseline}, Align::right);
    }
  }

  Flow& flow_;
  std::vector<std::string> heads_;
  std::vector<double> widths_;
};

std::string amount_of(const Language& language, const project::CountedSupply& supply, double times) {
  const std::string count = language.number(times * supply.count);
  return supply.unit.empty() ? count : count + " " + one_line(supply.unit);
}

std::string thread_text(const Language& language, const project::KitThread& thread, std::int64_t times) {
  return language.say(&Texts::thread_lengths, {{"n", language.count(times * thread.count)},
                                               {"length", metres_text(language, thread.length)}});
}

void put_list_head(Flow& flow, language::Text title, const project::Kit& kit, std::string_view below) {
  const Language& language = flow.language();
  flow.paragraph(style::heading, language.text(title), flow.left(), flow.width());
  flow.paragraph(style::note, one_line(kit.title), flow.left(), flow.width());
  std::string facts(below);
  if (!kit.size.empty())
    facts += (facts.empty() ? "" : "  ·  ") + language.say(&Texts::for_size, {{"size", one_line(kit.size)}});
  if (!facts.empty()) flow.paragraph(style::table, facts, flow.left(), flow.width());
  flow.skip(5);
}

/// The lists of a kit; with `kits` above 0 each amount also for so many.
void put_lists(Flow& flow, const project::Kit& kit, int kits) {
  const Language& language = flow.language();
  const bool all = kits > 0;
  const auto heads = [&](std::vector<language::Text> texts) {
    std::vector<std::string> said;
    for (const language::Text text : texts) said.emplace_back(language.text(text));
    return said;
  };
  TickList beads(flow, all ? heads({&Texts::column_each_kit, &Texts::column_in_all, &Texts::column_grams})
                           : heads({&Texts::column_count, &Texts::column_packed, &Texts::column_grams}));
  beads.put_head(&Texts::beads);
  for (const project::KitBag& bag : kit.bags) {
    const std::string what = one_line(bag.name) + ", " + supply_name(language, bag.size);
    const double grams = bag.mass.grams() * (all ? kits : 1);
    beads.put(what,
              all ? std::vector{language.count(bag.packed), language.count(kits * bag.packed), language.fixed(grams, 1)}
                  : std::vector{language.count(bag.count), language.count(bag.packed), language.fixed(grams, 1)},
              &bag);
  }
  TickList others(flow, all ? heads({&Texts::column_each_kit, &Texts::column_in_all}) : heads({&Texts::column_count}));
  const auto put_supplies_of = [&](language::Text title, const std::vector<project::CountedSupply>& supplies) {
    if (supplies.empty()) return;
    flow.skip(4);
    others.put_head(title);
    for (const auto& supply : supplies) {
      std::vector<std::string> amounts{amount_of(language, supply, 1)};
      if (all) amounts.push_back(amount_of(language, supply, kits));
      others.put(supply_name(language, supply.name), amounts);
    }
  };
  put_supplies_of(&Texts::forms, kit.forms);
  flow.skip(4);
  others.put_head(&Texts::thread);
  for (const project::KitThread& thread : kit.threads) {
    std::vector<std::string> amounts{thread_text(language, thread, 1)};
    if (all) amounts.push_back(thread_text(language, thread, kits));
    others.put(language::capitalised(supply_name(language, kit.thread_name)), amounts);
  }
  put_supplies_of(&Texts::findings, kit.findings);
}

}  // namespace

Result<project::Kit> checked_kit(const project::Project& project, const KitOptions& options) {
  if (auto ok = check_proof(project, "a kit"); !ok) return ok.problem();
  if (options.kits < 1 || options.kits > most_kits_printed)
    return Problem{ProblemCode::out_of_range, "kits", fmt::format("{}", options.kits),
                   fmt::format("1 to {}", most_kits_printed)};
  return project::kit_of(project, options.size);
}

Result<std::string> kit_pdf(const std::vector<Drawing>& pages, const project::Project& project,
                            const KitOptions& options, const Typesetter& typesetter) {
  for (const Drawing& page : pages)
    for (const Mark& mark : page.marks)
      if (const auto* text = std::get_if<Text>(&mark))
        if (auto ok = typesetter.check({text->role, text->size_pt}, text->text); !ok) return ok.problem();
  return to_pdf(pages, {.title = one_line(project.title), .author = one_line(project.designer),
                        .language = std::string(options.language->tag), .created_unix = options.created_unix});
}

/// A list of a kit on pages that `put` fills.
static Result<std::string> list_pdf(const project::Project& project, const KitOptions& options,
                                    const std::function<void(Flow& flow, const project::Kit& kit)>& put) {
  const auto kit = checked_kit(project, options);
  if (!kit) return kit.problem();
  const auto typesetter = Typesetter::open();
  if (!typesetter) return typesetter.problem();
  Flow flow(*typesetter, *options.language, options.paper, one_line(project.title));
  put(flow, *kit);
  return kit_pdf(flow.finish(), project, options, *typesetter);
}

Result<std::string> pick_list(const project::Project& project, const KitOptions& options) {
  return list_pdf(project, options, [&](Flow& flow, const project::Kit& kit) {
    const Language& language = *options.language;
    put_list_head(flow, &Texts::pick_list, kit, language.say(&Texts::kits_counted, {language.counted("n", options.kits)}));
    put_lists(flow, kit, options.kits);
  });
}

Result<std::string> packing_slip(const project::Project& project, const KitOptions& options) {
  return list_pdf(project, options, [&](Flow& flow, const project::Kit& kit) {
    const Language& language = *options.language;
    put_list_head(flow, &Texts::packing_slip, kit, one_line(project.designer));
    put_lists(flow, kit, 0);
    flow.skip(10);
    flow.need(20);
    flow.put_text(style::label, std::string(language.text(&Texts::packed_by)), {flow.left(), flow.y() + 4});
    flow.skip(5);
    flow.rule(flow.left() + 30, flow.left() + 100);
    flow.skip(6);
    flow.paragraph(style::caption, language.text(&Texts::caution_1), flow.left(), flow.width());
    flow.paragraph(style::caption, language.text(&Texts::caution_2), flow.left(), flow.width());
  });
}

namespace {

constexpr double card_width_mm = 90, card_height_mm = 55, card_inset_mm = 5, card_inner_mm = card_width_mm - 2 * card_inset_mm;

/// One price card with its upper left corner at a place.
void put_card(Drawing& page, const Typesetter& typesetter, const project::Project& project, const Drawing& picture,
              const std::string& alternative, Point corner, const KitOptions& options) {
  const auto text = [&](const Style& style, std::string_view words, double down, double room, Align align = Align::left) {
    const double x = corner.x_mm + (align == Align::right ? card_width_mm - card_inset_mm : card_inset_mm);
    page.marks.push_back(Text{.at = {x, corner.y_mm + down}, .role = style.face.role, .size_pt = style.face.size_pt,
                              .align = align, .ink = style.ink, .text = typesetter.shortened(style.face, words, room)});
  };
  constexpr Style title{{TextRole::heading, 18}, 8, ink::accent}, subtitle{{TextRole::body_italic, 10}, 5},
      quiet{{TextRole::label, 8}, 4, ink::quiet}, price{{TextRole::label_bold, 14}, 6};
  page.marks.push_back(Rectangle{.corner = corner, .width_mm = card_width_mm, .height_mm = card_height_mm,
                                 .stroke = Stroke{ink::rule, 0.15, true}});
  text(title, project.title, card_inset_mm + 5.5, card_inner_mm);
  text(subtitle, project.subtitle, card_inset_mm + 11, card_inner_mm);
  constexpr double picture_mm = 20;
  const double scale = std::min(card_inner_mm / picture.width.mm(), picture_mm / picture.height.mm());
  const std::size_t mark = page.marks.size();
  place(page, picture,
        {corner.x_mm + (card_width_mm - scale * picture.width.mm()) / 2,
         corner.y_mm + card_inset_mm + 14 + (picture_mm - scale * picture.height.mm()) / 2},
        scale);
  page.regions.push_back({Part::figure, mark, page.marks.size(), alternative});
  // What stands at the left of the price leaves it room.
  constexpr double most_price_mm = 2 * card_inner_mm / 3, foot = card_height_mm - card_inset_mm;
  const std::string asked = one_line(options.price);
  const double beside = asked.empty() ? card_inner_mm
                                      : card_inner_mm - 3 - std::min(most_price_mm, typesetter.width_mm(price.face, asked));
  text(quiet, project.designer, foot - 4.6, beside);
  text(quiet, options.language->text(&Texts::made_by_hand), foot, beside);
  if (!asked.empty()) text(price, asked, foot, most_price_mm, Align::right);
}

}  // namespace

Result<std::string> price_cards(const project::Project& project, const KitOptions& options) {
  const auto kit = checked_kit(project, options);
  if (!kit) return kit.problem();
  const auto typesetter = Typesetter::open();
  if (!typesetter) return typesetter.problem();
  const auto picture = piece_picture(project);
  if (!picture) return picture.problem();
  const auto alternative = alternative_of_piece(project, *options.language);
  if (!alternative) return alternative.problem();
  constexpr int columns = 2, rows = 4;
  const PaperSize paper = size_of(options.paper);
  Drawing page{millimetres(paper.width_mm), millimetres(paper.height_mm), {}};
  const Point first{(paper.width_mm - columns * card_width_mm) / 2, (paper.height_mm - rows * card_height_mm) / 2};
  for (int i = 0; i < columns * rows; ++i) {
    const Point corner{first.x_mm + i % columns * card_width_mm, first.y_mm + i / columns * card_height_mm};
    put_card(page, *typesetter, project, *picture, *alternative, corner, options);
  }
  return kit_pdf({page}, project, options, *typesetter);
}

}  // namespace evencount::page
