#include <fmt/ostream.h>

#include "app/picture_argument.hpp"
#include "app/stock_verbs.hpp"
#include "app/verbs/measured_bead.hpp"
#include "app/verbs/stock_text.hpp"
#include "base/text.hpp"
#include "picture/bead_colour.hpp"

namespace evencount::app {

Result<double> reflectance_argument(const std::string& card) {
  if (card == "white") return picture::white_card;
  if (card == "grey") return picture::grey_card;
  const auto number = parse_number(card);
  if (!number) return Problem{ProblemCode::bad_text, "card is", quote(card), "white, grey, or its reflectance such as 0.85"};
  return *number;
}

Json measured_json(const picture::BeadColour& measured) {
  return {{"colour", colour::to_hex(measured.rgb)},
          {"lab", {rounded(measured.lab.lightness, 3), rounded(measured.lab.a, 3), rounded(measured.lab.b, 3)}},
          {"uncertainty", rounded(measured.uncertainty, 3)},
          {"spread", rounded(measured.spread, 3)},
          {"pixels", measured.pixels},
          {"left_out", rounded(measured.left_out, 3)}};
}

namespace {

Result<picture::BeadColour> measure(const StockMeasureArguments& arguments) {
  const auto image = picture_argument(arguments.image);
  if (!image) return image.problem();
  const auto card = rectangle_argument(arguments.card), bead = rectangle_argument(arguments.bead);
  if (!card) return card.problem().within("card");
  if (!bead) return bead.problem().within("bead");
  const auto share = reflectance_argument(arguments.card_is);
  if (!share) return share.problem();
  auto colour = picture::measure_bead(*image, *card, *share, *bead);
  if (!colour) return colour.problem().within(arguments.image);
  return colour;
}

/// Gives the item the colour that was measured.
Result<Done> put_colour(const StockMeasureArguments& arguments, colour::Rgb colour) {
  if (arguments.code.empty()) return Done{};
  auto stock = open_stock(arguments.stock);
  if (!stock) return stock.problem();
  auto held = stock->item(arguments.code);
  if (!held) return held.problem();
  auto* beads = std::get_if<materials::BeadStock>(&held->item.what);
  if (beads == nullptr)
    return Problem{ProblemCode::wrong_type, arguments.code, std::string(kind_name(kind_of(held->item))), "beads"};
  beads->colour = colour;
  return stock->put(held->item);
}

}  // namespace

int stock_measure_verb(const StockMeasureArguments& arguments, const Console& console) {
  const auto measured = measure(arguments);
  if (!measured) return console.fail(measured.problem());
  if (const auto put = put_colour(arguments, measured->rgb); !put) return console.fail(put.problem());
  if (arguments.json) {
    print(console.out, measured_json(*measured));
    return exit_done;
  }
  fmt::print(console.out, "{}  (CIELAB, D65: {} {} {})\n", colour::to_hex(measured->rgb), fixed_number(measured->lab.lightness, 1),
             fixed_number(measured->lab.a, 1), fixed_number(measured->lab.b, 1));
  fmt::print(console.out, "sure to {} CIEDE2000; {} pixels, {} % left out as highlights, shadows or other colours\n",
             fixed_number(measured->uncertainty, 1), measured->pixels, fixed_number(100 * measured->left_out, 0));
  if (!arguments.code.empty()) fmt::print(console.err, "{} has this colour now\n", arguments.code);
  return exit_done;
}

}  // namespace evencount::app
