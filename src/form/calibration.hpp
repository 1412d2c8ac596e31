#pragma once
/// The gauge of a hand, from pieces it has finished.
///
/// A band that came out snug on a known form says how far apart its beads lie: the edge gauge must be one at which that
/// many beads get that verdict. Every such gauge is taken to be as likely as the others, so the middle of their range is the
/// answer and its width over the square root of 12 the standard error.
///
/// Properties (tests/form/calibration_test.cpp):
///  (1) a fit at the gauge that comes out gives the verdict that went in
///  (2) a tight piece gives a finer pitch than a snug one, and that a finer one than an easy one

#include "bead/gauge_evidence.hpp"
#include "form/fit.hpp"

namespace evencount::form {

/// A band that was made: how many beads along its edge, on what, and how it sits.
struct FinishedPiece {
  Form form;
  bead::Size bead;
  int edge = 0;
  Verdict verdict = Verdict::snug;  ///< tight, snug or easy
  Use use = Use::fixed;
  bool operator==(const FinishedPiece&) const = default;
};

/// The edge gauge that a finished piece shows; its source reads "lens:17x5x9 took 24, snug".
/// Errors: those of section and closing_range; out_of_range (a bead that is not above zero; a verdict that has no two ends:
/// too tight, too loose, or tight for a sliding band; a gauge outside 0.2 to 50 mm).
[[nodiscard]] Result<bead::GaugeEvidence> gauge_from_finished(const FinishedPiece& piece);

/// "lens:17x5x9 took 24, snug", with ", sliding" at the end for a sliding band. Errors: bad_text, those of parse_form.
[[nodiscard]] Result<FinishedPiece> parse_finished(std::string_view text, const bead::Size& bead);
[[nodiscard]] std::string to_notation(const FinishedPiece& piece);

}  // namespace evencount::form
