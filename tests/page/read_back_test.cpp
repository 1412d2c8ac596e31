#include "page/fonts.hpp"
#include "page/read_back.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "page/left_hand.hpp"
#include "page/pdf_text.hpp"
#include "random_project.hpp"
#include "support/sanitized.hpp"

namespace evencount::page {
namespace {

struct Printed {
  project::Project project;
  BookletOptions options;
  Booklet booklet;
};

Printed printed(std::uint32_t seed) {
  Printed all{random_project(seed), {}, {}};
  all.booklet = *make_booklet(all.project, all.options);
  return all;
}

/// The booklet's problem when one of its texts is changed before it is written; nothing when none fits.
template <typename Change>
std::optional<ProblemCode> problem_when(const Printed& printed, Change change) {
  Booklet changed = printed.booklet;
  bool found = false;
  for (auto& page : changed.pages)
    for (auto& mark : page.marks)
      if (auto* text = std::get_if<drawing::Text>(&mark); text && !found && !text->in_picture) found = change(text->text);
  EXPECT_TRUE(found);
  const auto subject = make_subject(printed.project, printed.options);
  const auto pdf = to_pdf(changed.pages, changed.info);
  const auto read = read_back(*pdf, *subject);
  return read ? std::nullopt : std::optional(read.problem().code);
}

TEST(ReadBack, WhatWasLaidOutIsRead) {
  for (std::uint32_t seed = 1; seed <= 12; ++seed) {
    const Printed all = printed(seed);
    const auto subject = make_subject(all.project, all.options);
    const auto read = read_back(*to_pdf(all.booklet.pages, all.booklet.info), *subject);
    EXPECT_TRUE(read.ok()) << seed << ": " << message(read.problem());
  }
}

TEST(ReadBack, AnotherBeadIsNoticed) {
  const Printed all = printed(3);
  const auto to_another = [&](std::string& text) {
    const auto at = text.rfind(")" + all.project.legend[0].letter);
    if (!text.starts_with("(") || at == std::string::npos) return false;
    text.replace(at + 1, all.project.legend[0].letter.size(), all.project.legend[1].letter);
    return true;
  };
  ASSERT_GT(all.project.legend.size(), 1u);
  EXPECT_EQ(problem_when(all, to_another), ProblemCode::bad_plan);
}

TEST(ReadBack, AMissingRowIsNoticed) {
  EXPECT_EQ(problem_when(printed(3), [](std::string& text) {
              if (!text.starts_with("Row 4 ")) return false;
              text = "Row";
              return true;
            }),
            ProblemCode::bad_plan);
}

TEST(ReadBack, AnotherCountAmongTheSuppliesIsNoticed) {
  const Printed all = printed(3);
  const auto subject = make_subject(all.project, all.options);
  const auto& beads = subject->supplies.beads.beads;
  const auto most = std::max_element(beads.begin(), beads.end(), [](const auto& a, const auto& b) { return a.count < b.count; });
  ASSERT_GT(most->count, 50);  // no page has that number
  const std::string count = all.options.language->count(most->count);
  EXPECT_EQ(problem_when(all, [&](std::string& text) {
              if (text != count) return false;
              text = "1" + text;
              return true;
            }),
            ProblemCode::bad_plan);
}

TEST(ReadBack, LongNamesAreRead) {
  for (const language::Language& language : language::languages()) {
    project::Project project = random_project(7);
    for (auto& entry : project.legend) entry.name = "an uncommonly long name of a bead that takes more than a line, in two words";
    for (auto& band : project.bands) band.name += ", a band with a name that is far too long for one line of the heading of its page";
    project.title = "A title that is long enough to be broken into several lines on the cover of a booklet";
    const auto printed = print_booklet(project, {.language = &language});
    EXPECT_TRUE(printed.ok()) << language.tag << ": " << message(printed.problem());
  }
}

TEST(ReadBack, ARowsWrongNumberOfBeadsIsNoticed) {
  // Signs are in order: a row's count is the number that follows its beads.
  bool beads_before = false;
  EXPECT_EQ(problem_when(printed(3), [&](std::string& text) {
              const bool is_count = beads_before && text.find_first_not_of("0123456789") == std::string::npos;
              beads_before = text.starts_with("(") && !text.ends_with(",");
              if (is_count) text += "1";
              return is_count;
            }),
            ProblemCode::bad_plan);
}

TEST(ReadBack, AWrongSumOfTheRowsIsNoticed) {
  const Printed all = printed(3);
  const auto subject = make_subject(all.project, all.options);
  const std::string sum = sum_of_rows(*all.options.language, subject->bands[0].plan);
  EXPECT_EQ(problem_when(all, [&](std::string& text) {
              constexpr std::size_t a_few_words = 10;  // a shorter one may be some other number
              if (!sum.starts_with(text) || text.size() < a_few_words) return false;
              text = "1" + text;
              return true;
            }),
            ProblemCode::bad_plan);
}

TEST(ReadBack, AnotherBandsHeadingIsNoticed) {
  const Printed all = printed(3);
  const auto subject = make_subject(all.project, all.options);
  EXPECT_EQ(problem_when(all, [&](std::string& text) {
              if (text != subject->bands[0].words.heading) return false;
              text.pop_back();  // the name's beginning
              return true;
            }),
            ProblemCode::bad_plan);
}

TEST(ReadBack, TheOtherHandIsNoticed) {
  const Printed all = printed(3);
  const BookletOptions left{.left_handed = true};
  const auto booklet = make_booklet(all.project, left);
  ASSERT_TRUE(booklet.ok()) << message(booklet.problem());
  const auto subject = make_subject(all.project, all.options);
  const auto read = read_back(*to_pdf(booklet->pages, booklet->info), *subject);
  ASSERT_FALSE(read.ok());
  EXPECT_EQ(read.problem().code, ProblemCode::bad_plan);
}

// What a designer writes about rows is no word chart, and does not stop the booklet.
TEST(ReadBack, TheDesignersOwnWordsMayTalkOfRows) {
  for (const char* note : {"In row 12 the clasp's loop begins: leave 2 beads free.", "Row 3: pull tight.", "Rows 1-2: use 20 of A.",
                           "Word chart: see below", "Swap A and B in row 5 (R) for a 2A stripe, 3 B, and so on.",
                           "Row 7 (L): 2A, 3B looks better on dark skin", "Rows 1–2 (L): tension is loose at first", "Reihe 4: 2 x A", "1: 2A"}) {
    project::Project project = random_project(7);
    project.summary = project.terms = note;
    project.assembly = {note, note};
    for (project::Band& band : project.bands) band.note = note;
    const auto printed = print_booklet(project, {});
    EXPECT_TRUE(printed.ok()) << note << ": " << message(printed.problem());
  }
}

// Pasted from elsewhere, names may hold what shows nothing or is a blank of another width.
TEST(ReadBack, NamesMayHoldWhatIsNotSeen) {
  for (const char* hidden : {"\u2003", "\u00A0", "\u200B", "\u00AD", "\u2060", "\uFEFF", "\u2028", "\u3000", "\u200D", "\u0301"}) {
    project::Project project = random_project(7);
    for (project::Band& band : project.bands) band.name = std::string("Full") + hidden + "moon " + band.name;
    project.title = std::string("Moon") + hidden + "watch";
    project.legend[0].name = std::string("midnight") + hidden + "blue";
    const auto findings = proof_for_print(project);
    const auto printed = print_booklet(project, {});
    if (proof::has_errors(findings)) continue;  // what no font has is refused by name
    EXPECT_TRUE(printed.ok()) << static_cast<int>(hidden[2]) << ": " << message(printed.problem());
  }
}

TEST(ReadBack, ARowLongerThanAPageIsRead) {
  const auto printed = print_booklet(project_with_endless_rows(), {.paper = Paper::letter});
  EXPECT_TRUE(printed.ok()) << message(printed.problem());
}

TEST(ReadBack, EveryTechniqueIsReadForEitherHand) {
  for (std::uint32_t seed = 1; seed <= (sanitized ? 10 : 60); ++seed) {
    const project::Project project = varied_project(seed);
    const language::Language& language = language::languages()[seed % language::languages().size()];
    const bool left_handed = seed % 2 == 0 && std::all_of(project.bands.begin(), project.bands.end(), [](const project::Band& band) {
      return seen_plan(band, true).ok();
    });
    const auto printed = print_booklet(project, {.language = &language, .left_handed = left_handed});
    EXPECT_TRUE(printed.ok()) << seed << ", " << language.tag << ": " << message(printed.problem());
  }
}

TEST(ReadBack, BytesThatAreNoPdfAreRefused) {
  EXPECT_EQ(pdf_text("no file").problem().code, ProblemCode::bad_text);
  EXPECT_FALSE(pdf_text("").ok());
  std::string cut = *to_pdf(printed(5).booklet.pages, {});
  for (const std::size_t size : {cut.size() / 2, cut.size() / 4}) static_cast<void>(pdf_text(cut.substr(0, size)));
}

TEST(PdfText, LinesAndPagesComeInOrder) {
  using drawing::Text;
  const auto line = [](double x, double y, std::string text) {
    return Text{.at = {x, y}, .size_pt = 10, .text = std::move(text)};
  };
  drawing::Drawing one{millimetres(100), millimetres(100), {}}, two = one;
  one.marks = {line(10, 10, "Row 3 (R):"), line(32, 10, "(2)A, (1)B"), line(10, 20, "Łódź – 第3段 ﬁn")};
  two.marks = {line(10, 10, "next")};
  EXPECT_EQ(*pdf_text(*to_pdf({one, two}, {})), "Row 3 (R): (2)A, (1)B\nŁódź – 第3段 ﬁn\n\fnext\n\f");
}

}  // namespace
}  // namespace evencount::page
