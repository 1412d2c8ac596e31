#include "picture/legibility.hpp"

#include <gtest/gtest.h>

#include <set>

namespace evencount::picture {
namespace {

std::vector<const Alphabet*> alphabets() {
  return {find_alphabet(AlphabetName::five_columns, Running::across),
          find_alphabet(AlphabetName::five_columns, Running::up),
          find_alphabet(AlphabetName::three_columns, Running::across)};
}

/// Counted the slow way, by sets.
int beads_that_differ(const LetterDrawing& a, const LetterDrawing& b) {
  const std::set<Dot> first(a.beads.begin(), a.beads.end()), second(b.beads.begin(), b.beads.end());
  int beads = 0;
  for (const Dot dot : first) beads += second.contains(dot) ? 0 : 1;
  for (const Dot dot : second) beads += first.contains(dot) ? 0 : 1;
  return beads;
}

TEST(Legibility, DifferenceIsADistance) {
  for (const Alphabet* alphabet : alphabets())
    for (const LetterDrawing& a : alphabet->letters)
      for (const LetterDrawing& b : alphabet->letters) {
        EXPECT_EQ(difference(a, b), beads_that_differ(a, b));
        EXPECT_EQ(difference(a, b), difference(b, a));
        EXPECT_EQ(difference(a, b) == 0, a.character == b.character);
        for (const char* third : {"A", "8", "."}) {
          const LetterDrawing& c = *find_letter(*alphabet, third);
          EXPECT_LE(difference(a, b), difference(a, c) + difference(c, b));
        }
      }
}

TEST(Legibility, TheLikestIsTheNearestLetterOrDigit) {
  for (const Alphabet* alphabet : alphabets())
    for (const LetterDrawing& a : alphabet->letters) {
      const Likeness found = likest(*alphabet, a);
      EXPECT_EQ(found.beads, beads_that_differ(a, *find_letter(*alphabet, found.other)));
      for (const LetterDrawing& b : alphabet->letters) {
        if (!is_letter(b) || b.character == a.character) continue;
        EXPECT_GE(beads_that_differ(a, b), found.beads);
      }
    }
}

TEST(Legibility, EachLetterOfATextOnceHardestFirst) {
  const auto found = legibility("OK 0.K\nO!", {});
  ASSERT_TRUE(found.ok());
  ASSERT_EQ(found->letters.size(), 3u);
  for (std::size_t i = 1; i < found->letters.size(); ++i)
    EXPECT_LE(found->letters[i - 1].beads, found->letters[i].beads);
  EXPECT_TRUE(found->doubtful().empty());
}

TEST(Legibility, NarrowFormsAreDoubtful) {
  const LetteringStyle wide{.alphabet = AlphabetName::three_columns};
  LetteringStyle narrow = wide;
  narrow.narrow = true;
  EXPECT_TRUE(legibility("MW 2000", wide)->doubtful().empty());
  const auto doubtful = legibility("MW 2000", narrow)->doubtful();
  ASSERT_EQ(doubtful.size(), 3u);
  for (const Likeness& likeness : doubtful) EXPECT_EQ(likeness.beads, 2);
}

/// Where the figure comes from: with one bead wrong a letter of our alphabets is still nearest to itself.
TEST(Legibility, OneWrongBeadIsReadRight) {
  for (const Alphabet* alphabet : alphabets())
    for (const LetterDrawing& letter : alphabet->letters) {
      if (!is_letter(letter)) continue;
      for (std::size_t wrong = 0; wrong < letter.beads.size(); ++wrong) {
        LetterDrawing worked = letter;
        worked.beads.erase(worked.beads.begin() + static_cast<std::ptrdiff_t>(wrong));
        for (const LetterDrawing& other : alphabet->letters) {
          if (!is_letter(other) || other.character == letter.character) continue;
          EXPECT_LT(difference(worked, letter), difference(worked, other));
        }
      }
    }
}

TEST(Legibility, BadTextIsRefused) {
  EXPECT_EQ(legibility("\u0416", {}).problem().code, ProblemCode::unknown_name);
  EXPECT_EQ(legibility("\xC3", {}).problem().code, ProblemCode::bad_text);
  EXPECT_EQ(
      legibility("A", {.alphabet = AlphabetName::three_columns, .running = Running::down}).problem().code,
      ProblemCode::unknown_name);
}

}  // namespace
}  // namespace evencount::picture
