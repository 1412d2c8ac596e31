#include "base/text.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace evencount {
namespace {

TEST(Text, WholeNumbers) {
  EXPECT_EQ(parse_integer("0"), 0);
  EXPECT_EQ(parse_integer("-12"), -12);
  EXPECT_EQ(parse_integer("007"), 7);
  EXPECT_EQ(parse_integer("9223372036854775807"), std::numeric_limits<std::int64_t>::max());
  for (const char* bad : {"", "-", "+1", " 1", "1 ", "1.0", "1e3", "0x10", "9223372036854775808", "12a"})
    EXPECT_EQ(parse_integer(bad), std::nullopt) << bad;
}

TEST(Text, WhatIsQuotedCanAlwaysBeShown) {
  EXPECT_EQ(quote("a\xFF" "b\xC3"), "'a?b?'");
  EXPECT_EQ(quote("\xE2\x82"), "'?" "?'");
  EXPECT_EQ(quote("Łódź 🌙"), "'Łódź 🌙'");
  std::mt19937 random(3);
  for (int i = 0; i < 2'000; ++i) {
    std::string bytes(random() % 60, ' ');
    for (char& byte : bytes) byte = static_cast<char>(random());
    EXPECT_TRUE(is_utf8(quote(bytes)));
  }
}

// The examples of RFC 3629, section 7, and of each length.
TEST(Text, CodePointsByName) {
  EXPECT_EQ(code_point_name("A≢Α."), "U+0041");
  EXPECT_EQ(code_point_name("é"), "U+00E9");
  EXPECT_EQ(code_point_name("≢Α."), "U+2262");
  EXPECT_EQ(code_point_name("日本語"), "U+65E5");
  EXPECT_EQ(code_point_name("\U000233B4"), "U+233B4");
  EXPECT_EQ(code_point_name("\U0010FFFF"), "U+10FFFF");
}

TEST(Text, DecimalNumbers) {
  EXPECT_EQ(parse_number("1.5"), 1.5);
  EXPECT_EQ(parse_number("-0.25"), -0.25);
  EXPECT_EQ(parse_number("1e3"), 1000.0);
  EXPECT_EQ(parse_number("17"), 17.0);
  for (const char* bad :
       {"", "-", ".", "1,5", " 1", "1 ", "nan", "NaN", "inf", "-infinity", "1e999", "0x1p3", "+1", "1.5mm"})
    EXPECT_EQ(parse_number(bad), std::nullopt) << bad;
}

TEST(Text, NumbersArePlain) {
  EXPECT_EQ(plain_number(1.5), "1.5");
  EXPECT_EQ(plain_number(1.0), "1");
  EXPECT_EQ(plain_number(100.0), "100");
  EXPECT_EQ(plain_number(-0.0), "0");
  EXPECT_EQ(plain_number(-0.001), "0");
  EXPECT_EQ(plain_number(1.23456, 3), "1.235");
  EXPECT_EQ(plain_number(1234.5, 0), "1234");
  EXPECT_EQ(fixed_number(1.5, 2), "1.50");
  EXPECT_EQ(fixed_number(-0.001, 2), "0.00");
  EXPECT_EQ(fixed_number(-0.01, 2), "-0.01");
  EXPECT_EQ(fixed_number(0, 0), "0");
}

RC_GTEST_PROP(TextProperty, PlainNumbersComeBack, (int hundredths)) {
  const double value = hundredths / 100.0;
  RC_ASSERT(parse_number(plain_number(value, 2)) == value);
}

TEST(Text, TrimAndSplit) {
  EXPECT_EQ(trim(" \t a b \r\n"), "a b");
  EXPECT_EQ(trim(" \n "), "");
  EXPECT_EQ(trim(""), "");
  EXPECT_EQ(split("a,b,,c", ','), (std::vector<std::string_view>{"a", "b", "", "c"}));
  EXPECT_EQ(split("", ','), (std::vector<std::string_view>{""}));
  EXPECT_EQ(split(",", ','), (std::vector<std::string_view>{"", ""}));
}

TEST(Text, CaseIsAsciiOnly) {
  EXPECT_EQ(lower_ascii("ABZ abz É1"), "abz abz É1");
  EXPECT_EQ(upper_ascii("ABZ abz é1"), "ABZ ABZ é1");
}

TEST(Text, QuotedIsShortAndHarmless) {
  EXPECT_EQ(quote("2A"), "'2A'");
  EXPECT_EQ(quote(""), "''");
  EXPECT_EQ(quote("a\nb\x1b[0m\x7f"), "'a?b?[0m?'");
  EXPECT_EQ(quote(std::string(40, 'x')), "'" + std::string(40, 'x') + "'");
  EXPECT_EQ(quote(std::string(41, 'x')), "'" + std::string(39, 'x') + "…'");
}

TEST(Text, QuotedNeverCutsALetterInTwo) {
  for (std::size_t before = 0; before < 45; ++before) {
    std::string text(before, 'x');
    for (int i = 0; i < 20; ++i) text += "é…𝄞";
    EXPECT_TRUE(is_utf8(quote(text))) << before;
  }
}

TEST(Text, Utf8) {
  for (const char* good :
       {"", "abc", "é", "–", "𝄞", "\xEF\xBF\xBD", "\xF4\x8F\xBF\xBF", "\xED\x9F\xBF", "\xEE\x80\x80"})
    EXPECT_TRUE(is_utf8(good)) << good;
  for (const char* bad :
       {"\x80", "\xC3", "\xC3(", "\xC0\x80", "\xC1\xBF", "\xE0\x80\x80", "\xE2\x82", "\xED\xA0\x80",
        "\xF0\x80\x80\x80", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF", "a\xE2\x82"})
    EXPECT_FALSE(is_utf8(bad)) << bad;
  EXPECT_TRUE(is_utf8(std::string_view("\0a", 2)));
}

/// The four forms of RFC 3629, written out once more.
std::string encode(std::uint32_t code) {
  const auto byte = [](std::uint32_t value) { return static_cast<char>(static_cast<unsigned char>(value)); };
  if (code < 0x80) return {byte(code)};
  if (code < 0x800) return {byte(0xC0 | code >> 6), byte(0x80 | (code & 0x3F))};
  if (code < 0x10000)
    return {byte(0xE0 | code >> 12), byte(0x80 | (code >> 6 & 0x3F)), byte(0x80 | (code & 0x3F))};
  return {byte(0xF0 | code >> 18), byte(0x80 | (code >> 12 & 0x3F)), byte(0x80 | (code >> 6 & 0x3F)),
          byte(0x80 | (code & 0x3F))};
}

TEST(Text, EveryCodePointIsUtf8AndSurrogatesAreNot) {
  for (std::uint32_t code = 0; code <= 0x10FFFF; ++code) {
    const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
    ASSERT_EQ(is_utf8(encode(code)), !surrogate) << code;
  }
}

}  // namespace
}  // namespace evencount
