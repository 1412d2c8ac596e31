#pragma once
/// Reading the fields of a JSON object into values, with the place of everything that is wrong. Internal to the room.
///
/// The first problem sticks: after it every field reads as its default and nothing more is reported, so that a reader
/// can be written as a plain list of fields and checked once.

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "project/json_tree.hpp"
#include "project/project.hpp"

namespace evencount::project::json {

/// A place in the document, spelled out only when a problem needs it. It must not outlive the place it is in.
class Place {
 public:
  Place() = default;  ///< the whole document
  [[nodiscard]] Place member(std::string_view name) const { return Place(this, name, 0); }
  [[nodiscard]] Place item(std::size_t index) const { return Place(this, {}, index); }
  /// RFC 6901: "/bands/0/columns"; "" for the whole document.
  [[nodiscard]] std::string pointer() const;
  [[nodiscard]] std::string_view name() const { return name_; }

 private:
  Place(const Place* outer, std::string_view name, std::size_t index)
      : outer_(outer), name_(name), index_(index) {}
  const Place* outer_ = nullptr;
  std::string_view name_;  ///< of a member; empty for an item
  std::size_t index_ = 0;
};

/// The first problem of a reading.
class Report {
 public:
  [[nodiscard]] bool failed() const { return problem_.has_value(); }
  [[nodiscard]] const Problem& problem() const { return *problem_; }
  void add(ProblemCode code, const Place& place, std::string found, std::string expected);
  /// A problem of another room, seen from here.
  void add(const Problem& problem, const Place& place);
  /// A problem whose place is spelled out already.
  void add_as_is(const Problem& problem) {
    if (!failed()) problem_ = problem;
  }

 private:
  std::optional<Problem> problem_;
};

/// What stands there, for a message: "\"six\" (text)", "2.5 (a number)", "a list".
[[nodiscard]] std::string describe(const Node& node);

/// Well-formed text for people: at most longest_text bytes, no control characters but line feed and tab.
[[nodiscard]] std::string read_text(const Node& node, const Place& place, Report& report);

/// One object's fields. Every field that is asked for counts as known; the others are `unknown()`.
class Fields {
 public:
  Fields(const Node& node, const Place& place, Report& report);

  [[nodiscard]] bool has(std::string_view name);
  [[nodiscard]] Place place_of(std::string_view name) const { return place_.member(name); }

  /// A field that must be there.
  [[nodiscard]] std::string text(std::string_view name);
  [[nodiscard]] double number(std::string_view name, double least, double most);
  [[nodiscard]] std::int64_t whole(std::string_view name, std::int64_t least, std::int64_t most);

  /// A field that may be left out.
  [[nodiscard]] std::string text_or(std::string_view name, std::string_view otherwise);
  [[nodiscard]] double number_or(std::string_view name, double least, double most, double otherwise);
  [[nodiscard]] std::int64_t whole_or(std::string_view name, std::int64_t least, std::int64_t most,
                                      std::int64_t otherwise);

  /// Reads each item of a list of at most `most` with `read(node, place)`. Left out counts as empty unless required.
  void each(std::string_view name, std::size_t most, bool required,
            const std::function<void(const Node&, const Place&)>& read);
  [[nodiscard]] std::vector<std::string> texts(std::string_view name, std::size_t most);

  /// The field itself, or nothing when it is left out.
  [[nodiscard]] const Node* find(std::string_view name);
  /// The same; missing_field when it is left out.
  [[nodiscard]] const Node* require(std::string_view name);

  [[nodiscard]] UnknownFields unknown() const;

 private:
  const Object* object_ = nullptr;
  const Place& place_;
  Report& report_;
  std::vector<std::string_view> known_;
};

/// "one of A, B, C", or "(there are none)".
[[nodiscard]] std::string one_of(const std::vector<std::string>& names);

}  // namespace evencount::project::json
