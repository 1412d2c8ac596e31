#pragma once
/// Values of a JSON tree by their pointers (RFC 6901). Internal to the room.

#include <optional>

#include "project/json_tree.hpp"

namespace evencount::project::json {

/// Puts a value in place of another: `before` must stand there, or nothing where it is none; `after` is put there, or nothing is left.
/// Both are JSON text on one line. List items are replaced, never added or taken away.
/// Errors: out_of_date (something else stands there, or the place is not there), bad_json.
[[nodiscard]] Result<Done> put(Node& tree, std::string_view pointer, const std::optional<std::string>& before,
                               const std::optional<std::string>& after);

/// True when the one is the other or a part of it.
[[nodiscard]] bool pointers_meet(std::string_view one, std::string_view other);

}  // namespace evencount::project::json
