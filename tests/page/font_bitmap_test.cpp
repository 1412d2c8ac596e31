#include "page/font_bitmap.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "picture/legibility.hpp"

namespace evencount::page {
namespace {

using picture::Coverage;
using picture::FontText;
using picture::LetterImage;

/// Lato is one of the booklet's fonts, so it is always there.
FontText lato(std::string_view text, FontRequest request = {}) {
  request.family = "Lato";
  auto pictures = font_text(text, request);
  EXPECT_TRUE(pictures.ok()) << message(pictures.problem());
  return std::move(*pictures);
}

TEST(FontBitmap, FamiliesAreInstalledOnes) {
  const std::vector<std::string> families = font_families();
  EXPECT_TRUE(std::is_sorted(families.begin(), families.end()));
  EXPECT_TRUE(std::find(families.begin(), families.end(), "Lato") != families.end());
  EXPECT_TRUE(std::find(families.begin(), families.end(), "Sans") == families.end());
}

TEST(FontBitmap, AFamilyThatIsNotThereIsAProblem) {
  // "Sans" is a name under which a machine finds some font or other: a substitute.
  for (const char* family : {"No Such Letters", "Sans", "", "Lat"}) {
    const auto pictures = font_text("A", {.family = family});
    ASSERT_FALSE(pictures.ok()) << family;
    EXPECT_EQ(pictures.problem().code, ProblemCode::unknown_name);
    EXPECT_NE(pictures.problem().expected.find("installed"), std::string::npos);
  }
  EXPECT_TRUE(font_text("A", {.family = "lato"}).ok());
}

TEST(FontBitmap, ACharacterThatTheFamilyHasNotIsAProblem) {
  const auto pictures = font_text("A\u4E2D", {.family = "Lato"});
  ASSERT_FALSE(pictures.ok());
  EXPECT_EQ(pictures.problem().code, ProblemCode::missing_glyph);
  EXPECT_NE(pictures.problem().found.find("U+4E2D"), std::string::npos);
  EXPECT_EQ(font_text("A\tB", {.family = "Lato"}).problem().code, ProblemCode::missing_glyph);
  EXPECT_EQ(font_text(std::string_view("A\0B", 3), {.family = "Lato"}).problem().code,
            ProblemCode::missing_glyph);
}

TEST(FontBitmap, BadRequestsAreRefused) {
  EXPECT_EQ(font_text("\xC3", {.family = "Lato"}).problem().code, ProblemCode::bad_text);
  EXPECT_EQ(font_text("", {.family = "Lato"}).problem().code, ProblemCode::bad_text);
  EXPECT_EQ(font_text("  ", {.family = "Lato"}).problem().code, ProblemCode::bad_text);
  EXPECT_EQ(font_text("A", {.family = "Lato", .capital_height = millimetres(0.1)}).problem().code,
            ProblemCode::out_of_range);
  EXPECT_EQ(font_text("A", {.family = "Lato", .letter_space = millimetres(-1)}).problem().code,
            ProblemCode::out_of_range);
  EXPECT_EQ(font_text("A", {.family = "Lato", .dots_per_mm = 0}).problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(font_text(std::string(5000, 'M'), {.family = "Lato"}).problem().code, ProblemCode::out_of_range);
}

TEST(FontBitmap, CapitalsAreAsHighAsAsked) {
  for (const double height_mm : {4.0, 8.3, 11.6, 20.0}) {
    const FontText text = lato("H", {.capital_height = millimetres(height_mm)});
    ASSERT_EQ(text.letters.size(), 1u);
    EXPECT_NEAR(text.letters[0].ink.height_mm, height_mm, 2.0 / 16);
    EXPECT_NEAR(text.letters[0].top_mm, -height_mm, 2.0 / 16);
    EXPECT_NEAR(picture::InkSums(text.text).ink().height, height_mm, 2.0 / 16);
  }
}

/// The letters, each at its place, are the text.
TEST(FontBitmap, LettersAddUpToTheText) {
  for (const auto& [words, space_mm] : {std::pair<std::string_view, double>{"Ebb & flow", 0},
                                        {"MOON 1969", 0},
                                        {"two\nlines", 0},
                                        {"MOON", 1.35}}) {
    const FontText text = lato(words, {.letter_space = millimetres(space_mm)});
    Coverage sum = text.text;
    std::fill(sum.shares.begin(), sum.shares.end(), 0.0f);
    for (const LetterImage& letter : text.letters) {
      const int left = static_cast<int>(std::lround(letter.left_mm * 16)),
                top = static_cast<int>(std::lround((letter.baseline_mm + letter.top_mm) * 16));
      for (int y = 0; y < letter.ink.height; ++y)
        for (int x = 0; x < letter.ink.width; ++x) {
          ASSERT_TRUE(left + x >= 0 && left + x < sum.width && top + y >= 0 && top + y < sum.height);
          sum.shares[static_cast<std::size_t>(top + y) * sum.width + left + x] += letter.ink.at(x, y);
        }
    }
    double of_text = 0, apart = 0;
    for (std::size_t i = 0; i < sum.shares.size(); ++i) {
      if (words.find('&') != std::string_view::npos && sum.shares[i] == 0) continue;  // signs are no letters
      of_text += static_cast<double>(text.text.shares[i]);
      apart += static_cast<double>(std::abs(text.text.shares[i] - sum.shares[i]));
    }
    EXPECT_LT(apart, 0.01 * of_text) << words;
  }
}

TEST(FontBitmap, TheSameRequestGivesTheSamePictures) {
  const FontText once = lato("Tide"), again = lato("Tide");
  EXPECT_EQ(once.text, again.text);
  ASSERT_EQ(once.others.size(), again.others.size());
  for (std::size_t i = 0; i < once.others.size(); ++i) EXPECT_EQ(once.others[i].ink, again.others[i].ink);
  EXPECT_NE(once.text, lato("Tide", {.bold = true}).text);
  EXPECT_NE(once.text, lato("Tide", {.italic = true}).text);
  EXPECT_NE(once.text, font_text("Tide", {.family = "EB Garamond"})->text);
}

TEST(FontBitmap, AllLettersAndDigitsAreThereToCompareWith) {
  EXPECT_EQ(lato("A").others.size(), 62u);
}

constexpr int columns = 80, steps = 20;

Result<picture::FontLettering> on_beads(const FontText& text, double threshold = 0.5) {
  const bead::Gauge gauge{millimetres(1.35), millimetres(1.66), "test"};
  return picture::letter_in_font(text, {}, gauge, {{0, 0}, columns, steps}, 1, {.threshold = threshold});
}

/// Lato's I and l are the same stroke but for a little height: on beads nobody can tell them apart.
TEST(FontBitmap, LettersThatAFontDrawsAlikeAreDoubtful) {
  const FontText text = lato("Il", {.bold = true});
  const auto lettering = on_beads(text);
  ASSERT_TRUE(lettering.ok()) << message(lettering.problem());
  const auto doubtful = picture::legibility(text, *lettering).doubtful();
  ASSERT_EQ(doubtful.size(), 2u);
  for (const picture::Likeness& likeness : doubtful)
    EXPECT_TRUE(likeness.other == "l" || likeness.other == "I") << likeness.other;
}

TEST(FontBitmap, LargeLettersOfPlainShapeAreNot) {
  const FontText text = lato("XYK", {.bold = true});
  const auto lettering = on_beads(text);
  ASSERT_TRUE(lettering.ok());
  EXPECT_TRUE(picture::legibility(text, *lettering).doubtful().empty());
}

/// The smaller the letters, the fewer beads tell them apart.
TEST(FontBitmap, SmallLettersAreHarderToTell) {
  int large = 0, small = 0;
  for (const auto& [height_mm, least] : {std::pair{16.0, &large}, std::pair{5.0, &small}}) {
    const FontText text = lato("ABCDE", {.bold = true, .capital_height = millimetres(height_mm)});
    const auto lettering = on_beads(text);
    ASSERT_TRUE(lettering.ok()) << message(lettering.problem());
    *least = picture::legibility(text, *lettering).letters.front().beads;
  }
  EXPECT_GT(large, small);
}

}  // namespace
}  // namespace evencount::page
