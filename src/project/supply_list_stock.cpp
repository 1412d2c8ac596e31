#include "project/supply_list_stock.hpp"

#include "base/text.hpp"

namespace evencount::project {
namespace {

bool same_name(std::string_view a, std::string_view b) {
  return lower_ascii(trim(a)) == lower_ascii(trim(b));
}

template <typename Wanted>
std::optional<std::size_t> first(Stock stock, Wanted wanted) {
  for (std::size_t i = 0; i < stock.size(); ++i)
    if (wanted(stock[i].item)) return i;
  return {};
}

/// The shape as the project writes it; the stock's own words where they are no form.
std::string shape_of(const std::string& notation) {
  const auto form = form::parse_form(notation);
  return form ? form::to_notation(*form) : notation;
}

}  // namespace

std::optional<std::size_t> find_bead_item(Stock stock, const LegendEntry& entry) {
  const auto like = [&](const materials::StockItem& item) -> const materials::BeadStock* {
    const auto* bead = std::get_if<materials::BeadStock>(&item.what);
    return bead && bead->size == entry.bead && bead->finish == entry.finish ? bead : nullptr;
  };
  const auto same_colour = [&](const auto& item) {
    const auto* bead = like(item);
    return bead && bead->colour == entry.colour;
  };
  const auto named = [&](const auto& item) { return like(item) && same_name(item.name, entry.name); };
  auto found = first(stock, [&](const auto& item) { return named(item) && same_colour(item); });
  if (!found) found = first(stock, named);
  return found ? found : first(stock, same_colour);
}

std::optional<std::size_t> find_form_item(Stock stock, const FormEntry& entry) {
  const std::string shape = form::to_notation(entry.form);
  return first(stock, [&](const auto& item) {
    const auto* form = std::get_if<materials::FormStock>(&item.what);
    return form && (entry.name.empty() || same_name(item.name, entry.name)) && shape_of(form->form) == shape;
  });
}

std::optional<std::size_t> find_thread_item(Stock stock, const bead::Thread& thread) {
  return first(stock, [&](const auto& item) {
    const auto* known = std::get_if<materials::ThreadStock>(&item.what);
    return known && known->thread == thread.id;
  });
}

std::optional<std::size_t> find_other_item(Stock stock, const OtherSupply& supply) {
  return first(stock, [&](const auto& item) {
    const auto kind = materials::kind_of(item);
    return (kind == materials::StockKind::findings || kind == materials::StockKind::cord) &&
           same_name(item.name, supply.name);
  });
}

std::optional<std::size_t> find_code(Stock stock, std::string_view code) {
  return first(stock, [&](const auto& item) { return item.code == code; });
}

}  // namespace evencount::project
