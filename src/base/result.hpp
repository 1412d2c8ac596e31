#pragma once
/// Expected failures as values.
///
/// A function that can fail because of what it was given returns `Result<T>`: either the value or one
/// `Problem`. An assertion, never a `Problem`, means a fault of ours.

#include <cassert>
#include <string>
#include <string_view>
#include <utility>
#include <variant>

namespace evencount {

/// What went wrong, as a word that a program can act on. `problem_kind` maps each to its statuses.
enum class ProblemCode {
  bad_usage,        ///< the command line or the request is malformed
  bad_text,         ///< a notation (number, length, form, bead, gauge, colour) can't be read
  bad_json,         ///< not JSON, or nested too deeply
  wrong_type,       ///< a field holds another type than its own
  missing_field,    ///< a field that must be there is not
  out_of_range,     ///< a number outside its stated range
  unknown_name,     ///< a name that nothing here has (bead, technique, band, letter)
  duplicate_name,   ///< a name given twice where it must be single
  newer_format,     ///< a file written by a later version
  not_convex,       ///< an outline that bulges inwards where that is not allowed
  too_few_beads,    ///< a ring of fewer beads than can close
  cannot_close,     ///< no number of beads closes round the form
  wrong_size,       ///< a chart whose size the technique can't make
  needs_even_rows,  ///< a zip asked of an odd number of rows
  bad_words,        ///< a word chart that doesn't add up
  bad_plan,         ///< a plan that can't be stitched
  bad_picture,      ///< a picture that can't be read, is damaged, or doesn't show what it must
  missing_glyph,    ///< text that no bundled font can show
  missing_font,     ///< a font of the booklet is not installed
  proof_failed,     ///< the project has errors, so nothing is published
  out_of_date,      ///< a change of something that has become something else since
  in_use,           ///< held by another program, or already there
  not_allowed,      ///< a request from where none may come, or without its secret
  not_found,        ///< no page, project or piece of work of that address
  too_large,        ///< more bytes than are taken
  too_many,         ///< more at once, or faster, than is served
  too_slow,         ///< a request that took too long to come
  cancelled,        ///< work that was called off
  file_not_found,
  file_unreadable,
  file_unwritable,
  system_failure,
};

/// One row of the table that maps problems to statuses.
struct ProblemKind {
  ProblemCode code;
  std::string_view name;  ///< the code as printed in JSON
  int exit_status;        ///< 1 findings, 2 bad input, 3 file or system failure
  int http_status;
};

[[nodiscard]] const ProblemKind& problem_kind(ProblemCode code);

/// An expected failure: where it is, what stood there and what should have.
/// `where` names a file, a place in it, or an argument; it grows outwards with `within`.
struct Problem {
  ProblemCode code;
  std::string where;
  std::string found;
  std::string expected;

  bool operator==(const Problem&) const = default;

  /// The same problem seen from one level further out: `within("demo.json")` gives "demo.json: row 3".
  [[nodiscard]] Problem within(std::string_view outer) const;
};

/// A number outside its stated range.
[[nodiscard]] Problem out_of_range(std::string_view where, std::string found, std::string expected);

/// "WHERE: found FOUND, expected EXPECTED", leaving out the parts that are empty.
[[nodiscard]] std::string message(const Problem& problem);

/// Nothing to return but success.
struct Done {
  bool operator==(const Done&) const = default;
};

template <typename T>
class [[nodiscard]] Result {
 public:
  Result(T value)
      : state_(std::in_place_index<0>, std::move(value)) {}  // NOLINT(google-explicit-constructor)
  Result(Problem problem)
      : state_(std::in_place_index<1>, std::move(problem)) {}  // NOLINT(google-explicit-constructor)

  [[nodiscard]] bool ok() const { return state_.index() == 0; }
  explicit operator bool() const { return ok(); }

  /// The value. Asking a failed result for it is a fault of ours.
  [[nodiscard]] const T& value() const& { return assert(ok()), *std::get_if<0>(&state_); }
  [[nodiscard]] T& value() & { return assert(ok()), *std::get_if<0>(&state_); }
  [[nodiscard]] T&& value() && { return assert(ok()), std::move(*std::get_if<0>(&state_)); }
  const T& operator*() const& { return value(); }
  T& operator*() & { return value(); }
  T&& operator*() && { return std::move(*this).value(); }
  const T* operator->() const { return &value(); }
  T* operator->() { return &value(); }

  [[nodiscard]] const Problem& problem() const { return assert(!ok()), *std::get_if<1>(&state_); }

 private:
  std::variant<T, Problem> state_;
};

}  // namespace evencount
