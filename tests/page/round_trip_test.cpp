/// A booklet's PDF read back by tools that know nothing of it.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "page/booklet.hpp"
#include "project/json.hpp"
#include "random_project.hpp"
#include "support/sanitized.hpp"
#include "support/temporary_folder.hpp"
#include "wording/reader.hpp"
#include "wording/words.hpp"

namespace evencount::page {
namespace {

namespace fs = std::filesystem;

std::string read_file(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

/// What `command` prints, or a failure of the test.
std::string output_of(const std::string& command, const fs::path& folder) {
  const fs::path file = folder / "output.txt";
  EXPECT_EQ(std::system((command + " > " + file.string() + " 2>&1").c_str()), 0) << command << "\n"
                                                                                 << read_file(file);
  return read_file(file);
}

class RoundTrip : public ::testing::Test {
 protected:
  fs::path write(const project::Project& project, const BookletOptions& options = {}) {
    const auto pdf = booklet_pdf(project, options);
    EXPECT_TRUE(pdf.ok()) << message(pdf.problem());
    const fs::path file = folder() / "booklet.pdf";
    std::ofstream(file, std::ios::binary) << *pdf;
    return file;
  }

  void expect_words(const project::Project& project, const BookletOptions& options,
                    const std::string& which) {
    const fs::path file = write(project, options);
    for (const char* mode : {"", "-raw"}) {
      const std::string text =
          output_of(fmt::format("pdftotext -enc UTF-8 {} {} -", mode, file.string()), folder());
      const auto bands = wording::read_words(text, {.legend = project::letters_of(project)});
      ASSERT_TRUE(bands.ok()) << which << " pdftotext " << mode << ": " << message(bands.problem());
      ASSERT_EQ(bands->size(), project.bands.size()) << which << " pdftotext " << mode;
      for (std::size_t i = 0; i < project.bands.size(); ++i) {
        EXPECT_EQ((*bands)[i].name, project.bands[i].name) << which << " pdftotext " << mode;
        EXPECT_EQ((*bands)[i].chart, project.bands[i].chart) << which << " pdftotext " << mode;
        EXPECT_EQ((*bands)[i].closure, project.bands[i].closure) << which << " pdftotext " << mode;
      }
    }
  }

  [[nodiscard]] fs::path folder() const { return folder_.path(); }

 private:
  testing::TemporaryFolder folder_;
};

TEST_F(RoundTrip, TheWordsOfRandomBookletsRebuildTheirCharts) {
  for (std::uint32_t seed = 1; seed <= (sanitized ? 8 : 25); ++seed)
    expect_words(random_project(seed), {.paper = seed % 2 ? Paper::a4 : Paper::letter},
                 fmt::format("seed {}", seed));
}

TEST_F(RoundTrip, TheWordsOfTheExamplesRebuildTheirCharts) {
  int examples = 0;
  for (const auto& entry : fs::directory_iterator(fs::path(EVENCOUNT_SOURCE_DIR) / "examples")) {
    if (!entry.path().string().ends_with(".evencount.json")) continue;
    const auto project = project::parse_project(read_file(entry.path()));
    ASSERT_TRUE(project.ok()) << message(project.problem());
    expect_words(*project, {}, entry.path().filename());
    expect_words(*project, {.paper = Paper::letter, .signs = drawing::CellSigns::none}, entry.path().filename());
    ++examples;
  }
  EXPECT_GE(examples, 1);
}

/// The reader puts up with rows out of order; a person who copies them from the page should not have to.
TEST_F(RoundTrip, RowsComeOutWholeAndInOrder) {
  const project::Project project = one_band_project(6, 24, weave::Closure::zip, 4, 3);
  const auto words = wording::write_words(*project::plan_of(project.bands[0]), project::letters_of(project),
                                          project.bands[0].name);
  const fs::path file = write(project);
  for (const char* mode : {"", "-raw"}) {
    const std::string text =
        output_of(fmt::format("pdftotext -enc UTF-8 {} {} -", mode, file.string()), folder());
    std::size_t at = text.find("\n" + words.heading + "\n");
    ASSERT_NE(at, std::string::npos) << mode;
    for (const auto& line : words.lines) {
      at = text.find("\n" + line.label + ": " + line.beads + fmt::format(" {}\n", line.count), at);
      ASSERT_NE(at, std::string::npos) << "pdftotext " << mode << ", " << line.label;
    }
  }
}

TEST_F(RoundTrip, TheFileIsSoundAndTellsWhatItIs) {
  project::Project project = random_project(9);
  project.title = "Tide & Tür";
  project.designer = "Somebody Quiet";
  const fs::path file = write(project, {.created_unix = 1'740'830'400});  // 2025-03-01T12:00:00Z
  output_of("qpdf --check " + file.string(), folder());
  const std::string info = output_of("TZ=UTC pdfinfo -enc UTF-8 -isodates " + file.string(), folder());
  EXPECT_NE(info.find("Tide & Tür"), std::string::npos) << info;
  EXPECT_NE(info.find("Somebody Quiet"), std::string::npos) << info;
  EXPECT_NE(info.find("Evencount"), std::string::npos) << info;
  EXPECT_NE(info.find("2025-03-01T12:00:00Z"), std::string::npos) << info;
  const std::string objects =
      output_of("qpdf --qdf --object-streams=disable " + file.string() + " -", folder());
  EXPECT_NE(objects.find("/Lang (en)"), std::string::npos);
  EXPECT_NE(objects.find("/Outlines"), std::string::npos);
  EXPECT_NE(objects.find("/PageLabels"), std::string::npos);
}

TEST_F(RoundTrip, WithoutADateThereIsNone) {
  const fs::path file = write(random_project(9));
  const std::string info = output_of("pdfinfo " + file.string(), folder());
  EXPECT_EQ(info.find("CreationDate"), std::string::npos) << info;
}

TEST_F(RoundTrip, OnlyTheBookletsFontsAreUsed) {
  const std::string fonts = output_of("pdffonts " + write(random_project(6)).string(), folder());
  std::istringstream lines(fonts);
  std::string line;
  std::getline(lines, line);
  std::getline(lines, line);
  int used = 0;
  for (; std::getline(lines, line); ++used)
    EXPECT_TRUE(line.find("EBGaramond") != std::string::npos || line.find("Lato") != std::string::npos)
        << line;
  EXPECT_GE(used, 3);
}

TEST_F(RoundTrip, SignsInAPictureAreNotReadAsWords) {
  drawing::Drawing sheet{millimetres(80), millimetres(40), {}};
  sheet.marks = {drawing::Text{.at = {10, 10}, .size_pt = 10, .text = "Spoken"},
                 drawing::Text{.at = {10, 20}, .size_pt = 10, .text = "Drawn", .in_picture = true}};
  const fs::path file = folder() / "sheet.pdf";
  std::ofstream(file, std::ios::binary) << *to_pdf({sheet}, {});
  const std::string text = output_of("pdftotext " + file.string() + " -", folder());
  EXPECT_NE(text.find("Spoken"), std::string::npos);
  EXPECT_EQ(text.find("Drawn"), std::string::npos);
}

}  // namespace
}  // namespace evencount::page
