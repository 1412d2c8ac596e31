// Every limit of a project's file: what is at it is read, what is one above is refused where it stands. docs/limits.md lists them.
#include "project/limits.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <functional>

#include "project/json.hpp"
#include "project/json_tree.hpp"
#include "project/operation.hpp"

namespace evencount::project {
namespace {

/// A project's text with more in it: fields after the bands, and what stands in the lists.
struct Parts {
  std::string beads = R"({"id":"cylinder-11"})", legend = R"({"letter":"A","name":"a","colour":"#000000","bead":"cylinder-11"})";
  std::string bands = R"({"name":"b","technique":"peyote-even-count","bead":"cylinder-11","closure":"open","columns":2,"edge":1,"cells":["2A"]})";
  std::string more;
};

Result<Project> read(const Parts& parts) {
  return parse_project(fmt::format(R"({{"format":1,"title":"t","beads":[{}],"legend":[{}],"bands":[{}]{}}})", parts.beads, parts.legend,
                                   parts.bands, parts.more));
}

void expect_limit(const std::string& what, const Parts& at_limit, const Parts& above, const std::string& where) {
  SCOPED_TRACE(what);
  const auto good = read(at_limit), bad = read(above);
  EXPECT_TRUE(good.ok()) << message(good.problem());
  ASSERT_FALSE(bad.ok());
  EXPECT_EQ(bad.problem().code, ProblemCode::out_of_range) << message(bad.problem());
  EXPECT_EQ(bad.problem().where, where);
  EXPECT_FALSE(bad.problem().found.empty());
  EXPECT_FALSE(bad.problem().expected.empty());
}

/// One to three capital letters: A, B … Z, AA …
std::string letter(int i) {
  std::string text;
  for (++i; i > 0; i = (i - 1) / 26) text.insert(text.begin(), static_cast<char>('A' + (i - 1) % 26));
  return text;
}

std::string list(int count, const std::function<std::string(int)>& item) {
  std::string text;
  for (int i = 0; i < count; ++i) text += (i > 0 ? "," : "") + item(i);
  return text;
}

TEST(ProjectLimits, ListsHaveTheirMost) {
  const auto more = [](const std::string& name, int count, const std::string& item) {
    return Parts{.more = fmt::format(R"(,"{}":[{}])", name, list(count, [&](int i) { return fmt::format(fmt::runtime(item), i); }))};
  };
  for (const auto& [name, item] : {std::pair<std::string, std::string>{"tools", "\"tool {}\""},
                                   {"assembly", "\"step {}\""},
                                   {"findings", R"({{"name":"finding {}"}})"},
                                   {"forms", R"({{"id":"f{}","shape":"round:10x10"}})"},
                                   {"gauges", R"({{"hand":"h{}","thread":"t","bead":"cylinder-11","gauge":{{"column_mm":1.35,"edge_mm":1.66}}}})"}})
    expect_limit(name, more(name, most_entries, item), more(name, most_entries + 1, item), "/" + name);
  const auto beads = [](int count) {
    return Parts{.beads = R"({"id":"cylinder-11"},)" + list(count - 1, [](int i) {
                            return fmt::format(R"({{"id":"own {}","kind":"round","diameter_mm":2,"length_mm":2,"hole_mm":0.5,"beads_per_gram":100}})", i);
                          })};
  };
  expect_limit("beads", beads(most_entries), beads(most_entries + 1), "/beads");
  const auto legend = [](int count) {
    return Parts{.legend = list(count, [](int i) {
                   return fmt::format(R"({{"letter":"{}","name":"n","colour":"#000000","bead":"cylinder-11"}})", letter(i));
                 })};
  };
  expect_limit("legend", legend(most_legend_entries), legend(most_legend_entries + 1), "/legend");
  const auto bands = [](int count) {
    return Parts{.bands = list(count, [](int i) {
                   return fmt::format(R"({{"name":"b{}","technique":"peyote-even-count","bead":"cylinder-11","closure":"open","columns":2,"edge":1,"cells":["2A"]}})", i);
                 })};
  };
  expect_limit("bands", bands(most_bands), bands(most_bands + 1), "/bands");
}

TEST(ProjectLimits, AStrandHasItsMost) {
  const auto layout = [](int lines) {
    return Parts{.more = fmt::format(R"(,"strand":{{"layout":[{}],"worn":"wrist"}})", list(lines, [](int) { return std::string("\"#\""); }))};
  };
  expect_limit("lines of a layout", layout(most_layout_lines), layout(most_layout_lines + 1), "/strand/layout");
  const auto sizes = [](int count) {
    return Parts{.more = fmt::format(R"(,"strand":{{"layout":[],"worn":"wrist","sizes":[{}]}})",
                                     list(count, [](int i) { return fmt::format(R"({{"name":"s{}","measure_mm":160}})", i); }))};
  };
  expect_limit("wearers' sizes", sizes(most_entries), sizes(most_entries + 1), "/strand/sizes");
}

TEST(ProjectLimits, TextsHaveTheirMost) {
  const auto field = [](const std::string& name, std::size_t bytes) {
    return Parts{.more = fmt::format(R"(,"{}":"{}")", name, std::string(bytes, 'x'))};
  };
  for (const char* name : {"subtitle", "designer", "summary", "finished_size", "terms"})
    expect_limit(name, field(name, longest_text), field(name, longest_text + 1), fmt::format("/{}", name));
  const auto note = [](std::size_t bytes) {
    Parts parts;
    parts.bands = fmt::format(R"({{"name":"b","technique":"peyote-even-count","bead":"cylinder-11","closure":"open","columns":2,"edge":1,"note":"{}","cells":["2A"]}})",
                              std::string(bytes, 'x'));
    return parts;
  };
  expect_limit("a band's note", note(longest_text), note(longest_text + 1), "/bands/0/note");
}

TEST(ProjectLimits, NumbersHaveTheirMost) {
  const auto bead = [](const std::string& name, double value) {
    Parts parts;
    std::string fields;
    for (const auto& [field, usual] : {std::pair<std::string, double>{"diameter_mm", 99}, {"length_mm", 2}, {"hole_mm", 0.5}, {"beads_per_gram", 100}})
      fields += fmt::format(R"(,"{}":{})", field, field == name ? value : usual);
    parts.beads = R"({"id":"cylinder-11"},{"id":"own","kind":"round")" + fields + "}";
    return parts;
  };
  expect_limit("a bead's diameter", bead("diameter_mm", limits::most_bead_mm), bead("diameter_mm", limits::most_bead_mm + 0.1), "/beads/1/diameter_mm");
  expect_limit("a bead's least length", bead("length_mm", limits::least_bead_mm), bead("length_mm", limits::least_bead_mm / 2), "/beads/1/length_mm");
  expect_limit("beads a gram", bead("beads_per_gram", limits::most_beads_per_gram), bead("beads_per_gram", limits::most_beads_per_gram + 1), "/beads/1/beads_per_gram");
  const auto thread = [](const std::string& name, double value) {
    return Parts{.more = fmt::format(R"(,"thread":{{"id":"own","name":"n","diameter_mm":{},"tail_mm":{},"working_length_mm":{}}})", name == "diameter_mm" ? value : 0.2,
                                     name == "tail_mm" ? value : 150, name == "working_length_mm" ? value : 1500)};
  };
  expect_limit("thread", thread("diameter_mm", limits::most_thread_mm), thread("diameter_mm", limits::most_thread_mm + 1), "/thread/diameter_mm");
  expect_limit("tail", thread("tail_mm", limits::most_tail_mm), thread("tail_mm", limits::most_tail_mm + 1), "/thread/tail_mm");
  expect_limit("working length", thread("working_length_mm", limits::most_working_length_mm), thread("working_length_mm", limits::most_working_length_mm + 1), "/thread/working_length_mm");
  const auto finding = [](double count) { return Parts{.more = fmt::format(R"(,"findings":[{{"name":"f","count":{}}}])", count)}; };
  expect_limit("findings", finding(limits::most_findings), finding(limits::most_findings + 1), "/findings/0/count");
  const auto pack = [](double grams, std::int64_t price) {
    return Parts{.legend = fmt::format(R"({{"letter":"A","name":"a","colour":"#000000","bead":"cylinder-11","pack":{{"grams":{},"price_minor":{},"currency":"EUR"}}}})", grams, price)};
  };
  expect_limit("a pack", pack(limits::most_pack_grams, 1), pack(limits::most_pack_grams + 1, 1), "/legend/0/pack/grams");
  expect_limit("a price", pack(5, limits::most_price_minor), pack(5, limits::most_price_minor + 1), "/legend/0/pack/price_minor");
  const auto copies = [](int count) {
    return Parts{.bands = fmt::format(R"({{"name":"b","technique":"peyote-even-count","bead":"cylinder-11","closure":"open","columns":2,"edge":1,"copies":{},"cells":["2A"]}})", count)};
  };
  expect_limit("copies", copies(most_copies), copies(most_copies + 1), "/bands/0/copies");
  const auto strand = [](const std::string& name, double value) {
    return Parts{.more = fmt::format(R"(,"strand":{{"layout":[],"worn":"wrist","ease_mm":{},"lean":{},"tolerance_mm":{},"sizes":[{{"name":"s","measure_mm":{}}}]}})",
                                     name == "ease_mm" ? value : 10, name == "lean" ? value : 10, name == "tolerance_mm" ? value : 1, name == "measure" ? value : 160)};
  };
  expect_limit("ease", strand("ease_mm", limits::most_ease_mm), strand("ease_mm", limits::most_ease_mm + 1), "/strand/ease_mm");
  expect_limit("lean", strand("lean", limits::most_lean), strand("lean", limits::most_lean + 1), "/strand/lean");
  expect_limit("tolerance", strand("tolerance_mm", limits::most_tolerance_mm), strand("tolerance_mm", limits::most_tolerance_mm + 1), "/strand/tolerance_mm");
  expect_limit("a wrist", strand("measure", limits::most_measure_mm), strand("measure", limits::most_measure_mm + 1), "/strand/sizes/0/measure_mm");
}

TEST(ProjectLimits, ADocumentHasOnlySoManyValues) {
  std::string text = "[0";
  text.reserve(3 * json::most_values);
  for (std::size_t i = 2; i < json::most_values; ++i) text += ",0";  // the list itself is one
  EXPECT_TRUE(json::parse(text + "]").ok());
  const auto more = json::parse(text + ",0]");
  ASSERT_FALSE(more.ok());
  EXPECT_EQ(more.problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(more.problem().found, "more than 8000000 values");
}

TEST(ProjectLimits, SeveralOperationsHaveTheirMost) {
  const Project project = read({}).value();
  const auto several = [&](std::size_t count) {
    std::string operations;
    for (std::size_t i = 0; i < count; ++i) operations += std::string(i > 0 ? "," : "") + R"({"do":"set_allowance","allowance":0.1})";
    return apply_operation(project, R"({"do":"several","operations":[)" + operations + "]}");
  };
  EXPECT_TRUE(several(most_operations).ok());
  const auto more = several(most_operations + 1);
  ASSERT_FALSE(more.ok());
  EXPECT_EQ(more.problem().code, ProblemCode::out_of_range);
  EXPECT_EQ(more.problem().where, "/operations");
}

}  // namespace
}  // namespace evencount::project
