/// Files of every format that was ever released: they open for ever. A released file under data/versions/ is never edited; a new format
/// brings its own.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <filesystem>

#include "project/case_file.hpp"
#include "project/json.hpp"

namespace evencount::project {
namespace {

std::string file_of(int format) {
  return fmt::format(EVENCOUNT_SOURCE_DIR "/tests/project/data/versions/{}.evencount.json", format);
}

Project opened(const std::string& text) {
  auto project = parse_project(text);
  EXPECT_TRUE(project.ok()) << message(project.problem());
  return project.ok() ? *project : Project{};
}

TEST(Versions, AFileOfEveryFormatIsKept) {
  for (int format = 1; format <= newest_format; ++format) EXPECT_TRUE(std::filesystem::exists(file_of(format))) << file_of(format);
}

TEST(Versions, FilesOfEveryFormatAreReadWrittenAndReadAgainTheSame) {
  for (int format = 1; format <= newest_format; ++format) {
    const std::string text = testing::read_file(file_of(format));
    EXPECT_NE(text.find(fmt::format("\"format\": {},", format)), std::string::npos) << file_of(format);
    const Project project = opened(text);
    const std::string written = to_json(project);
    EXPECT_EQ(opened(written), project) << file_of(format);
    EXPECT_EQ(to_json(opened(written)), written) << file_of(format);
    if (format == newest_format) {
      EXPECT_EQ(written, text) << "the newest format is written byte for byte as it was";
    }
  }
}

TEST(Versions, FormatOneMeansWhatItMeant) {
  const Project project = opened(testing::read_file(file_of(1)));
  EXPECT_EQ(project.title, "Every field of format 1");
  EXPECT_EQ(project.subtitle, "kept for good");
  EXPECT_EQ(project.designer, "A maker");
  EXPECT_EQ(project.summary, "A paragraph for the first page, with ä, ñ, 月 and \"quotes\".");
  EXPECT_EQ(project.finished_size, "for wrists of 15 to 18 cm");
  EXPECT_EQ(project.terms, "Make as many as you like; don't sell the words.");
  ASSERT_EQ(project.beads.size(), 2u);
  EXPECT_EQ(project.beads[1].id, "round-8");
  EXPECT_DOUBLE_EQ(project.beads[1].diameter.mm(), 3.1);
  EXPECT_DOUBLE_EQ(project.beads[1].length.mm(), 2.2);
  EXPECT_EQ(project.thread.id, "braided-6lb");
  EXPECT_EQ(project.thread_habits.reinforced_rows, 3);
  EXPECT_DOUBLE_EQ(project.thread_habits.tail.mm(), 200);
  EXPECT_DOUBLE_EQ(project.allowance, 0.15);
  ASSERT_EQ(project.legend.size(), 3u);
  EXPECT_EQ(project.legend[2].letter, "AA");
  EXPECT_EQ(project.legend[2].bead, "round-8");
  ASSERT_TRUE(project.legend[0].pack.has_value());
  ASSERT_EQ(project.forms.size(), 2u);
  EXPECT_EQ(project.forms[1].id, "pebble");
  ASSERT_EQ(project.gauges.size(), 1u);
  EXPECT_EQ(project.gauges[0].named.hand, "mine");
  ASSERT_EQ(project.bands.size(), 2u);
  EXPECT_EQ(project.bands[0].name, "Stripe");
  EXPECT_EQ(project.bands[0].copies, 2);
  EXPECT_EQ(project.bands[0].chart.columns(), 6);
  EXPECT_EQ(project.bands[0].chart.edge(), 4);
  EXPECT_EQ(project.bands[1].technique, "square");
  ASSERT_TRUE(project.strand.has_value());
  EXPECT_EQ(project.strand->layout, "# one band and what fills the wrist\ncords 1 of elastic 0.8mm\nstring round-8, fill with round-8");
  EXPECT_DOUBLE_EQ(project.strand->ease.mm(), 20);
  ASSERT_EQ(project.strand->sizes.size(), 1u);
  ASSERT_EQ(project.findings.size(), 2u);
  EXPECT_EQ(project.findings[0].unit, "m");
  EXPECT_EQ(project.tools, (std::vector<std::string>{"scissors", "bead mat"}));
  EXPECT_EQ(project.assembly, (std::vector<std::string>{"String the carriers.", "Close the clasp."}));
  ASSERT_TRUE(project.costing.has_value());
  // What its writer's program did not know comes back with its digits.
  EXPECT_EQ(project.unknown, (UnknownFields{{"from_elsewhere", R"({"kept":["as it is",1.50]})"}}));
}

TEST(Versions, ALaterFormatIsRefusedInASentence) {
  std::string text = testing::read_file(file_of(newest_format));
  const std::string now = fmt::format("\"format\": {},", newest_format);
  text.replace(text.find(now), now.size(), fmt::format("\"format\": {},", newest_format + 1));
  const auto project = parse_project(text);
  ASSERT_FALSE(project.ok());
  EXPECT_EQ(project.problem().code, ProblemCode::newer_format);
  EXPECT_EQ(message(project.problem()), fmt::format("/format: found format {}, expected format {} or older: this file was saved by a newer version",
                                                    newest_format + 1, newest_format));
}

}  // namespace
}  // namespace evencount::project
