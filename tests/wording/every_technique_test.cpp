// Words of every technique, written by the writer and read by the reader, which share no code.

#include <gtest/gtest.h>

#include <map>

#include "support/sanitized.hpp"
#include "weave/every_piece.hpp"
#include "weave/random_shapes.hpp"
#include "wording/reader.hpp"
#include "wording/words.hpp"

namespace evencount::wording {
namespace {

using namespace weave::testing_support;

const std::vector<std::string> letters{"A", "B", "C", "D", "E"};

/// The chart with its first rows again and again, so that there is something to fold.
chart::Chart with_repeats(Random& random, chart::Chart chart) {
  const int steps = pick(random, 1, 4), columns = pick(random, 1, 6);
  for (int step = 0; step < chart.edge(); ++step)
    for (int column = 0; column < chart.columns(); ++column)
      if (const chart::Bead from = chart.at({column % columns, step % steps});
          chart.at({column, step}) != chart::no_bead && from != chart::no_bead)
        chart.set({column, step}, from);
  return chart;
}

struct Tally {
  int charts = 0, folded = 0;
};

void expect_read_back_in(const language::Language& language, const AnyPiece& piece, const weave::Plan& plan,
                         Tally& counts) {
  for (const bool fold : {false, true}) {
    const std::string text = to_text(write_words(plan, letters, "Piece", {fold, fold, &language}), language);
    if (fold && (text.find('*') != std::string::npos || text.find(": work ") != std::string::npos)) ++counts.folded;
    const auto read = read_words(text, {.legend = letters});
    ASSERT_TRUE(read) << piece.name << ": " << message(read.problem()) << "\n" << text;
    ASSERT_EQ(read->size(), 1u) << piece.name << "\n" << text;
    const ReadBand& band = read->front();
    EXPECT_EQ(band.chart, piece.chart) << piece.name << "\n" << text;
    EXPECT_EQ(band.technique, piece.technique) << piece.name;
    EXPECT_EQ(band.closure, piece.making.closure) << piece.name;
    EXPECT_EQ(band.begin_at, piece.making.begin_at) << piece.name;
    EXPECT_EQ(band.name, "Piece") << text;
    EXPECT_EQ(band.first_travel, plan.rows.front().travel) << text;
  }
}

void expect_read_back(const AnyPiece& piece, std::map<std::string, Tally>& tally) {
  const weave::Plan plan = piece.plan();
  Tally& counts = tally[piece.technique];
  ++counts.charts;
  for (const language::Language& language : language::languages()) expect_read_back_in(language, piece, plan, counts);
}

/// A piece of the technique in a size and an outline at random; nothing when it can't be made so.
std::optional<AnyPiece> random_piece(Random& random, const weave::Technique& technique) {
  AnyPiece piece{.technique = std::string(technique.id)};
  piece.making.closure = technique.closures[random() % technique.closures.size()];
  const int columns = pick(random, 1, 24), edge = pick(random, 1, 24);
  if (technique.id == "peyote-shaped") {
    piece.chart = random_shape(random, 24);
  } else if (technique.id == "brick" && piece.making.closure == weave::Closure::open && pick(random, 0, 1) == 0) {
    piece.chart = random_brick_outline(random);
  } else if (technique.id == "peyote-bezel") {
    const RandomBezel bezel = random_bezel(random);
    piece.chart = bezel.chart;
    piece.making = bezel.making;
  } else {
    if (!technique.check_size(columns, edge)) return std::nullopt;
    piece.chart = filled_chart(random, technique.lattice(columns, edge));
  }
  if (pick(random, 0, 1) == 0) piece.chart = with_repeats(random, piece.chart);
  if (!weave::make_plan(piece.technique, piece.chart, piece.making)) return std::nullopt;
  piece.name = piece.technique;
  return piece;
}

TEST(EveryTechnique, WordsReadBack) {
  Random random(91);
  constexpr int fewest = sanitized ? 100 : 300;
  std::map<std::string, Tally> tally;
  for (const AnyPiece& piece : every_piece()) expect_read_back(piece, tally);
  for (const weave::Technique& technique : weave::techniques())
    for (int made = 0; made < fewest;)
      if (const auto piece = random_piece(random, technique)) {
        expect_read_back(*piece, tally);
        ++made;
        if (HasFatalFailure()) return;
      }
  for (const auto& [technique, counts] : tally) {
    std::printf("%s: %d charts written, folded and read back, %d with folds\n", technique.c_str(), counts.charts,
                counts.folded);
    EXPECT_GE(counts.charts, fewest) << technique;
    EXPECT_GE(counts.folded, fewest / 10) << technique;  // in English
  }
}

}  // namespace
}  // namespace evencount::wording
