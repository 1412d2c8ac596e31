#include "language/language.hpp"
#include "language/texts.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

namespace evencount::language {
namespace {

struct Placeholder {
  std::string name;
  std::size_t forms = 0;  ///< 0 where it is filled in as it is
};

/// What stands in braces, and in the forms of a choice.
std::vector<Placeholder> placeholders(std::string_view text) {
  std::vector<Placeholder> found;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] != '{') continue;
    std::size_t end = i + 1;
    for (int depth = 1; end < text.size(); ++end) {
      depth += text[end] == '{' ? 1 : text[end] == '}' ? -1 : 0;
      if (depth == 0) break;
    }
    const std::string_view inside = text.substr(i + 1, end - i - 1);
    const auto bar = inside.find('|');
    const auto forms = bar == std::string_view::npos
                           ? 0
                           : 1 + static_cast<std::size_t>(std::count(inside.begin() + static_cast<std::ptrdiff_t>(bar) + 1, inside.end(), '|'));
    found.push_back({std::string(inside.substr(0, bar)), forms});
    if (bar != std::string_view::npos)
      for (const Placeholder& inner : placeholders(inside.substr(bar))) found.push_back(inner);
    i = end;
  }
  return found;
}

std::set<std::string> filled_names(std::string_view text) {
  std::set<std::string> names;
  for (const Placeholder& one : placeholders(text))
    if (one.forms == 0) names.insert(one.name);
  return names;
}

TEST(Language, EveryTextIsThere) {
  for (const Language& language : languages())
    for (const NamedText& named : named_texts())
      EXPECT_FALSE(language.text(named.text).empty()) << language.tag << ", " << named.name;
}

// Inches stand in English alone.
TEST(Language, EveryTextHasTheSameValues) {
  for (const Language& language : languages())
    for (const NamedText& named : named_texts()) {
      auto expected = filled_names(english().text(named.text));
      if (named.text == &Texts::both_units) expected.erase("in");
      auto found = filled_names(language.text(named.text));
      if (named.text == &Texts::both_units) found.erase("in");
      EXPECT_EQ(found, expected) << language.tag << ", " << named.name;
    }
}

TEST(Language, EveryChoiceHasAllItsForms) {
  const std::set<std::string> yes_or_no{"last"};
  for (const Language& language : languages())
    for (const NamedText& named : named_texts())
      for (const Placeholder& one : placeholders(language.text(named.text)))
        if (one.forms > 0) {
          EXPECT_EQ(one.forms, yes_or_no.contains(one.name) ? 2 : static_cast<std::size_t>(language.plurals))
              << language.tag << ", " << named.name;
        }
}

TEST(Language, BracesAreEven) {
  for (const Language& language : languages())
    for (const NamedText& named : named_texts()) {
      int depth = 0;
      for (const char c : language.text(named.text)) {
        depth += c == '{' ? 1 : c == '}' ? -1 : 0;
        EXPECT_TRUE(depth >= 0 && depth <= 2) << language.tag << ", " << named.name;
      }
      EXPECT_EQ(depth, 0) << language.tag << ", " << named.name;
    }
}

TEST(Language, MonthsAreTwelve) {
  for (const Language& language : languages()) {
    const auto months = language.text(&Texts::months);
    EXPECT_EQ(std::count(months.begin(), months.end(), ' '), 11) << language.tag;
    const auto counts = language.text(&Texts::spoken_counts);
    EXPECT_EQ(std::count(counts.begin(), counts.end(), ' '), 12) << language.tag;
  }
}

TEST(Language, NamesAreUnique) {
  std::set<std::string_view> seen;
  for (const NamedText& named : named_texts()) EXPECT_TRUE(seen.insert(named.name).second) << named.name;
}

const Language& in(std::string_view tag) {
  return **find_language(tag);
}

