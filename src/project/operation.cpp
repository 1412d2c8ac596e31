#include "project/operation.hpp"

#include <array>

#include "base/text.hpp"
#include "project/operation_reader.hpp"

namespace evencount::project {
namespace {

constexpr std::string_view nesting = "several";
/// A sentence is a line of a list.
constexpr std::size_t longest_sentence = 300;

std::array<std::span<const OperationRow>, 6> tables() {
  return {drawing_operations(), placing_operations(), legend_operations(), band_operations(),
          strand_operations(),  project_operations()};
}

const OperationRow* find_row(std::string_view name) {
  for (const auto table : tables())
    for (const OperationRow& row : table)
      if (row.name == name) return &row;
  return nullptr;
}

std::string shortened(std::string sentence) {
  if (sentence.size() <= longest_sentence) return sentence;
  std::size_t end = longest_sentence;
  while (end > 0 && (static_cast<unsigned char>(sentence[end]) & 0xC0) == 0x80) --end;  // no half characters
  return sentence.substr(0, end) + "…";
}

}  // namespace

Result<Applied> apply_node(const Project& project, const json::Node& node, const json::Place& place,
                           bool nested) {
  json::Report report;
  json::Fields fields(node, place, report);
  const std::string name = fields.text("do");
  if (report.failed()) return report.problem();
  const OperationRow* row = find_row(name);
  if (!row || (nested && name == nesting)) {
    report.add(ProblemCode::unknown_name, fields.place_of("do"), quote(name),
               "the name of an operation (docs/openapi.yaml lists them)");
    return report.problem();
  }
  OperationReader reader(project, node, place, report);
  return row->apply(project, reader);
}

Result<Applied> apply_operation(const Project& project, std::string_view operation) {
  const auto node = json::parse(operation);
  if (!node) return node.problem();
  auto applied = apply_node(project, *node, json::Place(), false);
  if (applied) applied->sentence = shortened(std::move(applied->sentence));
  return applied;
}

std::vector<std::string_view> operation_names() {
  std::vector<std::string_view> names;
  for (const auto table : tables())
    for (const OperationRow& row : table) names.push_back(row.name);
  return names;
}

}  // namespace evencount::project
