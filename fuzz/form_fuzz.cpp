/// The notations of a command line: forms, stones, beads' gauges, rings, lengths; and a file of an outline.

#include "base/units.hpp"
#include "bead/bead_size.hpp"
#include "bead/gauge.hpp"
#include "form/bezel_stone.hpp"
#include "form/calibration.hpp"
#include "form/closure.hpp"
#include "form/form.hpp"
#include "form/outline.hpp"
#include "form/ring_size.hpp"
#include "target.hpp"

using namespace evencount;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzzing::text_of(data, size);
  const auto form = form::parse_form(text);
  fuzzing::require_told(form);
  fuzzing::require_told(form::parse_stone(text));
  fuzzing::require_told(form::parse_ring_size(text));
  fuzzing::require_told(bead::parse_gauge(text));
  fuzzing::require_told(bead::parse_swatch(text));
  fuzzing::require_told(bead::find_size(text));
  fuzzing::require_told(form::parse_finished(text, bead::sizes().front()));
  fuzzing::require_told(parse_length(text));
  const auto outline = form::parse_outline_csv(text);
  fuzzing::require_told(outline);
  return 0;
}
