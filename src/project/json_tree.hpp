#pragma once
/// JSON text as a tree and back. Internal to the room: other rooms use json.hpp.
///
/// The tree keeps what a file says as it says it (the order of members, the digits of a number), so that fields which
/// this version does not know can be written again unchanged.

#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "base/result.hpp"

namespace evencount::project::json {

struct Node;

struct Null {
  bool operator==(const Null&) const = default;
};
/// A number, by its digits as JSON writes them.
struct Number {
  std::string digits;
  bool operator==(const Number&) const = default;
};
using Array = std::vector<Node>;
using Member = std::pair<std::string, Node>;
using Object = std::vector<Member>;  ///< in the order of the file; names are single

struct Node {
  std::variant<Null, bool, Number, std::string, Array, Object> value;

  Node() = default;
  template <typename T>
  explicit Node(T part) : value(std::move(part)) {}
  Node(const Node&) = default;
  Node(Node&&) noexcept = default;
  Node& operator=(const Node&) = default;
  Node& operator=(Node&&) noexcept = default;
  ~Node() = default;

  template <typename T>
  [[nodiscard]] const T* as() const {
    return std::get_if<T>(&value);
  }
  bool operator==(const Node&) const = default;
};

inline constexpr int deepest_nesting = 64;
inline constexpr std::size_t longest_document = std::size_t{64} << 20;  ///< bytes
/// Values in one document, so that a text of nothing but brackets can't fill the memory.
inline constexpr std::size_t most_values = 8'000'000;

/// The tree of one JSON document (RFC 8259).
/// Errors: bad_json ("line 3, column 9": not JSON, not UTF-8; a pointer: nested deeper than `deepest_nesting`, a name
/// twice in one object), out_of_range (a number beyond double, a text or a count of values beyond the limits).
[[nodiscard]] Result<Node> parse(std::string_view text);

/// The text of a tree with two-space indents, one array item and one member a line. parse(to_text(n)) == n for every
/// tree that parse can give.
[[nodiscard]] std::string to_text(const Node& node);

/// The same on one line, without blanks.
[[nodiscard]] std::string to_compact_text(const Node& node);

/// The shortest digits that read back as the same double. The value must be finite.
[[nodiscard]] Number number(double value);

/// One step of a JSON pointer, RFC 6901: "/" and the name with '~' and '/' escaped.
[[nodiscard]] std::string pointer_step(std::string_view name);

}  // namespace evencount::project::json
