#include <fmt/ostream.h>

#include "app/verbs/fit_report.hpp"
#include "base/text.hpp"

namespace evencount::app {
namespace {

std::string_view side_name(const std::optional<form::StoneSide>& side) {
  if (!side) return "";
  return *side == form::StoneSide::front ? "front" : "back";
}

std::string side_words(bool holds, Length capture, const std::string& reason) {
  if (holds)
    return fmt::format("holds: the last round reaches {} mm over the stone", plain_number(capture.mm()));
  return "does not hold: " + reason;
}

}  // namespace

Json to_json(const form::Bezel& bezel) {
  Json rounds = Json::array(), beads = Json::array();
  for (const form::BezelRound& round : bezel.rounds)
    rounds.push_back({{"number", round.number},
                      {"bead", round.bead},
                      {"beads", round.beads},
                      {"role", form::role_name(round.role)},
                      {"side", round.side ? Json(side_name(round.side)) : Json(nullptr)},
                      {"radius_mm", rounded(round.radius.mm(), 3)},
                      {"height_mm", rounded(round.height.mm(), 3)},
                      {"strain", rounded(round.strain, 5)}});
  for (const form::BezelBeads& size : bezel.beads)
    beads.push_back({{"bead", size.bead}, {"count", size.count}});
  return {{"ring_beads", bezel.ring_beads},
          {"wall_rounds", bezel.wall_rounds},
          {"front_rounds", bezel.front_rounds},
          {"back_rounds", bezel.back_rounds},
          {"capture_front_mm", rounded(bezel.capture_front.mm(), 3)},
          {"capture_back_mm", rounded(bezel.capture_back.mm(), 3)},
          {"holds", form::holds(bezel)},
          {"reason_front", bezel.reason_front},
          {"reason_back", bezel.reason_back},
          {"play_mm", bezel.play ? Json(rounded(bezel.play->mm(), 3)) : Json(nullptr)},
          {"rounds", std::move(rounds)},
          {"beads", std::move(beads)},
          {"bead_count", bezel.bead_count}};
}

void print(const form::Bezel& bezel, const form::Stone& stone, std::ostream& out) {
  fmt::print(out, "{}\n\n{} beads in the starting ring\n\n", form::describe(stone), bezel.ring_beads);
  fmt::print(out, "  round   bead          beads   across    height   strain  what\n");
  for (const form::BezelRound& round : bezel.rounds)
    fmt::print(out, "  {:>5}   {:<12}  {:>5}  {:>6} mm {:>+6.2f} mm  {:>+5.1f}%  {}{}{}\n", round.number,
               round.bead, round.beads, fixed_number(2 * round.radius.mm(), 2), round.height.mm(),
               100 * round.strain,
               round.role == form::RoundRole::draw_in ? "drawn in" : form::role_name(round.role),
               round.side ? ", " : "", side_name(round.side));
  fmt::print(out, "\nfront {}\nback  {}\n",
             side_words(bezel.holds_front, bezel.capture_front, bezel.reason_front),
             side_words(bezel.holds_back, bezel.capture_back, bezel.reason_back));
  if (bezel.play && bezel.play->mm() >= 0)
    fmt::print(out, "the stone has {} mm of play\n", plain_number(bezel.play->mm()));
  if (bezel.play && bezel.play->mm() < 0)
    fmt::print(out, "the wall is {} mm low: the rounds are pushed outwards by that\n",
               plain_number(-bezel.play->mm()));
  for (const form::BezelBeads& size : bezel.beads) fmt::print(out, "{} x {}\n", size.count, size.bead);
}

}  // namespace evencount::app
