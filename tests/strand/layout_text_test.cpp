#include <gtest/gtest.h>

#include "layouts.hpp"
#include "random_runs.hpp"

namespace evencount::strand {
namespace {

/// A random list in the language, as text; spaces and line ends vary.
class Author {
 public:
  explicit Author(unsigned seed) : random_(seed) {}

  std::string layout() {
    std::string text =
        gap() + (pick(random_, 2) ? "cords 2 of braided 0.6mm\n" : "cords 1 of wire 0.015in\n");
    text +=
        "bead stop 6mm hole 1.5mm \"a \"\"big\"\" bead\"\ncap cup 1/8in nests 2mm\nspacer \"the bar\" 3mm "
        "holes 2 apart 9.6mm hole 1mm\n";
    text +=
        "extender tail 8.25mm chain 4cm thick 2mm\njoiner fork 7mm\nknot little 1.5mm across 2mm\nring jump "
        "4mm\n";
    if (pick(random_, 2)) text += "close with tail\n";
    if (pick(random_, 2)) text += "on hand round-8 " + std::to_string(pick(random_, 500)) + "\n";
    return text + "string" + gap() + list(0);
  }

 private:
  std::string gap() {
    static const std::vector<std::string> gaps{" ", "  ", "\n", " # why, and (how)\n", "\t"};
    return gaps[static_cast<std::size_t>(pick(random_, 5))];
  }
  std::string name() {
    static const std::vector<std::string> names{"stop", "cup",          "\"the bar\"", "round-8",
                                                "moon", "\"Big moon\"", "carrier",     "little",
                                                "jump", "round-11"};
    return names[static_cast<std::size_t>(pick(random_, 10))];
  }
  std::string list(int depth) {
    std::string text = item(depth);
    for (int i = pick(random_, 3); i > 0; --i) text += gap() + "," + gap() + item(depth);
    return text;
  }
  std::string plain(int depth) {
    const std::string times = pick(random_, 2) ? std::to_string(1 + pick(random_, 4)) + gap() : "";
    if (depth < 3 && pick(random_, 4) == 0) return times + "(" + list(depth + 1) + ")";
    return times + (pick(random_, 5) == 0 ? "both " : "") + name();
  }
  std::string unit() {
    in_unit_ = true;
    std::string text = pick(random_, 2) ? plain(3) : "(" + list(2) + ")";
    in_unit_ = false;
    return text;
  }
  std::string run(int depth) {
    const bool between = pick(random_, 2) == 0;
    std::string text = (between ? "between" : "fill") +
                       std::string(pick(random_, 2) ? " group" + std::to_string(++groups_) : "") + " with " +
                       unit();
    const int from = pick(random_, 3);
    if (from) text += " from " + std::to_string(from);
    if (pick(random_, 2)) text += " to " + std::to_string(from + pick(random_, 3));
    return between ? text + "(" + list(depth + 1) + ")" : text;
  }
  std::string item(int depth) {
    const int kind = in_unit_ ? 9 : pick(random_, 10);
    if (kind < 3 && depth < 3) return run(depth);
    if (kind == 3 && depth < 3 && !mirrored_) {
      mirrored_ = true;
      std::string text = "mirror (" + list(depth + 1) + ")";
      if (pick(random_, 2)) text += " about " + item(depth + 1);
      mirrored_ = false;
      return text;
    }
    return plain(depth);
  }

