#pragma once
/// Reading an operation's fields, and the table of operations. Internal to the room.

#include <fmt/format.h>

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "chart/edit.hpp"
#include "project/json_fields.hpp"
#include "project/operation.hpp"
#include "project/outline.hpp"

namespace evencount::project {

/// The fields of one operation. The first problem sticks; `finish` tells.
class OperationReader {
 public:
  OperationReader(const Project& project, const json::Node& node, const json::Place& place,
                  json::Report& report)
      : project_(project), place_(place), report_(report), fields_(node, place, report) {
    (void)fields_.find("do");
  }

  [[nodiscard]] json::Fields& fields() { return fields_; }
  [[nodiscard]] bool has(std::string_view name) { return fields_.has(name); }
  [[nodiscard]] std::string text(std::string_view name) { return fields_.text(name); }
  [[nodiscard]] std::string text_or(std::string_view name, std::string_view otherwise) {
    return fields_.text_or(name, otherwise);
  }
  [[nodiscard]] int whole(std::string_view name, int least, int most) {
    return static_cast<int>(fields_.whole(name, least, most));
  }
  [[nodiscard]] std::optional<int> whole_if(std::string_view name, int least, int most);
  [[nodiscard]] bool flag(std::string_view name);
  /// The position of one of the project's bands.
  [[nodiscard]] int band(std::string_view name = "band");
  /// The position of a legend's entry by its letter.
  [[nodiscard]] chart::Bead letter(std::string_view name);
  [[nodiscard]] chart::Bead letter_or_empty(std::string_view name);  ///< "." as well
  [[nodiscard]] std::optional<chart::Bead> letter_if(std::string_view name);
  [[nodiscard]] chart::Cell cell(std::string_view name);
  [[nodiscard]] std::vector<chart::Cell> cells(std::string_view name);
  [[nodiscard]] std::vector<chart::Symmetry> mirror();
  /// A text that another room turns into a value.
  template <typename Value>
  [[nodiscard]] std::optional<Value> choice(std::string_view name, Result<Value> (*parse)(std::string_view)) {
    if (!has(name)) return std::nullopt;
    auto value = parse(text(name));
    if (value) return *value;
    report_.add(value.problem(), fields_.place_of(name));
    return std::nullopt;
  }
  [[nodiscard]] const json::Node* value(std::string_view name) { return fields_.find(name); }
  [[nodiscard]] const json::Node* require(std::string_view name) { return fields_.require(name); }

  void refuse(ProblemCode code, std::string_view name, std::string found, std::string expected) {
    report_.add(code, fields_.place_of(name), std::move(found), std::move(expected));
  }
  /// Refuses fields that nobody asked for; whether all is well.
  [[nodiscard]] bool finish();
  [[nodiscard]] const Problem& problem() const { return report_.problem(); }
  [[nodiscard]] const json::Place& place() const { return place_; }
  [[nodiscard]] json::Report& report() { return report_; }

 private:
  [[nodiscard]] chart::Bead bead_named(const std::string& letter, const json::Place& place);
  const Project& project_;
  const json::Place& place_;
  json::Report& report_;
  json::Fields fields_;
};

[[nodiscard]] chart::Cell read_cell(const json::Node& node, const json::Place& place, json::Report& report);

struct OperationRow {
  std::string_view name;
  Result<Applied> (*apply)(const Project& project, OperationReader& reader);
};

[[nodiscard]] std::span<const OperationRow> drawing_operations();
[[nodiscard]] std::span<const OperationRow> placing_operations();
[[nodiscard]] std::span<const OperationRow> legend_operations();
[[nodiscard]] std::span<const OperationRow> band_operations();
[[nodiscard]] std::span<const OperationRow> strand_operations();
[[nodiscard]] std::span<const OperationRow> project_operations();

/// Any operation. `nested`: within `several`.
[[nodiscard]] Result<Applied> apply_node(const Project& project, const json::Node& node,
                                         const json::Place& place, bool nested);

/// "12 beads", "1 bead".
[[nodiscard]] inline std::string counted(int count, std::string_view one) {
  return fmt::format("{} {}{}", count, one, count == 1 ? "" : "s");
}

/// "B", or "nothing" for an empty cell.
[[nodiscard]] std::string letter_name(const Project& project, chart::Bead bead);

/// " on Moon", where there are several bands.
[[nodiscard]] std::string on_band(const Project& project, int band);

/// A bead size that the project hasn't is added when it is a known one. Errors: unknown_name, at `where`.
[[nodiscard]] Result<Done> add_known_bead(Project& project, const std::string& id, std::string_view where);

/// A project's outline and charts, apart, to be changed and put together again.
struct Draft {
  explicit Draft(const Project& project);
  json::Node outline;
  std::vector<chart::Chart> charts;

  /// A list of the outline; one that is left out is begun.
  [[nodiscard]] json::Array& list(std::string_view name);
  void set(std::string_view name, json::Node value);
  [[nodiscard]] Result<Applied> finish(std::string sentence) &&;
};

/// Sets a member of an object, or takes it away for null.
void set_member(json::Node& object, std::string_view name, json::Node value);
[[nodiscard]] const json::Node* find_member(const json::Node& object, std::string_view name);

}  // namespace evencount::project
