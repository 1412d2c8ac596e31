#include "page/typesetter.hpp"

#include <gtest/gtest.h>

#include "base/text.hpp"

namespace evencount::page {
namespace {

using drawing::TextRole;

Typesetter typesetter() {
  auto opened = Typesetter::open();
  EXPECT_TRUE(opened.ok()) << message(opened.problem());
  return std::move(*opened);
}

constexpr Face body{TextRole::body, 11};
const std::string prose =
    "Push the band round and the other face shows the sea that night: spring tides at new and full moon, "
    "when the "
    "water climbs high and falls far, and neap tides at the quarters, 9 mm above the sand.";

TEST(Typesetter, AMissingFontNamesItsPackage) {
  const std::array fonts{FontFile{"/nowhere/EBGaramond12-Regular.otf", "fonts-ebgaramond"}};
  const auto opened = Typesetter::open(fonts);
  ASSERT_FALSE(opened.ok());
  EXPECT_EQ(opened.problem().code, ProblemCode::missing_font);
  EXPECT_NE(opened.problem().expected.find("fonts-ebgaramond"), std::string::npos);
}

TEST(Typesetter, RolesAreDifferentFonts) {
  const Typesetter type = typesetter();
  std::vector<double> widths;
  for (const TextRole role : {TextRole::body, TextRole::body_italic, TextRole::label, TextRole::label_bold})
    widths.push_back(type.width_mm({role, 12}, "Hamburgefonts and more"));
  std::sort(widths.begin(), widths.end());
  for (std::size_t i = 1; i < widths.size(); ++i) EXPECT_GT(widths[i] - widths[i - 1], 0.1);
}

TEST(Typesetter, WidthGrowsWithSize) {
  const Typesetter type = typesetter();
  const double at_10 = type.width_mm({TextRole::label, 10}, "Row 3 (R): (2)A");
  EXPECT_NEAR(type.width_mm({TextRole::label, 20}, "Row 3 (R): (2)A"), 2 * at_10, 0.01);
}

TEST(Typesetter, FiguresHaveOneWidth) {
  const Typesetter type = typesetter();
  for (const TextRole role : {TextRole::body, TextRole::label, TextRole::label_bold})
    EXPECT_NEAR(type.width_mm({role, 10}, "1111"), type.width_mm({role, 10}, "8888"), 1e-6);
}

TEST(Typesetter, LinesFitAndJoinToTheText) {
  const Typesetter type = typesetter();
  for (double width = 25; width < 160; width += 7) {
    std::string joined;
    for (const std::string& line : type.wrap(body, prose, width)) {
      EXPECT_LE(type.width_mm(body, line), width + 0.01) << line;
      joined += (joined.empty() ? "" : " ") + line;
    }
    EXPECT_EQ(joined, prose);
  }
}

TEST(Typesetter, FiguresStayWithTheirUnit) {
  const Typesetter type = typesetter();
  for (double width = 25; width < 160; width += 3)
    for (const std::string& line : type.wrap(body, prose, width)) EXPECT_FALSE(line.ends_with(" 9")) << line;
}

TEST(Typesetter, ALongWordIsBrokenRatherThanClipped) {
  const Typesetter type = typesetter();
  const std::string word(200, 'm');
  std::string joined;
  for (const std::string& line : type.wrap(body, word, 40)) {
    EXPECT_LE(type.width_mm(body, line), 40.01);
    joined += line;
  }
  EXPECT_EQ(joined, word);
}

TEST(Typesetter, AShortLastWordTakesCompany) {
  const Typesetter type = typesetter();
  int lonely = 0, paragraphs = 0;
  for (double width = 60; width < 160; width += 0.5, ++paragraphs) {
    const auto lines = type.wrap(body, prose, width);
    lonely += lines.size() > 1 && lines.back().find(' ') == std::string::npos;
  }
  EXPECT_LE(lonely, paragraphs / 50);
}

TEST(Typesetter, LineEndsPartParagraphs) {
  const Typesetter type = typesetter();
  EXPECT_EQ(type.wrap(body, "One.\n\n  Two \t three.\r\n", 100),
            (std::vector<std::string>{"One.", "", "Two three.", ""}));
}

TEST(Typesetter, ShortenedFitsAndSaysSo) {
  const Typesetter type = typesetter();
  const std::string line = type.shortened(body, prose, 50);
  EXPECT_LE(type.width_mm(body, line), 50.01);
  EXPECT_TRUE(line.ends_with("…"));
  EXPECT_EQ(type.shortened(body, "short", 50), "short");
}

TEST(Typesetter, NamesTheMissingCharacter) {
  const auto checked = typesetter().check(body, "snow \U0001F48E here");
  ASSERT_FALSE(checked.ok());
  EXPECT_EQ(checked.problem().code, ProblemCode::missing_glyph);
  EXPECT_NE(checked.problem().found.find("U+1F48E"), std::string::npos) << checked.problem().found;
}

TEST(Typesetter, OneLineHasNoControlCharacters) {
  EXPECT_EQ(one_line("  a\n\tb\x7F"
                     "c \x01 "),
            "a b c");
}

}  // namespace
}  // namespace evencount::page
