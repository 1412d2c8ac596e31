#include <array>

#include "page/sections.hpp"

namespace evencount::page {
namespace {

constexpr std::array<std::string_view, 3> care_points{
    "Put the piece on last and take it off first. Keep it from water, perfume and rough cloth.",
    "Wipe it with a soft dry cloth and store it flat, away from strong light.",
    "Look the bands and the cords over now and then. Elastic ages even in a drawer: restring it before it "
    "goes slack."};

// Small parts: 16 CFR 1501 and EN 71-1. Nickel: EU REACH, annex XVII, entry 27. Glue and glass: common practice, no
// source.
constexpr std::array<std::string_view, 5> caution_points{
    "Small parts. Beads and findings can be swallowed or breathed in: not for children under three years (16 "
    "CFR 1501; "
    "EN 71-1).",
    "Metal against skin. In the European Union the release of nickel is limited (REACH annex XVII, entry "
    "27): buy "
    "findings that are declared to keep to it, above all for pierced ears.",
    "Glue. Work in moving air, keep it off skin and eyes, and let it cure for 24 to 72 hours before the "
    "piece is worn.",
    "Needles and glass. A bead that is broken out throws chips: wear eye protection and cover the jaws of "
    "the pliers. "
    "Count your needles when you finish.",
    "The law where you live and the data sheets of the products that you use come before anything said "
    "here."};

}  // namespace

std::span<const std::string_view> care() {
  return care_points;
}

std::span<const std::string_view> cautions() {
  return caution_points;
}

}  // namespace evencount::page
