#include <gtest/gtest.h>

#include "app/run.hpp"
#include "support/temporary_folder.hpp"

namespace evencount {
namespace {

using testing::example;
using testing::run;
using testing::slurp;

TEST(LabelsVerb, WritesEveryPaper) {
  const testing::TemporaryFolder folder;
  const std::string file = (folder.path() / "out.pdf").string();
  for (const char* what : {"labels", "pick-list", "packing-slip", "price-cards"}) {
    const auto ran = run({"labels", example("moonwatch"), "--what", what, "--kits", "2", "--language", "fr", "-o", file});
    EXPECT_EQ(ran.status, 0) << what << ran.err;
    EXPECT_TRUE(slurp(file).starts_with("%PDF")) << what;
  }
}

TEST(LabelsVerb, RefusesWhatItDoesNotKnow) {
  const auto status = [](std::vector<std::string> more) {
    std::vector<std::string> arguments{"labels", example("moonwatch"), "-o", "/nonexistent/out.pdf"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    return run(arguments).status;
  };
  EXPECT_EQ(status({"--what", "stickers"}), 2);
  EXPECT_EQ(status({"--sheet", "a4-1x1"}), 2);
  EXPECT_EQ(status({"--language", "tlh"}), 2);
  EXPECT_EQ(status({"--first", "22"}), 2);
  EXPECT_EQ(status({}), 3);
}

TEST(DrawVerb, DescribesAndSizesPicturesForTheWeb) {
  const testing::TemporaryFolder folder;
  const std::string svg = (folder.path() / "piece.svg").string(), png = (folder.path() / "band.png").string();
  const auto piece = run({"draw", example("moonwatch"), "--what", "piece", "--pixels", "900", "--alt", "-o", svg});
  EXPECT_EQ(piece.status, 0) << piece.err;
  EXPECT_TRUE(piece.out.starts_with("Moonwatch: 8 bands side by side: New moon, ")) << piece.out;
  const std::string text = slurp(svg);
  EXPECT_NE(text.find("width=\"900\""), std::string::npos);
  EXPECT_NE(text.find("<title>Moonwatch: 8 bands"), std::string::npos);
  EXPECT_NE(text.find("role=\"img\""), std::string::npos);
  const auto band = run({"draw", example("moonwatch"), "--what", "band", "--language", "de", "--pixels", "100", "--alt", "-o", png});
  EXPECT_EQ(band.status, 0) << band.err;
  EXPECT_NE(band.out.find("144 Perlen in 8 Farben"), std::string::npos) << band.out;
  const std::string bytes = slurp(png);
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(bytes[i]); };
  EXPECT_EQ(byte(18) << 8 | byte(19), 100);  // the width in the header, PNG specification 11.2.2
  EXPECT_NE(bytes.find("iTXtDescription"), std::string::npos);
}

TEST(WordsVerb, SpeaksEveryLanguageForEitherHand) {
  const testing::TemporaryFolder folder;
  const std::string file = (folder.path() / "words.txt").string();
  for (const char* language : {"en", "de", "es", "fr", "ja"})
    for (const char* hand : {"right", "left"}) {
      EXPECT_EQ(run({"words", example("moonwatch"), "--language", language, "--hand", hand, "--fold", "-o", file}).status, 0);
      const auto read = run({"read", file, "--against", example("moonwatch"), "--hand", hand});
      EXPECT_EQ(read.status, 0) << language << read.err;
      const std::string other = std::string(hand) == "left" ? "right" : "left";
      EXPECT_EQ(run({"read", file, "--against", example("moonwatch"), "--hand", other}).status, 1);
    }
}

}  // namespace
}  // namespace evencount
