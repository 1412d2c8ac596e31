#include "form/explain.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "bead/thread.hpp"

namespace evencount::form {
namespace {

std::string explained(const char* notation, Use use) {
  FitRequest request;
  request.form = parse_form(notation).value();
  request.bead = bead::find_size("cylinder-11").value();
  request.gauge = bead::default_gauge(request.bead, bead::threads().front());
  request.use = use;
  return explain(fit(request).value(), request.bead).value();
}

void expect_parts(const std::string& text, std::initializer_list<const char*> parts) {
  for (const char* part : parts) EXPECT_NE(text.find(part), std::string::npos) << part << " in:\n" << text;
}

// The figures are those of docs/algorithms/fit.md for the carrier bead.
TEST(Explain, NamesTheFiguresOfTheFit) {
  expect_parts(explained("lens:17x5x9", Use::fixed),
               {"two-hole carrier bead 17 × 5 × 9 mm", "40.95 mm", "1.66 mm", "24 along the edge, 48 rows",
                "0.1 % shorter", "snug", "6 columns of 1.35 mm make 8.1 mm", "0.45 mm of the form bare",
                "25 along the edge would be easy"});
}

TEST(Explain, SaysWhenNothingCloses) {
  expect_parts(explained("lens:17x5x9", Use::sliding), {"sliding band", "25 along the edge, 50 rows"});
  const std::string tiny = explained("round:2.1x9", Use::sliding);
  EXPECT_EQ(tiny.find("other beads or another form are needed") != std::string::npos,
            tiny.find("Verdict for a sliding band: too") != std::string::npos)
      << tiny;
}

TEST(Explain, TheChanceIsOneInAHundredOrSaidInWords) {
  int every = 0, some = 0;
  for (double width = 2; width < 6; width += 0.02) {
    FitRequest request;
    request.form = parse_form("round:2x20").value();
    request.form.width = request.form.thickness = millimetres(width);
    request.bead = bead::find_size("round-8").value();
    request.gauge = bead::default_gauge(request.bead, bead::threads().front());
    const Fit made = fit(request).value();
    const long in_hundred = std::lround(100 * made.candidates.front().chance);
    const std::string text = explain(made, request.bead).value();
    if (!closes(made.verdict)) continue;
    expect_parts(text, {in_hundred >= 100 ? "practically every set of beads will close"
                                          : " of 100 sets of beads will close"});
    EXPECT_EQ(text.find("about 100 of 100"), std::string::npos);
    (in_hundred >= 100 ? every : some)++;
  }
  EXPECT_GT(every, 0);
  EXPECT_GT(some, 0);
}

TEST(Explain, AFingerHasNoLength) {
  EXPECT_EQ(explained("ring:54", Use::fixed).find("bare"), std::string::npos);
}

}  // namespace
}  // namespace evencount::form
