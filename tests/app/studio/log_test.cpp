#include "app/studio/log.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <sstream>

#include "base/text.hpp"

namespace evencount::app::studio {
namespace {

TEST(Log, NoTerminalObeysALine) {
  EXPECT_EQ(without_controls("a\x1B[31mb\r\n\t\x7F" "c"), "a?[31mb????c");
  EXPECT_EQ(without_controls("\xC2\x9B" "31m \xC2\xA0é"), "?31m \xC2\xA0é") << "C1 has a way of its own to begin a command";
  EXPECT_EQ(without_controls("a\xE2\x80\xAE" "b\xE2\x81\xA6" "c"), "a?b?c");
  EXPECT_EQ(without_controls(std::string_view("a\0b\xFF\xC3", 5)), "a?b??");
  EXPECT_EQ(without_controls("Łódź – “🌙”"), "Łódź – “🌙”");
}

TEST(Log, WhateverWasSentIsOneLine) {
  std::mt19937 random(1);
  for (int i = 0; i < 1000; ++i) {
    std::string bytes;
    for (int j = 0; j < 40; ++j) bytes += static_cast<char>(random());
    std::ostringstream out;
    Log(out).line(bytes);
    const std::string line = out.str();
    ASSERT_TRUE(is_utf8(line));
    ASSERT_EQ(std::count_if(line.begin(), line.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; }), 1);
    ASSERT_EQ(line.back(), '\n');
  }
}

}  // namespace
}  // namespace evencount::app::studio
