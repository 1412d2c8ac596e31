#pragma once
/// Layouts and what they are strung from, for the tests.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "strand/layout.hpp"
#include "strand/strung.hpp"

namespace evencount::strand {

inline form::SlidingBand cylinder_band(int columns, int edge) {
  const bead::Size bead = *bead::find_size("cylinder-11");
  return {bead, bead::default_gauge(bead, bead::threads()[0]), edge, columns};
}

/// The carriers of the demos with and without their bands, and a tube.
inline std::vector<Element> catalogue() {
  const form::Form small = *form::parse_form("lens:16x5x9,holes=9.6,hole=2"),
                   large = *form::parse_form("lens:19.5x5x11.5,holes=11.7,hole=2");
  return {*form_element("moon", "moon band", {small, 1, cylinder_band(6, 24), form::Use::sliding}),
          *form_element("fixed", "fixed band", {small, 1, cylinder_band(6, 24), form::Use::fixed}),
          *form_element("Big moon", "large moon band", {large, 1, cylinder_band(8, 28), form::Use::sliding}),
          *form_element("carrier", "small carrier", {small, 1, std::nullopt, form::Use::fixed}),
          *form_element("pair", "two together", {small, 2, cylinder_band(12, 24), form::Use::sliding}),
          *form_element("tube-band", "tube in a band",
                        {*form::parse_form("round:12x20"), 1, cylinder_band(12, 26), form::Use::sliding})};
}

inline Strung strung_of(const std::string& text) {
  const auto all = catalogue();
  const auto layout = parse_layout(text, all);
  EXPECT_TRUE(layout) << (layout ? "" : message(layout.problem())) << "\n" << text;
  const auto strung = lay_strung(*layout, all);
  EXPECT_TRUE(strung) << (strung ? "" : message(strung.problem())) << "\n" << text;
  return *strung;
}

inline const std::string bracelet_text = R"(
cords 2 of braided 0.6mm
bead stop 6mm hole 1.5mm "6 mm round glass bead"
crimp tube 5mm hole 1.3mm across 2mm thick 2mm "2 mm crimp tube with its loop"
clasp slide 14mm holes 2 apart 9.6mm hole 1.5mm across 16mm "two-strand slide clasp"
close with slide
string tube, fill sides with round-8, stop, between gaps with round-8 from 1 to 1 (8 moon), stop, fill sides with round-8, tube
)";

inline const std::string necklace_text = R"(
cords 2 of braided 0.6mm
bead stop 8mm hole 1.5mm "8 mm round glass bead"
crimp tube 5mm hole 1.3mm across 2mm thick 2mm
clasp hook 15mm hole 2mm
close with hook
string mirror (tube, fill sides with round-8, stop, 2 ("Big moon", 2 round-8)) about "Big moon"
)";

}  // namespace evencount::strand