TEST(Language, SaysPlurals) {
  EXPECT_EQ(english().say(&Texts::columns_counted, {{"n", 1}}), "1 column");
  EXPECT_EQ(english().say(&Texts::columns_counted, {{"n", 6}}), "6 columns");
  EXPECT_EQ(in("de").say(&Texts::edge_counted, {{"n", 24}}), "24 Perlen entlang der Kante");
  EXPECT_EQ(in("fr").say(&Texts::columns_counted, {{"n", 0}}), "0 colonne");
  EXPECT_EQ(in("es").say(&Texts::columns_counted, {{"n", 0}}), "0 columnas");
  EXPECT_EQ(in("ja").say(&Texts::columns_counted, {{"n", 6}}), "6列");
}

TEST(Language, WhatIsFilledInIsNotLookedAtAgain) {
  EXPECT_EQ(english().say(&Texts::word_chart, {{"name", "{name} {n|a|b}"}}), "Word chart: {name} {n|a|b}");
}

TEST(Language, ChoosesByYesAndNo) {
  const auto text = [](bool last) { return in("ja").say(&Texts::turn, {{"last", last}}); };
  EXPECT_EQ(text(false), "向きを変え");
  EXPECT_EQ(text(true), "向きを変える");
}

TEST(Language, GroupsNumbers) {
  EXPECT_EQ(english().count(1152), "1,152");
  EXPECT_EQ(english().count(-1152), "-1,152");
  EXPECT_EQ(english().count(999), "999");
  EXPECT_EQ(in("de").count(1234567), "1.234.567");
  EXPECT_EQ(in("es").count(1152), "1152");
  EXPECT_EQ(in("es").count(11520), "11\u00A0520");
  EXPECT_EQ(in("fr").count(1152), "1\u00A0152");
  for (const Language& language : languages())
    for (std::int64_t value = 1; value < 10'000'000'000; value = 7 * value + 3) {
      std::string shown = language.count(value);
      std::erase_if(shown, [](char c) { return c < '0' || c > '9'; });
      EXPECT_EQ(shown, std::to_string(value)) << language.tag;
    }
}

TEST(Language, WritesFractions) {
  EXPECT_EQ(english().number(8.1), "8.1");
  EXPECT_EQ(in("de").number(8.1), "8,1");
  EXPECT_EQ(in("fr").fixed(2, 1), "2,0");
  EXPECT_EQ(english().both_units(millimetres(8.1)), "8.1 mm (0.32 in)");
  EXPECT_EQ(in("de").both_units(millimetres(8.1)), "8,1\u00A0mm");
}

TEST(Language, WritesDates) {
  constexpr std::int64_t first_of_march_2024 = 1'709'251'200;
  EXPECT_EQ(english().date(first_of_march_2024), "1 March 2024");
  EXPECT_EQ(in("fr").date(first_of_march_2024), "1er mars 2024");
  EXPECT_EQ(in("de").date(first_of_march_2024 - 1), "29. Februar 2024");
  EXPECT_EQ(in("es").date(0), "1 de enero de 1970");
  EXPECT_EQ(in("ja").date(86'400), "1970年1月2日");
}

TEST(Language, Lists) {
  EXPECT_EQ(english().list({}), "");
  EXPECT_EQ(english().list({"A"}), "A");
  EXPECT_EQ(english().list({"A", "B", "C"}), "A, B and C");
  EXPECT_EQ(in("ja").list({"A", "B", "C"}), "A、BとC");
}

TEST(Language, BeginsSentences) {
  EXPECT_EQ(capitalised("row"), "Row");
  EXPECT_EQ(capitalised("öffnen"), "Öffnen");
  EXPECT_EQ(capitalised("1 row"), "1 row");
  EXPECT_EQ(capitalised("第3段"), "第3段");
  EXPECT_EQ(capitalised(""), "");
}

TEST(Language, IsFoundByItsTag) {
  EXPECT_EQ((*find_language("DE"))->name, "Deutsch");
  const auto none = find_language("tlh");
  ASSERT_FALSE(none.ok());
  EXPECT_EQ(none.problem().code, ProblemCode::unknown_name);
  EXPECT_EQ(none.problem().expected, "one of en, de, es, fr, ja");
}

}  // namespace
}  // namespace evencount::language
