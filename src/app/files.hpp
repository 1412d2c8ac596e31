#pragma once
/// Files: read whole, written whole or not at all.

#include <string>
#include <string_view>

#include "base/result.hpp"

namespace evencount::app {

/// No input file may be larger: a project of a million cells is under 10 MB.
inline constexpr std::size_t largest_input = 64u << 20;

/// The bytes of a file, or of standard input for "-".
/// Errors: file_not_found, file_unreadable (the reason in words), out_of_range (too large).
[[nodiscard]] Result<std::string> read_file(const std::string& path);

/// Writes a new file beside `path`, syncs it, and renames it over `path`: afterwards the old or the new bytes are there, never a mixture.
/// A symbolic link is followed, so that it stays one, also one whose file is not there yet; the permissions of a file that was there are
/// kept, and one that may not be written is refused. The new file is called `.NAME.XXXXXX.part` until it is renamed; one that a killed process left is removed by the next that writes
/// the same file, and one that a process is still writing is left alone.
/// Errors: file_unwritable (the reason in words); nothing of `path` has changed then, and nothing is left beside it.
[[nodiscard]] Result<Done> write_file(const std::string& path, std::string_view bytes);

}  // namespace evencount::app
