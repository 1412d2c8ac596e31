// The fuzzer's property over every kept crasher and over seeded mutations of a valid word chart.

#include <gtest/gtest.h>

#include <cstdint>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "random_chart.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace evencount::wording {
namespace {

using namespace testing_support;

void run_fuzz_entry(const std::string& text) {
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(text.data()), text.size());
}

std::vector<std::string> kept_texts() {
  std::vector<std::string> texts;
  for (const auto& entry : std::filesystem::directory_iterator(EVENCOUNT_SOURCE_DIR "/fuzz/crashers/words")) {
    std::ifstream file(entry.path(), std::ios::binary);
    texts.emplace_back(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>());
  }
  return texts;
}

TEST(Crashers, AllPass) {
  const auto texts = kept_texts();
  EXPECT_GE(texts.size(), 6u);
  for (const std::string& text : texts) run_fuzz_entry(text);
}

std::string mutated(Random& random, std::string text) {
  const std::string pieces[] = {"Row 3 (R): ",
                                "Rows 1-2: ",
                                ", ",
                                "(2)A",
                                "\n",
                                "  ",
                                "x",
                                "A2",
                                "\xE2\x98\x90",
                                ":",
                                "*",
                                "* x 2",
                                "dec, ",
                                "; ",
                                "Round 3 (R): ",
                                "work rows 3-4 twice",
                                ", increase at the end"};
  for (int change = pick(random, 1, 6); change > 0 && !text.empty(); --change) {
    const std::size_t at = random() % text.size();
    switch (pick(random, 0, 4)) {
      case 0:
        text[at] = static_cast<char>(random() % 256);
        break;
      case 1:
        text.erase(at, 1 + random() % 8);
        break;
      case 2:
        text.insert(at, pieces[random() % std::size(pieces)]);
        break;
      case 3:
        text.insert(at, text.substr(random() % text.size(), random() % 40));
        break;
      default:
        std::swap(text[at], text[random() % text.size()]);
    }
  }
  return text;
}

TEST(Crashers, MutationsOfAValidWordChart) {
  Random random(5);
  const auto texts = kept_texts();
  for (int i = 0; i < 5000; ++i) run_fuzz_entry(mutated(random, texts[random() % texts.size()]));
}

TEST(Crashers, RandomBytes) {
  Random random(6);
  for (int i = 0; i < 500; ++i) {
    std::string text(random() % 300, ' ');
    for (char& c : text) c = static_cast<char>(random() % 256);
    run_fuzz_entry(text);
  }
}

}  // namespace
}  // namespace evencount::wording