  Random random_;
  bool in_unit_ = false, mirrored_ = false;
  int groups_ = 0;
};

TEST(LayoutText, WritesAndReadsBack) {
  const auto all = catalogue();
  int read = 0;
  for (unsigned seed = 0; seed < 2000; ++seed) {
    const std::string text = Author(seed).layout();
    const auto layout = parse_layout(text, all);
    if (!layout && layout.problem().code == ProblemCode::out_of_range) continue;  // too many pieces
    ASSERT_TRUE(layout) << message(layout.problem()) << "\n" << text;
    ++read;
    const std::string written = to_text(*layout);
    const auto again = parse_layout(written, all);
    ASSERT_TRUE(again) << message(again.problem()) << "\n" << written;
    ASSERT_EQ(*again, *layout) << text << written;
    ASSERT_EQ(to_text(*again), written);
  }
  EXPECT_GT(read, 1800);
}

TEST(LayoutText, SaysTheSameWithOtherBlanks) {
  const auto all = catalogue();
  std::string spread;
  bool in_quotes = false;
  for (const char c : bracelet_text) {
    in_quotes ^= c == '"';
    spread += c == ' ' && !in_quotes ? " \n # so\n\t" : std::string(1, c);
  }
  const auto one = parse_layout(bracelet_text, all);
  const auto two = parse_layout("# a bracelet\n" + spread + "# the end", all);
  ASSERT_TRUE(one && two);
  EXPECT_EQ(to_text(*one), to_text(*two));
}

TEST(LayoutText, BrokenTextsAreProblems) {
  const auto all = catalogue();
  const std::string text = to_text(*parse_layout(bracelet_text, all));
  const std::size_t list = text.find("string ");
  for (std::size_t size = 0; size < list + 7; ++size)
    EXPECT_FALSE(parse_layout(text.substr(0, size), all)) << size;
  int problems = 0;
  Random random(3);
  for (int i = 0; i < 5000; ++i) {  // anything at all gives a layout or a problem with its place
    std::string broken = Author(static_cast<unsigned>(i)).layout();
    for (int k = 1 + pick(random, 3); k > 0; --k) {
      const auto at = static_cast<std::size_t>(pick(random, static_cast<int>(broken.size())));
      if (pick(random, 2))
        broken.erase(at, 1 + static_cast<std::size_t>(pick(random, 4)));
      else
        broken.insert(at, 1, " (),\"#9az.\n\x01"[static_cast<std::size_t>(pick(random, 11))]);
      if (broken.empty()) broken = "x";
    }
    const auto layout = parse_layout(broken, all);
    if (!layout) {
      ++problems;
      EXPECT_TRUE(layout.problem().where.starts_with("line ")) << message(layout.problem()) << broken;
    } else {
      EXPECT_EQ(*parse_layout(to_text(*layout), all), *layout);
    }
  }
  EXPECT_GT(problems, 1000);
}

// Every letter and digit may stand anywhere in a name but at its beginning, where a digit begins a number.
TEST(LayoutText, NamesHaveAnyLettersAndDigits) {
  for (const char c : std::string_view("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_")) {
    for (const std::string& name : {std::string("x") + c, std::string("q") + c + "q"}) {
      const auto layout = parse_layout("bead " + name + " 6mm hole 1mm string 2 " + name, catalogue());
      ASSERT_TRUE(layout) << name << ": " << message(layout.problem());
      EXPECT_EQ(layout->parts.front().id, name);
    }
    const std::string first(1, c);
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    EXPECT_EQ(parse_layout("bead " + first + "q 6mm hole 1mm string " + first + "q", catalogue()).ok(), letter) << c;
  }
}

TEST(LayoutText, OnlyWordsAndQuotedTextsAreNames) {
  for (const char* no_name : {"12", "6mm", "(", ")", ",", "string", "fill", "\"\""}) {
    const auto layout = parse_layout(std::string("bead ") + no_name + " 6mm hole 1mm string moon", catalogue());
    ASSERT_FALSE(layout) << no_name;
    EXPECT_TRUE(layout.problem().where.starts_with("line 1, column 6")) << message(layout.problem());
  }
  EXPECT_TRUE(parse_layout("bead \"12\" 6mm hole 1mm string \"12\"", catalogue()));
}

TEST(LayoutText, HoldsAsManyThingsAsItMay) {
  EXPECT_TRUE(parse_layout("string 5 (1000 moon)", catalogue()));
  EXPECT_FALSE(parse_layout("string 5 (1000 moon), moon", catalogue()));
  EXPECT_FALSE(parse_layout("string moon, 5 (1000 moon)", catalogue()));
}

struct Fault {
  std::string text;
  std::string message;
};
TEST(LayoutText, SaysWhereAndWhatWasExpected) {
  const std::vector<Fault> faults{
      {"string 3 rond-8",
       "line 1, column 10: found 'rond-8', expected a part of this layout, a standard bead, or a form or "
       "band of the project"},
      {"string round-8,\n  (moon, ",
       "line 2, column 10: found the end, expected the name of a part, a bead, a form or a band"},
      {"cords 3 of wire 1mm string moon", "line 1, column 7: found '3', expected 1 to 2"},
      {"cords 2 of silk 1mm string moon",
       "line 1, column 12: found 'silk', expected elastic, wire, braided or leather"},
      {"bead stop 6 string moon\nbead", "line 2, column 1: found 'bead', expected a comma, or the end"},
      {"bead stop 6mm hole 7mm string stop",
       "line 1, column 6: hole of stop: found 7 mm, expected less than its thickness, 6 mm"},
      {"string mirror (moon, mirror (moon))",
       "line 1, column 22: found 'mirror', expected no mirror within a mirror"},
      {"string fill with (moon, fill with moon)",
       "line 1, column 25: found 'fill', expected no run within a run's unit"},
      {"string fill a with moon, fill a with carrier",
       "line 1, column 26: found another unit or other limits for 'a', expected the same as where it stands "
       "first"},
      {"string \"moon", "line 1, column 8: found an opening quote, expected a closing one on the same line"},
      {"form x 6mm string moon",
       "line 1, column 1: found 'form', expected a part (forms and bands come from the project, by their "
       "names)"},
      {"string fill with moon from 4 to 2", "line 1, column 33: found '2', expected 4 to 1000"},
      {"string 2000 moon", "line 1, column 8: found '2000', expected 1 to 1000"},
      {"string 1000 (1000 moon)", "line 1, column 24: found more things on the cords, expected at most 5000"},
      {"close with moon close with moon string moon",
       "line 1, column 17: found 'close' a second time, expected each one once"},
      {"string moon moon", "line 1, column 13: found 'moon', expected a comma, or the end"},
      {"string moon & moon", "line 1, column 13: found '&', expected a name, a size, a bracket or a comma"},
  };
  const auto all = catalogue();
  for (const Fault& fault : faults) {
    const auto layout = parse_layout(fault.text, all);
    ASSERT_FALSE(layout) << fault.text;
    EXPECT_EQ(message(layout.problem()), fault.message);
  }
  EXPECT_FALSE(parse_layout(std::string(longest_layout_text + 1, ' '), all));
  EXPECT_FALSE(parse_layout("string \xff", all));
  EXPECT_FALSE(parse_layout("string " + std::string(100, '('), all));
}

// A hole that isn't given is a quarter of the thing, and never wider than the usual drill.
TEST(LayoutText, HolesThatAreNotGivenAreTheUsualOnes) {
  for (const auto& [width_mm, hole_mm] : {std::pair{2.0, 0.5}, {5.0, 1.25}, {6.0, 1.5}, {14.0, 1.5}})
    EXPECT_NEAR(usual_part(ElementKind::bead, "s", millimetres(width_mm)).hole.mm(), hole_mm, 1e-12) << width_mm;
}

TEST(LayoutText, ARunMayBeginAtNone) {
  const std::string text = "cords 1 of elastic 0.8mm string tube-band, fill with round-8 from 0 to 5";
  EXPECT_TRUE(parse_layout(text, catalogue()));
  EXPECT_EQ(strung_of(text).groups.at(0).from, 0);
}

}  // namespace
}  // namespace evencount::strand
