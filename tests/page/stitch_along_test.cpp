#include "page/stitch_along.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <sstream>

#include "along_text.hpp"
#include "page/along_hand.hpp"
#include "page/along_markup.hpp"
#include "project/json.hpp"
#include "random_project.hpp"
#include "weave/technique.hpp"
#include "wording/reader.hpp"

namespace evencount::page {
namespace {

namespace fs = std::filesystem;

project::Project example(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  auto project = project::parse_project(text.str());
  EXPECT_TRUE(project.ok()) << path;
  return *project;
}

project::Project moonwatch() {
  return example(fs::path(EVENCOUNT_SOURCE_DIR) / "examples/moonwatch.evencount.json");
}

/// Both demos, every technique, and what chance makes of the shapes.
std::vector<std::pair<std::string, project::Project>> all_projects() {
  std::vector<std::pair<std::string, project::Project>> all;
  for (const char* folder : {"examples", "examples/techniques"})
    for (const auto& entry : fs::directory_iterator(fs::path(EVENCOUNT_SOURCE_DIR) / folder))
      if (entry.path().string().ends_with(".evencount.json")) all.emplace_back(entry.path().filename(), example(entry.path()));
  for (std::uint32_t seed = 1; seed <= 12; ++seed) all.emplace_back(fmt::format("seed {}", seed), random_project(seed));
  return all;
}

std::optional<chart::Chart> chart_read(const std::string& words, const project::Project& project) {
  const auto bands = wording::read_words(words, {.legend = project::letters_of(project)});
  EXPECT_TRUE(bands.ok()) << message(bands.problem()) << "\n" << words;
  if (!bands || bands->size() != 1) return std::nullopt;
  return bands->front().chart;
}

TEST(StitchAlong, ItsWordsMakeTheChartsForBothHands) {
  std::set<std::string> techniques;
  int left_handed = 0;
  for (const auto& [name, project] : all_projects()) {
    const auto along = stitch_along(project);
    ASSERT_TRUE(along.ok()) << name << ": " << message(along.problem());
    for (std::size_t i = 0; i < project.bands.size(); ++i) {
      const project::Band& band = project.bands[i];
      techniques.insert(band.technique);
      EXPECT_EQ(chart_read(words_on_page(along->html, i, "right"), project), band.chart) << name << ", " << band.name;
      const std::string left = words_on_page(along->html, i, "left");
      const auto mirrored = chart::mirrored(band.chart);
      EXPECT_EQ(!left.empty(), weave::make_plan(band.technique, mirrored, {band.closure, band.begin_at}).ok()) << name << ", " << band.name;
      if (left.empty()) continue;
      EXPECT_EQ(chart_read(left, project), mirrored) << name << ", " << band.name;
      ++left_handed;
    }
  }
  EXPECT_EQ(techniques.size(), weave::techniques().size());
  EXPECT_GT(left_handed, 25);
}

TEST(StitchAlong, TheLeftHandGoesTheOtherWay) {
  const std::string html = stitch_along(moonwatch())->html;
  const auto hands = design_on_page(html)["bands"][0]["hands"];
  ASSERT_EQ(hands["right"]["rows"].size(), hands["left"]["rows"].size());
  for (std::size_t row = 0; row < hands["right"]["rows"].size(); ++row) {
    const std::string right = hands["right"]["rows"][row]["travel"], left = hands["left"]["rows"][row]["travel"];
    EXPECT_EQ(std::set({right, left}), (std::set<std::string>{"left", "right"})) << row;
  }
  EXPECT_NE(words_on_page(html, 0, "right").find("Rows 1–2 (L): "), std::string::npos);
  EXPECT_NE(words_on_page(html, 0, "left").find("Rows 1–2 (R): "), std::string::npos);
}

/// Letters of a row's words, bead by bead.
std::vector<std::string> beads_of_line(const std::string& line) {
  static const std::regex run(R"(\((\d+)\)([A-Z]+))");
  std::vector<std::string> beads;
  const std::size_t colon = line.find("): ") == std::string::npos ? line.find(": ") : line.rfind(": ");
  for (std::sregex_iterator it(line.begin() + static_cast<std::ptrdiff_t>(colon), line.end(), run), end; it != end; ++it)
    beads.insert(beads.end(), std::stoul((*it)[1]), (*it)[2]);
  return beads;
}

/// The chart as it is painted: each row's letters at its places, column 0 on the left whichever hand works it.
chart::Chart painted(const nlohmann::json& hand, const std::string& words, const project::Band& band, const project::Project& project) {
  const auto letters = project::letters_of(project);
  auto chart = *chart::Chart::make(band.chart.columns(), band.chart.edge(), chart::no_bead);
  std::istringstream lines(words);
  std::string line;
  std::size_t row = 0;
  const bool squares = band.technique == "right-angle";
  while (std::getline(lines, line)) {
    if (!line.starts_with("Row") || line.find("(") == std::string::npos || row == hand["rows"].size()) continue;
    const auto beads = beads_of_line(line);
    const auto& places = hand["rows"][row++]["places"];
    EXPECT_EQ(places.size(), 2 * beads.size()) << line;
    for (std::size_t i = 0; i < beads.size(); ++i) {
      const int x = places[2 * i], y = places[2 * i + 1];
      const chart::Cell cell{squares ? x : x / 2, squares ? y : y / 2};
      EXPECT_TRUE(chart.contains(cell) && chart.at(cell) == chart::no_bead) << line << ": " << x << ", " << y;
      if (!chart.contains(cell)) return chart;
      const auto bead = std::find(letters.begin(), letters.end(), beads[i]) - letters.begin();
      chart.set(cell, static_cast<chart::Bead>(bead));
    }
  }
  EXPECT_EQ(row, hand["rows"].size());
  return chart;
}

TEST(StitchAlong, ItsPlacesPaintTheChartAlikeForBothHands) {
  for (const auto& [name, project] : all_projects()) {
    const auto along = stitch_along(project);
    ASSERT_TRUE(along.ok()) << name;
    const auto design = design_on_page(along->html);
    for (std::size_t i = 0; i < project.bands.size(); ++i) {
      const project::Band& band = project.bands[i];
      if (band.technique == "peyote-bezel") continue;  // its rounds say "Round"
      for (const auto& [hand, data] : design["bands"][i]["hands"].items()) {
        std::string words = words_on_page(along->html, i, hand);
        words = std::regex_replace(words, std::regex("Round"), "Row");
        EXPECT_EQ(painted(data, words, band, project), band.chart) << name << ", " << band.name << ", " << hand;
      }
    }
  }
}

TEST(StitchAlong, CountsOfRowsAndSuppliesAreTheSame) {
  for (const auto& [name, project] : all_projects()) {
    const std::string html = stitch_along(project)->html;
    std::int64_t in_rows = 0, supplied = 0;
    static const std::regex run(R"(\((\d+)\)[A-Z])"), count(R"re(<td class="number">([\d,]+)</td><td class="number">)re");
    for (std::size_t i = 0; i < project.bands.size(); ++i) {
      const std::string words = words_on_page(html, i, "right");
      for (std::sregex_iterator it(words.begin(), words.end(), run), end; it != end; ++it)
        in_rows += project.bands[i].copies * std::stoll((*it)[1]);
    }
    for (std::sregex_iterator it(html.begin(), html.end(), count), end; it != end; ++it) {
      std::string digits = (*it)[1];
      std::erase(digits, ',');
      supplied += std::stoll(digits);
    }
    EXPECT_EQ(in_rows, supplied) << name;
    EXPECT_GT(in_rows, 0) << name;
  }
}

TEST(StitchAlong, SameProjectSameBytes) {
  for (const std::uint32_t seed : {1u, 7u}) EXPECT_EQ(stitch_along(random_project(seed))->html, stitch_along(random_project(seed))->html);
}

TEST(StitchAlong, KeysChangeWithTheDesignAlone) {
  project::Project project = moonwatch();
  const auto before = design_on_page(stitch_along(project)->html);
  project.summary += " Said in other words.";
  EXPECT_EQ(design_on_page(stitch_along(project)->html)["key"], before["key"]);
  chart::Chart& chart = project.bands[1].chart;
  chart.set({2, 3}, chart.at({2, 3}) == 0 ? chart::Bead{1} : chart::Bead{0});
  const auto after = design_on_page(stitch_along(project)->html);
  EXPECT_NE(after["key"], before["key"]);
  EXPECT_NE(after["bands"][1]["key"], before["bands"][1]["key"]);
  EXPECT_EQ(after["bands"][0]["key"], before["bands"][0]["key"]);
  project = moonwatch();
  project.legend[2].colour = {1, 2, 3};
  EXPECT_NE(design_on_page(stitch_along(project)->html)["key"], before["key"]);
}

TEST(StitchAlong, HostileTextsStayTexts) {
  const std::string hostile = "</script><script>alert(1)</script> \"quoted\" 'too' & <img src=x onerror=alert(2)> {{title}} --> \u202Eturned\u2066 💎";
  const std::string tame = "</script><script>alert(1)</script> \"quoted\" 'too' & <img src=x onerror=alert(2)> {{title}} --> turned 💎";
  project::Project project = moonwatch();
  project.title = project.subtitle = project.summary = project.designer = project.terms = hostile;
  project.bands[0].name = project.bands[0].note = hostile;
  project.legend[0].name = hostile;
  project.assembly = project.tools = {hostile};
  project.findings.push_back({.name = hostile});
  project.strand.reset();  // it calls the bands by their names
  const auto along = stitch_along(project);
  ASSERT_TRUE(along.ok()) << message(along.problem());
  const std::string& html = along->html;
  const auto occurrences = [&](std::string_view what) {
    std::size_t count = 0;
    for (std::size_t at = html.find(what); at != std::string::npos; at = html.find(what, at + 1)) ++count;
    return count;
  };
  EXPECT_EQ(occurrences("<script"), 2u);
  EXPECT_EQ(occurrences("</script"), 2u);
  EXPECT_EQ(occurrences("<img src=x"), 0u);
  EXPECT_EQ(occurrences("\u202E"), 0u);
  EXPECT_EQ(occurrences("\u2066"), 0u);
  EXPECT_EQ(visible_text(between(html, "<h1 dir=\"auto\">", "</h1>")), tame);
  const auto design = design_on_page(html);
  EXPECT_EQ(design["bands"][0]["name"], tame);
  EXPECT_EQ(design["legend"][0]["name"], tame);
  EXPECT_EQ(chart_read(words_on_page(html, 0, "right"), project), project.bands[0].chart);
}

TEST(StitchAlong, NothingIsFetchedAndNothingEscapesThePolicy) {
  const std::string html = stitch_along(moonwatch())->html;
  const std::string style = between(html, "<style>", "</style>"), script = between(html, "<script>", "</script>");
  const std::string policy = visible_text(between(html, "http-equiv=\"Content-Security-Policy\" content=\"", "\">"));
  EXPECT_EQ(policy, fmt::format("default-src 'none'; img-src data:; style-src 'sha256-{}'; script-src 'sha256-{}'; base-uri 'none'; form-action 'none'",
                                sha256_base64(style), sha256_base64(script)));
  static const std::regex reference(R"re(\s(?:src|href|action|style|srcset|on\w+)="(?!data:)[^"]*")re");
  const std::string markup = html.substr(0, html.find("<script")).erase(html.find("<style>"), style.size());
  EXPECT_FALSE(std::regex_search(markup, reference));
  for (const char* never : {"eval(", "innerHTML", "fetch(", "XMLHttpRequest", "import(", "document.write", "insertAdjacentHTML"})
    EXPECT_EQ(script.find(never), std::string::npos) << never;
}

TEST(StitchAlong, EveryTextTheScriptAsksForIsInTheCatalogue) {
  const std::string html = stitch_along(moonwatch())->html;
  const auto texts = design_on_page(html)["texts"];
  const std::string script = between(html, "<script>", "</script>");
  static const std::regex asked(R"re(texts\.(\w+)|say\('(\w+)'|remark\('([a-z]+_[a-z]+)'\))re");
  int found = 0;
  for (std::sregex_iterator it(script.begin(), script.end(), asked), end; it != end; ++it, ++found) {
    const std::string name = (*it)[1].matched ? (*it)[1] : (*it)[2].matched ? (*it)[2] : (*it)[3];
    EXPECT_TRUE(texts.contains(name)) << name;
  }
  EXPECT_GT(found, 20);
}

TEST(StitchAlong, ErrorsOfTheProofRefuseIt) {
  project::Project project = random_project(2);
  project.bands[0].chart.set({0, 0}, static_cast<chart::Bead>(project.legend.size() + 5));
  const auto along = stitch_along(project);
  ASSERT_FALSE(along.ok());
  EXPECT_EQ(along.problem().code, ProblemCode::proof_failed);
}

TEST(StitchAlong, ABandWithoutALeftHandIsNamed) {
  const auto along = stitch_along(example(fs::path(EVENCOUNT_SOURCE_DIR) / "examples/techniques/peyote-bezel.evencount.json"));
  ASSERT_TRUE(along.ok());
  ASSERT_EQ(along->without_left_hand.size(), 1u);
  EXPECT_EQ(along->without_left_hand[0].band, "Bezel");
  EXPECT_FALSE(design_on_page(along->html)["bands"][0]["hands"].contains("left"));
  EXPECT_TRUE(stitch_along(moonwatch())->without_left_hand.empty());
}

TEST(StitchAlong, NewThreadsAreSaidWhereTheyBegin) {
  const project::Project project = one_band_project(20, 120, weave::Closure::open, 3, 5);
  const auto threads = project::band_threads(project);
  ASSERT_TRUE(threads.ok());
  const auto& use = threads->front().use;
  ASSERT_GT(use.lengths.size(), 2u);
  const auto design = design_on_page(stitch_along(project)->html);
  std::vector<int> begun;
  for (const auto& row : design["bands"][0]["hands"]["right"]["rows"])
    if (row.contains("thread")) begun.push_back(row["last"]);
  ASSERT_EQ(begun.size(), use.lengths.size());
  for (std::size_t i = 0; i + 1 < begun.size(); ++i) EXPECT_EQ(begun[i + 1], use.new_thread_rows[i]);
}

/// 60,000 beads of eight colours at random, where hardly two alike lie together: no panel takes more.
TEST(StitchAlong, ALargePanelIsAFewMegabytes) {
  const project::Project project = one_band_project(200, 300, weave::Closure::open, 8, 4);
  const auto along = stitch_along(project);
  ASSERT_TRUE(along.ok()) << message(along.problem());
  RecordProperty("bytes", static_cast<int>(along->html.size()));
  EXPECT_LT(along->html.size(), 4'500'000u);
  EXPECT_EQ(chart_read(words_on_page(along->html, 0, "right"), project), project.bands[0].chart);
}

TEST(StitchAlong, ChangingSidesTwiceChangesNothing) {
  const auto plan = *project::plan_of(moonwatch().bands[0]);
  EXPECT_EQ(sides_changed(sides_changed(plan)), plan);
  EXPECT_NE(sides_changed(plan), plan);
}

// What the scripts say is in what they are given.
TEST(StitchAlong, EveryTextOfTheScriptsIsThere) {
  const auto texts = design_on_page(stitch_along(moonwatch())->html)["texts"];
  const std::regex named(R"(\btexts\.(\w+)|\bsay\('(\w+)'|remark\('(\w+)')");
  std::set<std::string> said;
  for (const auto& entry : fs::directory_iterator(fs::path(EVENCOUNT_SOURCE_DIR) / "src/page/along")) {
    if (entry.path().extension() != ".js") continue;
    std::ifstream file(entry.path());
    std::stringstream script;
    script << file.rdbuf();
    const std::string text = script.str();
    for (std::sregex_iterator it(text.begin(), text.end(), named), end; it != end; ++it)
      for (const int group : {1, 2, 3})
        if ((*it)[static_cast<std::size_t>(group)].matched) said.insert((*it)[static_cast<std::size_t>(group)]);
  }
  EXPECT_GT(said.size(), 20u);
  for (const std::string& name : said) EXPECT_TRUE(texts.contains(name)) << name;
}

TEST(StitchAlong, AMirroredDrawingIsAsLarge) {
  const project::Project project = moonwatch();
  const auto drawing = drawing::band_drawing(project, project.bands[0], *project::plan_of(project.bands[0]));
  const auto mirrored = in_mirror(drawing);
  const auto before = drawing::bounds_of(drawing), after = drawing::bounds_of(mirrored);
  EXPECT_NEAR(after.left_mm, drawing.width.mm() - before.right_mm, 1e-9);
  EXPECT_NEAR(after.right_mm, drawing.width.mm() - before.left_mm, 1e-9);
  EXPECT_NEAR(drawing::bounds_of(in_mirror(mirrored)).left_mm, before.left_mm, 1e-9);
  EXPECT_EQ(mirrored.marks.size(), drawing.marks.size());
}

TEST(AlongMarkup, FingerprintsAreTheStandards) {
  // FIPS 180-4, example of one block.
  EXPECT_EQ(sha256_hex("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(sha256_base64("abc"), "ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=");
  EXPECT_EQ(base64("Ma"), "TWE=");  // RFC 4648
}

TEST(AlongMarkup, BytesThatAreNoTextBecomeSigns) {
  EXPECT_EQ(shown_text("a\xFFz"), "a?z");
  EXPECT_EQ(shown_text(" two\nlines\t"), "two lines");
  EXPECT_EQ(shown("<b> & \"'"), "&lt;b&gt; &amp; &quot;&#39;");
  EXPECT_EQ(filled("{{a}}-{{b}}", [](std::string_view name) { return name == "a" ? "{{b}}" : "x"; }), "{{b}}-x");
}

}  // namespace
}  // namespace evencount::page
