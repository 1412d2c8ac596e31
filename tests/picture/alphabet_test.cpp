#include "picture/alphabet.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "picture/alphabet_text.hpp"
#include "picture/legibility.hpp"

namespace evencount::picture {
namespace {

struct Named {
  const Alphabet* alphabet;
  bool narrow;
  std::string name;
};

std::vector<Named> all_alphabets() {
  const Alphabet* five = find_alphabet(AlphabetName::five_columns, Running::across);
  const Alphabet* along = find_alphabet(AlphabetName::five_columns, Running::down);
  const Alphabet* three = find_alphabet(AlphabetName::three_columns, Running::across);
  return {{five, false, "five"},
          {along, false, "five, along"},
          {three, false, "three"},
          {three, true, "three, narrow"}};
}

std::vector<LetterDrawing> drawings_of(const Named& named) {
  std::vector<LetterDrawing> drawings;
  for (const LetterDrawing& letter : named.alphabet->letters)
    drawings.push_back(*find_letter(*named.alphabet, letter.character, named.narrow));
  return drawings;
}

bool is_ascii(const LetterDrawing& drawing) {
  return drawing.character.size() == 1;
}
bool is_capital_or_digit(const LetterDrawing& drawing) {
  const char c = drawing.character[0];
  return is_ascii(drawing) && ((c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9'));
}

/// The fewest beads between two of the drawings that pass, and which two.
Likeness closest(const std::vector<LetterDrawing>& drawings, bool (*pass)(const LetterDrawing&)) {
  Likeness found{"", "", 1000};
  for (const LetterDrawing& a : drawings)
    for (const LetterDrawing& b : drawings)
      if (&a < &b && pass(a) && pass(b) && difference(a, b) < found.beads)
        found = {a.character, b.character, difference(a, b)};
  return found;
}

TEST(Alphabet, BeadsLieOnTheLatticeAndInTheirBox) {
  for (const Named& named : all_alphabets())
    for (const LetterDrawing& drawing : drawings_of(named)) {
      SCOPED_TRACE(named.name + " " + drawing.character);
      ASSERT_FALSE(drawing.beads.empty());
      EXPECT_EQ(drawing.width % 2, 1);
      EXPECT_TRUE(std::is_sorted(drawing.beads.begin(), drawing.beads.end()));
      EXPECT_EQ(std::set<Dot>(drawing.beads.begin(), drawing.beads.end()).size(), drawing.beads.size());
      int top = 1000, bottom = -1000, left = 1000;
      for (const Dot dot : drawing.beads) {
        EXPECT_EQ((dot.across + dot.down) % 2, 0);
        EXPECT_GE(dot.across, 0);
        EXPECT_LT(dot.across, drawing.width);
        top = std::min(top, dot.down), bottom = std::max(bottom, dot.down), left = std::min(left, dot.across);
      }
      EXPECT_EQ(top, drawing.top);
      EXPECT_EQ(bottom, drawing.bottom);
      if (is_letter(drawing)) {
        EXPECT_LE(left, 1);
      }
    }
}

TEST(Alphabet, LettersTakeTheColumnsThatTheAlphabetPromises) {
  for (const Named& named : all_alphabets())
    for (const LetterDrawing& drawing : drawings_of(named)) {
      if (!is_capital_or_digit(drawing)) continue;
      SCOPED_TRACE(named.name + " " + drawing.character);
      if (named.name == "five") {
        EXPECT_LE(drawing.width, 5);
      }
      if (named.name == "three, narrow") {
        EXPECT_EQ(drawing.width, 3);
      }
      if (named.name == "three") {
        const bool wide = std::string("MNW").find(drawing.character) != std::string::npos;
        EXPECT_EQ(drawing.width, wide ? 5 : 3);
      }
      if (named.name == "five, along") {
        EXPECT_LE(drawing.bottom, 4);
      }
    }
}

TEST(Alphabet, CapitalsReachFromTopToFoot) {
  for (const Named& named : all_alphabets())
    for (const LetterDrawing& drawing : drawings_of(named)) {
      if (!is_capital_or_digit(drawing)) continue;
      SCOPED_TRACE(named.name + " " + drawing.character);
      // The round letters of three columns end in the middle column, which lies half a bead inside.
      EXPECT_GE(drawing.top, 0);
      EXPECT_LE(drawing.top, 1);
      EXPECT_LE(drawing.bottom, named.alphabet->height);
      EXPECT_GE(drawing.bottom, named.alphabet->height - 1);
    }
}

TEST(Alphabet, CapitalsAndDigitsDifferByThreeBeadsOrMore) {
  for (const Named& named : all_alphabets()) {
    const Likeness pair = closest(drawings_of(named), is_capital_or_digit);
    std::cout << named.name << ", capitals and digits: " << pair.letter << " and " << pair.other
              << " differ by " << pair.beads << " beads\n";
    // A narrow 0 differs from narrow M and W by two: why these two are wide unless asked.
    EXPECT_GE(pair.beads, named.narrow ? 2 : beads_apart) << named.name;
  }
}

TEST(Alphabet, AllLettersDifferByThreeBeadsOrMore) {
  for (const Named& named : all_alphabets()) {
    const Likeness pair = closest(drawings_of(named), is_letter);
    std::cout << named.name << ", all letters: " << pair.letter << " and " << pair.other << " differ by "
              << pair.beads << " beads\n";
    EXPECT_GE(pair.beads, named.narrow ? 2 : beads_apart) << named.name;
  }
}

TEST(Alphabet, SignsDifferFromAllElse) {
  for (const Named& named : all_alphabets()) {
    const auto any = [](const LetterDrawing&) { return true; };
    const Likeness pair = closest(drawings_of(named), any);
    std::cout << named.name << ", signs too: " << pair.letter << " and " << pair.other << " differ by "
              << pair.beads << " beads\n";
    EXPECT_GE(pair.beads, 1) << named.name;
  }
}

/// The beads of a letter hang together, so that it is one shape; the dots of i and j, the stroke of ø and accents apart.
TEST(Alphabet, LettersAreOfOnePiece) {
  const std::set<std::string> in_two{"i", "j", "ø"};
  for (const Named& named : all_alphabets())
    for (const LetterDrawing& drawing : drawings_of(named)) {
      if (!is_letter(drawing) || has_accent(*named.alphabet, drawing) || in_two.contains(drawing.character))
        continue;
      std::set<Dot> left(drawing.beads.begin(), drawing.beads.end());
      std::vector<Dot> open{*left.begin()};
      left.erase(left.begin());
      while (!open.empty()) {
        const Dot dot = open.back();
        open.pop_back();
        const bool turned = named.name == "five, along";
        const std::vector<Dot> beside{{0, turned ? 0 : -2},
                                      {0, turned ? 0 : 2},
                                      {turned ? -2 : 0, 0},
                                      {turned ? 2 : 0, 0},
                                      {-1, -1},
                                      {-1, 1},
                                      {1, -1},
                                      {1, 1}};
        for (const Dot by : beside)
          if (const Dot next{dot.across + by.across, dot.down + by.down}; left.erase(next) > 0)
            open.push_back(next);
      }
      EXPECT_TRUE(left.empty()) << named.name << " " << drawing.character;
    }
}

TEST(Alphabet, AnAccentedLetterIsItsLetterWithMore) {
  for (const Named& named : all_alphabets())
    for (const Composition& composition : named.alphabet->compositions) {
      SCOPED_TRACE(named.name + " " + composition.whole);
      const LetterDrawing& whole = *find_letter(*named.alphabet, composition.whole);
      LetterDrawing letter = *find_letter(*named.alphabet, composition.letter);
      if (letter.character == "i")
        std::erase_if(letter.beads, [](Dot dot) { return dot.down < 4; });  // its dot
      EXPECT_EQ(whole.width, letter.width);
      EXPECT_TRUE(
          std::includes(whole.beads.begin(), whole.beads.end(), letter.beads.begin(), letter.beads.end()));
      EXPECT_GE(difference(whole, letter), beads_apart);
      // An accent stands free: of all beads that touch one of the letter none is of the accent, but for the cedilla, which hangs on it.
      for (const Dot dot : whole.beads) {
        if (std::binary_search(letter.beads.begin(), letter.beads.end(), dot) ||
            dot.down > named.alphabet->height)
          continue;
        for (const Dot own : letter.beads) {
          const int aside = std::abs(dot.across - own.across), below = std::abs(dot.down - own.down);
          EXPECT_FALSE((aside == 0 && below == 2) || (aside == 1 && below == 1))
              << dot.across << " " << dot.down;
        }
      }
    }
}

TEST(Alphabet, HoldsWhatItShould) {
  const std::string signs = ".,!?'-:&+/";
  const std::string capitals = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789";
  for (const Named& named : all_alphabets()) {
    for (const char c : capitals + signs)
      EXPECT_TRUE(find_letter(*named.alphabet, std::string(1, c))) << named.name << " " << c;
    EXPECT_TRUE(letters_of(*named.alphabet, "abcdefghijklmnopqrstuvwxyz").ok()) << named.name;
  }
  // All letters of ISO 8859-1, and the three of ISO 8859-15 that Latin-1 leaves out of French and Finnish names.
  const std::string latin = "ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖØÙÚÛÜÝÞßàáâãäåæçèéêëìíîïðñòóôõöøùúûüýþÿŒœŸ";
  for (const AlphabetName name : {AlphabetName::five_columns, AlphabetName::three_columns})
    for (const std::string_view character : code_points(latin))
      EXPECT_TRUE(letters_of(*find_alphabet(name, Running::across), character).ok())
          << alphabet_id(name) << " " << character;
}

TEST(Alphabet, ComposedAndDecomposedTextAreTheSame) {
  for (const AlphabetName name : {AlphabetName::five_columns, AlphabetName::three_columns}) {
    const Alphabet& alphabet = *find_alphabet(name, Running::across);
    EXPECT_EQ(*letters_of(alphabet, "Ren\u00E9e \u00C5sa fa\u00E7ade na\u00EFf"),
              *letters_of(alphabet, "Rene\u0301e A\u030Asa fac\u0327ade nai\u0308f"));
  }
}

TEST(Alphabet, SmallLettersOfThreeColumnsStandAsCapitals) {
  const Alphabet& three = *find_alphabet(AlphabetName::three_columns, Running::across);
  EXPECT_EQ(*letters_of(three, "Gr\u00FC\u00DFe"), *letters_of(three, "GR\u00DCSSE"));
  const Alphabet& five = *find_alphabet(AlphabetName::five_columns, Running::across);
  EXPECT_NE(*letters_of(five, "a"), *letters_of(five, "A"));
}

TEST(Alphabet, AMissingCharacterIsNamed) {
  const Alphabet& five = *find_alphabet(AlphabetName::five_columns, Running::across);
  const auto missing = letters_of(five, "no \u017B");
  ASSERT_FALSE(missing.ok());
  EXPECT_EQ(missing.problem().code, ProblemCode::unknown_name);
  EXPECT_EQ(message(missing.problem()),
            "text 'no \u017B', character 4: found \u017B (U+017B), expected a character of the five-column "
            "alphabet");
  EXPECT_EQ(letters_of(five, "a\tb").problem().found, "(U+0009)");
  EXPECT_EQ(letters_of(five, "x\u0301").problem().found, "x\u0301 (with U+0301)");
  EXPECT_FALSE(letters_of(five, "\u0301").ok());
}

TEST(Alphabet, WhatIsNotUtf8IsSaidByByte) {
  const Alphabet& five = *find_alphabet(AlphabetName::five_columns, Running::across);
  for (const std::string bad : {"ab\xFFz", "ab\xC3", "ab\xE2\x82", "ab\xED\xA0\x80", "ab\x80"}) {
    const auto letters = letters_of(five, bad);
    ASSERT_FALSE(letters.ok());
    EXPECT_EQ(letters.problem().code, ProblemCode::bad_text);
    EXPECT_NE(letters.problem().found.find("byte 3"), std::string::npos) << letters.problem().found;
  }
}

struct Bad {
  const char* text;
  const char* found;
};

TEST(AlphabetText, FaultsAreNamedByLine) {
  const std::vector<Bad> all{{"height 12\nfrom 0\n|A  |\n|oo.|\n", "'o' in A"},
                             {"from 0\n|A  |\n|x .|\n", "'x' in A"},
                             {"from 0\n|A   |B  |\n|o . |o .|\n| o o|\n", "1 drawings"},
                             {"from 0\n|A   |\n|o   |\n| o o|\n", "A of 4 places"},
                             {"from 0\n|A  |\n|. .|\n", "A of 3 places"},
                             {"from 0\n|A  |\n|o .|\n\ncompose acute \u00C1=A\n", "A with acute"},
                             {"heigth 12\n", "'heigth 12'"}};
  for (const Bad& bad : all) {
    const auto alphabet = parse_alphabet("test", bad.text);
    ASSERT_FALSE(alphabet.ok()) << bad.text;
    EXPECT_EQ(alphabet.problem().code, ProblemCode::bad_text);
    EXPECT_NE(alphabet.problem().where.find("test, line "), std::string::npos);
    EXPECT_NE(message(alphabet.problem()).find(bad.found), std::string::npos) << message(alphabet.problem());
  }
}

TEST(AlphabetText, ADrawingIsWhatItShows) {
  const auto alphabet =
      parse_alphabet("test", "height 2\nfrom -1\n|A  |;|\n| o | |\n|o o|o|\n| . | |\n|o o|.|\n");
  ASSERT_TRUE(alphabet.ok()) << message(alphabet.problem());
  EXPECT_EQ(*find_letter(*alphabet, "A"),
            (LetterDrawing{"A", 3, -1, 2, {{0, 0}, {0, 2}, {1, -1}, {2, 0}, {2, 2}}}));
  EXPECT_EQ(*find_letter(*alphabet, ";"), (LetterDrawing{";", 1, 0, 0, {{0, 0}}}));
}

}  // namespace
}  // namespace evencount::picture
