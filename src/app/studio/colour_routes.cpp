#include <algorithm>
#include <sstream>

#include "app/picture_argument.hpp"
#include "app/stock_source.hpp"
#include "app/studio/band_view.hpp"
#include "app/verbs/measured_bead.hpp"
#include "app/verbs/stock_text.hpp"
#include "base/text.hpp"
#include "colour/contrast.hpp"
#include "colour/difference.hpp"
#include "picture/decode.hpp"
#include "project/neighbours.hpp"
#include "proof/better_bead.hpp"
#include "stockroom/amounts.hpp"
#include "stockroom/search.hpp"

namespace evencount::app::studio {
namespace {

using materials::BeadStock;
using materials::StockedItem;

constexpr std::int64_t most_items = 500;

/// A stock's beads as an entry of a legend; null where they have no colour.
Json entry_json(const materials::StockItem& item, const BeadStock& beads) {
  if (!beads.colour) return nullptr;
  Json entry = {{"name", item.name},
                {"colour", colour::to_hex(*beads.colour)},
                {"finish", bead::finish_name(beads.finish)},
                {"bead", beads.size}};
  if (item.packs.empty()) return entry;
  const materials::PackOffer& pack = item.packs.front();
  entry["pack"] = {{"grams", static_cast<double>(pack.amount) / 1000}};
  if (pack.price)
    entry["pack"]["price_minor"] = pack.price->minor, entry["pack"]["currency"] = pack.price->currency;
  return entry;
}

Json item_json(const StockedItem& held, std::optional<double> difference) {
  Json json = to_json(held);
  const auto per_gram = stockroom::beads_per_gram(held.item);
  json["beads"] =
      per_gram ? Json(std::floor(static_cast<double>(held.level.free()) / 1000 * *per_gram)) : Json(nullptr);
  json["difference"] = difference ? Json(rounded(*difference, 3)) : Json(nullptr);
  json["entry"] = entry_json(held.item, std::get<BeadStock>(held.item.what));
  return json;
}

/// The beads of the stock that are of a finish and a size, where these are given.
Result<std::vector<StockedItem>> stocked_beads(const Call& call) {
  const std::string finish = call.query("finish"), size = call.query("size");
  if (!finish.empty())
    if (const auto known = bead::parse_finish(finish); !known) return known.problem();
  if (!size.empty())
    if (const auto known = bead::find_size(size); !known) return known.problem();
  auto items = stock_items({.file = "", .own = true}, "");
  if (!items) return of_own_stock(items.problem());
  std::erase_if(*items, [&](const StockedItem& held) {
    const auto* beads = std::get_if<BeadStock>(&held.item.what);
    return !beads || (!size.empty() && beads->size != size) ||
           (!finish.empty() && bead::finish_name(beads->finish) != finish);
  });
  return items;
}

Response stock(Studio&, const Call& call) {
  const auto count = call.whole("count", 1, most_items, 60);
  if (!count) return problem_response(count.problem());
  const auto items = stocked_beads(call);
  if (!items) return problem_response(items.problem());
  std::vector<std::string> words;
  std::istringstream typed(call.query("words"));
  for (std::string word; typed >> word;) words.push_back(word);
  const auto found = stockroom::with_words(*items, words);
  const auto most = static_cast<std::size_t>(*count);
  Json list = Json::array();
  if (const std::string near = call.query("near"); !near.empty()) {
    const auto colour = colour::parse_hex(near);
    if (!colour) return problem_response(colour.problem().within("near"));
    for (const auto& [held, difference] : stockroom::nearest(found, *colour, most))
      list.push_back(item_json(held, difference));
  } else {
    for (std::size_t i = 0; i < std::min(found.size(), most); ++i)
      list.push_back(item_json(found[i], std::nullopt));
  }
  return json_response({{"items", std::move(list)}, {"found", found.size()}, {"owned", items->size()}});
}

Response picture_colour(Studio& studio, const Call& call) {
  const auto bytes = studio.uploads.find(call.names[0]);
  if (!bytes) return problem_response(bytes.problem());
  const auto card = rectangle_argument(call.query("card")), bead = rectangle_argument(call.query("bead"));
  if (!card) return problem_response(card.problem().within("card"));
  if (!bead) return problem_response(bead.problem().within("bead"));
  const auto share = reflectance_argument(call.query("card_is", "white"));
  if (!share) return problem_response(share.problem());
  const auto turn = studio.uploads.turn_to_decode();
  const auto image = picture::decode(**bytes);
  if (!image) return problem_response(image.problem());
  const auto measured = picture::measure_bead(*image, *card, *share, *bead);
  return measured ? json_response(measured_json(*measured)) : problem_response(measured.problem());
}

Json pair_json(const project::Project& project, const project::Neighbours& neighbours, std::size_t first,
               std::size_t second) {
  const project::LegendEntry &a = project.legend[first], &b = project.legend[second];
  const proof::Apart told = proof::apart(a.colour, b.colour);
  const double contrast = colour::contrast(a.colour, b.colour);
  return {{"first", a.letter},
          {"second", b.letter},
          {"side_by_side", neighbours.meet(first, second)},
          {"difference", rounded(told.difference, 2)},
          {"contrast", rounded(contrast, 2)},
          {"alike", told.difference < proof::least_difference},
          {"alike_in_grey", contrast < proof::least_contrast},
          {"lost_to", told.lost_to ? Json(colour::deficiency_name(*told.lost_to)) : Json(nullptr)},
          {"left", told.lost_to ? Json(rounded(told.left, 2)) : Json(nullptr)}};
}

Response palette(Studio& studio, const Call& call) {
  return with_session(studio, call, [&](Session& session) {
    const State state = session.state();
    const project::Project& project = *state.project;
    const project::Neighbours neighbours(project);
    std::vector<std::int64_t> beads(project.legend.size(), 0);
    for (const project::Band& band : project.bands)
      for (const chart::Bead bead : band.chart.cells())
        if (bead < beads.size()) beads[bead] += band.copies;
    Json entries = Json::array(), pairs = Json::array();
    for (std::size_t i = 0; i < beads.size(); ++i) {
      entries.push_back({{"letter", project.legend[i].letter}, {"beads", beads[i]}});
      for (std::size_t other = i + 1; other < beads.size(); ++other)
        pairs.push_back(pair_json(project, neighbours, i, other));
    }
    return of_revision(json_response({{"entries", std::move(entries)}, {"pairs", std::move(pairs)}}),
                       state.revision);
  });
}

constexpr Route routes[] = {
    {"GET", "/api/stock", no_body, stock},
    {"GET", "/api/pictures/{picture}/colour", no_body, picture_colour},
    {"GET", "/api/projects/{project}/palette", no_body, palette},
};

}  // namespace

std::span<const Route> colour_routes() {
  return routes;
}

}  // namespace evencount::app::studio
